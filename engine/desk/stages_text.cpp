#include "engine/desk/stages_text.hpp"

#include "engine/base/numeric_text.hpp"

#include <fmt/format.h>

#include <string>

namespace sillwalk::engine {

namespace {

Result<HeatStage> parse_stage(std::string_view text) {
    const std::size_t at = text.find('@');
    const std::size_t colon = text.find(':', at == std::string_view::npos ? 0 : at);
    if (at == std::string_view::npos || colon == std::string_view::npos) {
        return bad_input("is not AIR@FILM:TIME, like -25degF@34W/m2K:60min");
    }
    const auto air = parse_temperature(text.substr(0, at));
    const auto film = parse_film(text.substr(at + 1, colon - at - 1));
    const auto time = parse_duration(text.substr(colon + 1));
    if (!air) {
        return tl::make_unexpected(air.error());
    }
    if (!film) {
        return tl::make_unexpected(film.error());
    }
    if (!time) {
        return tl::make_unexpected(time.error());
    }
    if (film->si() < 0 || time->si() < 0) {
        return bad_input("must have a film coefficient and a time of 0 or more");
    }
    return HeatStage{*air, *film, *time};
}

}  // namespace

Result<std::vector<HeatStage>> parse_stages(std::string_view text) {
    std::vector<HeatStage> out;
    while (true) {
        const std::size_t comma = text.find(',');
        const auto stage = parse_stage(text.substr(0, comma));
        if (!stage) {
            return bad_input(
                fmt::format("stage {}, \"{}\": {}", out.size() + 1, text.substr(0, comma), stage.error().message));
        }
        out.push_back(*stage);
        if (comma == std::string_view::npos) {
            return out;
        }
        text.remove_prefix(comma + 1);
    }
}

}  // namespace sillwalk::engine
