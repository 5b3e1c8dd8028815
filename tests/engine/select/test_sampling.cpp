// Readings to take again: the estimator against a published function, the draws against assess(), the ranking against a
// plain double loop.

#include "engine/select/sampling.hpp"
#include "tests/engine/select/sampling_case.hpp"

#include <catch2/catch.hpp>

#include <algorithm>
#include <cmath>
#include <map>

using namespace sillwalk::engine;
using namespace sillwalk::engine::test;

namespace {

constexpr double pi = 3.14159265358979323846;

struct Spread {
    double mean = 0, deviation = 0;
};
Spread spread_of(const std::vector<double>& values) {
    Spread spread;
    for (const double value : values) spread.mean += value / static_cast<double>(values.size());
    for (const double value : values) spread.deviation += (value - spread.mean) * (value - spread.mean);
    spread.deviation = std::sqrt(spread.deviation / static_cast<double>(values.size() - 1));
    return spread;
}

}  // namespace

TEST_CASE("sampling: the shares of the Ishigami function", "[sampling][published]") {
    // Ishigami and Homma 1990 with a = 7, b = 0.1; the variances as given in the OpenTURNS documentation, "The Ishigami
    // function": V = 1/2 + a2/8 + b2 pi8/18 + b pi4/5, V1 = (1 + b pi4/5)2/2, V2 = a2/8, V3 = 0.
    const double a = 7.0, b = 0.1;
    const double variance = 0.5 + a * a / 8.0 + b * b * std::pow(pi, 8) / 18.0 + b * std::pow(pi, 4) / 5.0;
    const double first = 0.5 * std::pow(1.0 + b * std::pow(pi, 4) / 5.0, 2) / variance;
    const double second = a * a / 8.0 / variance;
    constexpr std::size_t classes = 32, draws = 4000, repeats = 60;
    // Within a class of width d the sine is averaged. That takes from V1 the factor (sin(d/2)/(d/2))2 and from V2,
    // whose sine squared has half the period, (sin(d)/d)2 (derived).
    const double d = 2.0 * pi / classes;
    const double expected[] = {first * std::pow(std::sin(d / 2.0) / (d / 2.0), 2),
                               second * std::pow(std::sin(d) / d, 2), 0.0};
    CHECK(expected[0] == Approx(first).epsilon(0.004));
    CHECK(expected[1] == Approx(second).epsilon(0.014));

    std::vector<double> found[3];
    for (std::size_t repeat = 0; repeat < repeats; ++repeat) {
        std::vector<double> quantile[3];
        std::vector<std::vector<double>> outputs(1);
        std::vector<double>& output = outputs.front();
        for (std::size_t draw = 0; draw < draws; ++draw) {
            double x[3];
            for (std::size_t i = 0; i < 3; ++i) {
                quantile[i].push_back(random_unit(1000 + repeat, 3 * draw + i));
                x[i] = pi * (2.0 * quantile[i].back() - 1.0);
            }
            output.push_back(std::sin(x[0]) + a * std::pow(std::sin(x[1]), 2) + b * std::pow(x[2], 4) * std::sin(x[0]));
        }
        for (std::size_t i = 0; i < 3; ++i) found[i].push_back(first_order_share(quantile[i], outputs, classes));
    }
    for (std::size_t i = 0; i < 3; ++i) {
        // Four standard errors of the mean of the repeats, measured from the repeats themselves.
        const Spread spread = spread_of(found[i]);
        const double standard_error = spread.deviation / std::sqrt(static_cast<double>(repeats));
        INFO("input " << i + 1 << ": " << spread.mean << " +- " << standard_error << ", expected " << expected[i]);
        CHECK(std::abs(spread.mean - expected[i]) < 4.0 * standard_error);
        CHECK(standard_error < 0.003);  // the check above is sharp
    }
}

TEST_CASE("sampling: the shares of a choice that stands on two readings", "[sampling][derived]") {
    // The choice stays where x < p and y < q: V = pq(1 - pq), V_x = p q2 - p2 q2, so S_x = q(1-p)/(1-pq) and in the
    // same way S_y = p(1-q)/(1-pq). With p = 1/2 and q = 3/4 that is 0.6 and 0.2; the rest is what they do together.
    constexpr std::size_t classes = 20, draws = 2000, repeats = 60;
    std::vector<double> found[3];
    for (std::size_t repeat = 0; repeat < repeats; ++repeat) {
        std::vector<double> quantile[3];
        std::vector<std::vector<double>> outputs(1);
        std::vector<double>& output = outputs.front();
        for (std::size_t draw = 0; draw < draws; ++draw) {
            for (std::size_t i = 0; i < 3; ++i) quantile[i].push_back(random_unit(repeat, 3 * draw + i));
            output.push_back(quantile[0].back() < 0.5 && quantile[1].back() < 0.75 ? 1.0 : 0.0);
        }
        for (std::size_t i = 0; i < 3; ++i) found[i].push_back(first_order_share(quantile[i], outputs, classes));
    }
    const double expected[] = {0.6, 0.2, 0.0};
    for (std::size_t i = 0; i < 3; ++i) {
        const Spread spread = spread_of(found[i]);
        INFO("reading " << i << ": " << spread.mean << ", deviation " << spread.deviation);
        CHECK(std::abs(spread.mean - expected[i]) < 4.0 * spread.deviation / std::sqrt(static_cast<double>(repeats)));
        // What read_again() says of chance: sqrt(2(k-1))/n for a reading without effect.
        if (i == 2) CHECK(spread.deviation == Approx(std::sqrt(2.0 * (classes - 1)) / draws).epsilon(0.4));
    }
}

TEST_CASE("sampling: a choice that never changes leaves no doubt to share", "[sampling]") {
    std::vector<double> quantile;
    const std::vector<std::vector<double>> outputs{std::vector<double>(500, 1.0)};
    for (std::size_t draw = 0; draw < 500; ++draw) quantile.push_back(random_unit(5, draw));
    CHECK(first_order_share(quantile, outputs, 10) == 0.0);
}

TEST_CASE("sampling: the few candidates give the first choice of all candidates", "[sampling][property]") {
    const Catalogue catalogue = thinned_catalogue(2);
    const std::vector<PlausibleRange> ranges{freezer_air, door_rise};
    for (const char* file : {"quillwater.json", "half-read.json"}) {
        const Survey survey = demo_survey(file);
        for (const std::size_t cart : {std::size_t{0}, std::size_t{2}, std::size_t{3}}) {
            const CartAdvice advice = assess(survey, catalogue, loaded_tables(), {5, 0, cart}).carts.front();
            const auto few = sampled_headlines(survey, catalogue, loaded_tables(), advice, ranges, {150, 11, false});
            const auto all = sampled_headlines(survey, catalogue, loaded_tables(), advice, ranges, {150, 11, true});
            INFO(file << ", " << survey.carts[cart].name);
            REQUIRE(few.size() == 150);
            std::size_t different = 0;
            for (std::size_t i = 0; i < few.size(); ++i) different += few[i] == all[i] ? 0 : 1;
            // The documented bound on the draws with few candidates.
            CHECK(different <= static_cast<std::size_t>(3.0 / settled_draws * 150));
            CHECK(different == 0);  // and here not one is missed
        }
    }
}

namespace {

void take_tolerances_away(Survey& survey, std::size_t cart) {
    for_each_number(survey, cart, [](auto& reading, bool) { reading.tolerance = {}; });
}

/// The choice in a draw, from assess(): every number of the survey drawn inside its tolerance, as told in sampling.hpp.
class PlainDraws {
public:
    PlainDraws(const Survey& survey, const Catalogue& catalogue, std::size_t cart, std::uint64_t seed)
        : survey_(survey), catalogue_(&catalogue), cart_(cart), seed_(seed) {}

    double unit() { return random_unit(seed_, at_++); }

    /// The name of what comes first; empty where nothing holds. `fill` gives the missing readings their values.
    template <class Fill>
    std::string first_choice(Fill&& fill) {
        Survey drawn = survey_;
        for_each_number(drawn, cart_, [&](auto& reading, bool signed_value) {
            if (reading.value) draw(reading, signed_value);
        });
        fill(drawn);
        const Headline headline = headline_by_assess(drawn, *catalogue_, cart_);
        return headline.nothing_holds ? std::string() : candidate_key(*catalogue_, headline.candidate);
    }

private:
    template <class T>
    void draw(Reading<T>& reading, bool signed_value) {
        T low = *reading.value - reading.tolerance, high = *reading.value + reading.tolerance;
        if constexpr (!std::is_same_v<T, Temperature>) {
            if (!signed_value && low < T{}) low = T{};
        }
        const double at = unit();
        if constexpr (std::is_same_v<T, Slope>) {
            reading.value = Slope::from_tangent(low.tangent() + at * (high.tangent() - low.tangent()));
        } else {
            reading.value = low + at * (high - low);
        }
        reading.tolerance = {};
    }

    Survey survey_;
    const Catalogue* catalogue_;
    std::size_t cart_;
    std::uint64_t seed_, at_ = 0;
};

}  // namespace

TEST_CASE("sampling: each draw is what assess() says of the drawn values", "[sampling]") {
    const Catalogue catalogue = thinned_catalogue(4);
    Survey survey = demo_survey("half-read.json");
    take_tolerances_away(survey, 0);
    const CartAdvice advice = assess(survey, catalogue, loaded_tables(), {5, 0, 0}).carts.front();
    const std::vector<PlausibleRange> ranges{freezer_air, door_rise};
    constexpr std::uint64_t seed = 3;
    const auto headlines = sampled_headlines(survey, catalogue, loaded_tables(), advice, ranges, {120, seed, false});
    std::size_t kinds = 0;
    for (std::size_t draw = 0; draw < headlines.size(); ++draw) {
        // Only the two missing readings are open; the room comes before the crossing in a demand.
        Survey drawn = survey;
        const double air = random_unit(seed, 2 * draw), rise = random_unit(seed, 2 * draw + 1);
        drawn.rooms[0].air =
            measured(Temperature::from_kelvin(freezer_air.low_si + air * (freezer_air.high_si - freezer_air.low_si)));
        drawn.crossings[1].rise =
            measured(Length::from_si(door_rise.low_si + rise * (door_rise.high_si - door_rise.low_si)));
        INFO("draw " << draw);
        REQUIRE(headlines[draw] == headline_by_assess(drawn, catalogue, 0));
        kinds += draw > 0 && !(headlines[draw] == headlines[draw - 1]) ? 1 : 0;
    }
    CHECK(kinds > 5);
}

TEST_CASE("sampling: the same seed gives the same answer, another seed nearly the same", "[sampling]") {
    const Catalogue catalogue = thinned_catalogue(2);
    const Survey survey = demo_survey("quillwater.json");
    const CartAdvice advice = assess(survey, catalogue, loaded_tables(), {5, 0, 2}).carts.front();
    const auto run = [&](std::uint64_t seed) {
        return read_again(survey, catalogue, loaded_tables(), advice, {}, {2000, seed, false});
    };
    const ReadAgain one = run(7), same = run(7), other = run(8);
    CHECK(one.stays_first == same.stays_first);
    REQUIRE(one.readings.size() == same.readings.size());
    for (std::size_t i = 0; i < one.readings.size(); ++i) {
        CHECK(one.readings[i].reading == same.readings[i].reading);
        CHECK(one.readings[i].share == same.readings[i].share);
    }
    CHECK(one.stays_first > 0.0);
    CHECK(one.stays_first < 1.0);
    CHECK(std::abs(one.stays_first - other.stays_first) <
          4.0 * std::sqrt(2.0) * std::max(one.standard_error, other.standard_error));
    double others = 0.0;
    for (const OtherChoice& choice : one.others) others += choice.share;
    CHECK(one.stays_first + others + one.nothing_holds == Approx(1.0));
    CHECK(one.not_sampled.empty());
}

namespace {

struct Missing {
    PlausibleRange range;
    void (*fill)(Survey&, double);
};

/// Shares of variance by the definition: an outer loop over one reading, an inner one over everything else. Each answer
/// is an output, 1 where it is given; their variances are added.
struct DoubleLoop {
    static constexpr int outer = 20, inner = 16;
    double between = 0, all = 0;

    DoubleLoop(PlainDraws& draws, const std::vector<Missing>& missing, std::size_t of) {
        std::vector<std::map<std::string, double>> counts(outer);
        std::map<std::string, double> means;
        for (int i = 0; i < outer; ++i) {
            for (int k = 0; k < inner; ++k) {
                const std::string answer = draws.first_choice([&](Survey& survey) {
                    for (std::size_t m = 0; m < missing.size(); ++m) {
                        const PlausibleRange& range = missing[m].range;
                        const double at = m == of ? (i + draws.unit()) / outer : draws.unit();
                        missing[m].fill(survey, range.low_si + at * (range.high_si - range.low_si));
                    }
                });
                counts[static_cast<std::size_t>(i)][answer] += 1.0 / inner;
                means[answer] += 1.0 / inner / outer;
            }
        }
        for (const auto& [answer, mean] : means) {
            all += mean * (1.0 - mean);
            for (auto& count : counts) {
                const double share = count[answer];
                between += (share - mean) * (share - mean) / outer;
                between -= share * (1.0 - share) / (inner - 1) / outer;  // what the inner loop's chance adds
            }
        }
    }
};

void check_ranking(const Survey& survey, const Catalogue& catalogue, std::size_t cart,
                   const std::vector<Missing>& missing) {
    std::vector<PlausibleRange> ranges;
    for (const Missing& one : missing) ranges.push_back(one.range);
    const CartAdvice advice = assess(survey, catalogue, loaded_tables(), {5, 0, cart}).carts.front();
    const ReadAgain again = read_again(survey, catalogue, loaded_tables(), advice, ranges, {2000, 1, false});
    PlainDraws draws(survey, catalogue, cart, 4242);
    std::vector<std::pair<double, ReadingRef>> plain;
    for (std::size_t of = 0; of < missing.size(); ++of) {
        const DoubleLoop loop(draws, missing, of);
        REQUIRE(loop.all > 0.1);
        plain.emplace_back(loop.between / loop.all, missing[of].range.reading);
    }
    std::sort(plain.begin(), plain.end(), [](const auto& a, const auto& b) { return a.first > b.first; });
    REQUIRE(again.readings.size() > missing.size());
    for (std::size_t i = 0; i < again.readings.size(); ++i) {
        const ReadingDoubt& row = again.readings[i];
        INFO("place " << i << ": " << reading_path(row.reading) << " " << row.share);
        // The missing readings come first: no tolerance outweighs them.
        CHECK(row.missing == (i < missing.size()));
        if (i >= missing.size()) continue;
        INFO("by double loop " << reading_path(plain[i].second) << " " << plain[i].first);
        CHECK(row.reading == plain[i].second);
        CHECK(row.share == Approx(plain[i].first).margin(0.08));
    }
}

const Missing missing_air{
    freezer_air, [](Survey& survey, double si) { survey.rooms[0].air = measured(Temperature::from_kelvin(si)); }};
const Missing missing_rise{door_rise,
                           [](Survey& survey, double si) { survey.crossings[1].rise = measured(Length::from_si(si)); }};

}  // namespace

TEST_CASE("sampling: missing readings rank as by a plain double loop over assess()", "[sampling][slow]") {
    const Catalogue catalogue = thinned_catalogue(5);
    const Survey survey = demo_survey("half-read.json");
    SECTION("the tray rack lacks the freezer's air and the door's rise") {
        check_ranking(survey, catalogue, 0, {missing_air, missing_rise});
    }
    SECTION("the tub dolly lacks its payload, and nothing holds whatever it is") {
        const PlausibleRange payload{{Field::cart_payload, 1, 0}, 20.0, 300.0};
        const CartAdvice advice = assess(survey, catalogue, loaded_tables(), {5, 0, 1}).carts.front();
        const ReadAgain again = read_again(survey, catalogue, loaded_tables(), advice, {&payload, 1}, {200, 1, false});
        CHECK(again.stays_first == 1.0);
        for (const ReadingDoubt& row : again.readings) CHECK(row.share == 0.0);
        PlainDraws draws(survey, catalogue, 1, 4242);
        for (int i = 0; i < 30; ++i) {
            CHECK(draws
                      .first_choice([&](Survey& drawn) {
                          drawn.carts[1].payload = measured(Mass::from_si(20.0 + 280.0 * draws.unit()));
                      })
                      .empty());
        }
    }
    SECTION("the tray rack lacks its payload as well") {
        Survey less = survey;
        less.carts[0].payload = {};
        const Missing payload{{{Field::cart_payload, 0, 0}, 50.0, 900.0},
                              [](Survey& drawn, double si) { drawn.carts[0].payload = measured(Mass::from_si(si)); }};
        check_ranking(less, catalogue, 0, {missing_air, missing_rise, payload});
    }
}
