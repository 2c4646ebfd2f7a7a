// Lines of a ledger: written, read, exported.
#include "mainbore/ledger.hpp"

#include <algorithm>
#include <nlohmann/json.hpp>

#include "unit/record/readings.hpp"

using namespace mainbore;
using namespace mainbore::test;

namespace {

std::string line(int revision, std::vector<Setting> settings = {}) {
  return ledger_line(example_record(std::move(settings)), revision, UnitSystem::us);
}
Ledger ledger_of(std::string_view text) { return read_ledger(text, "ledger.ndjson", Catalog::builtin()); }

}  // namespace

TEST_CASE("a record comes back from its line as it was written") {
  const Readings readings = example_readings({{"longitude", "-85.1234567", ""}, {"latitude", "41.5", ""}});
  const std::string text = ledger_line(record_of(example_job(), readings), 1, UnitSystem::us);
  CHECK(text.starts_with(ledger_line_begin));
  CHECK(std::count(text.begin(), text.end(), '\n') == 1);
  const Ledger ledger = ledger_of(text);
  CHECK(ledger.diagnostics.empty());
  REQUIRE(ledger.entries.size() == 1);
  const LedgerEntry& entry = ledger.entries.front();
  CHECK(entry.id == "AV-1041");
  CHECK(entry.main_size == "8 in");
  CHECK(entry.complete);
  for (const RecordEntry& known : record_entries()) {
    if (known.key == RecordKey::order) continue;
    INFO(known.name);
    CHECK(written(known, entry.readings.at(known.key), UnitSystem::us) ==
          written(known, readings.at(known.key), UnitSystem::us));
  }
}

TEST_CASE("a correction keeps the first record, and counts") {
  const std::string text =
      line(1) + line(1, {{"tap_number", "2", ""}}) + line(2, {{"remarks", "lined with cement", ""}});
  const Ledger ledger = ledger_of(text);
  REQUIRE(ledger.entries.size() == 3);
  CHECK(ledger.revisions("AV-1041", 1) == 2);
  CHECK(ledger.revisions("AV-1041", 2) == 1);
  CHECK(ledger.revisions("AV-1", 1) == 0);
  const auto latest = ledger.latest();
  REQUIRE(latest.size() == 2);
  CHECK(latest[0]->revision == 2);
  CHECK(latest[0]->readings.text(RecordKey::remarks) == "lined with cement");
  CHECK(ledger.latest("AV-2").empty());
}

TEST_CASE("a last line is whole, begun, or somebody else's") {
  const std::string one = line(1);
  for (std::size_t cut = 0; cut <= one.size(); cut += cut < 40 || cut + 40 > one.size() ? 1 : 37) {
    const std::string text = one + one.substr(0, cut);
    const Ledger ledger = ledger_of(text);
    CHECK(ledger.diagnostics.empty());
    CHECK(ledger.torn == (cut > 0 && cut < one.size()));
    CHECK(ledger.torn_is_whole == (cut + 1 == one.size()));
    CHECK(ledger.whole == (cut == one.size() ? text.size() : one.size()));
    CHECK(ledger.entries.size() == (cut == one.size() ? 2 : 1));
  }
  CHECK(ledger_of("work order 12").diagnostics.size() == 1);
  CHECK(ledger_of(one + "x").diagnostics.size() == 1);
  CHECK(ledger_of("\n" + one).diagnostics.size() == 1);
  CHECK(ledger_of(one.substr(0, 90) + '\n' + one).diagnostics.size() == 1);
  CHECK(ledger_of("").entries.empty());
}

TEST_CASE("a writer's scan, in whatever pieces, knows of a ledger what the reader knows") {
  const std::string one = line(1);
  const std::string other = line(1, {{"tap_number", "2", ""}});
  std::string escaped = line(2);
  escaped.replace(escaped.find("AV-1041"), 7, "AV\\u002d1041");
  std::vector<std::string> texts = {"",
                                    one,
                                    one + other + line(2),
                                    other,
                                    escaped,
                                    "work order 12",
                                    one + "x",
                                    "\n" + one,
                                    one.substr(0, 90) + '\n' + one,
                                    one + "[1]\n" + other};
  for (std::size_t cut = 0; cut <= one.size(); cut += cut < 40 || cut + 40 > one.size() ? 1 : 37)
    texts.push_back(other + one.substr(0, cut));
  for (const std::string& text : texts) {
    INFO(text.substr(0, 100));
    const Ledger ledger = ledger_of(text);
    for (const std::size_t piece : {std::size_t{1}, std::size_t{7}, std::size_t{4096}}) {
      LedgerScan scan("AV-1041", 1, "ledger.ndjson", Catalog::builtin());
      for (std::size_t at = 0; at < text.size(); at += piece) scan.add(std::string_view(text).substr(at, piece));
      scan.end();
      CHECK(scan.size == text.size());
      CHECK(scan.whole == ledger.whole);
      CHECK(scan.torn == ledger.torn);
      CHECK(scan.torn_is_whole == ledger.torn_is_whole);
      CHECK(scan.torn_is_of_tap == ledger.torn_is_whole);
      CHECK(scan.revisions == ledger.revisions("AV-1041", 1));
      REQUIRE(scan.diagnostics.size() == ledger.diagnostics.size());
      for (std::size_t i = 0; i < scan.diagnostics.size(); ++i) {
        CHECK(format_diagnostic(scan.diagnostics[i]) == format_diagnostic(ledger.diagnostics[i]));
      }
    }
  }
}

TEST_CASE("exports name every tap once, points longitude first") {
  const std::string text = line(1, {{"longitude", "-85.1234567", ""}, {"latitude", "41.5", ""}}) +
                           line(1, {{"tap_number", "2", ""}, {"remarks", "=1+1", ""}});
  const Ledger ledger = ledger_of(text);
  const auto json = nlohmann::json::parse(ledger_to_json(ledger.latest()));
  CHECK(json.size() == 2);
  const auto map = nlohmann::json::parse(ledger_to_geojson(ledger.latest(), UnitSystem::us));
  CHECK(map["type"] == "FeatureCollection");
  REQUIRE(map["features"].size() == 2);
  CHECK(map["features"][0]["geometry"] ==
        nlohmann::json::parse(R"({"type":"Point","coordinates":[-85.1234567,41.5]})"));
  CHECK(map["features"][1]["geometry"].is_null());
  CHECK(map["features"][0]["properties"]["tie_1_ft"] == 12.5);
  CHECK_FALSE(map.contains("crs"));
  const std::string csv = ledger_to_csv(ledger.latest(), UnitSystem::si);
  CHECK(csv.find("tie_1 [m]") != std::string::npos);
  CHECK(csv.find("'=1+1") != std::string::npos);  // no spreadsheet runs it
  CHECK(std::count(csv.begin(), csv.end(), '\n') == 3);
}

// Lines of an edition that took any text for a leak check.
TEST_CASE("a leak check is judged anew in exports, whatever the line says of it") {
  std::string old = line(1, {{"leak_check", "drips at the stop", ""}});
  const std::size_t at = old.find(R"("leak_check":"leaks",)");
  REQUIRE(at != std::string::npos);
  old.erase(at, std::string_view(R"("leak_check":"leaks",)").size());
  const Ledger ledger = ledger_of(old);
  REQUIRE(ledger.entries.size() == 1);
  const auto map = nlohmann::json::parse(ledger_to_geojson(ledger.latest(), UnitSystem::us));
  CHECK(map["features"][0]["properties"]["leak_check_says"] == "leaks");
  const std::string csv = ledger_to_csv(ledger.latest(), UnitSystem::us);
  CHECK(csv.find(",leak_check_says\r\n") != std::string::npos);
  CHECK(csv.ends_with(",leaks\r\n"));
}

TEST_CASE("holes count from the last sharpening, depths by tool and stop") {
  std::string text;
  for (int tap = 1; tap <= 5; ++tap) {
    text += line(1, {{"tap_number", std::to_string(tap), ""},
                     {"start", std::to_string(7 + tap) + ":30", ""},
                     {"tool_state", tap == 3 ? "sharpened" : "as before", ""}});
  }
  text += line(1, {{"tap_number", "6", ""}, {"tool", "CT-9", ""}, {"tap_depth", "?", ""}, {"tool_state", "?", ""}});
  // A correction of a tap is no further hole.
  text += line(2, {{"tap_number", "5", ""}, {"start", "12:30", ""}, {"tool_state", "as before", ""}});
  const Ledger ledger = ledger_of(text);
  const ToolHistory history = tool_history(ledger.latest());
  REQUIRE(history.tools.size() == 2);
  CHECK(history.tools[0].tool == "CT-7");
  CHECK(history.tools[0].holes == 5);
  CHECK(history.tools[0].since_sharpened == 3);
  CHECK(history.tools[0].last_state == "sharpened");
  CHECK(history.tools[1].since_sharpened == 1);
  CHECK(history.tools[1].last_state.empty());
  // Those of the edge that it has now.
  REQUIRE(history.depths.size() == 3);
  CHECK(history.depths[0].depth.base() == Approx(1.51));
  const std::string told = tool_history_text(history, UnitSystem::us);
  INFO(told);
  const std::size_t pair = told.find("CT-7 with ");
  REQUIRE(pair != std::string::npos);
  CHECK(told.find("CT-7 with ", pair + 1) == std::string::npos);
  CHECK(told.find("--set service.trial.depth=\"1.51 in\"") != std::string::npos);
  CHECK(told.find("--set service.trial.wrench_turns=2") != std::string::npos);
}
