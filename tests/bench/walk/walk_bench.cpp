/// Time of one walk of eight stops, for a solid wheel and a bonded one. Prints microseconds of processor time.

#include "engine/walk/thermal_wheel.hpp"
#include "engine/walk/walk.hpp"
#include "tests/engine/walk/walk_cases.hpp"

#include <fmt/core.h>

#include <ctime>
#include <vector>

using namespace sillwalk::engine;
using namespace sillwalk::test;

namespace {

/// Processor time, so that other programs do not count.
template <class F>
double microseconds_each(int times, F&& f) {
    const std::clock_t start = std::clock();
    for (int k = 0; k < times; ++k) f();
    return 1e6 * static_cast<double>(std::clock() - start) / CLOCKS_PER_SEC / times;
}

void print(const char* name, const WalkKey& key, const CartDemand& demand, const Tables& tables) {
    double sum = 0;  // keeps the work from being optimised away
    const double prepare = microseconds_each(500, [&] {
        ThermalWheel wheel(key);
        for (const FilmRow& row : tables.film) sum += wheel.under(row.film.value).film.si();
    });
    ThermalWheel wheel(key);
    const double walk =
        microseconds_each(5000, [&] { sum += walk_route(demand, wheel, tables, WalkEnd::cold).coldest.celsius(); });
    fmt::print("{:<8} prepare {:6.1f} us, walk {:6.1f} us  ({:.3g})\n", name, prepare, walk, sum);
}

}  // namespace

int main() {
    const Tables tables = walk_tables();
    const CartDemand demand = walk_through({{-32, 20, AirMovement::blast, 2, 5},
                                            {-25, 60, AirMovement::fans, 2, 5},
                                            {4, 10, AirMovement::natural, 2, 5},
                                            {10, 15, AirMovement::natural, 2, 5},
                                            {16, 30, AirMovement::still, 2, 5},
                                            {10, 10, AirMovement::natural, 2, 5},
                                            {4, 10, AirMovement::natural, 2, 5},
                                            {-25, 30, AirMovement::fans, 2, 5}});
    print("solid", one_piece(tables, 152.4, 50.8), demand, tables);
    WalkKey bonded = one_piece(tables, 152.4, 50.8);
    bonded.core = tables.material("nylon");
    bonded.tread_thickness = 0.0127;
    bonded.bore = 0.03;
    print("bonded", bonded, demand, tables);
}
