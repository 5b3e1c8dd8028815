#pragma once
/// Catalogue and tables, loaded once from the files that were compiled in.

#include "app/core/model.hpp"

#include <memory>

namespace sillwalk::app {

/// All mistakes of the shipped files in one message, should there be any.
[[nodiscard]] engine::Result<std::shared_ptr<const EngineData>> load_engine_data();

}  // namespace sillwalk::app
