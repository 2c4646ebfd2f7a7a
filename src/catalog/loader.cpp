// Reads and checks the data files: the only place of the catalogue that knows JSON.
//
// simdjson, because every run of the program loads every table: its parser takes a tenth of the time of a general one.
#include <simdjson.h>

#include <algorithm>
#include <array>
#include <cmath>
#include <cstdint>
#include <initializer_list>
#include <string>
#include <utility>

#include "catalog/spelling.hpp"
#include "mainbore/catalog.hpp"
#include "mainbore/catalog_error.hpp"
#include "mainbore/measure.hpp"

namespace mainbore {
namespace {

using simdjson::dom::array;
using simdjson::dom::element;
using simdjson::dom::object;

// The cells of one table row, in the order of its columns.
constexpr std::size_t most_columns = 16;
using Cells = std::array<element, most_columns>;

// FNV-1a, 64 bits: not a seal, but enough that no slip of a finger goes unseen.
class Fnv1a {
 public:
  void add(std::string_view bytes) {
    for (const char byte : bytes) {
      state_ = (state_ ^ static_cast<unsigned char>(byte)) * 0x100000001b3U;
    }
    state_ *= 0x100000001b3U;  // the end of a text counts, so that moving bytes from one file to the next shows
  }
  [[nodiscard]] std::string hex() const {
    constexpr std::string_view digits = "0123456789abcdef";
    std::string text(16, '0');
    for (std::size_t i = 0; i < text.size(); ++i) text[i] = digits[(state_ >> (60 - 4 * i)) & 15U];
    return text;
  }

 private:
  std::uint64_t state_ = 0xcbf29ce484222325U;
};

constexpr std::array<std::string_view, pipe_column_count> pipe_column_names = {"od",   "od_minus",   "od_plus",
                                                                               "wall", "wall_minus", "rating"};

}  // namespace

class CatalogLoader {
 public:
  explicit CatalogLoader(Catalog& catalog) : catalog_(catalog) {}

  void load() {
    read_sources();
    read_edition();
    read_materials();
    read_temperature_factors();
    read_spellings();
    read_metric_sizes();
    read_threads();
    read_machines();
    read_pipes();
    Fnv1a hash;
    for (const auto& [path, text] : catalog_.files_) {
      hash.add(path);
      hash.add(text);
    }
    catalog_.hash_ = hash.hex();
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
    throw CatalogError(where + ": " + message);
  }
  void enter(std::string entry) {
    entry_ = std::move(entry);
    row_ = 0;
    row_name_.clear();
  }
  static std::string quoted(std::string_view text) { return '"' + std::string(text) + '"'; }

  // ---- reading JSON

  object open(std::string_view path) {
    file_ = path;
    enter("");
    const auto found = catalog_.files_.find(path);
    if (found == catalog_.files_.end()) fault("the file is missing");
    element root;
    if (const auto error = parser_.parse(found->second).get(root)) {
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
    if (!read || read.value.base() <= 0.0) fault(std::string(name) + " is not a nominal size: " + quoted(text));
    return NominalSize::inches(read.value.base());
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
      into.tensile_strength = stress(facts, "tensile", into.basis);
      into.shear_strength = stress(facts, "shear", into.basis);
      into.modulus = stress(facts, "modulus", into.basis);
    }
    enter("");
    for (std::size_t i = 0; i < material_count; ++i) {
      if (!seen[i]) fault("no material " + quoted(material_names[i]));
    }
  }
  std::optional<Pressure> stress(object facts, std::string_view key, Basis& weakest) const {
    const element value = member(facts, key);
    if (value.is_null()) return std::nullopt;
    const object given = as_object(value, key);
    only(given, {"value", "unit", "source", "how", "note"});
    const double number = as_number(member(given, "value"), key);
    const ParsedMeasure read = parse_measure(number, text_member(given, "unit"), Kind::pressure);
    if (!read || number <= 0.0) fault(std::string(key) + " is not a positive stress with its unit");
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
        const CurvePoint point{as_number(cells[at[0]], "degF"), as_number(cells[at[1]], "factor")};
        if (point.y <= 0.0 || point.y > 1.0) fault("a factor lies over 0 and is at most 1");
        const auto& before = facts.temperature_factors;
        if (!before.empty() && (point.x <= before.back().x || point.y > before.back().y)) {
          fault("temperatures must rise and factors fall from row to row");
        }
        facts.temperature_factors.push_back(point);
      });
      if (facts.temperature_factors.empty()) fault("no rows");
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
      const double dn = as_number(cells[at[0]], "dn");
      const MetricSize metric{static_cast<int>(dn), as_size(cells[at[1]], "size")};
      if (metric.dn != dn || (!catalog_.metric_sizes_.empty() && metric.dn <= catalog_.metric_sizes_.back().dn)) {
        fault("dn must be a whole number and rise from row to row");
      }
      catalog_.metric_sizes_.push_back(metric);
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
    const double taper = as_number(member(form, "taper"), "taper");

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
      const double value = as_number(cells[at[column]], names[column]);
      if (value <= 0.0) fault(std::string(names[column]) + " is not above zero");
      return value * unit;
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
      const double per_inch = as_number(cells[at[tpi]], "tpi");
      if (per_inch <= 0.0) fault("tpi is not above zero");
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
    machine.chain_thickness = length_in(from, "chain_thickness").value_or(Length());
    machine.gasket_diameter = length_in(from, "gasket_diameter");
    machine.stud_diameter = length_in(from, "stud_diameter");
    element studs;
    if (!from.at_key("studs").get(studs) && !studs.is_null()) {
      const double number = as_number(studs, "studs");
      machine.studs = static_cast<int>(number);
      if (machine.studs != number || machine.studs < 1) fault("\"studs\" is not a whole number above zero");
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
    if (read.value.base() <= 0.0) fault(quoted(key) + " is not above zero");
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
    std::stable_sort(pipes.begin(), pipes.end(), [&](const Pipe& a, const Pipe& b) { return place(a) < place(b); });
    for (std::size_t i = 0; i < pipes.size(); ++i) {
      Catalog::Range& range = catalog_.index_[place(pipes[i])];
      if (range.count++ == 0) range.first = static_cast<std::uint32_t>(i);
    }
  }

  // The words of a standard's name that hold a number.
  static std::vector<std::string> designations(std::string_view standard) {
    std::vector<std::string> found;
    for (std::size_t begin = 0; begin < standard.size();) {
      const std::size_t end = std::min(standard.find_first_of(" /,", begin), standard.size());
      const std::string word = normal_spelling(standard.substr(begin, end - begin));
      if (word.find_first_of("0123456789") != std::string::npos) found.push_back(word);
      begin = end + 1;
    }
    return found;
  }

  void read_series(object from) {
    PipeSeries series;
    series.id = text_member(from, "id");
    enter("series " + series.id);
    for (const PipeSeries& other : catalog_.series_) {
      if (other.id == series.id) fault("the id stands twice");
    }
    only(from, {"id", "material", "standard", "title", "basis", "laid", "provenance", "note", "columns", "rows"});
    const std::string_view material_name = text_member(from, "material");
    const auto material = material_named(material_name);
    if (!material) fault("unknown material " + quoted(material_name));
    series.material = *material;
    series.standard = text_member(from, "standard");
    series.designations = designations(series.standard);
    series.title = text_member(from, "title");
    series.basis = text_member(from, "basis");

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
  }
  std::optional<int> year(object laid, std::string_view key) const {
    const auto number = as_number_or_unknown(member(laid, key), key);
    if (!number) return std::nullopt;
    if (*number < 1700 || *number > 2200 || *number != std::floor(*number)) fault(quoted(key) + " is not a year");
    return static_cast<int>(*number);
  }

  void read_series_rows(object from) {
    enum { size, class_name, also, od, od_minus, od_plus, wall, wall_minus, rating, dr, how, note };
    constexpr std::array<std::string_view, 12> names = {"size", "class",      "also",   "od", "od_minus", "od_plus",
                                                        "wall", "wall_minus", "rating", "dr", "how",      "note"};
    std::size_t count = 0;
    const auto at = columns_of(from, names, how, count);
    const std::size_t first = catalog_.pipes_.size();
    each_row(from, count, [&](const Cells& cells) {
      Pipe pipe;
      pipe.size = as_size(cells[at[size]], "size");
      pipe.class_name = as_text(cells[at[class_name]], "class");
      row_name_ = pipe.size.label() + (pipe.class_name.empty() ? "" : " " + pipe.class_name);
      add_key(pipe, pipe.class_name);
      for (const element spelling : as_array(cells[at[also]], "also")) add_key(pipe, as_text(spelling, "a spelling"));

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
  static void add_key(Pipe& pipe, std::string_view spelling) {
    std::string key = class_key(spelling);
    if (key.empty() || std::find(pipe.class_keys.begin(), pipe.class_keys.end(), key) != pipe.class_keys.end()) return;
    pipe.class_keys.push_back(std::move(key));
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
      if (!od_tolerance_known) fault("an outside diameter needs its tolerances");
    }
    if (pipe.od_minus < nothing || pipe.od_plus < nothing || pipe.wall_minus < nothing)
      fault("a tolerance is below zero");
    if (pipe.wall) {
      if (*pipe.wall <= nothing) fault("the wall is not above zero");
      if (!wall_tolerance_known) fault("a wall needs its tolerance");
      if (pipe.wall_minus >= *pipe.wall) fault("the wall's tolerance leaves no wall");
      if (pipe.od && 2.0 * *pipe.wall >= *pipe.od) fault("twice the wall is not less than the outside diameter");
    }
    if (pipe.rating && *pipe.rating <= Pressure()) fault("the rating is not above zero");
    if (pipe.dr) {
      if (*pipe.dr <= 2.0) fault("a dimension ratio is above 2");
      const Length rounding = 0.001 * units::inch;
      if (pipe.od && pipe.wall && abs(*pipe.od / *pipe.dr - *pipe.wall) > rounding + 0.005 * *pipe.wall) {
        fault("the wall is not the outside diameter over the dimension ratio");
      }
    }
  }

  Catalog& catalog_;
  simdjson::dom::parser parser_;
  std::string file_;
  std::string entry_;
  std::string row_name_;
  std::size_t row_ = 0;
};

Catalog::Catalog(const DataFiles& files) : files_(files) { CatalogLoader(*this).load(); }

}  // namespace mainbore
