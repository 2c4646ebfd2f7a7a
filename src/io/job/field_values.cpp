// The values of a job's fields from text, and what is said of a text that is none: quantities, sizes, words, days, clocks.
#include <algorithm>
#include <array>
#include <charconv>
#include <cmath>
#include <utility>
#include <vector>

#include "io/job/job_fields.hpp"
#include "io/text/nearest.hpp"
#include "io/text/text_scan.hpp"
#include "io/text/word_scan.hpp"

namespace mainbore::io {
namespace {

constexpr std::array<std::string_view, 15> missing_marks = {"null",    "#null#",  "<null>", "none", "n/a",
                                                            "#n/a",    "na",      "nan",    "xxx",  "unk",
                                                            "unknown", "<blank>", "blank",  "-",    "?"};

using ReadValue = std::variant<FieldValue, Problem>;

// "82" -> "write "82 psi" or "82 kPa"": for the kind's own units.
std::string with_unit(std::string_view number, const JobField& field) {
  const std::string bare(trimmed(number));
  if (field.type == FieldType::size) {
    // No inch size is above 48 but a few of the largest mains, and no metric one below.
    const bool metric = bare.find('/') == std::string::npos && parse_measure(bare, Kind::ratio).value.base() > 48.0;
    return "write \"" + bare + (metric ? " mm\"" : " in\"");
  }
  const std::string_view us = shown(Measure(0.0, field.kind), UnitSystem::us).unit;
  const std::string_view si = shown(Measure(0.0, field.kind), UnitSystem::si).unit;
  return "write \"" + bare + ' ' + std::string(us) + "\" or \"" + bare + ' ' + std::string(si) + '"';
}

bool has_decimal_comma(std::string_view text) {
  const std::size_t comma = text.find(',');
  return comma != std::string_view::npos && comma > 0 && comma + 1 < text.size() && is_digit(text[comma - 1]) &&
         is_digit(text[comma + 1]);
}

Problem faulty(const JobField& field, MeasureFault fault, std::string_view text, const Catalog& catalog) {
  std::string_view code = "job.not-a-quantity";
  std::string help = allowed_text(field, catalog);
  switch (fault) {
    case MeasureFault::no_unit:
      code = "job.no-unit";
      help = with_unit(text, field) + "; " + help;
      break;
    case MeasureFault::unknown_unit:
      code = "job.unknown-unit";
      if (has_decimal_comma(text)) help = "the decimal point is a point, not a comma; " + help;
      break;
    case MeasureFault::wrong_unit:
      code = "job.wrong-unit";
      break;
    case MeasureFault::out_of_range:
      code = "job.out-of-range";
      break;
    case MeasureFault::two_numbers:
      help = "of two readings write the one that is meant: of the line pressure, the highest; " + help;
      break;
    default:
      break;
  }
  return {code, describe(fault, text), std::move(help)};
}

// Control characters would reach terminals and printed pages.
bool has_control(std::string_view text, bool several_lines) {
  if (!any_byte(text, [](TextWord bytes) { return below_space(bytes) | delete_or_above(bytes); })) return false;
  for (std::size_t i = 0; i < text.size(); ++i) {
    const auto byte = static_cast<unsigned char>(text[i]);
    if (several_lines && (byte == '\n' || byte == '\t' || byte == '\r')) continue;
    if (byte < 0x20 || byte == 0x7F) return true;
    if (byte == 0xC2 && i + 1 < text.size() && static_cast<unsigned char>(text[i + 1]) < 0xA0) return true;
  }
  return false;
}

ReadValue read_text(const JobField& field, std::string_view text) {
  constexpr std::size_t longest_line = 300;
  constexpr std::size_t longest_note = 10000;
  const bool several_lines = field.type == FieldType::lines;
  const std::size_t longest = several_lines ? longest_note : longest_line;
  if (text.size() > longest) {
    return Problem{"job.out-of-range", "a text of " + std::to_string(text.size()) + " bytes",
                   "at most " + std::to_string(longest) + (several_lines ? "" : "; a long remark belongs in note")};
  }
  if (has_control(text, several_lines)) {
    return Problem{"job.unknown-value", quoted(text) + " has control characters in it",
                   several_lines ? "" : "one line of plain text"};
  }
  const std::string_view written = trimmed(text);
  if (field.need != Need::optional && text::is_blank(written)) {
    return Problem{"job.unknown-value", "nothing is given", "text in double quotes"};
  }
  if (field.meaning == TextMeaning::mark && is_missing_mark(written)) return FieldValue(std::string());
  if (field.meaning == TextMeaning::day) {
    if (const auto day = day_in(written); day && !day->exists()) {
      return Problem{"job.out-of-range", quoted(written) + " is no day of the calendar",
                     "year, month and day, such as \"2026-05-04\"; months from 01 to 12, days as the month has them"};
    }
  }
  return FieldValue(std::string(written));
}

// Range of a quantity or a size; the message in the units it was written for.
std::optional<Problem> outside(const JobField& field, double value, std::string_view text) {
  if (value >= field.least.base() && value <= field.greatest.base()) return std::nullopt;
  const auto both = [](Measure m) {
    const std::string us = format_measure(m, UnitSystem::us);
    const std::string si = format_measure(m, UnitSystem::si);
    return us == si ? us : us + " (" + si + ')';
  };
  Problem problem{"job.out-of-range", quoted(text) + " is out of range",
                  "from " + both(field.least) + " to " + both(field.greatest)};
  if (field.path == "main.pressure" && value < field.least.base()) {
    problem.help += "\na dry main is main.pressurized = false, with the pressure it will carry as main.pressure";
  }
  return problem;
}

ReadValue read_quantity(const JobField& field, std::string_view text, const Catalog& catalog) {
  const ParsedMeasure read = parse_measure(text, field.kind);
  if (!read) return faulty(field, read.fault, text, catalog);
  if (auto problem = outside(field, read.value.base(), text)) return *std::move(problem);
  return FieldValue(read.value);
}

// A metric figure is a trade size ("200 mm" is the 8-inch pipe), or an inch size converted ("203.2 mm"), or neither:
// then it is what it is, to 0.01 in. It is never moved to a size nearby.
NominalSize size_from_mm(double mm, const Catalog& catalog) {
  mm = std::round(mm * 1e6) / 1e6;  // without the noise of having been inches
  if (const auto trade = catalog.metric_size(mm)) return *trade;
  constexpr double rounding = 0.05 + 1e-9;  // mm: converted sizes are written to 0.1 mm
  const double inches = mm / 25.4;
  const double step = inches < 4.0 ? 0.125 : 0.5;  // of the inch sizes in use
  const double near = step * std::round(inches / step);
  if (std::fabs(near * 25.4 - mm) < rounding) return NominalSize::inches(near);
  return NominalSize::inches(std::round(inches * 100.0) / 100.0);
}

ReadValue read_size(const JobField& field, std::string_view text, const Catalog& catalog) {
  const std::string_view written = trimmed(text);
  if (written.size() > 2 && (written[0] == 'D' || written[0] == 'd') && (written[1] == 'N' || written[1] == 'n')) {
    const std::string_view number = trimmed(written.substr(2));
    double dn = 0.0;
    const auto [end, error] = std::from_chars(number.data(), number.data() + number.size(), dn);
    if (error == std::errc() && end == number.data() + number.size()) {
      if (const auto trade = catalog.metric_size(dn)) return FieldValue(*trade);
      return Problem{"job.unknown-value", quoted(written) + " is not a metric trade size",
                     "write the size in inches, or as the size is marked in mm"};
    }
  }
  const ParsedMeasure read = parse_measure(written, Kind::length);
  if (!read) return faulty(field, read.fault, text, catalog);
  if (auto problem = outside(field, read.value.base(), text)) return *std::move(problem);
  const double inches = read.value.base();
  const std::size_t unit = written.find_last_not_of("mMcC") + 1;  // mm, cm and m are the metric lengths
  const bool metric = unit < written.size() && written.back() != 'c' && written.back() != 'C';
  return FieldValue(metric ? size_from_mm(Length::from_base(inches) / units::mm, catalog)
                           : NominalSize::inches(inches));
}

// A word that is not among those known.
Problem unknown_word(std::string_view text, std::string_view is_not, std::span<const std::string_view> names) {
  Problem problem{"job.unknown-value", quoted(text) + " is not " + std::string(is_not), ""};
  if (const auto near = nearest(text, names)) problem.help = "did you mean \"" + std::string(*near) + "\"?  ";
  problem.help += "one of: " + listed(names);
  return problem;
}

ReadValue read_choice(const JobField& field, std::string_view text) {
  const std::string plain = plain_name(text);
  const Choice& words = *field.choice;
  for (std::size_t i = 0; i < words.names.size(); ++i) {
    if (plain == plain_name(words.names[i])) return FieldValue(static_cast<int>(i));
  }
  for (const OtherWord& other : words.others) {
    if (plain == plain_name(other.word)) return FieldValue(other.means);
  }
  for (const AskedWord& asked : words.asked) {
    if (plain == plain_name(asked.word))
      return Problem{"job.unknown-value", quoted(text) + " is not enough to go by", std::string(asked.ask)};
  }
  return unknown_word(text, "a word known here", words.names);
}

ReadValue read_material(std::string_view text, const Catalog& catalog) {
  const Catalog::MaterialReading read = catalog.read_material(text);
  if (read.material) return FieldValue(*read.material);
  if (read.why_not.empty()) return unknown_word(text, "a known material", material_names);
  return Problem{"job.unknown-value", quoted(text) + ": " + std::string(read.why_not),
                 "one of: " + listed(material_names)};
}

ReadValue read_machine(std::string_view text, const Catalog& catalog) {
  if (catalog.machine(text) != nullptr) return FieldValue(std::string(text));
  std::vector<std::string_view> ids;
  for (const MachineProfile& machine : catalog.machines()) ids.push_back(machine.id);
  Problem problem = unknown_word(text, "a machine of the catalog", ids);
  problem.help += "\nor give the machine's own figures: machine.title, machine.bar_diameter, ...";
  return problem;
}

ReadValue read_flag(std::string_view text) {
  const std::string plain = plain_name(text);
  if (plain == "true" || plain == "yes") return FieldValue(true);
  if (plain == "false" || plain == "no") return FieldValue(false);
  return Problem{"job.unknown-value", quoted(text) + " is neither yes nor no", "true or false"};
}

ReadValue read_whole(const JobField& field, std::string_view text) {
  const std::string_view digits = trimmed(text);
  int value = 0;
  const auto [end, error] = std::from_chars(digits.data(), digits.data() + digits.size(), value);
  const std::string allowed = "a whole number from " + format_measure(field.least, UnitSystem::us) + " to " +
                              format_measure(field.greatest, UnitSystem::us);
  if (error == std::errc::invalid_argument || end != digits.data() + digits.size()) {
    return Problem{"job.wrong-type", quoted(text) + " is not a whole number", allowed};
  }
  if (error != std::errc() || value < field.least.base() || value > field.greatest.base()) {
    return Problem{"job.out-of-range", std::string(digits) + " is out of range", allowed};
  }
  return FieldValue(value);
}

std::optional<int> two_digits(std::string_view text) {
  if (text.empty() || text.size() > 2) return std::nullopt;
  int value = 0;
  for (const char c : text) {
    if (!is_digit(c)) return std::nullopt;
    value = value * 10 + (c - '0');
  }
  return value;
}

// 1:30, 12:00, 2, 2 o'clock.
ReadValue read_clock(std::string_view text) {
  const Problem problem{"job.unknown-value", quoted(text) + " is not a place on a clock face",
                        "from \"1:00\" to \"12:59\", seen along the main: 12:00 is the crown, 3:00 the springline"};
  std::string_view face = trimmed(text);
  if (face.ends_with("o'clock")) face = trimmed(face.substr(0, face.size() - 7));
  const std::size_t colon = face.find(':');
  const std::optional<int> hours = two_digits(face.substr(0, colon));
  const std::optional<int> minutes = colon == std::string_view::npos ? 0 : two_digits(face.substr(colon + 1));
  const bool short_minutes = colon != std::string_view::npos && face.size() - colon != 3;
  if (!hours || !minutes || short_minutes || *hours < 1 || *hours > 12 || *minutes > 59) return problem;
  return FieldValue(ClockPosition{*hours % 12 * 60 + *minutes});
}

}  // namespace

static_assert(std::all_of(missing_marks.begin(), missing_marks.end(),
                          [](std::string_view mark) { return mark.size() <= longest_missing_mark; }));

bool is_missing_mark(std::string_view text) {
  return std::any_of(missing_marks.begin(), missing_marks.end(), [&](std::string_view mark) {
    return std::equal(text.begin(), text.end(), mark.begin(), mark.end(), [](char a, char b) {
      return (a >= 'A' && a <= 'Z' ? static_cast<char>(a - 'A' + 'a') : a) == b;
    });
  });
}

std::string allowed_text(const JobField& field, const Catalog& catalog) {
  switch (field.type) {
    case FieldType::text:
      return "text in double quotes";
    case FieldType::lines:
      return "text in double quotes";
    case FieldType::quantity:
      return expected_text(field.kind);
    case FieldType::size:
      return "a nominal size, such as \"8 in\", \"3/4 in\" or \"DN 200\"";
    case FieldType::material:
      return "one of: " + listed(material_names);
    case FieldType::choice:
      return "one of: " + listed(field.choice->names);
    case FieldType::machine: {
      std::string ids;
      for (const MachineProfile& machine : catalog.machines()) ids += (ids.empty() ? "" : ", ") + machine.id;
      return "one of: " + ids;
    }
    case FieldType::flag:
      return "true or false";
    case FieldType::whole:
      return "a whole number from " + format_measure(field.least, UnitSystem::us) + " to " +
             format_measure(field.greatest, UnitSystem::us);
    case FieldType::clock:
      return "a place on a clock face, such as \"1:30\"";
  }
  return {};
}

ReadValue read_value(const JobField& field, std::string_view text, const Catalog& catalog) {
  if (field.type != FieldType::lines && field.type != FieldType::text && trimmed(text).empty()) {
    return Problem{"job.unknown-value", "nothing is given", allowed_text(field, catalog)};
  }
  switch (field.type) {
    case FieldType::text:
    case FieldType::lines:
      return read_text(field, text);
    case FieldType::quantity:
      return read_quantity(field, text, catalog);
    case FieldType::size:
      return read_size(field, text, catalog);
    case FieldType::material:
      return read_material(text, catalog);
    case FieldType::choice:
      return read_choice(field, text);
    case FieldType::machine:
      return read_machine(trimmed(text), catalog);
    case FieldType::flag:
      return read_flag(text);
    case FieldType::whole:
      return read_whole(field, text);
    case FieldType::clock:
      return read_clock(text);
  }
  return FieldValue();
}

std::optional<Problem> beyond(const JobField& field, const FieldValue& value) {
  const auto in_words = [](Measure measure) { return format_measure(measure, UnitSystem::us); };
  if (const auto* const measure = std::get_if<Measure>(&value)) {
    return outside(field, measure->base(), in_words(*measure));
  }
  if (const auto* const size = std::get_if<NominalSize>(&value)) {
    return outside(field, size->number(), size->label() + " in");
  }
  if (const auto* const whole = std::get_if<int>(&value); whole != nullptr && field.type == FieldType::whole) {
    return outside(field, *whole, std::to_string(*whole));
  }
  return std::nullopt;
}

}  // namespace mainbore::io
