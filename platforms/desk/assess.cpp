// sillwalk-desk assess SURVEY.json: advice for the carts of a survey, as a table for a person or as JSON for a program.

#include "engine/select/assess.hpp"

#include "app/bundle/advice_json.hpp"
#include "app/core/plausible_ranges.hpp"
#include "app/text/read_again.hpp"
#include "app/text/site.hpp"
#include "app/text/would_hold.hpp"
#include "engine/select/limits.hpp"
#include "engine/select/sampling.hpp"
#include "engine/select/site_set.hpp"
#include "platforms/desk/subcommand.hpp"
#include "platforms/desk/workspace.hpp"

#include <CLI/CLI.hpp>
#include <fmt/format.h>

#include <algorithm>
#include <cstdint>
#include <cstdio>
#include <optional>
#include <string>

namespace sillwalk::desk {

namespace {

using app::Explanation;
using engine::CartAdvice;
using engine::Finding;
using engine::Outcome;
using engine::RankedCandidate;

constexpr std::size_t default_draws = 2000;

struct Options {
    WorkspaceFiles files;
    bool json = false;
    bool limits = false;
    std::string cart;
    std::size_t top = 3;
    std::optional<std::size_t> draws;
    std::uint64_t seed = 1;
};

const RankedCandidate* headline(const CartAdvice& advice) {
    if (!advice.ranked.empty()) return &advice.ranked.front();
    return advice.nearest ? &*advice.nearest : nullptr;
}

/// What decides: the worst outcome, then the greatest use.
const Finding* deciding(const RankedCandidate& candidate) {
    const Finding* worst = nullptr;
    for (const Finding& finding : candidate.findings) {
        const bool worse = worst == nullptr || finding.outcome > worst->outcome ||
                           (finding.outcome == worst->outcome && finding.has_use && finding.use > worst->use);
        if (finding.outcome != Outcome::does_not_apply && worse) worst = &finding;
    }
    return worst;
}

std::string decided_by(const Finding& finding, const Workspace& work) {
    const app::TextContext text = work.text();
    const bool rolling = finding.needs_rolling && finding.outcome == Outcome::tight;
    const std::string compared = rolling ? work.language.get("condition.rolling") : app::compared(finding, text);
    std::string out = work.language.get(std::string("check.") + engine::check_name(finding.check));
    const std::string place = app::place_name(finding.place, work.survey);
    if (!place.empty()) out += ", " + place;
    return out + ": " + (compared.empty() ? app::sentence(finding, text) : compared);
}

std::string answer(const CartAdvice& advice, const Workspace& work) {
    if (advice.nothing_holds) return work.language.get("desk.nothing_holds");
    return work.language.get(std::string("verdict.") + [&] {
        std::string key = engine::verdict_name(advice.ranked.front().verdict);
        for (char& c : key) {
            if (c == ' ') c = '_';
        }
        return key;
    }());
}

void print_summary(const engine::Advice& advice, const Workspace& work) {
    for (const CartAdvice& cart : advice.carts) {
        const RankedCandidate* first = headline(cart);
        const Finding* decides = first != nullptr ? deciding(*first) : nullptr;
        fmt::print("{} {}\n", cell(work.survey.carts[cart.cart].name, 34), answer(cart, work));
        if (first == nullptr) continue;
        const char* role = cart.nothing_holds ? "desk.nearest" : "desk.choice";
        fmt::print("   {} {}\n", cell(work.language.get(role), 18), app::candidate_name(first->candidate, work.text()));
        if (decides != nullptr) {
            fmt::print("   {} {}\n", cell(work.language.get("desk.decides"), 18), decided_by(*decides, work));
        }
    }
}

void print_list(const char* title, const std::vector<std::string>& lines) {
    for (std::size_t i = 0; i < lines.size(); ++i) fmt::print("      {:<12}{}\n", i == 0 ? title : "", lines[i]);
}

void print_finding(const Finding& finding, const Workspace& work) {
    const Explanation why = app::explain(finding, work.text());
    fmt::print("    {} {} {}{}\n", cell(why.check, 11), cell(why.outcome, 11),
               why.place.empty() ? "" : why.place + ": ", why.sentence);
    print_list("", why.conditions);
}

void print_candidate(const RankedCandidate& row, std::size_t place, const Workspace& work) {
    const Finding* decides = deciding(row);
    fmt::print("  {}. {}\n     {}\n", place, app::candidate_name(row.candidate, work.text()),
               decides != nullptr ? decided_by(*decides, work) : "");
}

void print_findings(const RankedCandidate& row, const Workspace& work) {
    for (const Finding& finding : row.findings) {
        if (finding.outcome != Outcome::does_not_apply) print_finding(finding, work);
    }
}

void print_conditions(const CartAdvice& advice, const Workspace& work) {
    if (!advice.conditions || advice.conditions->empty()) return;
    fmt::print("  {}\n", work.language.get("desk.conditions"));
    for (const std::string& line : app::conditions_text(*advice.conditions, work.text())) fmt::print("    {}\n", line);
}

void print_would_hold(const CartAdvice& advice, const Workspace& work, std::size_t families) {
    if (!advice.would_hold || advice.would_hold->empty()) return;
    fmt::print("  {}\n", work.language.get("desk.would_hold"));
    auto texts = app::would_hold_text(*advice.would_hold, work.text());
    texts.resize(std::min(families, texts.size()));
    for (const app::FamilyLimitsText& family : texts) {
        fmt::print("    {}\n", family.candidate);
        for (const app::CheckLimitsText& check : family.checks) {
            const std::string place = check.place.empty() ? "" : ", " + check.place;
            fmt::print("      {}{}: {}\n", check.check, place, check.compared);
            for (const std::string& line : check.limits) fmt::print("        {}\n", line);
            for (const std::string& line : check.notes) fmt::print("        {}\n", line);
        }
    }
}

void print_read_again(const CartAdvice& advice, const Workspace& work) {
    if (!advice.read_again) return;
    const app::ReadAgainText text = app::read_again_text(*advice.read_again, advice, work.text());
    fmt::print("  {}\n    {}\n", work.language.get("desk.read_again"), text.headline);
    for (const auto* lines : {&text.answers, &text.readings, &text.notes}) {
        for (const std::string& line : *lines) fmt::print("    {}\n", line);
    }
    if (!text.missing.empty()) fmt::print("  {}\n", work.language.get("desk.missing_would"));
    for (const app::MissingText& missing : text.missing) {
        fmt::print("    {}\n", missing.reading);
        for (const std::string& line : missing.lines) fmt::print("      {}\n", line);
    }
}

void print_site(const engine::Advice& advice, const Workspace& work) {
    if (!advice.site) return;
    const app::SiteText text = app::site_text(*advice.site, work.text());
    fmt::print("\n{}\n", work.language.get("desk.site"));
    for (const app::KindSetText& set : text.sets) {
        fmt::print("   {}\n", set.title);
        for (const std::string& line : set.lines) fmt::print("      {}\n", line);
    }
    if (!text.nothing_holds.empty()) fmt::print("   {}\n", text.nothing_holds);
}

void print_detail(const CartAdvice& advice, const Workspace& work, std::size_t top) {
    const engine::Cart& cart = work.survey.carts[advice.cart];
    fmt::print("\n{}: {}\n", cart.name, answer(advice, work));
    std::size_t place = 0;
    for (const RankedCandidate& row : advice.ranked) print_candidate(row, ++place, work);
    if (advice.runner_up) {
        fmt::print("  {}: {}\n", work.language.get("answer.runner_up"),
                   app::candidate_name(advice.runner_up->candidate, work.text()));
    }
    const RankedCandidate* first = headline(advice);
    if (advice.nothing_holds && first != nullptr) {
        fmt::print("  {}: {}\n", work.language.get("desk.nearest"), app::candidate_name(first->candidate, work.text()));
    }
    if (first != nullptr) print_findings(*first, work);
    print_conditions(advice, work);
    if (!advice.not_read.empty()) {
        std::vector<std::string> names;
        for (const auto& ref : advice.not_read) names.push_back(app::reading_name(ref, work.text()));
        fmt::print("  {}\n", work.language.get("desk.not_read"));
        for (const std::string& name : names) fmt::print("    {}\n", name);
    }
    fmt::print("  {}\n", work.language.fill("desk.turned_down", {std::to_string(advice.turned_down_total),
                                                                 std::to_string(advice.candidates_total)}));
    for (const engine::TurnedDown& row : advice.turned_down) {
        fmt::print("    {}\n      {}\n", app::candidate_name(row.candidate, work.text()),
                   decided_by(row.first_failing, work));
    }
    print_would_hold(advice, work, top);
    print_read_again(advice, work);
    if (advice.present) {
        const Finding* decides = deciding(*advice.present);
        fmt::print("  {}: {}\n    {}\n", work.language.get("desk.present"),
                   app::candidate_name(advice.present->candidate, work.text()),
                   decides != nullptr ? decided_by(*decides, work) : "");
    }
}

void print_human(const engine::Advice& advice, const Workspace& work, bool detail, std::size_t top) {
    fmt::print(
        "{}\n{}\n\n", work.survey.site,
        work.language.fill("desk.editions", {advice.engine_version, advice.catalogue_edition, advice.tables_edition}));
    print_summary(advice, work);
    if (detail) {
        for (const CartAdvice& cart : advice.carts) print_detail(cart, work, top);
    } else {
        print_site(advice, work);
        fmt::print("\n{}\n", work.language.get("desk.more"));
    }
    fmt::print("\n{}\n", work.language.get("caution.codes"));
}

bool add_read_again(engine::Advice& advice, const Workspace& work, std::size_t draws, std::uint64_t seed) {
    std::vector<engine::Error> errors;
    const app::EntryTables tables = app::load_entry_tables(errors);
    print_errors("tables", errors);
    engine::SamplingOptions sampling;
    sampling.draws = draws;
    sampling.seed = seed;
    for (CartAdvice& cart : advice.carts) {
        const auto ranges = app::plausible_ranges(tables, work.survey, cart.not_read);
        cart.read_again = engine::read_again(work.survey, work.catalogue, work.tables, cart, ranges, sampling);
    }
    return errors.empty();
}

int run(const Options& options) {
    const auto work = open_workspace(options.files);
    if (!work) return exit_bad_input;
    engine::AssessOptions assess_options;
    assess_options.ranked = options.top;
    assess_options.turned_down = options.top;
    if (!options.cart.empty()) {
        assess_options.only_cart = find_cart(work->survey, options.cart);
        if (!assess_options.only_cart) return exit_bad_input;
    }
    engine::Advice advice = engine::assess(work->survey, work->catalogue, work->tables, assess_options);
    const bool detail = !options.cart.empty();
    if (options.limits || (detail && !options.json)) {
        engine::complete_advice(advice, work->survey, work->catalogue, work->tables);
    }
    const std::size_t draws = options.draws.value_or(detail && !options.json ? default_draws : 0);
    if (draws > 0 && !add_read_again(advice, *work, draws, options.seed)) return exit_failed;
    if (!detail) advice.site = engine::site_advice(work->survey, work->catalogue, work->tables);
    if (options.json) {
        fmt::print(
            "{}\n",
            app::advice_to_json(advice, work->survey, work->catalogue, work->tables, app::NumberForm::number).dump(1));
    } else {
        print_human(advice, *work, detail, options.top);
    }
    return exit_ok;
}

}  // namespace

int run_assess(int argc, char** argv) {
    CLI::App command{
        "Advice for the carts of a survey: ranked candidates, what was turned down and why, what is not known",
        "sillwalk-desk assess"};
    Options options;
    add_workspace_options(command, options.files);
    command.add_flag("--json", options.json, "Print the whole advice as JSON (docs/reference/advice.schema.json)");
    command.add_flag("--limits", options.limits,
                     "With --json: also what would make it hold, and the conditions of use");
    command
        .add_option("--draws", options.draws,
                    "How often the readings are drawn inside their tolerances, to see whether the first choice "
                    "stays first and which readings to take again; 2000 with --cart, 0 for none")
        ->check(CLI::Range(0, 1000000));
    command.add_option("--seed", options.seed, "Start of the draws: the same seed gives the same answer");
    command.add_option("--cart", options.cart, "Only this cart, by name or id, with every check");
    command.add_option("--top", options.top, "How many ranked and how many turned-down candidates are kept")
        ->check(CLI::Range(1, 100));
    if (const auto status = parse(command, argc, argv)) return *status;
    return run(options);
}

}  // namespace sillwalk::desk
