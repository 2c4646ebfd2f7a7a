#include "io/orders/order_cell.hpp"

#include <algorithm>
#include <array>
#include <utility>
#include <variant>

#include "catalog/spelling.hpp"
#include "io/orders/day_count.hpp"
#include "io/text/nearest.hpp"
#include "io/text/text_scan.hpp"
#include "io/text/word_scan.hpp"
#include "text/foreign.hpp"

namespace mainbore::io {
namespace {

using Says = CellReading::Says;

bool has_word(const JobField& field, std::string_view key) {
  if (field.type != FieldType::choice) return false;
  return std::any_of(field.choice->names.begin(), field.choice->names.end(),
                     [&](std::string_view name) { return same_name(name, key); });
}

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
      return Problem{"order.year", text::quoted(date) + " has two years in it", "one year in four digits"};
    }
  }
  if (year.empty())
    return Problem{"order.year", text::quoted(date) + " has no year in four digits", "such as 1961 or 6/1/1961"};
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
      return Problem{"order.decimal", text::quoted(written) + " has a point, and the table has decimal commas",
                     "such as 8,5"};
    }
    if (decimal_comma && c == ',' && between_digits) {
      if (++commas > 1) return Problem{"order.decimal", text::quoted(written) + " has two commas in it", "such as 8,5"};
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

// Whether a cell says that the fact is not known.
bool says_nothing(const CellContext& context, const OrderColumn& column, std::string_view key) {
  if (key.empty()) return true;
  const auto listed_in = [&](const std::vector<std::string>& words) {
    return std::find(words.begin(), words.end(), key) != words.end();
  };
  if (column.mapped != nullptr && listed_in(column.mapped->missing)) return true;
  if (context.map != nullptr && listed_in(context.map->missing)) return true;
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

// A date as a count is the day it counts to; one that nobody has called a count is left alone.
std::optional<CellReading> understand_count(const OrderColumn& column, std::string_view cell, std::string& day) {
  if (!column.unit.empty()) {
    day = day_of_count(cell, column.unit).value_or(std::string());
  } else if (looks_like_count(cell)) {
    return reject({"order.day-count", text::quoted(cell) + " may be a count of milliseconds since 1970",
                   "say so in the map file: \"unit\": \"ms\""});
  }
  return std::nullopt;
}

CellReading understand_material(const CellContext& context, const OrderColumn& column, std::string_view cell) {
  const auto code_of = [&](std::string_view text) -> const MaterialCode* {
    if (context.map == nullptr) return nullptr;
    const auto own = context.map->materials.find(normal_spelling(text));
    return own == context.map->materials.end() ? nullptr : &own->second;
  };
  const auto known = [&](std::string_view text) -> std::optional<Material> {
    if (const MaterialCode* const code = code_of(text)) return code->material;
    return context.catalog.read_material(text).material;
  };
  if (const MaterialCode* const code = code_of(cell)) {
    CellReading reading = value_of(code->material);
    if (!code->also.empty()) reading.also = &code->also;
    return reading;
  }
  if (const auto material = known(cell)) return value_of(*material);
  const std::string_view why_not = context.catalog.read_material(cell).why_not;

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
                   text::quoted(cell) + " names two materials: " + std::string(name_of(named[0])) + " and " +
                       std::string(name_of(named[1])),
                   "ask which of the two will be tapped, and write that one"});
  }
  auto read = read_value(*column.to->field, cell, context.catalog);
  Problem problem = std::get<Problem>(std::move(read));
  problem.help += "\na code of your own is written down once, in the map file under \"materials\"";
  return reject(std::move(problem));
}

}  // namespace

std::string on_one_line(std::string_view text) {
  if (!any_byte(text, below_space)) return std::string(text);
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

CellReading understand_cell(const CellContext& context, const OrderColumn& column, std::string_view cell) {
  const JobField& field = *column.to->field;
  const bool free_text = is_free_text(field);
  const std::string plain = free_text ? std::string() : plain_cell(cell);
  std::string_view written = trimmed(free_text ? cell : std::string_view(plain));
  if (free_text && text::is_blank(written)) written = {};
  std::string number;
  if (field.type == FieldType::quantity || field.type == FieldType::size || field.type == FieldType::whole) {
    auto read = number_text(written, context.decimal_comma && field.path != "main.installed");
    if (auto* problem = std::get_if<Problem>(&read)) return reject(std::move(*problem));
    number = std::get<std::string>(std::move(read));
    written = number;
  }
  // Longer ones are no words of a map; without one there are but the marks for what is not known.
  const bool own_words = column.mapped != nullptr || context.map != nullptr;
  const bool may_be_key = written.size() <= (own_words || !free_text ? longest_spelling : longest_missing_mark);
  const std::string key = may_be_key ? cell_key(written) : std::string(written);
  const std::string before = number.empty() ? std::string() : cell_key(plain);
  const std::string_view as_written = number.empty() ? key : before;  // as the map may write it: "n.a."
  if (column.mapped != nullptr) {
    for (const auto& [word, value] : column.mapped->values) {
      if (word == key || word == as_written) return value_of(value);
    }
  }
  if (says_nothing(context, column, key) || says_nothing(context, column, as_written)) return {};
  if (field.type == FieldType::material) return understand_material(context, column, written);

  std::string day;
  if (is_dated(field)) {
    if (auto left_alone = understand_count(column, written, day)) return *std::move(left_alone);
    if (!day.empty()) written = day;
  }
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
  auto read = read_value(field, text, context.catalog);
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
                     text::quoted(text) + (below ? " is below " : " is above ") + bound.text +
                         (below ? ", the least" : ", the greatest") + " the map file allows",
                     "a slip, a filler for not known, or another unit than the map file says"});
    }
  }
  return value_of(std::move(value));
}

}  // namespace mainbore::io
