// The settings file: see settings.hpp.
//
//     {
//       "format": 1,
//       "machine": {"title": "Truck 4", "smallest_tap": "3/4 in", "largest_tap": "1 in", "hand_limit": "90 psi", ...},
//       "fittings": [{"tap": "1 in", "saddle_height": "2 in", "stop_length": "3.5 in", "adapter_standoff": "2 in"}],
//       "rules": ["ashby_vale.json"],
//       "approved": "ashby_vale_approved.json",
//       "aboard": [{"item": "corporation stop", "size": "1 in", "count": 4}, {"stock": "41-117", "count": 2}],
//       "units": "us",
//       "crew": "North yard"
//     }
//
// Every member may be left out. "machine" is read and checked as a job's (docs/job.md). "rules" are files seen from the
// settings file's own folder. Nothing is guessed: an unknown key, a key given twice, an unknown word or a value that
// cannot be is a diagnostic, and every one of them is reported at once.
//
//     const SettingsFile read = read_settings(text, "settings.json", Catalog::builtin());
//     if (read.settings) lay_settings_under(job, *read.settings, from);
#pragma once

#include <array>
#include <optional>
#include <span>
#include <string_view>
#include <vector>

#include "mainbore/catalog.hpp"
#include "mainbore/diagnostic.hpp"
#include "mainbore/settings.hpp"

namespace mainbore {

struct SettingsFile {
  std::optional<Settings> settings;  // present exactly when there are no diagnostics
  std::vector<Diagnostic> diagnostics;
};

// Longest text read, in bytes, and most rules files.
inline constexpr std::size_t longest_settings = 1u << 20;
inline constexpr std::size_t most_rules_files = 100;
inline constexpr std::size_t most_fittings = 100;
inline constexpr std::size_t most_aboard = 1000;

// The members of a fitting, and the facts of a job that they stand for.
struct FittingFact {
  const char* key;
  std::string_view path;
};
inline constexpr std::array<FittingFact, 4> settings_fitting_facts = {
    {{"tap", "service.size"},
     {"saddle_height", "service.saddle_height"},
     {"stop_length", "service.stop_length"},
     {"adapter_standoff", "machine.adapter_standoff"}}};

// Never throws for anything in the text. The catalog must outlive the settings.
[[nodiscard]] SettingsFile read_settings(std::string_view text, std::string_view file_name, const Catalog& catalog);

// What the codes of settings diagnostics mean.
[[nodiscard]] std::span<const DiagnosticText> settings_diagnostic_texts();

}  // namespace mainbore
