// The schema of a map file: what order_map.cpp reads, made from the field table of a job.
#pragma once

#include <nlohmann/json.hpp>

#include "mainbore/catalog.hpp"

namespace mainbore::io {

[[nodiscard]] nlohmann::ordered_json order_map_schema(const Catalog& catalog);

}  // namespace mainbore::io
