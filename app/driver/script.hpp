#pragma once
/// Text scripts that use the application as a person does. One step per line; `#` starts a comment; words with spaces
/// stand in double quotes (\" and \\ and \n inside).
///
///     tap ID                     scrolls until it is in view, puts a finger down and up
///     hold ID                    long press
///     drag ID DX DY              millimetres of glass, from its middle
///     type ID "text"             taps the field, then types
///     clear ID                   taps the field, then empties it
///     key NAME                   tab, shift+tab, enter, escape, backspace, undo … or one character
///     wait SECONDS
///     expect ID contains "text"  also: is "text", enabled, disabled, chosen, shown
///     expect-not ID contains "text"   also: shown, chosen
///     screen contains "text"     anywhere on the screen; screen-not contains "text"
///     shot FILE                  writes a picture
///     size WIDTH HEIGHT          pixels; turns the screen
///     theme light|sun|dark
///     set NAME VALUE             a setting of the host: glove, text, hand, language
///     restart                    ends the application and starts it again on the same data
///     print                      writes the screen as text

#include "engine/base/result.hpp"

#include <string>
#include <string_view>
#include <vector>

namespace sillwalk::driver {

struct Step {
    int line = 0;  ///< counted from 1
    std::vector<std::string> words;
};

using Script = std::vector<Step>;

/// Fails on an unknown step, a wrong number of words or an open quote, and says on which line.
[[nodiscard]] engine::Result<Script> parse_script(std::string_view text);

}  // namespace sillwalk::driver
