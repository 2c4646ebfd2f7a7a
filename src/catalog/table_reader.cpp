#include "catalog/table_reader.hpp"

#include <algorithm>
#include <charconv>
#include <cmath>
#include <cstdint>
#include <utility>

#include "mainbore/catalog_error.hpp"
#include "mainbore/measure.hpp"

namespace mainbore::tables {
namespace {

constexpr Limits size_limits{0.05, 150, "in"};

}  // namespace

const Source* TableFiles::source(std::string_view id) const {
  const auto found = std::find_if(sources.begin(), sources.end(), [&](const Source& one) { return one.id == id; });
  return found == sources.end() ? nullptr : &*found;
}

void TableReader::fault(const std::string& message) const {
  std::string where(at_.file);
  if (!at_.entry.empty()) where += ": " + at_.entry;
  if (at_.row > 0) {
    where += ", row " + std::to_string(at_.row);
    if (!at_.row_name.empty()) where += " (" + at_.row_name + ")";
  }
  throw CatalogError(text::visible(where + ": " + message));  // a table may be anybody's
}

void TableReader::enter(std::string entry) {
  at_.entry = std::move(entry);
  at_.row = 0;
  at_.row_name.clear();
}

double TableReader::within(double value, Limits limits, std::string_view name) const {
  if (value >= limits.least && value <= limits.most) return value;
  const auto shown = [](double number) {
    std::array<char, 32> digits{};
    return std::string(digits.data(), std::to_chars(digits.data(), digits.data() + digits.size(), number).ptr);
  };
  fault(std::string(name) + ": " + shown(value) + " is out of range; from " + shown(limits.least) + " to " +
        shown(limits.most) + (limits.unit.empty() ? "" : " ") + std::string(limits.unit));
}

const std::string& TableReader::require(std::string_view path) {
  at_.file = path;
  enter("");
  at_.opened.insert(std::string(path));
  const auto found = at_.files.find(path);
  if (found == at_.files.end()) fault("the file is missing");
  return found->second;
}

object TableReader::open(std::string_view path) {
  const std::string& text = require(path);
  element root;
  if (const auto error = at_.parser.parse(text).get(root)) {
    fault(std::string("not valid JSON: ") + simdjson::error_message(error));
  }
  return as_object(root, "the file");
}

object TableReader::as_object(element value, std::string_view name) const {
  object result;
  if (value.get(result)) fault(std::string(name) + " is not an object");
  return result;
}

array TableReader::as_array(element value, std::string_view name) const {
  array result;
  if (value.get(result)) fault(std::string(name) + " is not a list");
  return result;
}

std::string_view TableReader::as_text(element value, std::string_view name) const {
  std::string_view result;
  if (value.get(result)) fault(std::string(name) + " is not a text");
  return result;
}

double TableReader::as_number(element value, std::string_view name) const {
  double result = 0.0;
  if (value.get(result) || !std::isfinite(result)) fault(std::string(name) + " is not a number");
  return result;
}

NominalSize TableReader::as_size(element value, std::string_view name) const {
  const std::string_view text = as_text(value, name);
  const ParsedMeasure read = parse_measure(text, Kind::ratio);
  if (!read) fault(std::string(name) + " is not a nominal size: " + quoted(text));
  return NominalSize::inches(within(read.value.base(), size_limits, name));
}

std::optional<double> TableReader::as_number_or_unknown(element value, std::string_view name) const {
  if (value.is_null()) return std::nullopt;
  return as_number(value, name);
}

element TableReader::member(object from, std::string_view key) const {
  element value;
  if (from.at_key(key).get(value)) fault("no " + quoted(key));
  return value;
}

std::string_view TableReader::text_member(object from, std::string_view key) const {
  return as_text(member(from, key), key);
}

std::string TableReader::text_or_empty(object from, std::string_view key) const {
  element value;
  return from.at_key(key).get(value) ? std::string() : std::string(as_text(value, key));
}

void TableReader::only(object from, std::initializer_list<std::string_view> known) const {
  std::uint64_t seen = 0;
  for (const auto& field : from) {
    const auto* const at = std::find(known.begin(), known.end(), field.key);
    if (at == known.end()) fault("unknown key " + quoted(field.key));
    const std::uint64_t bit = std::uint64_t{1} << static_cast<unsigned>(at - known.begin());
    if ((seen & bit) != 0) fault("key " + quoted(field.key) + " stands twice");
    seen |= bit;
  }
}

How TableReader::as_how(std::string_view text) const {
  for (const How how : {How::published, How::derived, How::common_practice, How::memory}) {
    if (text == name_of(how)) return how;
  }
  fault(quoted(text) + " does not say how a number was had: published, derived, common practice or memory");
}

Basis TableReader::basis_of(object from) const {
  const std::string_view id = text_member(from, "source");
  Basis basis;
  basis.source = at_.source(id);
  if (basis.source == nullptr) fault("unknown source " + quoted(id));
  basis.how = as_how(text_member(from, "how"));
  return basis;
}

Basis TableReader::basis_in(element source, element how) const {
  Basis basis;
  basis.source = at_.source(as_text(source, "source"));
  if (basis.source == nullptr) fault("unknown source " + quoted(as_text(source, "source")));
  basis.how = as_how(as_text(how, "how"));
  return basis;
}

object TableReader::table_in(object from, std::string_view key) {
  enter(std::string(key));
  return as_object(member(from, key), key);
}

std::string TableReader::text_cell(element cell, std::string_view name) const {
  return cell.is_null() ? std::string() : std::string(as_text(cell, name));
}

const Basis& TableReader::weaker(const Basis& a, const Basis& b) {
  return b.how > a.how || a.source == nullptr ? b : a;
}

}  // namespace mainbore::tables
