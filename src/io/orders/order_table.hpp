// Rows of a table of orders -> jobs, through the header and, where there is one, a map file.
//
// The header is understood once; a row then costs a look-up a cell, because exports say the same few things over and
// over: each column remembers what its spellings mean. A table is copied for each thread.
//
//     CsvRecord record;
//     reader.read(record);
//     OrderTable table(catalog, map, "orders.csv", record);
//     if (!table.faults().empty()) ...
//     for (OrderRecord order; reader.read(record);) { table.read(record, order); ... }
#pragma once

#include <cstdint>
#include <functional>
#include <optional>
#include <span>
#include <string>
#include <string_view>
#include <unordered_map>
#include <vector>

#include "io/job/job_fields.hpp"
#include "io/orders/keep_columns.hpp"
#include "io/orders/order_cell.hpp"
#include "io/orders/order_map.hpp"
#include "io/text/csv.hpp"
#include "mainbore/catalog.hpp"
#include "mainbore/order_file.hpp"

namespace mainbore::io {

class OrderTable {
 public:
  // Catalog and map must outlive the table; no map (nullptr): the header's names are paths of a job.
  // `keep` (may be nullptr, else must outlive the table): columns that go into OrderRecord::kept.
  OrderTable(const Catalog& catalog, const OrderMap* map, std::string file_name, const CsvRecord& header,
             const KeepColumns* keep = nullptr);

  // Of orders in JSON, which have no header: their members are the columns, and come as they are met. The columns of the
  // map stand there from the start.
  OrderTable(const Catalog& catalog, const OrderMap* map, std::string file_name);
  // The column of a member that names a fact, `none` where it names none.
  [[nodiscard]] std::size_t column_of_member(const std::string& name);
  static constexpr std::size_t none = static_cast<std::size_t>(-1);
  // Why it names none, for a message.
  [[nodiscard]] Problem not_a_fact(std::string_view name) const;
  // Of the columns that a row has, one that holds a fact of another, without a map to say which of them counts.
  [[nodiscard]] std::size_t second_of_a_fact(const std::vector<bool>& given) const;

  // Numbers have decimal commas, where the map does not say.
  void set_decimal_comma(bool comma) { decimal_comma_ = comma; }
  [[nodiscard]] bool decimal_comma() const { return decimal_comma_; }

  // What is wrong with the header. Where there is anything, no row can be read.
  [[nodiscard]] const std::vector<Diagnostic>& faults() const { return faults_; }

  // The order of one record, also of a broken one. Memory of `order` is used again.
  void read(const CsvRecord& record, OrderRecord& order);

  // The same in two steps: whose order it is and what is carried on, then what it says. False: there is no second step,
  // and `order` says why.
  bool begin(const CsvRecord& record, OrderRecord& order);
  void read_facts(const CsvRecord& record, OrderRecord& order);
  // Between them: the cells as they are written, but for those of what only names the order (JobField::names_order).
  // Where repeats() holds of an order without remarks that was read, every other record with the same cells is the same
  // job but for its names. Says nothing of a record that it is not sure of. Good until the next call.
  [[nodiscard]] std::optional<std::string_view> facts(const CsvRecord& record);
  [[nodiscard]] bool repeats() const { return facts_said_; }

  // For the report on columns.
  [[nodiscard]] std::span<const OrderColumn> columns() const { return columns_; }
  [[nodiscard]] bool is_part_of_id(std::size_t column) const;
  // Whether the cell counted in the row last read: of several columns for one fact, those behind the one that says
  // something do not.
  [[nodiscard]] bool was_looked_at(std::size_t column) const;
  // Valid until the next call.
  [[nodiscard]] const CellReading& read_cell(std::size_t column, std::string_view cell);
  // The columns that are kept, as the header has them.
  [[nodiscard]] std::span<const std::size_t> kept_columns() const { return kept_columns_; }
  [[nodiscard]] const std::string& file_name() const { return file_name_; }
  [[nodiscard]] const OrderMap* map() const { return map_; }

 private:
  struct SpellingHash {
    using is_transparent = void;
    std::size_t operator()(std::string_view text) const { return std::hash<std::string_view>{}(text); }
  };
  using Spellings = std::unordered_map<std::string, CellReading, SpellingHash, std::equal_to<>>;

  // A fact that the rows may hold: the columns to look in, in order, and what stands where none says anything.
  struct Fact {
    FieldPath path;
    std::vector<std::size_t> columns;
    std::optional<FieldValue> otherwise;
  };
  // An element of a list that some column names.
  struct Element {
    std::size_t index = 0;
    std::vector<std::size_t> facts;
  };
  // How a fact of the row at hand came out, and from which column.
  struct Outcome {
    CellReading::Says says = CellReading::Says::nothing;
    std::size_t column = none;
    Problem problem;
  };
  void name_twins();
  void name_by_map(const CsvRecord& header);
  void name_by_path(const CsvRecord& header, std::size_t column);
  void choose_kept(const CsvRecord& header);
  void note_kept(const CsvRecord& record, OrderRecord& order) const;
  void add_fault(const CsvRecord& header, std::size_t column, Problem problem);
  void collect_facts();
  Fact& fact_of(FieldPath path);
  void take_column(std::size_t column);
  void begin_facts();
  [[nodiscard]] std::size_t find_fact(FieldPath path) const;

  [[nodiscard]] bool is_whole(const CsvRecord& record, OrderRecord& order) const;
  void read_id(const CsvRecord& record, OrderRecord& order);
  void read_fact(const CsvRecord& record, std::size_t fact);
  void apply_code();
  void check_wall();
  void report_facts(const CsvRecord& record, OrderRecord& order);
  void note_unread();
  void check_machine(const CsvRecord& record, OrderRecord& order) const;
  void drop_empty_elements();
  [[nodiscard]] bool element_given(std::size_t index) const;
  [[nodiscard]] Diagnostic at_cell(const CsvRecord& record, std::size_t column, Problem problem) const;
  [[nodiscard]] Diagnostic of_row(const CsvRecord& record, Problem problem) const;
  [[nodiscard]] Diagnostic missing(const CsvRecord& record, const Fact& fact) const;

  const Catalog* catalog_;
  const OrderMap* map_;
  const KeepColumns* keep_ = nullptr;
  std::string file_name_;
  std::vector<Diagnostic> faults_;
  std::vector<OrderColumn> columns_;
  std::vector<Spellings> spellings_;  // of each column
  std::vector<std::size_t> id_columns_;
  std::vector<std::size_t> kept_columns_;
  bool decimal_comma_ = false;
  bool members_ = false;  // no header: orders in JSON
  std::vector<Fact> facts_;
  std::size_t wall_ = none;  // which fact that is

  // Of the row at hand.
  JobDraft draft_;
  std::vector<Element> elements_;  // in the order of their first facts
  std::vector<Outcome> outcomes_;  // of each fact
  bool facts_said_ = false;        // some cell did, and not of a name alone
  std::string written_;
  const std::vector<MapDefault>* also_ = nullptr;
  CellReading unremembered_;
};

}  // namespace mainbore::io
