// The name of a column -> the fact of a job that it holds.
#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <variant>

#include "io/job/job_fields.hpp"

namespace mainbore::io {

struct NamedFact {
  FieldPath to;
  std::string unit;  // of bare numbers; may be empty
};

// "Main Pressure [psi]" is main.pressure in psi; "nearby[0].what" or "nearby_0_what" the first thing nearby.
[[nodiscard]] std::variant<NamedFact, Problem> fact_named(std::string_view header);

// For "did you mean": the path of a fact that is spelled most like it.
[[nodiscard]] std::optional<std::string_view> nearest_path(std::string_view name);

}  // namespace mainbore::io
