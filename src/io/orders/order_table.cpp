#include "io/orders/order_table.hpp"

#include <algorithm>
#include <array>
#include <utility>

#include "io/orders/column_name.hpp"
#include "io/text/text_scan.hpp"
#include "io/text/word_scan.hpp"
#include "text/foreign.hpp"

namespace mainbore::io {
namespace {

using Says = CellReading::Says;

constexpr std::size_t most_spellings = 4096;  // remembered of one column

// "main.size" -> "/main/size", "nearby[0].what" -> "/nearby/0/what".
std::string pointer_of(const std::string& path) {
  std::string pointer = "/";
  for (const char c : path) {
    if (c == '.' || c == '[') pointer += '/';
    else if (c != ']') pointer += c;
  }
  return pointer;
}

// Text that is taken wherever text is, whatever column it stands in.
bool is_surely_text(std::string_view cell) {
  constexpr std::size_t longest = 200;
  return cell.size() <= longest &&
         !any_byte(cell, [](TextWord bytes) { return below_space(bytes) | delete_or_above(bytes); });
}

}  // namespace

const CellReading& OrderTable::read_cell(std::size_t column, std::string_view cell) {
  static const CellReading nothing;
  if (cell.empty()) return nothing;
  if (is_free_text(*columns_[column].to->field) || cell.size() > longest_spelling) {
    unremembered_ = understand_cell({*catalog_, map_, decimal_comma_}, columns_[column], cell);
    return unremembered_;
  }
  Spellings& spellings = spellings_[column];
  if (const auto known = spellings.find(cell); known != spellings.end()) return known->second;
  if (spellings.size() == most_spellings) {
    unremembered_ = understand_cell({*catalog_, map_, decimal_comma_}, columns_[column], cell);
    return unremembered_;
  }
  return spellings
      .emplace(std::string(cell), understand_cell({*catalog_, map_, decimal_comma_}, columns_[column], cell))
      .first->second;
}

// --- the header -------------------------------------------------------------------------------------------------

OrderTable::OrderTable(const Catalog& catalog, const OrderMap* map, std::string file_name, const CsvRecord& header,
                       const KeepColumns* keep)
    : catalog_(&catalog), map_(map), keep_(keep), file_name_(std::move(file_name)) {
  if (header.fault) {
    faults_.push_back(
        SourceText(header.text, file_name_, header.line).at(header.fault->span, "", header.fault->problem));
    return;
  }
  if (header.text.find('\0') != std::string::npos) {
    const bool utf16 = header.text.starts_with("\xFF\xFE") || header.text.starts_with("\xFE\xFF");
    Diagnostic fault = of_row(header, {"csv.encoding", utf16 ? "the file is UTF-16" : "the header has NUL bytes in it",
                                       "save the table as UTF-8"});
    faults_.push_back(std::move(fault));
    return;
  }
  for (std::size_t i = 0; i < header.cells.size(); ++i) {
    OrderColumn column;
    column.header = on_one_line(trimmed(header.cell(i)));
    if (has_control(column.header) || first_not_utf8(column.header)) {  // as it may be shown
      const std::string shown = text::quoted(column.header);
      column.header = shown.substr(1, shown.size() - 2);
    }
    columns_.push_back(std::move(column));
  }
  name_twins();
  if (map_ != nullptr) name_by_map(header);
  if (map_ == nullptr || !map_->ignore_others) {
    for (std::size_t i = 0; i < columns_.size(); ++i) {
      if (!columns_[i].to && !is_part_of_id(i) && !columns_[i].header.empty()) name_by_path(header, i);
    }
  }
  const bool any =
      std::any_of(columns_.begin(), columns_.end(), [](const OrderColumn& column) { return column.to.has_value(); });
  if (map_ == nullptr && !any) {  // said once
    faults_.clear();
    faults_.push_back(of_row(header, {"csv.header", "no column is named after a fact of a job, such as main.material",
                                      "a map file says which column of your own export is which fact"}));
  }
  spellings_.resize(columns_.size());
  collect_facts();
  if (keep_ != nullptr) choose_kept(header);
}

// Those asked for by name, in that order, or every column that has a name.
void OrderTable::choose_kept(const CsvRecord& header) {
  if (keep_->all) {
    for (std::size_t i = 0; i < columns_.size(); ++i) {
      if (!columns_[i].header.empty()) kept_columns_.push_back(i);
    }
    return;
  }
  std::vector<std::string_view> names;
  for (const OrderColumn& column : columns_) names.push_back(column.name);
  for (const std::string& name : keep_->names) {
    const auto found = std::find_if(names.begin(), names.end(),
                                    [&](std::string_view header_name) { return same_name(header_name, name); });
    if (found != names.end()) {
      kept_columns_.push_back(static_cast<std::size_t>(found - names.begin()));
      continue;
    }
    Problem problem{"csv.no-column", "--keep names a column " + text::quoted(name) + ", which the table does not have",
                    ""};
    if (const auto near = nearest(name, names)) problem.help = "did you mean \"" + std::string(*near) + "\"?";
    faults_.push_back(of_row(header, std::move(problem)));
  }
}

// Of columns with one header the second is SIZE#2.
void OrderTable::name_twins() {
  std::unordered_map<std::string, int> seen;
  for (OrderColumn& column : columns_) {
    const int place = ++seen[plain_name(column.header)];
    column.name = place == 1 || column.header.empty() ? column.header : column.header + '#' + std::to_string(place);
  }
}

bool OrderTable::is_part_of_id(std::size_t column) const {
  return std::find(id_columns_.begin(), id_columns_.end(), column) != id_columns_.end();
}

bool OrderTable::was_looked_at(std::size_t column) const {
  if (!columns_[column].to) return true;
  const std::size_t number = find_fact(*columns_[column].to);
  if (number == none || outcomes_[number].column == none) return true;
  for (const std::size_t looked_at : facts_[number].columns) {
    if (looked_at == column) return true;
    if (looked_at == outcomes_[number].column) break;
  }
  return false;
}

void OrderTable::add_fault(const CsvRecord& header, std::size_t column, Problem problem) {
  constexpr std::size_t most_faults = 50;
  if (faults_.size() == most_faults) return;
  faults_.push_back(
      SourceText(header.text, file_name_, header.line).at(header.span_of(column), "", std::move(problem)));
}

void OrderTable::name_by_map(const CsvRecord& header) {
  std::unordered_map<std::string, std::vector<std::size_t>> places;
  std::vector<std::string_view> names;
  for (std::size_t i = 0; i < columns_.size(); ++i) {
    const std::string plain = plain_name(columns_[i].header);
    std::vector<std::size_t>& twins = places[plain];
    twins.push_back(i);
    names.push_back(columns_[i].name);
    places[plain + '#' + std::to_string(twins.size())] = {i};
  }
  const auto column_named = [&](const std::string& name, bool optional) -> std::optional<std::size_t> {
    const auto found = places.find(plain_name(name));
    if (found == places.end() && optional) return std::nullopt;
    if (found == places.end()) {
      Problem problem{"csv.no-column",
                      "the map file names a column " + text::quoted(name) + ", which the table does not have", ""};
      if (const auto near = nearest(name, names)) problem.help = "did you mean \"" + std::string(*near) + "\"?";
      if (faults_.size() < 50) faults_.push_back(of_row(header, std::move(problem)));
      return std::nullopt;
    }
    if (found->second.size() > 1) {
      add_fault(header, found->second[1],
                {"csv.header", text::quoted(name) + " is the name of two columns",
                 "name the first \"" + name + "#1\" and the second \"" + name + "#2\""});
    }
    return found->second.front();
  };
  for (const MappedColumn& mapped : map_->columns) {
    const auto found = column_named(mapped.name, mapped.optional);
    if (!found) continue;
    columns_[*found].to = mapped.to;
    columns_[*found].unit = mapped.unit;
    columns_[*found].mapped = &mapped;
  }
  for (const std::string& name : map_->id) {
    if (const auto found = column_named(name, false)) id_columns_.push_back(*found);
  }
}

void OrderTable::name_by_path(const CsvRecord& header, std::size_t column) {
  const std::string& name = columns_[column].header;
  auto read = fact_named(name);
  if (auto* problem = std::get_if<Problem>(&read)) {
    // What is to be carried on needs no fact. A near miss of one is still told, unless it was asked for by its name.
    const bool carried = keep_ != nullptr && (keep_->has(name) || (keep_->all && !nearest_path(name)));
    if (!carried) add_fault(header, column, std::move(*problem));
    return;
  }
  NamedFact fact = std::get<NamedFact>(std::move(read));
  for (const OrderColumn& other : columns_) {
    if (other.to && other.to->field == fact.to.field && other.to->index == fact.to.index) {
      add_fault(header, column,
                {"csv.header",
                 "two columns for " + fact.to.field->path_at(fact.to.index) + ": " + text::quoted(other.header) +
                     " and " + text::quoted(name),
                 "keep one, or say in a map file which of them counts first"});
      return;
    }
  }
  columns_[column].to = fact.to;
  columns_[column].unit = std::move(fact.unit);
}

// --- members of orders in JSON ----------------------------------------------------------------------------------

OrderTable::OrderTable(const Catalog& catalog, const OrderMap* map, std::string file_name)
    : catalog_(&catalog), map_(map), file_name_(std::move(file_name)), members_(true) {
  if (map_ != nullptr) {
    for (const MappedColumn& mapped : map_->columns) {
      columns_.push_back({mapped.name, mapped.to, mapped.unit, &mapped, mapped.name});
      take_column(columns_.size() - 1);
    }
    for (const std::string& name : map_->id) {
      const auto same = std::find_if(columns_.begin(), columns_.end(),
                                     [&](const OrderColumn& column) { return same_name(column.header, name); });
      id_columns_.push_back(static_cast<std::size_t>(same - columns_.begin()));
      if (same == columns_.end()) columns_.push_back({name, std::nullopt, {}, nullptr, name});
    }
  }
  spellings_.resize(columns_.size());
  begin_facts();
}

std::size_t OrderTable::column_of_member(const std::string& name) {
  for (std::size_t i = 0; i < columns_.size(); ++i) {
    if (same_name(columns_[i].header, name)) return i;
  }
  if ((map_ != nullptr && map_->ignore_others) || columns_.size() == most_cells) return none;
  auto read = fact_named(name);
  auto* const fact = std::get_if<NamedFact>(&read);
  if (fact == nullptr) return none;
  columns_.push_back({name, fact->to, std::move(fact->unit), nullptr, name});
  spellings_.emplace_back();
  take_column(columns_.size() - 1);
  begin_facts();
  return columns_.size() - 1;
}

Problem OrderTable::not_a_fact(std::string_view name) const {
  auto read = fact_named(name);
  auto* const problem = std::get_if<Problem>(&read);
  if (problem == nullptr) return {"job.unknown-key", "more different members than an order may have", ""};
  problem->code = "job.unknown-key";
  problem->help += "; --keep carries a member on that is none";
  return std::move(*problem);
}

std::size_t OrderTable::second_of_a_fact(const std::vector<bool>& given) const {
  for (const Fact& fact : facts_) {
    if (fact.columns.size() < 2) continue;
    bool first = true;
    for (const std::size_t column : fact.columns) {
      if (!given[column] || columns_[column].mapped != nullptr) continue;
      if (!first) return column;
      first = false;
    }
  }
  return none;
}

std::size_t OrderTable::find_fact(FieldPath path) const {
  for (std::size_t i = 0; i < facts_.size(); ++i) {
    if (facts_[i].path.field == path.field && facts_[i].path.index == path.index) return i;
  }
  return none;
}

OrderTable::Fact& OrderTable::fact_of(FieldPath path) {
  const std::size_t known = find_fact(path);
  return known != none ? facts_[known] : facts_.emplace_back(Fact{path, {}, std::nullopt});
}

void OrderTable::take_column(std::size_t column) {
  const FieldPath path = *columns_[column].to;
  if (path.field->path == "id") id_columns_.push_back(column);
  else fact_of(path).columns.push_back(column);
}

void OrderTable::collect_facts() {
  // In the order of the map, which is the order in which columns for one fact count; then those it does not name.
  if (map_ != nullptr) {
    for (const MappedColumn& mapped : map_->columns) {
      for (std::size_t i = 0; i < columns_.size(); ++i) {
        if (columns_[i].mapped == &mapped) take_column(i);
      }
    }
  }
  for (std::size_t i = 0; i < columns_.size(); ++i) {
    if (columns_[i].to && columns_[i].mapped == nullptr) take_column(i);
  }
  // Messages come in the order of the file.
  std::stable_sort(facts_.begin(), facts_.end(),
                   [](const Fact& a, const Fact& b) { return a.columns.front() < b.columns.front(); });
  begin_facts();
}

// What the map says where no column does, and what every job must have.
void OrderTable::begin_facts() {
  if (map_ != nullptr) {
    for (const MapDefault& given : map_->defaults) fact_of(given.to).otherwise = given.value;
    for (const auto& [code, says] : map_->materials) {
      for (const MapDefault& given : says.also) (void)fact_of(given.to);
    }
    decimal_comma_ = map_->decimal_comma.value_or(decimal_comma_);
  }
  for (const JobField& field : job_fields()) {
    if (field.need == Need::always && !field.in_list()) (void)fact_of({&field, 0});
  }
  // Members come in another order for each thread, and their orders must not show it.
  if (members_) {
    std::sort(facts_.begin(), facts_.end(), [](const Fact& a, const Fact& b) {
      return std::pair(a.path.field, a.path.index) < std::pair(b.path.field, b.path.index);
    });
  }
  wall_ = none;
  elements_.clear();
  for (std::size_t i = 0; i < facts_.size(); ++i) {
    const FieldPath& path = facts_[i].path;
    if (path.field->path == "main.wall") wall_ = i;
    if (!path.field->in_list()) continue;
    auto element =
        std::find_if(elements_.begin(), elements_.end(), [&](const Element& one) { return one.index == path.index; });
    if (element == elements_.end()) element = elements_.insert(elements_.end(), Element{path.index, {}});
    element->facts.push_back(i);
  }
  outcomes_.resize(facts_.size());
}

// --- rows -------------------------------------------------------------------------------------------------------

Diagnostic OrderTable::at_cell(const CsvRecord& record, std::size_t column, Problem problem) const {
  const std::optional<FieldPath>& to = columns_[column].to;
  problem.message.insert(0, columns_[column].header + ": ");
  return SourceText(record.text, file_name_, record.line)
      .at(record.span_of(column), to ? pointer_of(to->field->path_at(to->index)) : "", std::move(problem));
}

// Of no cell in particular.
Diagnostic OrderTable::of_row(const CsvRecord& record, Problem problem) const {
  Diagnostic diagnostic;
  diagnostic.code = problem.code;
  diagnostic.file = file_name_;
  diagnostic.line = record.line;
  diagnostic.column = 1;
  diagnostic.message = std::move(problem.message);
  diagnostic.help = std::move(problem.help);
  return diagnostic;
}

void OrderTable::read(const CsvRecord& record, OrderRecord& order) {
  if (begin(record, order)) read_facts(record, order);
}

bool OrderTable::begin(const CsvRecord& record, OrderRecord& order) {
  order.row = record.row;
  order.line = record.line;
  order.id.clear();
  order.job.reset();
  order.diagnostics.clear();
  order.remarks.clear();
  if (!faults_.empty()) {
    order.diagnostics.push_back(of_row(record, {"csv.header", "the header of the table cannot be used", ""}));
    return false;
  }
  order.kept.clear();
  if (!is_whole(record, order)) return false;  // nor is it known then which of its cells is the id
  if (keep_ != nullptr) note_kept(record, order);
  read_id(record, order);
  return true;
}

// Each cell behind its column's number and before a byte that no text has. What a name says bears on nothing, but a cell
// that is rejected makes a remark.
std::optional<std::string_view> OrderTable::facts(const CsvRecord& record) {
  static_assert(most_cells <= 0xFFFF);
  if (record.not_text) return std::nullopt;
  written_.clear();
  for (std::size_t i = 0; i < columns_.size(); ++i) {
    if (!columns_[i].to) continue;
    const std::string_view cell = record.cell(i);
    if (cell.empty()) continue;
    if (columns_[i].to->field->names_order) {
      if (!is_surely_text(cell) && read_cell(i, cell).says == Says::rejected) return std::nullopt;
      continue;
    }
    written_ += static_cast<char>(i & 0xFF);
    written_ += static_cast<char>(i >> 8);
    written_ += cell;
    written_ += '\0';
  }
  return written_;
}

void OrderTable::read_facts(const CsvRecord& record, OrderRecord& order) {
  draft_ = {};
  also_ = nullptr;
  for (std::size_t fact = 0; fact < facts_.size(); ++fact) read_fact(record, fact);
  apply_code();
  check_wall();
  report_facts(record, order);
  note_unread();
  check_machine(record, order);
  if (!order.diagnostics.empty()) return;
  drop_empty_elements();
  draft_.job.id = order.id;
  draft_.add_machine();
  order.job.emplace(std::move(draft_.job));  // a job is large: it is moved once
}

void OrderTable::note_kept(const CsvRecord& record, OrderRecord& order) const {
  for (const std::size_t column : kept_columns_) {
    order.kept.push_back({columns_[column].name, record.cell(column), false, true});
  }
}

// Columns of "id" in the map are joined; of several columns for id the first that says anything counts.
void OrderTable::read_id(const CsvRecord& record, OrderRecord& order) {
  constexpr std::size_t longest_id = 300;
  const bool joined = map_ != nullptr && !map_->id.empty();
  for (const std::size_t column : id_columns_) {
    if (column >= record.cells.size()) return;
    const std::string_view cell = trimmed(record.cell(column));
    if (cell.empty()) continue;
    const std::string line = on_one_line(cell);
    if (line.size() > longest_id || has_control(line) || (record.not_text && first_not_utf8(line))) {
      order.remarks.push_back(
          at_cell(record, column, {"csv.encoding", "cannot be the id of an order", "one short line of plain text"}));
      continue;
    }
    if (!order.id.empty()) order.id += '-';
    order.id += line;
    if (!joined) return;
  }
}

bool OrderTable::is_whole(const CsvRecord& record, OrderRecord& order) const {
  if (record.fault) {
    order.diagnostics.push_back(
        SourceText(record.text, file_name_, record.line).at(record.fault->span, "", record.fault->problem));
    return false;
  }
  const std::size_t found = record.cells.size();
  const std::size_t wanted = columns_.size();
  bool spare_cells_empty = true;
  for (std::size_t i = wanted; i < found; ++i) spare_cells_empty = spare_cells_empty && trimmed(record.cell(i)).empty();
  if (found >= wanted && spare_cells_empty) return true;
  const std::size_t shown = std::min(found, wanted + 1) - 1;
  Diagnostic fault =
      SourceText(record.text, file_name_, record.line)
          .at(record.span_of(shown), "",
              {"csv.ragged", "the row has " + std::to_string(found) + " cells, the header " + std::to_string(wanted),
               found > wanted ? "a cell with a comma in it stands in double quotes"
                              : "perhaps the file is cut off, or a quote or a cell is missing"});
  order.diagnostics.push_back(std::move(fault));
  return false;
}

void OrderTable::read_fact(const CsvRecord& record, std::size_t number) {
  const Fact& fact = facts_[number];
  Outcome& outcome = outcomes_[number];
  outcome.says = Says::nothing;
  outcome.column = none;
  for (const std::size_t column : fact.columns) {
    const std::string_view cell = record.cell(column);
    if (record.not_text && (cell.find('\0') != std::string_view::npos || first_not_utf8(cell))) {
      outcome = {Says::rejected, column, {"csv.encoding", "the cell is not UTF-8 text", "save the table as UTF-8"}};
      return;
    }
    const CellReading& reading = read_cell(column, cell);
    if (reading.says == Says::nothing) continue;
    outcome.says = reading.says;
    outcome.column = column;
    if (reading.says == Says::value) fact.path.field->store(draft_, fact.path.index, reading.value);
    else outcome.problem = reading.problem;
    if (reading.also != nullptr) also_ = reading.also;
    return;
  }
  if (!fact.otherwise) return;
  outcome.says = Says::value;
  fact.path.field->store(draft_, fact.path.index, *fact.otherwise);
}

// What a code says beside the material stands where no column says anything, before what the map has for all orders.
void OrderTable::apply_code() {
  if (also_ == nullptr) return;
  for (const MapDefault& fact : *also_) {
    Outcome& outcome = outcomes_[find_fact(fact.to)];
    if (outcome.column != none) continue;
    outcome.says = Says::value;
    fact.to.field->store(draft_, fact.to.index, fact.value);
  }
}

// A column for the wall often holds the dimension ratio of plastic pipe: 13.5, 32.5. The outside diameter is not known
// here; that of the smallest pipes exceeds the nominal size by up to half an inch. No plastic main of 4 in or more has
// a wall of a fifth of its diameter.
void OrderTable::check_wall() {
  if (wall_ == none || outcomes_[wall_].column == none || !draft_.job.main.wall || !draft_.job.main.size) return;
  MainFacts& main = draft_.job.main;
  const double size = main.size->number();
  const Length across = main.od.value_or((size + 0.5) * units::inch);
  const bool thick_plastic = main.material && is_plastic(*main.material) && size >= 4.0 && 5.0 * *main.wall > across;
  if (2.0 * *main.wall < across && !thick_plastic) return;
  outcomes_[wall_].says = Says::rejected;
  outcomes_[wall_].problem = {"order.not-a-wall",
                              '"' + format_measure(Measure(*main.wall), UnitSystem::us) + "\" cannot be the wall of " +
                                  main.size->label() + " in pipe",
                              std::string(perhaps_ratio)};
  main.wall.reset();
}

bool OrderTable::element_given(std::size_t index) const {
  const auto element =
      std::find_if(elements_.begin(), elements_.end(), [&](const Element& one) { return one.index == index; });
  return element != elements_.end() && std::any_of(element->facts.begin(), element->facts.end(), [&](std::size_t fact) {
           return outcomes_[fact].says != Says::nothing;
         });
}

void OrderTable::report_facts(const CsvRecord& record, OrderRecord& order) {
  bool anything = false;
  facts_said_ = false;
  for (std::size_t i = 0; i < facts_.size(); ++i) {
    if (outcomes_[i].column == none) continue;
    anything = true;
    facts_said_ = facts_said_ || !facts_[i].path.field->names_order;
  }
  for (std::size_t i = 0; i < facts_.size(); ++i) {
    const Fact& fact = facts_[i];
    const JobField& field = *fact.path.field;
    const Outcome& outcome = outcomes_[i];
    if (outcome.says == Says::value) continue;
    const bool required = field.need == Need::always && (!field.in_list() || element_given(fact.path.index));
    if (outcome.says == Says::rejected) {
      Diagnostic told = at_cell(record, outcome.column, outcome.problem);
      if (!required) told.message += "; planned without " + field.path_at(fact.path.index);
      (required ? order.diagnostics : order.remarks).push_back(std::move(told));
    } else if (required && anything) {
      order.diagnostics.push_back(missing(record, fact));
    }
  }
  if (!anything) {
    order.diagnostics.push_back(of_row(record, {"job.missing", "the row says nothing that is read", ""}));
  }
  // What is on the main and cannot be told apart may not be left out: both what it is and where must be known.
  for (const Element& element : elements_) {
    const std::size_t index = element.index;
    if (!element_given(index)) continue;
    for (const JobField& field : job_fields()) {
      if (field.need != Need::always || !field.in_list() || find_fact({&field, index}) != none) continue;
      order.diagnostics.push_back(missing(record, {{&field, index}, {}, std::nullopt}));
    }
  }
}

// A fact that somebody wrote down may be what forbids the tap: the plan holds until it is read. What only names the order
// decides nothing, and what the map file itself bounds away is known to say nothing.
void OrderTable::note_unread() {
  for (std::size_t i = 0; i < facts_.size(); ++i) {
    if (outcomes_[i].says != Says::rejected) continue;
    const std::string_view path = facts_[i].path.field->path;
    const bool bears_on_plan = path.find('.') != std::string_view::npos;
    if (!bears_on_plan) continue;
    if (outcomes_[i].problem.code != "order.out-of-map-range") draft_.job.unread.push_back(path);
  }
}

Diagnostic OrderTable::missing(const CsvRecord& record, const Fact& fact) const {
  const JobField& field = *fact.path.field;
  const std::string path = field.path_at(fact.path.index);
  Problem problem{"job.missing", path + " is missing", std::string(field.help) + ": " + allowed_text(field, *catalog_)};
  const bool held = std::any_of(fact.columns.begin(), fact.columns.end(),
                                [&](std::size_t column) { return !members_ || record.cells[column].end > 0; });
  if (!held) {
    problem.message += members_ ? ": no member says it" : ": no column holds it";
    problem.help += "\nwhere it is the same for all orders, give it once in the map file under \"defaults\"";
    Diagnostic told = of_row(record, std::move(problem));
    told.pointer = pointer_of(path);
    return told;
  }
  std::string found;
  std::size_t place = none;
  for (const std::size_t column : fact.columns) {
    if (members_ && record.cells[column].end == 0) continue;
    if (place == none) place = column;
    const std::string_view cell = record.cell(column);
    if (!found.empty()) found += ", ";
    found += columns_[column].header;
    found += trimmed(cell).empty() ? " is empty" : " says " + text::quoted(cell) + ", which stands for not known";
  }
  problem.message += ": " + found;
  Diagnostic told =
      SourceText(record.text, file_name_, record.line).at(record.span_of(place), pointer_of(path), std::move(problem));
  return told;
}

// A machine given by its own figures needs those that every check rests on.
void OrderTable::check_machine(const CsvRecord& record, OrderRecord& order) const {
  if (!draft_.machine) return;
  const MachineProfile& machine = *draft_.machine;
  for (const JobField& field : job_fields()) {
    if (field.need != Need::machine_figures) continue;
    const std::size_t fact = find_fact({&field, 0});
    if (fact == none) order.diagnostics.push_back(missing(record, {{&field, 0}, {}, std::nullopt}));
    else if (outcomes_[fact].says == Says::nothing) order.diagnostics.push_back(missing(record, facts_[fact]));
    else if (outcomes_[fact].says == Says::rejected)
      order.diagnostics.push_back(at_cell(record, outcomes_[fact].column, outcomes_[fact].problem));
  }
  const auto contradiction = [&](std::string message) {
    order.diagnostics.push_back(of_row(record, {"job.contradiction", std::move(message), ""}));
  };
  if (!draft_.job.machine.profile.empty()) contradiction("both a machine of the catalog and a machine's own figures");
  if (machine.smallest_tap > machine.largest_tap) contradiction("the machine's smallest tap is above its largest");
  if (machine.saddle_od_from && machine.saddle_od_to && *machine.saddle_od_from > *machine.saddle_od_to) {
    contradiction("the machine's least outside diameter is above its greatest");
  }
}

void OrderTable::drop_empty_elements() {
  if (!draft_.job.nearby) return;
  std::vector<Nearby>& nearby = *draft_.job.nearby;
  std::size_t kept = 0;
  for (std::size_t index = 0; index < nearby.size(); ++index) {
    if (!element_given(index)) continue;
    if (kept != index) nearby[kept] = nearby[index];
    ++kept;
  }
  nearby.resize(kept);
  if (nearby.empty()) draft_.job.nearby.reset();
}

}  // namespace mainbore::io
