// The schema of a record of a batch: what verdict_record.cpp writes of an order, also of one that cannot be read.
#pragma once

#include <nlohmann/json.hpp>

namespace mainbore::io {

[[nodiscard]] nlohmann::ordered_json verdict_schema();

}  // namespace mainbore::io
