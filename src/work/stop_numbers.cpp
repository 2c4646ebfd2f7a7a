#include <array>

#include "mainbore/measure.hpp"
#include "mainbore/work.hpp"
#include "words/card.hpp"

namespace mainbore {
namespace {

using words::CardWord;

}  // namespace

std::string_view words_of(ReadingId id, Language language) {
  constexpr std::array<CardWord, reading_ids.size()> labels = {
      CardWord::line_pressure,  CardWord::wall,  CardWord::circumference,  CardWord::pipe_temperature,
      CardWord::joint_distance, CardWord::surge, CardWord::air_temperature};
  return say(labels[static_cast<std::size_t>(id)], language);
}

std::string bounds_in_words(const StopNumber& reading, Audience audience) {
  std::string bare = bare_bounds(reading, audience);
  if (reading.at_least && reading.at_most) return bare;
  return say(reading.at_least ? CardWord::at_least : CardWord::at_most, audience.language, {{"bound", bare}});
}

BoundTexts printed_bounds(const StopNumber& reading, UnitSystem units) {
  if (reading.at_least && reading.at_most) return bound_texts(*reading.at_least, *reading.at_most, units);
  BoundTexts texts;
  if (reading.at_least) texts.least = format_measure(*reading.at_least, units, Toward::more);
  if (reading.at_most) texts.most = format_measure(*reading.at_most, units, Toward::less);
  return texts;
}

std::string bare_bounds(const StopNumber& reading, Audience audience) {
  const BoundTexts bounds = printed_bounds(reading, audience);
  if (bounds.least.empty()) return bounds.most;
  if (bounds.most.empty()) return bounds.least;
  return bounds.least + std::string(say(CardWord::between, audience.language)) + bounds.most;
}

std::string least_in_words(const Plan& plan, const Clearing& clearing, Audience audience) {
  const StopNumber* const joint = plan.stop_number(ReadingId::joint_distance);
  if (clearing.what == NearbyThing::joint && joint != nullptr) return bare_bounds(*joint, audience);
  return on_tape(clearing.least, audience, Toward::more);
}

const StopNumber* lower_the_main_to(const Plan& plan) {
  const auto& limit = plan.pressure.reduce_to;
  return limit && *limit < plan.pressure.line ? plan.stop_number(ReadingId::line_pressure) : nullptr;
}

std::optional<ReadingId> reading_that_clears(FindingCode code) {
  using enum FindingCode;
  switch (code) {
    case pressure_over_feed_limit:
    case pressure_over_machine_rating:
    case pressure_over_wet_tap_limit:
      return ReadingId::line_pressure;
    case main_wall_thin:
    case main_wall_unmeasured:
    case direct_thin_wall:
    case direct_wall_unknown:
      return ReadingId::wall;
    case main_od_unsettled:
      return ReadingId::circumference;
    case main_temperature_outside:
    case main_temperature_unmeasured:
    case main_freezing:
      return ReadingId::pipe_temperature;
    case main_air_cold:
    case main_air_unknown:
      return ReadingId::air_temperature;
    case pressure_surge_over_rating:
      return ReadingId::surge;
    default:
      return std::nullopt;
  }
}

}  // namespace mainbore
