// What a file is by its first bytes: how its orders are written, or another kind of file altogether.
#pragma once

#include <optional>
#include <string_view>

#include "batch/order_source.hpp"

namespace mainbore::batch {

// '[' begins an array; '{' an order, which goes on for several lines where nothing stands behind it, or GeoJSON, where
// its first member says so; a record separator GeoJSON; anything else a table.
[[nodiscard]] InputFormat format_of(std::string_view first_bytes);
// Whether format_of() can tell.
[[nodiscard]] bool tells_format(std::string_view first_bytes);

// A file of tables or maps that holds no text.
struct ForeignFile {
  std::string_view what;         // "a GeoPackage or another SQLite database"
  std::string_view pipe_format;  // what ogr2ogr makes of it for batch: "GeoJSON", "CSV"; empty: unpack it first
};
[[nodiscard]] std::optional<ForeignFile> foreign_file(std::string_view first_bytes);
// Whether more bytes could still make it one.
[[nodiscard]] bool may_be_foreign(std::string_view first_bytes);

}  // namespace mainbore::batch
