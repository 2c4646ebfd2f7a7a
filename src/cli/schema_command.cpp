#include "cli/schema_command.hpp"

#include <algorithm>
#include <memory>

#include "cli/result_writer.hpp"
#include "io/text/nearest.hpp"
#include "mainbore/schema.hpp"
#include "text/foreign.hpp"

namespace mainbore::cli {

ExitStatus schema_command(const SchemaRequest& request, Console& console) {
  const auto* const name = std::find(schema_names.begin(), schema_names.end(), request.what);
  if (name == schema_names.end()) {
    const std::string found = request.what.empty() ? "schema of what?" : "no schema of " + text::quoted(request.what);
    throw Stop(exit_usage, found + "\none of: " + io::listed(schema_names));
  }
  const std::shared_ptr<const Catalog> tables = open_catalog(request.data, console);
  const Catalog& catalog = *tables;
  write_result(json_schema(static_cast<SchemaOf>(name - schema_names.begin()), catalog), console);
  return exit_go;
}

}  // namespace mainbore::cli
