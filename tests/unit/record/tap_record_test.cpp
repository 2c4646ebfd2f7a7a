// Readings judged against the plan, and what a record still wants.
#include "mainbore/tap_record.hpp"

#include <algorithm>
#include <cmath>
#include <nlohmann/json.hpp>

#include "mainbore/work.hpp"
#include "unit/planning/random_jobs.hpp"
#include "unit/record/readings.hpp"
#include "words/terms.hpp"

using namespace mainbore;
using namespace mainbore::test;

namespace {

bool is_missing(const TapRecord& record, std::string_view name) {
  return std::any_of(record.missing.begin(), record.missing.end(),
                     [&](const Missing& one) { return one.name == name; });
}
bool is_void_for(const TapRecord& record, std::string_view code) {
  return std::any_of(record.because.begin(), record.because.end(),
                     [&](const VoidReason& why) { return why.code == code; });
}
Judged judged(const TapRecord& record, ReadingId id) {
  for (const JudgedReading& one : record.judged) {
    if (one.stop_number.id == id) return one.judged;
  }
  return Judged::unread;
}
ReadingsFile read(const std::string& text) { return read_readings(text, "readings.json", Catalog::builtin()); }
// Each stop number read at its printed bound: the lower, where it has two.
Readings read_as_printed(const Plan& plan, UnitSystem units) {
  Readings readings;
  for (const StopNumber& reading : plan.stop_numbers) {
    const BoundTexts bounds = printed_bounds(reading, units);
    const ParsedMeasure read = parse_measure(reading.at_least ? bounds.least : bounds.most, reading.kind());
    REQUIRE(read);
    for (const RecordEntry& entry : record_entries()) {
      if (entry.reading == reading.id) readings.at(entry.key) = read.value;
    }
  }
  return readings;
}
std::string fault_of(const std::string& text) {
  const ReadingsFile file = read(text);
  CHECK(file.readings.has_value() == file.diagnostics.empty());
  return file.diagnostics.empty() ? std::string() : std::string(file.diagnostics.front().code);
}

}  // namespace

TEST_CASE("a record with everything read and done as planned is complete") {
  const TapRecord record = example_record();
  INFO(record_text(record, UnitSystem::us));
  CHECK(record.is_complete());
  CHECK_FALSE(record.is_void());
  CHECK(record.found.verdict == Verdict::go);
  CHECK(record.judged.size() == record.planned.stop_numbers.size());
  for (const JudgedReading& one : record.judged) CHECK(one.judged == Judged::inside);
}

TEST_CASE("what was not read stays unread, and is named") {
  const TapRecord record = record_of(example_job(), {});
  CHECK_FALSE(record.is_complete());
  for (const JudgedReading& one : record.judged) CHECK(one.judged == Judged::unread);
  for (const std::string_view name :
       {"date", "line_pressure", "tie_1", "tie_2_from", "tool", "wrench_turns", "coupon"}) {
    INFO(name);
    CHECK(is_missing(record, name));
  }
  const auto json = nlohmann::json::parse(record_to_json(record, UnitSystem::us, JsonStyle::compact));
  CHECK(json["record"].empty());
  CHECK(json["complete"] == false);
  // Words for "not known" are no readings, and each of them alone brings its name back.
  for (const RecordEntry& entry : record_entries()) {
    if (entry.needed != Needed::always) continue;
    INFO(entry.name);
    CHECK(is_missing(example_record({{std::string(entry.name), "?", ""}}), entry.name));
  }
}

TEST_CASE("a reading outside its stop number voids the sheet, and wants a reason") {
  const TapRecord record = example_record({{"line_pressure", "150 psi", ""}});
  CHECK(judged(record, ReadingId::line_pressure) == Judged::outside);
  CHECK(is_void_for(record, "stop-number"));
  CHECK(is_missing(record, "deviations.line_pressure"));
  CHECK(record.found.verdict != Verdict::go);
  CHECK(is_void_for(record, "pressure.over-feed-limit"));
  const TapRecord reasoned =
      example_record({{"line_pressure", "150 psi", ""}, {"deviations.line_pressure", "gauge read late", ""}});
  CHECK_FALSE(is_missing(reasoned, "deviations.line_pressure"));
  CHECK(reasoned.is_void());
}

// The distance to a joint is no fact of a job: the plan with the readings would go.
TEST_CASE("a tap moved up to a joint is no go, in words and in the ledger") {
  const TapRecord record = example_record({{"joint_distance", "1 ft", ""}, {"deviations.joint_distance", "moved", ""}});
  CHECK(judged(record, ReadingId::joint_distance) == Judged::outside);
  CHECK(record.is_void());
  CHECK(record.verdict() == Verdict::hold);
  const auto json = nlohmann::json::parse(record_to_json(record, UnitSystem::us, JsonStyle::compact));
  CHECK(json["verdict"] == "hold");
  const std::string text = record_text(record, UnitSystem::us);
  CHECK(text.find("With readings ... Go") == std::string::npos);
  CHECK(text.find("With readings ... Hold: a reading lies outside its stop number.") != std::string::npos);
  CHECK(example_record().verdict() == Verdict::go);
}

TEST_CASE("a stop that no wrench has turned voids the sheet, whatever the reason") {
  for (const char* const turns : {"0", "0.2"}) {
    const TapRecord record = example_record({{"wrench_turns", turns, ""}, {"deviations.wrench_turns", "as felt", ""}});
    CHECK(is_void_for(record, "makeup"));
    CHECK(record.verdict() == Verdict::hold);
  }
  CHECK_FALSE(example_record({{"wrench_turns", "0.25", ""}, {"deviations.wrench_turns", "as felt", ""}}).is_void());
  CHECK_FALSE(is_void_for(example_record({{"wrench_turns", "0", ""}, {"method", "saddle", ""}}), "makeup"));
}

TEST_CASE("a thinner wall than the sheet allows is another plan") {
  const TapRecord record = example_record({{"wall", "0.12 in", ""}});
  CHECK(judged(record, ReadingId::wall) == Judged::outside);
  CHECK(record.is_void());
}

TEST_CASE("a tap run past the mark at the far wall, or stopped before the hole is full, voids the sheet") {
  const auto tapped_to = [](double inches) {
    Readings readings = example_readings();
    readings.at(RecordKey::tap_depth) = Measure(inches * units::inch);
    return record_of(example_job(), readings);
  };
  CHECK_FALSE(tapped_to(1.51).is_void());
  CHECK(is_void_for(tapped_to(9.0), "machine.tool-strikes-far-wall"));
  CHECK(is_void_for(tapped_to(0.3), "machine.figures-wrong"));
}

TEST_CASE("a main lowered for the tap clears the hold on its pressure, and no other") {
  Job job = example_job();
  job.main.pressure = 115.0 * units::psi;  // over the 100 psi that its feed is good for
  const Readings readings = example_readings({{"line_pressure", "80 psi", ""}});
  const TapRecord record = record_of(job, readings);
  REQUIRE(record.planned.verdict == Verdict::hold);
  for (const HoldLeft& hold : record.holds) {
    INFO(name_of(hold.code));
    const bool of_pressure = reading_that_clears(hold.code) == ReadingId::line_pressure;
    CHECK(hold.is_cleared() == of_pressure);
    CHECK(is_missing(record, "holds." + std::string(name_of(hold.code))) != of_pressure);
  }
}

TEST_CASE("a hold is cleared by what was found and by whom, both") {
  Job job = example_job();
  job.nearby.reset();
  const std::string hold = "holds.place.not-looked";
  CHECK(is_missing(record_of(job, example_readings()), hold));
  const Readings half = example_readings({{hold + ".found", "bell 7 ft north, nothing else", ""}});
  CHECK(is_missing(record_of(job, half), hold));
  const Readings both =
      example_readings({{hold + ".found", "bell 7 ft north, nothing else", ""}, {hold + ".by", "RM", ""}});
  CHECK_FALSE(is_missing(record_of(job, both), hold));
}

TEST_CASE("what was done otherwise wants a reason") {
  const TapRecord turned = example_record({{"clock", "3:00", ""}});
  CHECK(is_missing(turned, "deviations.clock"));
  CHECK_FALSE(is_missing(example_record({{"clock", "3:00", ""}, {"deviations.clock", "a gas line above", ""}}),
                         "deviations.clock"));
  CHECK(example_record({{"clock", "1:35", ""}}).deviations.empty());
  Job tried = example_job();  // its depth is found by trial, and so are the turns
  tried.service.trial.wrench_turns = 2.0;
  tried.service.trial.threads_showing = 3.0;
  CHECK(record_of(tried, example_readings()).deviations.empty());
  CHECK(is_missing(record_of(tried, example_readings({{"wrench_turns", "9", ""}})), "deviations.wrench_turns"));
  CHECK(is_missing(record_of(tried, example_readings({{"threads_showing", "4", ""}})), "deviations.threads_showing"));
  const TapRecord saddle = example_record({{"method", "saddle", ""}});
  CHECK(is_missing(saddle, "deviations.method"));
  CHECK(saddle.is_void());
}

TEST_CASE("a record in Spanish has the same readings, holds and gaps, and none of its sentences in English") {
  const Readings readings = example_readings({{"line_pressure", "200 psi", ""}, {"wrench_turns", "4", ""}});
  const Planner& planner = planner_under(default_rules());
  const TapRecord english = tap_record(example_job(), readings, planner, UnitSystem::us);
  const TapRecord spanish = tap_record(example_job(), readings, planner, {UnitSystem::us, Language::spanish});
  REQUIRE(english.because.size() == spanish.because.size());
  REQUIRE(english.missing.size() == spanish.missing.size());
  REQUIRE(english.deviations.size() == spanish.deviations.size());
  CHECK_FALSE(english.because.empty());
  for (std::size_t i = 0; i < english.because.size(); ++i) {
    CHECK(english.because[i].code == spanish.because[i].code);
    CHECK(english.because[i].text != spanish.because[i].text);
  }
  for (std::size_t i = 0; i < english.missing.size(); ++i) {
    CHECK(english.missing[i].name == spanish.missing[i].name);
    CHECK(english.missing[i].label != spanish.missing[i].label);
  }
  const std::string page = record_text(spanish, {UnitSystem::us, Language::spanish});
  for (const std::string_view english_word : {" was read", "AS BUILT", "STILL MISSING", "planned", "inside", "Hold"})
    CHECK(page.find(english_word) == std::string::npos);
  for (const RecordEntry& entry : record_entries()) {
    if (entry.key == RecordKey::order) continue;  // said in the head
    CHECK(words::term(entry.label, Language::spanish) != entry.label);
    CHECK(words::term(entry.help, Language::spanish) != entry.help);
    for (const std::string_view word : entry.words) CHECK(words::term(word, Language::spanish) != word);
  }
}

TEST_CASE("coordinates come in pairs, in range, in degrees") {
  CHECK(is_missing(example_record({{"longitude", "-85.5", ""}}), "latitude"));
  CHECK(example_record({{"longitude", "-85.1234567", ""}, {"latitude", "41.5", ""}}).is_complete());
  CHECK(fault_of(R"({"longitude": 181})") == "job.out-of-range");
  CHECK(fault_of(R"({"latitude": -90.001})") == "job.out-of-range");
  CHECK_FALSE(fault_of(R"({"latitude": "41.5 ft"})").empty());
}

TEST_CASE("readings are refused with what is allowed, all faults at once") {
  CHECK(fault_of("{}").empty());
  CHECK_FALSE(fault_of("").empty());
  CHECK(fault_of("[]") == "readings.wrong-type");
  CHECK(fault_of(R"({"wal": "0.3 in"})") == "readings.unknown-key");
  CHECK(fault_of(R"({"wall": 0.3})") == "job.no-unit");
  CHECK(fault_of(R"({"wall": "0.3 psi"})") == "job.wrong-unit");
  CHECK(fault_of(R"({"wall": true})") == "readings.wrong-type");
  CHECK(fault_of(R"({"wall": "0.3 in", "wall": "0.3 in"})") == "readings.duplicate-key");
  CHECK(fault_of(R"({"line_pressure": "70 psi", "line-pressure": "70 psi"})") == "readings.duplicate-key");
  CHECK(fault_of(R"({"start": "25:00"})") == "readings.unknown-value");
  CHECK(fault_of(R"({"date": "4 May"})") == "readings.unknown-value");
  CHECK(fault_of(R"({"date": "2026-02-30"})") == "job.out-of-range");
  CHECK(fault_of(R"({"method": "hammer"})") == "readings.unknown-value");
  CHECK(fault_of(R"({"holds": {"place.not-there": {"found": "x"}}})") == "readings.unknown-value");
  CHECK(fault_of(R"({"holds": {"place.not-looked": {"seen": "x"}}})") == "readings.unknown-key");
  CHECK(fault_of(R"({"deviations": {"clock": 3}})") == "readings.wrong-type");
  CHECK(read(R"({"wal": "0.3 in", "date": "4 May", "start": "noon"})").diagnostics.size() == 3);
  CHECK(fault_of(R"({"wall": {"value": 0.3, "unit": "in"}})").empty());
}

TEST_CASE("readings at the ends of the stop numbers bear the plan out, whatever the job") {
  RandomJobs random(7);
  std::size_t tried = 0;
  for (int i = 0; i < random_jobs(300); ++i) {
    const Job job = random.next();
    const Plan planned = plan_of(job);
    if (planned.verdict == Verdict::no_go) continue;
    for (const UnitSystem units : {UnitSystem::us, UnitSystem::si}) {
      const TapRecord record = record_of(job, read_as_printed(planned, units), units);
      for (const JudgedReading& one : record.judged) CHECK(one.judged == Judged::inside);
      CHECK_FALSE(is_void_for(record, "stop-number"));
    }
    ++tried;
  }
  CHECK(tried > 50);
}

TEST_CASE("a reading between the bound that was worked out and the one that is printed is outside") {
  RandomJobs random(11);
  std::size_t tried = 0;
  for (int i = 0; i < random_jobs(300); ++i) {
    const Job job = random.next();
    const Plan planned = plan_of(job);
    for (const UnitSystem units : {UnitSystem::us, UnitSystem::si}) {
      for (const StopNumber& reading : planned.stop_numbers) {
        const Measure& exact = reading.at_least ? *reading.at_least : *reading.at_most;
        const BoundTexts bounds = printed_bounds(reading, units);
        const Measure printed = parse_measure(reading.at_least ? bounds.least : bounds.most, reading.kind()).value;
        const double between = (exact.base() + printed.base()) / 2.0;
        if (std::fabs(exact.base() - printed.base()) < 1e-6) continue;
        Readings readings;
        for (const RecordEntry& entry : record_entries()) {
          if (entry.reading == reading.id) readings.at(entry.key) = Measure(between, reading.kind());
        }
        const TapRecord record = record_of(job, readings, units);
        CHECK(judged(record, reading.id) == Judged::outside);
        for (const JudgedReading& one : record.judged) {
          if (one.stop_number.id != reading.id) continue;
          const std::string text = value_in_words(one, units);
          CHECK(text != bounds.least);
          CHECK(text != bounds.most);
        }
        ++tried;
      }
    }
  }
  CHECK(tried > 50);
}

TEST_CASE("a leak check is what it says, and only a plain statement holds") {
  const auto all = [](LeakCheck said, std::initializer_list<std::string_view> texts) {
    for (const std::string_view text : texts) {
      INFO(text);
      CHECK(leak_check_names[static_cast<std::size_t>(leak_said(text))] ==
            leak_check_names[static_cast<std::size_t>(said)]);
    }
  };
  all(LeakCheck::holds, {"tight at 70 psi, 15 minutes",
                         "tight",
                         "no leak",
                         "No visible leaks, 70 psi for 15 min",
                         "NO LEAKS!",
                         "no leaks or drips",
                         "leak free",
                         "leak-free at 70psi",
                         "not leaking",
                         "doesn't leak",
                         "free of leaks",
                         "0 leaks",
                         "leaks: none",
                         "no drop in 15 min",
                         "held 70 psi 15 min, 0 drop",
                         "without weep",
                         "ok",
                         "passed",
                         "leak test passed",
                         "holding 480 kPa, 1½ hr",
                         "tight and dry at 70 psi",
                         "no leaks at stop or gasket",
                         "Estanco a 70 psi, 15 min",
                         "sin fugas",
                         "no hay fugas",
                         "No hay ninguna fuga visible",
                         "no gotea",
                         "aguantó 480 kPa",
                         "hermético",
                         "prueba de fugas: bien",
                         "fugas: ninguna",
                         "sin goteo ni fuga",
                         "bien, toda la línea a 70 psi"});
  all(LeakCheck::leaks, {"leaks",
                         "leaks at the stop, will fix tomorrow",
                         "small drip",
                         "weeps a little",
                         "no good",
                         "not tight",
                         "not leak tight",
                         "failed",
                         "failed test, held 5 min",
                         "drips checked, ok",
                         "loss test: 5 psi in 15 min, ok",
                         "drips free",
                         "leaks tight now",
                         "held 15 min then dropped 5 psi",
                         "tight but one drip",
                         "no leak at the tap, weep at the curb stop",
                         "tight, no: leaks",
                         "leaked, then tight",
                         "no leaks, drips",
                         "gotea",
                         "hay fuga",
                         "fuga en la llave",
                         "no aguantó",
                         "no hermético",
                         "se perdió presión",
                         "sin goteo, moja",
                         "wet",
                         "LEAK",
                         "no leak and drips"});
  all(LeakCheck::unsure, {"15 min",
                          "70 psi, 15 min",
                          "yes",
                          "no",
                          "none",
                          "not checked",
                          "no leak test",
                          "sin prueba de fugas",
                          "tight?",
                          "should be tight",
                          "tight by hand",
                          "tight, not under pressure",
                          "on hold",
                          "no - tight as a drum",
                          "to do",
                          "RM",
                          "tight at 0 psi",
                          "dry, not tested",
                          "tightened",
                          "nunca",
                          "密",
                          "tight\u2026",
                          "dry",
                          "isn't dry",
                          "dry test",
                          "linea seca",
                          "not tested for leaks",
                          "never checked for leaks, ok",
                          "no inspection for leaks before backfill",
                          "sin prueba por fugas",
                          "nunca probado por fugas",
                          "joint no 2 leaks",
                          "toma no 2 gotea",
                          "0 to 5 drips a minute",
                          "lost 0 to 5 psi",
                          "leaks: zero to 3",
                          "leaks 0 at seat 2 at gasket",
                          "lost 0 psi in 5 min, 8 psi in 15 min",
                          "held 15 min at 70 psi, now 40 psi",
                          "held 70 psi to 40 psi in 15 min",
                          "gauge 72 to 60 psi, no leaks",
                          "held 40 of 70 psi",
                          "2 of 3 joints tight",
                          "no drips at stop, 3 a minute at saddle",
                          "no leaks at stop, all at saddle",
                          "leaks none at seat, all at gasket",
                          "tight before pressure test",
                          "bien antes de la prueba",
                          "passed on the leak check",
                          "is it tight",
                          "ok :("});
}

TEST_CASE("a tap that leaks, or is not said to hold, is never a complete record") {
  for (const std::string said : {"leaks at the stop, will fix tomorrow", "15 min at 70 psi", "not checked"}) {
    INFO(said);
    const TapRecord record = example_record({{"leak_check", said, ""}});
    CHECK_FALSE(record.is_complete());
    CHECK(is_missing(record, "leak_check"));
    const bool leaks = record.leak_check() == LeakCheck::leaks;
    CHECK(record.verdict() == (leaks ? Verdict::hold : Verdict::go));
    for (const Language language : {Language::english, Language::spanish}) {
      const Audience crew{UnitSystem::us, language};
      const TapRecord told = tap_record(example_job(), record.readings, planner_under(default_rules()), crew);
      const std::string text = record_text(told, crew);
      INFO(text);
      CHECK(text.find(language == Language::english ? "ot backfill" : "o tape") != std::string::npos);
      CHECK(text.find(said) != std::string::npos);
      CHECK((text.find(language == Language::english ? "ith readings ... Hold" : "lecturas  Pendiente") !=
             std::string::npos) == leaks);
    }
    const auto json = nlohmann::json::parse(record_to_json(record, UnitSystem::us, JsonStyle::compact));
    CHECK(json["leak_check"] == (leaks ? "leaks" : "unsure"));
    CHECK(json["record"]["leak_check"] == said);
  }
  const auto json = nlohmann::json::parse(record_to_json(example_record(), UnitSystem::us, JsonStyle::compact));
  CHECK(json["leak_check"] == "holds");
  CHECK(record_of(example_job(), {}).leak_check() == LeakCheck::unread);
}
