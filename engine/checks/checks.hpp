#pragma once
/// The eighteen checks, one file each. check.hpp has their order and what each one looks at.

#include "engine/checks/check.hpp"

namespace sillwalk::engine {

[[nodiscard]] Finding check_load(const CheckContext& context);
[[nodiscard]] Finding check_parked(const CheckContext& context);
[[nodiscard]] Finding check_step(const CheckContext& context);
[[nodiscard]] Finding check_gap(const CheckContext& context);
[[nodiscard]] Finding check_cold(const CheckContext& context);
[[nodiscard]] Finding check_heat(const CheckContext& context);
[[nodiscard]] Finding check_bond(const CheckContext& context);
[[nodiscard]] Finding check_chemical(const CheckContext& context);
[[nodiscard]] Finding check_corrosion(const CheckContext& context);
[[nodiscard]] Finding check_hygiene(const CheckContext& context);
[[nodiscard]] Finding check_push(const CheckContext& context);
[[nodiscard]] Finding check_traction(const CheckContext& context);
[[nodiscard]] Finding check_floor(const CheckContext& context);
[[nodiscard]] Finding check_bearing(const CheckContext& context);
[[nodiscard]] Finding check_tip(const CheckContext& context);
[[nodiscard]] Finding check_fit(const CheckContext& context);
[[nodiscard]] Finding check_static(const CheckContext& context);
[[nodiscard]] Finding check_room(const CheckContext& context);

}  // namespace sillwalk::engine
