#include <algorithm>
#include <cmath>

#include "catalog/load_tables.hpp"
#include "catalog/table_reader.hpp"

namespace mainbore::tables {
namespace {

constexpr Limits tube_limits{0.01, 24, "in"};

class ServiceLineTables : public TableReader {
 public:
  using TableReader::TableReader;

  Tubing as_tubing(std::string_view text) const {
    const auto* const found = std::find(tubing_names.begin(), tubing_names.end(), text);
    if (found == tubing_names.end()) fault("unknown tubing " + quoted(text));
    return static_cast<Tubing>(found - tubing_names.begin());
  }

  void read_tubes(object file, ServiceTables& tables) {
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
        only(rating, {"psi", "stress_psi", "source", "how", "note"});
        tube.rating = rating_of(tube, rating);
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

  // One pressure for all sizes of a dimension ratio; of pipe made by schedule, by the stress that its plastic bears:
  // 2 S t / (D - t), down to the ten (the standard prints the nearest).
  Pressure rating_of(const TubeSize& tube, object rating) {
    element stress;
    if (rating.at_key("stress_psi").get(stress)) {
      return number_within(member(rating, "psi"), pressure_limits, "psi") * units::psi;
    }
    const Pressure bears = number_within(stress, {500, 5000, "psi"}, "stress_psi") * units::psi;
    const Pressure exact = (2.0 * (tube.wall / (tube.od - tube.wall))) * bears;
    return std::floor(exact / (10.0 * units::psi)) * 10.0 * units::psi;
  }

  // The tables list more pipes than services are laid in; those a service is planned with are looked up by name.
  void read_roughness(object file, ServiceTables& tables) {
    constexpr std::array<std::string_view, tubing_count> planned_with = {"copper, design",
                                                                         "copper, design",
                                                                         "polyethylene",
                                                                         "PEX",
                                                                         "steel, in service",
                                                                         "steel, in service",
                                                                         "PVC service, 3/4 to 4 in",
                                                                         "PVC service, 3/4 to 4 in",
                                                                         "PVC service, 3/4 to 4 in",
                                                                         "ductile iron, 3 in service",
                                                                         "PVC main, 4 to 8 in"};
    constexpr std::string_view smooth = "drawn copper or plastic";
    constexpr std::string_view rough = "old unlined iron";
    constexpr std::array<std::string_view, tubing_count> rough_as = {
        smooth, smooth, smooth, smooth, rough, rough, smooth, smooth, smooth, "ductile iron, cement lined", smooth};
    only(file, {"hazen_williams", "epsilon"});
    std::size_t count = 0;
    const object c_table = table_in(file, "hazen_williams");
    const auto c_at = columns_of(c_table, std::array<std::string_view, 4>{"pipe", "c", "source", "how"}, 4, count);
    each_row(c_table, count, [&](const Cells& cells) {
      const std::string_view pipe = as_text(cells[c_at[0]], "pipe");
      const double c = number_within(cells[c_at[1]], {40, 200}, "c");
      const Basis basis = basis_in(cells[c_at[2]], cells[c_at[3]]);
      for (std::size_t i = 0; i < tubing_count; ++i) {
        if (planned_with[i] != pipe) continue;
        tables.friction[i].c = c;
        tables.friction[i].c_basis = basis;
      }
    });
    const object e_table = table_in(file, "epsilon");
    const auto e_at = columns_of(e_table, std::array<std::string_view, 4>{"pipe", "ft", "source", "how"}, 4, count);
    each_row(e_table, count, [&](const Cells& cells) {
      const Length roughness = number_within(cells[e_at[1]], {1e-7, 0.1, "ft"}, "ft") * units::foot;
      const Basis basis = basis_in(cells[e_at[2]], cells[e_at[3]]);
      for (std::size_t i = 0; i < tubing_count; ++i) {
        if (rough_as[i] != as_text(cells[e_at[0]], "pipe")) continue;
        tables.friction[i].roughness = roughness;
        tables.friction[i].roughness_basis = basis;
      }
    });
    for (const TubeFriction& friction : tables.friction) {
      if (friction.c == 0.0) fault("no coefficient for a kind of service tubing");
      if (friction.roughness == Length()) fault("no roughness for a kind of service tubing");
    }
  }

  void read_fittings(object file, ServiceTables& tables) {
    constexpr std::array<std::string_view, line_fitting_count> planned_with = {
        "corporation stop", "curb stop", "elbow 90 (plastic IPS or copper)", "coupling (plastic IPS or copper)"};
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

  void read_meters(object file, ServiceTables& tables) {
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
        const Pressure lost =
            number_within(cells[i], {0.01, 200, "psi"}, "psi " + tables.meters[i - 1].size.label()) * units::psi;
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
};

}  // namespace

void load_tubes(TableFiles& at, object file, ServiceTables& tables) { ServiceLineTables(at).read_tubes(file, tables); }

void load_roughness(TableFiles& at, object file, ServiceTables& tables) {
  ServiceLineTables(at).read_roughness(file, tables);
}

void load_fittings(TableFiles& at, object file, ServiceTables& tables) {
  ServiceLineTables(at).read_fittings(file, tables);
}

void load_meters(TableFiles& at, object file, ServiceTables& tables) {
  ServiceLineTables(at).read_meters(file, tables);
}

}  // namespace mainbore::tables
