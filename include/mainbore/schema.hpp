// JSON Schemas (draft-07) of the files the program reads and writes, for editors and for programs that make them.
//
// All but a plan's, a verdict's and a record's are made from the field tables that drive the readers, so a new fact or rule is in its
// schema at once:
// of a job; of a utility's rules; of a map file; of a settings file; of a list of approved fittings; of a machine, as it stands under "machine" of a job or
// of settings. Each has an `$id` with a version, "urn:mainbore:schema:job:1".
//
// What a schema accepts and the reader refuses, because a schema cannot say it:
//   - a quantity outside its range: the range stands in the description;
//   - a day that no calendar has, a mixed number without a fraction ("1-0/4 in"), a machine's title without a word;
//   - facts or rules that contradict each other, and a key given twice;
//   - a class or clearance that only the tables and the default rules can judge;
//   - in a map, a code for a material that the map does not name, and columns that differ only in spelling.
// What the reader accepts and the schema refuses, because a file made by a program should not need it:
//   - words with a separator put in where they have none, "D.I.P.";
//   - a fraction over anything but a whole number, "1/2.5 in";
//   - in rules, a unit where none is needed, and a clock position as a bare number;
//   - in a map, the last unit of a length left to the column, "4 ft 6".
//
// The schemas of a plan, of a verdict (a record of a batch) and of a record (of a tap; a line of a ledger is one too) say what
// each path holds and which are always there. They allow more, because paths only grow.
//
//     json_schema(SchemaOf::job, Catalog::builtin())   -> {"$schema": "http://json-schema.org/draft-07/schema#", ...}
#pragma once

#include <array>
#include <cstdint>
#include <string>
#include <string_view>

#include "mainbore/catalog.hpp"

namespace mainbore {

enum class SchemaOf : std::uint8_t { job, rules, plan, map, machine, settings, verdict, record, approved };
inline constexpr std::array<std::string_view, 9> schema_names = {"job",      "rules",   "plan",   "map",     "machine",
                                                                 "settings", "verdict", "record", "approved"};

// Of all but the plan's: raised when a file that was valid no longer is. A plan's is plan_format (plan_file.hpp).
inline constexpr int schema_version = 1;

// The schema, indented, its last line ended. The catalog gives the ids of machines and series and the metric sizes.
[[nodiscard]] std::string json_schema(SchemaOf what, const Catalog& catalog);

}  // namespace mainbore
