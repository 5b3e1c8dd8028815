#include "engine/physics/heat.hpp"

#include <catch2/catch.hpp>

using namespace sillwalk::engine;

TEST_CASE("the dew point meets the air at saturation and rises with humidity", "[engine][physics][property]") {
    for (double air = -30; air <= 50; air += 10) {
        CHECK(dew_point(celsius(air), 1.0)->celsius() == Approx(air).margin(1e-9));
        double before = -300;
        for (double humidity = 0.05; humidity < 1; humidity += 0.05) {
            const double dew = dew_point(celsius(air), humidity)->celsius();
            CHECK(dew > before);
            CHECK(dew < air);
            before = dew;
        }
    }
    CHECK(dew_point(celsius(20), 0).error().code == ErrorCode::bad_input);
    CHECK(dew_point(celsius(20), 1.01).error().where == "humidity");
    CHECK(dew_point(celsius(-60), 0.5).error().code == ErrorCode::no_answer);
}
