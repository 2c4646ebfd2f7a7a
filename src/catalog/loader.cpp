// Reads and checks the data files: the only place of the catalogue that knows JSON.
//
// simdjson, because every run of the program loads every table: its parser takes a tenth of the time of a general one.
#include <simdjson.h>

#include <algorithm>
#include <array>
#include <charconv>
#include <cmath>
#include <cstdint>
#include <initializer_list>
#include <numeric>
#include <set>
#include <span>
#include <string>
#include <string_view>
#include <utility>

#include "catalog/spelling.hpp"
#include "mainbore/catalog.hpp"
#include "mainbore/catalog_error.hpp"
#include "mainbore/measure.hpp"
#include "text/foreign.hpp"

namespace mainbore {
namespace {

using simdjson::dom::array;
using simdjson::dom::element;
using simdjson::dom::object;

// The cells of one table row, in the order of its columns.
constexpr std::size_t most_columns = 16;
using Cells = std::array<element, most_columns>;

constexpr std::array<std::string_view, pipe_column_count> pipe_column_names = {"od",   "od_minus",   "od_plus",
                                                                               "wall", "wall_minus", "rating"};

// What can be: it keeps out slips of typing and converting by orders of magnitude. What is odd but possible is the
// table's own affair.
struct Limits {
  double least;
  double most;
  std::string_view unit = {};
};
constexpr Limits size_limits{0.05, 150, "in"};
constexpr Limits length_limits{0.001, 1000, "in"};
constexpr Limits pressure_limits{1, 5000, "psi"};
constexpr Limits strength_limits{100, 500000, "psi"};
constexpr Limits modulus_limits{10000, 100000000, "psi"};
constexpr Limits tube_limits{0.01, 12, "in"};
constexpr Limits flow_limits{0.1, 100000, "gpm"};
constexpr Limits fixture_limits{0.1, 1000};
constexpr Limits percent_limits{0.1, 100, "%"};
constexpr Limits dose_limits{0.01, 10000, "mg/l"};
constexpr Limits hold_limits{0.1, 1000, "h"};

}  // namespace

class CatalogLoader {
 public:
  explicit CatalogLoader(Catalog& catalog) : catalog_(catalog) {}

  void load() {
    read_sources();
    read_edition();
    read_materials();
    read_stop_material();
    read_temperature_factors();
    read_spellings();
    read_metric_sizes();
    read_threads();
    read_machines();
    read_pipes();
    read_service_tables();
    // Read elsewhere, when they are asked for.
    for (const std::string_view path : {"rules/default.json", "field_tests.json"}) require(path);
    expect_all_read();
  }

 private:
  // ---- where we are, and what is wrong there

  [[noreturn]] void fault(const std::string& message) const {
    std::string where(file_);
    if (!entry_.empty()) where += ": " + entry_;
    if (row_ > 0) {
      where += ", row " + std::to_string(row_);
      if (!row_name_.empty()) where += " (" + row_name_ + ")";
    }
    throw CatalogError(text::visible(where + ": " + message));  // a table may be anybody's
  }
  void enter(std::string entry) {
    entry_ = std::move(entry);
    row_ = 0;
    row_name_.clear();
  }
  static std::string quoted(std::string_view text) { return text::quoted(text); }

  double within(double value, Limits limits, std::string_view name) const {
    if (value >= limits.least && value <= limits.most) return value;
    const auto shown = [](double number) {
      std::array<char, 32> digits{};
      return std::string(digits.data(), std::to_chars(digits.data(), digits.data() + digits.size(), number).ptr);
    };
    fault(std::string(name) + ": " + shown(value) + " is out of range; from " + shown(limits.least) + " to " +
          shown(limits.most) + (limits.unit.empty() ? "" : " ") + std::string(limits.unit));
  }
  double number_within(element cell, Limits limits, std::string_view name) const {
    return within(as_number(cell, name), limits, name);
  }

  // ---- reading JSON

  const std::string& require(std::string_view path) {
    file_ = path;
    enter("");
    opened_.insert(std::string(path));
    const auto found = catalog_.files_.find(path);
    if (found == catalog_.files_.end()) fault("the file is missing");
    return found->second;
  }
  object open(std::string_view path) {
    const std::string& text = require(path);
    element root;
    if (const auto error = parser_.parse(text).get(root)) {
      fault(std::string("not valid JSON: ") + simdjson::error_message(error));
    }
    return as_object(root, "the file");
  }

  object as_object(element value, std::string_view name) const {
    object result;
    if (value.get(result)) fault(std::string(name) + " is not an object");
    return result;
  }
  array as_array(element value, std::string_view name) const {
    array result;
    if (value.get(result)) fault(std::string(name) + " is not a list");
    return result;
  }
  std::string_view as_text(element value, std::string_view name) const {
    std::string_view result;
    if (value.get(result)) fault(std::string(name) + " is not a text");
    return result;
  }
  double as_number(element value, std::string_view name) const {
    double result = 0.0;
    if (value.get(result) || !std::isfinite(result)) fault(std::string(name) + " is not a number");
    return result;
  }
  NominalSize as_size(element value, std::string_view name) const {
    const std::string_view text = as_text(value, name);
    const ParsedMeasure read = parse_measure(text, Kind::ratio);
    if (!read) fault(std::string(name) + " is not a nominal size: " + quoted(text));
    return NominalSize::inches(within(read.value.base(), size_limits, name));
  }
  // Null is the honest "unknown".
  std::optional<double> as_number_or_unknown(element value, std::string_view name) const {
    if (value.is_null()) return std::nullopt;
    return as_number(value, name);
  }

  element member(object from, std::string_view key) const {
    element value;
    if (from.at_key(key).get(value)) fault("no " + quoted(key));
    return value;
  }
  std::string_view text_member(object from, std::string_view key) const { return as_text(member(from, key), key); }
  std::string text_or_empty(object from, std::string_view key) const {
    element value;
    return from.at_key(key).get(value) ? std::string() : std::string(as_text(value, key));
  }
  // Misspelt and repeated keys do not pass in silence.
  void only(object from, std::initializer_list<std::string_view> known) const {
    std::uint64_t seen = 0;
    for (const auto& field : from) {
      const auto* const at = std::find(known.begin(), known.end(), field.key);
      if (at == known.end()) fault("unknown key " + quoted(field.key));
      const std::uint64_t bit = std::uint64_t{1} << static_cast<unsigned>(at - known.begin());
      if ((seen & bit) != 0) fault("key " + quoted(field.key) + " stands twice");
      seen |= bit;
    }
  }

  // ---- provenance

  How as_how(std::string_view text) const {
    for (const How how : {How::published, How::derived, How::common_practice, How::memory}) {
      if (text == name_of(how)) return how;
    }
    fault(quoted(text) + " does not say how a number was had: published, derived, common practice or memory");
  }
  Basis basis_of(object from) const {
    const std::string_view id = text_member(from, "source");
    Basis basis;
    basis.source = catalog_.source(id);
    if (basis.source == nullptr) fault("unknown source " + quoted(id));
    basis.how = as_how(text_member(from, "how"));
    return basis;
  }
  static const Basis& weaker(const Basis& a, const Basis& b) { return b.how > a.how || a.source == nullptr ? b : a; }

  // Besides the register itself, a folder may keep the publications that it alone rests on.
  void read_sources() {
    static_cast<void>(open("sources.json"));
    for (const auto& [path, text] : catalog_.files_) {
      if (path == "sources.json" || path.ends_with("/sources.json")) read_sources(path);
    }
  }
  void read_sources(std::string_view path) {
    const object sources = open(path);
    for (const auto& [id, value] : sources) {
      enter("source " + quoted(id));
      const object source = as_object(value, "the source");
      only(source, {"title", "where", "note"});
      if (catalog_.source(id) != nullptr) fault("the id stands twice");
      catalog_.sources_.push_back({std::string(id), std::string(text_member(source, "title")),
                                   std::string(text_member(source, "where")), text_or_empty(source, "note")});
    }
  }
  void read_edition() {
    const object file = open("edition.json");
    only(file, {"edition"});
    catalog_.edition_ = text_member(file, "edition");
  }

  // ---- tables

  // Calls `read_row` with the cells of each row, after checking that there are as many as columns.
  template <class Read>
  void each_row(object table, std::size_t columns, Read read_row) {
    row_ = 0;
    for (const element line : as_array(member(table, "rows"), "rows")) {
      ++row_;
      row_name_.clear();
      Cells cells{};
      std::size_t count = 0;
      for (const element cell : as_array(line, "the row")) {
        if (count < cells.size()) cells[count] = cell;
        ++count;
      }
      if (count != columns) {
        fault(std::to_string(count) + " cells under " + std::to_string(columns) + " columns");
      }
      read_row(cells);
    }
    row_ = 0;
    row_name_.clear();
  }

  // Where each wanted column stands; npos for an optional one that is not there.
  static constexpr std::size_t npos = most_columns;
  template <std::size_t N>
  std::array<std::size_t, N> columns_of(object table, const std::array<std::string_view, N>& wanted,
                                        std::size_t required, std::size_t& count) const {
    std::array<std::size_t, N> at{};
    at.fill(npos);
    count = 0;
    for (const element name : as_array(member(table, "columns"), "columns")) {
      const std::string_view text = as_text(name, "a column name");
      const auto* const found = std::find(wanted.begin(), wanted.end(), text);
      if (found == wanted.end()) fault("unknown column " + quoted(text));
      std::size_t& place = at[static_cast<std::size_t>(found - wanted.begin())];
      if (place != npos) fault("column " + quoted(text) + " stands twice");
      place = count++;
    }
    for (std::size_t i = 0; i < required; ++i) {
      if (at[i] == npos) fault("no column " + quoted(wanted[i]));
    }
    return at;
  }

  // ---- materials

  void read_materials() {
    const object file = open("materials.json");
    std::array<bool, material_count> seen{};
    for (const auto& [name, value] : file) {
      enter("material " + quoted(name));
      const auto material = material_named(name);
      if (!material) fault("a main is not made of it");
      if (std::exchange(seen[static_cast<std::size_t>(*material)], true)) fault("it stands twice");
      const object facts = as_object(value, "the entry");
      only(facts, {"metallic", "conducts", "tensile", "shear", "modulus"});
      MaterialFacts& into = catalog_.materials_[static_cast<std::size_t>(*material)];
      into.tensile_strength = stress(facts, "tensile", strength_limits, into.basis);
      into.shear_strength = stress(facts, "shear", strength_limits, into.basis);
      into.modulus = stress(facts, "modulus", modulus_limits, into.basis);
    }
    enter("");
    for (std::size_t i = 0; i < material_count; ++i) {
      if (!seen[i]) fault("no material " + quoted(material_names[i]));
    }
  }
  void read_stop_material() {
    const object file = open("stops.json");
    only(file, {"cast leaded brass"});
    const object facts = table_in(file, "cast leaded brass");
    only(facts, {"shear"});
    MaterialFacts& into = catalog_.stop_material_;
    into.shear_strength = stress(facts, "shear", strength_limits, into.basis);
    if (!into.shear_strength) fault("cast leaded brass has no shear strength");
  }

  // A table that nothing reads looks as if it counted.
  void expect_all_read() {
    for (const auto& [path, text] : catalog_.files_) {
      if (opened_.contains(path)) continue;
      file_ = path;
      enter("");
      fault("nothing reads this file");
    }
  }
  std::optional<Pressure> stress(object facts, std::string_view key, Limits limits, Basis& weakest) const {
    const element value = member(facts, key);
    if (value.is_null()) return std::nullopt;
    const object given = as_object(value, key);
    only(given, {"value", "unit", "source", "how", "note"});
    const double number = as_number(member(given, "value"), key);
    const ParsedMeasure read = parse_measure(number, text_member(given, "unit"), Kind::pressure);
    if (!read) fault(std::string(key) + " is not a stress with its unit");
    within(read.value.base(), limits, key);
    weakest = weaker(weakest, basis_of(given));
    return read.value.as<-2, 1, 0>();
  }

  void read_temperature_factors() {
    const object file = open("temperature_factors.json");
    for (const auto& [name, value] : file) {
      enter("temperature factors of " + quoted(name));
      const auto material = material_named(name);
      if (!material) fault("a main is not made of it");
      const object table = as_object(value, "the table");
      only(table, {"title", "below", "above", "between", "source", "how", "columns", "rows", "note"});
      std::size_t count = 0;
      const auto at = columns_of(table, std::array<std::string_view, 2>{"degF", "factor"}, 2, count);
      MaterialFacts& facts = catalog_.materials_[static_cast<std::size_t>(*material)];
      if (!facts.temperature_factors.empty()) fault("the table stands twice");
      facts.temperature_basis = basis_of(table);
      each_row(table, count, [&](const Cells& cells) {
        const CurvePoint point{number_within(cells[at[0]], {32, 250, "degF"}, "degF"),
                               number_within(cells[at[1]], {0.01, 1}, "factor")};
        const auto& before = facts.temperature_factors;
        if (!before.empty() && (point.x <= before.back().x || point.y > before.back().y)) {
          fault("temperatures must rise and factors fall from row to row");
        }
        facts.temperature_factors.push_back(point);
      });
      if (facts.temperature_factors.empty()) fault("no rows");
    }
    enter("");
    for (std::size_t i = 0; i < material_count; ++i) {
      if (is_plastic(static_cast<Material>(i)) && catalog_.materials_[i].temperature_factors.empty()) {
        fault("no temperature factors of " + quoted(material_names[i]) + ": without them it would be rated as if cold");
      }
    }
  }

  void read_spellings() {
    const object file = open("material_names.json");
    const auto add = [&](auto& map, std::string_view spelling, auto meaning) {
      if (spelling.empty() || normal_spelling(spelling) != spelling) {
        fault(quoted(spelling) + " is not in the normal spelling " + quoted(normal_spelling(spelling)));
      }
      const bool known =
          catalog_.material_spellings_.contains(spelling) || catalog_.ambiguous_spellings_.contains(spelling);
      if (known) fault(quoted(spelling) + " stands twice");
      map.emplace(std::string(spelling), std::move(meaning));
    };
    for (const auto& [name, value] : file) {
      enter(quoted(name));
      if (name == "ambiguous" || name == "not water-main") {
        const std::string prefix = name == "ambiguous" ? "" : "not a water main: ";
        for (const auto& [spelling, why] : as_object(value, "the entry")) {
          add(catalog_.ambiguous_spellings_, spelling, prefix + std::string(as_text(why, spelling)));
        }
        continue;
      }
      const auto material = material_named(name);
      if (!material) fault("a main is not made of it");
      for (const element spelling : as_array(value, "the entry")) {
        add(catalog_.material_spellings_, as_text(spelling, "a spelling"), *material);
      }
    }
    enter("");
    for (std::size_t i = 0; i < material_count; ++i) {
      if (const auto read = catalog_.read_material(material_names[i]); read.material != static_cast<Material>(i)) {
        fault("the name " + quoted(material_names[i]) + " itself is not among the spellings");
      }
    }
  }

  void read_metric_sizes() {
    const object file = open("metric_sizes.json");
    only(file, {"title", "source", "how", "note", "columns", "rows"});
    static_cast<void>(basis_of(file));  // checked: a table says what it rests on
    std::size_t count = 0;
    const auto at = columns_of(file, std::array<std::string_view, 2>{"dn", "size"}, 2, count);
    each_row(file, count, [&](const Cells& cells) {
      const double dn = number_within(cells[at[0]], {1, 4000, "mm"}, "dn");
      const MetricSize metric{static_cast<int>(dn), as_size(cells[at[1]], "size")};
      if (metric.dn != dn || (!catalog_.metric_sizes_.empty() && metric.dn <= catalog_.metric_sizes_.back().dn)) {
        fault("dn must be a whole number and rise from row to row");
      }
      catalog_.metric_sizes_.push_back({metric.dn, metric.size.written_as_dn(metric.dn)});
    });
  }

  // ---- threads

  void read_threads() {
    const object file = open("threads.json");
    only(file, {"npt", "iso 7-1", "awwa taper"});
    read_thread_table(file, "awwa taper", ThreadStandard::awwa_taper);
    read_thread_table(file, "npt", ThreadStandard::npt);
    read_thread_table(file, "iso 7-1", ThreadStandard::iso7);
  }
  void read_thread_table(object file, std::string_view key, ThreadStandard standard) {
    enter("thread " + quoted(key));
    const object table = as_object(member(file, key), key);
    only(table, {"title", "standard", "unit", "note", "form", "gauging", "provenance", "columns", "rows"});
    const std::string_view unit_name = text_member(table, "unit");
    if (unit_name != "in" && unit_name != "mm") fault("the unit is neither in nor mm");
    const Length unit = unit_name == "in" ? units::inch : units::mm;
    const object form = as_object(member(table, "form"), "form");
    const double taper = number_within(member(form, "taper"), {0, 0.5}, "taper");

    enum {
      size,
      major,
      tpi,
      l1,
      e1,
      l2,
      useful,
      drill,
      projection,
      e0,
      turns,
      drill_name,
      projection_tolerance,
      spread
    };
    constexpr std::array<std::string_view, 14> names = {"size",
                                                        "major",
                                                        "tpi",
                                                        "l1",
                                                        "e1",
                                                        "l2",
                                                        "useful_length",
                                                        "tap_drill_diameter",
                                                        "tap_projection",
                                                        "e0",
                                                        "wrench_turns",
                                                        "tap_drill",
                                                        "tap_projection_tolerance",
                                                        "spread"};
    std::size_t count = 0;
    const bool has_geometry = standard != ThreadStandard::awwa_taper;
    const auto at = columns_of(table, names, has_geometry ? l1 + 1 : tpi + 1, count);
    if (standard == ThreadStandard::iso7 && at[useful] == npos) fault("no column \"useful_length\"");

    // Counting threads in a wall rests on the weakest of the figures it takes: what make-up takes besides is not asked.
    Basis basis = basis_of(form);
    const object provenance = as_object(member(table, "provenance"), "provenance");
    for (const auto& [column, value] : provenance) {
      const Basis of_column = basis_of(as_object(value, column));
      if (column == names[major] || column == names[tpi]) basis = weaker(basis, of_column);
    }
    const auto length = [&](const Cells& cells, std::size_t column) {
      return number_within(cells[at[column]], {0.01 / unit.base(), 12.0 / unit.base(), unit_name}, names[column]) * unit;
    };
    const auto length_or_unknown = [&](const Cells& cells, std::size_t column) -> std::optional<Length> {
      if (at[column] == npos || cells[at[column]].is_null()) return std::nullopt;
      return length(cells, column);
    };
    each_row(table, count, [&](const Cells& cells) {
      TapThread thread;
      thread.standard = standard;
      thread.size = as_size(cells[at[size]], "size");
      row_name_ = thread.size.label();
      if (catalog_.thread(standard, thread.size) != nullptr) fault("the size stands twice");
      const double per_inch = number_within(cells[at[tpi]], {1, 64}, "tpi");
      thread.form = {length(cells, major), per_inch * units::per_inch, taper};
      if (standard == ThreadStandard::npt) {
        thread.geometry = mechanics::npt_thread(thread.form.major, thread.form.threads_per_inch, length(cells, l1));
        agrees(thread.geometry->pitch_small_end, length_or_unknown(cells, e0), "e0");
        agrees(thread.geometry->pitch_gauge, length_or_unknown(cells, e1), "e1");
        agrees(thread.geometry->effective_length, length_or_unknown(cells, l2), "l2");
      } else if (standard == ThreadStandard::iso7) {
        thread.geometry = mechanics::iso7_thread(thread.form.major, thread.form.threads_per_inch, length(cells, l1),
                                                 length(cells, useful));
      }
      thread.drill = length_or_unknown(cells, drill);
      thread.projection = length_or_unknown(cells, projection);
      thread.basis = basis;
      catalog_.threads_.push_back(thread);
    });
  }
  // A tabulated figure that the formula also gives must be the same to the last printed digit.
  void agrees(Length by_formula, std::optional<Length> tabulated, std::string_view name) const {
    if (tabulated && abs(by_formula - *tabulated) > 0.0001 * units::inch) {
      fault(std::string(name) + " is not what the thread's formula gives");
    }
  }

  // ---- machines

  void read_machines() {
    const object file = open("machines.json");
    for (const auto& [id, value] : file) {
      enter("machine " + quoted(id));
      if (catalog_.machines_.empty() != (id == "unspecified"))
        fault("the first machine, and no other, is \"unspecified\"");
      if (catalog_.machine(id) != nullptr) fault("the id stands twice");
      catalog_.machines_.push_back(machine_from(id, as_object(value, "the machine")));
    }
    enter("");
    if (catalog_.machines_.empty()) fault("no machine \"unspecified\"");
  }
  MachineProfile machine_from(std::string_view id, object from) const {
    only(from, {"title",
                "maker_figures",
                "smallest_tap",
                "largest_tap",
                "hand_limit",
                "powered_limit",
                "body_rating",
                "bar_diameter",
                "bar_travel",
                "standoff",
                "saddle_od_from",
                "saddle_od_to",
                "chain_length",
                "chain_extension",
                "anchor_offset",
                "anchor_height",
                "chain_thickness",
                "gasket_diameter",
                "stud_diameter",
                "studs",
                "source",
                "how",
                "note"});
    MachineProfile machine;
    machine.id = id;
    machine.title = text_member(from, "title");
    if (member(from, "maker_figures").get(machine.maker_figures)) fault("\"maker_figures\" is neither true nor false");
    machine.smallest_tap = NominalSize::inches(needed(length_in(from, "smallest_tap"), "smallest_tap") / units::inch);
    machine.largest_tap = NominalSize::inches(needed(length_in(from, "largest_tap"), "largest_tap") / units::inch);
    machine.hand_limit = pressure_in(from, "hand_limit");
    machine.powered_limit = pressure_in(from, "powered_limit");
    machine.body_rating = needed(pressure_in(from, "body_rating"), "body_rating");
    machine.bar_diameter = needed(length_in(from, "bar_diameter"), "bar_diameter");
    machine.bar_travel = length_in(from, "bar_travel");
    machine.standoff = length_in(from, "standoff");
    machine.saddle_od_from = length_in(from, "saddle_od_from");
    machine.saddle_od_to = length_in(from, "saddle_od_to");
    machine.chain_length = length_in(from, "chain_length");
    machine.chain_extension = length_in(from, "chain_extension");
    machine.anchor_offset = length_in(from, "anchor_offset");
    machine.anchor_height = length_in(from, "anchor_height");
    machine.chain_thickness = length_in(from, "chain_thickness");
    machine.gasket_diameter = length_in(from, "gasket_diameter");
    machine.stud_diameter = length_in(from, "stud_diameter");
    element studs;
    if (!from.at_key("studs").get(studs) && !studs.is_null()) {
      const double number = number_within(studs, {1, 16}, "studs");
      machine.studs = static_cast<int>(number);
      if (machine.studs != number) fault("\"studs\" is not a whole number above zero");
    }
    machine.basis = basis_of(from);
    if (machine.largest_tap < machine.smallest_tap) fault("the largest tap is smaller than the smallest");
    for (const auto& limit : {machine.hand_limit, machine.powered_limit}) {
      if (limit && *limit > machine.body_rating) fault("a feed limit is over what the body holds");
    }
    if (machine.saddle_od_from && machine.saddle_od_to && *machine.saddle_od_to < *machine.saddle_od_from) {
      fault("\"saddle_od_to\" is below \"saddle_od_from\"");
    }
    return machine;
  }
  std::optional<Measure> quantity_in(object from, std::string_view key, Kind kind) const {
    element value;
    if (from.at_key(key).get(value) || value.is_null()) return std::nullopt;
    const std::string_view text = as_text(value, key);
    const ParsedMeasure read = parse_measure(text, kind);
    if (!read) fault(quoted(key) + ": " + describe(read.fault, text) + "; write " + expected_text(kind));
    within(read.value.base(), kind == Kind::pressure ? pressure_limits : length_limits, key);
    return read.value;
  }
  std::optional<Length> length_in(object from, std::string_view key) const {
    const auto read = quantity_in(from, key, Kind::length);
    return read ? std::optional(read->as<1, 0, 0>()) : std::nullopt;
  }
  std::optional<Pressure> pressure_in(object from, std::string_view key) const {
    const auto read = quantity_in(from, key, Kind::pressure);
    return read ? std::optional(read->as<-2, 1, 0>()) : std::nullopt;
  }
  template <class T>
  T needed(std::optional<T> value, std::string_view key) const {
    if (!value) fault("no " + quoted(key));
    return *value;
  }

  // ---- pipes

  void read_pipes() {
    // A pipe points at its series, which may only be done once the series have stopped moving.
    std::vector<std::size_t> series_of;
    catalog_.pipes_.reserve(1024);  // some more than the tables list: none is moved for want of room
    for (const auto& [path, text] : catalog_.files_) {
      if (!path.starts_with("pipes/")) continue;
      const object file = open(path);
      only(file, {"series"});
      for (const element entry : as_array(member(file, "series"), "series")) {
        enter("a series");
        read_series(as_object(entry, "the series"));
        series_of.resize(catalog_.pipes_.size(), catalog_.series_.size() - 1);
      }
    }
    for (std::size_t i = 0; i < series_of.size(); ++i) catalog_.pipes_[i].series = &catalog_.series_[series_of[i]];

    const auto place = [](const Pipe& pipe) { return std::pair(pipe.series->material, pipe.size); };
    auto& pipes = catalog_.pipes_;
    // Their numbers are sorted, and each pipe then changes places but once: they are large.
    std::vector<std::size_t> order(pipes.size());
    std::iota(order.begin(), order.end(), std::size_t{0});
    std::stable_sort(order.begin(), order.end(),
                     [&](std::size_t a, std::size_t b) { return place(pipes[a]) < place(pipes[b]); });
    for (std::size_t i = 0; i < pipes.size(); ++i) {
      std::size_t from = order[i];
      while (from < i) from = order[from];  // it has changed places since
      std::swap(pipes[i], pipes[from]);
    }
    for (std::size_t i = 0; i < pipes.size(); ++i) {
      Catalog::Range& range = catalog_.index_[place(pipes[i])];
      if (range.count++ == 0) range.first = static_cast<std::uint32_t>(i);
    }
  }

  // The place of a standard among those known, new or not.
  std::uint8_t standard_place(std::string_view name) {
    const std::string word = normal_spelling(name);
    std::vector<std::string>& known = catalog_.standards_;
    const auto found = std::find(known.begin(), known.end(), word);
    if (found != known.end()) return static_cast<std::uint8_t>(found - known.begin());
    if (known.size() > 250) fault("more standards than can be told apart");
    known.push_back(word);
    return static_cast<std::uint8_t>(known.size() - 1);
  }

  // The words of a standard's name that hold a number.
  std::vector<StandardUse> designations(std::string_view standard) {
    std::vector<StandardUse> found;
    for (std::size_t begin = 0; begin < standard.size();) {
      const std::size_t end = std::min(standard.find_first_of(" /,", begin), standard.size());
      const std::string_view word = standard.substr(begin, end - begin);
      if (word.find_first_of("0123456789") != std::string_view::npos) found.push_back({standard_place(word), {}});
      begin = end + 1;
    }
    return found;
  }

  // Standards that the series' own took in, or that speak of the same pipe.
  void read_also_made_to(element list, PipeSeries& series) {
    for (const element entry : as_array(list, "also_made_to")) {
      const object one = as_object(entry, "a standard");
      only(one, {"standard", "main_from", "source", "how", "note"});
      static_cast<void>(basis_of(one));  // checked: it says what it rests on
      StandardUse use{standard_place(text_member(one, "standard")), {}};
      if (element from; !one.at_key("main_from").get(from)) use.from = as_size(from, "main_from");
      series.made_to.push_back(use);
    }
  }

  static OdFamily family_of(std::string_view basis) {
    if (basis.find("(IPS)") != std::string_view::npos) return OdFamily::iron_pipe_size;
    if (basis.find("(CTS)") != std::string_view::npos) return OdFamily::copper_tube;
    const bool cast = basis.find("(CIOD)") != std::string_view::npos || basis.find("cast-iron") != std::string_view::npos;
    return cast ? OdFamily::cast_iron : OdFamily::unnamed;
  }

  void read_series(object from) {
    PipeSeries series;
    series.id = text_member(from, "id");
    enter("series " + series.id);
    for (const PipeSeries& other : catalog_.series_) {
      if (other.id == series.id) fault("the id stands twice");
    }
    only(from, {"id", "material", "standard", "also_made_to", "title", "basis", "laid", "provenance", "earlier",
                "plausible", "usual", "note", "columns", "rows"});
    const std::string_view material_name = text_member(from, "material");
    const auto material = material_named(material_name);
    if (!material) fault("unknown material " + quoted(material_name));
    series.material = *material;
    series.standard = text_member(from, "standard");
    series.made_to = designations(series.standard);
    if (element also; !from.at_key("also_made_to").get(also)) read_also_made_to(also, series);
    series.title = text_member(from, "title");
    series.basis = text_member(from, "basis");
    series.family = family_of(series.basis);

    const object laid = as_object(member(from, "laid"), "laid");
    only(laid, {"from", "to", "source", "how"});
    series.laid_from = year(laid, "from");
    series.laid_to = year(laid, "to");
    series.laid_basis = basis_of(laid);
    if (series.laid_from && series.laid_to && *series.laid_to < *series.laid_from)
      fault("laid to before it was laid from");

    const object provenance = as_object(member(from, "provenance"), "provenance");
    only(provenance, {"od", "od_minus", "od_plus", "wall", "wall_minus", "rating"});
    for (std::size_t i = 0; i < pipe_column_count; ++i) {
      series.provenance[i] = basis_of(as_object(member(provenance, pipe_column_names[i]), pipe_column_names[i]));
    }
    catalog_.series_.push_back(std::move(series));
    read_series_rows(from);
    if (element earlier; !from.at_key("earlier").get(earlier)) read_earlier(as_object(earlier, "earlier"));
    if (element plausible; !from.at_key("plausible").get(plausible)) read_plausible(as_object(plausible, "plausible"));
    if (element usual; !from.at_key("usual").get(usual)) read_usual(as_object(usual, "usual"));
  }

  [[nodiscard]] std::span<Pipe> pipes_of_series() { return std::span(catalog_.pipes_).subspan(first_of_series_); }

  // What earlier editions called and rated the same pipe, by its dimension ratio.
  void read_earlier(object from) {
    only(from, {"until", "main_to", "source", "how", "note", "columns", "rows"});
    PipeSeries& series = catalog_.series_.back();
    series.rerated = year(from, "until");
    if (!series.rerated) fault("\"until\" is not a year");
    series.earlier_basis = basis_of(from);
    const NominalSize largest = as_size(member(from, "main_to"), "main_to");
    constexpr std::array<std::string_view, 5> names = {"dr", "class", "also", "rating", "surge"};
    std::size_t count = 0;
    const auto at = columns_of(from, names, names.size(), count);
    each_row(from, count, [&](const Cells& cells) {
      const double dr = as_number(cells[at[0]], names[0]);
      EarlierClass earlier;
      earlier.class_name = as_text(cells[at[1]], names[1]);
      add_words(earlier.names, earlier.class_name);
      std::vector<ClassWord> spellings = earlier.names;
      for (const element spelling : as_array(cells[at[2]], names[2])) add_words(spellings, as_text(spelling, "a spelling"));
      earlier.rating = number_within(cells[at[3]], pressure_limits, names[3]) * units::psi;
      earlier.surge = number_within(cells[at[4]], {1, 500, "psi"}, names[4]) * units::psi;
      bool found = false;
      for (Pipe& pipe : pipes_of_series()) {
        if (pipe.dr != dr || pipe.size > largest) continue;
        if (!pipe.rating || earlier.rating + earlier.surge > *pipe.rating) {
          fault("an earlier rating with its surge is over the rating of today");
        }
        for (const ClassWord& word : spellings) add_word(pipe.names, word);
        pipe.earlier = earlier;
        found = true;
      }
      if (!found) fault("the series has no pipe of this dimension ratio");
    });
    for (Pipe& pipe : pipes_of_series()) pipe.since_rerating = pipe.size <= largest && !pipe.earlier;
  }

  // Names that mean one class as a rule, though no standard says so.
  void read_usual(object from) {
    only(from, {"source", "how", "note", "columns", "rows"});
    catalog_.series_.back().usual_basis = basis_of(from);
    std::size_t count = 0;
    const auto at = columns_of(from, std::array<std::string_view, 3>{"class", "name", "main_to"}, 3, count);
    each_row(from, count, [&](const Cells& cells) {
      const std::string_view class_name = as_text(cells[at[0]], "class");
      const NominalSize largest = as_size(cells[at[2]], "main_to");
      bool found = false;
      for (Pipe& pipe : pipes_of_series()) {
        if (pipe.class_name != class_name || pipe.size > largest) continue;
        add_words(pipe.usual_names, as_text(cells[at[1]], "name"));
        found = true;
      }
      if (!found) fault("the series has no class " + quoted(class_name));
    });
  }

  // Readings that a pipe without tabulated dimensions can give, as shares of its nominal size; the wall goes with the
  // class.
  void read_plausible(object from) {
    only(from, {"od_over_size", "wall_over_size_per_100_psi", "source", "how", "note"});
    catalog_.series_.back().plausible_basis = basis_of(from);
    const auto range = [&](std::string_view key) {
      std::array<double, 2> ends{};
      std::size_t count = 0;
      for (const element end : as_array(member(from, key), key)) {
        if (count < ends.size()) ends[count] = as_number(end, key);
        ++count;
      }
      if (count != ends.size() || ends[1] <= ends[0]) fault(std::string(key) + " is not a range");
      for (const double end : ends) within(end, {0.001, 3}, key);
      return ends;
    };
    const auto od = range("od_over_size");
    const auto wall = range("wall_over_size_per_100_psi");
    for (Pipe& pipe : pipes_of_series()) {
      if (!pipe.rating) fault("a pipe without a class has no plausible wall");
      const Length size = pipe.size.number() * units::inch;
      const double hundreds = *pipe.rating / (100.0 * units::psi);
      pipe.plausible = {od[0] * size, od[1] * size, wall[0] * hundreds * size, wall[1] * hundreds * size};
    }
  }
  std::optional<int> year(object laid, std::string_view key) const {
    const auto number = as_number_or_unknown(member(laid, key), key);
    if (!number) return std::nullopt;
    within(*number, {1700, 2200}, key);
    if (*number != std::floor(*number)) fault(quoted(key) + " is not a year");
    return static_cast<int>(*number);
  }

  void read_series_rows(object from) {
    enum { size, class_name, also, od, od_minus, od_plus, wall, wall_minus, rating, dr, how, note };
    constexpr std::array<std::string_view, 12> names = {"size", "class",      "also",   "od", "od_minus", "od_plus",
                                                        "wall", "wall_minus", "rating", "dr", "how",      "note"};
    std::size_t count = 0;
    const auto at = columns_of(from, names, how, count);
    const std::size_t first = first_of_series_ = catalog_.pipes_.size();
    each_row(from, count, [&](const Cells& cells) {
      Pipe pipe;
      pipe.size = as_size(cells[at[size]], "size");
      pipe.class_name = as_text(cells[at[class_name]], "class");
      row_name_ = pipe.size.label() + (pipe.class_name.empty() ? "" : " " + pipe.class_name);
      add_words(pipe.names, pipe.class_name);
      for (const element spelling : as_array(cells[at[also]], "also")) {
        add_words(pipe.names, as_text(spelling, "a spelling"));
      }

      const auto number = [&](std::size_t column) { return as_number_or_unknown(cells[at[column]], names[column]); };
      const auto length = [&](std::size_t column) {
        const auto value = number(column);
        return value ? std::optional(*value * units::inch) : std::nullopt;
      };
      pipe.od = length(od);
      pipe.od_minus = length(od_minus).value_or(Length());
      pipe.od_plus = length(od_plus).value_or(Length());
      pipe.wall = length(wall);
      pipe.wall_minus = length(wall_minus).value_or(Length());
      if (const auto value = number(rating)) pipe.rating = *value * units::psi;
      pipe.dr = number(dr);
      if (at[how] != npos && !cells[at[how]].is_null()) pipe.how = as_how(as_text(cells[at[how]], "how"));
      if (at[note] != npos && !cells[at[note]].is_null()) pipe.note = as_text(cells[at[note]], "note");
      check(pipe, !cells[at[od_minus]].is_null() && !cells[at[od_plus]].is_null(), !cells[at[wall_minus]].is_null());
      for (std::size_t i = first; i < catalog_.pipes_.size(); ++i) {
        const Pipe& other = catalog_.pipes_[i];
        if (other.size == pipe.size && other.class_name == pipe.class_name) fault("the size and class stand twice");
      }
      catalog_.pipes_.push_back(std::move(pipe));
    });
    if (catalog_.pipes_.size() == first) fault("no rows");
  }
  static void add_word(std::vector<ClassWord>& names, const ClassWord& word) {
    if (std::find(names.begin(), names.end(), word) == names.end()) names.push_back(word);
  }

  void add_words(std::vector<ClassWord>& names, std::string_view spelling) const {
    const ClassWords read = catalog_.read_class(spelling, catalog_.series_.back().material);
    if (!read.stray.empty()) fault(quoted(spelling) + " has a word that means nothing: " + quoted(read.stray.view()));
    for (const ClassWord& word : read.words) add_word(names, word);
  }

  // Refuses what no pipe can be: the slips that a table takes when it is typed or converted.
  void check(const Pipe& pipe, bool od_tolerance_known, bool wall_tolerance_known) const {
    const Length nothing;
    if (pipe.od) {
      const Length nominal = pipe.size.number() * units::inch;
      if (*pipe.od <= nothing) fault("the outside diameter is not above zero");
      // Every pipe of the tables is at least as wide as its name, and none by half of it and half an inch more.
      if (*pipe.od < nominal || *pipe.od > 1.5 * nominal + 0.5 * units::inch) {
        fault("an outside diameter in inches does not lie so far from the nominal size");
      }
      // None of the tables allows a twentieth of the diameter and a tenth of an inch.
      const Length widest = 0.05 * *pipe.od + 0.1 * units::inch;
      if (pipe.od_minus > widest || pipe.od_plus > widest) fault("the diameter's tolerance is wider than any pipe's");
      if (!od_tolerance_known) fault("an outside diameter needs its tolerances");
    }
    if (pipe.od_minus < nothing || pipe.od_plus < nothing || pipe.wall_minus < nothing)
      fault("a tolerance is below zero");
    if (pipe.wall) {
      within(*pipe.wall / units::inch, {0.01, 24, "in"}, "wall");
      if (!wall_tolerance_known) fault("a wall needs its tolerance");
      if (pipe.wall_minus >= *pipe.wall) fault("the wall's tolerance leaves no wall");
      if (pipe.od && 2.0 * *pipe.wall >= *pipe.od) fault("twice the wall is not less than the outside diameter");
    }
    if (pipe.rating) within(*pipe.rating / units::psi, pressure_limits, "rating");
    if (pipe.dr) {
      within(*pipe.dr, {2.1, 100}, "dr");
      const Length rounding = 0.001 * units::inch;
      if (pipe.od && pipe.wall && abs(*pipe.od / *pipe.dr - *pipe.wall) > rounding + 0.005 * *pipe.wall) {
        fault("the wall is not the outside diameter over the dimension ratio");
      }
    }
  }

  // ---- water for the customer, cleaning, the pit

  void read_service_tables() {
    ServiceTables& tables = catalog_.service_tables_;
    read_tubes(tables);
    read_roughness(tables);
    read_fittings(tables);
    read_meters(tables);
    read_fixtures(tables);
    read_curves(tables);
    read_water(tables);
    read_disinfection(tables);
    read_soils(tables);
    read_colours(tables);
  }

  object table_in(object from, std::string_view key) {
    enter(std::string(key));
    return as_object(member(from, key), key);
  }
  std::string text_cell(element cell, std::string_view name) const {
    return cell.is_null() ? std::string() : std::string(as_text(cell, name));
  }
  Tubing as_tubing(std::string_view text) const {
    const auto* const found = std::find(tubing_names.begin(), tubing_names.end(), text);
    if (found == tubing_names.end()) fault("unknown tubing " + quoted(text));
    return static_cast<Tubing>(found - tubing_names.begin());
  }

  void read_tubes(ServiceTables& tables) {
    const object file = open("tubing.json");
    only(file, {"title", "provenance", "ratings", "columns", "rows"});
    const object provenance = as_object(member(file, "provenance"), "provenance");
    const object ratings = as_object(member(file, "ratings"), "ratings");
    constexpr std::array<std::string_view, 7> names = {"tubing", "size", "od", "wall", "bore", "bore_least", "how"};
    std::size_t count = 0;
    const auto at = columns_of(file, names, names.size(), count);
    each_row(file, count, [&](const Cells& cells) {
      TubeSize tube;
      const std::string_view name = as_text(cells[at[0]], names[0]);
      tube.tubing = as_tubing(name);
      tube.size = as_size(cells[at[1]], names[1]);
      tube.od = number_within(cells[at[2]], tube_limits, names[2]) * units::inch;
      tube.wall = number_within(cells[at[3]], tube_limits, names[3]) * units::inch;
      tube.bore = number_within(cells[at[4]], tube_limits, names[4]) * units::inch;
      tube.bore_least = number_within(cells[at[5]], tube_limits, names[5]) * units::inch;
      tube.basis = basis_of(as_object(member(provenance, name), name));
      if (!cells[at[6]].is_null()) tube.basis.how = as_how(as_text(cells[at[6]], names[6]));
      if (element rated; !ratings.at_key(name).get(rated)) {
        const object rating = as_object(rated, name);
        only(rating, {"psi", "source", "how", "note"});
        tube.rating = number_within(member(rating, "psi"), pressure_limits, "psi") * units::psi;
        tube.rating_basis = basis_of(rating);
      }
      if (abs(tube.od - 2.0 * tube.wall - tube.bore) > 0.0015 * units::inch || tube.bore_least > tube.bore) {
        fault("the bore is not the outside diameter less two walls");
      }
      std::vector<TubeSize>& sizes = tables.tubes[static_cast<std::size_t>(tube.tubing)];
      if (!sizes.empty() && tube.size <= sizes.back().size) fault("sizes must rise from row to row");
      sizes.push_back(tube);
    });
  }

  // The tables list more pipes than services are laid in; those a service is planned with are looked up by name.
  void read_roughness(ServiceTables& tables) {
    constexpr std::array<std::string_view, tubing_count> planned_with = {"copper, design", "copper, design",
                                                                         "polyethylene", "PEX"};
    const object file = open("roughness.json");
    only(file, {"hazen_williams", "epsilon"});
    std::size_t count = 0;
    const object c_table = table_in(file, "hazen_williams");
    const auto c_at = columns_of(c_table, std::array<std::string_view, 4>{"pipe", "c", "source", "how"}, 4, count);
    each_row(c_table, count, [&](const Cells& cells) {
      const std::string_view pipe = as_text(cells[c_at[0]], "pipe");
      const TubeFriction friction{number_within(cells[c_at[1]], {40, 200}, "c"), basis_in(cells[c_at[2]], cells[c_at[3]])};
      for (std::size_t i = 0; i < tubing_count; ++i) {
        if (planned_with[i] == pipe) tables.friction[i] = friction;
      }
    });
    const object e_table = table_in(file, "epsilon");
    const auto e_at = columns_of(e_table, std::array<std::string_view, 4>{"pipe", "ft", "source", "how"}, 4, count);
    each_row(e_table, count, [&](const Cells& cells) {
      const Length roughness = number_within(cells[e_at[1]], {1e-7, 0.1, "ft"}, "ft") * units::foot;
      const Basis basis = basis_in(cells[e_at[2]], cells[e_at[3]]);
      if (as_text(cells[e_at[0]], "pipe") != "drawn copper or plastic") return;
      tables.tube_roughness = roughness;
      tables.tube_roughness_basis = basis;
    });
    for (const TubeFriction& friction : tables.friction) {
      if (friction.c == 0.0) fault("no coefficient for a kind of service tubing");
    }
    if (tables.tube_roughness == Length()) fault("no roughness for service tubing");
  }
  Basis basis_in(element source, element how) const {
    Basis basis;
    basis.source = catalog_.source(as_text(source, "source"));
    if (basis.source == nullptr) fault("unknown source " + quoted(as_text(source, "source")));
    basis.how = as_how(as_text(how, "how"));
    return basis;
  }

  void read_fittings(ServiceTables& tables) {
    constexpr std::array<std::string_view, line_fitting_count> planned_with = {
        "corporation stop", "curb stop", "elbow 90 (plastic IPS or copper)", "coupling (plastic IPS or copper)"};
    const object file = open("fittings.json");
    only(file, {"awwa", "illinois"});
    const object table = table_in(file, "awwa");
    only(table, {"title", "source", "how", "note", "columns", "rows"});
    tables.fittings_basis = basis_of(table);
    std::vector<NominalSize> sizes;
    for (const element name : as_array(member(table, "columns"), "columns")) {
      if (as_text(name, "a column name") != "fitting") sizes.push_back(as_size(name, "a column name"));
    }
    each_row(table, sizes.size() + 1, [&](const Cells& cells) {
      const std::string_view name = as_text(cells[0], "fitting");
      const auto* const found = std::find(planned_with.begin(), planned_with.end(), name);
      if (found == planned_with.end()) return;
      auto& lengths = tables.fittings[static_cast<std::size_t>(found - planned_with.begin())];
      for (std::size_t i = 0; i < sizes.size(); ++i) {
        lengths.push_back({sizes[i], number_within(cells[i + 1], {0.1, 1000, "ft"}, sizes[i].label()) * units::foot});
      }
    });
    for (const auto& lengths : tables.fittings) {
      if (lengths.empty()) fault("a fitting of every service is missing");
    }
  }

  void read_meters(ServiceTables& tables) {
    const object file = open("meters.json");
    only(file, {"title", "provenance", "sizes", "loss"});
    const object provenance = as_object(member(file, "provenance"), "provenance");
    const Basis basis = weaker(basis_of(as_object(member(provenance, "loss"), "loss")),
                               basis_of(as_object(member(provenance, "safe_max"), "safe_max")));
    std::size_t count = 0;
    const object sizes = table_in(file, "sizes");
    const auto at = columns_of(sizes, std::array<std::string_view, 3>{"size", "also", "safe_max_gpm"}, 3, count);
    each_row(sizes, count, [&](const Cells& cells) {
      MeterSize meter;
      meter.size = as_size(cells[at[0]], "size");
      meter.safe_maximum = number_within(cells[at[2]], flow_limits, "safe_max_gpm") * units::gpm;
      meter.basis = basis;
      if (!tables.meters.empty() && meter.size <= tables.meters.back().size) fault("sizes must rise from row to row");
      tables.meters.push_back(std::move(meter));
    });
    const object loss = table_in(file, "loss");
    std::size_t columns = 0;
    for (const element name : as_array(member(loss, "columns"), "columns")) {
      if (columns > tables.meters.size()) fault("more columns than meters");
      const std::string wanted = columns == 0 ? "gpm" : "psi " + tables.meters[columns - 1].size.label();
      if (as_text(name, "a column name") != wanted) fault("column " + quoted(wanted) + " should stand here");
      ++columns;
    }
    if (columns != tables.meters.size() + 1) fault("a meter has no column");
    each_row(loss, columns, [&](const Cells& cells) {
      const Flow flow = number_within(cells[0], flow_limits, "gpm") * units::gpm;
      for (std::size_t i = 1; i < columns; ++i) {
        if (cells[i].is_null()) continue;
        auto& points = tables.meters[i - 1].loss;
        const Pressure lost = number_within(cells[i], {0.01, 200, "psi"}, "psi " + tables.meters[i - 1].size.label()) * units::psi;
        if (!points.empty() && (flow <= points.back().flow || lost < points.back().loss)) {
          fault("flow and loss must rise from row to row");
        }
        points.push_back({flow, lost});
      }
    });
    for (MeterSize& meter : tables.meters) {
      if (meter.loss.empty()) fault("no losses for the meter of " + meter.size.label() + " in");
      meter.reads.emplace(meter.loss, meter.safe_maximum);
    }
  }

  void read_fixtures(ServiceTables& tables) {
    const object file = open("fixtures.json");
    only(file, {"ipc", "upc"});
    const auto is_valve = [](std::string_view text) { return text.find("flushometer") != std::string_view::npos; };
    const auto add = [&](FixtureRow row) {
      row.dwelling = row.use.find("private") != std::string::npos;
      tables.fixtures.push_back(std::move(row));
    };
    std::size_t count = 0;
    const object ipc = table_in(file, "ipc");
    tables.fixtures_basis[static_cast<std::size_t>(PlumbingCode::ipc)] = basis_of(ipc);
    constexpr std::array<std::string_view, 6> ipc_names = {"fixture", "occupancy", "control", "cold", "hot", "total"};
    const auto ipc_at = columns_of(ipc, ipc_names, ipc_names.size(), count);
    each_row(ipc, count, [&](const Cells& cells) {
      FixtureRow row{PlumbingCode::ipc,
                     text_cell(cells[ipc_at[0]], "fixture"),
                     text_cell(cells[ipc_at[1]], "occupancy"),
                     text_cell(cells[ipc_at[2]], "control"),
                     number_within(cells[ipc_at[5]], fixture_limits, "total")};
      row.flush_valve = is_valve(row.control) && row.control != "flushometer tank";
      add(std::move(row));
    });
    const object upc = table_in(file, "upc");
    tables.fixtures_basis[static_cast<std::size_t>(PlumbingCode::upc)] = basis_of(upc);
    constexpr std::array<std::string_view, 4> upc_names = {"fixture", "private", "public", "assembly"};
    const auto upc_at = columns_of(upc, upc_names, upc_names.size(), count);
    each_row(upc, count, [&](const Cells& cells) {
      for (std::size_t use = 1; use < upc_names.size(); ++use) {
        const element cell = cells[upc_at[use]];
        if (cell.is_null()) continue;
        FixtureRow row{PlumbingCode::upc,  text_cell(cells[upc_at[0]], "fixture"), std::string(upc_names[use]), {},
                       number_within(cell, fixture_limits, upc_names[use])};
        row.flush_valve = is_valve(row.fixture) && row.fixture.find("tank") == std::string::npos;
        add(std::move(row));
      }
    });
    const auto letter_of = [this](const FixtureRow& row) {
      const auto first = static_cast<unsigned char>(row.fixture[0]);
      if (first >= 0x80) fault("the name of a fixture begins with a letter or a digit");
      return static_cast<std::size_t>(first >= 'A' && first <= 'Z' ? first - 'A' + 'a' : first);
    };
    std::stable_sort(tables.fixtures.begin(), tables.fixtures.end(), [&](const FixtureRow& a, const FixtureRow& b) {
      return std::pair(a.code, letter_of(a)) < std::pair(b.code, letter_of(b));
    });
    for (std::size_t i = 0; i < tables.fixtures.size(); ++i) {
      FixtureRow& row = tables.fixtures[i];
      row.again = i > 0 && row.code == tables.fixtures[i - 1].code && row.fixture == tables.fixtures[i - 1].fixture;
    }
    std::size_t at = 0;
    for (std::size_t code = 0; code < plumbing_code_count; ++code) {
      auto& from = tables.fixtures_from[code];
      for (std::size_t letter = 0; letter < from.size(); ++letter) {
        from[letter] = static_cast<std::uint16_t>(at);
        const auto is_next = [&](const FixtureRow& row) {
          return static_cast<std::size_t>(row.code) == code && letter_of(row) == letter;
        };
        while (at < tables.fixtures.size() && is_next(tables.fixtures[at])) ++at;
      }
    }
  }

  void read_curves(ServiceTables& tables) {
    // The fixture units of the Uniform Plumbing Code go with a curve of the family it was drawn from.
    constexpr std::array<std::string_view, plumbing_code_count> curve_of = {"ipc", "illinois", "nspc"};
    const object file = open("demand_curves.json");
    only(file, {"ipc", "nspc", "illinois"});
    for (std::size_t code = 0; code < plumbing_code_count; ++code) {
      const object table = table_in(file, curve_of[code]);
      only(table, {"title", "source", "how", "between", "gaps", "note", "columns", "rows"});
      DemandCurve& curve = tables.curves[code];
      curve.basis = basis_of(table);
      for (const element gap : as_array(member(table, "gaps"), "gaps")) {
        if (curve.gap) fault("more gaps than one");
        std::vector<double> ends;
        for (const element end : as_array(gap, "a gap")) ends.push_back(number_within(end, {0.1, 100000}, "gaps"));
        if (ends.size() != 2 || ends[1] <= ends[0]) fault("a gap has two ends, the second above the first");
        curve.gap = {ends[0], ends[1]};
      }
      std::size_t count = 0;
      const auto at =
          columns_of(table, std::array<std::string_view, 3>{"wsfu", "gpm_flush_tank", "gpm_flush_valve"}, 3, count);
      each_row(table, count, [&](const Cells& cells) {
        const double units = number_within(cells[at[0]], {0.1, 100000}, "wsfu");
        for (std::size_t i = 1; i < 3; ++i) {
          if (cells[at[i]].is_null()) continue;
          auto& points = i == 1 ? curve.tank_rows : curve.valve_rows;
          const hydraulics::DemandPoint point{units, number_within(cells[at[i]], flow_limits, i == 1 ? "gpm_flush_tank" : "gpm_flush_valve") * units::gpm};
          if (!points.empty() && (units <= points.back().fixture_units || point.flow < points.back().flow)) {
            fault("units and flow must rise from row to row");
          }
          points.push_back(point);
        }
      });
      if (curve.tank_rows.size() < 2 || curve.valve_rows.size() == 1) fault("a curve has two rows at least");
      curve.tank.emplace(curve.tank_rows);
      if (!curve.valve_rows.empty()) curve.valve.emplace(curve.valve_rows);
    }
  }

  void read_water(ServiceTables& tables) {
    const object file = open("water.json");
    only(file, {"us", "si", "head"});
    const object table = table_in(file, "us");
    tables.water_basis = basis_of(table);
    constexpr std::array<std::string_view, 7> names = {
        "degF", "weight_lbf_ft3", "nu_1e-5_ft2_s", "density_slug_ft3", "mu_1e-5_lbf_s_ft2", "vapor_psi", "vapor_how"};
    std::size_t count = 0;
    const auto at = columns_of(table, names, 3, count);
    each_row(table, count, [&](const Cells& cells) {
      const Temperature temperature = Temperature::fahrenheit(number_within(cells[at[0]], {20, 220, "degF"}, names[0]));
      const UnitWeight weight = number_within(cells[at[1]], {50, 70, "lbf/ft3"}, names[1]) * units::lbf_per_ft3;
      const KinematicViscosity viscosity =
          1e-5 * number_within(cells[at[2]], {0.1, 10}, names[2]) * (units::foot * units::foot / units::second);
      if (!tables.water.empty() && temperature <= tables.water.back().temperature) {
        fault("temperatures must rise from row to row");
      }
      tables.water.push_back({temperature, {weight, viscosity}});
    });
    const object head = table_in(file, "head");
    only(head, {"psi_per_ft", "source", "how"});
    tables.head = number_within(member(head, "psi_per_ft"), {0.4, 0.45}, "psi_per_ft") * units::psi / units::foot;
    tables.head_basis = basis_of(head);
  }

  void read_disinfection(ServiceTables& tables) {
    using sanitary::Concentration;
    const object file = open("disinfection.json");
    only(file, {"stock", "doses", "dechlorination"});
    std::size_t count = 0;
    const object stock = table_in(file, "stock");
    constexpr std::array<std::string_view, 6> stock_names = {"stock",        "form",   "percent_low",
                                                             "percent_high", "source", "how"};
    const auto stock_at = columns_of(stock, stock_names, stock_names.size(), count);
    each_row(stock, count, [&](const Cells& cells) {
      const double low = number_within(cells[stock_at[2]], percent_limits, "percent_low");
      if (number_within(cells[stock_at[3]], percent_limits, "percent_high") < low) fault("the low strength is above the high one");
      const Basis basis = basis_in(cells[stock_at[4]], cells[stock_at[5]]);
      if (as_text(cells[stock_at[0]], "stock") != "household bleach") return;
      tables.weakest_bleach = Concentration::percent(low);
      tables.stock_basis = basis;
    });
    if (tables.weakest_bleach == Concentration()) fault("no household bleach");

    const object doses = table_in(file, "doses");
    constexpr std::array<std::string_view, 7> dose_names = {"method",        "dose_mg_l", "hold_h", "hold_max_h",
                                                            "residual_mg_l", "source",    "how"};
    const auto dose_at = columns_of(doses, dose_names, dose_names.size(), count);
    each_row(doses, count, [&](const Cells& cells) {
      ChlorineDose dose;
      dose.method = text_cell(cells[dose_at[0]], "method");
      dose.dose = Concentration::mg_per_litre(number_within(cells[dose_at[1]], dose_limits, "dose_mg_l"));
      dose.hold = number_within(cells[dose_at[2]], hold_limits, "hold_h") * units::hour;
      if (!cells[dose_at[3]].is_null()) dose.hold_most = number_within(cells[dose_at[3]], hold_limits, "hold_max_h") * units::hour;
      dose.residual = Concentration::mg_per_litre(number_within(cells[dose_at[4]], dose_limits, "residual_mg_l"));
      dose.basis = basis_in(cells[dose_at[5]], cells[dose_at[6]]);
      if (dose.residual >= dose.dose) fault("more is left than was dosed");
      tables.doses.push_back(std::move(dose));
    });

    const object agents = table_in(file, "dechlorination");
    tables.dechlorination_basis = basis_of(agents);
    constexpr std::array<std::string_view, 6> agent_names = {
        "agent", "mg_per_mg_chlorine", "lb_per_100000_gal_per_mg_l", "kg_per_100_m3_per_mg_l", "ph_of_1_percent",
        "oxygen_scavenger"};
    const auto agent_at = columns_of(agents, agent_names, 2, count);
    each_row(agents, count, [&](const Cells& cells) {
      tables.dechlorination.push_back(
          {text_cell(cells[agent_at[0]], "agent"), number_within(cells[agent_at[1]], {0.1, 100}, "mg_per_mg_chlorine")});
    });
  }

  void read_soils(ServiceTables& tables) {
    const object file = open("soils.json");
    only(file, {"swell", "weight"});
    const object weight = table_in(file, "weight");
    std::size_t count = 0;
    const auto at =
        columns_of(weight, std::array<std::string_view, 4>{"soil", "lb_per_ft3", "source", "how"}, 4, count);
    each_row(weight, count, [&](const Cells& cells) {
      const UnitWeight value = number_within(cells[at[1]], {50, 250, "lb/ft3"}, "lb_per_ft3") * units::lbf_per_ft3;
      (as_text(cells[at[0]], "soil") == "rock" ? tables.rock_weight : tables.soil_weight) = value;
      tables.weight_basis = basis_in(cells[at[2]], cells[at[3]]);
    });
    if (tables.rock_weight == UnitWeight() || tables.soil_weight == UnitWeight()) fault("soil or rock has no weight");
  }

  void read_colours(ServiceTables& tables) {
    const object file = open("locate_colours.json");
    only(file, {"title", "source", "how", "columns", "rows"});
    tables.colours_basis = basis_of(file);
    std::size_t count = 0;
    const auto at = columns_of(file, std::array<std::string_view, 2>{"colour", "meaning"}, 2, count);
    each_row(file, count, [&](const Cells& cells) {
      tables.colours.push_back({text_cell(cells[at[0]], "colour"), text_cell(cells[at[1]], "meaning")});
    });
    tables.water_mark = tables.colour_of("potable water");
    tables.gas_mark = tables.colour_of("gas");
  }

  Catalog& catalog_;
  std::size_t first_of_series_ = 0;  // pipe of the series that is being read
  simdjson::dom::parser parser_;
  std::string file_;
  std::set<std::string, std::less<>> opened_;
  std::string entry_;
  std::string row_name_;
  std::size_t row_ = 0;
};

Catalog::Catalog(const DataFiles& files) : files_(files) { CatalogLoader(*this).load(); }

}  // namespace mainbore
