#include "app/ui/ui_impl.hpp"
#include "engine/base/contract.hpp"

#include <algorithm>
#include <cmath>

namespace sillwalk::ui {

/// What a finger presses or the keyboard stands on looks otherwise.
bool Ui::Impl::in_hand(const HitPart& part) const {
    return (!touch.pressed.empty() && part.has_target(touch.pressed)) || (focus_visible && part.has_target(focus));
}

bool Ui::Impl::draw_kept(const KeptPart& part) {
    if (!quiet || part.since != changes || !(part.clip == clip()) || in_hand(part.hit)) return false;
    const float moved = cursor() - part.cursor;
    const float down = std::round(moved);
    if (std::fabs(moved - down) > 1e-3F) return false;  // letters stand on whole pixels
    if (down != 0 && !part.movable) return false;
    const bool lists_stand =
        std::all_of(part.hit.scrolls.begin(), part.hit.scrolls.end(),
                    [this](const ScrollRegion& list) { return scrolls.find(list.id)->second.offset == list.offset; });
    if (!lists_stand) return false;
    painter.draw_part(part.drawn, down);
    drawing.add_part(part.hit, down, clip(), region);
    region = static_cast<std::uint16_t>(region + part.regions);
    if (!layouts.empty()) layouts.back().cursor = cursor() + part.cursor_after - part.cursor;
    return true;
}

void Ui::Impl::build_part(KeptPart& part, const std::function<void()>& build) {
    part.since = 0;
    const bool in_column = layouts.empty() || layouts.back().cells.empty();
    if (!quiet || !in_column) return build();
    const PartStart start = painter.start_part(false);
    const HitMap::Mark mark = drawing.mark();
    const std::uint64_t passing_before = passing_count;
    begin_part(part);
    build();
    // What moves by itself, or on and on under a finger, is not worth a copy.
    if (passing_count != passing_before || !painter.end_part(start, part.drawn)) return;
    if (drawing.take_part(mark, part.hit)) finish_part(part, false);
}

/// All of it is drawn, as if there were no edge of the list, and only then put in its place.
void Ui::Impl::build_block(KeptPart& part, const std::function<void()>& build) {
    part.since = 0;
    const bool in_column = layouts.back().cells.empty();
    if (!quiet || !in_column) return build();
    const PartStart start = painter.start_part(true);
    const std::uint64_t passing_before = passing_count;
    begin_part(part);
    aside.clear();
    std::swap(drawing, aside);
    clips.push_back({-far_away, -far_away, far_away, far_away});
    build();
    clips.pop_back();
    std::swap(drawing, aside);
    const bool no_sheet = aside.take_part({}, part.hit);
    EXPECT_CONTRACT(no_sheet);
    const bool taken = painter.end_part(start, part.drawn);
    if (taken) painter.draw_part(part.drawn, 0);
    finish_part(part, part.hit.scrolls.empty());
    drawing.add_part(part.hit, 0, clip(), static_cast<std::uint16_t>(region - part.regions));
    if (!taken || passing_count != passing_before) part.since = 0;
}

void Ui::Impl::begin_part(KeptPart& part) const {
    part.clip = clip();
    part.cursor = cursor();
    part.regions = region;
}

void Ui::Impl::finish_part(KeptPart& part, bool movable) const {
    for (Target& target : part.hit.targets) target.region = static_cast<std::uint16_t>(target.region - part.regions);
    part.regions = static_cast<std::uint16_t>(region - part.regions);
    part.cursor_after = cursor();
    part.movable = movable;
    part.since = in_hand(part.hit) ? 0 : changes;
}

void Ui::kept(std::string_view id, const std::function<void()>& build) {
    Impl& ui = *impl_;
    auto found = ui.kept.find(id);
    if (found == ui.kept.end()) found = ui.kept.try_emplace(std::string(id)).first;
    if (!ui.draw_kept(found->second)) ui.build_part(found->second, build);
}

void Ui::set_content(std::uint64_t number) {
    if (number == 0 || number != impl_->content) {
        ++impl_->changes;
        impl_->kept.clear();
    }
    if (number == 0) impl_->quiet = false;
    impl_->content = number;
}

void Ui::block(const std::function<void()>& build) {
    Impl& ui = *impl_;
    EXPECT_CONTRACT(!ui.scroll_stack.empty() && !ui.in_block);
    ScrollState& state = ui.scrolls.find(ui.scroll_stack.back())->second;
    const std::size_t number = state.next_block++;
    const float top = ui.layout().cursor;
    const bool known = number < state.block_heights.size();
    if (known && ui.editing.empty()) {
        // What lies a little outside is there for the keyboard, which walks on to it.
        const float near = 2 * ui.metrics.target_size(TargetClass::row);
        const float bottom = top + state.block_heights[number];
        if (bottom < state.view.y0 - near || top > state.view.y1 + near) {
            ui.layout().cursor = bottom;
            return;
        }
    }
    if (known && ui.draw_kept(state.blocks[number])) return;
    ui.in_block = true;
    if (known) {
        ui.build_block(state.blocks[number], build);
    } else {
        // Measured first: most of a long list is far from the view, and the next frame leaves it out.
        ++ui.passing_count;
        build();
        state.block_heights.push_back(0);
        state.blocks.emplace_back();
    }
    ui.in_block = false;
    state.block_heights[number] = ui.layout().cursor - top;
}

}  // namespace sillwalk::ui
