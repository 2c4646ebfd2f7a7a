#include "mainbore/tool_file.hpp"

namespace mainbore {
namespace {

constexpr std::string_view line_end = "\r\n";

// One row in the making; cells that need it are quoted.
class CsvRow {
 public:
  explicit CsvRow(std::string& out) : out_(out) {}
  ~CsvRow() { out_ += line_end; }
  CsvRow(const CsvRow&) = delete;
  CsvRow& operator=(const CsvRow&) = delete;

  void text(std::string_view cell) {
    begin();
    if (cell.find_first_of(",\"\r\n") == std::string_view::npos) {
      out_ += cell;
      return;
    }
    out_ += '"';
    for (const char c : cell) out_.append(c == '"' ? 2 : 1, c);
    out_ += '"';
  }
  void number(std::optional<double> value, int decimals) {
    begin();
    if (value) append_number(out_, *value, decimals);
  }
  void size(std::optional<NominalSize> value) { number(value ? std::optional(value->number()) : std::nullopt, 4); }
  void length(std::optional<Length> value, UnitSystem system) {
    if (!value) return number(std::nullopt, 0);
    const Shown display = shown(Measure(*value), system);
    number(display.value, display.decimals);
  }
  void flag(bool value) { text(value ? "true" : "false"); }

 private:
  void begin() {
    if (!first_) out_ += ',';
    first_ = false;
  }
  std::string& out_;
  bool first_ = true;
};

void write_tap(CsvRow& row, const PocketTap& tap) {
  row.size(tap.go);
  row.size(tap.held);
  row.text(tap.hold ? name_of(*tap.hold) : std::string_view());
  row.text(tap.refused ? name_of(tap.refused->code) : std::string_view());
  row.flag(tap.recalled);
}

}  // namespace

std::string pocket_table_to_csv(const PocketTable& table, UnitSystem system) {
  const std::string unit = system == UnitSystem::us ? "[in]" : "[mm]";
  std::string out;
  {
    CsvRow header(out);
    for (const char* name : {"material", "series", "size[nominal in]", "class"}) header.text(name);
    for (const std::string method : {"direct", "saddle"}) {
      header.text(method + "_go[nominal in]");
      header.text(method + "_held[nominal in]");
      header.text(method + "_hold");
      header.text(method + "_refused");
      header.text(method + "_recalled");
    }
    for (const char* name : {"threads_nominal", "threads_least", "threads_judged"}) header.text(name);
    header.text("wall_needed" + unit);
    header.text("od" + unit);
    header.text("chain_needed" + unit);
    header.text("chain_extensions");
  }
  for (const PocketCell& cell : table.cells) {
    CsvRow row(out);
    row.text(name_of(cell.pipe->series->material));
    row.text(cell.pipe->series->id);
    row.size(cell.pipe->size);
    row.text(cell.pipe->class_name);
    write_tap(row, cell.direct);
    write_tap(row, cell.saddle);
    row.number(cell.threads_nominal, 2);
    row.number(cell.threads_least, 2);
    row.flag(cell.threads_judged);
    row.length(cell.wall_needed, system);
    row.length(cell.od, system);
    row.length(cell.chain_needed, system);
    row.number(cell.chain_needed ? std::optional<double>(cell.chain_extensions) : std::nullopt, 0);
  }
  return out;
}

}  // namespace mainbore
