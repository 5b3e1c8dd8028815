#include "app/shell/engine_data.hpp"

#include "app/data/load_catalogue.hpp"
#include "app/data/load_tables.hpp"

#include <utility>

namespace sillwalk::app {

engine::Result<std::shared_ptr<const EngineData>> load_engine_data() {
    auto tables = load_tables();
    auto catalogue = load_catalogue();
    std::vector<engine::Error> errors = std::move(tables.errors);
    for (engine::Error& error : catalogue.errors) errors.push_back(std::move(error));
    auto data = std::make_shared<EngineData>();
    data->entry = load_entry_tables(errors);
    if (!errors.empty()) {
        std::string all;
        for (const engine::Error& error : errors) all += error.where + ": " + error.message + "\n";
        return engine::bad_input(std::move(all));
    }
    data->tables = std::move(tables.tables);
    data->catalogue = std::move(catalogue.catalogue);
    return std::shared_ptr<const EngineData>(std::move(data));
}

}  // namespace sillwalk::app
