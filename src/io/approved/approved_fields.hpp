// The columns of an approved list: kind of value, what is allowed, help, and which kinds of item have them. Reader, table
// header and schema follow it.
#pragma once

#include <array>
#include <string_view>

#include "io/job/job_fields.hpp"
#include "mainbore/approved.hpp"
#include "mainbore/approved_file.hpp"

namespace mainbore::io {

enum class ColumnUse : char { required = 'R', optional = 'O', none = '-' };

struct ApprovedField {
  JobField value;  // its path is the key
  ApprovedColumn column;
  bool several = false;  // a list of values

  [[nodiscard]] ColumnUse use(ApprovedKind kind) const {
    return static_cast<ColumnUse>(column.use[static_cast<std::size_t>(kind)]);
  }
};

// The first is the kind itself.
[[nodiscard]] std::span<const ApprovedField> approved_fields();
[[nodiscard]] const ApprovedField* approved_field(std::string_view key);

}  // namespace mainbore::io
