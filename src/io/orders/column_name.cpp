#include "io/orders/column_name.hpp"

#include <vector>

#include "catalog/spelling.hpp"
#include "io/orders/day_count.hpp"
#include "io/text/nearest.hpp"
#include "io/text/text_scan.hpp"
#include "text/foreign.hpp"

namespace mainbore::io {
namespace {

std::optional<FieldPath> path_named(std::string_view name) {
  std::string plain = plain_name(name);
  std::erase_if(plain, [](char c) { return c == '[' || c == ']'; });
  std::optional<FieldPath> to;
  for (const JobField& field : job_fields()) {
    const std::size_t brackets = field.path.find("[]");
    if (brackets == std::string_view::npos) {
      if (same_name(plain, field.path) || (!field.older.empty() && same_name(plain, field.older)))
        to = FieldPath{&field, 0};
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

}  // namespace

std::optional<std::string_view> nearest_path(std::string_view name) {
  std::vector<std::string_view> paths;
  for (const JobField& field : job_fields()) paths.push_back(field.path);
  return nearest(name, paths);
}

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
    Problem problem{"csv.header", text::quoted(header) + " is not a fact of a job", ""};
    if (const auto near = nearest_path(name)) problem.help = "did you mean " + std::string(*near) + "?  ";
    problem.help += "a map file says which column of your own export is which fact";
    return problem;
  }
  const JobField& field = *to->field;
  if (!unit.empty() && !(is_dated(field) && is_count_of_days(unit))) {
    const bool measured = field.type == FieldType::quantity || field.type == FieldType::size;
    if (!measured || !parse_measure(1.0, unit, field.kind)) {
      return Problem{"csv.header", text::quoted(unit) + " is not a unit of " + std::string(field.path),
                     measured          ? expected_text(field.kind)
                     : is_dated(field) ? "ms or s, since 1970"
                                       : "it has no unit"};
    }
  }
  return NamedFact{*to, std::string(unit)};
}

}  // namespace mainbore::io
