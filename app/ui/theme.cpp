#include "app/ui/theme.hpp"

namespace sillwalk::ui {

namespace {

constexpr Theme light_theme() {
    Theme t;
    t.name = ThemeName::light;
    t.background = rgb(0xF3F5F7);
    t.surface = rgb(0xFFFFFF);
    t.text = rgb(0x12171C);
    t.text2 = rgb(0x3F4A55);
    t.disabled_text = rgb(0x5E6B77);
    t.outline = rgb(0x66737F);
    t.primary = rgb(0x00528F);
    t.on_primary = rgb(0xFFFFFF);
    t.pressed = rgb(0x003A66);
    t.focus = rgb(0x0072B2);
    t.route = rgb(0x0072B2);
    t.cold = rgb(0xDFEBF5);
    t.cool = rgb(0xEDF2F6);
    t.warm = rgb(0xFBEBD7);
    t.warm_strip = rgb(0xE3A657);
    t.hairline = rgb(0xD3DAE0);
    t.ground_hatch = rgb(0xA3AEB8);
    t.muted_fill = rgb(0xE3E7EB);
    t.selected_tint = rgb(0xE6F0F8);
    t.line = {rgb(0x00624A), rgb(0x7A4300), rgb(0xA12B00), rgb(0x4A5560), rgb(0x6A3A78)};
    t.badge = {BadgeColors{rgb(0xFFFFFF), rgb(0x00624A), rgb(0x00624A)},
               BadgeColors{rgb(0xFFD466), rgb(0x2B1800), rgb(0x7A4300)},
               BadgeColors{rgb(0x8C2300), rgb(0xFFFFFF), rgb(0x8C2300)},
               BadgeColors{rgb(0xE3E7EB), rgb(0x12171C), rgb(0x4A5560)},
               BadgeColors{rgb(0xFFFFFF), rgb(0x6A3A78), rgb(0x6A3A78)}};
    return t;
}

constexpr Theme sun_theme() {
    Theme t;
    t.name = ThemeName::sun;
    t.background = rgb(0xFFFFFF);
    t.surface = rgb(0xFFFFFF);
    t.text = rgb(0x000000);
    t.text2 = rgb(0x1E1E1E);
    t.disabled_text = rgb(0x4A4A4A);
    t.outline = rgb(0x000000);
    t.primary = rgb(0x003561);
    t.on_primary = rgb(0xFFFFFF);
    t.pressed = rgb(0x000000);
    t.focus = rgb(0x000000);
    t.route = rgb(0x003561);
    t.cold = rgb(0xFFFFFF);
    t.cool = rgb(0xFFFFFF);
    t.warm = rgb(0xFFFFFF);
    t.warm_strip = rgb(0xE3A657);
    t.hairline = rgb(0x000000);
    t.ground_hatch = rgb(0x7A7A7A);
    t.muted_fill = rgb(0xE8E8E8);
    t.selected_tint = rgb(0xE8E8E8);
    t.line = {rgb(0x003F2E), rgb(0x4A2800), rgb(0x6E1A00), rgb(0x2B2B2B), rgb(0x43184F)};
    t.badge = {BadgeColors{rgb(0xFFFFFF), rgb(0x003F2E), rgb(0x003F2E)},
               BadgeColors{rgb(0xFFCC33), rgb(0x000000), rgb(0x4A2800)},
               BadgeColors{rgb(0x5A1500), rgb(0xFFFFFF), rgb(0x5A1500)},
               BadgeColors{rgb(0xFFFFFF), rgb(0x000000), rgb(0x2B2B2B)},
               BadgeColors{rgb(0xFFFFFF), rgb(0x43184F), rgb(0x43184F)}};
    t.line_scale = 1.4F;
    t.text_scale = 1.13F;
    return t;
}

constexpr Theme dark_theme() {
    Theme t;
    t.name = ThemeName::dark;
    t.background = rgb(0x0D1115);
    t.surface = rgb(0x181E24);
    t.text = rgb(0xF3F6F8);
    t.text2 = rgb(0xB9C5CF);
    t.disabled_text = rgb(0x8794A0);
    t.outline = rgb(0x8593A0);
    t.primary = rgb(0x74BFF2);
    t.on_primary = rgb(0x00131F);
    t.pressed = rgb(0xA9DAFB);
    t.focus = rgb(0xF0E442);
    t.route = rgb(0x74BFF2);
    t.cold = rgb(0x16293A);
    t.cool = rgb(0x1C242B);
    t.warm = rgb(0x33281A);
    t.warm_strip = rgb(0xE3A657);
    t.hairline = rgb(0x3A454F);
    t.ground_hatch = rgb(0x566470);
    t.muted_fill = rgb(0x2A323A);
    t.selected_tint = rgb(0x14283A);
    t.line = {rgb(0x45D3A6), rgb(0xF5B83D), rgb(0xFF9161), rgb(0xAEB9C3), rgb(0xDDA3CB)};
    t.badge = {BadgeColors{rgb(0x181E24), rgb(0x45D3A6), rgb(0x45D3A6)},
               BadgeColors{rgb(0x5A3F08), rgb(0xFFDE8F), rgb(0xF5B83D)},
               BadgeColors{rgb(0xFF9161), rgb(0x1A0500), rgb(0xFF9161)},
               BadgeColors{rgb(0x2A323A), rgb(0xF3F6F8), rgb(0xAEB9C3)},
               BadgeColors{rgb(0x181E24), rgb(0xDDA3CB), rgb(0xDDA3CB)}};
    return t;
}

constexpr double text_least = 7;
constexpr double line_least = 3;
constexpr double disabled_least = 4.5;

}  // namespace

const Theme& theme(ThemeName name) {
    static constexpr Theme themes[] = {light_theme(), sun_theme(), dark_theme()};
    return themes[static_cast<std::size_t>(name)];
}

const char* theme_name(ThemeName name) {
    switch (name) {
        case ThemeName::light:
            return "light";
        case ThemeName::sun:
            return "sun";
        case ThemeName::dark:
            return "dark";
    }
    return "light";
}

std::vector<ContrastPair> contrast_pairs(const Theme& t) {
    std::vector<ContrastPair> pairs;
    const auto add_both = [&](const char* name, Color ink, double least) {
        pairs.push_back({name, ink, t.surface, least});
        pairs.push_back({name, ink, t.background, least});
    };
    add_both("text", t.text, text_least);
    add_both("text2", t.text2, text_least);
    add_both("disabled text", t.disabled_text, disabled_least);
    add_both("outline", t.outline, line_least);
    add_both("focus ring", t.focus, line_least);
    add_both("route line", t.route, line_least);
    for (const Color ground : {t.cold, t.cool, t.warm, t.selected_tint, t.muted_fill}) {
        pairs.push_back({"text on a room or tint", t.text, ground, text_least});
    }
    for (const Color ground : {t.cold, t.cool, t.warm}) {
        pairs.push_back({"text2 on a room", t.text2, ground, text_least});
        pairs.push_back({"outline of a room", t.outline, ground, line_least});
    }
    pairs.push_back({"text on primary", t.on_primary, t.primary, text_least});
    pairs.push_back({"text on pressed", t.on_primary, t.pressed, text_least});
    pairs.push_back({"primary on surface", t.primary, t.surface, text_least});
    for (std::size_t i = 0; i < badge_count; ++i) {
        pairs.push_back({"outcome text on surface", t.line[i], t.surface, text_least});
        pairs.push_back({"badge text", t.badge[i].text, t.badge[i].fill, text_least});
        pairs.push_back({"badge edge", t.badge[i].edge, t.surface, line_least});
    }
    return pairs;
}

}  // namespace sillwalk::ui
