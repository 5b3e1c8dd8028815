#include "app/bundle/digest.hpp"
#include "app/bundle/uuid.hpp"

#include <catch2/catch.hpp>

using namespace sillwalk::app;

TEST_CASE("SHA-256 gives the example of FIPS 180-4", "[app][bundle][published]") {
    // NIST, FIPS 180-4 examples: "abc" and the empty message.
    CHECK(to_hex(sha256("abc")) == "ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad");
    CHECK(to_hex(sha256("")) == "e3b0c44298fc1c149afbf4c8996fb92427ae41e4649b934ca495991b7852b855");
}

TEST_CASE("hex and base64 go both ways and refuse all else", "[app][bundle][published]") {
    // RFC 4648 §10 test vectors.
    CHECK(to_base64("foobar") == "Zm9vYmFy");
    CHECK(to_base64("fooba") == "Zm9vYmE=");
    CHECK(from_base64("Zm9vYg==") == "foob");
    CHECK_FALSE(from_base64("Zm9vYg="));
    CHECK_FALSE(from_base64("Zm9v Yg=="));
    CHECK(from_base64url(to_base64url("\xfb\xff\xfe")) == "\xfb\xff\xfe");
    const Digest digest = sha256("abc");
    CHECK(digest_from_hex(to_hex(digest)) == digest);
    CHECK_FALSE(digest_from_hex("BA7816BF8F01CFEA414140DE5DAE2223B00361A396177A9CB410FF61F20015AD"));
    CHECK_FALSE(digest_from_hex("ba78"));
    CHECK_FALSE(digest_from_hex(std::string(62, 'a') + "/."));
}

TEST_CASE("a seed gives the key pair of RFC 8032", "[app][bundle][published]") {
    // RFC 8032 §7.1, test 1: secret key seed and public key.
    const Digest seed = *digest_from_hex("9d61b19deffd5a60ba844af492ec2cc44449c5697b326919703bac031cae7f60");
    CHECK(to_hex(byte_view(signing_key_from_seed(seed).public_key)) ==
          "d75a980182b10ab7d54bfed3c964073a0ee172f3daa62325af021a68f707511a");
}

TEST_CASE("a signature holds for its purpose, digest and key only", "[app][bundle][property]") {
    const SigningKey key = signing_key_from_seed(sha256("one"));
    const SigningKey other = signing_key_from_seed(sha256("two"));
    const Digest digest = sha256("abc");
    const Signature signature = sign(key, "revision/1", digest);
    CHECK(verify(key.public_key, "revision/1", digest, signature));
    CHECK_FALSE(verify(key.public_key, "receipt/1", digest, signature));
    CHECK_FALSE(verify(other.public_key, "revision/1", digest, signature));
    CHECK_FALSE(verify(key.public_key, "revision/1", sha256("abd"), signature));
    Signature bent = signature;
    bent[10] ^= 1;
    CHECK_FALSE(verify(key.public_key, "revision/1", digest, bent));
}

TEST_CASE("UUIDs are those of RFC 9562", "[app][bundle][published]") {
    // RFC 9562 appendix A.4 (version 5, DNS name space, "www.example.com") and A.6 (version 7).
    CHECK(uuid_v5("6ba7b810-9dad-11d1-80b4-00c04fd430c8", "www.example.com") == "2ed6657d-e927-568b-95e1-2665a8aea6a2");
    CHECK(uuid_v7(0x017F22E279B0, {0x0C, 0xC3, 0x18, 0xC4, 0xDC, 0x0C, 0x0C, 0x07, 0x39, 0x8F}) ==
          "017f22e2-79b0-7cc3-98c4-dc0c0c07398f");
    CHECK(is_uuid("017f22e2-79b0-7cc3-98c4-dc0c0c07398f"));
    CHECK_FALSE(is_uuid("017F22E2-79B0-7CC3-98C4-DC0C0C07398F"));
    CHECK_FALSE(is_uuid("017f22e2-79b0-7cc3-98c4-dc0c0c07398"));
}
