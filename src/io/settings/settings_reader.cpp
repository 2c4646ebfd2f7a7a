// The settings file, read from its text.
#include <algorithm>
#include <array>

#include "io/job/job_part.hpp"
#include "io/settings/aboard_fields.hpp"
#include "io/text/json_reader.hpp"
#include "io/text/nearest.hpp"
#include "io/text/text_scan.hpp"
#include "mainbore/job_file.hpp"
#include "mainbore/settings_file.hpp"
#include "mainbore/work.hpp"

namespace mainbore {
namespace {

using io::JsonNode;
using io::JsonText;
using io::JsonType;
using io::Problem;

constexpr std::array<std::string_view, 10> known_keys = {
    "format", "machine", "fittings", "rules",    "approved",
    "aboard", "units",   "crew",     "language", translation_reviewed_by};
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

constexpr std::array<std::pair<std::string_view, std::string_view>, 1> codes_of_a_job = {
    {{"job.duplicate-key", "settings.duplicate-key"}}};
constexpr io::JsonCodes settings_codes{"settings.unknown-key", "settings.wrong-type", codes_of_a_job};

class SettingsReader : io::JsonReader {
 public:
  explicit SettingsReader(const Catalog& catalog) : JsonReader(settings_codes), catalog_(catalog) {}

  SettingsFile read(std::string_view text, std::string_view name) && {
    settings_.file = name;
    read_document(text, {name, longest_settings, "a settings file", deepest_job}, [&] { read_root(); });
    SettingsFile result;
    result.diagnostics = found_in_order();
    if (result.diagnostics.empty()) result.settings = std::move(settings_);
    return result;
  }

 private:
  void read_root() {
    if (!expect(0, JsonType::object, R"({"crew": "North yard", "units": "us"})")) return;
    std::vector<std::uint32_t> facts;
    std::optional<std::uint32_t> fittings_at;
    members(0, [&](std::uint32_t child) {
      const std::string_view name = node_at(child).key;
      if (name == "machine" || name == "crew") facts.push_back(child);
      else if (name == "rules") read_rules(child);
      else if (name == "approved") read_approved_name(child);
      else if (name == "aboard") read_aboard(child);
      else if (name == "fittings") fittings_at = child;
      else if (name == "units") read_units(child);
      else if (name == "language") read_language(child);
      else if (name == translation_reviewed_by) read_reviewer(child);
      else if (name == "format") read_format(child);
      else unknown_member(child);
    });
    read_facts(facts);
    if (fittings_at) read_fittings(*fittings_at);
  }

  void read_fittings(std::uint32_t node) {
    constexpr std::string_view such_as = R"([{"tap": "1 in", "saddle_height": "2 in", "stop_length": "3.5 in"}])";
    if (!expect(node, JsonType::array, such_as)) return;
    for (std::uint32_t child = node + 1; child < node_at(node).next; child = node_at(child).next) {
      if (settings_.fittings.size() == most_fittings) {
        return add(child, {"settings.unknown-value", "more than " + std::to_string(most_fittings) + " fittings", ""});
      }
      if (expect(child, JsonType::object, such_as.substr(1, such_as.size() - 2))) read_fitting(child);
    }
  }

  void read_fitting(std::uint32_t node) {
    FittingLengths fitting;
    members(node, [&](std::uint32_t child) { read_fitting_fact(child, fitting); });
    if (fitting.tap == NominalSize()) {
      return add(node, {"settings.unknown-value", "a fitting without its size of tap", "such as \"tap\": \"1 in\""});
    }
    for (const FittingLengths& known : settings_.fittings) {
      if (known.tap != fitting.tap) continue;
      return add(node, {"settings.unknown-value", "a second fitting for " + fitting.tap.label() + " in",
                        "give each size once"});
    }
    settings_.fittings.push_back(fitting);
  }

  void read_fitting_fact(std::uint32_t node, FittingLengths& fitting) {
    const io::JsonNode& given = node_at(node);
    const auto* const fact = std::find_if(settings_fitting_facts.begin(), settings_fitting_facts.end(),
                                          [&](const FittingFact& one) { return given.key == one.key; });
    if (fact == settings_fitting_facts.end()) {
      std::vector<std::string_view> keys;
      for (const FittingFact& one : settings_fitting_facts) keys.emplace_back(one.key);
      return unknown_key(node, "a fitting", keys);
    }
    const auto text =
        given.type == JsonType::string ? std::optional(std::string(given.text)) : io::quantity_text(json(), node);
    if (!text) return static_cast<void>(expect(node, JsonType::string, "\"3.5 in\""));
    auto read = io::read_value(*io::find_field(fact->path)->field, *text, catalog_);
    if (auto* problem = std::get_if<Problem>(&read)) return add(node, std::move(*problem));
    const io::FieldValue& value = std::get<io::FieldValue>(read);
    if (const auto* tap = std::get_if<NominalSize>(&value)) fitting.tap = *tap;
    else put_length(node, given.key, std::get<Measure>(value).as<Length>(), fitting);
  }

  void put_length(std::uint32_t node, std::string_view key, Length length, FittingLengths& fitting) {
    if (key == "saddle_height") fitting.saddle_height = length;
    else if (key == "stop_length") fitting.stop_length = length;
    else fitting.adapter_standoff = length;
    if (key != "adapter_standoff" || settings_.machine.given || !sound()) return;
    add(node,
        {"settings.unknown-value", "an adapter without the machine it goes on", "give the machine's own figures"});
  }

  void unknown_member(std::uint32_t node) {
    const auto path = "machine." + std::string(node_at(node).key);
    const bool of_machine = !io::nearest(node_at(node).key, known_keys) && io::find_field(path);
    unknown_key(node, "settings", known_keys, of_machine ? "did you mean " + path + "?" : "");
  }

  void read_format(std::uint32_t node) {
    if (node_at(node).type == JsonType::number && node_at(node).text == "1") return;
    add(node, {"settings.unknown-value", "the format of settings is 1", ""});
  }

  void read_units(std::uint32_t node) {
    if (!expect(node, JsonType::string, "\"us\" or \"si\"")) return;
    const std::string_view word = node_at(node).text;
    const auto* const found = std::find(unit_words.begin(), unit_words.end(), word);
    if (found != unit_words.end()) {
      settings_.units = word == "si" ? UnitSystem::si : UnitSystem::us;
      return;
    }
    add(node, {"settings.unknown-value", io::quoted(word) + " is not a system of units",
               "\"us\" (in, ft, psi) or \"si\" (mm, m, kPa)"});
  }

  void read_language(std::uint32_t node) {
    if (!expect(node, JsonType::string, "\"en\" or \"es\"")) return;
    settings_.language = language_named(node_at(node).text);
    if (settings_.language) return;
    add(node, {"settings.unknown-value", io::quoted(node_at(node).text) + " is not a language of results",
               "\"en\" (English) or \"es\" (Spanish)"});
  }

  void read_reviewer(std::uint32_t node) {
    if (!expect(node, JsonType::string, "\"R. Salas, Ashby Vale\"")) return;
    const std::string_view name = node_at(node).text;
    // As one line of a job, so that a name can be shown anywhere.
    const auto line = io::read_value(*io::find_field("crew")->field, name, catalog_);
    if (const auto* problem = std::get_if<Problem>(&line)) {
      add(node, {"settings.unknown-value", problem->message, "the name of who reviewed the translation"});
    } else {
      settings_.translation_reviewed_by = io::trimmed(name);
    }
  }

  void read_rules(std::uint32_t node) {
    if (!expect(node, JsonType::array, R"(["ashby_vale.json"])")) return;
    for (std::uint32_t child = node + 1; child < node_at(node).next; child = node_at(child).next) {
      if (settings_.rules.size() == most_rules_files) {
        return add(child,
                   {"settings.unknown-value", "more than " + std::to_string(most_rules_files) + " rules files", ""});
      }
      if (auto name = file_name(child, "a rules file")) settings_.rules.push_back(*std::move(name));
    }
  }

  void read_approved_name(std::uint32_t node) {
    if (auto name = file_name(node, "a file of approved fittings")) settings_.approved = *std::move(name);
  }

  // The name of a file, seen from the folder of the settings file.
  std::optional<std::string> file_name(std::uint32_t node, std::string_view what) {
    if (!expect(node, JsonType::string, "\"ashby_vale.json\"")) return std::nullopt;
    const std::string_view name = node_at(node).text;
    // As one line of a job, so that a name can be shown anywhere.
    const auto line = io::read_value(*io::find_field("crew")->field, name, catalog_);
    if (const auto* problem = std::get_if<Problem>(&line)) {
      add(node, {"settings.unknown-value", problem->message, "the name of a file"});
    } else if (name.empty() || name == "-") {
      add(node, {"settings.unknown-value", io::quoted(name) + " is not the name of a file",
                 std::string(what) + ", seen from the folder of the settings file"});
    } else {
      return std::string(name);
    }
    return std::nullopt;
  }

  void read_aboard(std::uint32_t node) {
    constexpr std::string_view such_as = R"({"item": "corporation stop", "size": "1 in", "count": 4})";
    if (!expect(node, JsonType::array, '[' + std::string(such_as) + ']')) return;
    Aboard aboard;
    for (std::uint32_t child = node + 1; child < node_at(node).next; child = node_at(child).next) {
      if (aboard.size() == most_aboard) {
        return add(child,
                   {"settings.unknown-value", "more than " + std::to_string(most_aboard) + " things aboard", ""});
      }
      if (expect(child, JsonType::object, such_as)) aboard.push_back(read_aboard_item(child));
    }
    settings_.aboard = std::make_shared<const Aboard>(std::move(aboard));
  }

  AboardItem read_aboard_item(std::uint32_t node) {
    AboardItem item;
    bool named = false;
    for (std::uint32_t child = node + 1; child < node_at(node).next; child = node_at(child).next) {
      const std::string_view key = node_at(child).key;
      named |= key == "item" || key == "stock";
      const auto fields = io::aboard_fields();
      const auto found =
          std::find_if(fields.begin(), fields.end(), [&](const io::JobField& field) { return field.path == key; });
      if (found == fields.end()) unknown_aboard_key(child);
      else read_aboard_fact(child, *found, item);
    }
    if (!named) {
      add(node, {"settings.unknown-value", "a thing aboard without item or stock",
                 "its name on the load list, such as \"item\": \"corporation stop\", or its \"stock\" number"});
    }
    return item;
  }

  void unknown_aboard_key(std::uint32_t node) {
    std::vector<std::string_view> keys;
    for (const io::JobField& field : io::aboard_fields()) keys.push_back(field.path);
    unknown_key(node, "a thing aboard", keys);
  }

  void read_aboard_fact(std::uint32_t node, const io::JobField& field, AboardItem& item) {
    const io::JsonNode& given = node_at(node);
    const bool plain =
        given.type == JsonType::string || (given.type == JsonType::number && field.type == io::FieldType::whole);
    const auto text = plain ? std::optional(std::string(given.text)) : io::quantity_text(json(), node);
    if (!text) return static_cast<void>(expect(node, JsonType::string, io::allowed_text(field, catalog_)));
    auto read = io::read_value(field, *text, catalog_);
    if (auto* problem = std::get_if<Problem>(&read)) return add(node, std::move(*problem));
    const io::FieldValue& value = std::get<io::FieldValue>(read);
    if (field.path == "item") item.item = load_item_keys[static_cast<std::size_t>(std::get<int>(value))];
    else if (field.path == "stock") item.stock = io::trimmed(std::get<std::string>(value));
    else if (field.path == "size") item.size = std::get<NominalSize>(value);
    else if (field.path == "count") item.count = std::get<int>(value);
    else
      (field.path == "od_from" ? item.od_from
       : field.path == "od_to" ? item.od_to
                               : item.length) = std::get<Measure>(value).as<Length>();
  }

  void read_facts(const std::vector<std::uint32_t>& members_of_a_job) {
    io::JobPart part = io::read_job_part(json(), source(), members_of_a_job, catalog_);
    for (Diagnostic& one : part.diagnostics) add(std::move(one));
    if (!sound()) return;
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

  const Catalog& catalog_;
  Settings settings_;
};

}  // namespace

SettingsFile read_settings(std::string_view text, std::string_view file_name, const Catalog& catalog) {
  return SettingsReader(catalog).read(text, file_name);
}

std::span<const DiagnosticText> settings_diagnostic_texts() {
  static constexpr std::array texts = {
      DiagnosticText{
          "settings.approved-not-given", "an approved list that the settings name is missing",
          "Through the library nothing opens a file: the text of the approved list that the settings name "
          "must be given with them. A plan without it would count on fittings that the utility has not approved."},
      DiagnosticText{"settings.duplicate-key", "a key given twice",
                     "Of two equal keys neither counts: keep the right one."},
      DiagnosticText{
          "settings.rules-not-given", "rules that the settings name are missing",
          "Through the library nothing opens a file: the texts of all rules that the settings name must be given "
          "with them."},
      DiagnosticText{
          "settings.unknown-key", "a key that is not part of a settings file",
          "A misspelt key would silently do nothing, so it is an error, with the nearest known key. Facts of "
          "one job, such as its main, do not belong in settings."},
      DiagnosticText{"settings.unknown-value", "a word that is not one of those known",
                     "Units are \"us\" or \"si\", the language is \"en\" or \"es\", rules are names of files, things "
                     "aboard have the names "
                     "of the load list, the format is 1."},
      DiagnosticText{"settings.wrong-type", "a value of the wrong kind",
                     "The machine is an object as in a job, fittings and what is aboard are lists of objects, rules a "
                     "list of file "
                     "names, all others are texts."},
  };
  return texts;
}

}  // namespace mainbore
