#include "catalog/load_tables.hpp"
#include "catalog/table_reader.hpp"

namespace mainbore::tables {
namespace {

constexpr Limits percent_limits{0.1, 100, "%"};
constexpr Limits dose_limits{0.01, 10000, "mg/l"};
constexpr Limits hold_limits{0.1, 1000, "h"};

class WaterTables : public TableReader {
 public:
  using TableReader::TableReader;

  void read_water(object file, ServiceTables& tables) {
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

  void read_disinfection(object file, ServiceTables& tables) {
    using sanitary::Concentration;
    only(file, {"stock", "products", "doses", "dechlorination"});
    std::size_t count = 0;
    const object stock = table_in(file, "stock");
    constexpr std::array<std::string_view, 6> stock_names = {"stock",        "form",   "percent_low",
                                                             "percent_high", "source", "how"};
    const auto stock_at = columns_of(stock, stock_names, stock_names.size(), count);
    each_row(stock, count, [&](const Cells& cells) {
      const double low = number_within(cells[stock_at[2]], percent_limits, "percent_low");
      if (number_within(cells[stock_at[3]], percent_limits, "percent_high") < low)
        fault("the low strength is above the high one");
      const Basis basis = basis_in(cells[stock_at[4]], cells[stock_at[5]]);
      if (as_text(cells[stock_at[0]], "stock") != "household bleach") return;
      tables.weakest_bleach = Concentration::percent(low);
      tables.stock_basis = basis;
    });
    if (tables.weakest_bleach == Concentration()) fault("no household bleach");

    const object products = table_in(file, "products");
    const auto product_at =
        columns_of(products, std::array<std::string_view, 5>{"product", "form", "percent", "source", "how"}, 5, count);
    each_row(products, count, [&](const Cells& cells) {
      ChlorineProduct product;
      product.name = text_cell(cells[product_at[0]], "product");
      const std::string_view form = as_text(cells[product_at[1]], "form");
      if (form != "granular" && form != "liquid") fault("a product is granular or liquid");
      product.dry = form == "granular";
      product.strength = Concentration::percent(number_within(cells[product_at[2]], percent_limits, "percent"));
      product.basis = basis_in(cells[product_at[3]], cells[product_at[4]]);
      tables.chlorine_products.push_back(std::move(product));
    });

    const object doses = table_in(file, "doses");
    constexpr std::array<std::string_view, 7> dose_names = {"method",        "dose_mg_l", "hold_h", "hold_max_h",
                                                            "residual_mg_l", "source",    "how"};
    const auto dose_at = columns_of(doses, dose_names, dose_names.size(), count);
    each_row(doses, count, [&](const Cells& cells) {
      ChlorineDose dose;
      dose.method = text_cell(cells[dose_at[0]], "method");
      dose.dose = Concentration::mg_per_liter(number_within(cells[dose_at[1]], dose_limits, "dose_mg_l"));
      dose.hold = number_within(cells[dose_at[2]], hold_limits, "hold_h") * units::hour;
      if (!cells[dose_at[3]].is_null())
        dose.hold_most = number_within(cells[dose_at[3]], hold_limits, "hold_max_h") * units::hour;
      dose.residual = Concentration::mg_per_liter(number_within(cells[dose_at[4]], dose_limits, "residual_mg_l"));
      dose.basis = basis_in(cells[dose_at[5]], cells[dose_at[6]]);
      if (dose.residual >= dose.dose) fault("more is left than was dosed");
      tables.doses.push_back(std::move(dose));
    });

    const object agents = table_in(file, "dechlorination");
    tables.dechlorination_basis = basis_of(agents);
    constexpr std::array<std::string_view, 6> agent_names = {
        "agent",           "mg_per_mg_chlorine", "lb_per_100000_gal_per_mg_l", "kg_per_100_m3_per_mg_l",
        "ph_of_1_percent", "oxygen_scavenger"};
    const auto agent_at = columns_of(agents, agent_names, 2, count);
    each_row(agents, count, [&](const Cells& cells) {
      tables.dechlorination.push_back({text_cell(cells[agent_at[0]], "agent"),
                                       number_within(cells[agent_at[1]], {0.1, 100}, "mg_per_mg_chlorine")});
    });
  }
};

}  // namespace

void load_water(TableFiles& at, object file, ServiceTables& tables) { WaterTables(at).read_water(file, tables); }

void load_disinfection(TableFiles& at, object file, ServiceTables& tables) {
  WaterTables(at).read_disinfection(file, tables);
}

}  // namespace mainbore::tables
