// Asks for the readings of a finished tap, line by line.
#pragma once

#include <iosfwd>
#include <optional>
#include <vector>

#include "mainbore/catalog.hpp"
#include "mainbore/job_file.hpp"
#include "mainbore/language.hpp"
#include "mainbore/plan.hpp"

namespace mainbore::interview {

// What was answered, as settings of readings (readings_file.hpp). Enter leaves a reading unread. Nothing where the asking was
// stopped or the input ended.
[[nodiscard]] std::optional<std::vector<Setting>> ask_readings(std::istream& in, std::ostream& out, const Plan& plan,
                                                               Audience crew, const Catalog& catalog);

}  // namespace mainbore::interview
