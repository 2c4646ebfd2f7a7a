#include "io/orders/columns_report.hpp"

#include <algorithm>
#include <array>
#include <cmath>
#include <map>
#include <optional>
#include <unordered_map>
#include <utility>

#include "mainbore/measure.hpp"
#include "text/foreign.hpp"

namespace mainbore::io {
namespace {

using Says = CellReading::Says;

constexpr std::size_t most_examples = 3;
constexpr std::size_t most_reasons = 2000;  // told apart
constexpr std::size_t most_values = 50000;  // not understood, told apart
constexpr std::size_t reasons_shown = 12;
constexpr std::size_t page = 100;

// A value as it is understood: "8 in", "ductile iron", "1961".
std::string meaning_of(const FieldValue& value, const JobField& field) {
  if (const auto* text = std::get_if<std::string>(&value)) return *text;
  if (const auto* measure = std::get_if<Measure>(&value)) return format_measure(*measure, UnitSystem::us);
  if (const auto* size = std::get_if<NominalSize>(&value)) return size->label() + " in";
  if (const auto* material = std::get_if<Material>(&value)) return std::string(name_of(*material));
  if (const auto* flag = std::get_if<bool>(&value)) return *flag ? "yes" : "no";
  if (const auto* clock = std::get_if<ClockPosition>(&value)) return clock->label();
  if (const auto* whole = std::get_if<int>(&value)) {
    return field.type == FieldType::choice ? std::string(field.choice->names[static_cast<std::size_t>(*whole)])
                                           : std::to_string(*whole);
  }
  return {};
}

}  // namespace

class ColumnsCounter::Reporter {
 public:
  explicit Reporter(OrderTable& table) : table_(table) {
    report_.file = table_.file_name();
    if (table_.map() != nullptr) report_.map = table_.map()->name;
    note_columns();
  }

  void add(const CsvRecord* record, const OrderRecord& order) {
    ++report_.rows;
    count(order);
    if (record == nullptr) return;
    if (places_.size() < table_.columns().size()) note_columns();
    for (std::size_t i = 0; i < places_.size(); ++i) {
      if (places_[i] != nowhere && table_.was_looked_at(i)) look_at(i, record->cell(i));
    }
  }

  ColumnsReport take() {
    finish();
    return std::move(report_);
  }

 private:
  static constexpr std::size_t nowhere = static_cast<std::size_t>(-1);

  // Those that have come since.
  void note_columns() {
    const auto columns = table_.columns();
    for (std::size_t i = places_.size(); i < columns.size(); ++i) {
      places_.push_back(nowhere);
      const bool of_id = !columns[i].to && table_.is_part_of_id(i);
      if (!columns[i].to && !of_id) {
        if (!columns[i].header.empty()) report_.not_read.push_back(columns[i].header);
        continue;
      }
      places_[i] = report_.columns.size();
      ColumnReport column;
      column.header = columns[i].header;
      column.path = of_id ? "id" : columns[i].to->field->path_at(columns[i].to->index);
      column.unit = columns[i].unit;
      report_.columns.push_back(std::move(column));
    }
    tallies_.resize(report_.columns.size());
  }

  void count(const OrderRecord& order) {
    if (order.job) ++report_.readable;
    if (order.job && !order.remarks.empty()) ++report_.with_remarks;
    for (const Diagnostic& told : order.diagnostics) unreadable_.add(told.message);
    for (const Diagnostic& told : order.remarks) rejected_.add(told.message);
  }

  void look_at(std::size_t place, std::string_view cell) {
    ColumnReport& column = report_.columns[places_[place]];
    const OrderColumn& source = table_.columns()[place];
    if (!source.to) {
      const bool empty = cell.find_first_not_of(" \t\r\n") == std::string_view::npos;
      ++(empty ? column.missing : column.values);
      if (!empty) note_example(column, cell, std::string(cell));
      return;
    }
    const CellReading& reading = table_.read_cell(place, cell);
    switch (reading.says) {
      case Says::nothing:
        ++column.missing;
        return;
      case Says::rejected:
        ++column.rejected;
        note_rejected(places_[place], cell);
        return;
      case Says::value:
        ++column.values;
        break;
    }
    if (const auto number = number_in(reading.value); number && source.to->field->type != FieldType::choice) {
      Tally& tally = tallies_[places_[place]];
      if (!tally.least || *number < *tally.least) {
        tally.least = number;
        column.least = meaning_of(reading.value, *source.to->field);
      }
      if (!tally.greatest || *number > *tally.greatest) {
        tally.greatest = number;
        column.greatest = meaning_of(reading.value, *source.to->field);
      }
      if (source.to->field->path == "main.size") {
        ++sizes_;
        wide_ += *number > 48.0 ? 1u : 0u;
        narrow_ += *number < 1.0 ? 1u : 0u;
      }
    }
    if (column.examples.size() < most_examples)
      note_example(column, cell, meaning_of(reading.value, *source.to->field));
  }

  void note_rejected(std::size_t column, std::string_view cell) {
    constexpr std::size_t longest = 200;
    const auto known = values_.find(std::pair(column, std::string(text::cut(cell, longest))));
    if (known != values_.end()) ++known->second;
    else if (values_.size() < most_values) values_.emplace(std::pair(column, std::string(text::cut(cell, longest))), 1);
    else ++report_.values_not_counted;
  }

  static void note_example(ColumnReport& column, std::string_view cell, std::string meaning) {
    if (column.examples.size() == most_examples) return;
    const bool shown = std::any_of(column.examples.begin(), column.examples.end(),
                                   [&](const auto& example) { return example.meaning == meaning; });
    if (!shown) column.examples.push_back({std::string(cell), std::move(meaning)});
  }

  void finish() {
    for (std::size_t i = 0; i < tallies_.size(); ++i) {
      if (tallies_[i].least == tallies_[i].greatest) report_.columns[i].least.clear();
      if (report_.columns[i].least.empty()) report_.columns[i].greatest.clear();
    }
    if (table_.map() != nullptr) {
      for (const MapDefault& given : table_.map()->defaults) {
        report_.defaults.push_back(given.to.field->path_at(given.to.index) + " = " + given.text);
      }
    }
    report_.unreadable = unreadable_.sorted();
    report_.rejected = rejected_.sorted();
    for (const auto& [value, rows] : values_) report_.values_rejected.push_back({value.first, value.second, rows});
    std::stable_sort(report_.values_rejected.begin(), report_.values_rejected.end(),
                     [](const ValueCount& a, const ValueCount& b) {
                       return std::pair(a.column, b.rows) < std::pair(b.column, a.rows);
                     });
    if (2 * wide_ > sizes_)
      report_.hints.emplace_back("most mains would be wider than 48 in: is the unit of main.size right?");
    if (2 * narrow_ > sizes_)
      report_.hints.emplace_back("most mains would be under 1 in: is the unit of main.size right?");
    for (const ColumnReport& column : report_.columns) {
      if (report_.rows > 0 && column.values == 0 && column.rejected > 0) {
        report_.hints.push_back("nothing of " + column.header + " was understood: is " + column.path +
                                " the right fact for it?");
      }
    }
  }

  // Counts reasons, up to a limit of different ones.
  class Reasons {
   public:
    void add(const std::string& reason) {
      const auto known = counts_.find(reason);
      if (known != counts_.end()) ++known->second;
      else if (counts_.size() < most_reasons) counts_.emplace(reason, 1);
      else ++others_;
    }
    [[nodiscard]] std::vector<Count> sorted() const {
      std::vector<Count> sorted;
      for (const auto& [text, rows] : counts_) sorted.push_back({text, rows});
      std::stable_sort(sorted.begin(), sorted.end(), [](const Count& a, const Count& b) { return a.rows > b.rows; });
      if (others_ > 0) sorted.push_back({"other reasons", others_});
      return sorted;
    }

   private:
    std::map<std::string, std::uint64_t> counts_;  // in order, so that equal counts come out the same everywhere
    std::uint64_t others_ = 0;
  };

  struct Tally {
    std::optional<double> least;
    std::optional<double> greatest;
  };

  OrderTable& table_;
  ColumnsReport report_;
  std::vector<std::size_t> places_;  // of each column of the table in the report
  std::vector<Tally> tallies_;
  Reasons unreadable_;
  Reasons rejected_;
  std::map<std::pair<std::size_t, std::string>, std::uint64_t> values_;
  std::uint64_t sizes_ = 0;
  std::uint64_t wide_ = 0;
  std::uint64_t narrow_ = 0;
};

ColumnsCounter::ColumnsCounter(OrderTable& table) : reporter_(std::make_unique<Reporter>(table)) {}
ColumnsCounter::~ColumnsCounter() = default;
void ColumnsCounter::add(const CsvRecord* record, const OrderRecord& order) { reporter_->add(record, order); }
ColumnsReport ColumnsCounter::finish() && { return reporter_->take(); }

namespace {

// --- text -------------------------------------------------------------------------------------------------------

constexpr bool continues(char c) { return (static_cast<unsigned char>(c) & 0xC0u) == 0x80u; }
std::size_t width(std::string_view text) {
  return static_cast<std::size_t>(std::count_if(text.begin(), text.end(), [](char c) { return !continues(c); }));
}

// At most so many characters, with dots where some were cut off.
std::string cut(std::string_view text, std::size_t most) {
  std::string shown = text::visible(text);
  if (width(shown) <= most) return shown;
  std::size_t at = 0;
  for (std::size_t seen = 0; at < shown.size(); ++at) {
    if (continues(shown[at])) continue;
    if (++seen > most - 2) break;
  }
  shown.resize(at);
  return shown + "..";
}
std::string left(std::string_view text, std::size_t columns) {
  std::string shown = cut(text, columns);
  shown.append(columns - width(shown), ' ');
  return shown;
}
std::string right(std::uint64_t number, std::size_t columns) {
  const std::string digits = std::to_string(number);
  return (digits.size() < columns ? std::string(columns - digits.size(), ' ') : "") + digits;
}

std::string percent(std::uint64_t part, std::uint64_t whole) {
  if (whole == 0) return "";
  std::string text = " (";
  append_number(text, std::floor(1000.0 * static_cast<double>(part) / static_cast<double>(whole)) / 10.0, 1);
  return text + " %)";
}

// Words in lines, each behind the indent.
void fill(std::string& out, std::string_view indent, const std::vector<std::string>& words, std::string_view between) {
  std::string line(indent);
  bool first = true;
  for (const std::string& word : words) {
    const std::string shown = cut(word, page - indent.size() - between.size());
    if (!first) line += between;
    if (!first && width(line) + width(shown) + 1 > page) {
      while (line.ends_with(' ')) line.pop_back();
      out += line + '\n';
      line = indent;
    }
    line += shown;
    first = false;
  }
  if (!first) out += line + '\n';
}

void list_reasons(std::string& out, std::string_view title, const std::vector<Count>& reasons) {
  if (reasons.empty()) return;
  out += '\n' + std::string(title) + '\n';
  for (std::size_t i = 0; i < std::min(reasons.size(), reasons_shown); ++i) {
    out += right(reasons[i].rows, 9) + "  " + cut(reasons[i].text, page - 11) + '\n';
  }
  if (reasons.size() > reasons_shown) {
    std::uint64_t rest = 0;
    for (std::size_t i = reasons_shown; i < reasons.size(); ++i) rest += reasons[i].rows;
    out += right(rest, 9) + "  for " + std::to_string(reasons.size() - reasons_shown) + " other reasons\n";
  }
}

void list_values(std::string& out, const ColumnsReport& report) {
  out += "\nevery value that was not understood\n";
  if (report.values_rejected.empty()) out += "  none\n";
  std::size_t column = report.columns.size();
  for (const ValueCount& value : report.values_rejected) {
    if (value.column != column) {
      column = value.column;
      out += "  " + cut(report.columns[column].header, 40) + ", read as " + cut(report.columns[column].path, 50) + '\n';
    }
    out += right(value.rows, 9) + "  " + cut(value.cell, page - 11) + '\n';
  }
  if (report.values_not_counted > 0) {
    out += right(report.values_not_counted, 9) + "  rows with still other values\n";
  }
}

}  // namespace

ColumnsReport report_columns(TableRows& rows) {
  ColumnsCounter counter(*rows.table());
  OrderRecord order;
  for (CsvRecord record; rows.read(record);) {
    rows.table()->read(record, order);
    const bool ragged = !order.diagnostics.empty() && order.diagnostics.front().code == "csv.ragged";
    counter.add(record.fault || ragged ? nullptr : &record, order);
  }
  ColumnsReport report = std::move(counter).finish();
  report.delimiter = rows.delimiter();
  report.titles = rows.titles();
  const bool said = rows.table()->map() != nullptr && rows.table()->map()->decimal_comma;
  report.decimal_comma = rows.table()->decimal_comma() && !said;
  return report;
}

std::string format_columns_report(const ColumnsReport& report, bool all) {
  const std::string_view apart = report.delimiter == ','    ? ", cells apart by commas"
                                 : report.delimiter == '\t' ? ", cells apart by tabs"
                                 : report.delimiter == ';'  ? ", cells apart by semicolons"
                                                            : "";
  std::string out = cut(report.file, page) + '\n';
  out += std::to_string(report.rows) + (apart.empty() ? " orders" : " rows") + std::string(apart);
  out += report.map.empty() ? "; no map file\n" : "\nmap file: " + cut(report.map, page - 10) + '\n';
  if (report.titles > 0) out += "rows above the header passed over: " + std::to_string(report.titles) + '\n';
  if (report.decimal_comma) out += "numbers have decimal commas\n";
  out += std::to_string(report.readable) + " rows can be planned" + percent(report.readable, report.rows) + ", " +
         std::to_string(report.with_remarks) + " of them with a rejected value left out; " +
         std::to_string(report.rows - report.readable) + " cannot\n";

  if (!report.columns.empty()) {
    constexpr std::size_t header_width = 18;
    constexpr std::size_t path_width = 20;
    constexpr std::size_t before_examples = header_width + path_width + 2 + 3 * 9 + 2;
    out += '\n' + left("column", header_width) + ' ' + left("read as", path_width) + ' ' +
           "    known  missing rejected  for example\n";
    for (const ColumnReport& column : report.columns) {
      const std::string path = column.unit.empty() ? column.path : column.path + " [" + column.unit + ']';
      out += left(column.header, header_width) + ' ' + left(path, path_width) + ' ' + right(column.values, 9) +
             right(column.missing, 9) + right(column.rejected, 9) + "  ";
      std::vector<std::string> lines;
      for (const ColumnReport::Example& example : column.examples) {
        lines.push_back(example.cell == example.meaning ? example.meaning : example.cell + " -> " + example.meaning);
      }
      if (!column.least.empty()) lines.push_back("from " + column.least + " to " + column.greatest);
      for (std::size_t i = 0; i < lines.size(); ++i) {
        if (i > 0) out += std::string(before_examples, ' ');
        out += cut(lines[i], page - before_examples) + '\n';
      }
      if (lines.empty()) {
        while (out.ends_with(' ')) out.pop_back();
        out += '\n';
      }
    }
  }
  if (!report.defaults.empty()) {
    out += "\nwhere no column says it\n";
    fill(out, "  ", report.defaults, "; ");
  }
  if (!report.not_read.empty()) {
    out += "\nnot read\n";
    fill(out, "  ", report.not_read, ", ");
  }
  list_reasons(out, "why rows cannot be planned", report.unreadable);
  list_reasons(out, "what was rejected; the rows stand without it", report.rejected);
  if (all) list_values(out, report);
  if (!report.hints.empty()) {
    out += "\nlook again\n";
    for (const std::string& hint : report.hints) fill(out, "  ", {hint}, "");
  }
  return out;
}

}  // namespace mainbore::io
