#pragma once
/// The corpus of envelopes that reader and schema must judge alike: one document and lists of changes to it.

#include "app/bundle/canonical.hpp"

#include <fstream>
#include <sstream>
#include <string>

namespace sillwalk::test {

inline std::string corpus_text(const std::string& name) {
    std::ifstream file(std::string(SILLWALK_TEST_DATA) + "/bundle_corpus/" + name, std::ios::binary);
    std::ostringstream text;
    text << file.rdbuf();
    return text.str();
}
inline app::Json corpus(const std::string& name) {
    return app::Json::parse(corpus_text(name));
}

/// {"at": pointer, "set": value} or "remove", or "repeat": the list's first element that many times.
inline app::Json changed(app::Json document, const app::Json& change) {
    const app::Json::json_pointer at(change.at("at").get<std::string>());
    if (change.contains("set")) {
        document[at] = change.at("set");
    } else if (change.contains("repeat")) {
        const app::Json first = document.at(at).at(0);
        document[at] = app::Json::array_t(change.at("repeat").get<std::size_t>(), first);
    } else {
        document.at(at.parent_pointer()).erase(at.back());
    }
    return document;
}

}  // namespace sillwalk::test
