// The table of what is written down of a tap.
#include <algorithm>
#include <string>

#include "mainbore/measure.hpp"
#include "mainbore/tap_record.hpp"

namespace mainbore {
namespace {

constexpr std::array<std::string_view, 3> methods_done = {"direct", "saddle", "sleeve"};
constexpr double foot = 12.0;  // base units are inches

constexpr RecordEntry text(RecordKey key, std::string_view name, std::string_view label, std::string_view help,
                           Needed needed) {
  return {.key = key, .name = name, .label = label, .help = help, .type = RecordType::text, .needed = needed};
}
constexpr RecordEntry of_type(RecordType type, RecordEntry entry) {
  entry.type = type;
  return entry;
}
constexpr RecordEntry distance(RecordKey key, std::string_view name, std::string_view label, std::string_view help,
                               double feet, Needed needed) {
  RecordEntry entry = text(key, name, label, help, needed);
  entry.type = RecordType::quantity;
  entry.kind = Kind::distance;
  entry.greatest = feet * foot;
  return entry;
}
// What the job gives, read at the pipe: kind and range are those of the fact (a test holds them to each other).
constexpr RecordEntry fact(RecordKey key, std::string_view name, std::string_view label, std::string_view help,
                           std::string_view path, RecordType type, Kind kind, Needed needed,
                           std::optional<ReadingId> reading = {}) {
  RecordEntry entry = text(key, name, label, help, needed);
  entry.type = type;
  entry.kind = kind;
  entry.fact = path;
  entry.reading = reading;
  return entry;
}
constexpr RecordEntry ranged(double least, double greatest, RecordEntry entry) {
  entry.least = least;
  entry.greatest = greatest;
  return entry;
}
constexpr RecordEntry degrees(RecordKey key, std::string_view name, std::string_view label, double most) {
  RecordEntry entry = text(key, name, label, "of the tap, WGS 84, in decimal degrees", Needed::never);
  entry.type = RecordType::quantity;
  entry.least = -most;
  entry.greatest = most;
  return entry;
}
constexpr RecordEntry choice(RecordKey key, std::string_view name, std::string_view label, std::string_view help,
                             std::span<const std::string_view> words, Needed needed) {
  RecordEntry entry = text(key, name, label, help, needed);
  entry.type = RecordType::choice;
  entry.words = words;
  return entry;
}
constexpr RecordEntry numbered() {
  RecordEntry entry =
      text(RecordKey::tap_number, "tap_number", "Tap", "of several taps of one order, from 1", Needed::never);
  entry.type = RecordType::whole;
  entry.least = 1;
  entry.greatest = 99;
  return entry;
}

using enum RecordKey;
using enum Needed;
constexpr RecordType quantity = RecordType::quantity;

constexpr std::array<RecordEntry, record_key_count> entries = {
    text(order, "order", "Order", "work order of the tap; must be the job's", never),
    numbered(),
    of_type(RecordType::day, text(date, "date", "Date", "day of the tap, such as 2026-05-04", always)),
    of_type(RecordType::time, text(start, "start", "Start", "such as 07:30", always)),
    of_type(RecordType::time, text(end, "end", "End", "such as 10:15", always)),
    ranged(1, 1000,
           fact(line_pressure, "line_pressure", "Line pressure", "at the gauge, when tapping", "main.pressure",
                quantity, Kind::pressure, always, ReadingId::line_pressure)),
    ranged(0.3, 160,
           fact(od, "od", "Outside diameter", "by caliper on the bare pipe", "main.od", quantity, Kind::length, never)),
    ranged(1, 500,
           fact(circumference, "circumference", "Circumference", "by tape on the bare pipe", "main.circumference",
                quantity, Kind::tape, never, ReadingId::circumference)),
    ranged(
        0.01, 24,
        fact(wall, "wall", "Wall", "by gauge at the tap", "main.wall", quantity, Kind::length, never, ReadingId::wall)),
    ranged(-40, 150,
           fact(pipe_temperature, "pipe_temperature", "Temperature of the pipe", "thermometer on the bare pipe",
                "main.temperature", quantity, Kind::temperature, never, ReadingId::pipe_temperature)),
    [] {
      RecordEntry entry = distance(joint_distance, "joint_distance", "Distance to the nearest joint",
                                   "from the tap along the main", 1000, never);
      entry.reading = ReadingId::joint_distance;
      return entry;
    }(),
    ranged(0, 500,
           fact(surge, "surge", "Surge, by the utility", "as the utility confirms it", "main.surge", quantity,
                Kind::pressure, never, ReadingId::surge)),
    fact(pipe_class, "class", "Class on the barrel", "as it stands on the pipe", "main.class", RecordType::text,
         Kind::ratio, never),
    fact(condition, "condition", "Condition", "of the pipe as found", "main.condition", RecordType::choice, Kind::ratio,
         always),
    fact(clock, "clock", "Clock", "of the tap, seen along the main", "service.clock", RecordType::text, Kind::ratio,
         always),
    ranged(
        0, 100 * foot,
        fact(cover, "cover", "Cover", "from the ground to the crown", "main.cover", quantity, Kind::distance, always)),
    text(station, "station", "Station", "along the main, by the utility's own count", never),
    distance(tie_1, "tie_1", "Tie 1", "from the tap to a fixed point", 1000, always),
    text(tie_1_from, "tie_1_from", "Tie 1 from", "the fixed point", always),
    distance(tie_2, "tie_2", "Tie 2", "from the tap to another fixed point", 1000, always),
    text(tie_2_from, "tie_2_from", "Tie 2 from", "the other fixed point", always),
    degrees(longitude, "longitude", "Longitude", 180),
    degrees(latitude, "latitude", "Latitude", 90),
    choice(method, "method", "Method", "how it was tapped", methods_done, always),
    text(tool, "tool", "Tool", "mark on the tap or cutter", always),
    choice(tool_state, "tool_state", "State of the tool", "what was done to it since the hole before", tool_states,
           never),
    text(stop, "stop", "Stop", "corporation stop or valve: size, thread and mark", always),
    ranged(0.1, 60,
           fact(tap_depth, "tap_depth", "Depth tapped to", "feed from the touch of the tool to where tapping stopped",
                "service.trial.depth", quantity, Kind::length, never)),
    ranged(0, 100,
           fact(hand_turns, "hand_turns", "Turns by hand", "of the stop", "service.trial.hand_turns", quantity,
                Kind::ratio, never)),
    ranged(0, 20,
           fact(wrench_turns, "wrench_turns", "Turns by wrench", "of the stop", "service.trial.wrench_turns", quantity,
                Kind::ratio, direct_tap)),
    ranged(0, 20,
           fact(threads_showing, "threads_showing", "Threads showing", "of the stop, outside the pipe",
                "service.trial.threads_showing", quantity, Kind::ratio, direct_tap)),
    text(leak_check, "leak_check", "Leak check", "pressure, minutes, and what was seen", always),
    text(coupon, "coupon", "Coupon kept by", "who has the piece cut out, or why there is none", always),
    text(tapped_by, "tapped_by", "Tapped by, initials", "who tapped", always),
    text(seen_by, "seen_by", "Seen by", "who inspected", never),
    text(remarks, "remarks", "Odd about the main", "in a few words", never),
    ranged(-60, 150,
           fact(air_temperature, "air_temperature", "Temperature of the air", "thermometer in the shade, at the pit",
                "air_temperature", quantity, Kind::temperature, never, ReadingId::air_temperature)),
};

constexpr bool in_order() {
  for (std::size_t i = 0; i < entries.size(); ++i) {
    if (entries[i].key != static_cast<RecordKey>(i)) return false;
  }
  return true;
}
static_assert(in_order());

}  // namespace

std::span<const RecordEntry> record_entries() { return entries; }
const RecordEntry& entry_of(RecordKey key) { return entries[static_cast<std::size_t>(key)]; }

const RecordEntry* record_entry_named(std::string_view name) {
  std::string plain(name);
  std::replace(plain.begin(), plain.end(), '-', '_');
  const auto* const found =
      std::find_if(entries.begin(), entries.end(), [&](const RecordEntry& entry) { return entry.name == plain; });
  return found == entries.end() ? nullptr : &*found;
}

std::optional<Measure> Readings::measure(RecordKey key) const {
  const auto* const value = std::get_if<Measure>(&at(key));
  return value == nullptr ? std::nullopt : std::optional(*value);
}

std::string_view Readings::text(RecordKey key) const {
  const auto* const value = std::get_if<std::string>(&at(key));
  return value == nullptr ? std::string_view() : std::string_view(*value);
}

int Readings::tap_number() const {
  const auto* const number = std::get_if<int>(&at(RecordKey::tap_number));
  return number == nullptr ? 1 : *number;
}

std::string written(const RecordValue& value, UnitSystem units) {
  if (const auto* text = std::get_if<std::string>(&value)) return *text;
  if (const auto* measure = std::get_if<Measure>(&value)) return format_measure(*measure, units);
  if (const auto* whole = std::get_if<int>(&value)) return std::to_string(*whole);
  if (const auto* clock = std::get_if<ClockPosition>(&value)) return clock->label();
  return {};
}

std::string written(const RecordEntry& entry, const RecordValue& value, UnitSystem units) {
  const auto* const measure = std::get_if<Measure>(&value);
  if (measure != nullptr && entry.kind == Kind::distance) return on_tape(measure->as<Length>(), units, Toward::less);
  if (measure == nullptr || entry.type != RecordType::quantity || entry.kind != Kind::ratio)
    return written(value, units);
  std::string text;
  constexpr int places = 7;  // a centimeter on the ground
  append_number(text, measure->base(), places);
  return text;
}

}  // namespace mainbore
