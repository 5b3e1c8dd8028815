#include "app/sync/sealed_envelope.hpp"

#include "app/bundle/revision.hpp"

#include <fmt/format.h>

#include <algorithm>

namespace sillwalk::app {

std::string envelope_of(const Digest& digest, const StoredRevision& revision, const DeviceIdentity& device,
                        const std::optional<OfficeAccess>& office) {
    std::string signatures = revision.signature.empty() ? "[]" : revision.signature;
    if (revision.origin == RevisionOrigin::local) {
        const SigningKey key = device.key();
        Signature signature{};
        const bool whole = revision.signature.size() == signature.size();
        if (whole) std::copy(revision.signature.begin(), revision.signature.end(), signature.begin());
        // The digest holds, so a signature that does not was damaged on the disk; the key makes the same one again.
        if (!whole || !verify(key.public_key, revision_format, digest, signature))
            signature = sign(key, revision_format, digest);
        signatures = fmt::format(R"([{{"alg":"Ed25519","kid":"{}","value":"{}"}}])",
                                 office ? office->device_id : device.device_id, to_base64url(byte_view(signature)));
    }
    return fmt::format(R"({{"format":"{}","rev":{},"sig":{}}})", envelope_format, revision.body, signatures);
}

}  // namespace sillwalk::app
