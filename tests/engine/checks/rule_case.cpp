#include "rule_case.hpp"

namespace sillwalk::engine::test {
namespace {

ChemicalRating rating(ChemicalLevel level, std::string status = "read", std::string disagreement = {}) {
    ChemicalRating made;
    made.level = level;
    made.status = std::move(status);
    made.disagreement = std::move(disagreement);
    made.citation = 2;
    return made;
}

ChemicalRow row(std::string agent, std::string id, std::optional<double> strength, Temperature hottest,
                std::vector<std::optional<ChemicalRating>> ratings) {
    ChemicalRow made;
    made.agent = std::move(agent);
    made.id = std::move(id);
    made.name = made.id;
    made.strength = strength;
    made.temperature_max = hottest;
    made.ratings = std::move(ratings);
    return made;
}

/// A few rows on our own scale, from memory: pu-ether, acetal-copolymer, ss304, zinc-plated-steel. Supported by what
/// was read: urethane in hot water [urethane-hydrolysis-review], acetal in chlorine [polyoxymethylene-degradation].
Chemicals chemicals() {
    constexpr auto suited = ChemicalLevel::suited, watch = ChemicalLevel::watch,
                   short_contact = ChemicalLevel::short_contact, unfit = ChemicalLevel::unfit;
    Chemicals made;
    made.materials = {"pu-ether", "acetal-copolymer", "ss304", "zinc-plated-steel"};
    made.rows = {
        row("hot-water", "hot-water", std::nullopt, celsius(82.0),
            {rating(short_contact), rating(watch), rating(suited), rating(short_contact)}),
        row("nitric-acid", "nitric-acid", 0.02, celsius(50.0),
            {rating(short_contact), rating(unfit), rating(suited), rating(unfit)}),
        row("quaternary-ammonium", "quaternary-ammonium", 0.0004, celsius(40.0),
            {rating(suited, "memory"), rating(suited), rating(suited), rating(watch)}),
        row("sodium-hypochlorite", "sodium-hypochlorite-200-ppm", 0.0002, celsius(40.0),
            {rating(watch), rating(watch, "read", "one chart says good, a text reports cracking"), rating(watch),
             rating(short_contact)}),
        row("sodium-hypochlorite", "sodium-hypochlorite-5-percent", 0.05, celsius(25.0),
            {rating(short_contact), rating(unfit), rating(unfit), rating(unfit)}),
    };
    return made;
}

Practice practice() {
    Practice made;
    made.holds_below = figure(0.85);
    made.cold_use_per_kelvin = figure(0.03);
    made.short_contact = figure(30.0 * minute);
    made.rust_damp_use = figure(0.95);
    made.rust_wet_use = figure(1.5);
    made.bearing_service = figure(5.0 * 365.0 * day);
    made.quiet_hardness = figure(90.0);
    made.life_wet_factor = figure(0.1);
    made.life_splash_factor = figure(0.3);
    made.conductive_ohm = figure(1e4);
    made.conductive_ohm_other = figure(1e5);
    made.antistatic_low_ohm = figure(1e5);
    made.antistatic_high_ohm = figure(1e7);
    made.bevel_counts_as_slope = figure(Slope::from_tangent(0.5));
    return made;
}

/// The feature scores (our judgement), and what the areas of EN 1672-2 ask.
void add_hygiene(Tables& tables) {
    using enum HygieneFeature;
    tables.hygiene = {
        {open_hub, figure(0.0)},       {spoked_core, figure(0.0)},       {visible_tread_joint, figure(2.0)},
        {thread_guard, figure(1.0)},   {exposed_threads, figure(0.0)},   {hollow_back, figure(0.0)},
        {exposed_grease, figure(0.0)}, {exposed_h1_grease, figure(2.0)}, {open_bearing_grease, figure(2.0)},
        {closed, figure(3.0)}};
    tables.hygiene_zones = {
        {HygieneZone::non_food, figure(1.0)}, {HygieneZone::splash, figure(2.0)}, {HygieneZone::food, figure(3.0)}};
}

void add_bearings(Tables& tables) {
    BearingRow plain;
    plain.kind = BearingKind::plain_acetal;
    plain.pressure_limit = figure(6.9 * megapascal);
    plain.pv_limit = figure(PressureVelocity::from_si(105000.0));
    plain.temperature_max = figure(celsius(82.0));
    BearingRow ball;
    ball.kind = BearingKind::stainless_precision_ball;
    ball.static_safety = figure(1.0);
    BearingRow roller;
    roller.kind = BearingKind::roller;
    roller.static_safety = figure(3.0);
    roller.static_safety->low = 1.5;
    roller.static_safety->high = 3.0;
    tables.bearings = {plain, ball, roller};
}

Material material(std::string id, MaterialFamily family, std::string column, Pressure modulus, double poisson) {
    Material made;
    made.id = made.name = std::move(id);
    made.family = family;
    made.chemical_column = std::move(column);
    made.modulus = figure(modulus);
    made.poisson = figure(poisson);
    return made;
}

void add_cart(CartDemand& cart, const Floor& floor) {
    cart.tare = read(60.0 * kilogram, Field::cart_tare);
    cart.payload = read(250.0 * kilogram, Field::cart_payload);
    for (const double forward : {0.0, 1.0}) {
        for (const double across : {-0.3, 0.3}) cart.castors.push_back({forward * metre, across * metre});
    }
    cart.castors_ref = {Field::cart_castors, 0};
    cart.sharing = choose(FloorSharing::diagonal, Field::cart_sharing);
    cart.moved_by = choose(MovedBy::hand, Field::cart_moved_by);
    cart.trips_per_day = read(20.0, Field::cart_trips_per_day);
    cart.push_distance = read(50.0 * metre, Field::cart_push_distance);
    cart.cg_forward_loaded = read(0.5 * metre, Field::cart_cg_forward_loaded);
    cart.cg_forward_empty = read(0.5 * metre, Field::cart_cg_forward_empty);
    cart.cg_height_loaded = read(0.9 * metre, Field::cart_cg_height_loaded);
    cart.cg_height_empty = read(0.6 * metre, Field::cart_cg_height_empty);
    cart.speed = read(0.9 * metre_per_second, Field::cart_speed);
    cart.fork_width = unread<Length>(Field::cart_fork_width);
    cart.axle_diameter = unread<Length>(Field::cart_axle_diameter);
    cart.overall_height_limit = read(200.0 * millimetre, Field::cart_overall_height_limit);
    cart.plate_pattern = unchosen<std::string>(Field::cart_plate_pattern);
    cart.static_ask = choose(StaticAsk::none, Field::cart_static_ask);
    cart.non_marking = choose(false, Field::cart_non_marking);
    cart.stops = {stop_in(0, celsius(10.0), &floor), stop_in(1, celsius(12.0), &floor)};
    cart.crossings = {flat_crossing(0, 0), flat_crossing(1, 1)};
}

}  // namespace

RuleCase::RuleCase() {
    tables.citations.resize(4);
    tables.chemicals = chemicals();
    tables.practice = practice();
    add_hygiene(tables);
    add_bearings(tables);
    floor.id = "concrete";
    floor.contact_limit = figure(20.0 * megapascal);
    floor.modulus = figure(25000.0 * megapascal);
    tread = material("pu", MaterialFamily::urethane, "pu-ether", 46.0 * megapascal, 0.49);
    core = tread;
    bearing_material = material("stainless", MaterialFamily::stainless, "ss304", 193000.0 * megapascal, 0.3);
    rig_material = bearing_material;
    wheel.diameter = 5.0 * inch;
    wheel.tread_width = 1.25 * inch;
    wheel.hardness = Hardness{HardnessScale::shore_d, 60.0};
    wheel.hub_length = 1.5 * inch;
    wheel.hub_bore = 1.1875 * inch;
    wheel.non_marking = true;
    bearing.kind = BearingKind::stainless_precision_ball;
    bearing.count = 2;
    bearing.bore = bearing.axle_diameter = 0.5 * inch;
    bearing.outer_diameter = 1.1875 * inch;
    bearing.length = 0.4 * inch;
    bearing.dynamic_rating = 5.0 * kilonewton;
    bearing.static_rating = 2.5 * kilonewton;
    bearing.temperature_min = celsius(-40.0);
    bearing.temperature_max = celsius(110.0);
    bearing.sealed = true;
    bearing.grease = "H1";
    rig.finish = RigFinish::stainless;
    rig.wheel_diameter = 5.0 * inch;
    rig.fork_width = 1.625 * inch;
    rig.axle_diameter = 0.5 * inch;
    rig.overall_height = 6.5 * inch;
    rig.plate_pattern = "A";
    add_cart(cart, floor);
}

CheckContext RuleCase::context() const {
    CheckContext made;
    made.cart = &cart;
    made.tables = &tables;
    made.wheel = &wheel;
    made.bearing = &bearing;
    made.rig = &rig;
    made.preparation = preparation;
    made.tread = &tread;
    made.core = wheel.core_material == wheel.tread_material ? &tread : &core;
    made.bearing_material = &bearing_material;
    made.rig_material = &rig_material;
    made.corner = corner;
    return made;
}

}  // namespace sillwalk::engine::test
