#include <algorithm>

#include "catalog/load_tables.hpp"
#include "catalog/table_reader.hpp"

namespace mainbore::tables {
namespace {

class ThreadTables : public TableReader {
 public:
  ThreadTables(TableFiles& at, std::vector<TapThread>& threads) : TableReader(at), threads_(threads) {}

  void read_threads(object file) {
    only(file, {"npt", "iso 7-1", "awwa taper"});
    read_thread_table(file, "awwa taper", ThreadStandard::awwa_taper);
    read_thread_table(file, "npt", ThreadStandard::npt);
    read_thread_table(file, "iso 7-1", ThreadStandard::iso7);
  }

 private:
  void read_thread_table(object file, std::string_view key, ThreadStandard standard) {
    enter("thread " + quoted(key));
    const object table = as_object(member(file, key), key);
    only(table, {"title", "standard", "unit", "note", "form", "gauging", "provenance", "columns", "rows"});
    const std::string_view unit_name = text_member(table, "unit");
    if (unit_name != "in" && unit_name != "mm") fault("the unit is neither in nor mm");
    const Length unit = unit_name == "in" ? units::inch : units::mm;
    const object form = as_object(member(table, "form"), "form");
    const double taper = number_within(member(form, "taper"), {0, 0.5}, "taper");

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
      return number_within(cells[at[column]], {0.01 / unit.base(), 12.0 / unit.base(), unit_name}, names[column]) *
             unit;
    };
    const auto length_or_unknown = [&](const Cells& cells, std::size_t column) -> std::optional<Length> {
      if (at[column] == npos || cells[at[column]].is_null()) return std::nullopt;
      return length(cells, column);
    };
    each_row(table, count, [&](const Cells& cells) {
      TapThread thread;
      thread.standard = standard;
      thread.size = as_size(cells[at[size]], "size");
      at_.row_name = thread.size.label();
      if (is_known(standard, thread.size)) fault("the size stands twice");
      const double per_inch = number_within(cells[at[tpi]], {1, 64}, "tpi");
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
      threads_.push_back(thread);
    });
  }

  // A tabulated figure that the formula also gives must be the same to the last printed digit.
  void agrees(Length by_formula, std::optional<Length> tabulated, std::string_view name) const {
    if (tabulated && abs(by_formula - *tabulated) > 0.0001 * units::inch) {
      fault(std::string(name) + " is not what the thread's formula gives");
    }
  }

  [[nodiscard]] bool is_known(ThreadStandard standard, NominalSize size) const {
    return std::any_of(threads_.begin(), threads_.end(),
                       [&](const TapThread& thread) { return thread.standard == standard && thread.size == size; });
  }

  std::vector<TapThread>& threads_;
};

}  // namespace

void load_threads(TableFiles& at, object file, std::vector<TapThread>& threads) {
  ThreadTables(at, threads).read_threads(file);
}

}  // namespace mainbore::tables
