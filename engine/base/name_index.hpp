#pragma once
/// Finds a name in a list by its hash. Holds no names and no order: the list keeps both, so nothing that is shown can
/// depend on a hash.

#include <cstddef>
#include <cstdint>
#include <cstring>
#include <string_view>
#include <vector>

namespace sillwalk::engine {

class NameIndex {
public:
    static constexpr std::size_t none = static_cast<std::size_t>(-1);

    void clear() {
        for (Slot& slot : slots_) slot = {};
        count_ = 0;
    }
    /// Position of the name, or none. `name_at(position)` gives the name that stands there.
    template <class NameAt>
    [[nodiscard]] std::size_t find(std::string_view name, const NameAt& name_at) const {
        if (slots_.empty()) return none;
        const std::uint32_t hash = hash_of(name);
        for (std::size_t i = hash & (slots_.size() - 1);; i = (i + 1) & (slots_.size() - 1)) {
            const Slot& slot = slots_[i];
            if (slot.position == empty) return none;
            if (slot.hash == hash && name_at(slot.position) == name) return slot.position;
        }
    }
    /// The name is not in the list yet; it is about to stand at `position`.
    void add(std::string_view name, std::size_t position) {
        if (2 * (count_ + 1) > slots_.size()) grow();
        put({hash_of(name), static_cast<std::uint32_t>(position)});
        ++count_;
    }

private:
    static constexpr std::uint32_t empty = UINT32_MAX;
    struct Slot {
        std::uint32_t hash = 0;
        std::uint32_t position = empty;
    };

    [[nodiscard]] static std::uint32_t hash_of(std::string_view name) {
        std::uint64_t hash = name.size();
        for (std::size_t i = 0; i < name.size(); i += 8) {
            std::uint64_t part = 0;
            std::memcpy(&part, name.data() + i, name.size() - i < 8 ? name.size() - i : 8);
            hash = (hash ^ part) * 0x9E3779B97F4A7C15U;
            hash ^= hash >> 32U;
        }
        return static_cast<std::uint32_t>(hash);
    }
    void put(const Slot& added) {
        std::size_t i = added.hash & (slots_.size() - 1);
        while (slots_[i].position != empty) i = (i + 1) & (slots_.size() - 1);
        slots_[i] = added;
    }
    void grow() {
        const std::vector<Slot> old = slots_;
        slots_.assign(old.empty() ? 64 : 2 * old.size(), Slot{});
        for (const Slot& slot : old) {
            if (slot.position != empty) put(slot);
        }
    }

    std::vector<Slot> slots_;  ///< a power of two of them, at most half filled
    std::size_t count_ = 0;
};

}  // namespace sillwalk::engine
