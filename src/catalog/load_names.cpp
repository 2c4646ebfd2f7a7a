#include <utility>

#include "catalog/load_tables.hpp"
#include "catalog/spelling.hpp"
#include "catalog/table_reader.hpp"

namespace mainbore::tables {
namespace {

class NameTables : public TableReader {
 public:
  using TableReader::TableReader;

  void read_spellings(object file, const Catalog& catalog, Spellings into) {
    const auto add = [&](auto& map, std::string_view spelling, auto meaning) {
      if (spelling.empty() || normal_spelling(spelling) != spelling) {
        fault(quoted(spelling) + " is not in the normal spelling " + quoted(normal_spelling(spelling)));
      }
      const bool known = into.materials.contains(spelling) || into.ambiguous.contains(spelling);
      if (known) fault(quoted(spelling) + " stands twice");
      map.emplace(std::string(spelling), std::move(meaning));
    };
    for (const auto& [name, value] : file) {
      enter(quoted(name));
      if (name == "ambiguous" || name == "not water-main") {
        const std::string prefix = name == "ambiguous" ? "" : "not a water main: ";
        for (const auto& [spelling, why] : as_object(value, "the entry")) {
          add(into.ambiguous, spelling, prefix + std::string(as_text(why, spelling)));
        }
        continue;
      }
      const auto material = material_named(name);
      if (!material) fault("a main is not made of it");
      for (const element spelling : as_array(value, "the entry")) {
        add(into.materials, as_text(spelling, "a spelling"), *material);
      }
    }
    enter("");
    for (std::size_t i = 0; i < material_count; ++i) {
      if (const auto read = catalog.read_material(material_names[i]); read.material != static_cast<Material>(i)) {
        fault("the name " + quoted(material_names[i]) + " itself is not among the spellings");
      }
    }
  }

  void read_metric_sizes(object file, std::vector<MetricSize>& sizes) {
    only(file, {"title", "source", "how", "note", "columns", "rows"});
    static_cast<void>(basis_of(file));  // checked: a table says what it rests on
    std::size_t count = 0;
    const auto at = columns_of(file, std::array<std::string_view, 2>{"dn", "size"}, 2, count);
    each_row(file, count, [&](const Cells& cells) {
      const double dn = number_within(cells[at[0]], {1, 4000, "mm"}, "dn");
      const MetricSize metric{static_cast<int>(dn), as_size(cells[at[1]], "size")};
      if (metric.dn != dn || (!sizes.empty() && metric.dn <= sizes.back().dn)) {
        fault("dn must be a whole number and rise from row to row");
      }
      sizes.push_back({metric.dn, metric.size.written_as_dn(metric.dn)});
    });
  }
};

}  // namespace

void load_spellings(TableFiles& at, object file, const Catalog& catalog, Spellings into) {
  NameTables(at).read_spellings(file, catalog, into);
}

void load_metric_sizes(TableFiles& at, object file, std::vector<MetricSize>& sizes) {
  NameTables(at).read_metric_sizes(file, sizes);
}

}  // namespace mainbore::tables
