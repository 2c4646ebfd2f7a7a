#include "support/reference_table.hpp"

#include <fstream>
#include <stdexcept>
#include <utility>

#include "support/check_log.hpp"

namespace mainbore::test {
namespace {

ReferenceRead last_read;

std::vector<std::string> split_fields(const std::string& line) {
  std::vector<std::string> fields(1);
  bool quoted = false;
  for (std::size_t i = 0; i < line.size(); ++i) {
    const char c = line[i];
    if (quoted && c == '"' && i + 1 < line.size() && line[i + 1] == '"') {
      fields.back() += '"';
      ++i;
    } else if (c == '"') {
      quoted = !quoted;
    } else if (c == ',' && !quoted) {
      fields.emplace_back();
    } else if (c != '\r') {
      fields.back() += c;
    }
  }
  return fields;
}

std::string after_label(const std::string& line, std::string_view label) {
  return line.starts_with(label) ? line.substr(line.find_first_not_of(' ', label.size())) : std::string();
}

}  // namespace

ReferenceRead take_last_read() { return std::exchange(last_read, {}); }

const std::string& ReferenceRow::text(const std::string& column) const {
  const auto found = columns_->find(column);
  if (found == columns_->end()) throw std::runtime_error(where_ + ": no column '" + column + "'");
  static const std::string none;
  return found->second < fields_.size() ? fields_[found->second] : none;
}

double ReferenceRow::number(const std::string& column) const {
  const std::string& field = text(column);
  last_read = {where_, column};
  std::size_t used = 0;
  double value = 0;
  try {
    value = std::stod(field, &used);
  } catch (const std::exception&) {
    used = 0;
  }
  if (used == 0 || used != field.size()) {
    throw std::runtime_error(where_ + ": column '" + column + "' is not a number: '" + field + "'");
  }
  return value;
}

ReferenceTable::ReferenceTable(const std::string& name) : name_(name) {
  std::ifstream file(std::string(MAINBORE_SOURCE_DIR) + "/tests/reference/" + name);
  if (!file) throw std::runtime_error("cannot open tests/reference/" + name);
  std::string line;
  for (int number = 1; std::getline(file, line); ++number) {
    if (line.starts_with('#')) {
      if (auto text = after_label(line, "# source:"); !text.empty()) source_ += (source_.empty() ? "" : "; ") + text;
      if (auto text = after_label(line, "# tolerance:"); !text.empty()) tolerance_ = text;
    } else if (columns_.empty()) {
      for (const auto& title : split_fields(line)) columns_.emplace(title, columns_.size());
    } else if (!line.empty()) {
      rows_.emplace_back(columns_, split_fields(line), name + ":" + std::to_string(number));
    }
  }
  if (rows_.empty()) throw std::runtime_error("tests/reference/" + name + " has no rows");
  if (source_.empty()) throw std::runtime_error("tests/reference/" + name + " names no source");
}

double ReferenceTable::tolerance() const {
  if (tolerance_.empty()) throw std::runtime_error("tests/reference/" + name_ + " states no tolerance");
  return std::stod(tolerance_);
}

}  // namespace mainbore::test
