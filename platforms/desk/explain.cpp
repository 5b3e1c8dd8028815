// sillwalk-desk explain SURVEY.json --cart X --check Y: the reason behind one finding, down to formula and source.

#include "engine/select/assess.hpp"
#include "platforms/desk/subcommand.hpp"
#include "platforms/desk/workspace.hpp"

#include <CLI/CLI.hpp>
#include <fmt/format.h>

#include <string>

namespace sillwalk::desk {

namespace {

struct Options {
    WorkspaceFiles files;
    std::string cart, check;
    bool present = false;
};

void print_line(const char* title, const std::string& text) {
    if (!text.empty()) fmt::print("{:<13}{}\n", title, text);
}
void print_lines(const char* title, const std::vector<std::string>& lines) {
    for (std::size_t i = 0; i < lines.size(); ++i) print_line(i == 0 ? title : "", lines[i]);
}

void print_explanation(const app::Explanation& why) {
    fmt::print("{}: {}\n", why.check, why.question);
    print_line("Outcome", why.outcome);
    print_line("Where", why.place);
    print_line("In words", why.sentence);
    print_line("Compared", why.compared);
    print_line("Formula", why.formula);
    print_line("Numbers", why.inserted);
    print_line("Valid for", why.range);
    print_lines("Condition", why.conditions);
    print_lines("Assumed", why.assumptions);
    print_lines("Readings", why.drivers);
    print_lines("Missing", why.missing);
    for (std::size_t i = 0; i < why.sources.size(); ++i) {
        const app::SourceLine& source = why.sources[i];
        print_line(i == 0 ? "Source" : "", fmt::format("{}{}{} ({})", source.title, source.locator.empty() ? "" : ", ",
                                                       source.locator, source.status));
    }
}

std::optional<engine::CheckId> find_check(const std::string& wanted) {
    std::string right;
    for (std::size_t i = 0; i < engine::check_count; ++i) {
        const auto check = static_cast<engine::CheckId>(i);
        if (wanted == engine::check_name(check)) return check;
        right += (right.empty() ? "" : ", ") + std::string(engine::check_name(check));
    }
    fmt::print(stderr, "--check: '{}' is not a check; the checks are: {}\n", wanted, right);
    return std::nullopt;
}

const engine::RankedCandidate* subject(const engine::CartAdvice& advice, bool present) {
    if (present) return advice.present ? &*advice.present : nullptr;
    if (!advice.ranked.empty()) return &advice.ranked.front();
    return advice.nearest ? &*advice.nearest : nullptr;
}

int run(const Options& options) {
    const auto check = find_check(options.check);
    if (!check) return exit_bad_input;
    const auto work = open_workspace(options.files);
    if (!work) return exit_bad_input;
    engine::AssessOptions only;
    only.only_cart = find_cart(work->survey, options.cart);
    if (!only.only_cart) return exit_bad_input;
    const engine::Advice advice = engine::assess(work->survey, work->catalogue, work->tables, only);
    const engine::RankedCandidate* candidate = subject(advice.carts.front(), options.present);
    if (candidate == nullptr) {
        fmt::print(stderr, "--cart: no wheel of the catalogue is named as the present one of this cart\n");
        return exit_refused;
    }
    fmt::print("{}, {}\n\n", work->survey.carts[*only.only_cart].name,
               app::candidate_name(candidate->candidate, work->text()));
    for (const engine::Finding& finding : candidate->findings) {
        if (finding.check == *check) print_explanation(app::explain(finding, work->text()));
    }
    return exit_ok;
}

}  // namespace

int run_explain(int argc, char** argv) {
    CLI::App command{"The reason behind one check of one cart: sentence, formula, numbers, range, sources",
                     "sillwalk-desk explain"};
    Options options;
    add_workspace_options(command, options.files);
    command.add_option("--cart", options.cart, "The cart, by name or id")->required();
    command.add_option("--check", options.check, "load, parked, step, gap, cold, heat …")->required();
    command.add_flag("--present", options.present, "The wheel that is on the cart now, in place of the advice");
    if (const auto status = parse(command, argc, argv)) return *status;
    return run(options);
}

}  // namespace sillwalk::desk
