#include <algorithm>

#include "catalog/load_tables.hpp"
#include "catalog/table_reader.hpp"
#include "mainbore/measure.hpp"

namespace mainbore::tables {
namespace {

constexpr Limits length_limits{0.001, 1000, "in"};

class MachineTable : public TableReader {
 public:
  MachineTable(TableFiles& at, std::vector<MachineProfile>& machines) : TableReader(at), machines_(machines) {}

  void read_machines(object file) {
    for (const auto& [id, value] : file) {
      enter("machine " + quoted(id));
      if (machines_.empty() != (id == "unspecified")) fault("the first machine, and no other, is \"unspecified\"");
      if (is_known(id)) fault("the id stands twice");
      machines_.push_back(machine_from(id, as_object(value, "the machine")));
    }
    enter("");
    if (machines_.empty()) fault("no machine \"unspecified\"");
  }

 private:
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
    return read ? std::optional(read->as<Length>()) : std::nullopt;
  }

  std::optional<Pressure> pressure_in(object from, std::string_view key) const {
    const auto read = quantity_in(from, key, Kind::pressure);
    return read ? std::optional(read->as<Pressure>()) : std::nullopt;
  }

  template <class T>
  T needed(std::optional<T> value, std::string_view key) const {
    if (!value) fault("no " + quoted(key));
    return *value;
  }

  [[nodiscard]] bool is_known(std::string_view id) const {
    return std::any_of(machines_.begin(), machines_.end(), [&](const MachineProfile& one) { return one.id == id; });
  }

  std::vector<MachineProfile>& machines_;
};

}  // namespace

void load_machines(TableFiles& at, object file, std::vector<MachineProfile>& machines) {
  MachineTable(at, machines).read_machines(file);
}

}  // namespace mainbore::tables
