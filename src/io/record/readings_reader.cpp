#include "io/record/readings_reader.hpp"

#include <algorithm>
#include <utility>

#include "io/job/job_fields.hpp"
#include "io/text/json_reader.hpp"
#include "io/text/nearest.hpp"
#include "io/text/text_scan.hpp"
#include "mainbore/job_file.hpp"
#include "mainbore/readings_file.hpp"

namespace mainbore {
namespace {

using io::JsonText;
using io::JsonType;
using io::Problem;

std::vector<std::string_view> known_keys() {
  std::vector<std::string_view> keys = {"format", "holds", "deviations"};
  for (const RecordEntry& entry : record_entries()) keys.push_back(entry.name);
  return keys;
}

// "07:30", "7:05", of a day of 24 hours.
bool is_time(std::string_view text) {
  const std::size_t colon = text.find(':');
  if (colon == 0 || colon > 2 || text.size() != colon + 3) return false;
  int parts[2] = {0, 0};
  for (std::size_t i = 0; i < text.size(); ++i) {
    if (i == colon) continue;
    if (!io::is_digit(text[i])) return false;
    int& part = parts[i > colon ? 1 : 0];
    part = part * 10 + (text[i] - '0');
  }
  return parts[0] < 24 && parts[1] < 60;
}

RecordValue value_of(const io::JobField& field, const io::FieldValue& value) {
  if (const auto* text = std::get_if<std::string>(&value)) return text->empty() ? RecordValue() : RecordValue(*text);
  if (const auto* measure = std::get_if<Measure>(&value)) return *measure;
  if (const auto* clock = std::get_if<ClockPosition>(&value)) return *clock;
  if (const auto* whole = std::get_if<int>(&value)) {
    if (field.choice == nullptr) return *whole;
    return std::string(field.choice->names[static_cast<std::size_t>(*whole)]);
  }
  return {};
}

constexpr std::array<std::pair<std::string_view, std::string_view>, 1> codes_of_a_job = {
    {{"job.duplicate-key", "readings.duplicate-key"}}};
constexpr io::JsonCodes readings_codes{"readings.unknown-key", "readings.wrong-type", codes_of_a_job};

class ReadingsReader : io::JsonReader {
 public:
  explicit ReadingsReader(const Catalog& catalog) : JsonReader(readings_codes), catalog_(catalog) {}

  void read_file(std::string_view text, std::string_view name) {
    read_document(text, {name, longest_readings, "a readings file", deepest_job}, [&] {
      if (node_at(0).type != JsonType::object) return wrong_type(0, "an object");
      members(0, [&](std::uint32_t child) { read_member(child); });
    });
  }
  void lay(std::span<const Setting> settings) {
    for (const Setting& setting : settings) lay(setting);
  }
  ReadingsFile finish() && {
    ReadingsFile result;
    result.diagnostics = found();
    if (result.diagnostics.empty()) result.readings = std::move(readings_);
    return result;
  }

 private:
  [[nodiscard]] static Problem unknown(std::string_view key) {
    return {"readings.unknown-key", io::quoted(key) + " is not among the readings",
            io::nearest_and_known(key, known_keys())};
  }

  void read_member(std::uint32_t node) {
    const std::string_view key = node_at(node).key;
    if (key == "format") {
      if (node_at(node).type != JsonType::number || node_at(node).text != "1") {
        add(node, {"readings.unknown-value", "the format of readings is 1", ""});
      }
    } else if (key == "holds") {
      read_holds(node);
    } else if (key == "deviations") {
      read_deviations(node);
    } else if (const RecordEntry* entry = record_entry_named(key)) {
      auto value = io::read_record_value(*entry, json(), node, catalog_);
      if (auto* problem = std::get_if<Problem>(&value)) return add(node, std::move(*problem));
      if (readings_.has(entry->key)) {
        return add(node, {"readings.duplicate-key", io::quoted(entry->name) + " is given twice", ""});
      }
      readings_.at(entry->key) = std::move(std::get<RecordValue>(value));
    } else if (!enough()) {
      add_at_key(node, unknown(key));
    }
  }

  void read_holds(std::uint32_t node) {
    if (node_at(node).type != JsonType::object) return wrong_type(node, "an object by codes");
    members(node, [&](std::uint32_t hold) {
      if (node_at(hold).type != JsonType::object) return wrong_type(hold, R"({"found": "...", "by": "..."})");
      members(hold, [&](std::uint32_t part) {
        if (node_at(part).type != JsonType::string) return wrong_type(part, "a text");
        auto problem = lay_hold(node_at(hold).key, node_at(part).key, node_at(part).text);
        if (problem) add(part, *std::move(problem));
      });
    });
  }

  void read_deviations(std::uint32_t node) {
    if (node_at(node).type != JsonType::object) return wrong_type(node, "an object");
    members(node, [&](std::uint32_t child) {
      if (node_at(child).type != JsonType::string) return wrong_type(child, "a text");
      if (auto problem = lay_deviation(node_at(child).key, node_at(child).text)) add(child, *std::move(problem));
    });
  }

  [[nodiscard]] std::variant<std::string, Problem> line(std::string_view text) const {
    auto value = io::read_record_value(entry_of(RecordKey::remarks), text, catalog_);
    if (auto* problem = std::get_if<Problem>(&value)) return std::move(*problem);
    const auto* words = std::get_if<std::string>(&std::get<RecordValue>(value));
    return words == nullptr ? std::string() : *words;
  }

  std::optional<Problem> lay_hold(std::string_view code, std::string_view part, std::string_view text) {
    const auto finding = finding_named(code);
    if (!finding) {
      Problem problem{"readings.unknown-value", io::quoted(code) + " is no code of a hold", ""};
      if (const auto near = io::nearest(code, finding_codes))
        problem.help = "did you mean \"" + std::string(*near) + "\"?";
      return problem;
    }
    if (part != "found" && part != "by") {
      return Problem{"readings.unknown-key", io::quoted(part) + " is not part of a hold", "known here: found, by"};
    }
    auto words = line(text);
    if (auto* problem = std::get_if<Problem>(&words)) return std::move(*problem);
    auto hold = std::find_if(readings_.holds.begin(), readings_.holds.end(),
                             [&](const HoldCleared& known) { return known.code == *finding; });
    if (hold == readings_.holds.end()) hold = readings_.holds.insert(hold, {*finding, "", ""});
    (part == "found" ? hold->found : hold->by) = std::get<std::string>(words);
    return std::nullopt;
  }

  std::optional<Problem> lay_deviation(std::string_view what, std::string_view text) {
    auto name = line(what);
    if (auto* problem = std::get_if<Problem>(&name)) return std::move(*problem);
    auto words = line(text);
    if (auto* problem = std::get_if<Problem>(&words)) return std::move(*problem);
    if (std::get<std::string>(name).empty() || std::get<std::string>(words).empty()) return std::nullopt;
    const RecordEntry* const entry = record_entry_named(what);
    DeviationReason reason{entry == nullptr ? std::get<std::string>(name) : std::string(entry->name),
                           std::get<std::string>(words)};
    const auto known = std::find_if(readings_.deviations.begin(), readings_.deviations.end(),
                                    [&](const DeviationReason& one) { return one.what == reason.what; });
    if (known == readings_.deviations.end()) readings_.deviations.push_back(std::move(reason));
    else *known = std::move(reason);
    return std::nullopt;
  }

  void lay(const Setting& setting) {
    if (auto problem = laid(setting.path, setting.value); problem && !enough()) {
      const std::string where = setting.where.empty() ? "--set " + setting.path : setting.where;
      const io::SourceText text(setting.value, where, 0);
      add(text.at({0, setting.value.size()}, "", *std::move(problem)));
    }
  }

  std::optional<Problem> laid(std::string_view path, std::string_view text) {
    if (path.starts_with("deviations.")) return lay_deviation(path.substr(11), text);
    if (path.starts_with("holds.")) {
      const std::size_t dot = path.rfind('.');
      if (dot > 6) return lay_hold(path.substr(6, dot - 6), path.substr(dot + 1), text);
      return unknown(path);
    }
    const RecordEntry* const entry = record_entry_named(path);
    if (entry == nullptr) return unknown(path);
    auto value = io::read_record_value(*entry, text, catalog_);
    if (auto* problem = std::get_if<Problem>(&value)) return std::move(*problem);
    readings_.at(entry->key) = std::move(std::get<RecordValue>(value));
    return std::nullopt;
  }

  const Catalog& catalog_;
  Readings readings_;
};

}  // namespace

namespace io {

JobField field_of(const RecordEntry& entry) {
  if (!entry.fact.empty()) return *find_field(entry.fact)->field;
  JobField field;
  field.path = entry.name;
  field.help = entry.help;
  switch (entry.type) {
    case RecordType::day:
      field.meaning = TextMeaning::day;
      break;
    case RecordType::quantity:
      field.type = FieldType::quantity;
      field.kind = entry.kind;
      break;
    case RecordType::whole:
      field.type = FieldType::whole;
      break;
    default:
      break;
  }
  field.least = Measure(entry.least, entry.kind);
  field.greatest = Measure(entry.greatest, entry.kind);
  return field;
}

std::variant<RecordValue, Problem> read_record_value(const RecordEntry& entry, std::string_view text,
                                                     const Catalog& catalog) {
  const std::string_view bare = trimmed(text);
  const bool plain_text = entry.type == RecordType::text && entry.fact.empty();
  if (bare.empty() || text::is_blank(bare) || is_missing_mark(bare)) {
    // A word for nothing may be an answer: of the coupon, "none".
    if (!plain_text || plain_name(bare) != "none") return RecordValue();
  }
  if (entry.type == RecordType::time && !is_time(bare)) {
    return Problem{"readings.unknown-value", quoted(text) + " is not a time of day", "from \"0:00\" to \"23:59\""};
  }
  if (entry.type == RecordType::day && !day_in(bare)) {
    return Problem{"readings.unknown-value", quoted(text) + " is no day",
                   "year, month and day, such as \"2026-05-04\""};
  }
  if (!entry.words.empty()) {
    const auto found = std::find_if(entry.words.begin(), entry.words.end(),
                                    [&](std::string_view word) { return plain_name(word) == plain_name(bare); });
    if (found != entry.words.end()) return RecordValue(std::string(*found));
    return Problem{"readings.unknown-value", quoted(text) + " is not a word known here",
                   "one of: " + listed(entry.words)};
  }
  const JobField field = field_of(entry);
  auto value = read_value(field, bare, catalog);
  if (auto* problem = std::get_if<Problem>(&value)) return std::move(*problem);
  return value_of(field, std::get<FieldValue>(value));
}

std::variant<RecordValue, Problem> read_record_value(const RecordEntry& entry, const JsonText& json, std::uint32_t node,
                                                     const Catalog& catalog) {
  const JsonNode& found = json.node(node);
  const bool number = entry.type == RecordType::whole || entry.type == RecordType::quantity;
  if (found.type == JsonType::string) return read_record_value(entry, found.text, catalog);
  if (found.type == JsonType::number && number) return read_record_value(entry, found.text, catalog);
  if (found.type == JsonType::object && entry.type == RecordType::quantity) {
    if (const auto given = quantity_text(json, node)) return read_record_value(entry, *given, catalog);
  }
  return Problem{"readings.wrong-type",
                 std::string(article_of(found.type)) + " where " + allowed_for(entry, catalog) + " should stand", ""};
}

std::optional<std::uint32_t> member_of(const JsonText& json, std::uint32_t node, std::string_view key) {
  if (json.node(node).type != JsonType::object) return std::nullopt;
  for (std::uint32_t child = node + 1; child < json.node(node).next; child = json.node(child).next) {
    if (json.node(child).key == key) return child;
  }
  return std::nullopt;
}

}  // namespace io

ReadingsFile read_readings(std::string_view text, std::string_view file_name, const Catalog& catalog,
                           std::span<const Setting> settings) {
  ReadingsReader reader(catalog);
  reader.read_file(text, file_name);
  reader.lay(settings);
  return std::move(reader).finish();
}

ReadingsFile readings_from_settings(std::span<const Setting> settings, const Catalog& catalog) {
  ReadingsReader reader(catalog);
  reader.lay(settings);
  return std::move(reader).finish();
}

std::string allowed_for(const RecordEntry& entry, const Catalog& catalog) {
  if (entry.type == RecordType::time) return "a time of day, such as \"07:30\"";
  if (entry.type == RecordType::day) return "a day, such as \"2026-05-04\"";
  if (!entry.words.empty()) return "one of: " + io::listed(entry.words);
  return io::allowed_text(io::field_of(entry), catalog);
}

std::span<const DiagnosticText> record_diagnostic_texts() {
  static constexpr std::array texts = {
      DiagnosticText{
          "ledger.broken-line", "a line of a ledger that is no record",
          "A ledger is only ever appended to by this program: a line that cannot be read was changed by something "
          "else. Nothing is appended and nothing exported until it is put right."},
      DiagnosticText{"readings.duplicate-key", "a reading given twice",
                     "Of two equal keys neither counts: keep the right one."},
      DiagnosticText{"readings.unknown-key", "a key that is not among the readings",
                     "A misspelt key would silently record nothing, so it is an error, with the nearest known key."},
      DiagnosticText{"readings.unknown-value", "a reading that is not one of those known",
                     "A word of a choice, a day, a time of day, or the code of a hold."},
      DiagnosticText{
          "readings.wrong-type", "a reading of the wrong kind",
          "Quantities are texts with a unit or {\"value\", \"unit\"}; turns, threads and degrees are plain numbers."},
  };
  return texts;
}

}  // namespace mainbore
