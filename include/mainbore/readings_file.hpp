// The readings file: what a crew wrote down of one tap, as JSON (RFC 8259) in UTF-8.
//
//     {
//       "format": 1,
//       "order": "AV-1041",
//       "line_pressure": "70 psi",
//       "tie_1": "12 ft 6 in",  "tie_1_from": "hydrant H-204",
//       "holds": {"place.not-looked": {"found": "bell 7 ft north, nothing else", "by": "RM"}},
//       "deviations": {"clock": "a gas line at 1:30"}
//     }
//
// Keys are the names of tap_record.hpp. A quantity is a text with its unit or {"value": 70, "unit": "psi"}; turns, threads
// and degrees are plain numbers. A text that says "not known" in one of the usual ways is not read. Nothing is guessed: an
// unknown key, a key given twice, a value that cannot be is a diagnostic, and every one of them is reported at once.
#pragma once

#include <cstddef>
#include <optional>
#include <span>
#include <string>
#include <string_view>
#include <vector>

#include "mainbore/diagnostic.hpp"
#include "mainbore/job_file.hpp"
#include "mainbore/tap_record.hpp"

namespace mainbore {

inline constexpr std::size_t longest_readings = 1u << 18;

struct ReadingsFile {
  std::optional<Readings> readings;  // present exactly when there are no diagnostics
  std::vector<Diagnostic> diagnostics;
};

// Never throws for anything in the text or the settings. A setting stands in place of the file's own value: its path is a
// key, "holds.CODE.found", "holds.CODE.by" or "deviations.WHAT".
[[nodiscard]] ReadingsFile read_readings(std::string_view text, std::string_view file_name, const Catalog& catalog,
                                         std::span<const Setting> settings = {});
[[nodiscard]] ReadingsFile readings_from_settings(std::span<const Setting> settings, const Catalog& catalog);

// What may be written under a key: "a length with its unit, such as ...".
[[nodiscard]] std::string allowed_for(const RecordEntry& entry, const Catalog& catalog);

// The record as JSON (docs/record.md). Paths only grow. `compact` is one line without a line end.
[[nodiscard]] std::string record_to_json(const TapRecord& record, UnitSystem units, JsonStyle style);

// What the codes of readings and ledger diagnostics mean.
[[nodiscard]] std::span<const DiagnosticText> record_diagnostic_texts();

}  // namespace mainbore
