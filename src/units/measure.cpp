#include "mainbore/measure.hpp"

#include <algorithm>
#include <array>
#include <charconv>
#include <cmath>
#include <cstring>

#include "text/digit.hpp"
#include "text/foreign.hpp"
#include "units/digits.hpp"
#include "units/unit_names.hpp"

namespace mainbore {
namespace {

// One row a unit: its names, what it measures, and how many base units it is. `offset` serves the temperatures alone.
struct UnitRow {
  std::string_view name;
  Kind kind;  // the first kind of its dimension; see same_dimension()
  double base;
  double offset = 0.0;
};

constexpr double in(Length v) { return v.base(); }

constexpr std::array unit_rows = {
    UnitRow{"in", Kind::length, in(units::inch)},
    UnitRow{"inch", Kind::length, in(units::inch)},
    UnitRow{"inches", Kind::length, in(units::inch)},
    UnitRow{"\"", Kind::length, in(units::inch)},
    UnitRow{"ft", Kind::length, in(units::foot)},
    UnitRow{"foot", Kind::length, in(units::foot)},
    UnitRow{"feet", Kind::length, in(units::foot)},
    UnitRow{"'", Kind::length, in(units::foot)},
    UnitRow{"mm", Kind::length, in(units::mm)},
    UnitRow{"cm", Kind::length, 10 * in(units::mm)},
    UnitRow{"m", Kind::length, in(units::meter)},
    UnitRow{"psi", Kind::pressure, units::psi.base()},
    UnitRow{"psig", Kind::pressure, units::psi.base()},
    UnitRow{"kpa", Kind::pressure, units::kpa.base()},
    UnitRow{"bar", Kind::pressure, 100 * units::kpa.base()},
    UnitRow{"mpa", Kind::pressure, 1000 * units::kpa.base()},
    UnitRow{"tsf", Kind::pressure, units::tsf.base()},
    UnitRow{"lbf", Kind::force, units::lbf.base()},
    UnitRow{"lb", Kind::force, units::lbf.base()},
    UnitRow{"n", Kind::force, units::newton.base()},
    UnitRow{"kn", Kind::force, 1000 * units::newton.base()},
    UnitRow{"ft-lbf", Kind::torque, units::ft_lbf.base()},
    UnitRow{"ft-lb", Kind::torque, units::ft_lbf.base()},
    UnitRow{"in-lbf", Kind::torque, units::in_lbf.base()},
    UnitRow{"in-lb", Kind::torque, units::in_lbf.base()},
    UnitRow{"n-m", Kind::torque, units::newton_meter.base()},
    UnitRow{"nm", Kind::torque, units::newton_meter.base()},
    UnitRow{"gpm", Kind::flow, units::gpm.base()},
    UnitRow{"l/s", Kind::flow, units::liter_per_s.base()},
    UnitRow{"lps", Kind::flow, units::liter_per_s.base()},
    UnitRow{"l/min", Kind::flow, units::liter_per_s.base() / 60},
    UnitRow{"m3/h", Kind::flow, units::liter_per_s.base() / 3.6},
    UnitRow{"gal", Kind::volume, units::gallon.base()},
    UnitRow{"l", Kind::volume, units::liter.base()},
    UnitRow{"ml", Kind::volume, units::liter.base() / 1000},
    UnitRow{"yd3", Kind::volume, units::yd3.base()},
    UnitRow{"ft3", Kind::volume, units::ft3.base()},
    UnitRow{"m3", Kind::volume, units::m3.base()},
    UnitRow{"ft/s", Kind::velocity, units::ft_per_s.base()},
    UnitRow{"fps", Kind::velocity, units::ft_per_s.base()},
    UnitRow{"m/s", Kind::velocity, units::m_per_s.base()},
    UnitRow{"mph", Kind::velocity, units::mph.base()},
    UnitRow{"km/h", Kind::velocity, units::m_per_s.base() / 3.6},
    UnitRow{"degf", Kind::temperature, 1.0},
    UnitRow{"f", Kind::temperature, 1.0},
    UnitRow{"\xC2\xB0"
            "f",
            Kind::temperature, 1.0},
    UnitRow{"degc", Kind::temperature, 1.8, 32.0},
    UnitRow{"c", Kind::temperature, 1.8, 32.0},
    UnitRow{"\xC2\xB0"
            "c",
            Kind::temperature, 1.8, 32.0},
    UnitRow{"in2", Kind::area, units::in2.base()},
    UnitRow{"mm2", Kind::area, (units::mm * units::mm).base()},
    UnitRow{"lbf/in", Kind::line_load, units::lbf_per_in.base()},
    UnitRow{"n/mm", Kind::line_load, (units::newton / units::mm).base()},
    UnitRow{"s", Kind::duration, 1.0},
    UnitRow{"min", Kind::duration, units::minute.base()},
    UnitRow{"h", Kind::duration, units::hour.base()},
    UnitRow{"hr", Kind::duration, units::hour.base()},
    UnitRow{"hours", Kind::duration, units::hour.base()},
    UnitRow{"days", Kind::duration, 24 * units::hour.base()},
    UnitRow{"%", Kind::percent, 1.0},
    UnitRow{"percent", Kind::percent, 1.0},
    UnitRow{"deg", Kind::angle, 1.0},
};

// How each kind is shown, by system: the unit, its size in base units, and the places a crew can read.
struct Display {
  std::string_view unit;
  double base;
  int decimals;
};
struct KindRow {
  Display us;
  Display si;
  std::string_view noun;      // "a pressure"
  std::string_view examples;  // "\"82 psi\" or \"565 kPa\""
};

constexpr double temperature_unit = 1.0;  // handled apart: an offset scale
constexpr std::array<KindRow, kind_count> kind_rows = {
    KindRow{{"in", in(units::inch), 3}, {"mm", in(units::mm), 1}, "a length", "\"6.9 in\", \"1-1/4 in\" or \"200 mm\""},
    KindRow{{"in", in(units::inch), 4}, {"mm", in(units::mm), 0}, "a length", "\"21-3/4 in\" or \"550 mm\""},
    KindRow{
        {"ft", in(units::foot), 2}, {"m", in(units::meter), 2}, "a distance", "\"4 ft 6 in\", \"18 in\" or \"1.4 m\""},
    KindRow{{"psi", 1.0, 1}, {"kPa", units::kpa.base(), 0}, "a pressure", "\"82 psi\" or \"565 kPa\""},
    KindRow{{"lbf", 1.0, 0}, {"N", units::newton.base(), 0}, "a force", "\"50 lbf\" or \"220 N\""},
    KindRow{{"ft-lbf", units::ft_lbf.base(), 0},
            {"N-m", units::newton_meter.base(), 0},
            "a torque",
            "\"30 ft-lbf\" or \"40 N-m\""},
    KindRow{
        {"gpm", units::gpm.base(), 1}, {"L/s", units::liter_per_s.base(), 2}, "a flow", "\"18 gpm\" or \"1.1 L/s\""},
    KindRow{{"gal", units::gallon.base(), 1}, {"L", units::liter.base(), 1}, "a volume", "\"2 gal\" or \"7.5 L\""},
    KindRow{{"yd3", units::yd3.base(), 1}, {"m3", units::m3.base(), 1}, "a volume of earth", "\"12 yd3\" or \"9 m3\""},
    KindRow{{"ft/s", units::ft_per_s.base(), 1},
            {"m/s", units::m_per_s.base(), 2},
            "a velocity",
            "\"2.5 ft/s\" or \"0.8 m/s\""},
    KindRow{
        {"degF", temperature_unit, 0}, {"degC", temperature_unit, 0}, "a temperature", "\"50 degF\" or \"10 degC\""},
    KindRow{{"in2", 1.0, 3}, {"mm2", (units::mm * units::mm).base(), 0}, "an area", "\"0.79 in2\" or \"500 mm2\""},
    KindRow{{"lbf/in", 1.0, 0}, {"N/mm", (units::newton / units::mm).base(), 1}, "a load per length", "\"100 lbf/in\""},
    KindRow{
        {"tsf", units::tsf.base(), 2}, {"kPa", units::kpa.base(), 0}, "a soil strength", "\"1.5 tsf\" or \"144 kPa\""},
    KindRow{{"mph", units::mph.base(), 0},
            {"km/h", units::m_per_s.base() / 3.6, 0},
            "a speed",
            "\"35 mph\" or \"50 km/h\""},
    KindRow{{"min", units::minute.base(), 1}, {"min", units::minute.base(), 1}, "a time", "\"10 min\""},
    KindRow{{"h", units::hour.base(), 1}, {"h", units::hour.base(), 1}, "a time", "\"24 h\""},
    KindRow{{"%", 1.0, 1}, {"%", 1.0, 1}, "a percentage", "\"12.5 %\""},
    KindRow{{"deg", 1.0, 1}, {"deg", 1.0, 1}, "an angle", "\"45 deg\""},
    KindRow{{"threads", 1.0, 2}, {"threads", 1.0, 2}, "a number of threads", "\"2 threads\""},
    KindRow{{"turns", 1.0, 2}, {"turns", 1.0, 2}, "a number of turns", "\"2 turns\""},
    KindRow{{"", 1.0, 3}, {"", 1.0, 3}, "a number", "0.5"},
};

constexpr const KindRow& row_of(Kind kind) { return kind_rows[static_cast<std::size_t>(kind)]; }

// The kind under which the units of a dimension are listed above.
constexpr Kind dimension_of(Kind kind) {
  switch (kind) {
    case Kind::tape:
    case Kind::distance:
      return Kind::length;
    case Kind::strength:
      return Kind::pressure;
    case Kind::earth:
      return Kind::volume;
    case Kind::speed:
      return Kind::velocity;
    case Kind::time_span:
      return Kind::duration;
    default:
      return kind;
  }
}

constexpr std::array<double, 10> powers_of_ten = {1, 10, 100, 1e3, 1e4, 1e5, 1e6, 1e7, 1e8, 1e9};

// The digits of a number that whole arithmetic is enough for, which is nearly every one; null for another. A value
// half way between two of the last place is for the exact digits of its fraction to decide.
char* put_plain_number(char* to, double value, int decimals) {
  if (decimals < 0 || static_cast<std::size_t>(decimals) >= powers_of_ten.size()) return nullptr;
  const double scaled = std::fabs(value) * powers_of_ten[static_cast<std::size_t>(decimals)];
  if (!(scaled < 1e12)) return nullptr;
  auto number = static_cast<std::int64_t>(scaled);
  const double rest = scaled - static_cast<double>(number);
  if (std::fabs(rest - 0.5) < 1e-3) return nullptr;
  if (rest > 0.5) ++number;
  if (value < 0 && number != 0) *to++ = '-';

  const auto parts = static_cast<std::int64_t>(powers_of_ten[static_cast<std::size_t>(decimals)]);
  const auto whole = static_cast<std::uint64_t>(number / parts);
  auto fraction = static_cast<std::uint32_t>(number % parts);
  if (whole < 10) *to++ = static_cast<char>('0' + whole);
  else to = std::to_chars(to, to + longest_number, whole).ptr;
  if (fraction == 0) return to;
  for (; fraction % 10 == 0; fraction /= 10) --decimals;
  *to++ = '.';
  for (char* at = to + decimals; at != to; fraction /= 10) *--at = static_cast<char>('0' + fraction % 10);
  return to + decimals;
}

constexpr char lower(char c) { return c >= 'A' && c <= 'Z' ? static_cast<char>(c - 'A' + 'a') : c; }
using text::is_digit;
constexpr bool is_space(char c) { return c == ' ' || c == '\t'; }

bool same_word(std::string_view text, std::string_view lower_case) {
  if (text.size() != lower_case.size()) return false;
  for (std::size_t i = 0; i < text.size(); ++i) {
    if (lower(text[i]) != lower_case[i]) return false;
  }
  return true;
}

const UnitRow* find_unit(std::string_view name) {
  for (const UnitRow& row : unit_rows) {
    if (same_word(name, row.name)) return &row;
  }
  return nullptr;
}

// 12 significant digits: more than any gauge, fewer than the noise of converting units.
double settle(double value) {
  if (value == 0.0 || !std::isfinite(value)) return value;
  const double magnitude = std::floor(std::log10(std::fabs(value)));
  if (magnitude < -200 || magnitude > 200) return value;
  const double scale = std::pow(10.0, 11.0 - magnitude);
  return std::round(value * scale) / scale;
}

class Scanner {
 public:
  explicit Scanner(std::string_view text) : rest_(text) {}

  void skip_space() {
    while (!rest_.empty() && is_space(rest_.front())) rest_.remove_prefix(1);
  }
  [[nodiscard]] bool done() const { return rest_.empty(); }
  [[nodiscard]] char peek() const { return rest_.empty() ? '\0' : rest_.front(); }

  // 12, 1.5; and where it may be a fraction 3/4, 1-1/4, 1 1/4. Returns a fault, or none with the value set.
  MeasureFault number(double& value, bool may_be_fraction) {
    bool negative = false;
    if (peek() == '-' || peek() == '+') {
      negative = peek() == '-';
      rest_.remove_prefix(1);
    }
    if (!is_digit(peek()) && peek() != '.') return MeasureFault::not_a_number;
    if (const auto fault = decimal(value); fault != MeasureFault::none) return fault;
    if (peek() == '/') {
      // Two pressures are written so, static over residual: nothing is divided that is no part of an inch.
      if (const auto fault = over(value); fault != MeasureFault::none) return fault;
      if (!may_be_fraction || value >= 1.0) return MeasureFault::two_numbers;
    } else if (const std::size_t start = mixed_fraction_start(); start != 0) {
      Scanner tail(rest_.substr(start));
      double fraction = 0.0;
      if (const auto fault = tail.decimal(fraction); fault != MeasureFault::none) return fault;
      if (const auto fault = tail.over(fraction); fault != MeasureFault::none) return fault;
      if (!may_be_fraction) return MeasureFault::two_numbers;
      if (!(fraction > 0.0 && fraction < 1.0)) return MeasureFault::out_of_range;  // 1-0/4, 1-5/4
      value += fraction;
      rest_ = tail.rest_;
    }
    if (negative) value = -value;
    return std::isfinite(value) ? MeasureFault::none : MeasureFault::out_of_range;
  }

  std::string_view word() {
    std::size_t n = 0;
    while (n < rest_.size() && !is_space(rest_[n]) && !(n > 0 && is_digit(rest_[n]) && is_quote(rest_[n - 1]))) ++n;
    const std::string_view found = rest_.substr(0, n);
    rest_.remove_prefix(n);
    return found;
  }

 private:
  static bool is_quote(char c) { return c == '\'' || c == '"'; }

  MeasureFault decimal(double& value) {
    const auto [end, error] = std::from_chars(rest_.data(), rest_.data() + rest_.size(), value);
    if (error == std::errc::result_out_of_range) return MeasureFault::out_of_range;
    if (error != std::errc()) return MeasureFault::not_a_number;
    rest_.remove_prefix(static_cast<std::size_t>(end - rest_.data()));
    return MeasureFault::none;
  }
  MeasureFault over(double& value) {
    rest_.remove_prefix(1);
    double denominator = 0.0;
    if (!is_digit(peek())) return MeasureFault::not_a_number;
    if (const auto fault = decimal(denominator); fault != MeasureFault::none) return fault;
    if (denominator == 0.0) return MeasureFault::out_of_range;
    value /= denominator;
    return MeasureFault::none;
  }
  // Where the "1/4" of "1-1/4" or "1 1/4" begins, or 0 when what follows is not digits-slash-digits.
  [[nodiscard]] std::size_t mixed_fraction_start() const {
    if (rest_.empty() || (rest_.front() != '-' && !is_space(rest_.front()))) return 0;
    std::size_t i = 1;
    const std::size_t start = i;
    while (i < rest_.size() && is_digit(rest_[i])) ++i;
    return i > start && i < rest_.size() && rest_[i] == '/' ? start : 0;
  }

  std::string_view rest_;
};

ParsedMeasure fail(MeasureFault fault) { return {Measure(), fault}; }

// One number with one unit, in base units.
MeasureFault convert(double value, std::string_view unit, Kind kind, double& base) {
  if (unit.empty()) return MeasureFault::no_unit;
  const UnitRow* row = find_unit(unit);
  if (row == nullptr) return MeasureFault::unknown_unit;
  if (row->kind != dimension_of(kind)) return MeasureFault::wrong_unit;
  base = value * row->base + row->offset;
  return std::isfinite(base) ? MeasureFault::none : MeasureFault::out_of_range;
}

std::string_view trimmed(std::string_view text) {
  while (!text.empty() && is_space(text.front())) text.remove_prefix(1);
  while (!text.empty() && is_space(text.back())) text.remove_suffix(1);
  return text;
}

}  // namespace

ParsedMeasure parse_measure(double value, std::string_view unit, Kind kind) {
  double base = value;
  if (!std::isfinite(value)) return fail(MeasureFault::out_of_range);
  if (has_unit(kind)) {
    if (const auto fault = convert(value, trimmed(unit), kind, base); fault != MeasureFault::none) return fail(fault);
  }
  return {Measure(settle(base), kind), MeasureFault::none};
}

ParsedMeasure parse_measure(std::string_view text, Kind kind) {
  Scanner scan(trimmed(text));
  if (scan.done()) return fail(MeasureFault::empty);
  double value = 0.0;
  const bool in_fractions = !has_unit(kind) || dimension_of(kind) == Kind::length;
  if (const auto fault = scan.number(value, in_fractions); fault != MeasureFault::none) return fail(fault);
  scan.skip_space();
  const std::string_view unit = scan.word();
  double base = value;
  if (!has_unit(kind)) {
    if (!unit.empty() && !same_word(unit, row_of(kind).us.unit)) return fail(MeasureFault::wrong_unit);
  } else if (const auto fault = convert(value, unit, kind, base); fault != MeasureFault::none) {
    return fail(fault);
  }
  scan.skip_space();
  if (!scan.done()) {
    // Feet, then inches: "4 ft 6 in", 4'6".
    double inches = 0.0;
    const bool feet = same_word(unit, "ft") || same_word(unit, "foot") || same_word(unit, "feet") || unit == "'";
    if (!feet || !is_digit(scan.peek()) || scan.number(inches, true) != MeasureFault::none)
      return fail(MeasureFault::trailing);
    scan.skip_space();
    const UnitRow* second = find_unit(scan.word());
    scan.skip_space();
    if (second == nullptr || second->base != in(units::inch) || second->kind != Kind::length || !scan.done()) {
      return fail(MeasureFault::trailing);
    }
    base += value < 0 ? -inches : inches;
  }
  return {Measure(settle(base), kind), MeasureFault::none};
}

std::vector<std::string_view> unit_names(Kind kind) {
  std::vector<std::string_view> names;
  for (const UnitRow& row : unit_rows) {
    if (row.kind == dimension_of(kind)) names.push_back(row.name);
  }
  return names;
}

std::string expected_text(Kind kind) {
  const KindRow& row = row_of(kind);
  if (!has_unit(kind)) return std::string(row.noun);
  return std::string(row.noun) + " with its unit, such as " + std::string(row.examples);
}

std::string describe(MeasureFault fault, std::string_view text) {
  std::string quoted = text::quoted(text);
  switch (fault) {
    case MeasureFault::none:
      return quoted;
    case MeasureFault::empty:
      return "nothing is given";
    case MeasureFault::not_a_number:
      return quoted + " does not start with a number";
    case MeasureFault::no_unit:
      return quoted + " has no unit";
    case MeasureFault::unknown_unit:
      return quoted + " has a unit that is not known";
    case MeasureFault::wrong_unit:
      return quoted + " has the unit of something else";
    case MeasureFault::out_of_range:
      return quoted + " is not a number that can be used";
    case MeasureFault::trailing:
      return quoted + " has something left over after the unit";
    case MeasureFault::two_numbers:
      return quoted + " is two numbers, or not a fraction";
  }
  return quoted;
}

namespace {

enum class Rounding : std::uint8_t { nearest, down, up };
Rounding rounding_of(Toward toward) { return toward == Toward::less ? Rounding::down : Rounding::up; }

// In whole steps; what is one but for the noise of having been worked out is one.
double whole_steps(double steps, Rounding rounding) {
  constexpr double noise = 1e-6;
  // A half that the units have worn a little is one still: 70.5 psi and 486.081 kPa are the same pressure.
  return rounding == Rounding::nearest ? std::round(steps + std::copysign(noise, steps))
         : rounding == Rounding::up    ? std::ceil(steps - noise)
                                       : std::floor(steps + noise);
}

// In the unit shown, and not rounded yet.
Shown in_unit(Measure measure, UnitSystem system) {
  const KindRow& row = row_of(measure.kind());
  const Display& display = system == UnitSystem::us ? row.us : row.si;
  double value = measure.base() / display.base;
  if (measure.kind() == Kind::temperature && system == UnitSystem::si) value = (measure.base() - 32.0) / 1.8;
  return {value, display.unit, display.decimals};
}

Shown rounded(const Shown& display, Rounding rounding) {
  const double scale = powers_of_ten[static_cast<std::size_t>(display.decimals)];
  const double value = whole_steps(display.value * scale, rounding) / scale;
  return {value == 0.0 ? 0.0 : value, display.unit, display.decimals};
}

}  // namespace

Shown shown(Measure measure, UnitSystem system) { return rounded(in_unit(measure, system), Rounding::nearest); }
Shown shown(Measure measure, UnitSystem system, Toward toward) {
  return rounded(in_unit(measure, system), rounding_of(toward));
}

namespace {

// Digits before the point; of less than a tenth as many less as zeros follow it.
int digits_before_point(double size) {
  if (!(size > 0.0)) return 1;
  std::size_t place = 0;
  if (size >= 1.0) {
    while (place < powers_of_ten.size() && size >= powers_of_ten[place]) ++place;
    return static_cast<int>(place);
  }
  while (place + 1 < powers_of_ten.size() && size < 1.0 / powers_of_ten[place + 1]) ++place;
  return -static_cast<int>(place);
}

}  // namespace

Shown shown_in_calculation(Measure measure, UnitSystem system, int digits) {
  constexpr int most_places = 9;
  Shown display = in_unit(measure, system);
  display.decimals = std::clamp(digits - digits_before_point(std::fabs(display.value)), 0, most_places);
  return rounded(display, Rounding::nearest);
}

ShownRange shown_between(Measure least, Measure most, UnitSystem system) {
  constexpr int most_places = 4;  // a sixteenth of an inch in decimals, or a tenth of a micrometre
  Shown low = in_unit(least, system);
  Shown high = in_unit(most, system);
  ShownRange range;
  do {
    range = {rounded(low, Rounding::up), rounded(high, Rounding::down)};
    ++low.decimals;
    ++high.decimals;
  } while (range.least.value > range.most.value && low.decimals <= most_places);
  return range;
}

char* put_number(char* to, double value, int decimals) {
  if (char* const end = put_plain_number(to, value, decimals)) return end;
  char* const last = to + longest_number;
  auto [end, error] = std::to_chars(to, last, value, std::chars_format::fixed, decimals);
  // Too long to print plainly: nothing a crew would read.
  if (error != std::errc()) return std::to_chars(to, last, value).ptr;
  if (decimals > 0) {
    while (end[-1] == '0') --end;
    if (end[-1] == '.') --end;
  }
  if (std::string_view(to, static_cast<std::size_t>(end - to)) != "-0") return end;
  *to = '0';
  return to + 1;
}

void append_number(std::string& out, double value, int decimals) {
  std::array<char, longest_number> digits;
  out.append(digits.data(), put_number(digits.data(), value, decimals));
}

void append_sixteenths(std::string& out, double value) {
  long long sixteenths = std::llround(value * 16.0);
  if (sixteenths < 0) {
    out += '-';
    sixteenths = -sixteenths;
  }
  long long numerator = sixteenths % 16;
  long long denominator = 16;
  while (numerator != 0 && numerator % 2 == 0) {
    numerator /= 2;
    denominator /= 2;
  }
  const long long whole = sixteenths / 16;
  if (whole != 0 || numerator == 0) out += std::to_string(whole);
  if (numerator == 0) return;
  if (whole != 0) out += '-';
  out += std::to_string(numerator) + '/' + std::to_string(denominator);
}

namespace {

// As a crew reads it, and not rounded yet: a large flow to the whole unit.
Shown readable(Measure measure, UnitSystem system) {
  const Shown display = in_unit(measure, system);
  if (measure.kind() == Kind::flow && measure.base() > 100.0 * units::gpm.base()) {
    const int decimals = system == UnitSystem::us ? 0 : 1;
    return {display.value, display.unit, decimals};
  }
  return display;
}

// Feet and inches: to the quarter inch, a bound to the inch.
void append_feet(std::string& out, Length length, Rounding rounding) {
  const double steps = rounding == Rounding::nearest ? 4.0 : 1.0;
  const double inches = whole_steps(steps * (length / units::inch), rounding) / steps;
  const double feet = std::trunc(inches / 12.0);
  const double rest = inches - 12.0 * feet;
  if (feet != 0.0) {
    append_number(out, feet, 0);
    out += " ft";
    if (rest == 0.0) return;
    out += ' ';
  }
  append_sixteenths(out, feet == 0.0 ? rest : std::fabs(rest));
  out += " in";
}

// By a watch: seconds, and whole minutes from two on.
void append_time(std::string& out, Time time, Rounding rounding) {
  const double seconds = whole_steps(time / units::second, rounding);
  if (std::fabs(seconds) < 120.0) {
    append_number(out, seconds, 0);
    out += " s";
    return;
  }
  append_number(out, whole_steps(time / units::minute, rounding), 0);
  out += " min";
}

void append_rounded(std::string& out, Measure measure, UnitSystem system, Rounding rounding) {
  if (measure.kind() == Kind::distance && system == UnitSystem::us) {
    append_feet(out, measure.as<Length>(), rounding);
    return;
  }
  if (measure.kind() == Kind::duration) {
    append_time(out, measure.as<Time>(), rounding);
    return;
  }
  const Shown display = readable(measure, system);
  if (measure.kind() == Kind::tape && system == UnitSystem::us) {
    append_sixteenths(out, whole_steps(16.0 * display.value, rounding) / 16.0);
  } else {
    append_number(out, rounded(display, rounding).value, display.decimals);
  }
  if (display.unit == "%") {
    out += " %";
  } else if (!display.unit.empty()) {
    out += ' ';
    out += display.unit;
  }
}

void append_shown(std::string& out, const Shown& display) {
  append_number(out, display.value, display.decimals);
  if (!display.unit.empty()) (out += ' ') += display.unit;
}

double whole_steps(Length length, Length step, Toward toward) {
  return whole_steps(length / step, rounding_of(toward));
}

}  // namespace

void append_measure(std::string& out, Measure measure, UnitSystem system) {
  append_rounded(out, measure, system, Rounding::nearest);
}
void append_measure(std::string& out, Measure measure, UnitSystem system, Toward toward) {
  append_rounded(out, measure, system, rounding_of(toward));
}

std::string on_rule(Length length, UnitSystem system, Toward toward) {
  std::string text;
  if (system == UnitSystem::si) {
    append_number(text, whole_steps(length, units::mm, toward), 0);
    return text + " mm";
  }
  append_sixteenths(text, whole_steps(length, 0.0625 * units::inch, toward) / 16.0);
  return text + " in";
}

std::string on_tape(Length length, UnitSystem system, Toward toward) {
  std::string text;
  if (system == UnitSystem::si) {
    append_number(text, 0.01 * whole_steps(length, 0.01 * units::meter, toward), 2);
    return text + " m";
  }
  append_feet(text, length, rounding_of(toward));
  return text;
}

namespace {

std::string gauged(Pressure pressure, UnitSystem system, Rounding rounding) {
  Shown display = in_unit(pressure, system);
  display.decimals = 0;
  std::string text;
  append_shown(text, rounded(display, rounding));
  return text;
}

}  // namespace

std::string on_gauge(Pressure pressure, UnitSystem system) { return gauged(pressure, system, Rounding::nearest); }
std::string on_gauge(Pressure pressure, UnitSystem system, Toward toward) {
  return gauged(pressure, system, rounding_of(toward));
}

std::string on_caliper(Length length, UnitSystem system) {
  if (system == UnitSystem::si) return format_measure(length, system);
  // Iron pipe sizes are made to the half hundredth, 6.625 in, and stand so in every table.
  const double half_hundredths = length / units::inch * 200.0;
  std::string text;
  append_number(text, length / units::inch, std::fabs(half_hundredths - std::round(half_hundredths)) < 1e-6 ? 3 : 2);
  return text + " in";
}

namespace {

// Two digits of a number over 10, rounded up; below, the whole number.
double two_digits_up(double value) {
  double step = 1.0;
  while (value > 100.0 * step) step *= 10.0;
  return step * std::ceil(value / step - 1e-6);
}

}  // namespace

std::string by_paces(Length length, UnitSystem system) {
  const Length step = system == UnitSystem::si ? 0.5 * units::meter : units::foot;
  return format_measure(Measure(whole_steps(length, step, Toward::more) * step, Kind::distance), system);
}

std::string in_round_figures(Force force, UnitSystem system) {
  const Shown display = in_unit(force, system);
  std::string text;
  append_number(text, two_digits_up(display.value), 0);
  return (text += ' ') += display.unit;
}

std::string by_the_truck(Force weight, UnitSystem system) {
  constexpr Force us_ton = 2000.0 * units::lbf;
  constexpr Force tonne = 1000.0 / 0.45359237 * units::lbf;
  std::string text;
  append_number(text, two_digits_up(weight / (system == UnitSystem::us ? us_ton : tonne)), 0);
  return text + (system == UnitSystem::us ? " tons" : " t");
}

namespace {

std::string quarters(double turns, Rounding rounding) {
  const double rounded = whole_steps(4.0 * turns, rounding) / 4.0;
  std::string text;
  append_sixteenths(text, rounded);
  return text + (rounded > 1.0 ? " turns" : " turn");
}

}  // namespace

std::string in_quarter_turns(double turns) { return quarters(turns, Rounding::nearest); }
std::string in_quarter_turns(double turns, Toward toward) { return quarters(turns, rounding_of(toward)); }

std::string format_measure(Measure measure, UnitSystem system) {
  std::string text;
  append_measure(text, measure, system);
  return text;
}
BoundTexts bound_texts(Measure least, Measure most, UnitSystem system) {
  const bool in_sixteenths = least.kind() == Kind::tape && system == UnitSystem::us;
  if (in_sixteenths &&
      whole_steps(16.0 * least.base(), Rounding::up) <= whole_steps(16.0 * most.base(), Rounding::down)) {
    return {format_measure(least, system, Toward::more), format_measure(most, system, Toward::less)};
  }
  const ShownRange range = shown_between(least, most, system);
  BoundTexts texts;
  append_shown(texts.least, range.least);
  append_shown(texts.most, range.most);
  return texts;
}

std::string format_between(Measure least, Measure most, UnitSystem system) {
  const BoundTexts texts = bound_texts(least, most, system);
  return texts.least + " to " + texts.most;
}

std::string format_measure(Measure measure, UnitSystem system, Toward toward) {
  std::string text;
  append_measure(text, measure, system, toward);
  return text;
}

}  // namespace mainbore
