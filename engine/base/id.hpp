#pragma once
/// A string id that cannot be mixed up with another kind of id.

#include <string>
#include <utility>

namespace sillwalk::engine {

template <class Tag>
class Id {
public:
    Id() = default;
    explicit Id(std::string text) : text_(std::move(text)) {}
    [[nodiscard]] const std::string& text() const { return text_; }
    [[nodiscard]] bool empty() const { return text_.empty(); }
    friend bool operator==(const Id&, const Id&) = default;
    friend bool operator<(const Id& a, const Id& b) { return a.text_ < b.text_; }

private:
    std::string text_;
};

}  // namespace sillwalk::engine
