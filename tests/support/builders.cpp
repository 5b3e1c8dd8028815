#include "tests/support/builders.hpp"

#include "engine/base/numeric_text.hpp"

namespace sillwalk::engine::test {
namespace {

/// Push, women: ergonomics of 2021 (Potvin et al., Ergonomics 64(8), p. 963), coefficients as printed there, divisors
/// inverted.
PushEquation women(PushAction action, PushPhase phase) {
    PushEquation row;
    row.action = action;
    row.phase = phase;
    row.sex = Sex::female;
    row.citation = 1;
    const bool start = phase == PushPhase::start;
    row.reference_kgf = start ? 36.9 : 25.5;
    row.height_constant = start ? -0.5304 : -0.6539;
    row.height_linear = start ? 1.0 / 0.3361 : 1.0 / 0.2941;
    row.height_square = start ? -1.0 / 0.6915 : -1.0 / 0.5722;
    row.distance_constant = start ? 1.0286 : 1.0391;
    row.distance_linear = start ? -1.0 / 72.22 : -1.0 / 52.91;
    row.distance_square = start ? 1.0 / 9782 : 1.0 / 7975;
    row.rate_constant = start ? 0.7251 : 0.6086;
    row.rate_log = start ? -1.0 / 13.19 : -1.0 / 11.95;
    row.rate_log_square = start ? -1.0 / 197.3 : -1.0 / 304.4;
    if (action == PushAction::push) row.variation = start ? 0.214 : 0.286;
    if (action == PushAction::pull) row.variation = start ? 0.234 : 0.298;
    return row;
}

PeopleLimits people() {
    PeopleLimits limits;
    for (const PushAction action : {PushAction::push, PushAction::pull}) {
        for (const PushPhase phase : {PushPhase::start, PushPhase::sustain}) {
            limits.equations.push_back(women(action, phase));
        }
    }
    limits.ranges.height_female = {0.58 * metre, 1.33 * metre};
    limits.ranges.height_male = {0.63 * metre, 1.44 * metre};
    limits.ranges.distance = {2.1 * metre, 61.0 * metre};
    limits.ranges.rate = {1.0 / 480.0 * per_minute, 10.0 * per_minute};
    limits.ranges.distance_rate_max = Speed::from_si(37.0 / 60.0);
    limits.ranges.caution_female = Speed::from_si(10.0 / 60.0);
    limits.ranges.caution_male = Speed::from_si(15.0 / 60.0);
    limits.ranges.citation = 1;
    // Ohio BWC / Ohio State University guideline, two hands straight, 80 % or more protected (second-hand).
    const double rows[][3] = {{32, 48, 41}, {36, 52, 52}, {40, 54, 62}, {44, 62, 69}, {48, 68, 73}};
    for (const auto& row : rows) {
        limits.biomechanical.push_back({row[0] * inch, row[1] * pound_force, row[2] * pound_force});
    }
    limits.biomechanical_citation = 1;
    limits.upper = sourced(225.0 * newton);               // CCOHS, whole body, standing
    limits.guide_start_female = sourced(150.0 * newton);  // HSE INDG143
    limits.guide_start_male = sourced(200.0 * newton);
    limits.guide_keep_female = sourced(70.0 * newton);
    limits.guide_keep_male = sourced(100.0 * newton);
    limits.body_mass = sourced(50.0 * kilogram);
    limits.traction_reserve = sourced(0.7);
    limits.cold_chill = sourced(0.95);
    limits.cold_freezer = sourced(0.90);
    return limits;
}

/// Obstacle and speed of the rating tests: ISO 22881, ISO 22883 and ANSI ICWM (all second-hand).
RatingClassRow rating(RatingClass rating_class, Speed speed, std::optional<double> share,
                      std::optional<Length> height) {
    RatingClassRow row;
    row.rating_class = rating_class;
    row.test_speed = sourced(speed);
    if (share) row.obstacle_share = sourced(*share);
    if (height) row.obstacle_height = sourced(*height);
    return row;
}

LoadFactorRow load_factor(MovedBy moved_by, bool rough, double low, double high) {
    LoadFactorRow row;
    row.moved_by = moved_by;
    row.over_five_percent = rough;
    row.factor = sourced(high);
    row.factor.low = low;
    row.factor.high = high;
    return row;
}

Practice practice() {
    Practice rules;
    rules.holds_below = sourced(0.85);
    rules.temperature_tight = sourced(5.0 * kelvin_step);
    rules.cold_use_per_kelvin = sourced(0.03);
    rules.parked_limit = sourced(14.0 * day);
    rules.parked_capacity_share = sourced(0.8);
    rules.flat_spot_share = sourced(0.03);
    rules.bevel_counts_as_slope = sourced(Slope::from_tangent(0.5));  // ADA 2010, 303.3
    rules.bridge_reserve = sourced(1.0);
    rules.bearing_service = sourced(10000.0 * hour);
    rules.life_wet_factor = sourced(0.1);
    rules.life_splash_factor = sourced(0.3);
    return rules;
}

Material urethane() {
    Material material;
    material.id = "urethane";
    material.name = "urethane";
    material.family = MaterialFamily::urethane;
    material.density = sourced(1200.0 * kilogram_per_cubic_metre);
    material.conductivity = sourced(0.25 * watt_per_metre_kelvin);
    material.specific_heat = sourced(1800.0 * joule_per_kilogram_kelvin);
    material.tan_delta = sourced(0.05);
    material.modulus = sourced(100.0 * megapascal);
    material.poisson = sourced(0.49);
    material.creep_per_decade = sourced(0.2);
    material.set_share = sourced(0.3);
    material.soft_segment = SoftSegment::ether;
    return material;
}

Room room(const char* id) {
    Room made;
    made.id = RoomId(id);
    made.name = id;
    made.air = measured(celsius(15.0));
    made.humidity = measured(0.5);
    made.air_movement = chosen(AirMovement::natural);
    made.wetness = chosen(Wetness::dry);
    made.floor = chosen(std::string("concrete"));
    made.hygiene = chosen(HygieneZone::none);
    made.cleanroom_class = chosen(0);
    return made;
}

Crossing doorway() {
    Crossing made;
    made.id = CrossingId("door");
    made.name = "door";
    made.from = RoomId("here");
    made.to = RoomId("there");
    made.kind = chosen(CrossingKind::doorway);
    made.rise = measured(Length{});
    made.gap = measured(Length{});
    made.slope = measured(Slope{});
    made.slope_length = measured(3.0 * metre);
    made.wetness = chosen(Wetness::dry);
    return made;
}

Cart plain_cart() {
    Cart cart;
    cart.id = CartId("cart");
    cart.name = "cart";
    cart.tare = measured(60.0 * kilogram);
    cart.payload = measured(240.0 * kilogram);
    for (const double forward : {0.0, 1.0}) {
        for (const double across : {-0.3, 0.3}) {
            cart.castors.push_back({forward * metre, across * metre, CastorFunction::swivel});
        }
    }
    cart.sharing = chosen(FloorSharing::all);
    cart.moved_by = chosen(MovedBy::hand);
    cart.people = measured(1.0);
    cart.cg_forward_loaded = measured(0.5 * metre);
    cart.cg_forward_empty = measured(0.5 * metre);
    cart.cg_height_loaded = measured(0.8 * metre);
    cart.cg_height_empty = measured(0.5 * metre);
    cart.handle_height = measured(1.0 * metre);
    cart.speed = measured(0.8 * metre_per_second);
    cart.push_distance = measured(7.6 * metre);
    cart.push_rate = measured(0.2 * per_minute);
    cart.parked_loaded = measured(1.0 * day);
    cart.trips_per_day = measured(10.0);
    cart.fork_width = measured(60.0 * millimetre);
    cart.axle_diameter = measured(12.0 * millimetre);
    cart.overall_height_limit = measured(200.0 * millimetre);
    cart.static_ask = chosen(StaticAsk::none);
    cart.non_marking = chosen(false);
    cart.route = {{RoomId("here"), measured(30.0 * minute), true, CrossingId("door")},
                  {RoomId("there"), measured(30.0 * minute), true, CrossingId("door")}};
    return cart;
}

}  // namespace

Tables plain_tables() {
    Tables tables;
    tables.edition = "test";
    tables.sources = {{"test", "figures of the tests", {}, {}, {}, {}, {}}};
    tables.citations = {{}, {"test", "as the test says", SourceStatus::read}};
    tables.materials = {urethane()};
    Floor concrete;
    concrete.id = concrete.name = "concrete";
    concrete.rolling_surface = "concrete";
    concrete.contact_limit = sourced(40.0 * megapascal);
    tables.floors = {concrete};
    // Shoe on floor: dry 0.6, wet smooth 0.2 (memory); frost 0.18 and melting ice 0.055 (footwear on ice, read in
    // abstract).
    const std::pair<Wetness, double> grips[] = {
        {Wetness::dry, 0.6},    {Wetness::damp, 0.6}, {Wetness::wet, 0.2},          {Wetness::greasy, 0.137},
        {Wetness::frost, 0.18}, {Wetness::ice, 0.18}, {Wetness::melting_ice, 0.055}};
    for (const auto& [wetness, friction] : grips) tables.friction.push_back({wetness, false, sourced(friction)});
    tables.rolling = {{MaterialFamily::urethane, "concrete", sourced(1.25 * millimetre)}};
    BearingRow ball;
    ball.kind = BearingKind::stainless_precision_ball;
    ball.friction = sourced(0.0);
    ball.static_safety = sourced(1.0);
    tables.bearings = {ball};
    tables.load_factors = {load_factor(MovedBy::hand, false, 1.0, 1.5), load_factor(MovedBy::hand, true, 1.5, 2.2),
                           load_factor(MovedBy::tug, false, 1.4, 2.0), load_factor(MovedBy::tug, true, 2.0, 3.0)};
    tables.rating_classes = {rating(RatingClass::institutional, 3.0 * kilometre_per_hour, 0.03, std::nullopt),
                             rating(RatingClass::industrial_soft, 4.0 * kilometre_per_hour, 0.05, std::nullopt),
                             rating(RatingClass::industrial_hard, 4.0 * kilometre_per_hour, 0.025, std::nullopt),
                             rating(RatingClass::drum_fixed, 2.0 * mile_per_hour, std::nullopt, 3.175 * millimetre)};
    for (const AirMovement movement :
         {AirMovement::still, AirMovement::natural, AirMovement::fans, AirMovement::blast}) {
        tables.film.push_back({movement, sourced(10.0 * watt_per_square_metre_kelvin)});
    }
    tables.people = people();
    tables.practice = practice();
    return tables;
}

Survey plain_survey() {
    Survey survey;
    survey.id = SurveyId("test");
    survey.invented = true;
    survey.rooms = {room("here"), room("there")};
    survey.crossings = {doorway()};
    survey.carts = {plain_cart()};
    return survey;
}

Wheel plain_wheel() {
    Wheel wheel;
    wheel.id = WheelId("wheel");
    wheel.construction = Construction::one_piece_urethane;
    wheel.tread_material = wheel.core_material = "urethane";
    wheel.diameter = 125.0 * millimetre;
    wheel.tread_width = 40.0 * millimetre;
    wheel.hardness = Hardness{HardnessScale::shore_d, 60.0};
    wheel.rated_load = 200.0 * kilogram;
    wheel.rating_class = RatingClass::industrial_soft;
    wheel.temperature_min = fahrenheit(-40.0);
    wheel.temperature_max = fahrenheit(180.0);
    wheel.impact_floor = fahrenheit(-20.0);
    wheel.non_marking = true;
    wheel.resistance_ohm = 1e10;
    wheel.cleanroom_class = 8;
    wheel.hub_length = 45.0 * millimetre;
    wheel.hub_bore = 32.0 * millimetre;
    wheel.bearings = {BearingId("ball")};
    wheel.source = "invented";
    return wheel;
}

Bearing plain_bearing() {
    Bearing bearing;
    bearing.id = BearingId("ball");
    bearing.kind = BearingKind::stainless_precision_ball;
    bearing.material = "urethane";
    bearing.bore = 15.0 * millimetre;
    bearing.axle_diameter = 12.0 * millimetre;
    bearing.outer_diameter = 32.0 * millimetre;
    bearing.length = 20.0 * millimetre;
    bearing.count = 2;
    bearing.dynamic_rating = 9.0 * kilonewton;
    bearing.static_rating = 5.0 * kilonewton;
    bearing.sealed = true;
    bearing.grease = "H1";
    bearing.source = "invented";
    return bearing;
}

Rig plain_rig() {
    Rig rig;
    rig.id = RigId("rig");
    rig.function = CastorFunction::swivel;
    rig.finish = RigFinish::stainless;
    rig.material = "urethane";
    rig.wheel_diameter = 125.0 * millimetre;
    rig.fork_width = 60.0 * millimetre;
    rig.axle_diameter = 12.0 * millimetre;
    rig.overall_height = 160.0 * millimetre;
    rig.swivel_lead = 40.0 * millimetre;
    rig.rated_load = 300.0 * kilogram;
    rig.source = "invented";
    return rig;
}

Catalogue plain_catalogue() {
    Catalogue catalogue;
    catalogue.name = "test";
    catalogue.edition = "test";
    catalogue.invented = true;
    catalogue.wheels = {plain_wheel()};
    catalogue.bearings = {plain_bearing()};
    catalogue.rigs = {plain_rig()};
    return catalogue;
}

template <class F>
Finding CheckCase::with_context(F&& f) const {
    const CartDemand demand = resolve(survey, 0, tables);
    CheckContext context;
    context.cart = &demand;
    context.tables = &tables;
    context.wheel = &wheel;
    context.bearing = &bearing;
    context.rig = &rig;
    context.tread = context.core = tables.material(wheel.tread_material);
    context.bearing_material = tables.material(bearing.material);
    context.rig_material = tables.material(rig.material);
    return f(context);
}

Finding CheckCase::run(CheckId check, Corner corner) const {
    return with_context([&](CheckContext& context) {
        context.corner = corner;
        return all_checks()[static_cast<std::size_t>(check)].run(context);
    });
}

Finding CheckCase::run_in_detail(CheckId check) const {
    return with_context([&](const CheckContext& context) {
        return run_check_in_detail(all_checks()[static_cast<std::size_t>(check)], context);
    });
}

Finding CheckCase::run_at(CheckId check, std::uint16_t pass) const {
    return with_context([&](CheckContext& context) {
        context.only_crossing = pass;
        return all_checks()[static_cast<std::size_t>(check)].run(context);
    });
}

std::string describe(const Finding& finding) {
    std::string text = std::string(check_name(finding.check)) + " " + outcome_name(finding.outcome) + " " +
                       statement_key(finding.statement) + " use " + number_text(finding.use) + " numbers";
    for (std::size_t i = 0; i < finding.number_count; ++i) text += " " + number_text(finding.numbers[i].si);
    for (const ReadingRef& ref : finding.missing) text += " missing " + reading_path(ref);
    return text;
}

}  // namespace sillwalk::engine::test
