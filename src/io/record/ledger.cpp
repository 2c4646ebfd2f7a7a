#include "mainbore/ledger.hpp"

#include <simdjson.h>

#include <algorithm>
#include <charconv>
#include <map>
#include <utility>

#include "io/record/readings_reader.hpp"
#include "io/text/csv_writer.hpp"
#include "io/text/json_text.hpp"
#include "io/text/json_writer.hpp"
#include "io/text/source_text.hpp"
#include "mainbore/readings_file.hpp"

namespace mainbore {
namespace {

using io::JsonText;
using io::JsonType;
using io::member_of;

constexpr int places_of_degrees = 7;  // a centimeter on the ground

std::string text_of_member(const JsonText& json, std::uint32_t node, std::string_view key) {
  const auto member = member_of(json, node, key);
  return member && json.node(*member).type == JsonType::string ? std::string(json.node(*member).text) : std::string();
}

std::optional<int> whole_of_member(const JsonText& json, std::uint32_t node, std::string_view key) {
  const auto member = member_of(json, node, key);
  if (!member || json.node(*member).type != JsonType::number) return std::nullopt;
  const std::string_view text = json.node(*member).text;
  int value = 0;
  const auto [end, error] = std::from_chars(text.data(), text.data() + text.size(), value);
  return error == std::errc() && end == text.data() + text.size() && value > 0 ? std::optional(value) : std::nullopt;
}

bool flag_of_member(const JsonText& json, std::uint32_t node, std::string_view key) {
  const auto member = member_of(json, node, key);
  return member && json.node(*member).type == JsonType::boolean && json.node(*member).truth;
}

std::string size_in(const JsonText& json, std::string_view part) {
  const auto object = member_of(json, 0, part);
  const auto size = object ? member_of(json, *object, "size") : std::nullopt;
  const auto value = size ? member_of(json, *size, "value") : std::nullopt;
  return value ? std::string(json.node(*value).text) + ' ' + text_of_member(json, *size, "unit") : std::string();
}

// What is wrong with the line; nothing where it is a record.
std::optional<std::string> read_entry(std::string_view line, const Catalog& catalog, LedgerEntry& entry) {
  if (!line.starts_with(ledger_line_begin)) return "is no record of a tap";
  const JsonText json(line, deepest_job);
  if (!json.is_json() || !json.faults().empty()) return "is broken: " + json.faults().front().problem.message;
  entry.id = text_of_member(json, 0, "id");
  const auto revision = whole_of_member(json, 0, "revision");
  const auto number = whole_of_member(json, 0, "tap_number");
  const auto record = member_of(json, 0, "record");
  if (entry.id.empty() || !revision || !number || !record || json.node(*record).type != JsonType::object) {
    return "is no record of a tap: id, revision, tap_number and record must stand in it";
  }
  entry.revision = *revision;
  entry.tap_number = *number;
  entry.place = text_of_member(json, 0, "place");
  entry.crew = text_of_member(json, 0, "crew");
  entry.verdict = text_of_member(json, 0, "verdict");
  if (const auto main = member_of(json, 0, "main")) entry.material = text_of_member(json, *main, "material");
  entry.main_size = size_in(json, "main");
  entry.service_size = size_in(json, "service");
  entry.complete = flag_of_member(json, 0, "complete");
  entry.is_void = flag_of_member(json, 0, "void");
  for (std::uint32_t child = *record + 1; child < json.node(*record).next; child = json.node(child).next) {
    const RecordEntry* const known = record_entry_named(json.node(child).key);
    if (known == nullptr) continue;  // of a later edition
    auto value = io::read_record_value(*known, json, child, catalog);
    if (const auto* problem = std::get_if<io::Problem>(&value))
      return "cannot be read at " + std::string(known->name) + ": " + problem->message;
    entry.readings.at(known->key) = std::move(std::get<RecordValue>(value));
  }
  return std::nullopt;
}

// Judged anew: a line of an earlier edition does not say.
constexpr std::string_view judged_column = "leak_check_says";
std::string_view leak_judged(const LedgerEntry& entry) {
  const LeakCheck said = entry.readings.has(RecordKey::leak_check)
                             ? leak_said(entry.readings.text(RecordKey::leak_check))
                             : LeakCheck::unread;
  return leak_check_names[static_cast<std::size_t>(said)];
}

std::string heading_of(const RecordEntry& entry, UnitSystem units) {
  std::string name(entry.name);
  if (entry.type != RecordType::quantity || entry.kind == Kind::ratio) return name;
  return name + " [" + std::string(shown(Measure(0.0, entry.kind), units).unit) + ']';
}

bool is_column(const RecordEntry& entry) { return entry.key != RecordKey::order && entry.key != RecordKey::tap_number; }

void write_cell(io::CsvWriter& row, const RecordEntry& entry, const RecordValue& value, UnitSystem units) {
  const auto* const measure = std::get_if<Measure>(&value);
  if (measure == nullptr) return row.text(written(value, units));
  if (entry.kind == Kind::ratio) return row.number(measure->base(), places_of_degrees);
  const Shown display = shown(*measure, units);
  row.number(display.value, display.decimals);
}

// The word of a key with its unit behind it, for programs of maps that know no objects: "tie_1_ft".
std::string property_of(const RecordEntry& entry, UnitSystem units) {
  std::string name(entry.name);
  if (entry.type != RecordType::quantity || entry.kind == Kind::ratio) return name;
  return name + '_' + std::string(shown(Measure(0.0, entry.kind), units).unit);
}

void write_feature(io::JsonWriter& json, const LedgerEntry& entry, UnitSystem units) {
  const Readings& read = entry.readings;
  const auto longitude = read.measure(RecordKey::longitude);
  const auto latitude = read.measure(RecordKey::latitude);
  json.begin_object();
  json.text("type", "Feature");
  if (longitude && latitude) {
    json.begin_object("geometry");
    json.text("type", "Point");
    json.begin_array("coordinates");
    json.number({}, longitude->base(), places_of_degrees);
    json.number({}, latitude->base(), places_of_degrees);
    json.end_array();
    json.end_object();
  } else {
    json.null("geometry");
  }
  json.begin_object("properties");
  json.text("id", entry.id);
  json.whole("tap_number", entry.tap_number);
  json.whole("revision", entry.revision);
  const auto put = [&](std::string_view key, const std::string& text) {
    if (!text.empty()) json.text(key, text);
  };
  put("place", entry.place);
  put("crew", entry.crew);
  put("main_material", entry.material);
  put("main_size", entry.main_size);
  put("service_size", entry.service_size);
  put("verdict", entry.verdict);
  json.flag("complete", entry.complete);
  json.flag("void", entry.is_void);
  for (const RecordEntry& known : record_entries()) {
    const bool geometry = known.key == RecordKey::longitude || known.key == RecordKey::latitude;
    if (!is_column(known) || geometry || !read.has(known.key)) continue;
    const RecordValue& value = read.at(known.key);
    const auto* const measure = std::get_if<Measure>(&value);
    const Shown display = measure == nullptr ? Shown() : shown(*measure, units);
    const std::string name = property_of(known, units);
    if (measure == nullptr) json.text(name, written(value, units));
    else if (known.kind == Kind::ratio) json.number(name, measure->base(), places_of_degrees);
    else json.number(name, display.value, display.decimals);
  }
  json.text(judged_column, leak_judged(entry));
  json.end_object();
  json.end_object();
}

}  // namespace

std::vector<const LedgerEntry*> Ledger::latest(std::string_view order) const {
  std::map<std::pair<std::string_view, int>, std::size_t> place_of;
  std::vector<const LedgerEntry*> last;
  for (const LedgerEntry& entry : entries) {
    if (!order.empty() && entry.id != order) continue;
    const auto [place, fresh] = place_of.try_emplace({entry.id, entry.tap_number}, last.size());
    if (fresh) last.push_back(&entry);
    else last[place->second] = &entry;
  }
  return last;
}

int Ledger::revisions(std::string_view id, int tap_number) const {
  return static_cast<int>(std::count_if(entries.begin(), entries.end(), [&](const LedgerEntry& entry) {
    return entry.id == id && entry.tap_number == tap_number;
  }));
}

namespace {

// Behind the last line end stands at most the beginning of a record that a writer did not finish.
bool is_begun(std::string_view line) {
  const std::size_t compared = std::min(line.size(), ledger_line_begin.size());
  return line.substr(0, compared) == ledger_line_begin.substr(0, compared);
}

io::Problem broken_line(std::int64_t number, const std::string& what) {
  return {"ledger.broken-line", "line " + std::to_string(number) + ' ' + what,
          "a ledger has nothing in it but what record --append wrote"};
}

}  // namespace

Ledger read_ledger(std::string_view text, std::string_view file_name, const Catalog& catalog) {
  Ledger ledger;
  const io::SourceText source(text, file_name, 1);
  std::int64_t number = 0;
  for (std::size_t begin = 0; begin < text.size();) {
    ++number;
    const std::size_t end = text.find('\n', begin);
    const bool torn = end == std::string_view::npos;
    const std::string_view line = text.substr(begin, torn ? std::string_view::npos : end - begin);
    LedgerEntry entry;
    entry.line = number;
    entry.text = line;
    const auto wrong = read_entry(line, catalog, entry);
    const bool begun = torn && is_begun(line);
    ledger.torn = torn;
    ledger.torn_is_whole = torn && !wrong;
    if (wrong && !begun && ledger.diagnostics.size() < most_diagnostics) {
      ledger.diagnostics.push_back(source.at({begin, begin + line.size()}, "", broken_line(number, *wrong)));
    }
    if (torn) break;
    if (!wrong) ledger.entries.push_back(std::move(entry));
    begin = end + 1;
    ledger.whole = begin;
  }
  return ledger;
}

// --- before appending ---

struct LedgerScan::Parser {
  simdjson::dom::parser json;
  std::string padded;
};

LedgerScan::LedgerScan(std::string id, int tap_number, std::string file_name, const Catalog& catalog)
    : parser_(std::make_unique<Parser>()),
      id_(std::move(id)),
      tap_number_(tap_number),
      file_name_(std::move(file_name)),
      catalog_(catalog) {}
LedgerScan::~LedgerScan() = default;

void LedgerScan::add(std::string_view bytes) {
  size += bytes.size();
  for (std::size_t end = bytes.find('\n'); end != std::string_view::npos; end = bytes.find('\n')) {
    rest_.append(bytes.substr(0, end));
    line(rest_);
    whole += rest_.size() + 1;
    rest_.clear();
    bytes.remove_prefix(end + 1);
  }
  rest_.append(bytes);
}

void LedgerScan::line(std::string_view text) {
  ++lines_;
  bool of_tap = false;
  if (is_record(text, of_tap)) {
    revisions += of_tap ? 1 : 0;
    return;
  }
  // The reader that is slow says what is wrong, or that nothing is.
  LedgerEntry entry;
  if (const auto what = read_entry(text, catalog_, entry)) return wrong(text, *what);
  revisions += entry.id == id_ && entry.tap_number == tap_number_ ? 1 : 0;
}

void LedgerScan::wrong(std::string_view text, const std::string& what) {
  if (diagnostics.size() >= most_diagnostics) return;
  diagnostics.push_back(io::SourceText(text, file_name_, lines_).at({0, text.size()}, "", broken_line(lines_, what)));
}

bool LedgerScan::is_record(std::string_view text, bool& of_tap) {
  if (!text.starts_with(ledger_line_begin)) return false;
  std::string& padded = parser_->padded;
  if (padded.size() < text.size() + simdjson::SIMDJSON_PADDING)
    padded.resize(2 * text.size() + simdjson::SIMDJSON_PADDING);
  text.copy(padded.data(), text.size());
  simdjson::dom::element root;
  simdjson::dom::object record;
  std::string_view id;
  std::int64_t revision = 0;
  std::int64_t number = 0;
  if (parser_->json.parse(padded.data(), text.size(), false).get(root) || root["id"].get(id) ||
      root["revision"].get(revision) || root["tap_number"].get(number) || root["record"].get(record)) {
    return false;
  }
  of_tap = id == id_ && number == tap_number_;
  return !id.empty() && revision > 0 && number > 0;
}

void LedgerScan::end() {
  torn = !rest_.empty();
  if (!torn) return;
  ++lines_;
  LedgerEntry entry;
  const auto what = read_entry(rest_, catalog_, entry);
  torn_is_whole = !what;
  torn_is_of_tap = torn_is_whole && entry.id == id_ && entry.tap_number == tap_number_;
  if (what && !is_begun(rest_)) wrong(rest_, *what);
}

std::string ledger_line(const TapRecord& record, int revision, UnitSystem units) {
  std::string line = record_to_json(record, units, JsonStyle::compact);
  constexpr std::string_view begin = R"({"format":1,)";
  line.replace(0, begin.size(), std::string(ledger_line_begin) + std::to_string(revision) + ',');
  return line + '\n';
}

std::string ledger_to_json(const std::vector<const LedgerEntry*>& entries) {
  std::string out = "[";
  for (const LedgerEntry* entry : entries) {
    out += out.size() > 1 ? ",\n" : "\n";
    out += entry->text;
  }
  return out + "\n]\n";
}

std::string ledger_to_csv(const std::vector<const LedgerEntry*>& entries, UnitSystem units) {
  std::string out;
  io::CsvWriter header(out);
  for (const std::string_view name : {"id", "tap_number", "revision", "place", "crew", "main_material", "main_size",
                                      "service_size", "verdict", "complete", "void"}) {
    header.text(name);
  }
  for (const RecordEntry& known : record_entries()) {
    if (is_column(known)) header.text(heading_of(known, units));
  }
  header.text(judged_column);
  header.line();
  for (const LedgerEntry* entry : entries) {
    io::CsvWriter row(out);
    row.text(entry->id);
    row.number(entry->tap_number, 0);
    row.number(entry->revision, 0);
    for (const std::string* text :
         {&entry->place, &entry->crew, &entry->material, &entry->main_size, &entry->service_size, &entry->verdict}) {
      row.text(*text);
    }
    row.text(entry->complete ? "yes" : "no");
    row.text(entry->is_void ? "yes" : "no");
    for (const RecordEntry& known : record_entries()) {
      if (is_column(known)) write_cell(row, known, entry->readings.at(known.key), units);
    }
    row.text(leak_judged(*entry));
    row.line();
  }
  return out;
}

std::string ledger_to_geojson(const std::vector<const LedgerEntry*>& entries, UnitSystem units) {
  std::string out;
  io::JsonWriter json(out, JsonStyle::pretty);
  json.begin_object();
  json.text("type", "FeatureCollection");
  json.begin_array("features");
  for (const LedgerEntry* entry : entries) write_feature(json, *entry, units);
  json.end_array();
  json.end_object();
  json.settle();
  return out + '\n';
}

std::string tool_history_to_json(const ToolHistory& history, UnitSystem units, JsonStyle style) {
  std::string out;
  io::JsonWriter json(out, style);
  json.begin_object();
  json.whole("format", 1);
  json.begin_array("tools");
  for (const ToolUse& use : history.tools) {
    json.begin_object();
    json.text("tool", use.tool);
    json.whole("holes", use.holes);
    json.whole("since_sharpened", use.since_sharpened);
    if (!use.last_state.empty()) json.text("last_state", use.last_state);
    if (!use.last_date.empty()) json.text("last_date", use.last_date);
    json.end_object();
  }
  json.end_array();
  json.begin_array("depths");
  for (const PairDepth& pair : history.depths) {
    json.begin_object();
    json.text("tool", pair.tool);
    if (!pair.stop.empty()) json.text("stop", pair.stop);
    if (!pair.date.empty()) json.text("date", pair.date);
    json.quantity("depth", pair.depth, units);
    if (pair.hand_turns) json.quantity("hand_turns", *pair.hand_turns, units);
    if (pair.wrench_turns) json.quantity("wrench_turns", *pair.wrench_turns, units);
    if (pair.threads_showing) json.quantity("threads_showing", *pair.threads_showing, units);
    json.end_object();
  }
  json.end_array();
  json.end_object();
  json.settle();
  return out + '\n';
}

}  // namespace mainbore
