#pragma once
/// Hardness to modulus, and contact of a wheel on a floor.

#include "engine/base/result.hpp"
#include "engine/base/units.hpp"
#include "engine/model/tables.hpp"

#include <optional>

namespace sillwalk::engine {

struct Modulus {
    Pressure value, low, high;  ///< the band published or judged for the relation
};
/// Gent 1958: Shore A, 20 to 80 published; answers up to below 100 with a widened band, no_answer at 100 and above.
[[nodiscard]] Result<Modulus> modulus_gent(double shore_a);
/// Qi, Joyce, Boyce 2003, base ten: Shore A 20 to 80 (to 100 with a caution band) or Shore D 30 to 85 as S = S_D + 50.
[[nodiscard]] Result<Modulus> modulus_log10(HardnessScale scale, double value);
/// Our fit [urethane-hardness-fit]: Shore D 30 to 76, temperature -40 to 80 C; with its band.
[[nodiscard]] Result<Modulus> modulus_urethane(double shore_d, Temperature temperature = celsius(23.0),
                                               SoftSegment soft = SoftSegment::unknown);
/// Shore A to Shore D by our own table (80A = 30 … 95A = 46.5), no published source; no_answer outside 80 to 95 A.
[[nodiscard]] Result<double> shore_d_from_a(double shore_a);
/// Glass transition [urethane-hardness-fit] and brittle limits [urethane-cold-rule] of hard urethane. Shore D 30 to 76.
struct UrethaneCold {
    Temperature glass_transition;
    std::optional<Temperature> brittle_struck, brittle_unstruck;  ///< absent below 50 D: never brittle by this rule
    Temperature watch;                                            ///< start to watch below
};
[[nodiscard]] Result<UrethaneCold> urethane_cold(double shore_d, SoftSegment soft);

struct ContactInput {
    Force load;
    Length diameter, width;
    Pressure modulus;
    double poisson = 0.49;
    std::optional<Length> crown_radius;
    std::optional<Pressure> floor_modulus;
    double floor_poisson = 0.2;
    std::optional<Length> tread_thickness;  ///< bonded on a core taken as rigid; flat treads only
    bool with_approach = true;              ///< how far a bonded tread settles costs far more than its pressure
};
enum class ContactModel { line, elliptic, layer };
struct Contact {
    Length half_width;                  ///< along travel
    std::optional<Length> half_length;  ///< across, crowned only
    Pressure peak, mean;
    std::optional<Length> approach;  ///< crowned and bonded only
    ContactModel model = ContactModel::line;
    std::string caution;  ///< empty within the ranges of docs/reference/methods.md
};
/// Source: Hertz; Johnson, Contact Mechanics ch. 4 [johnson-contact], from memory; the bonded layer [bonded-layer].
[[nodiscard]] Result<Contact> contact(const ContactInput& input, const LayerTable& layer);

}  // namespace sillwalk::engine
