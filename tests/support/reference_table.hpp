// A table of values from outside the project, kept in tests/reference/ as CSV.
//
// Leading lines that start with '#' carry the publication and the tolerance ("# source: ...", "# tolerance: ...");
// then a header line, then one row a line. Fields with commas stand in double quotes.
#pragma once

#include <map>
#include <string>
#include <string_view>
#include <vector>

namespace mainbore::test {

class ReferenceRow {
 public:
  ReferenceRow(const std::map<std::string, std::size_t>& columns, std::vector<std::string> fields, std::string where)
      : columns_(&columns), fields_(std::move(fields)), where_(std::move(where)) {}

  [[nodiscard]] const std::string& text(const std::string& column) const;
  [[nodiscard]] double number(const std::string& column) const;
  [[nodiscard]] bool has(const std::string& column) const { return !text(column).empty(); }
  // "iron_classes.csv:12", for INFO().
  [[nodiscard]] const std::string& where() const { return where_; }

 private:
  const std::map<std::string, std::size_t>* columns_;
  std::vector<std::string> fields_;
  std::string where_;
};

class ReferenceTable {
 public:
  // `name` is a file of tests/reference/. Throws std::runtime_error when it is missing, empty or names no source.
  explicit ReferenceTable(const std::string& name);
  ReferenceTable(const ReferenceTable&) = delete;
  ReferenceTable& operator=(const ReferenceTable&) = delete;

  [[nodiscard]] const std::vector<ReferenceRow>& rows() const { return rows_; }
  [[nodiscard]] const std::string& source() const { return source_; }
  // The number after "# tolerance:"; throws when the file states none.
  [[nodiscard]] double tolerance() const;

 private:
  std::string name_;
  std::string source_;
  std::string tolerance_;
  std::map<std::string, std::size_t> columns_;
  std::vector<ReferenceRow> rows_;
};

}  // namespace mainbore::test
