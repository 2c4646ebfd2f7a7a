#include "io/orders/order_map.hpp"

#include <algorithm>
#include <array>
#include <charconv>
#include <set>

#include "catalog/spelling.hpp"
#include "io/orders/day_count.hpp"
#include "io/text/json_reader.hpp"
#include "io/text/nearest.hpp"
#include "io/text/text_scan.hpp"
#include "mainbore/job_file.hpp"
#include "mainbore/measure.hpp"
#include "mainbore/order_file.hpp"

namespace mainbore::io {
namespace {

constexpr int deepest_map = 8;
constexpr std::size_t most_words = 10000;  // in one list

using Key = std::string_view;
constexpr std::array<Key, 9> map_keys = {"format",  "name",     "columns",       "id",     "materials",
                                         "missing", "defaults", "ignore_others", "decimal"};
constexpr std::array<Key, 7> column_keys = {"to", "unit", "missing", "values", "least", "greatest", "optional"};

constexpr std::array<std::pair<Key, Key>, 1> codes_of_a_job = {{{"job.duplicate-key", "map.duplicate-key"}}};
constexpr JsonCodes map_codes{"map.unknown-key", "map.wrong-type", codes_of_a_job};

class MapReader : JsonReader {
 public:
  explicit MapReader(const Catalog& catalog) : JsonReader(map_codes), catalog_(catalog) {}

  OrderMapFile read(std::string_view text, std::string_view name) && {
    read_document(text, {name, longest_map, "a map", deepest_map}, [&] { read_root(); });
    OrderMapFile result;
    result.diagnostics = found_in_order();
    if (result.diagnostics.empty()) result.map = std::move(map_);
    return result;
  }

 private:
  void read_root() {
    if (!expect(0, JsonType::object, R"({"format": 1, "columns": {"PIPE_SIZE": {"to": "main.size", "unit": "in"}}})")) {
      return;
    }
    bool has_format = false;
    bool has_columns = false;
    // The codes for materials first: columns and defaults may use them, wherever they stand.
    members(0, [&](std::uint32_t node) {
      if (node_at(node).key == "materials") read_materials(node);
    });
    members(0, [&](std::uint32_t node) {
      const std::string_view key = node_at(node).key;
      if (key == "format") {
        has_format = true;
        if (node_at(node).text != "1" || node_at(node).type != JsonType::number) {
          add(node, {"map.unknown-value", "the format of a map is 1", ""});
        }
      } else if (key == "name") {
        if (expect(node, JsonType::string, "\"the asset register\"")) map_.name = node_at(node).text;
      } else if (key == "columns") {
        has_columns = true;
        read_columns(node);
      } else if (key == "id") {
        read_id(node);
      } else if (key == "missing") {
        read_words(node, map_.missing);
      } else if (key == "defaults") {
        read_defaults(node);
      } else if (key == "ignore_others") {
        if (expect(node, JsonType::boolean, "true or false")) map_.ignore_others = node_at(node).truth;
      } else if (key == "decimal") {
        read_decimal(node);
      } else if (key != "materials") {
        unknown_key(node, "a map", map_keys);
      }
    });
    const auto missing = [&](bool has, std::string_view key, std::string help) {
      if (!has) {
        add(0, {"map.missing", '"' + std::string(key) + "\" is missing", std::move(help)});
      }
    };
    missing(has_format, "format", "\"format\": 1");
    missing(has_columns, "columns", R"("columns": {"PIPE_SIZE": {"to": "main.size", "unit": "in"}})");
  }

  // --- columns ---

  void read_columns(std::uint32_t node) {
    if (!expect(node, JsonType::object, R"({"PIPE_SIZE": {"to": "main.size", "unit": "in"}})")) return;
    members(node, [&](std::uint32_t child) {
      const JsonNode& entry = node_at(child);
      if (!names_.insert(plain_name(entry.key)).second) {
        add_at_key(child, {"map.contradiction", text::quoted(entry.key) + " is named twice",
                           "case, spaces, underscores, dots and hyphens do not count in the name of a column"});
        return;
      }
      MappedColumn column;
      column.name = entry.key;
      if (entry.type == JsonType::string) {
        if (!read_target(child, column.to)) return;
      } else if (expect(child, JsonType::object, R"("main.size", or {"to": "main.size", "unit": "in"})")) {
        if (!read_column(child, column)) return;
      } else {
        return;
      }
      if (column.to.field->path == "id" && !map_.id.empty()) id_twice(child);
      map_.columns.push_back(std::move(column));
    });
  }

  bool read_column(std::uint32_t node, MappedColumn& column) {
    std::optional<std::uint32_t> to;
    members(node, [&](std::uint32_t child) {
      if (node_at(child).key == "to") to = child;
    });
    if (!to) {
      add_at_key(node,
                 {"map.missing", "\"to\" is missing", "say which fact the column holds: {\"to\": \"main.size\"}"});
      return false;
    }
    if (!expect(*to, JsonType::string, "\"main.size\"") || !read_target(*to, column.to)) return false;
    const JobField& field = *column.to.field;
    members(node, [&](std::uint32_t child) {  // the unit before the ranges and values that are in it
      if (node_at(child).key == "unit") read_unit(child, field, column.unit);
    });
    members(node, [&](std::uint32_t child) {
      const std::string_view key = node_at(child).key;
      if (key == "missing") read_words(child, column.missing);
      else if (key == "values") read_values(child, column);
      else if (key == "least") read_bound(child, column, column.least);
      else if (key == "greatest") read_bound(child, column, column.greatest);
      else if (key == "optional") read_optional(child, column);
      else if (key != "to" && key != "unit") unknown_key(child, "a column", column_keys);
    });
    if (column.least && column.greatest && column.least->value > column.greatest->value) {
      add_at_key(node, {"map.contradiction", "\"least\" is above \"greatest\"", ""});
    }
    return true;
  }

  bool read_target(std::uint32_t node, FieldPath& target) {
    const std::string_view path = node_at(node).text;
    if (const auto found = find_field(path)) {
      target = *found;
      return true;
    }
    std::vector<std::string_view> paths;
    for (const JobField& field : job_fields()) paths.push_back(field.path);
    Problem problem{"map.unknown-value", text::quoted(path) + " is not a fact of a job", ""};
    if (const auto near = nearest(path, paths)) {
      problem.help = "did you mean \"" + std::string(*near) + "\"?";
    } else {
      const auto last = std::find_if(paths.begin(), paths.end(), [&](std::string_view known) {
        return plain_name(known.substr(known.rfind('.') + 1)) == plain_name(path.substr(path.rfind('.') + 1));
      });
      problem.help = last != paths.end() ? "did you mean \"" + std::string(*last) + "\"?" : "known: " + listed(paths);
    }
    add(node, std::move(problem));
    return false;
  }

  void read_unit(std::uint32_t node, const JobField& field, std::string& unit) {
    if (!expect(node, JsonType::string, "\"in\", \"mm\", \"psi\"")) return;
    const std::string_view written = node_at(node).text;
    if (is_dated(field)) {
      if (is_count_of_days(written)) unit = written;
      else
        add(node, {"map.unknown-value", text::quoted(written) + " is not how days are counted",
                   "\"ms\" or \"s\", where the cells are milliseconds or seconds since 1970"});
      return;
    }
    if (!field.has_unit()) {
      add(node, {"map.contradiction", std::string(field.path) + " has no unit", "leave \"unit\" out"});
      return;
    }
    if (const ParsedMeasure read = parse_measure(1.0, written, field.kind); !read) {
      const std::string found =
          read.fault == MeasureFault::wrong_unit ? " is the unit of something else" : " is not a unit that is known";
      add(node, {"map.unknown-value", text::quoted(written) + found, expected_text(field.kind)});
      return;
    }
    unit = written;
  }

  // Numbers may stand without quotes.
  std::optional<std::string> word(std::uint32_t node) {
    const JsonNode& value = node_at(node);
    if (value.type == JsonType::boolean) return value.truth ? "true" : "false";
    if (value.type == JsonType::string || value.type == JsonType::number) return std::string(value.text);
    (void)expect(node, JsonType::string, "\"XXX\" or 7");
    return std::nullopt;
  }

  void read_words(std::uint32_t node, std::vector<std::string>& words) {
    if (!expect(node, JsonType::array, R"(["XXX", 7])")) return;
    members(node, [&](std::uint32_t child) {
      if (words.size() == most_words) return;
      if (const auto text = word(child)) words.push_back(cell_key(*text));
    });
  }

  std::optional<FieldValue> value_of(std::uint32_t node, const JobField& field, std::string_view unit) {
    const auto text = word(node);
    if (!text) return std::nullopt;
    if (field.type == FieldType::material) {
      if (const auto known = map_.materials.find(normal_spelling(*text)); known != map_.materials.end()) {
        return FieldValue(known->second.material);
      }
    }
    auto read = read_value(field, is_dated(field) ? *text : with_unit(*text, unit), catalog_);
    if (auto* problem = std::get_if<Problem>(&read)) {
      add(node, std::move(*problem));
      return std::nullopt;
    }
    return std::get<FieldValue>(std::move(read));
  }

  void read_values(std::uint32_t node, MappedColumn& column) {
    if (!expect(node, JsonType::object, R"({"TREATED": "water"})")) return;
    members(node, [&](std::uint32_t child) {
      if (column.values.size() == most_words) return;
      if (auto value = value_of(child, *column.to.field, column.unit)) {
        column.values.emplace_back(cell_key(node_at(child).key), *std::move(value));
      }
    });
  }

  void read_bound(std::uint32_t node, const MappedColumn& column, std::optional<Bound>& bound) {
    const JobField& field = *column.to.field;
    if (!field.has_range()) {
      add_at_key(node, {"map.contradiction", std::string(field.path) + " is not a number", "leave the range out"});
      return;
    }
    const auto value = value_of(node, field, column.unit);
    if (!value) return;
    const std::string_view written = node_at(node).text;
    bound = Bound{*number_in(*value), is_dated(field) ? std::string(written) : with_unit(written, column.unit)};
  }

  void read_optional(std::uint32_t node, MappedColumn& column) {
    if (expect(node, JsonType::boolean, "true or false")) column.optional = node_at(node).truth;
  }

  // --- the rest ---

  void id_twice(std::uint32_t node) {
    add_at_key(node, {"map.contradiction", "the id is given both by a column and by \"id\"", "keep one of the two"});
  }

  void read_id(std::uint32_t node) {
    if (!expect(node, JsonType::array, R"(["DISTRICT", "LEAK_ID"], joined by hyphens)")) return;
    members(node, [&](std::uint32_t child) {
      if (map_.id.size() == most_words) return;
      if (expect(child, JsonType::string, "the name of a column")) map_.id.emplace_back(node_at(child).text);
    });
    const bool twice = std::any_of(map_.columns.begin(), map_.columns.end(),
                                   [](const MappedColumn& column) { return column.to.field->path == "id"; });
    if (twice) id_twice(node);
  }

  void read_decimal(std::uint32_t node) {
    if (!expect(node, JsonType::string, R"(",")")) return;
    const std::string_view mark = node_at(node).text;
    if (mark == "," || mark == ".") map_.decimal_comma = mark == ",";
    else add(node, {"map.unknown-value", text::quoted(mark) + " stands in no number", R"("," or ".")"});
  }

  void read_materials(std::uint32_t node) {
    if (!expect(node, JsonType::object, R"({"CO": "copper"})")) return;
    members(node, [&](std::uint32_t child) {
      const bool several = node_at(child).type == JsonType::object;
      if (!several &&
          !expect(child, JsonType::string, R"("copper", or {"main.material": "PVC", "main.class": "SDR 21"})")) {
        return;
      }
      const auto code = several ? read_code(child) : read_material(child);
      if (!code) return;
      const auto [place, fresh] = map_.materials.emplace(normal_spelling(node_at(child).key), *code);
      if (!fresh && (place->second.material != code->material || several)) {
        add_at_key(child, {"map.contradiction", text::quoted(node_at(child).key) + " stands for two materials",
                           "case, dots, spaces, hyphens and slashes do not count in a code"});
      }
    });
  }

  std::optional<MaterialCode> read_material(std::uint32_t node) {
    const std::string_view meant = node_at(node).text;
    const Catalog::MaterialReading read = catalog_.read_material(meant);
    if (read.material) return MaterialCode{*read.material, {}};
    Problem problem{"map.unknown-value", text::quoted(meant) + " is not a known material", ""};
    if (!read.why_not.empty()) problem.message = text::quoted(meant) + ": " + std::string(read.why_not);
    problem.help = nearest_and_known(meant, material_names, "one of: ");
    add(node, std::move(problem));
    return std::nullopt;
  }

  // {"main.material": "PVC", "main.class": "SDR 21"}
  std::optional<MaterialCode> read_code(std::uint32_t node) {
    MaterialCode code;
    bool has_material = false;
    bool good = true;
    members(node, [&](std::uint32_t child) {
      if (node_at(child).key == "main.material") {
        has_material = true;
        const auto read = expect(child, JsonType::string, "\"PVC\"") ? read_material(child) : std::nullopt;
        good = good && read;
        if (read) code.material = read->material;
        return;
      }
      if (auto fact = read_shared_fact(child)) add_shared_fact(child, *std::move(fact), code.also);
      else good = false;
    });
    if (!has_material) {
      add_at_key(node, {"map.missing", "\"main.material\" is missing", "a code says the material at least"});
    }
    return good && has_material ? std::optional(std::move(code)) : std::nullopt;
  }

  void read_defaults(std::uint32_t node) {
    if (!expect(node, JsonType::object, R"({"main.pressure": "80 psi"})")) return;
    members(node, [&](std::uint32_t child) {
      if (auto fact = read_shared_fact(child)) add_shared_fact(child, *std::move(fact), map_.defaults);
    });
  }

  // By its older name and the one of today a fact could be given twice.
  void add_shared_fact(std::uint32_t node, MapDefault fact, std::vector<MapDefault>& facts) {
    const bool twice = std::any_of(facts.begin(), facts.end(), [&](const MapDefault& other) {
      return other.to.field == fact.to.field && other.to.index == fact.to.index;
    });
    if (twice) add_at_key(node, {"map.duplicate-key", std::string(fact.to.field->path) + " is given twice", ""});
    else facts.push_back(std::move(fact));
  }

  // A path and its value, for more orders than one.
  std::optional<MapDefault> read_shared_fact(std::uint32_t node) {
    const std::string_view path = node_at(node).key;
    MapDefault given;
    if (path == "id") {
      add_at_key(node, {"map.contradiction", "every order has an id of its own", "map a column to \"id\""});
      return std::nullopt;
    }
    if (const auto found = find_field(path); found && !found->field->in_list()) {
      given.to = *found;
    } else {
      std::vector<std::string_view> paths;
      for (const JobField& field : job_fields()) {
        if (!field.in_list()) paths.push_back(field.path);
      }
      unknown_key(node, "a job that every order could share", paths);
      return std::nullopt;
    }
    auto value = value_of(node, *given.to.field, "");
    if (!value) return std::nullopt;
    given.value = *std::move(value);
    given.text = *word(node);
    return given;
  }

  const Catalog& catalog_;
  OrderMap map_;
  std::set<std::string> names_;  // of columns, as they compare
};

}  // namespace

OrderMapFile read_order_map(std::string_view text, std::string_view file_name, const Catalog& catalog) {
  return MapReader(catalog).read(text, file_name);
}

std::string cell_key(std::string_view cell) {
  const std::string_view text = trimmed(cell);
  std::string key;
  if (!text.empty() && (is_digit(text.front()) || text.front() == '-' || text.front() == '.')) {
    double number = 0.0;
    const auto [end, error] = std::from_chars(text.data(), text.data() + text.size(), number);
    if (error == std::errc() && end == text.data() + text.size()) {
      std::array<char, 32> digits{};
      const auto written = std::to_chars(digits.data(), digits.data() + digits.size(), number == 0.0 ? 0.0 : number);
      return std::string(digits.data(), written.ptr);
    }
  }
  key.reserve(text.size());
  for (const char c : text) key += c >= 'A' && c <= 'Z' ? static_cast<char>(c - 'A' + 'a') : c;
  return key;
}

std::string with_unit(std::string_view cell, std::string_view unit) {
  const std::string_view text = trimmed(cell);
  std::string whole(text);
  if (unit.empty() || text.empty()) return whole;
  const char first = text.front();
  const char last = text.back();
  const bool bare =
      (is_digit(first) || first == '.' || first == '-' || first == '+') && (is_digit(last) || last == '.');
  if (bare) {
    whole += ' ';
    whole += unit;
  }
  return whole;
}

std::optional<double> number_in(const FieldValue& value) {
  if (const auto* measure = std::get_if<Measure>(&value)) return measure->base();
  if (const auto* size = std::get_if<NominalSize>(&value)) return size->number();
  if (const auto* whole = std::get_if<int>(&value)) return *whole;
  return std::nullopt;
}

}  // namespace mainbore::io

namespace mainbore {

std::span<const DiagnosticText> order_diagnostic_texts() {
  static constexpr std::array texts = {
      DiagnosticText{
          "csv.quote", "a quote that breaks the row",
          "A cell that begins with a double quote ends with one, and every quote inside it is written twice. "
          "The row cannot be read; reading goes on with the line behind the one on which that cell begins."},
      DiagnosticText{"csv.too-large", "a row that is too long",
                     "A row of an export is short. A line of this length is a wrong file. It is passed over; reading "
                     "goes on with the line behind it."},
      DiagnosticText{"csv.ragged", "a row with more or fewer cells than the header",
                     "A comma inside a cell that has no quotes round it moves all cells behind it one column on, so "
                     "nothing of such a row can be trusted. Empty cells too many at the end do no harm."},
      DiagnosticText{"csv.encoding", "not UTF-8 text",
                     "Files are read as UTF-8, with or without a byte-order mark. A cell with other bytes in it is "
                     "rejected; columns that are not used may hold anything."},
      DiagnosticText{"csv.header", "a header that cannot be used",
                     "The first row names the columns. Without a map file each is the path of a fact, such as "
                     "main.size, with the unit of its cells in square brackets: main.pressure [psi]. Case, spaces, "
                     "underscores, dots and hyphens do not count."},
      DiagnosticText{
          "csv.no-column", "a column that is not there",
          "The map file, or --keep, names a column that the table does not have, or a member that no order of the file "
          "has. A fact would be dropped silently, so this is an error, with the nearest column there is. In the map "
          "\"optional\": true says that a column may be absent."},
      DiagnosticText{"map.duplicate-key", "a key given twice", "Of two equal keys neither counts: keep the right one."},
      DiagnosticText{"map.unknown-key", "a key that is not part of a map file",
                     "A misspelt key would silently do nothing, so it is an error, with the nearest known key."},
      DiagnosticText{"map.unknown-value", "a word that is not one of those known",
                     "The value must be a fact of a job, a unit, a material or a format that is known. The nearest is "
                     "offered but never taken."},
      DiagnosticText{"map.wrong-type", "a value of the wrong kind",
                     "Lists stand in square brackets, names with their values in braces, text in double quotes."},
      DiagnosticText{"map.contradiction", "two statements that cannot both be",
                     "One column named twice, a range whose ends are exchanged, a unit or a range for a fact that has "
                     "none, one code for two materials, or the id given in two ways."},
      DiagnosticText{"map.missing", "a part of the map file that is required",
                     "A map file says its format and its columns, and for each column the fact it holds."},
      DiagnosticText{"order.two-materials", "a cell that names two materials",
                     "One pipe inside another, or a change of pipe: which of the two will be tapped must be asked."},
      DiagnosticText{"order.not-a-wall", "a wall thickness that cannot be one",
                     "The wall of a pipe is far less than half of its diameter. Exports often keep the dimension ratio "
                     "of plastic pipe in the column for the wall."},
      DiagnosticText{"order.out-of-map-range", "a value outside the range the map file allows",
                     "The map file says between what ends the values of the column lie in this utility."},
      DiagnosticText{
          "order.internal-error", "a fault of the program",
          "The program failed on this order and has no plan for it; the other orders are planned. The batch ends "
          "with exit status 70. Report it, with the order."},
      DiagnosticText{
          "order.decimal", "a number with a point among numbers with decimal commas",
          "Where a table writes 0,31 a number such as 8.5 may be anything. Whether it has decimal commas is "
          "said in the map file (\"decimal\": \",\"), or found where cells are apart by semicolons and every "
          "number with decimals has a comma."},
      DiagnosticText{"order.not-a-feature", "no feature of GeoJSON with properties",
                     "A feature is an object with the type \"Feature\", a geometry, which may be null, and properties, "
                     "in which the facts of the order stand."},
      DiagnosticText{"order.year", "a date without its year",
                     "Of a date only the year in four digits is taken, in whatever order day, month and year stand."},
      DiagnosticText{"order.day-count", "a date that may be a count",
                     "Databases and map services write a date as milliseconds since 1970. The map file says so, with "
                     "\"unit\": \"ms\" for the column; nobody guesses it."},
  };
  return texts;
}

}  // namespace mainbore
