// The as-built record of a tap: what the crew read and did, judged against the plan it worked by.
//
// Each reading stands against its stop number as it is printed in the units of the record, which is what the crew held its
// gauge against. The job is planned again with what was read at the pipe: where the answer
// gets worse, a reading lies outside its stop number, or another tap comes out, the sheet is void, and the record says why.
// Nothing is invented: what was not read stays unread, and is named as missing.
//
// The line pressure is judged by its stop number alone: a main that was lowered for the tap is still planned for at the
// pressure of the job, and a higher reading is planned with.
//
//     const TapRecord record = tap_record(job, readings, planner, UnitSystem::us);
//     if (record.is_void()) for (const VoidReason& why : record.because) std::cout << why.text << '\n';
#pragma once

#include <array>
#include <cstdint>
#include <optional>
#include <span>
#include <string>
#include <string_view>
#include <variant>
#include <vector>

#include "mainbore/finding_words.hpp"
#include "mainbore/plan.hpp"
#include "mainbore/planner.hpp"
#include "mainbore/stop_number.hpp"

namespace mainbore {

// Everything that is written down of a finished tap. Names only grow.
enum class RecordKey : std::uint8_t {
  order,
  tap_number,
  date,
  start,
  end,
  line_pressure,
  od,
  circumference,
  wall,
  pipe_temperature,
  joint_distance,
  surge,
  pipe_class,
  condition,
  clock,
  cover,
  station,
  tie_1,
  tie_1_from,
  tie_2,
  tie_2_from,
  longitude,
  latitude,
  method,
  tool,
  tool_state,
  stop,
  tap_depth,
  hand_turns,
  wrench_turns,
  threads_showing,
  leak_check,
  coupon,
  tapped_by,
  seen_by,
  remarks,
  air_temperature
};
inline constexpr std::size_t record_key_count = static_cast<std::size_t>(RecordKey::air_temperature) + 1;

enum class RecordType : std::uint8_t { text, day, time, quantity, whole, choice };

// When a record is not complete without it.
enum class Needed : std::uint8_t { never, always, direct_tap };

struct RecordEntry {
  RecordKey key = RecordKey::order;
  std::string_view name;   // in readings files, records and ledgers
  std::string_view label;  // "Tie 1 from"
  std::string_view help;
  RecordType type = RecordType::text;
  Kind kind = Kind::ratio;  // of a quantity; Kind::ratio: a plain number
  double least = 0.0;       // of a quantity, in base units, and of a whole number
  double greatest = 0.0;
  std::span<const std::string_view> words = {};  // of a choice
  Needed needed = Needed::never;
  std::string_view fact = {};             // the fact of the job that is read again at the pipe: kind and range are its
  std::optional<ReadingId> reading = {};  // the stop number it is judged by
};
[[nodiscard]] std::span<const RecordEntry> record_entries();
[[nodiscard]] const RecordEntry& entry_of(RecordKey key);
// By its name; the id of a stop number ("line-pressure") is understood too.
[[nodiscard]] const RecordEntry* record_entry_named(std::string_view name);

// What was made of the tool since the hole before.
inline constexpr std::array<std::string_view, 3> tool_states = {"as before", "sharpened", "replaced"};

// monostate: not read.
using RecordValue = std::variant<std::monostate, std::string, Measure, int, ClockPosition>;

struct HoldCleared {
  FindingCode code = FindingCode::method_none;
  std::string found;
  std::string by;
};

// Why something was done otherwise than planned; `what` is the name of an entry, or the crew's own word.
struct DeviationReason {
  std::string what;
  std::string reason;
};

struct Readings {
  std::array<RecordValue, record_key_count> values;
  std::vector<HoldCleared> holds;
  std::vector<DeviationReason> deviations;

  [[nodiscard]] const RecordValue& at(RecordKey key) const { return values[static_cast<std::size_t>(key)]; }
  [[nodiscard]] RecordValue& at(RecordKey key) { return values[static_cast<std::size_t>(key)]; }
  [[nodiscard]] bool has(RecordKey key) const { return at(key).index() != 0; }
  [[nodiscard]] std::optional<Measure> measure(RecordKey key) const;
  [[nodiscard]] std::string_view text(RecordKey key) const;  // empty: not read, or no text
  [[nodiscard]] int tap_number() const;                      // 1 where none is given
};

// What the text of a leak check says. Anything but a plain statement that it holds leaves a record incomplete.
enum class LeakCheck : std::uint8_t { unread, holds, leaks, unsure };
inline constexpr std::array<std::string_view, 4> leak_check_names = {"unread", "holds", "leaks", "unsure"};
// In English or Spanish: "tight at 70 psi, 15 min" holds, "drips at the seat" leaks, "15 min" is unsure. Never unread.
[[nodiscard]] LeakCheck leak_said(std::string_view text);

enum class Judged : std::uint8_t { unread, inside, outside };
inline constexpr std::array<std::string_view, 3> judged_names = {"unread", "inside", "outside"};

struct JudgedReading {
  StopNumber stop_number;
  std::optional<Measure> value;
  Judged judged = Judged::unread;
};

struct HoldLeft {
  FindingCode code = FindingCode::method_none;
  std::optional<ReadingId> by_reading;  // that cleared it
  std::string found;                    // else as the crew wrote it
  std::string by;
  [[nodiscard]] bool is_cleared() const { return by_reading || (!found.empty() && !by.empty()); }
};

struct Deviation {
  std::string what;
  std::string planned;  // empty where the plan says nothing of it
  std::string done;
  std::string reason;  // empty: none was given
};

struct VoidReason {
  std::string_view code;  // of a finding, "stop-number", "makeup" or "method"
  std::string text;
};

struct Missing {
  std::string name;   // of the entry; "holds.CODE"; "deviations.WHAT"
  std::string label;  // in words
};

struct TapRecord {
  Plan planned;  // the sheet the crew worked by
  Plan found;    // planned again with the readings
  Readings readings;
  std::vector<JudgedReading> judged;  // every stop number of the sheet
  std::vector<FindingCode> settled;   // holds of the sheet that the readings did away with
  std::vector<HoldLeft> holds;        // those that are left
  std::vector<Deviation> deviations;
  std::vector<VoidReason> because;  // why the sheet is void
  std::vector<Missing> missing;

  [[nodiscard]] bool is_void() const { return !because.empty(); }
  [[nodiscard]] bool is_complete() const { return missing.empty(); }
  [[nodiscard]] bool is_outside() const;  // some reading, of its stop number
  [[nodiscard]] LeakCheck leak_check() const;
  // Of the job with the readings. It is no go where the sheet is void (not every stop number is a fact that is planned with),
  // nor where the tap leaks.
  [[nodiscard]] Verdict verdict() const;
};

// Throws as Planner::plan does. Reasons, deviations and what is missing are in the words of the audience; a ledger and JSON have
// them in English.
[[nodiscard]] TapRecord tap_record(const Job& job, const Readings& readings, const Planner& planner, Audience audience);
// The value as a person writes it: "12.5 ft", "1:30", "2026-05-04"; empty where it was not read.
[[nodiscard]] std::string written(const RecordValue& value, UnitSystem units);
// The same of an entry: whatever has many places keeps them.
[[nodiscard]] std::string written(const RecordEntry& entry, const RecordValue& value, UnitSystem units);
// A reading in words, with as many places as tell it from the bound that it is outside of.
[[nodiscard]] std::string value_in_words(const JudgedReading& reading, UnitSystem units);
// The whole record as a page of text.
[[nodiscard]] std::string record_text(const TapRecord& record, Audience audience, int width = 80);

}  // namespace mainbore
