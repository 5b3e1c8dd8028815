#pragma once
/// From a survey to the answer that the screens show. Pure.

#include "app/core/model.hpp"
#include "engine/select/score_catalogue.hpp"

#include <functional>
#include <optional>

namespace sillwalk::app {

/// The engine's answer for one survey, with the temperatures along each cart's route and what the damage tells. With
/// `only_cart` the answer is partial: the other carts are taken over from `before`.
[[nodiscard]] Answer work_out(const engine::Survey& survey, const EngineData& data, std::uint64_t version,
                              std::optional<std::size_t> only_cart = {}, const Answer* before = nullptr);
/// The same with the catalogue of `data` prepared once for many answers.
[[nodiscard]] Answer work_out(const engine::Survey& survey, const EngineData& data, engine::CandidateSpace& space,
                              std::uint64_t version, std::optional<std::size_t> only_cart = {},
                              const Answer* before = nullptr);
/// For all carts, one after another; nothing where `overtaken` says so before one of them.
[[nodiscard]] std::optional<Answer> work_out_all(const engine::Survey& survey, const EngineData& data,
                                                 engine::CandidateSpace& space, std::uint64_t version,
                                                 const std::function<bool()>& overtaken);

/// What would make it hold, and the conditions of use, for one cart of an answer on this survey.
[[nodiscard]] Completion work_out_limits(const engine::Survey& survey, const EngineData& data, const Answer& answer,
                                         std::uint16_t cart);
/// Adds the readings to take again.
[[nodiscard]] Completion work_out_doubt(Completion completion, const engine::Survey& survey, const EngineData& data,
                                        const Answer& answer, std::size_t draws);

}  // namespace sillwalk::app
