#pragma once
/// A list of at most N values without heap. Pushing to a full list drops the value and sets overflowed().

#include <algorithm>
#include <array>
#include <cstddef>

namespace sillwalk::engine {

template <class T, std::size_t N>
class SmallList {
public:
    constexpr void push(const T& value) {
        if (size_ < N) {
            items_[size_++] = value;
        } else {
            overflowed_ = true;
        }
    }
    /// Adds the value unless it is there already.
    constexpr void add(const T& value) {
        if (std::find(begin(), end(), value) == end()) {
            push(value);
        }
    }
    [[nodiscard]] constexpr std::size_t size() const { return size_; }
    [[nodiscard]] constexpr bool empty() const { return size_ == 0; }
    [[nodiscard]] constexpr bool overflowed() const { return overflowed_; }
    [[nodiscard]] constexpr const T& operator[](std::size_t i) const { return items_[i]; }
    [[nodiscard]] constexpr const T* begin() const { return items_.data(); }
    [[nodiscard]] constexpr const T* end() const { return items_.data() + size_; }
    friend constexpr bool operator==(const SmallList& a, const SmallList& b) {
        return std::equal(a.begin(), a.end(), b.begin(), b.end());
    }

private:
    std::array<T, N> items_{};
    std::size_t size_ = 0;
    bool overflowed_ = false;
};

}  // namespace sillwalk::engine
