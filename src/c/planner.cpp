#include "c/planner.hpp"

#include <algorithm>
#include <memory>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

#include "c/errors.hpp"
#include "io/job/machine_ranges.hpp"
#include "mainbore/catalog_error.hpp"
#include "mainbore/field_tests.hpp"
#include "mainbore/rules_file.hpp"
#include "mainbore/settings_file.hpp"

namespace mainbore::c {
namespace {

std::string_view text_of(const mainbore_text& text) { return {text.size == 0 ? "" : text.bytes, text.size}; }
std::string name_of(const mainbore_text& text) { return text.name == nullptr ? "" : text.name; }

// Whether it is all there: texts that are lost must not go unnoticed.
bool whole(const mainbore_text* first, std::size_t count) {
  if (first == nullptr) return count == 0;
  const std::span<const mainbore_text> texts(first, count);
  return std::all_of(texts.begin(), texts.end(),
                     [](const mainbore_text& text) { return text.bytes != nullptr || text.size == 0; });
}

Diagnostic fault_of(std::string_view code, const std::string& file, std::string message, std::string help = {}) {
  Diagnostic fault;
  fault.code = code;
  fault.file = file;
  fault.message = std::move(message);
  fault.help = std::move(help);
  return fault;
}

std::shared_ptr<const Catalog> catalog_of(std::span<const mainbore_text> data) {
  if (data.empty()) return builtin_catalog();
  DataFiles files;
  for (const mainbore_text& file : data) files[name_of(file)] = text_of(file);
  return std::make_shared<const Catalog>(files);
}

// Those that the settings name first, in their order; then the others in theirs.
std::vector<RuleText> in_order(std::span<const mainbore_text> rules, const Settings& settings,
                               std::vector<SettingTaken>& taken, std::vector<Diagnostic>& faults) {
  std::vector<RuleText> texts;
  std::vector<bool> laid(rules.size(), false);
  for (const std::string& wanted : settings.rules) {
    const auto found =
        std::find_if(rules.begin(), rules.end(), [&](const mainbore_text& one) { return name_of(one) == wanted; });
    if (found == rules.end()) {
      faults.push_back(fault_of("settings.rules-not-given", settings.file,
                                "it names the rules file " + wanted + ", which is not here",
                                "give its text among the rules, under this name"));
      continue;
    }
    laid[static_cast<std::size_t>(found - rules.begin())] = true;
    texts.push_back({wanted, std::string(text_of(*found))});
    taken.push_back({"rules", wanted});
  }
  for (std::size_t i = 0; i < rules.size(); ++i) {
    if (!laid[i]) texts.push_back({name_of(rules[i]), std::string(text_of(rules[i]))});
  }
  return texts;
}

struct Texts {
  std::span<const mainbore_text> rules;
  std::span<const mainbore_text> data;
  const mainbore_text* settings;
};

// Null where there are faults.
std::unique_ptr<mainbore_planner> make_planner(const Texts& given, std::vector<Diagnostic>& faults) {
  std::shared_ptr<const Catalog> catalog;
  try {
    catalog = catalog_of(given.data);
    static_cast<void>(load_field_tests(*catalog));
    if (const auto fault = io::machine_out_of_range(*catalog))
      faults.push_back(fault_of("data.unreadable", "data", *fault));
  } catch (const CatalogError& fault) {
    faults.push_back(fault_of("data.unreadable", "data", fault.what()));
    return nullptr;
  }
  Settings settings;
  std::vector<SettingTaken> taken;
  if (given.settings != nullptr) {
    SettingsFile read = read_settings(text_of(*given.settings), name_of(*given.settings), *catalog);
    faults.insert(faults.end(), read.diagnostics.begin(), read.diagnostics.end());
    if (read.settings) settings = *std::move(read.settings);
  }
  // A plan that looked away from the list could go where the command holds.
  if (!settings.approved.empty()) {
    faults.push_back(
        fault_of("settings.approved-not-given", settings.file,
                 "it names the approved list " + settings.approved + ", which cannot be given through the library",
                 "plan with the command, or by settings without \"approved\""));
  }
  const std::vector<RuleText> texts = in_order(given.rules, settings, taken, faults);
  RulesFile rules = load_rules(*catalog, texts);
  faults.insert(faults.end(), rules.diagnostics.begin(), rules.diagnostics.end());
  if (!faults.empty()) return nullptr;
  Planner planner(std::move(catalog), *std::move(rules.rules));
  return std::unique_ptr<mainbore_planner>(
      new mainbore_planner{std::move(settings), std::move(taken), std::move(planner)});
}

}  // namespace

std::optional<Asked> asked_by(unsigned what) {
  constexpr unsigned flags =
      MAINBORE_US | MAINBORE_SI | MAINBORE_ENGLISH | MAINBORE_SPANISH | MAINBORE_ONE_LINE | MAINBORE_NO_ROWS;
  const auto has = [&](unsigned flag) { return (what & flag) != 0; };
  Asked asked;
  asked.kind = what & ~flags;
  if (asked.kind > MAINBORE_SHEET) return std::nullopt;
  if ((has(MAINBORE_US) && has(MAINBORE_SI)) || (has(MAINBORE_ENGLISH) && has(MAINBORE_SPANISH))) return std::nullopt;
  if (has(MAINBORE_US) || has(MAINBORE_SI)) asked.units = has(MAINBORE_SI) ? UnitSystem::si : UnitSystem::us;
  if (has(MAINBORE_ENGLISH) || has(MAINBORE_SPANISH)) {
    asked.language = has(MAINBORE_SPANISH) ? Language::spanish : Language::english;
  }
  if (has(MAINBORE_ONE_LINE)) asked.style = JsonStyle::compact;
  asked.rows = !has(MAINBORE_NO_ROWS);
  return asked;
}

InForce in_force(const mainbore_planner& planner, const Asked& asked) {
  const Settings& settings = planner.settings;
  const bool translated = asked.kind >= MAINBORE_CARD;  // what is for people to read
  InForce made{};
  made.from.file = settings.file;
  made.units = units_in_force(settings, asked.units, made.from);
  made.language = language_in_force(settings, asked.language, translated, made.from);
  made.from.taken.insert(made.from.taken.end(), planner.rules_taken.begin(), planner.rules_taken.end());
  return made;
}

}  // namespace mainbore::c

int mainbore_planner_new(const mainbore_text* rules, size_t rules_count, const mainbore_text* data, size_t data_count,
                         const mainbore_text* settings, mainbore_planner** planner, char** result) {
  using namespace mainbore::c;
  if (result != nullptr) *result = nullptr;
  if (planner == nullptr || result == nullptr) return refused(result, "planner and result must not be null");
  *planner = nullptr;
  return guarded(result, [&] {
    if (!whole(rules, rules_count) || !whole(data, data_count) || !whole(settings, settings == nullptr ? 0 : 1)) {
      return refused(result, "a text or a list of texts is null and has a size");
    }
    const Texts given{{rules, rules_count}, {data, data_count}, settings};
    std::vector<mainbore::Diagnostic> faults;
    std::unique_ptr<mainbore_planner> made = make_planner(given, faults);
    if (made == nullptr) {
      *result = handed_out(faults_to_json(faults));
      return MAINBORE_UNREADABLE;
    }
    *planner = made.release();
    return MAINBORE_GO;
  });
}

void mainbore_planner_free(mainbore_planner* planner) { delete planner; }
