#include "io/job/field_tree.hpp"

namespace mainbore::io {
namespace {

// Of the rows whose paths agree in the first `prefix` characters.
std::vector<FieldMember> members_of(std::span<const JobField> rows, std::size_t prefix) {
  std::vector<FieldMember> members;
  while (!rows.empty()) {
    const JobField& field = rows.front();
    const std::string_view rest = field.path.substr(prefix);
    const std::size_t end = rest.find_first_of(".[");
    const std::string_view key = rest.substr(0, end);
    if (end == std::string_view::npos) {
      members.push_back({key, &field, false, {}});
      rows = rows.subspan(1);
      continue;
    }
    const bool list = rest[end] == '[';
    const std::size_t inner = prefix + end + (list ? 3 : 1);
    std::size_t count = 0;
    while (count < rows.size() && rows[count].path.substr(0, inner) == field.path.substr(0, inner)) ++count;
    members.push_back({key, nullptr, list, members_of(rows.first(count), inner)});
    rows = rows.subspan(count);
  }
  return members;
}

}  // namespace

const std::vector<FieldMember>& job_members() {
  static const std::vector<FieldMember> members = members_of(job_fields(), 0);
  return members;
}

}  // namespace mainbore::io
