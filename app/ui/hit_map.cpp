#include "app/ui/hit_map.hpp"

#include "engine/base/contract.hpp"

#include <algorithm>
#include <cstdio>
#include <map>
#include <utility>

namespace sillwalk::ui {

namespace {

/// Fills the next row, keeping the memory that it has.
template <class Row, class From>
Row& put(std::vector<Row>& rows, std::size_t& count, From&& from) {
    if (count == rows.size()) {
        rows.push_back(std::forward<From>(from));
    } else {
        rows[count] = std::forward<From>(from);
    }
    return rows[count++];
}

bool touchable(const Target& target) {
    return !target.covered && !target.visible.empty();
}

/// Levenshtein distance; ids are short.
std::size_t distance(std::string_view a, std::string_view b) {
    std::vector<std::size_t> row(b.size() + 1);
    for (std::size_t j = 0; j <= b.size(); ++j) row[j] = j;
    for (std::size_t i = 1; i <= a.size(); ++i) {
        std::size_t diagonal = row[0];
        row[0] = i;
        for (std::size_t j = 1; j <= b.size(); ++j) {
            const std::size_t substitute = diagonal + (a[i - 1] == b[j - 1] ? 0U : 1U);
            diagonal = row[j];
            row[j] = std::min({row[j] + 1, row[j - 1] + 1, substitute});
        }
    }
    return row.back();
}

/// Sorts one region top to bottom; targets beside each other from the left.
void append_rows(std::vector<const Target*> region, std::vector<std::string>& ids) {
    std::stable_sort(region.begin(), region.end(),
                     [](const Target* a, const Target* b) { return a->rect.y0 < b->rect.y0; });
    std::size_t begin = 0;
    while (begin < region.size()) {
        const float bottom = region[begin]->rect.y1;
        std::size_t end = begin + 1;
        while (end < region.size() && region[end]->rect.center().y < bottom) ++end;
        const auto first = region.begin() + static_cast<std::ptrdiff_t>(begin);
        const auto last = region.begin() + static_cast<std::ptrdiff_t>(end);
        std::stable_sort(first, last, [](const Target* a, const Target* b) { return a->rect.x0 < b->rect.x0; });
        for (auto it = first; it != last; ++it) ids.push_back((*it)->id);
        begin = end;
    }
}

}  // namespace

bool HitPart::has_target(std::string_view id) const {
    return std::any_of(targets.begin(), targets.end(), [id](const Target& target) { return target.id == id; });
}

void HitMap::clear() {
    target_count_ = 0;
    text_count_ = 0;
    scrolls_.clear();
    covers_.clear();
    order_.clear();
    by_id_.clear();
}

Target& HitMap::add(Target target) {
    add_id(target.id);
    return put(targets_, target_count_, std::move(target));
}

void HitMap::add_id(const std::string& id) {
    const bool is_new = find(id) == nullptr;
    if (!is_new) std::fprintf(stderr, "two targets share the id %s\n", id.c_str());
    EXPECT_CONTRACT(is_new);
    by_id_.add(id, target_count_);
    order_.push_back({true, target_count_});
}

TextItem& HitMap::add_text(TextItem item) {
    order_.push_back({false, text_count_});
    return put(texts_, text_count_, std::move(item));
}

HitMap::Mark HitMap::mark() const {
    return {target_count_, text_count_, order_.size(), scrolls_.size(), covers_.size()};
}

bool HitMap::take_part(const Mark& since, HitPart& part) const {
    if (covers_.size() != since.covers) return false;
    const auto targets_since = targets().subspan(since.targets);
    const auto texts_since = texts().subspan(since.texts);
    part.targets.assign(targets_since.begin(), targets_since.end());
    part.texts.assign(texts_since.begin(), texts_since.end());
    part.scrolls.assign(scrolls_.begin() + static_cast<std::ptrdiff_t>(since.scrolls), scrolls_.end());
    part.order.clear();
    for (std::size_t i = since.order; i < order_.size(); ++i) part.order.push_back(order_[i].is_target);
    return true;
}

void HitMap::add_part(const HitPart& part, float down, const Rect& view, std::uint16_t regions_before) {
    scrolls_.insert(scrolls_.end(), part.scrolls.begin(), part.scrolls.end());
    std::size_t next_target = 0;
    std::size_t next_text = 0;
    for (const bool is_target : part.order) {
        if (is_target) {
            const Target& from = part.targets[next_target++];
            add_id(from.id);
            Target& target = put(targets_, target_count_, from);
            target.region = static_cast<std::uint16_t>(from.region + regions_before);
            target.rect = from.rect.moved(0, down);
            target.visible = from.visible.moved(0, down).intersected(view);
            if (from.visible.empty() || target.visible.empty()) target.visible = {};
        } else {
            const TextItem& from = part.texts[next_text++];
            if (from.rect.moved(0, down).intersected(view).empty()) continue;
            order_.push_back({false, text_count_});
            put(texts_, text_count_, from).rect = from.rect.moved(0, down);
        }
    }
}

void HitMap::add_scroll(ScrollRegion region) {
    scrolls_.push_back(std::move(region));
}

void HitMap::cover(const Rect& area) {
    covers_.push_back({area, target_count_});
    for (ScrollRegion& region : scrolls_) {
        if (area.contains(region.view.center())) region.covered = true;
    }
    for (Target& target : std::span(targets_.data(), target_count_)) {
        const ScrollRegion* list = target.scroll_area.empty() ? nullptr : find_scroll(target.scroll_area);
        const bool out_of_view = target.visible.empty() && list != nullptr && list->covered;
        const bool below = !target.visible.empty() && area.contains(target.visible.center());
        if (out_of_view || below) target.covered = true;
    }
    for (TextItem& item : std::span(texts_.data(), text_count_)) {
        if (area.contains(item.rect.center())) item.covered = true;
    }
}

const Target* HitMap::find(std::string_view id) const {
    const std::size_t found = by_id_.find(id, [this](std::size_t at) { return std::string_view(targets_[at].id); });
    return found == engine::NameIndex::none ? nullptr : &targets_[found];
}

const TextItem* HitMap::find_text(std::string_view id) const {
    for (const TextItem& item : texts()) {
        if (!item.id.empty() && item.id == id) return &item;
    }
    return nullptr;
}

const ScrollRegion* HitMap::find_scroll(std::string_view id) const {
    for (const ScrollRegion& region : scrolls_) {
        if (region.id == id) return &region;
    }
    return nullptr;
}

const Target* HitMap::at(Point point) const {
    for (std::size_t i = target_count_; i-- > 0;) {
        if (!touchable(targets_[i]) || !targets_[i].visible.contains(point)) continue;
        return covered_at(i, point) ? nullptr : &targets_[i];
    }
    return nullptr;
}

bool HitMap::covered_at(std::size_t target, Point point) const {
    for (const Cover& cover : covers_) {
        if (target < cover.above && cover.area.contains(point)) return true;
    }
    return false;
}

const ScrollRegion* HitMap::scroll_at(Point point) const {
    for (std::size_t i = scrolls_.size(); i-- > 0;) {
        const ScrollRegion& region = scrolls_[i];
        if (!region.covered && region.max_offset > 0 && region.view.contains(point)) return &region;
    }
    return nullptr;
}

std::vector<std::string> HitMap::keyboard_order() const {
    std::map<std::uint16_t, std::vector<const Target*>> regions;
    for (const Target& target : targets()) {
        if (target.enabled && !target.covered) regions[target.region].push_back(&target);
    }
    std::vector<std::string> ids;
    for (auto& [number, region] : regions) append_rows(std::move(region), ids);
    return ids;
}

std::vector<std::string> HitMap::near_ids(std::string_view id, std::size_t count) const {
    std::vector<std::pair<std::size_t, std::string>> scored;
    for (const Target& target : targets()) {
        const bool part = target.id.find(id) != std::string::npos || id.find(target.id) != std::string_view::npos;
        scored.emplace_back(part ? 0 : distance(id, target.id), target.id);
    }
    std::sort(scored.begin(), scored.end());
    std::vector<std::string> ids;
    for (const auto& [score, name] : scored) {
        if (ids.size() < count) ids.push_back(name);
    }
    return ids;
}

std::string HitMap::describe() const {
    std::string out;
    for (const Entry& entry : order_) {
        if (entry.is_target) {
            const Target& target = targets_[entry.index];
            if (target.covered || target.visible.empty()) continue;
            out += "[" + target.label + "]";
            if (target.selected) out += " (chosen)";
            if (!target.enabled) out += " (not available)";
        } else {
            if (texts_[entry.index].covered) continue;
            out += texts_[entry.index].text;
        }
        out += "\n";
    }
    return out;
}

}  // namespace sillwalk::ui
