// The settings file as it is read, and what of it goes under a job.
#include <algorithm>

#include "mainbore/job_file.hpp"
#include "mainbore/settings_file.hpp"
#include "support/catch.hpp"

using namespace mainbore;

namespace {

SettingsFile file_of(std::string_view text) { return read_settings(text, "settings.json", Catalog::builtin()); }

std::string one_fault(std::string_view text) {
  const auto faults = file_of(text).diagnostics;
  if (faults.size() != 1) return std::to_string(faults.size()) + " faults";
  return std::string(faults[0].code) + ' ' + faults[0].pointer + ' ' + faults[0].message + " / " + faults[0].help;
}

constexpr std::string_view truck = R"({
  "format": 1,
  "machine": {"title": "Truck 4", "smallest_tap": "3/4 in", "largest_tap": "1 in", "hand_limit": "90 psi",
              "body_rating": "250 psi", "bar_diameter": "1 in", "extensions": 2, "feed": "hand"},
  "rules": ["a.json", "sub/b.json"], "units": "si", "crew": " North yard "
})";

Settings settings_of(std::string_view text) {
  SettingsFile file = file_of(text);
  REQUIRE(file.settings);
  return *std::move(file.settings);
}

Job job_of(std::string_view more) {
  const std::string text = R"({"main": {"material": "PVC", "size": "6 in", "pressure": "60 psi"},
    "service": {"size": "1 in"})" +
                           std::string(more) + "}";
  JobFile file = read_job(text, "job.json", Catalog::builtin());
  REQUIRE(file.job);
  return *std::move(file.job);
}

}  // namespace

TEST_CASE("settings say the language, and who has reviewed the translation") {
  const Settings settings = settings_of(R"({"language": "es", "translation_reviewed_by": " R. Salas, Ashby Vale "})");
  CHECK(settings.language == Language::spanish);
  CHECK(settings.translation_reviewed_by == "R. Salas, Ashby Vale");
  CHECK(settings_of(R"({"language": "en"})").language == Language::english);
  CHECK_FALSE(settings_of("{}").language);
  CHECK(settings_of(R"({"translation_reviewed_by": "  "})").translation_reviewed_by.empty());
  CHECK(one_fault(R"({"language": "fr"})") ==
        "settings.unknown-value /language \"fr\" is not a language of results / \"en\" (English) or \"es\" (Spanish)");
  CHECK(one_fault(R"({"translation_reviewed_by": true})").starts_with("settings.wrong-type /translation_reviewed_by "));
}

TEST_CASE("settings say machine, rules, units and crew, each if they like") {
  const Settings settings = settings_of(truck);
  CHECK(settings.file == "settings.json");
  CHECK(settings.crew == "North yard");
  CHECK(settings.rules == std::vector<std::string>{"a.json", "sub/b.json"});
  CHECK(settings.units == UnitSystem::si);
  REQUIRE(settings.machine.given);
  CHECK(settings.machine.given->title == "Truck 4");
  CHECK(settings.machine.given->basis.how == How::stated_in_settings);
  CHECK(settings.machine.extensions == 2);
  CHECK(settings.machine_facts.size() == 8);

  const Settings nothing = settings_of("\xEF\xBB\xBF{}");
  CHECK(nothing.machine_facts.empty());
  CHECK_FALSE(nothing.units);
  CHECK(settings_of(R"({"machine": {}, "rules": []})").machine_facts.empty());
  CHECK(settings_of(R"({"machine": {"profile": "unspecified"}})").machine.profile == "unspecified");
}

TEST_CASE("every fault of settings is said, with its place and the nearest known name") {
  CHECK(one_fault("").starts_with("json.syntax"));
  CHECK(one_fault("{").starts_with("json.syntax"));
  CHECK(one_fault("[]").starts_with("settings.wrong-type  a list where an object"));
  CHECK(one_fault("null").starts_with("settings.wrong-type"));
  CHECK(one_fault(std::string("{}\0", 3)).starts_with("json.encoding"));
  CHECK(one_fault("{\"crew\": \"\xFF\"}").starts_with("json.encoding"));
  CHECK(one_fault(std::string(longest_settings + 1, ' ')).starts_with("json.too-large"));
  CHECK(one_fault(std::string(1000, '[')).starts_with("json.too-large"));
  CHECK(one_fault(R"({"crwe": "x"})").find("did you mean \"crew\"") != std::string::npos);
  CHECK(one_fault(R"({"chain_length": "57 in"})").find("did you mean machine.chain_length?") != std::string::npos);
  CHECK(one_fault(R"({"main": {"size": "6 in"}})").starts_with("settings.unknown-key /main"));
  CHECK(one_fault(R"({"crew": "a", "crew": "a"})").starts_with("settings.duplicate-key /crew"));
  CHECK(one_fault(R"({"machine": {"feed": "hand", "feed": "hand"}})")
            .starts_with("settings.duplicate-key /machine/feed"));
  CHECK(one_fault(R"({"format": 2})").starts_with("settings.unknown-value /format"));
  CHECK(one_fault(R"({"format": "1"})").starts_with("settings.unknown-value /format"));
  CHECK(one_fault(R"({"units": "SI"})").starts_with("settings.unknown-value /units"));
  CHECK(one_fault(R"({"units": null})").starts_with("settings.wrong-type /units"));
  CHECK(one_fault(R"({"rules": "a.json"})").starts_with("settings.wrong-type /rules"));
  CHECK(one_fault(R"({"rules": ["a.json", 7]})").starts_with("settings.wrong-type /rules/1"));
  for (const std::string_view name : {"", "-", "a\\nb", "\\u001b[31m"}) {
    CHECK(one_fault("{\"rules\": [\"" + std::string(name) + "\"]}").starts_with("settings.unknown-value /rules/0"));
  }
  CHECK(one_fault(R"({"crew": 7})").starts_with("job.wrong-type /crew"));
  CHECK(one_fault(R"({"machine": "Truck 4"})").starts_with("job.wrong-type /machine"));
  CHECK(one_fault(R"({"machine": {"profile": "no such"}})").starts_with("job.unknown-value /machine/profile"));
  CHECK(one_fault(R"({"machine": {"chain_lenght": "57 in"}})").find("did you mean \"chain_length\"") !=
        std::string::npos);
  CHECK(one_fault(R"({"machine": {"size": "6 in"}})").find("main.size") == std::string::npos);
  CHECK(one_fault(R"({"machine": {"extensions": 200}})").starts_with("job.out-of-range /machine/extensions"));
  CHECK(one_fault(R"({"crew": ")" + std::string(301, 'x') + "\"}").starts_with("job.out-of-range /crew"));

  // Half a machine is refused, and what it lacks is named.
  const auto half = file_of(R"({"machine": {"title": "Truck 4", "bar_diameter": 1}})").diagnostics;
  CHECK(half.size() == 5);
  CHECK(std::count_if(half.begin(), half.end(), [](const auto& d) { return d.code == "job.missing"; }) == 4);
  CHECK(std::all_of(half.begin(), half.end(), [](const auto& d) { return d.line == 1; }));

  const auto several =
      file_of("{\"units\": 7,\n\"machine\": {\"feed\": \"foot\"},\n\"rules\": [1],\n\"cru\": 1}").diagnostics;
  REQUIRE(several.size() == 4);
  for (int line = 1; line <= 4; ++line) CHECK(several[static_cast<std::size_t>(line - 1)].line == line);

  std::string many = "{\"rules\": [0";
  for (int i = 0; i < 5000; ++i) many += ", 7";
  CHECK(file_of(many + "]}").diagnostics.size() == most_diagnostics);
  many = "{\"rules\": [\"a\"";
  for (std::size_t i = 0; i < most_rules_files; ++i) many += ", \"a\"";
  CHECK(one_fault(many + "]}").starts_with("settings.unknown-value /rules/100"));
}

TEST_CASE("settings stand where the job says nothing, and a machine is never mixed") {
  const Settings settings = settings_of(truck);
  const auto lay = [&](Job& job) {
    FromSettings from;
    lay_settings_under(job, settings, from);
    return from;
  };
  Job bare = job_of("");
  const FromSettings all = lay(bare);
  CHECK(bare.crew == "North yard");
  CHECK(bare.machine.given == settings.machine.given);
  CHECK(bare.machine.extensions == 2);
  CHECK(all.taken.size() == 9);
  CHECK(all.set_aside.empty());

  Job empty = job_of(R"(, "machine": {}, "crew": "")");
  CHECK(lay(empty).taken.size() == 9);

  // Any word on the machine keeps the whole of the settings' machine out.
  for (const std::string_view own :
       {R"({"extensions": 0})", R"({"feed": "hand"})", R"({"profile": "unspecified"})",
        R"({"title": "mine", "smallest_tap": "3/4 in", "largest_tap": "1 in", "hand_limit": "50 psi",
            "body_rating": "150 psi", "bar_diameter": "1 in"})"}) {
    Job job = job_of(", \"machine\": " + std::string(own));
    const MachineFacts before = job.machine;
    const FromSettings from = lay(job);
    INFO(own);
    CHECK(job.machine.given == before.given);
    CHECK(job.machine.profile == before.profile);
    CHECK(job.machine.feed == before.feed);
    CHECK(job.machine.extensions == before.extensions);
    CHECK(from.set_aside == std::vector<std::string>{"machine"});
    CHECK(from.taken.size() == 1);
  }
  Job crewed = job_of(R"(, "crew": "South yard")");
  CHECK(lay(crewed).set_aside == std::vector<std::string>{"crew"});
  CHECK(crewed.crew == "South yard");
}

TEST_CASE("every code that settings use is explained") {
  const auto texts = settings_diagnostic_texts();
  for (const std::string_view code :
       {"settings.duplicate-key", "settings.unknown-key", "settings.unknown-value", "settings.wrong-type"}) {
    INFO(code);
    CHECK(std::any_of(texts.begin(), texts.end(), [&](const DiagnosticText& text) { return text.code == code; }));
  }
}

TEST_CASE("the lengths of what stands on the truck go under a job by its tap, each where the job gives none") {
  constexpr std::string_view machine =
      R"("machine": {"title": "Truck 4", "smallest_tap": "3/4 in", "largest_tap": "1 in",
    "hand_limit": "90 psi", "body_rating": "250 psi", "bar_diameter": "1 in"})";
  constexpr std::string_view fittings = R"("fittings": [{"tap": "3/4 in", "saddle_height": "9 in"},
    {"tap": "1 in", "saddle_height": "2 in", "stop_length": {"value": 3.5, "unit": "in"}, "adapter_standoff": "1.5 in"}])";
  const Settings settings = settings_of("{" + std::string(machine) + ", " + std::string(fittings) + "}");
  REQUIRE(settings.fittings.size() == 2);
  const auto paths_taken = [](const FromSettings& from) {
    std::string paths;
    for (const SettingTaken& taken : from.taken) {
      if (taken.path.starts_with("service.") || taken.path == "machine.adapter_standoff") paths += taken.path + ' ';
    }
    return paths;
  };
  Job job = job_of("");
  FromSettings from;
  lay_settings_under(job, settings, from);
  CHECK(*job.service.saddle_height / units::inch == Catch::Approx(2.0));
  CHECK(*job.service.stop_length / units::inch == Catch::Approx(3.5));
  CHECK(*job.machine.given->adapter_standoff / units::inch == Catch::Approx(1.5));
  CHECK_FALSE(settings.machine.given->adapter_standoff);  // the settings stay as they were
  CHECK(paths_taken(from) == "service.saddle_height service.stop_length machine.adapter_standoff ");

  // What the job says comes first, and on its own machine the adapter was not measured.
  Job own = job_of(R"(, "machine": {"title": "Truck 5", "smallest_tap": "3/4 in", "largest_tap": "1 in",
    "hand_limit": "90 psi", "body_rating": "250 psi", "bar_diameter": "1 in"})");
  own.service.stop_length = 4.0 * units::inch;
  FromSettings less;
  lay_settings_under(own, settings, less);
  CHECK(*own.service.stop_length / units::inch == Catch::Approx(4.0));
  CHECK_FALSE(own.machine.given->adapter_standoff);
  CHECK(paths_taken(less) == "service.saddle_height ");
}

TEST_CASE("a fitting that cannot be is refused") {
  CHECK(one_fault(R"({"fittings": {}})").starts_with("settings.wrong-type /fittings"));
  CHECK(one_fault(R"({"fittings": [{"stop_length": "3 in"}]})").starts_with("settings.unknown-value /fittings/0"));
  CHECK(one_fault(R"({"fittings": [{"tap": "1 in"}, {"tap": "1 in"}]})")
            .starts_with("settings.unknown-value /fittings/1"));
  CHECK(one_fault(R"({"fittings": [{"tap": "1 in", "saddle": "2 in"}]})")
            .starts_with("settings.unknown-key /fittings/0/saddle"));
  CHECK(one_fault(R"({"fittings": [{"tap": "1 in", "stop_length": "3"}]})").find("/fittings/0/stop_length") !=
        std::string::npos);
  CHECK(one_fault(R"({"fittings": [{"tap": "1 in", "stop_length": 3}]})").starts_with("settings.wrong-type"));
  CHECK(one_fault(R"({"fittings": [{"tap": "1 in", "adapter_standoff": "2 in"}]})")
            .starts_with("settings.unknown-value"));
}

TEST_CASE("settings name the approved list and what is aboard") {
  const Settings settings = settings_of(R"({"approved": "fittings.csv", "aboard": [
    {"item": "Corporation stop", "size": "1 in", "count": 4}, {"stock": " 41-117 "},
    {"item": "machine-saddle", "od_from": "8.6 in", "od_to": {"value": 9.3, "unit": "in"}}, {"item": "chain", "length": "57 in"}]})");
  CHECK(settings.approved == "fittings.csv");
  REQUIRE(settings.aboard);
  const Aboard& aboard = *settings.aboard;
  REQUIRE(aboard.size() == 4);
  CHECK(aboard[0].item == "corporation-stop");
  CHECK(aboard[0].size == NominalSize::inches(1));
  CHECK(aboard[0].count == 4);
  CHECK(aboard[1].stock == "41-117");
  CHECK(aboard[1].count == 1);
  CHECK(*aboard[2].od_to / units::inch == Catch::Approx(9.3));
  CHECK(*aboard[3].length / units::inch == Catch::Approx(57.0));
  CHECK_FALSE(settings_of("{}").aboard);
  CHECK(one_fault(R"({"approved": "-"})").starts_with("settings.unknown-value /approved "));
  CHECK(one_fault(R"({"aboard": [{"item": "laddr"}]})").find("did you mean \"ladder\"?") != std::string::npos);
  CHECK(one_fault(R"({"aboard": [{}]})").find("without item or stock") != std::string::npos);
  CHECK(one_fault(R"({"aboard": {}})").starts_with("settings.wrong-type /aboard "));
  CHECK(one_fault(R"({"aboard": [{"item": "ladder", "count": -1}]})").find("/aboard/0/count") != std::string::npos);
}
