#include "c/planner.hpp"

#include <algorithm>
#include <filesystem>
#include <memory>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

#include "c/errors.hpp"
#include "io/job/machine_ranges.hpp"
#include "mainbore/approved_file.hpp"
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
std::vector<RuleText> in_order(std::span<const mainbore_text> rules, const Settings& settings, FromSettings& from,
                               std::vector<Diagnostic>& faults) {
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
    from.taken.push_back({"rules", wanted});
  }
  for (std::size_t i = 0; i < rules.size(); ++i) {
    if (!laid[i]) texts.push_back({name_of(rules[i]), std::string(text_of(rules[i]))});
  }
  return texts;
}

// The list that is given, else none. A plan that looked away from a list of the settings could go where the command holds.
std::shared_ptr<const ApprovedList> approved_of(const mainbore_text* given, const Settings& settings,
                                                const Catalog& catalog, FromSettings& from,
                                                std::vector<Diagnostic>& faults) {
  const std::string& named = settings.approved;
  if (given == nullptr) {
    if (!named.empty()) {
      faults.push_back(fault_of("settings.approved-not-given", settings.file,
                                "it names the approved list " + named + ", which is not here",
                                "give its text as the approved list, or settings without \"approved\""));
    }
    return nullptr;
  }
  std::string name = name_of(*given);
  if (!named.empty() && name == named) {
    // As the command shows it: seen from the folder of the settings.
    name = (std::filesystem::path(settings.file).parent_path() / named).string();
    from.taken.push_back({"approved", named});
  } else if (!named.empty()) {
    from.set_aside.emplace_back("approved");
  }
  ApprovedFile read = read_approved(text_of(*given), name, catalog);
  faults.insert(faults.end(), read.diagnostics.begin(), read.diagnostics.end());
  return read.list ? std::make_shared<const ApprovedList>(*std::move(read.list)) : nullptr;
}

std::shared_ptr<const Catalog> checked_catalog(std::span<const mainbore_text> data, std::vector<Diagnostic>& faults) {
  try {
    std::shared_ptr<const Catalog> catalog = catalog_of(data);
    static_cast<void>(load_field_tests(*catalog));
    if (const auto fault = io::machine_out_of_range(*catalog))
      faults.push_back(fault_of("data.unreadable", "data", *fault));
    return catalog;
  } catch (const CatalogError& fault) {
    faults.push_back(fault_of("data.unreadable", "data", fault.what()));
    return nullptr;
  }
}

// Null where there are faults.
std::unique_ptr<mainbore_planner> make_planner(const mainbore_inputs& given, std::vector<Diagnostic>& faults) {
  std::shared_ptr<const Catalog> catalog = checked_catalog({given.data, given.data_count}, faults);
  if (catalog == nullptr) return nullptr;
  Settings settings;
  if (given.settings != nullptr) {
    SettingsFile read = read_settings(text_of(*given.settings), name_of(*given.settings), *catalog);
    faults.insert(faults.end(), read.diagnostics.begin(), read.diagnostics.end());
    if (read.settings) settings = *std::move(read.settings);
  }
  FromSettings from;
  const std::vector<RuleText> texts = in_order({given.rules, given.rules_count}, settings, from, faults);
  RulesFile rules = load_rules(*catalog, texts);
  faults.insert(faults.end(), rules.diagnostics.begin(), rules.diagnostics.end());
  std::shared_ptr<const ApprovedList> approved = approved_of(given.approved, settings, *catalog, from, faults);
  if (!faults.empty()) return nullptr;
  Planner planner(std::move(catalog), *std::move(rules.rules), std::move(approved));
  return std::unique_ptr<mainbore_planner>(
      new mainbore_planner{std::move(settings), std::move(from), std::move(planner)});
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
  const FromSettings& files = planner.files_taken;
  made.from.taken.insert(made.from.taken.end(), files.taken.begin(), files.taken.end());
  made.from.set_aside.insert(made.from.set_aside.end(), files.set_aside.begin(), files.set_aside.end());
  return made;
}

}  // namespace mainbore::c

int mainbore_planner_from(const mainbore_inputs* inputs, mainbore_planner** planner, char** result) {
  using namespace mainbore::c;
  if (result != nullptr) *result = nullptr;
  if (planner == nullptr || result == nullptr) return refused(result, "planner and result must not be null");
  *planner = nullptr;
  if (inputs == nullptr) return refused(result, "inputs must not be null");
  if (inputs->size != sizeof *inputs) {
    return refused(result, "size of the inputs must be sizeof(mainbore_inputs) of the mainbore.h of this library");
  }
  return guarded(result, [&] {
    const auto one = [](const mainbore_text* text) { return whole(text, text == nullptr ? 0 : 1); };
    if (!whole(inputs->rules, inputs->rules_count) || !whole(inputs->data, inputs->data_count) ||
        !one(inputs->settings) || !one(inputs->approved)) {
      return refused(result, "a text or a list of texts is null and has a size");
    }
    std::vector<mainbore::Diagnostic> faults;
    std::unique_ptr<mainbore_planner> made = make_planner(*inputs, faults);
    if (made == nullptr) {
      *result = handed_out(faults_to_json(faults));
      return MAINBORE_UNREADABLE;
    }
    *planner = made.release();
    return MAINBORE_GO;
  });
}

int mainbore_planner_new(const mainbore_text* rules, size_t rules_count, const mainbore_text* data, size_t data_count,
                         const mainbore_text* settings, mainbore_planner** planner, char** result) {
  const mainbore_inputs inputs = {sizeof inputs, rules, rules_count, data, data_count, settings, nullptr};
  return mainbore_planner_from(&inputs, planner, result);
}

void mainbore_planner_free(mainbore_planner* planner) { delete planner; }
