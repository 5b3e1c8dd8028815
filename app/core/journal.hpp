#pragma once
/// What was done to a visit and can be undone. It is rebuilt from the database's append-only edits, so undo survives a
/// restart.

#include "app/bundle/entries.hpp"

#include <cstdint>
#include <optional>
#include <string>
#include <vector>

namespace sillwalk::app {

struct JournalStep {
    std::int64_t number = 0;
    std::string label;  ///< language key of what was done
    std::vector<Change> changes;
    friend bool operator==(const JournalStep&, const JournalStep&) = default;
};

class Journal {
public:
    static constexpr std::size_t limit = 2000;  ///< older steps can no longer be undone

    /// A new step; what was undone before can no longer be redone. Returns its number.
    std::int64_t add(std::string label, std::vector<Change> changes);
    /// The step to turn back, moved to the redo side; empty where there is none.
    [[nodiscard]] std::optional<JournalStep> undo();
    /// The step to do again.
    [[nodiscard]] std::optional<JournalStep> redo();

    [[nodiscard]] bool can_undo() const { return !done_.empty(); }
    [[nodiscard]] bool can_redo() const { return !undone_.empty(); }
    [[nodiscard]] const std::vector<JournalStep>& done() const { return done_; }
    [[nodiscard]] const std::vector<JournalStep>& undone() const { return undone_; }

    // Rebuilding from stored rows, oldest first.
    void replay_edit(std::int64_t number, const std::string& label, const Change& change);
    void replay_undo(std::int64_t number);
    void replay_redo(std::int64_t number);

    friend bool operator==(const Journal&, const Journal&) = default;

private:
    std::vector<JournalStep> done_, undone_;
    std::int64_t next_ = 1;
};

}  // namespace sillwalk::app
