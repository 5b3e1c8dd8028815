#include "app/ui/metrics.hpp"

#include <algorithm>
#include <cmath>

namespace sillwalk::ui {

namespace {

constexpr float mm_per_dp = 25.4F / 160;

/// Line heights in dp. A phone is held nearer (350 mm against 500 mm), so the same angle needs less.
constexpr std::array<float, text_role_count> tablet_sizes{24, 24, 28, 30, 36, 48, 56, 72};
constexpr std::array<float, text_role_count> phone_sizes{22.4F, 22.4F, 24.6F, 26.7F, 31, 38.4F, 47, 58};

constexpr float compact_below_dp = 600;
constexpr float expanded_from_dp = 840;

WidthClass width_class_of(const FrameInput& input, float px_per_dp) {
    const float width_dp = input.width / px_per_dp;
    if (width_dp < compact_below_dp) return WidthClass::compact;
    return width_dp >= expanded_from_dp && input.width > input.height ? WidthClass::expanded : WidthClass::medium;
}

}  // namespace

Metrics::Metrics(const FrameInput& input, const UiSettings& settings) {
    px_per_mm_ = settings.px_per_mm > 0 ? settings.px_per_mm : input.px_per_mm;
    px_per_dp_ = px_per_mm_ * mm_per_dp;
    screen = {input.safe_area.left, input.safe_area.top, input.width - input.safe_area.right,
              input.height - input.safe_area.bottom};
    width_class = width_class_of(input, px_per_dp_);
    glove = settings.glove;
    left_handed = settings.left_handed;

    const Theme& colors = sillwalk::ui::theme(settings.theme);
    const float text_scale = colors.text_scale * static_cast<float>(settings.text_percent) / 100;
    const auto& sizes = compact() ? phone_sizes : tablet_sizes;
    for (std::size_t i = 0; i < text_role_count; ++i) {
        const bool scales = static_cast<TextRole>(i) != TextRole::smallest;
        text_size_[i] = std::round(dp(sizes[i] * (scales ? text_scale : 1)));
    }

    gap = std::ceil(mm(glove ? 2.0F : 1.5F));
    gap_irreversible = std::ceil(mm(glove ? 6.0F : 4.0F));
    edge = std::ceil(mm(glove ? 3.0F : 2.0F));
    slop = dp(glove ? 12.0F : 10.0F);
    gutter = std::round(mm(compact() ? 2.0F : 4.0F));
    pad = std::round(mm(compact() ? 2.4F : 3.0F));
    radius = std::round(dp(8.5F));
    hairline = dp(1.6F);
    outline = dp(2.1F) * colors.line_scale;
    focus = dp(3.2F);
    floor_line = dp(3.8F) * colors.line_scale;
    icon = std::round(mm(5.6F));
    rail_width = std::round(mm(17.6F) * std::max(1.0F, text_scale));
    const float title_lines = text_size(TextRole::section) + line_height(TextRole::caption);
    top_height = edge + std::ceil(std::max(target_size(TargetClass::row), title_lines + dp(12)));
    answer_height = std::ceil(std::max(mm(compact() ? 17.6F : 20.0F), answer_head() + answer_reason() + dp(20)));
    const float tab = icon + line_height(TextRole::caption) + dp(12);
    bottom_height = edge + std::ceil(std::max(target_size(TargetClass::row), tab));
}

float Metrics::answer_head() const {
    return line_height(compact() ? TextRole::row : TextRole::value);
}

float Metrics::answer_reason() const {
    const float lines = width_class == WidthClass::expanded ? 1 : 2;
    return lines * line_height(compact() ? TextRole::caption : TextRole::body);
}

float Metrics::target_size(TargetClass target_class) const {
    switch (target_class) {
        case TargetClass::row:
            return std::ceil(mm(glove ? 14.0F : 9.6F));
        case TargetClass::key:
            return std::ceil(mm(glove ? 15.2F : 12.0F));
        case TargetClass::irreversible:
            return std::ceil(mm(glove ? 20.0F : 14.0F));
    }
    return mm(14);
}

}  // namespace sillwalk::ui
