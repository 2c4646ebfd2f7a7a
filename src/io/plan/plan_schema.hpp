// The schema of a plan: what each path of plan_json.cpp holds, and which are always there.
#pragma once

#include <nlohmann/json.hpp>

namespace mainbore::io {

[[nodiscard]] nlohmann::ordered_json plan_schema();

}  // namespace mainbore::io
