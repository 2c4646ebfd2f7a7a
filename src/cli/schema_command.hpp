// mainbore schema: the JSON Schema of a file the program reads or writes.
#pragma once

#include <string>

#include "cli/console.hpp"

namespace mainbore::cli {

struct SchemaRequest {
  std::string what;  // one of schema_names
  std::string data;  // directory of tables to use in place of those built in
};

[[nodiscard]] ExitStatus schema_command(const SchemaRequest& request, Console& console);

}  // namespace mainbore::cli
