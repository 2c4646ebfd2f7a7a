// The members of a thing that is on the truck: reader and schema follow it.
#pragma once

#include <span>

#include "io/job/job_fields.hpp"

namespace mainbore::io {

[[nodiscard]] std::span<const JobField> aboard_fields();

}  // namespace mainbore::io
