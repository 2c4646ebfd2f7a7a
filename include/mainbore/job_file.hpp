// The job file: what is known of one tap, as JSON (RFC 8259) in UTF-8.
//
//     {
//       "id": "AV-1041",
//       "main": {"material": "ductile iron", "size": "8 in", "class": "PC 350", "pressure": "82 psi"},
//       "service": {"size": "1 in"}
//     }
//
// Keys are the paths of job.hpp. A quantity is a string with its unit or {"value": 82, "unit": "psi"}; a bare number is
// refused. Nothing is guessed: an unknown key, a key given twice, an unknown word or a value outside what can be is a
// diagnostic, and every one of them is reported at once. What is odd but possible is left to the planner.
//
//     const JobFile read = read_job(text, "job.json", Catalog::builtin());
//     if (read.job) { const Plan p = planner.plan(*read.job); }
//     else for (const Diagnostic& d : read.diagnostics) std::cerr << format_diagnostic(d);
#pragma once

#include <cstddef>
#include <cstdint>
#include <optional>
#include <span>
#include <string>
#include <string_view>
#include <vector>

#include "mainbore/catalog.hpp"
#include "mainbore/diagnostic.hpp"
#include "mainbore/job.hpp"
#include "mainbore/measure.hpp"

namespace mainbore {

// One value by its path, as `--set main.size="8 in"` gives it. It stands in place of the file's own value.
// Paths into a list carry the place from 0: "nearby[0].along". "nearby" itself may be set to "none".
struct Setting {
  std::string path;
  std::string value;
  std::string where;  // what a diagnostic calls the place; empty: "--set PATH"
};

struct JobFile {
  std::optional<Job> job;  // present exactly when there are no diagnostics
  std::string id;          // the job's id wherever it could be read, for messages about a job that could not
  std::vector<Diagnostic> diagnostics;
};

// Longest job text read, in bytes, and deepest nesting.
inline constexpr std::size_t longest_job = 1u << 20;
inline constexpr int deepest_job = 32;
// After this many diagnostics the rest are not listed.
inline constexpr std::size_t most_diagnostics = 50;

// Reads one job. `first_line` is the number of the text's first line, for a job that is one line of a longer file.
// Never throws for anything in the text or the settings.
[[nodiscard]] JobFile read_job(std::string_view text, std::string_view file_name, const Catalog& catalog,
                               std::span<const Setting> settings = {}, std::int64_t first_line = 1);

// A job made of settings alone.
[[nodiscard]] JobFile job_from_settings(std::span<const Setting> settings, const Catalog& catalog);

enum class JsonStyle : std::uint8_t { pretty, compact };

// The job as a job file that reads back as the same job. Facts that are not known are left out.
[[nodiscard]] std::string job_to_json(const Job& job, UnitSystem system, JsonStyle style);

// The job file that says what the settings say, each quantity as it was written: "4 ft 6 in" stays that. It reads back as
// the job of the settings. Of two settings of one path the later is written; a path that no job has is left out.
[[nodiscard]] std::string settings_to_json(std::span<const Setting> settings, const Catalog& catalog);

}  // namespace mainbore
