// The advice for the invented demo site, kept as it is until somebody means to change it, and by hand where it is
// plain arithmetic. Each row says why a specialist would expect it.
#include "app/bundle/survey_json.hpp"
#include "app/data/load_catalogue.hpp"
#include "app/data/load_tables.hpp"
#include "assets/embedded.hpp"
#include "engine/select/assess.hpp"

#include <catch2/catch.hpp>

#include <algorithm>
#include <cmath>

using namespace sillwalk;
using engine::CheckId;
using engine::Finding;
using engine::Outcome;
using engine::Verdict;

namespace {

struct Demo {
    engine::Tables tables = app::load_tables().tables;
    engine::Catalogue catalogue = app::load_catalogue().catalogue;
    engine::Survey survey = app::read_survey(*assets::embedded("demo/quillwater.json")).survey;
    engine::Advice advice = engine::assess(survey, catalogue, tables);

    [[nodiscard]] const engine::CartAdvice& cart(std::string_view id) const {
        for (const engine::CartAdvice& row : advice.carts) {
            if (survey.carts[row.cart].id.text() == id) return row;
        }
        FAIL("no cart " << id);
        return advice.carts.front();
    }
};

const engine::RankedCandidate& headline(const engine::CartAdvice& cart) {
    return cart.nothing_holds ? *cart.nearest : cart.ranked.front();
}

const Finding& deciding(const engine::RankedCandidate& row) {
    return *std::max_element(row.findings.begin(), row.findings.end(), [](const Finding& a, const Finding& b) {
        return a.outcome != b.outcome ? a.outcome < b.outcome : a.use < b.use;
    });
}

struct Row {
    const char* cart;
    Verdict verdict;
    CheckId check;
    Outcome outcome;
    const char* wheel;
};

// clang-format off
constexpr Row rows[] = {
    // 19 mm and the tape's 1 mm are over 5 % of the largest wheel there is.
    {"tray-rack", Verdict::does_not_fit, CheckId::step, Outcome::fails, "bonded-iron-soft-8x2in"},
    // A 2 mm lip met from rest on a wet floor: one person's shoes do not hold what 220 kg ask.
    {"tub-dolly", Verdict::does_not_fit, CheckId::traction, Outcome::fails, "stainless-6x2in"},
    // 80 kg over small lips: a 4 in soft tread will do; the damp dock plate is what is near its limit.
    {"tote-cart", Verdict::fits_with_conditions, CheckId::traction, Outcome::tight, "bonded-polyolefin-4x1.25in"},
    // Non-marking was asked; a plain acetal bearing near its PV is cheap, closed and does not rust.
    {"ingredient-bin", Verdict::fits_with_conditions, CheckId::bearing, Outcome::tight, "urethane-nonmarking-125x35mm"},
    // Nightly chlorine: nylon lasts, the stainless bearing is good for short contact that is rinsed off.
    {"line-table", Verdict::fits_with_conditions, CheckId::chemical, Outcome::tight, "nylon-125x40mm"},
    // The wheel that the rack would have, without its sill.
    {"tug-train", Verdict::fits_with_conditions, CheckId::hygiene, Outcome::tight, "bonded-iron-soft-8x2in"},
    // A wet plate that may slope 8 %: the feet slip before anything else fails.
    {"dock-cage", Verdict::does_not_fit, CheckId::traction, Outcome::fails, "nylon-200x50mm"},
    // Lip and gap together stop the wheel: it tilts or jams.
    {"waste-bin", Verdict::does_not_fit, CheckId::push, Outcome::fails, "stainless-8x2in"},
};
// clang-format on

}  // namespace

TEST_CASE("the demo site's advice is what it was, and why", "[demo][golden]") {
    const Demo demo;
    CHECK(demo.advice.carts.size() == std::size(rows));
    for (const Row& row : rows) {
        const engine::CartAdvice& cart = demo.cart(row.cart);
        const engine::RankedCandidate& first = headline(cart);
        INFO(row.cart);
        CHECK(cart.nothing_holds == (row.verdict == Verdict::does_not_fit));
        CHECK(first.verdict == row.verdict);
        CHECK(demo.catalogue.wheels[first.candidate.wheel].id.text() == row.wheel);
        CHECK(engine::check_name(deciding(first).check) == std::string(engine::check_name(row.check)));
        CHECK(deciding(first).outcome == row.outcome);
    }
}

TEST_CASE("the demo's sill by hand: 20 mm against 5 % of 8 in", "[demo]") {
    const Demo demo;
    const Finding& step = deciding(headline(demo.cart("tray-rack")));
    CHECK(step.demand.si == Approx(0.019 + 0.001));
    CHECK(step.capacity.si == Approx(0.05 * 8 * 0.0254));  // 5 %, soft tread, [iso-22883], second-hand
    CHECK(step.use == Approx(20.0 / 10.16));
}

TEST_CASE("the demo's wet lip by hand: forces at the handle and what shoes hold", "[demo]") {
    // From rest over h = 2 + 1 mm with R = 3 in: F/W = sqrt(2Rh - h^2)/(R - h). Pushed at the handle, the force itself
    // loads the leading pair: W = W0 + F (H - R)/L, so F = r W0 / (1 - r (H - R)/L); then the other pair's rolling.
    const Demo demo;
    const engine::CartAdvice& advice = demo.cart("tub-dolly");
    const engine::Cart& cart = demo.survey.carts[advice.cart];
    const Finding& traction = deciding(headline(advice));
    const double R = 0.0762, h = 0.003, g = 9.80665;
    const double r = std::sqrt(2 * R * h - h * h) / (R - h);
    CHECK(r == Approx(0.2892).epsilon(1e-3));
    const auto greatest = [](const auto& reading) { return reading.value->si() + reading.tolerance.si(); };
    const double mass = greatest(cart.tare) + greatest(cart.payload);
    const double base = 0.56, forward = greatest(cart.cg_forward_loaded), handle = greatest(cart.handle_height);
    const double lead = mass * g * forward / base;
    const double climb = r * lead / (1 - r * (handle - R) / base);
    // The rest is rolling of the trailing pair: between nothing and 6 % of the whole weight.
    CHECK(traction.demand.si > climb);
    CHECK(traction.demand.si < climb + 0.06 * mass * g);
    CHECK(traction.capacity.si == Approx(0.7 * 50 * g * 0.35));  // reserve × person × friction of a wet rough floor
}
