#include "catalog/load_tables.hpp"
#include "catalog/table_reader.hpp"

namespace mainbore::tables {
namespace {

class GroundTables : public TableReader {
 public:
  using TableReader::TableReader;

  void read_soils(object file, ServiceTables& tables) {
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

  void read_colors(object file, ServiceTables& tables) {
    only(file, {"title", "source", "how", "columns", "rows"});
    tables.colors_basis = basis_of(file);
    std::size_t count = 0;
    const auto at = columns_of(file, std::array<std::string_view, 2>{"colour", "meaning"}, 2, count);
    each_row(file, count, [&](const Cells& cells) {
      tables.colors.push_back({text_cell(cells[at[0]], "colour"), text_cell(cells[at[1]], "meaning")});
    });
    tables.water_mark = tables.color_of("potable water");
    tables.gas_mark = tables.color_of("gas");
  }
};

}  // namespace

void load_soils(TableFiles& at, object file, ServiceTables& tables) { GroundTables(at).read_soils(file, tables); }

void load_colors(TableFiles& at, object file, ServiceTables& tables) { GroundTables(at).read_colors(file, tables); }

}  // namespace mainbore::tables
