// The table of facts (job_fields.hpp) as the objects it describes: whoever writes or describes a whole job follows it.
#pragma once

#include <string_view>
#include <vector>

#include "io/job/job_fields.hpp"

namespace mainbore::io {

// A member of an object: a fact, or an object or list of objects with members itself.
struct FieldMember {
  std::string_view key;
  const JobField* fact = nullptr;
  bool list = false;
  std::vector<FieldMember> members;
};

// The members of a job, in the order of the table. Made once.
[[nodiscard]] const std::vector<FieldMember>& job_members();

}  // namespace mainbore::io
