// The settings file, read from its text.
#include <algorithm>
#include <array>

#include "io/job/job_part.hpp"
#include "io/text/json_text.hpp"
#include "io/text/nearest.hpp"
#include "io/text/text_scan.hpp"
#include "mainbore/job_file.hpp"
#include "mainbore/settings_file.hpp"

namespace mainbore {
namespace {

using io::JsonNode;
using io::JsonText;
using io::JsonType;
using io::Problem;

constexpr std::array<std::string_view, 8> known_keys = {"format", "machine", "fittings", "rules", "units",
                                                        "crew",   "language", translation_reviewed_by};
constexpr std::array<std::string_view, 2> unit_words = {"us", "si"};

// Of a machine or a crew: there are no other facts of a job in settings.
std::optional<SettingValue> value_of(const io::JobField& field, const Job& job) {
  const io::FieldValue value = field.load(job, 0, field.kind);
  if (const auto* text = std::get_if<std::string>(&value)) return *text;
  if (const auto* measure = std::get_if<Measure>(&value)) return *measure;
  if (const auto* size = std::get_if<NominalSize>(&value)) return *size;
  if (const auto* whole = std::get_if<int>(&value)) {
    if (field.choice != nullptr) return std::string(field.choice->names[static_cast<std::size_t>(*whole)]);
    return *whole;
  }
  return std::nullopt;
}

class SettingsReader {
 public:
  SettingsReader(std::string_view text, std::string_view name, const Catalog& catalog)
      : text_(text), source_(text, name, 1), catalog_(catalog) {
    settings_.file = name;
  }

  SettingsFile read() && {
    if (auto fault = source_.unreadable(longest_settings, "a settings file")) {
      diagnostics_.push_back(*std::move(fault));
    } else {
      read_text();
    }
    SettingsFile result;
    std::stable_sort(diagnostics_.begin(), diagnostics_.end(), [](const Diagnostic& a, const Diagnostic& b) {
      return std::pair(a.line, a.column) < std::pair(b.line, b.column);
    });
    if (diagnostics_.size() > most_diagnostics) diagnostics_.resize(most_diagnostics);
    result.diagnostics = std::move(diagnostics_);
    if (result.diagnostics.empty()) result.settings = std::move(settings_);
    return result;
  }

 private:
  // Finding a place takes time: once there are enough, no more are looked up.
  [[nodiscard]] bool enough() const { return diagnostics_.size() >= most_diagnostics; }
  void add_at(const JsonText& json, std::uint32_t node, io::Span span, Problem problem) {
    if (!enough()) diagnostics_.push_back(source_.at(span, json.pointer(node), std::move(problem)));
  }
  void add_at(const JsonText& json, std::uint32_t node, Problem problem) {
    add_at(json, node, json.node(node).span, std::move(problem));
  }

  void read_text() {
    const JsonText json(text_, deepest_job);
    for (const io::JsonFault& fault : json.faults()) {
      Problem problem = fault.problem;
      const bool twice = problem.code == "job.duplicate-key";
      if (twice) problem.code = "settings.duplicate-key";
      if (!enough()) diagnostics_.push_back(source_.at(fault.span, twice ? json.pointer(fault.node) : "", problem));
    }
    if (!json.is_json() || !expect(json, 0, JsonType::object, R"({"crew": "North yard", "units": "us"})")) return;
    std::vector<std::uint32_t> facts;
    std::optional<std::uint32_t> fittings_at;
    for (std::uint32_t child = 1; child < json.node(0).next; child = json.node(child).next) {
      const std::string_view key = json.node(child).key;
      if (key == "machine" || key == "crew") facts.push_back(child);
      else if (key == "rules") read_rules(json, child);
      else if (key == "fittings") fittings_at = child;
      else if (key == "units") read_units(json, child);
      else if (key == "language") read_language(json, child);
      else if (key == translation_reviewed_by) read_reviewer(json, child);
      else if (key == "format") read_format(json, child);
      else unknown_key(json, child);
    }
    read_facts(json, facts);
    if (fittings_at) read_fittings(json, *fittings_at);
  }

  void read_fittings(const JsonText& json, std::uint32_t node) {
    constexpr std::string_view such_as = R"([{"tap": "1 in", "saddle_height": "2 in", "stop_length": "3.5 in"}])";
    if (!expect(json, node, JsonType::array, such_as)) return;
    for (std::uint32_t child = node + 1; child < json.node(node).next; child = json.node(child).next) {
      if (settings_.fittings.size() == most_fittings) {
        return add_at(json, child, {"settings.unknown-value", "more than " + std::to_string(most_fittings) + " fittings", ""});
      }
      if (expect(json, child, JsonType::object, such_as.substr(1, such_as.size() - 2))) read_fitting(json, child);
    }
  }

  void read_fitting(const JsonText& json, std::uint32_t node) {
    FittingLengths fitting;
    for (std::uint32_t child = node + 1; child < json.node(node).next; child = json.node(child).next) {
      read_fitting_fact(json, child, fitting);
    }
    if (fitting.tap == NominalSize()) {
      return add_at(json, node, {"settings.unknown-value", "a fitting without its size of tap", "such as \"tap\": \"1 in\""});
    }
    for (const FittingLengths& known : settings_.fittings) {
      if (known.tap != fitting.tap) continue;
      return add_at(json, node, {"settings.unknown-value", "a second fitting for " + fitting.tap.label() + " in", "give each size once"});
    }
    settings_.fittings.push_back(fitting);
  }

  void read_fitting_fact(const JsonText& json, std::uint32_t node, FittingLengths& fitting) {
    const io::JsonNode& given = json.node(node);
    const auto* const fact = std::find_if(settings_fitting_facts.begin(), settings_fitting_facts.end(),
                                          [&](const FittingFact& one) { return given.key == one.key; });
    if (fact == settings_fitting_facts.end()) {
      if (enough()) return;
      std::vector<std::string_view> keys;
      for (const FittingFact& one : settings_fitting_facts) keys.emplace_back(one.key);
      return add_at(json, node, given.key_span,
                    {"settings.unknown-key", io::quoted(given.key) + " is not part of a fitting", "known here: " + io::listed(keys)});
    }
    const auto text = quantity_text(json, node);
    if (!text) return static_cast<void>(expect(json, node, JsonType::string, "\"3.5 in\""));
    auto read = io::read_value(*io::find_field(fact->path)->field, *text, catalog_);
    if (auto* problem = std::get_if<Problem>(&read)) return add_at(json, node, std::move(*problem));
    const io::FieldValue& value = std::get<io::FieldValue>(read);
    if (const auto* tap = std::get_if<NominalSize>(&value)) fitting.tap = *tap;
    else put_length(json, node, given.key, std::get<Measure>(value).as<1, 0, 0>(), fitting);
  }

  // "3.5 in", or the same as {"value": 3.5, "unit": "in"}.
  static std::optional<std::string> quantity_text(const JsonText& json, std::uint32_t node) {
    const io::JsonNode& given = json.node(node);
    if (given.type == JsonType::string) return std::string(given.text);
    if (given.type != JsonType::object || node + 3 != given.next) return std::nullopt;
    const io::JsonNode* value = &json.node(node + 1);
    const io::JsonNode* unit = &json.node(node + 2);
    if (value->key == "unit") std::swap(value, unit);
    if (value->key != "value" || value->type != JsonType::number || unit->key != "unit" || unit->type != JsonType::string) {
      return std::nullopt;
    }
    return std::string(value->text) + ' ' + std::string(unit->text);
  }

  void put_length(const JsonText& json, std::uint32_t node, std::string_view key, Length length, FittingLengths& fitting) {
    if (key == "saddle_height") fitting.saddle_height = length;
    else if (key == "stop_length") fitting.stop_length = length;
    else fitting.adapter_standoff = length;
    if (key != "adapter_standoff" || settings_.machine.given || !diagnostics_.empty()) return;
    add_at(json, node, {"settings.unknown-value", "an adapter without the machine it goes on", "give the machine's own figures"});
  }

  bool expect(const JsonText& json, std::uint32_t node, JsonType type, std::string_view such_as) {
    if (json.node(node).type == type) return true;
    // Of a whole document only its first character: it may be long.
    const std::size_t begin = json.node(node).span.begin;
    add_at(json, node, node == 0 ? io::Span{begin, begin + 1} : json.node(node).span,
           {"settings.wrong-type",
            std::string(io::article_of(json.node(node).type)) + " where " + std::string(io::article_of(type)) +
                " should stand",
            "such as " + std::string(such_as)});
    return false;
  }

  void unknown_key(const JsonText& json, std::uint32_t node) {
    if (enough()) return;
    const std::string_view key = json.node(node).key;
    Problem problem{"settings.unknown-key", io::quoted(key) + " is not part of settings", ""};
    if (const auto near = io::nearest(key, known_keys)) {
      problem.help = "did you mean \"" + std::string(*near) + "\"?  ";
    } else if (const auto path = "machine." + std::string(key); io::find_field(path)) {
      problem.help = "did you mean " + path + "?  ";
    }
    problem.help += "known here: " + io::listed(known_keys);
    add_at(json, node, json.node(node).key_span, std::move(problem));
  }

  void read_format(const JsonText& json, std::uint32_t node) {
    if (json.node(node).type == JsonType::number && json.node(node).text == "1") return;
    add_at(json, node, {"settings.unknown-value", "the format of settings is 1", ""});
  }

  void read_units(const JsonText& json, std::uint32_t node) {
    if (!expect(json, node, JsonType::string, "\"us\" or \"si\"")) return;
    const std::string_view word = json.node(node).text;
    const auto* const found = std::find(unit_words.begin(), unit_words.end(), word);
    if (found != unit_words.end()) {
      settings_.units = word == "si" ? UnitSystem::si : UnitSystem::us;
      return;
    }
    add_at(json, node,
           {"settings.unknown-value", io::quoted(word) + " is not a system of units",
            "\"us\" (in, ft, psi) or \"si\" (mm, m, kPa)"});
  }

  void read_language(const JsonText& json, std::uint32_t node) {
    if (!expect(json, node, JsonType::string, "\"en\" or \"es\"")) return;
    settings_.language = language_named(json.node(node).text);
    if (settings_.language) return;
    add_at(json, node,
           {"settings.unknown-value", io::quoted(json.node(node).text) + " is not a language of results",
            "\"en\" (English) or \"es\" (Spanish)"});
  }

  void read_reviewer(const JsonText& json, std::uint32_t node) {
    if (!expect(json, node, JsonType::string, "\"R. Salas, Ashby Vale\"")) return;
    const std::string_view name = json.node(node).text;
    // As one line of a job, so that a name can be shown anywhere.
    const auto line = io::read_value(*io::find_field("crew")->field, name, catalog_);
    if (const auto* problem = std::get_if<Problem>(&line)) {
      add_at(json, node, {"settings.unknown-value", problem->message, "the name of who reviewed the translation"});
    } else {
      settings_.translation_reviewed_by = io::trimmed(name);
    }
  }

  void read_rules(const JsonText& json, std::uint32_t node) {
    if (!expect(json, node, JsonType::array, R"(["ashby_vale.json"])")) return;
    for (std::uint32_t child = node + 1; child < json.node(node).next; child = json.node(child).next) {
      if (settings_.rules.size() == most_rules_files) {
        return add_at(json, child,
                      {"settings.unknown-value", "more than " + std::to_string(most_rules_files) + " rules files", ""});
      }
      if (!expect(json, child, JsonType::string, "\"ashby_vale.json\"")) continue;
      const std::string_view name = json.node(child).text;
      // As one line of a job, so that a name can be shown anywhere.
      const auto line = io::read_value(*io::find_field("crew")->field, name, catalog_);
      if (const auto* problem = std::get_if<Problem>(&line)) {
        add_at(json, child, {"settings.unknown-value", problem->message, "the name of a file"});
      } else if (name.empty() || name == "-") {
        add_at(json, child,
               {"settings.unknown-value", io::quoted(name) + " is not the name of a file",
                "a rules file, seen from the folder of the settings file"});
      } else {
        settings_.rules.emplace_back(name);
      }
    }
  }

  void read_facts(const JsonText& json, const std::vector<std::uint32_t>& members) {
    io::JobPart part = io::read_job_part(json, source_, members, catalog_);
    std::move(part.diagnostics.begin(), part.diagnostics.end(), std::back_inserter(diagnostics_));
    if (!diagnostics_.empty()) return;
    for (const io::JobField* field : part.given) {
      if (!field->path.starts_with("machine.")) continue;
      if (auto value = value_of(*field, part.job)) {
        settings_.machine_facts.push_back({std::string(field->path), *std::move(value)});
      }
    }
    settings_.crew = std::move(part.job.crew);
    settings_.machine = std::move(part.job.machine);
    if (settings_.machine.given) {
      MachineProfile machine = *settings_.machine.given;
      machine.basis = stated_in_settings;
      settings_.machine.given = std::make_shared<const MachineProfile>(std::move(machine));
    }
  }

  std::string_view text_;
  io::SourceText source_;
  const Catalog& catalog_;
  Settings settings_;
  std::vector<Diagnostic> diagnostics_;
};

}  // namespace

SettingsFile read_settings(std::string_view text, std::string_view file_name, const Catalog& catalog) {
  if (text.starts_with("\xEF\xBB\xBF")) text.remove_prefix(3);
  return SettingsReader(text, file_name, catalog).read();
}

std::span<const DiagnosticText> settings_diagnostic_texts() {
  static constexpr std::array texts = {
      DiagnosticText{"settings.duplicate-key", "a key given twice",
                     "Of two equal keys neither counts: keep the right one."},
      DiagnosticText{"settings.unknown-key", "a key that is not part of a settings file",
                     "A misspelt key would silently do nothing, so it is an error, with the nearest known key. Facts of "
                     "one job, such as its main, do not belong in settings."},
      DiagnosticText{"settings.unknown-value", "a word that is not one of those known",
                     "Units are \"us\" or \"si\", the language is \"en\" or \"es\", rules are names of files, the format is 1."},
      DiagnosticText{"settings.wrong-type", "a value of the wrong kind",
                     "The machine is an object as in a job, fittings are a list of objects, rules a list of file names, all "
                     "others are texts."},
  };
  return texts;
}

}  // namespace mainbore
