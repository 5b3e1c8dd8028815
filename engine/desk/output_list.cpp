#include "engine/desk/output_list.hpp"

#include "engine/base/contract.hpp"

#include <algorithm>
#include <string>

namespace sillwalk::engine {

OutputList& OutputList::add(std::string_view key, DeskValue value) {
    const auto row = std::find_if(keys_.begin(), keys_.end(), [key](const DeskKey& k) { return k.name == key; });
    EXPECT_CONTRACT(row != keys_.end());
    outputs_.push_back({std::string(key), std::move(value), row->meaning});
    return *this;
}

}  // namespace sillwalk::engine
