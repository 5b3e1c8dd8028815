#pragma once
/// Hand-off files of this device (docs/reference/hand-off.md): what was sealed goes into one for a stick or a mail
/// whether there is a network or not, and what came in one is kept here.

#include "app/bundle/hand_off.hpp"
#include "app/storage/identity.hpp"
#include "app/storage/seal.hpp"

#include <cstdint>
#include <iosfwd>
#include <string>
#include <vector>

namespace sillwalk::app {

struct HandedOff {
    std::int64_t revisions = 0, photos = 0;
    std::vector<Digest> damaged;  ///< left out: their bytes are no longer those of their name
};
/// Revisions of one visit, or of all where `survey_id` is empty, oldest first, each before its photos. Fails where the
/// database cannot be read; a stream that fails shows in the stream.
[[nodiscard]] engine::Result<HandedOff> write_hand_off(Database& database, const std::string& survey_id,
                                                       std::ostream& out);

struct TakenIn {
    std::int64_t revisions = 0, known = 0, photos = 0, visits = 0;
    std::int64_t put_aside =
        0;                ///< in quarantine: unknown signer, a signature that does not hold, a photo nobody names
    EnvelopeFault fault;  ///< of the line where reading stopped; no errors: it was read to the end
    std::size_t stopped_at = 0;  ///< that line
};
struct TakeInOptions {
    bool accept_unknown = false;  ///< a person vouches for what no known key signed
    std::int64_t at_ms = 0;
};
/// A visit that is not here yet becomes one; of a visit that is, the revision is kept beside it and nothing is changed.
[[nodiscard]] engine::Result<TakenIn> take_in_hand_off(Database& database, std::istream& in,
                                                       const TakeInOptions& options);

}  // namespace sillwalk::app
