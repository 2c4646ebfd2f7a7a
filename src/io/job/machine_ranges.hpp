// The machines of a catalog, held to the ranges of a job's machine: what a job may say of a machine is what a table may.
#pragma once

#include <optional>
#include <string>

#include "mainbore/catalog.hpp"

namespace mainbore::io {

// The first figure out of range, with its machine and what is allowed; nothing where there is none.
[[nodiscard]] std::optional<std::string> machine_out_of_range(const Catalog& catalog);

}  // namespace mainbore::io
