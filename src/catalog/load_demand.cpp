#include <algorithm>
#include <utility>

#include "catalog/load_tables.hpp"
#include "catalog/table_reader.hpp"

namespace mainbore::tables {
namespace {

constexpr Limits fixture_limits{0.1, 1000};

class DemandTables : public TableReader {
 public:
  using TableReader::TableReader;

  void read_fixtures(object file, ServiceTables& tables) {
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
      FixtureRow row{PlumbingCode::ipc, text_cell(cells[ipc_at[0]], "fixture"),
                     text_cell(cells[ipc_at[1]], "occupancy"), text_cell(cells[ipc_at[2]], "control"),
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
        FixtureRow row{PlumbingCode::upc,
                       text_cell(cells[upc_at[0]], "fixture"),
                       std::string(upc_names[use]),
                       {},
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

  void read_curves(object file, ServiceTables& tables) {
    // The fixture units of the Uniform Plumbing Code go with a curve of the family it was drawn from.
    constexpr std::array<std::string_view, plumbing_code_count> curve_of = {"ipc", "illinois", "nspc"};
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
          const hydraulics::DemandPoint point{
              units,
              number_within(cells[at[i]], flow_limits, i == 1 ? "gpm_flush_tank" : "gpm_flush_valve") * units::gpm};
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
};

}  // namespace

void load_fixtures(TableFiles& at, object file, ServiceTables& tables) { DemandTables(at).read_fixtures(file, tables); }

void load_curves(TableFiles& at, object file, ServiceTables& tables) { DemandTables(at).read_curves(file, tables); }

}  // namespace mainbore::tables
