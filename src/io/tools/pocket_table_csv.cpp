#include "io/text/csv_writer.hpp"
#include "mainbore/tool_file.hpp"

namespace mainbore {
namespace {

using io::CsvWriter;

// One row in the making.
class CsvRow : public CsvWriter {
 public:
  using CsvWriter::CsvWriter;
  ~CsvRow() { line(); }
  CsvRow(const CsvRow&) = delete;
  CsvRow& operator=(const CsvRow&) = delete;

  void number(std::optional<double> value, int decimals) {
    if (value) CsvWriter::number(*value, decimals);
    else empty();
  }
  void size(std::optional<NominalSize> value) { number(value ? std::optional(value->number()) : std::nullopt, 4); }
  void length(std::optional<Length> value, UnitSystem system) {
    if (!value) return number(std::nullopt, 0);
    const Shown display = shown(Measure(*value), system);
    number(display.value, display.decimals);
  }
  void flag(bool value) { text(value ? "true" : "false"); }
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
