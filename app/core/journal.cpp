#include "app/core/journal.hpp"

#include <algorithm>
#include <utility>

namespace sillwalk::app {

std::int64_t Journal::add(std::string label, std::vector<Change> changes) {
    undone_.clear();
    done_.push_back({next_, std::move(label), std::move(changes)});
    if (done_.size() > limit) done_.erase(done_.begin());
    return next_++;
}

std::optional<JournalStep> Journal::undo() {
    if (done_.empty()) return std::nullopt;
    undone_.push_back(std::move(done_.back()));
    done_.pop_back();
    return undone_.back();
}

std::optional<JournalStep> Journal::redo() {
    if (undone_.empty()) return std::nullopt;
    done_.push_back(std::move(undone_.back()));
    undone_.pop_back();
    return done_.back();
}

void Journal::replay_edit(std::int64_t number, const std::string& label, const Change& change) {
    next_ = std::max(next_, number + 1);
    if (!done_.empty() && done_.back().number == number) {
        done_.back().changes.push_back(change);
        return;
    }
    undone_.clear();
    done_.push_back({number, label, {change}});
    if (done_.size() > limit) done_.erase(done_.begin());
}

// An undo or redo has one row per change; the first row of it moves the step, the others find it moved.
void Journal::replay_undo(std::int64_t number) {
    if (!done_.empty() && done_.back().number == number) (void)undo();
}
void Journal::replay_redo(std::int64_t number) {
    if (!undone_.empty() && undone_.back().number == number) (void)redo();
}

}  // namespace sillwalk::app
