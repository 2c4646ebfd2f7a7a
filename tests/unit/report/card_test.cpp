// The card: short enough for one page, and whole enough to tap by.
#include "report/card.hpp"

#include <algorithm>
#include <random>
#include <set>
#include <sstream>
#include <string>
#include <vector>

#include "mainbore/finding_words.hpp"
#include "mainbore/report.hpp"
#include "support/catch.hpp"
#include "support/one_line.hpp"
#include "support/random_jobs.hpp"
#include "unit/planning/jobs.hpp"
#include "unit/report/example_plans.hpp"

using namespace mainbore;
using namespace mainbore::test;

namespace {

constexpr std::size_t card_width = 80;

std::string card_in(Language language, const Plan& plan, int width = card_width) {
  return text_report(plan, {.language = language, .why = false, .steps = false, .materials = false, .width = width});
}

std::string card(const Plan& plan, int width = card_width, UnitSystem units = UnitSystem::us) {
  return text_report(plan, {.units = units, .why = false, .steps = false, .materials = false, .width = width});
}

std::vector<std::string> lines_of(const std::string& text) {
  std::vector<std::string> lines;
  std::istringstream in(text);
  for (std::string line; std::getline(in, line);) lines.push_back(line);
  return lines;
}

// Where a text stands, counted in lines from one; none: far below any card.
std::size_t line_with(const std::vector<std::string>& lines, std::string_view text) {
  for (std::size_t i = 0; i < lines.size(); ++i) {
    if (lines[i].find(text) != std::string::npos) return i + 1;
  }
  return 1000;
}

// Any main and service, with facts left out as often as given, so that many are held for many things.
class Orders {
 public:
  Job next() {
    Job job = chance(50) ? sound_job() : bare();
    const std::span<const Pipe> pipes = Catalog::builtin().pipes();
    const Pipe& pipe = pipes[random_() % pipes.size()];
    job.main.material = pipe.series->material;
    job.main.size = pipe.size;
    job.main.class_name = chance(40) ? pipe.class_name : "";
    constexpr std::array taps = {0.625, 0.75, 1.0, 1.25, 1.5, 2.0, 3.0, 4.0, 6.0};
    job.service.size = NominalSize::inches(taps[random_() % taps.size()]);
    job.main.pressure = real(5, 320) * units::psi;
    if (pipe.wall && chance(40)) job.main.wall = real(0.5, 1.4) * *pipe.wall;
    if (chance(30)) job.main.cover = real(1, 12) * units::foot;
    if (chance(30)) job.main.installed = 1900 + static_cast<int>(random_() % 120);
    if (chance(30)) job.main.temperature = Temperature::fahrenheit(real(20, 110));
    if (chance(20)) job.main.pressurized = false;
    if (chance(20)) job.main.encased = true;
    if (chance(20)) job.main.condition = static_cast<Condition>(random_() % 3);
    if (chance(20)) job.service.existing = static_cast<ExistingService>(random_() % 5);
    if (chance(20)) job.service.demand.fixture_units = real(1, 200);
    if (chance(20)) job.excavation.soil = SoilClaim::type_a;
    if (chance(20)) job.tool.lead = real(0.5, 4) * units::inch;
    if (chance(20)) job.service.trial.depth = real(1, 5) * units::inch;
    if (chance(30)) {
      job.nearby.emplace();
      for (int i = 0; i < 4; ++i)
        job.nearby->push_back(
            {static_cast<NearbyThing>(random_() % nearby_names.size()), real(-80, 80) * units::inch, {}, {}});
    }
    if (chance(10)) job.place = std::string(300, 'w');
    if (chance(10)) job.note = std::string(3000, 'w');
    return job;
  }

 private:
  static Job bare() {
    Job job;
    job.service.size = NominalSize::inches(1);
    return job;
  }
  bool chance(unsigned percent) { return random_() % 100 < percent; }
  double real(double low, double high) {
    return low + (high - low) * (static_cast<double>(random_() % 10001) / 10000.0);
  }
  std::mt19937_64 random_{14};
};

void fits_a_page(const Plan& plan) {
  const std::string text = card(plan);
  const auto lines = lines_of(text);
  CAPTURE(text);
  REQUIRE(lines.size() <= report::card_lines);
  for (const std::string& line : lines) REQUIRE(report::columns(line) <= card_width);
}

// The stop numbers, the chain and where to stop tapping: what a crew holds a gauge to.
void numbers_come_early(const Plan& plan) {
  if (plan.verdict == Verdict::no_go) return;
  const std::string text = card(plan);
  const auto lines = lines_of(text);
  constexpr std::size_t early = 25;
  INFO(text);
  for (const StopNumber& reading : plan.stop_numbers)
    REQUIRE(line_with(lines, bounds_in_words(reading, UnitSystem::us)) <= early);
  REQUIRE(line_with(lines, "o'clock") <= early);
  if (plan.method.kind != Method::direct) return;
  REQUIRE(line_with(lines, "top tapping: ") <= early);
  if (plan.setup.chain)
    REQUIRE(line_with(lines, on_rule(plan.setup.chain->needed, UnitSystem::us, Toward::more)) <= early);
}

}  // namespace

TEST_CASE("the card of every example is a page") {
  for (const Plan& plan : example_plans()) {
    fits_a_page(plan);
    numbers_come_early(plan);
  }
}

TEST_CASE("the card of any job is a page, with the figures a crew uses in its first half") {
  Orders orders;
  for (int i = 0; i < 1000; ++i) {
    const Plan plan = plan_of(orders.next());
    fits_a_page(plan);
    numbers_come_early(plan);
  }
}

TEST_CASE("the card says each hold, the office's first, with a blank, and each caution") {
  Orders orders;
  for (int i = 0; i < 300; ++i) {
    const Plan plan = plan_of(orders.next());
    const report::Card made = report::card_of(plan, UnitSystem::us);
    const auto holds = static_cast<std::size_t>(std::count_if(
        plan.findings.begin(), plan.findings.end(), [](const Finding& f) { return f.severity == Severity::hold; }));
    CHECK(made.holds.size() == holds);
    CHECK(std::is_sorted(made.holds.begin(), made.holds.end(), [](const auto& a, const auto& b) {
      return a.clears == Clears::office && b.clears == Clears::site;
    }));
    CHECK(made.cautions.size() == cautions(plan, UnitSystem::us).size());
    const auto lines = lines_of(card(plan));
    const std::string whole = on_one_line(card(plan));
    for (const report::CardHold& hold : made.holds)
      CHECK(whole.find(" " + std::to_string(hold.number) + ". " + hold.text) != std::string::npos);
    for (const std::string_view caution : made.cautions) CHECK(line_with(lines, caution) < 1000);
  }
}

TEST_CASE("number and place of an order stand whole on its card, whatever else must give way") {
  Orders orders;
  for (int i = 0; i < 200; ++i) {
    Job job = orders.next();
    job.id = "AV-1041";
    job.place = "Ashby Vale Water District, 12 Millrace Lane, north side";
    job.date = "2026-05-04";
    job.crew = "Crew 2";
    const std::string text = card(plan_of(job));
    INFO(text);
    CHECK(text.find("AV-1041; Ashby Vale Water District, 12 Millrace Lane, north side") != std::string::npos);
  }
}

TEST_CASE("what a card gives up leaves no line unused that would have held more of it") {
  Orders orders;
  int cut = 0;
  for (int i = 0; i < 300; ++i) {
    const std::string text = card(plan_of(orders.next()));
    const std::vector<std::string> lines = lines_of(text);
    if (text.find("more (--materials)") == std::string::npos) continue;
    ++cut;
    INFO(text);
    CHECK(lines.size() + 1 >= report::card_lines);
  }
  CHECK(cut > 3);
}

TEST_CASE("a card asks once for the class on the barrel") {
  for (const char* const name : {"Class 150", "150", "Class 22", "DR 18", "PC 350 DR 18"}) {
    Job job = sound_job();
    job.main.material = Material::cast_iron;
    job.main.class_name = name;
    job.main.installed = 1950;
    for (const Material material : {Material::cast_iron, Material::pvc}) {
      job.main.material = material;
      const std::string text = card(plan_of(job));
      INFO(text);
      std::size_t asked = 0;
      for (const std::string& line : lines_of(text)) {
        if (line.starts_with("  - ") && (line.find("Read the class") != std::string::npos ||
                                         line.find("Class rests on memory") != std::string::npos))
          ++asked;
      }
      CHECK(asked <= 1);
      if (text.find("read the class") != std::string::npos || text.find("read the barrel") != std::string::npos)
        CHECK(asked == 0);
    }
  }
}

TEST_CASE("the card fits a narrow and a wide terminal") {
  Orders orders;
  for (int i = 0; i < 100; ++i) {
    const Plan plan = plan_of(orders.next());
    for (const int width : {40, 57, 100, 132}) {
      for (const std::string& line : lines_of(card(plan, width, UnitSystem::si)))
        CHECK(report::columns(line) <= static_cast<std::size_t>(width));
    }
  }
}

TEST_CASE("lines of findings are lines, and figures in them are rounded to the safe side") {
  for (std::size_t i = 0; i < finding_codes.size(); ++i) {
    Finding finding;
    finding.code = static_cast<FindingCode>(i);
    INFO(finding_codes[i]);
    CHECK_FALSE(line_of(finding, UnitSystem::us).empty());
  }
  Finding chain;
  chain.code = FindingCode::machine_chain_short;
  chain.limit = Measure(53.382 * units::inch, Kind::tape);
  chain.limit_is_least = true;
  CHECK(line_of(chain, UnitSystem::us).find("53-7/16 in") != std::string::npos);
}

TEST_CASE("no card shows a weight in tons, a fraction of a minute or of a psi") {
  Orders orders;
  for (int i = 0; i < 300; ++i) {
    const std::string text = card(plan_of(orders.next()));
    INFO(text);
    CHECK(text.find(" tons") == std::string::npos);
    CHECK(text.find(" min ") == std::string::npos);
    for (std::size_t at = text.find(" psi"); at != std::string::npos; at = text.find(" psi", at + 1)) {
      const std::size_t start = text.find_last_not_of("0123456789.", at - 1);
      CHECK(text.substr(start + 1, at - start - 1).find('.') == std::string::npos);
    }
  }
}

// Words that no Spanish sentence has. Names of classes stay as the tables have them ("0.250 wall").
TEST_CASE("a Spanish card is one page, whole, and Spanish to its last word") {
  const std::set<std::string> english = {"the",  "of",    "at",     "to",    "and",   "with",    "for",  "by",
                                         "not",  "is",    "or",     "from",  "read",  "pipe",    "main", "tap",
                                         "stop", "line",  "saddle", "chain", "turns", "threads", "bar",  "under",
                                         "over", "first", "check",  "gauge", "least", "most"};
  Orders orders;
  for (int i = 0; i < random_jobs(1500); ++i) {
    const Plan plan = plan_of(orders.next());
    const std::string text = card_in(Language::spanish, plan);
    const auto lines = lines_of(text);
    INFO(text);
    REQUIRE(lines.size() <= report::card_lines);
    for (const std::string& line : lines) REQUIRE(report::columns(line) <= card_width);
    REQUIRE(text.find("sin revisar") != std::string::npos);
    std::string word;
    for (const char c : text + ' ') {
      const bool letter = (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z') || c == '.' || c == '_' ||
                          static_cast<unsigned char>(c) >= 0x80;
      if (letter) {
        word += c;
        continue;
      }
      INFO(word);
      REQUIRE_FALSE(english.contains(word));
      word.clear();
    }
    // What the English card holds, the Spanish one holds: the same stop numbers, holds and cautions.
    const report::Card a = report::card_of(plan, UnitSystem::us);
    const report::Card b = report::card_of(plan, {UnitSystem::us, Language::spanish});
    REQUIRE(a.readings.size() == b.readings.size());
    REQUIRE(a.holds.size() == b.holds.size());
    REQUIRE(a.cautions.size() == b.cautions.size());
    REQUIRE(a.marks.size() == b.marks.size());
  }
}

TEST_CASE("a translation says who has reviewed it, and nothing takes that line off") {
  Plan plan = plan_of(sound_job());
  CHECK(card_in(Language::english, plan).find("Traducc") == std::string::npos);
  CHECK(card_in(Language::spanish, plan).find("sin revisar por cuadrilla") != std::string::npos);
  plan.from_settings.file = "truck.json";
  plan.from_settings.taken.push_back({std::string(translation_reviewed_by), std::string("R. Salas, Ashby Vale")});
  CHECK(card_in(Language::spanish, plan).find("revisada por R. Salas, Ashby Vale.") != std::string::npos);
}
