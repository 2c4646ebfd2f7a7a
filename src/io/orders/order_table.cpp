#include "io/orders/order_table.hpp"

#include <algorithm>
#include <array>
#include <utility>

#include "catalog/spelling.hpp"
#include "io/text/nearest.hpp"
#include "io/text/text_scan.hpp"
#include "text/foreign.hpp"

namespace mainbore::io {
namespace {

using Says = CellReading::Says;

constexpr std::size_t most_spellings = 4096;  // remembered of one column
constexpr std::size_t longest_spelling = 64;

// What exports write for a fact that is not known, as cell_key() has it.
constexpr std::string_view perhaps_ratio =
    "perhaps it is the dimension ratio: that belongs in main.class, as \"DR 13.5\"";

bool in_list(const JobField& field) { return field.path.find("[]") != std::string_view::npos; }
bool is_free_text(const JobField& field) { return field.type == FieldType::text || field.type == FieldType::lines; }

bool has_word(const JobField& field, std::string_view key) {
  if (field.type != FieldType::choice) return false;
  const std::string plain = plain_name(key);
  return std::any_of(field.choice->names.begin(), field.choice->names.end(),
                     [&](std::string_view name) { return plain_name(name) == plain; });
}

// "main.size" -> "/main/size", "nearby[0].what" -> "/nearby/0/what".
std::string pointer_of(const std::string& path) {
  std::string pointer = "/";
  for (const char c : path) {
    if (c == '.' || c == '[') pointer += '/';
    else if (c != ']') pointer += c;
  }
  return pointer;
}

// --- cells ------------------------------------------------------------------------------------------------------

CellReading value_of(FieldValue value) { return {Says::value, std::move(value), {}}; }
CellReading reject(Problem problem) { return {Says::rejected, {}, std::move(problem)}; }

// The year of a date, whatever the order of day, month and year: its first group of four digits. A second group that
// could be a year as well leaves doubt; the offset of a time zone does not.
std::variant<std::string, Problem> year_in(std::string_view date) {
  std::string year;
  for (std::size_t at = 0; at < date.size();) {
    if (!is_digit(date[at])) {
      ++at;
      continue;
    }
    const std::size_t begin = at;
    while (at < date.size() && is_digit(date[at])) ++at;
    if (at - begin != 4) continue;
    const std::string group(date.substr(begin, 4));
    if (year.empty()) {
      year = group;
    } else if (group != year && group >= "1800" && group <= "2100") {
      return Problem{"order.year", quoted(date) + " has two years in it", "one year in four digits"};
    }
  }
  if (year.empty())
    return Problem{"order.year", quoted(date) + " has no year in four digits", "such as 1961 or 6/1/1961"};
  return year;
}

// Marks that look alike, as a keyboard has them: no-break spaces, curled quotes for feet and inches, fractions of one
// character ("1\xC2\xBD" is "1-1/2").
std::string plain_cell(std::string_view cell) {
  struct Alike {
    std::string_view mark;
    std::string_view plain;
  };
  constexpr std::array<Alike, 29> alikes = {{
      {"\xC2\xA0", " "},       {"\xE2\x80\xAF", " "},   {"\xE2\x80\x87", " "},   {"\xE2\x80\x89", " "},
      {"\xE3\x80\x80", " "},   {"\xE2\x80\x9C", "\""},  {"\xE2\x80\x9D", "\""},  {"\xE2\x80\xB3", "\""},
      {"\xE2\x80\x98", "'"},   {"\xE2\x80\x99", "'"},   {"\xE2\x80\xB2", "'"},   {"\xE2\x80\x90", "-"},
      {"\xE2\x80\x91", "-"},   {"\xE2\x80\x92", "-"},   {"\xE2\x80\x93", "-"},   {"\xE2\x88\x92", "-"},
      {"\xE2\x81\x84", "/"},   {"\xE2\x80\x8B", ""},    {"\xEF\xBB\xBF", ""},    {"\xC2\xBC", "1/4"},
      {"\xC2\xBD", "1/2"},     {"\xC2\xBE", "3/4"},     {"\xE2\x85\x9B", "1/8"}, {"\xE2\x85\x9C", "3/8"},
      {"\xE2\x85\x9D", "5/8"}, {"\xE2\x85\x9E", "7/8"}, {"\xE2\x85\x93", "1/3"}, {"\xE2\x85\x94", "2/3"},
      {"\xC2\xB4", "'"},
  }};
  std::string plain;
  if (std::all_of(cell.begin(), cell.end(), [](char c) { return static_cast<unsigned char>(c) < 0x80; })) {
    plain = cell;
    return plain;
  }
  for (std::size_t at = 0; at < cell.size();) {
    const std::string_view rest = cell.substr(at);
    const auto* const alike =
        std::find_if(alikes.begin(), alikes.end(), [&](const Alike& one) { return rest.starts_with(one.mark); });
    if (alike == alikes.end()) {
      plain += rest.front();
      ++at;
      continue;
    }
    at += alike->mark.size();
    if (alike->plain.find('/') == 1) {  // behind a whole number
      while (plain.ends_with(' ')) plain.pop_back();
      if (!plain.empty() && is_digit(plain.back())) plain += '-';
    }
    plain += alike->plain;
  }
  return plain;
}

constexpr bool is_letter(char c) { return (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z'); }

// A number as it is read: without the point of an abbreviation ("8 in."), and with a decimal point.
std::variant<std::string, Problem> number_text(std::string_view written, bool decimal_comma) {
  std::string text;
  int commas = 0;
  for (std::size_t at = 0; at < written.size(); ++at) {
    const char c = written[at];
    const char before = at > 0 ? written[at - 1] : '\0';
    const bool between_digits = is_digit(before) && at + 1 < written.size() && is_digit(written[at + 1]);
    if (c == '.' && is_letter(before)) continue;
    if (decimal_comma && c == '.' && between_digits) {
      return Problem{"order.decimal", quoted(written) + " has a point, and the table has decimal commas",
                     "such as 8,5"};
    }
    if (decimal_comma && c == ',' && between_digits) {
      if (++commas > 1) return Problem{"order.decimal", quoted(written) + " has two commas in it", "such as 8,5"};
      text += '.';
      continue;
    }
    text += c;
  }
  return text;
}

// "1961.0" is how some programs export whole numbers.
std::string_view without_zeros(std::string_view number) {
  const std::size_t point = number.find('.');
  if (point == std::string_view::npos || point == 0 || point + 1 == number.size()) return number;
  return number.find_first_not_of('0', point + 1) == std::string_view::npos ? number.substr(0, point) : number;
}

// Line breaks inside a cell for one line of text: an address written in two lines.
std::string on_one_line(std::string_view text) {
  std::string line;
  for (const char c : text) {
    const bool space = c == '\r' || c == '\n' || c == '\t';
    if (!space) line += c;
    else if (!line.empty() && line.back() != ' ') line += ' ';
  }
  return line;
}

bool has_control(std::string_view text) {
  return std::any_of(text.begin(), text.end(),
                     [](char c) { return static_cast<unsigned char>(c) < 0x20 || c == 0x7F; });
}

// --- names of columns -------------------------------------------------------------------------------------------

struct NamedFact {
  FieldPath to;
  std::string unit;
};

std::optional<FieldPath> path_named(std::string_view name) {
  std::string plain = plain_name(name);
  std::erase_if(plain, [](char c) { return c == '[' || c == ']'; });
  std::optional<FieldPath> to;
  for (const JobField& field : job_fields()) {
    const std::size_t brackets = field.path.find("[]");
    if (brackets == std::string_view::npos) {
      if (plain == plain_name(field.path)) to = FieldPath{&field, 0};
      continue;
    }
    const std::string before = plain_name(field.path.substr(0, brackets));
    const std::string behind = plain_name(field.path.substr(brackets + 2));
    if (plain.size() <= before.size() + behind.size() || !plain.starts_with(before) || !plain.ends_with(behind))
      continue;
    const std::string digits = plain.substr(before.size(), plain.size() - before.size() - behind.size());
    const auto found = find_field(std::string(field.path.substr(0, brackets)) + '[' + digits + ']' +
                                  std::string(field.path.substr(brackets + 2)));
    if (found && digits.find_first_not_of("0123456789") == std::string::npos) to = found;
  }
  return to;
}

std::optional<std::string_view> nearest_path(std::string_view name) {
  std::vector<std::string_view> paths;
  for (const JobField& field : job_fields()) paths.push_back(field.path);
  return nearest(name, paths);
}

// "Main Pressure [psi]" is main.pressure in psi; "nearby[0].what" or "nearby_0_what" the first thing nearby.
std::variant<NamedFact, Problem> fact_named(std::string_view header) {
  std::string_view name = header;
  std::string_view unit;
  if (name.ends_with(']') || name.ends_with(')')) {
    const std::size_t open = name.find_last_of("[(");
    if (open != std::string_view::npos && open > 0) {
      unit = trimmed(name.substr(open + 1, name.size() - open - 2));
      name = trimmed(name.substr(0, open));
    }
  }
  const std::optional<FieldPath> to = path_named(name);
  if (!to) {
    Problem problem{"csv.header", quoted(header) + " is not a fact of a job", ""};
    if (const auto near = nearest_path(name)) problem.help = "did you mean " + std::string(*near) + "?  ";
    problem.help += "a map file says which column of your own export is which fact";
    return problem;
  }
  const JobField& field = *to->field;
  if (!unit.empty()) {
    const bool measured = field.type == FieldType::quantity || field.type == FieldType::size;
    if (!measured || !parse_measure(1.0, unit, field.kind)) {
      return Problem{"csv.header", quoted(unit) + " is not a unit of " + std::string(field.path),
                     measured ? expected_text(field.kind) : "it has no unit"};
    }
  }
  return NamedFact{*to, std::string(unit)};
}

}  // namespace

bool OrderTable::says_nothing(const Column& column, std::string_view key) const {
  if (key.empty()) return true;
  const auto listed_in = [&](const std::vector<std::string>& words) {
    return std::find(words.begin(), words.end(), key) != words.end();
  };
  if (column.mapped != nullptr && listed_in(column.mapped->missing)) return true;
  if (map_ != nullptr && listed_in(map_->missing)) return true;
  const JobField& field = *column.to->field;
  if (is_missing_mark(key)) return !has_word(field, key);
  const bool number =
      field.type == FieldType::quantity || field.type == FieldType::size || field.type == FieldType::whole;
  if (!number) return false;
  if (key == "-999" || key == "-9999") return true;
  // Nothing has the size zero, and exports write it where a cover or a surge was never filled in. A line pressure of zero
  // is a statement, and is answered.
  const bool filler = field.path == "main.cover" || field.path == "main.surge" || field.path == "main.occasional_surge";
  return key == "0" && (filler || (field.least.base() > 0 && field.kind != Kind::pressure));
}

CellReading OrderTable::understand_material(const Column& column, std::string_view cell) const {
  const auto code_of = [&](std::string_view text) -> const MaterialCode* {
    if (map_ == nullptr) return nullptr;
    const auto own = map_->materials.find(normal_spelling(text));
    return own == map_->materials.end() ? nullptr : &own->second;
  };
  const auto known = [&](std::string_view text) -> std::optional<Material> {
    if (const MaterialCode* const code = code_of(text)) return code->material;
    return catalog_->read_material(text).material;
  };
  if (const MaterialCode* const code = code_of(cell)) {
    CellReading reading = value_of(code->material);
    if (!code->also.empty()) reading.also = &code->also;
    return reading;
  }
  if (const auto material = known(cell)) return value_of(*material);
  const std::string_view why_not = catalog_->read_material(cell).why_not;

  std::vector<Material> named;
  const auto note = [&](std::optional<Material> material) {
    if (material && std::find(named.begin(), named.end(), *material) == named.end()) named.push_back(*material);
    return material.has_value();
  };
  const auto parts = [](std::string_view text, std::string_view separators, auto visit) {
    for (std::size_t at = 0; at < text.size();) {
      const std::size_t end = std::min(text.find_first_of(separators, at), text.size());
      if (end > at) visit(text.substr(at, end - at));
      at = end + 1;
    }
  };
  parts(cell, "/&+,;()", [&](std::string_view phrase) {
    if (!note(known(phrase))) parts(phrase, " \t", [&](std::string_view word) { (void)note(known(word)); });
  });
  if (why_not.empty() && named.size() > 1) {
    return reject({"order.two-materials",
                   quoted(cell) + " names two materials: " + std::string(name_of(named[0])) + " and " +
                       std::string(name_of(named[1])),
                   "ask which of the two will be tapped, and write that one"});
  }
  auto read = read_value(*column.to->field, cell, *catalog_);
  Problem problem = std::get<Problem>(std::move(read));
  problem.help += "\na code of your own is written down once, in the map file under \"materials\"";
  return reject(std::move(problem));
}

CellReading OrderTable::understand(const Column& column, std::string_view cell) const {
  const JobField& field = *column.to->field;
  const bool free_text = is_free_text(field);
  const std::string plain = free_text ? std::string() : plain_cell(cell);
  std::string_view written = trimmed(free_text ? cell : std::string_view(plain));
  if (free_text && text::is_blank(written)) written = {};
  std::string number;
  if (field.type == FieldType::quantity || field.type == FieldType::size || field.type == FieldType::whole) {
    auto read = number_text(written, decimal_comma_ && field.path != "main.installed");
    if (auto* problem = std::get_if<Problem>(&read)) return reject(std::move(*problem));
    number = std::get<std::string>(std::move(read));
    written = number;
  }
  const bool may_be_key = written.size() <= longest_spelling;  // longer ones are no words of a map
  const std::string key = may_be_key || written.empty() ? cell_key(written) : std::string(written);
  const std::string as_written = number.empty() ? key : cell_key(plain);  // as the map may write it: "n.a."
  if (column.mapped != nullptr) {
    for (const auto& [word, value] : column.mapped->values) {
      if (word == key || word == as_written) return value_of(value);
    }
  }
  if (says_nothing(column, key) || says_nothing(column, as_written)) return {};
  if (field.type == FieldType::material) return understand_material(column, written);

  std::string text;
  switch (field.type) {
    case FieldType::quantity:
    case FieldType::size:
      text = with_unit(written, column.unit);
      break;
    case FieldType::text:
      text = on_one_line(written);
      break;
    case FieldType::flag:
      text = key == "y" ? "yes" : key == "n" ? "no" : key;
      break;
    case FieldType::whole: {
      text = without_zeros(written);
      const bool digits = text.find_first_not_of("0123456789") == std::string::npos;
      if (field.path == "main.installed" && !digits) {
        auto year = year_in(written);
        if (auto* problem = std::get_if<Problem>(&year)) return reject(std::move(*problem));
        text = std::get<std::string>(std::move(year));
      }
      break;
    }
    default:
      text = written;
      break;
  }
  auto read = read_value(field, text, *catalog_);
  if (auto* problem = std::get_if<Problem>(&read)) {
    if (problem->code == "job.no-unit") {
      const std::string_view unit =
          field.type == FieldType::size ? "in" : shown(Measure(0.0, field.kind), UnitSystem::us).unit;
      problem->help += "\nor name the unit once: in the header, as " + std::string(field.path) + " [" +
                       std::string(unit) + "], or in the map file under \"unit\"";
    }
    if (problem->code == "job.out-of-range" && field.path == "main.wall")
      problem->help += '\n' + std::string(perhaps_ratio);
    return reject(std::move(*problem));
  }
  FieldValue value = std::get<FieldValue>(std::move(read));
  if (column.mapped != nullptr) {
    const auto of = number_in(value);
    const auto beyond = [&](const std::optional<Bound>& bound, bool below) {
      return bound && of && (below ? *of < bound->value : *of > bound->value);
    };
    const bool below = beyond(column.mapped->least, true);
    if (below || beyond(column.mapped->greatest, false)) {
      const Bound& bound = below ? *column.mapped->least : *column.mapped->greatest;
      return reject({"order.out-of-map-range",
                     quoted(text) + (below ? " is below " : " is above ") + bound.text +
                         (below ? ", the least" : ", the greatest") + " the map file allows",
                     "a slip, a filler for not known, or another unit than the map file says"});
    }
  }
  return value_of(std::move(value));
}

const CellReading& OrderTable::read_cell(std::size_t column, std::string_view cell) {
  static const CellReading nothing;
  if (cell.empty()) return nothing;
  if (is_free_text(*columns_[column].to->field) || cell.size() > longest_spelling) {
    unremembered_ = understand(columns_[column], cell);
    return unremembered_;
  }
  Spellings& spellings = spellings_[column];
  if (const auto known = spellings.find(cell); known != spellings.end()) return known->second;
  if (spellings.size() == most_spellings) {
    unremembered_ = understand(columns_[column], cell);
    return unremembered_;
  }
  return spellings.emplace(std::string(cell), understand(columns_[column], cell)).first->second;
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
    Column column;
    column.header = on_one_line(trimmed(header.cell(i)));
    if (has_control(column.header) || first_not_utf8(column.header)) {  // as it may be shown
      const std::string shown = quoted(column.header);
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
      std::any_of(columns_.begin(), columns_.end(), [](const Column& column) { return column.to.has_value(); });
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
  for (const Column& column : columns_) names.push_back(column.name);
  for (const std::string& name : keep_->names) {
    const auto found = std::find_if(names.begin(), names.end(), [&](std::string_view header_name) {
      return plain_name(header_name) == plain_name(name);
    });
    if (found != names.end()) {
      kept_columns_.push_back(static_cast<std::size_t>(found - names.begin()));
      continue;
    }
    Problem problem{"csv.no-column", "--keep names a column " + quoted(name) + ", which the table does not have", ""};
    if (const auto near = nearest(name, names)) problem.help = "did you mean \"" + std::string(*near) + "\"?";
    faults_.push_back(of_row(header, std::move(problem)));
  }
}

// Of columns with one header the second is SIZE#2.
void OrderTable::name_twins() {
  std::unordered_map<std::string, int> seen;
  for (Column& column : columns_) {
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
                      "the map file names a column " + quoted(name) + ", which the table does not have", ""};
      if (const auto near = nearest(name, names)) problem.help = "did you mean \"" + std::string(*near) + "\"?";
      if (faults_.size() < 50) faults_.push_back(of_row(header, std::move(problem)));
      return std::nullopt;
    }
    if (found->second.size() > 1) {
      add_fault(header, found->second[1],
                {"csv.header", quoted(name) + " is the name of two columns",
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
  for (const Column& other : columns_) {
    if (other.to && other.to->field == fact.to.field && other.to->index == fact.to.index) {
      add_fault(header, column,
                {"csv.header",
                 "two columns for " + fact.to.field->path_at(fact.to.index) + ": " + quoted(other.header) + " and " +
                     quoted(name),
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
      const auto same = std::find_if(columns_.begin(), columns_.end(), [&](const Column& column) {
        return plain_name(column.header) == plain_name(name);
      });
      id_columns_.push_back(static_cast<std::size_t>(same - columns_.begin()));
      if (same == columns_.end()) columns_.push_back({name, std::nullopt, {}, nullptr, name});
    }
  }
  spellings_.resize(columns_.size());
  begin_facts();
}

std::size_t OrderTable::column_of_member(const std::string& name) {
  const std::string plain = plain_name(name);
  for (std::size_t i = 0; i < columns_.size(); ++i) {
    if (plain_name(columns_[i].header) == plain) return i;
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
    if (field.need == Need::always && !in_list(field)) (void)fact_of({&field, 0});
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
    if (!in_list(*path.field)) continue;
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
  order.row = record.row;
  order.line = record.line;
  order.id.clear();
  order.job.reset();
  order.diagnostics.clear();
  order.remarks.clear();
  if (!faults_.empty()) {
    order.diagnostics.push_back(of_row(record, {"csv.header", "the header of the table cannot be used", ""}));
    return;
  }
  order.kept.clear();
  draft_ = {};
  if (!is_whole(record, order)) return;  // nor is it known then which of its cells is the id
  if (keep_ != nullptr) note_kept(record, order);
  read_id(record, order);
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
  order.job = std::move(draft_).finish();
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

void OrderTable::report_facts(const CsvRecord& record, OrderRecord& order) const {
  bool anything = false;
  for (const Outcome& outcome : outcomes_) anything = anything || outcome.column != none;
  for (std::size_t i = 0; i < facts_.size(); ++i) {
    const Fact& fact = facts_[i];
    const JobField& field = *fact.path.field;
    const Outcome& outcome = outcomes_[i];
    if (outcome.says == Says::value) continue;
    const bool required = field.need == Need::always && (!in_list(field) || element_given(fact.path.index));
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
      if (field.need != Need::always || !in_list(field) || find_fact({&field, index}) != none) continue;
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
    found += trimmed(cell).empty() ? " is empty" : " says " + quoted(cell) + ", which stands for not known";
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
  if (!draft_.job.machine.profile.empty()) contradiction("both a machine of the catalogue and a machine's own figures");
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
