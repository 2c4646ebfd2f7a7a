// The schema of a record of a tap: what each path of record_json.cpp holds, and which are always there.
#pragma once

#include <nlohmann/json.hpp>

namespace mainbore::io {

[[nodiscard]] nlohmann::ordered_json record_schema();

}  // namespace mainbore::io
