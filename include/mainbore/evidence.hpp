// What a plan rests on: one list, from which every reader prints.
//
// Planning writes an item down where it takes the value: what it is of, the value, where it came from, its source and how
// it was had. Text, sheet and JSON name the same sources because all of them print `Plan::evidence`; whatever in it is only
// recalled is told to each by the finding value.recalled.
//
//     for (const Evidence& item : plan.evidence) std::cout << words_of(item) << ": " << name_of(item.basis.how) << '\n';
#pragma once

#include <array>
#include <cstdint>
#include <optional>
#include <string_view>

#include "mainbore/finding.hpp"
#include "mainbore/source.hpp"

namespace mainbore {

// Where a value came from: the job, a reading at the pipe, the tables, a rule, the safe side, a settings file, the list of
// approved fittings.
enum class From : std::uint8_t { given, measured, table, rule, assumed, settings, approved_list };
inline constexpr std::array<std::string_view, 7> from_names = {"given",   "measured", "table",        "rule",
                                                               "assumed", "settings", "approved list"};
[[nodiscard]] constexpr std::string_view name_of(From from) { return from_names[static_cast<std::size_t>(from)]; }

// What a value is of, part by part of a plan. MAINBORE_TAKEN(enumerator, "words")
#define MAINBORE_TAKEN_VALUES(X) \
  X(pipe_class, "class of the pipe") \
  X(pipe_diameter, "pipe diameter") \
  X(pipe_wall, "pipe wall") \
  X(pipe_rating, "pipe rating") \
  X(diameter_tolerance, "diameter tolerance") \
  X(wall_tolerance, "wall tolerance") \
  X(years_laid, "years such pipe was laid") \
  X(caliper, "diameter by caliper") \
  X(tape, "diameter by tape") \
  X(gauge, "wall by gauge") \
  X(pipe_temperature, "temperature of the pipe") \
  X(temperature_factor, "rating of warm plastic") \
  X(thread, "thread") \
  X(largest_tap, "largest tap") \
  X(fitting, "fitting asked for") \
  X(threads_required, "threads required") \
  X(wrench_turns, "wrench turns") \
  X(threads_showing, "threads showing") \
  X(far_wall_clearance, "clearance to the far wall") \
  X(hole_ratio, "hole over diameter") \
  X(section_left, "pipe left beside the hole") \
  X(equal_capacity, "taps for one larger") \
  X(taps_apart, "distance between taps") \
  X(plastic_temperature, "temperature of plastic") \
  X(pipe_strength, "strength of the pipe") \
  X(stop_strength, "strength of the stop") \
  X(shear_area, "share of the thread that holds") \
  X(line_pressure, "line pressure") \
  X(feed_limit, "feed limit") \
  X(machine_rating, "machine rating") \
  X(corporation_stop, "corporation stop") \
  X(saddle, "saddle or sleeve") \
  X(wet_tap_rule, "wet-tap rule") \
  X(machine, "machine") \
  X(surge, "surge") \
  X(surge_allowance, "surge that the pipe bears") \
  X(fitting_surge, "surge that a fitting bears") \
  X(chain_extensions, "chain extensions") \
  X(seal, "force on the seal") \
  X(gasket_land, "sound pipe round the hole") \
  X(stud_stress, "load on the studs") \
  X(pipe_stiffness, "stiffness of the pipe") \
  X(chain_squeeze, "squeeze of the chain") \
  X(tool_thrust, "thrust of the tool") \
  X(past_breakthrough, "feed past breakthrough") \
  X(push_by_hand, "push on the bar") \
  X(place_round, "place round the pipe") \
  X(clearance, "distance kept") \
  X(tape_error, "error of a tape") \
  X(gauge_error, "error of a wall gauge") \
  X(joint_distance, "distance to a joint") \
  X(lowest_pressure, "lowest line pressure") \
  X(tubing_rating, "rating of the tubing") \
  X(demand, "demand") \
  X(sprinkler_flow, "flow of sprinklers") \
  X(tubing_bore, "bore of the tubing") \
  X(friction, "friction") \
  X(line_rise, "rise of the service") \
  X(line_fittings, "stops and fittings") \
  X(meter, "meter") \
  X(residual, "least pressure left") \
  X(water_speed, "speed of the water") \
  X(chlorine_dose, "dose of chlorine") \
  X(solution_strength, "strength of the solution") \
  X(stock_strength, "strength of the stock") \
  X(solution_amount, "amount of the solution") \
  X(flush_speed, "speed of the flush") \
  X(flush_changes, "changes of the water") \
  X(flush_chlorine, "chlorine in the flush water") \
  X(dechlorination, "dechlorination") \
  X(as_main, "service cleaned as a main") \
  X(slopes, "slopes") \
  X(pit_room, "room in the pit") \
  X(swell, "swell") \
  X(spoil, "distance of the spoil") \
  X(protective_system, "depth with a protective system") \
  X(engineer_depth, "depth with an engineer") \
  X(way_out, "depth with a way out") \
  X(ladder, "reach of a ladder") \
  X(air_test, "depth with a test of the air") \
  X(guardrail, "depth with guard rails") \
  X(soil_type, "strength of the soil type") \
  X(ground_weight, "weight of the ground") \
  X(tolerance_zone, "tolerance zone") \
  X(notice, "notice") \
  X(marks_color, "colors of the marks") \
  X(shield, "reach of the shield") \
  X(upright_lower, "upright lower part") \
  X(steps, "steps") \
  X(sewer_distance, "distance to a sewer") \
  X(fitting_length, "length of stop or saddle") \
  X(air_temperature, "temperature of the air") \
  X(finding, "")

enum class Taken : std::uint8_t {
#define MAINBORE_TAKEN(name, words) name,
  MAINBORE_TAKEN_VALUES(MAINBORE_TAKEN)
#undef MAINBORE_TAKEN
};
inline constexpr std::array taken_names = {
#define MAINBORE_TAKEN(name, words) std::string_view(words),
    MAINBORE_TAKEN_VALUES(MAINBORE_TAKEN)
#undef MAINBORE_TAKEN
};
[[nodiscard]] constexpr std::string_view name_of(Taken what) { return taken_names[static_cast<std::size_t>(what)]; }

// The parts of a plan, in the order in which the list goes through them.
enum class PlanPart : std::uint8_t {
  pipe,
  tap,
  pressure,
  machine,
  place,
  readings,
  service,
  cleaning,
  pit,
  findings,
  rejected,  // why a method was not taken
};

struct Evidence {
  PlanPart part = PlanPart::pipe;
  Taken what = Taken::finding;
  std::optional<FindingCode> finding;  // that rests on it, of findings and rejected
  Detail value;                        // nothing where it is no one number
  From from = From::table;
  Basis basis;
};

// "wall tolerance", or the title of the finding.
[[nodiscard]] std::string_view words_of(const Evidence& item);

// Said wherever a value that is recalled, and not read, is told of.
inline constexpr std::string_view check_this_value = "recalled: check this value";
[[nodiscard]] inline bool is_recalled(const Basis& basis) { return !basis.utility && basis.how == How::memory; }
[[nodiscard]] inline bool is_recalled(const Evidence& item) { return is_recalled(item.basis); }

}  // namespace mainbore
