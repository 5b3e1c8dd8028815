#pragma once
/// Expected failures are values. Result<T> holds a T or an Error that says what, where and what would be right.

#include <tl/expected.hpp>

#include <string>
#include <utility>

namespace sillwalk::engine {

enum class ErrorCode {
    bad_input,     ///< the caller gave something unusable; it can be put right
    no_answer,     ///< the question has no answer: a wheel that cannot climb, a factor outside its published range
    not_found,     ///< an id or a file that does not exist
    storage,       ///< disk, database or permission
    too_new,       ///< a format newer than this program knows
    disagreement,  ///< a digest or signature that does not match
    transport,     ///< network
};

struct Error {
    ErrorCode code = ErrorCode::bad_input;
    std::string message;  ///< one sentence: what was wrong and what would be right
    std::string where;    ///< key, JSON path or file; may be empty
    friend bool operator==(const Error&, const Error&) = default;
};

template <class T>
using Result = tl::expected<T, Error>;

[[nodiscard]] inline tl::unexpected<Error> fail(ErrorCode code, std::string message, std::string where = {}) {
    return tl::make_unexpected(Error{code, std::move(message), std::move(where)});
}
[[nodiscard]] inline tl::unexpected<Error> no_answer(std::string message) {
    return fail(ErrorCode::no_answer, std::move(message));
}
[[nodiscard]] inline tl::unexpected<Error> bad_input(std::string message, std::string where = {}) {
    return fail(ErrorCode::bad_input, std::move(message), std::move(where));
}

}  // namespace sillwalk::engine
