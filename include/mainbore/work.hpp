// The work of a plan: what to watch, what to load, what to do in which order, what to do when it goes wrong, what to write
// down when it is done.
//
// All of it follows from the plan; the words are for the crew. A no-go plan has cautions, and nothing to load, to do or to
// record.
// Codes, keys and ids are stable and only grow.
#pragma once

#include <array>
#include <cstdint>
#include <optional>
#include <span>
#include <string>
#include <string_view>
#include <vector>

#include "mainbore/bounded_list.hpp"
#include "mainbore/language.hpp"
#include "mainbore/plan.hpp"
#include "mainbore/words.hpp"

namespace mainbore {

// A caution that goes with the kind of job, whatever the checks found. None can be left out.
struct Caution {
  std::string_view code;  // "caution.out-of-line"
  Words text;
  std::string_view brief;  // the same in a few words, for the card
  std::string_view basis;  // the publication it rests on; empty: common practice
};
[[nodiscard]] std::vector<Caution> cautions(const Plan& plan, Audience audience);

// What the utility says of a method, step or caution, for printing beside the program's words and never in their place:
// "The utility: ...". Empty where it says nothing.
[[nodiscard]] std::string utility_in_words(const Plan& plan, std::string_view id, Language language);
// The id of the method that is taken: "method.saddle", "method.several". Empty where none is.
[[nodiscard]] std::string_view words_id_of(const ChosenMethod& method);

// What a thing on the truck is for.
enum class LoadGroup : std::uint8_t { fit, machine, measure, keep_safe };
inline constexpr std::array<std::string_view, 4> load_group_names = {"Fit", "Machine", "Measure", "Keep safe"};
inline constexpr std::array<std::string_view, 4> load_group_keys = {"fit", "machine", "measure", "keep-safe"};

// One thing the truck must carry. Items of the same key and size are the same thing, so that a batch can add them up.
struct LoadItem {
  std::string_view key;  // "corporation-stop"
  Words item;            // "Corporation stop, AWWA taper inlet"
  std::string size;      // "1 in"; empty where there is none
  int quantity = 1;
  Words check;             // what to look at before it leaves the yard; empty: nothing in particular
  std::string stock = {};  // of the item that the approved list has for it; empty: none was chosen, or it has no number
  LoadGroup group = LoadGroup::fit;
  // Where the settings say what is aboard: how many of it the truck has, and what else aboard would do for what it lacks.
  std::optional<int> aboard = {};
  std::string aboard_as = {};  // which things of the truck those are: items that share it draw on the same ones
  std::string instead = {};

  [[nodiscard]] int lacking() const { return aboard && *aboard < quantity ? quantity - *aboard : 0; }
};
// Every key there is, in alphabetical order.
inline constexpr std::array<std::string_view, 45> load_item_keys = {"asbestos-kit",
                                                                    "blanket",
                                                                    "bonding-jumper",
                                                                    "branch-fittings",
                                                                    "bucket",
                                                                    "chain",
                                                                    "chain-extension",
                                                                    "combined-drill-and-tap",
                                                                    "corporation-stop",
                                                                    "cutting-grease",
                                                                    "diameter-tape",
                                                                    "disinfectant",
                                                                    "encasement-tape",
                                                                    "insertion-tool",
                                                                    "ladder",
                                                                    "lock-and-tag",
                                                                    "machine-gasket",
                                                                    "machine-saddle",
                                                                    "plug",
                                                                    "powered-feed",
                                                                    "pressure-gauge",
                                                                    "repair-clamp",
                                                                    "rule",
                                                                    "scraper",
                                                                    "service-pipe",
                                                                    "service-saddle",
                                                                    "shell-cutter",
                                                                    "spare-gasket",
                                                                    "stop-adapter",
                                                                    "sump-pump",
                                                                    "support",
                                                                    "tapping-machine",
                                                                    "tapping-sleeve",
                                                                    "tapping-valve",
                                                                    "test-pump",
                                                                    "thermometer",
                                                                    "thread-sealant",
                                                                    "torque-wrench",
                                                                    "trench-shield",
                                                                    "trial-piece",
                                                                    "valve-adapter",
                                                                    "valve-key",
                                                                    "wall-gauge",
                                                                    "waste-hose",
                                                                    "wrenches"};
// "You have 4." or "YOU LACK 1. Aboard instead: ..."; empty where nobody has said what is aboard.
[[nodiscard]] std::string aboard_in_words(const LoadItem& item, Language language = Language::english);
// The load list: what the order of work and the contingencies use, each once, and nothing else.
[[nodiscard]] std::vector<LoadItem> load_list(const Plan& plan, Audience audience);

// An approved item without its kind: "8.54 in to 9.4 in, 2 straps, stock 41-117, nuts 50 ft-lbf".
[[nodiscard]] std::string approved_in_words(const ApprovedItem& item, Audience audience);
// Every one that was chosen, with its kind and "; " between them. Empty where none was.
[[nodiscard]] std::string approved_in_words(const ChosenMethod& method, Audience audience);

// A mark on the boring bar, made where it enters the machine. Card, steps and drawings name them alike.
struct BarMark {
  std::string_view key;   // "stop-tapping"
  std::string_view sign;  // what is written at it: "4"
  std::string_view name;  // "STOP TAPPING"
  Words where;  // "mark 3 + 1-1/16 in, 14-3/4 turns of the bar"; with a blank where a length is to be measured
};
// In the order of their signs. Empty for a no-go.
[[nodiscard]] std::vector<BarMark> bar_marks(const Plan& plan, Audience audience);
// How the stop goes in: "3-3/4 turns by hand, then 2 by wrench; 2 threads left showing". Empty but for a direct tap.
[[nodiscard]] std::string makeup_in_words(const Plan& plan, Language language = Language::english);

// A thing done to machine, stop or main that changes what is open, what is under pressure or what holds what.
enum class Act : std::uint8_t {
  fit_saddle,     // saddle or sleeve on the pipe; its stop or tapping valve is part of it
  mount_machine,  // stood on the pipe (direct), screwed to the stop (saddle) or bolted to the valve (sleeve)
  hold_down,      // chain, thread or bolts taken up
  load_cutter,    // cutter on the bar
  unload_bar,     // whatever the bar carries comes off
  load_stop,      // corporation stop on the bar
  close_chamber,  // cap on: the chamber can hold pressure
  open_chamber,   // cap off
  open_valve,     // machine valve (direct) or tapping valve (sleeve)
  shut_valve,
  open_bleed,
  shut_bleed,
  open_bypass,  // the small line round the valve: water passes from below it into the chamber until both are even
  shut_bypass,
  open_stop,  // key of the corporation stop
  shut_stop,
  bar_down,     // tool run down past the valve, to the pipe
  cut_through,  // the hole is open to the main
  cut_thread,
  bar_up,       // tool drawn back above the valve
  seat_stop,    // stop made up in the main
  release_bar,  // bar let go of the stop
  let_go,       // chain, thread or bolts slackened
  lift_machine,
  fill_main,   // a dry main put back under pressure
  read_zero,   // the gauge is read, and stands at zero
  read_tight,  // the gauge or the joints are read under pressure, and hold
};

// The rig as a crew would describe it. Pressure is of the water in two spaces: above the valve (the chamber), and below
// it (over the pipe, or inside sleeve and stop).
struct RigState {
  bool main_full = true;  // the main is under pressure
  bool hole = false;      // cut through
  bool machine_on = false;
  bool held_down = false;
  bool chamber_closed = false;
  bool valve_open = false;
  bool bypass_open = false;
  bool bleed_open = false;
  bool stop_open = false;
  bool stop_in_place = false;  // in the main or its saddle, and tight
  bool bar_down = false;
  enum class Bar : std::uint8_t { bare, cutter, stop } bar = Bar::bare;
  bool pressure_above = false;
  bool pressure_below = false;

  friend bool operator==(const RigState&, const RigState&) = default;
};

// What holds the water back between the main and the machine, once it is cut: decides where the machine stands.
enum class Seat : std::uint8_t { pipe, stop, tapping_valve };
[[nodiscard]] constexpr Seat seat_of(Method method) {
  return method == Method::sleeve ? Seat::tapping_valve : method == Method::saddle ? Seat::stop : Seat::pipe;
}

// The state after one act: bookkeeping and where the water goes, no judgement whether the act is wise.
[[nodiscard]] RigState after(RigState state, Act act, Seat seat);

// How valves and chamber stand, as a crew looks at them: the valve that holds the main back, the bypass, the bleed, the
// chamber.
struct ValveState {
  std::string_view name;          // "machine valve"
  std::string_view stands;        // "OPEN", "SHUT"; of the chamber "AT LINE PRESSURE", "AT ZERO"
  std::string_view brief;         // under a small picture: "valve"
  std::string_view brief_stands;  // "OPEN", "SHUT"; of the chamber "FULL", "ZERO"
  bool open = false;              // or under pressure
};
inline constexpr std::array<std::string_view, 4> valve_keys = {"valve", "bypass", "bleed", "chamber"};
// Of each whether it is open, or under pressure, without a word.
[[nodiscard]] std::array<bool, valve_keys.size()> valves_open(const RigState& state, Seat seat);
[[nodiscard]] std::array<ValveState, valve_keys.size()> valves_of(const RigState& state, Seat seat,
                                                                  Language language = Language::english);

inline constexpr std::size_t most_acts = 8;  // of one step
inline constexpr std::size_t most_used = 8;  // things of one step

struct Step {
  std::string_view id = {};     // "set.stop"
  std::string_view phase = {};  // heading it stands under: "Set the stop"
  Words condition = {};         // it is done when this is so; empty: always, in its turn
  Words action = {};
  std::string_view hold_point = {};       // go no further until this is so; empty: none
  BoundedList<Act, most_acts> acts = {};  // in the order in which the action asks for them
  RigState state = {};                    // after them
  bool moves_valves = false;  // the machine holds water back, and valves or chamber stand otherwise than before
  BoundedList<std::string_view, most_used> uses = {};  // keys of the load list
};
// Condition and action as one text: "Feed jams: back off half a turn".
[[nodiscard]] std::string in_words(const Step& step);

// What a stop number is of: "sound wall at the tap".
[[nodiscard]] std::string_view words_of(ReadingId id, Language language = Language::english);
// Its bounds: "at least 0.31 in", "21-3/8 in to 21-15/16 in", rounded inward in the unit that is read.
[[nodiscard]] std::string bounds_in_words(const StopNumber& reading, Audience audience);
// The bounds themselves, each as it is printed; empty where there is none. What is read is judged by these.
[[nodiscard]] BoundTexts printed_bounds(const StopNumber& reading, UnitSystem units);
// The same without "at least" or "at most", for a sentence that says so itself.
[[nodiscard]] std::string bare_bounds(const StopNumber& reading, Audience audience);
// The distance that the tap keeps from a thing: of a joint the stop number, of another its rule's.
[[nodiscard]] std::string least_in_words(const Plan& plan, const Clearing& clearing, Audience audience);
// What the main is lowered to for the time of the tap, the stop number of its pressure; nothing where it need not be.
[[nodiscard]] const StopNumber* lower_the_main_to(const Plan& plan);
// The stop number that a hold of this code is cleared by, where it is one.
[[nodiscard]] std::optional<ReadingId> reading_that_clears(FindingCode code);

// The order of work, once through; a series of taps repeats it as its text says. Empty for a no-go.
[[nodiscard]] std::vector<Step> procedure(const Plan& plan, Audience audience);

// What to do when it goes wrong: each has its condition. They are not in order, and carry no acts. Empty for a no-go.
[[nodiscard]] std::vector<Step> contingencies(const Plan& plan, Audience audience);

// One thing to write down of a finished tap.
struct RecordField {
  std::string_view key;      // "tie_1"
  std::string_view label;    // "Tie 1"
  std::optional<Kind> kind;  // of a number; nothing: words
  std::string_view row;      // fields of one row belong side by side on a form; empty: wherever there is room
  bool direct = false;       // of a direct tap only
};
// All there are, in the order of a form.
[[nodiscard]] std::span<const RecordField> record_fields();
// Those that this plan's tap has. Empty for a no-go.
[[nodiscard]] std::vector<RecordField> record_form(const Plan& plan);
// The unit its number is written in; empty for words and plain numbers.
[[nodiscard]] std::string_view unit_of(const RecordField& field, UnitSystem system);

}  // namespace mainbore
