#pragma once
/// The results of one desk calculation, each with the meaning that its registry row gives.

#include "engine/desk/desk.hpp"

#include <optional>
#include <span>
#include <string_view>
#include <utility>
#include <vector>

namespace sillwalk::engine {

class OutputList {
public:
    explicit OutputList(std::span<const DeskKey> keys) : keys_(keys) {}
    /// Contract: the key is one of the calculation's outputs.
    OutputList& add(std::string_view key, DeskValue value);
    /// Adds nothing where the value is absent.
    template <class T>
    OutputList& add_if(std::string_view key, const std::optional<T>& value) {
        if (value) {
            add(key, DeskValue(*value));
        }
        return *this;
    }
    template <class Quantity>
    OutputList& add_si(std::string_view key, const std::optional<Quantity>& value) {
        if (value) {
            add(key, value->si());
        }
        return *this;
    }
    [[nodiscard]] std::vector<DeskOutput> take() { return std::move(outputs_); }

private:
    std::span<const DeskKey> keys_;
    std::vector<DeskOutput> outputs_;
};

}  // namespace sillwalk::engine
