#pragma once
/// Sending visits to the office: what the screens show of it, and what can be done.

#include "app/bundle/delivery_state.hpp"

#include <cstdint>
#include <optional>
#include <string>
#include <string_view>
#include <variant>

namespace sillwalk::app {

enum class SendingPhase : std::uint8_t { idle, sending, waiting, not_enrolled, enrol_again, storage_fault };

/// How sending stands.
struct SendingStatus {
    bool possible = false;  ///< there is a network to send by
    std::string office;     ///< address; empty: not enrolled
    SendingPhase phase = SendingPhase::not_enrolled;
    std::string why;  ///< language key of what stands in the way; of a storage fault the system's words
    std::int64_t waiting = 0, parked = 0, done = 0;  ///< revisions and photos
    friend bool operator==(const SendingStatus&, const SendingStatus&) = default;
};

/// A sentence that tells what went wrong.
struct SendingFault {
    std::string key;       ///< language key
    std::string argument;  ///< of {0}; may be a language key too
    friend bool operator==(const SendingFault&, const SendingFault&) = default;
};

/// What is typed to enrol this tablet. It stays until the office took the tablet in.
struct EnrolmentForm {
    std::string address, code, name;
    std::string key;    ///< 64 hex digits of the office's key where the office's code held it
    bool open = false;  ///< shown though the tablet is enrolled: another office is wanted
    bool busy = false;
    std::optional<SendingFault> fault;
};

struct HandOffTold {
    std::string path;
    std::int64_t bytes = 0, revisions = 0, photos = 0;
    std::int64_t damaged = 0;  ///< left out
};

struct SendingDesk {
    SendingStatus status;
    bool asks_to_send = false;   ///< the sheet before Send is open
    bool asks_to_erase = false;  ///< the one before Erase is
    std::string author;          ///< who sends
    std::string sealing;         ///< visit whose advice is being worked out; empty: none
    std::string failed_visit;    ///< of the fault below
    std::optional<SendingFault> fault;
    EnrolmentForm form;
    bool writing = false;  ///< a hand-off file
    std::optional<HandOffTold> hand_off;
    std::optional<SendingFault> hand_off_fault;
    bool can_paste = false;  ///< there is a clipboard
};

// ---- what a person does
struct OpenSend {};
struct CloseSend {};
struct SetAuthor {
    std::string name;
};
/// Seals the visit in hand: it waits for the office, or goes into a hand-off file at once.
struct SendVisit {
    bool as_file = false;
};
struct OpenErase {};
struct CloseErase {};
/// The visit in hand, off this tablet for good; only where the office has all of it.
struct EraseVisit {};
struct TryNow {};
/// Everything that was sealed on this tablet.
struct WriteHandOff {};
struct OpenEnrolment {
    bool open = true;
};
enum class EnrolmentText : std::uint8_t { address, code, name };
/// As it is typed. The whole text of the office's QR code may stand in any field: it fills the others.
struct SetEnrolmentText {
    EnrolmentText which = EnrolmentText::code;
    std::string text;
};
struct PasteEnrolment {};
struct Enrol {};

// ---- news
struct SendingTold {
    SendingStatus status;
};
struct TabletEnrolled {};
struct EnrolmentFailed {
    SendingFault fault;
};
struct VisitSealed {
    std::string id;
};
struct SealFailed {
    std::string id;
    SendingFault fault;
};
struct VisitErased {};
struct EraseFailed {
    SendingFault fault;
};
struct HandOffWritten {
    HandOffTold told;
};
struct HandOffFailed {
    SendingFault fault;
};

using SendAction =
    std::variant<OpenSend, CloseSend, SetAuthor, SendVisit, TryNow, WriteHandOff, OpenEnrolment, SetEnrolmentText,
                 PasteEnrolment, Enrol, SendingTold, TabletEnrolled, EnrolmentFailed, VisitSealed, SealFailed,
                 HandOffWritten, HandOffFailed, OpenErase, CloseErase, EraseVisit, VisitErased, EraseFailed>;

// ---- what the world is asked to do
struct OrderSeal {
    std::string survey_id, author;
    bool hand_off = false;  ///< and write it to a file
};
struct OrderEnrolment {
    std::string address, code, key, name;
};
struct OrderTry {};
struct OrderHandOff {
    std::string survey_id;  ///< empty: all
};
struct OrderErase {
    std::string survey_id;
};
using SendOrder = std::variant<OrderSeal, OrderEnrolment, OrderTry, OrderHandOff, OrderErase>;

/// What the office's QR code says.
struct EnrolmentCode {
    std::string address, code, key;
};
/// Of "sillwalk:enrol?url=…&code=…&key=…"; nothing where it is another text.
[[nodiscard]] std::optional<EnrolmentCode> read_enrolment_code(std::string_view text);

}  // namespace sillwalk::app
