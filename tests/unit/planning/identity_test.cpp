// Which pipe it is: only what was published or read at the pipe removes one, and every word of the card counts.
#include <cmath>
#include <random>
#include <set>
#include <string>
#include <vector>

#include "mainbore/measure.hpp"
#include "mainbore/mechanics/engagement.hpp"
#include "support/catch.hpp"
#include "support/random_jobs.hpp"
#include "unit/planning/jobs.hpp"

using namespace mainbore;
using namespace mainbore::test;

namespace {

Job main_of(Material material, double size, const char* class_name) {
  Job job = sound_job();
  job.main.material = material;
  job.main.size = NominalSize::inches(size);
  job.main.class_name = class_name;
  return job;
}

std::set<std::string> candidates(const Plan& plan) {
  std::set<std::string> names;
  for (const Pipe* pipe : plan.main.candidates) names.insert(pipe->series->id + ' ' + pipe->class_name);
  return names;
}
using Names = std::set<std::string>;

class Dice {
 public:
  explicit Dice(std::uint64_t seed) : random_(seed) {}
  std::size_t below(std::size_t n) { return random_() % n; }
  bool chance(unsigned percent) { return random_() % 100 < percent; }
  double real(double low, double high) { return low + (high - low) * (static_cast<double>(random_() % 100001) / 1e5); }

 private:
  std::mt19937_64 random_;
};

// A main of some row of the tables, with what may be known of it.
Job some_main(Dice& dice, const Pipe& pipe) {
  Job job = sound_job();
  job.main.material = pipe.series->material;
  job.main.size = pipe.size;
  job.main.class_name = dice.chance(70) ? pipe.class_name : "";
  job.main.pressure = dice.real(20, 200) * units::psi;
  constexpr std::array taps = {0.75, 1.0, 1.5, 2.0};
  job.service.size = NominalSize::inches(taps[dice.below(taps.size())]);
  job.service.thread = dice.chance(50) ? ThreadStandard::npt : ThreadStandard::awwa_taper;
  if (pipe.od && dice.chance(60)) {
    const double of = dice.real(-1.2, 1.2);
    job.main.od = *pipe.od + of * (of < 0 ? pipe.od_minus : pipe.od_plus);
  }
  if (pipe.wall && dice.chance(60)) job.main.wall = dice.real(0.7, 1.3) * *pipe.wall;
  if (!pipe.rating && dice.chance(80)) job.main.rating = dice.real(100, 250) * units::psi;
  if (dice.chance(40)) job.main.standard = pipe.series->id;
  return job;
}

template <class Ask>
void of_random_mains(std::uint64_t seed, int in_the_suite, Ask ask) {
  Dice dice(seed);
  const std::span<const Pipe> pipes = Catalog::builtin().pipes();
  for (int i = 0; i < random_jobs(in_the_suite); ++i) {
    const Pipe& pipe = pipes[dice.below(pipes.size())];
    ask(dice, pipe, some_main(dice, pipe));
  }
}

std::string told(const Job& job, const Plan& plan) {
  std::string text = std::string(name_of(*job.main.material)) + ' ' + job.main.size->label() + " [" +
                     job.main.class_name + "] [" + job.main.standard + "] year " +
                     std::to_string(job.main.installed.value_or(0)) + " wall " +
                     std::to_string(job.main.wall ? job.main.wall->base() : -1.0) + " od " +
                     std::to_string(job.main.od ? job.main.od->base() : -1.0) + ": " +
                     std::string(name_of(plan.verdict)) + ' ' + std::string(name_of(plan.method.kind));
  for (const Finding& finding : plan.findings) {
    if (finding.severity >= Severity::hold) text += ' ' + std::string(name_of(finding.code));
  }
  return text;
}

// Facts of a card that cannot all be so: what is left when one of them is struck out may well be sounder.
bool contradicts(const Plan& plan) {
  for (const FindingCode code :
       {FindingCode::main_class_not_made, FindingCode::main_class_word, FindingCode::main_year_contradicts,
        FindingCode::main_od_contradicts, FindingCode::main_wall_impossible, FindingCode::main_wall_thin}) {
    if (has(plan, code)) return true;
  }
  return false;
}

}  // namespace

// ---- what removes a pipe

TEST_CASE("a year that is only recalled removes no pipe") {
  Job job = main_of(Material::cast_iron, 8, "");
  job.main.pressure = 80.0 * units::psi;
  job.main.wall = 0.46 * units::inch;
  job.main.circumference = 28.4375 * units::inch;
  for (const int year : {1925, 1930, 1931, 1960}) {
    INFO(year);
    job.main.installed = year;
    const Plan plan = plan_of(job);
    CHECK(plan.verdict == Verdict::hold);
    CHECK(plan.main.rating.value() / units::psi == 43.0);
    CHECK(candidates(plan).contains("ci-pit-cast Class A"));
    CHECK(has(plan, FindingCode::main_by_recollection) == (year > 1930));
  }
  // That no iron was spun before 1918 is published.
  job.main.installed = 1910;
  CHECK_FALSE(candidates(plan_of(job)).contains("ci-spun TC 21"));
}

TEST_CASE("a name that usually means a class removes no pipe") {
  Job job = main_of(Material::cast_iron, 8, "Class 150");
  job.main.wall = 0.46 * units::inch;
  const Plan plan = plan_of(job);
  CHECK(has(plan, FindingCode::main_by_recollection));
  CHECK_FALSE(has(plan, FindingCode::main_class_not_made));
  CHECK(candidates(plan).contains("ci-pit-cast Class A"));
  CHECK(candidates(plan).contains("ci-spun TC 21"));
  CHECK(plan.verdict == Verdict::hold);
}

TEST_CASE("a wall removes no pipe, and so settles no diameter") {
  Job job = main_of(Material::polyethylene, 8, "DR 26");
  job.main.pressure = 30.0 * units::psi;
  for (const double wall : {0.34, 0.40, 0.42, 0.44}) {
    INFO(wall);
    job.main.wall = wall * units::inch;
    const Plan plan = plan_of(job);
    CHECK(has(plan, FindingCode::main_od_unsettled));
    CHECK(plan.verdict == Verdict::hold);
    CHECK(plan.main.candidates.size() == 2);
  }
}

// ---- the words of a class

TEST_CASE("each word of a class counts") {
  struct Case {
    Material material;
    double size;
    const char* class_name;
    std::optional<int> year;
    Names expected;  // nothing: held, and the class set aside
  };
  const std::vector<Case> cases = {
      {Material::pvc, 8, "C909 PC 235", {}, {}},
      {Material::pvc, 8, "C909 Class 150", {}, {}},
      {Material::pvc, 8, "C906 DR 18", {}, {}},
      {Material::pvc, 8, "C905 DR 18", {}, {}},  // of 14 in and larger
      {Material::pvc, 8, "C900 DR 26", {}, {}},
      {Material::ductile_iron, 8, "C900 DR 18", {}, {}},
      {Material::ductile_iron, 8, "C900", {}, {}},
      {Material::pvc, 8, "C900 DR 18", {}, {"pvc-c900 DR 18"}},
      {Material::pvc, 8, "C900 DR 18 PC 235", {}, {"pvc-c900 DR 18"}},
      {Material::pvc, 8, "C900 DR 25 PC 235", {}, {}},
      {Material::pvc, 8, "PC 150", {}, {"pvc-c900 DR 27.5"}},
      // The old names, which pipe of the new edition may bear too.
      {Material::pvc, 8, "C900 Class 150", 1994, {"pvc-c900 DR 18"}},
      {Material::pvc, 8, "C900 Class 150", 2012, {"pvc-c900 DR 18", "pvc-c900 DR 27.5"}},
      {Material::pvc, 8, "C900 Class 150", {}, {"pvc-c900 DR 18", "pvc-c900 DR 27.5"}},
      {Material::pvc, 8, "C900 Class 200", 1994, {"pvc-c900 DR 14"}},
      {Material::pvc, 8, "C900 Class 200", 2012, {"pvc-c900 DR 14", "pvc-c900 DR 21"}},
      {Material::pvc, 8, "Class 200", {}, {"pvc-c900 DR 14", "pvc-c900 DR 21", "pvc-ips SDR 21"}},
      {Material::pvc, 8, "D2241 Class 200", {}, {"pvc-ips SDR 21"}},
      {Material::pvc, 8, "Class 100", 1990, {"pvc-c900 DR 25", "pvc-ips SDR 41"}},
      // In the large sizes a number is the pressure of either pipe.
      {Material::pvc, 24, "Class 100", {}, {"pvc-c900 DR 41", "pvc-ips SDR 41"}},
      {Material::pvc, 24, "Class 125", {}, {"pvc-c900 DR 32.5", "pvc-ips SDR 32.5"}},
      {Material::pvc, 24, "Class 200", {}, {"pvc-c900 DR 21", "pvc-ips SDR 21"}},
      {Material::pvc, 24, "PR 200", {}, {"pvc-c900 DR 21", "pvc-ips SDR 21"}},
      {Material::pvc, 24, "C905 Class 200", {}, {"pvc-c900 DR 21"}},
      {Material::pvc, 24, "C905 Class 150", {}, {"pvc-c900 DR 27.5"}},
      {Material::pvc, 24, "C900 Class 200", {}, {"pvc-c900 DR 21"}},
      {Material::ductile_iron, 8, "350", {}, {"di-pressure-class PC 350"}},
      {Material::ductile_iron, 8, "C150/C151 class 52", {}, {"di-thickness-class TC 52"}},
      {Material::cast_iron, 8, "1908 class A", {}, {"ci-pit-cast Class A"}},
      {Material::cast_iron, 8, "Class 22", {}, {"ci-spun TC 22"}},
      {Material::polyethylene, 8, "IPS DR 11 PE4710", {}, {"pe-ips DR 11 PE4710"}},
      {Material::polyethylene, 8, "DIPS DR 11", {}, {"pe-diod DR 11"}},
      {Material::pvco, 8, "C909 PC 235", {}, {"pvco-c909 PC 235"}},
  };
  for (const Case& one : cases) {
    INFO(name_of(one.material) << ' ' << one.size << " [" << one.class_name << "] " << one.year.value_or(0));
    Job job = main_of(one.material, one.size, one.class_name);
    job.main.installed = one.year;
    const Plan plan = plan_of(job);
    const bool held = has(plan, FindingCode::main_class_word) || has(plan, FindingCode::main_class_not_made);
    CHECK(held == one.expected.empty());
    if (one.expected.empty()) {
      CHECK(plan.verdict != Verdict::go);
      CHECK(plan.main.candidates.size() ==
            Catalog::builtin().pipes(one.material, NominalSize::inches(one.size)).size());
    } else {
      CHECK(candidates(plan) == one.expected);
    }
  }
}

TEST_CASE("an old class name is rated as it was, whatever the year") {
  Job job = main_of(Material::pvc, 8, "C900 Class 150");
  job.main.installed = 2015;
  CHECK(plan_of(job).main.rating.value() / units::psi == 150.0);
  CHECK(plan_of(job).method.kind != Method::direct);  // it may be DR 27.5
  job.main.class_name = "C900 DR 18 PC 235";
  job.main.installed.reset();
  CHECK(plan_of(job).main.rating.value() / units::psi == 235.0);
}

TEST_CASE("a word nobody knows holds, and is named") {
  const Plan plan = plan_of(main_of(Material::pvc, 8, "C900 DR 18 Cl\xC3\xA1ss"));
  const Finding* finding = find(plan, FindingCode::main_class_word);
  REQUIRE(finding != nullptr);
  CHECK(finding->severity == Severity::hold);
  CHECK(std::get<ShortText>(finding->details[0]).view() == "Cl");
}

TEST_CASE("every pipe of the tables is found by each of its names") {
  for (const Pipe& pipe : Catalog::builtin().pipes()) {
    if (pipe.class_name.empty()) continue;
    Job job = sound_job();
    job.main.material = pipe.series->material;
    job.main.size = pipe.size;
    const auto finds = [&](const std::string& text, const std::string& standard) {
      job.main.class_name = text;
      job.main.standard = standard;
      const Plan plan = plan_of(job);
      INFO(pipe.series->id << ' ' << pipe.size.label() << ' ' << pipe.class_name << " by [" << text << "] [" << standard
                           << ']');
      CHECK_FALSE(has(plan, FindingCode::main_class_word));
      CHECK_FALSE(has(plan, FindingCode::main_class_not_made));
      CHECK(std::count(plan.main.candidates.begin(), plan.main.candidates.end(), &pipe) == 1);
    };
    finds(pipe.class_name, "");
    finds(pipe.series->standard + ' ' + pipe.class_name, "");
    finds(pipe.class_name, pipe.series->id);
    finds(pipe.class_name, pipe.series->standard);
    // And with a word more than anybody knows, never.
    job.main.standard.clear();
    job.main.class_name = pipe.class_name + " gizmo";
    const Plan plan = plan_of(job);
    CHECK(has(plan, FindingCode::main_class_word));
    CHECK(plan.verdict != Verdict::go);
  }
}

// ---- metric names

TEST_CASE("a metric name is a doubt about the diameter, which the tape or the record settles") {
  const NominalSize dn150 = *Catalog::builtin().metric_size(150);
  Job job = sound_job();
  job.main.size = dn150;
  CHECK(has(plan_of(job), FindingCode::main_size_metric));
  CHECK(plan_of(job).verdict == Verdict::hold);
  SECTION("by the tape") {
    job.main.circumference = 551.0 * units::mm;  // 175.4 mm outside
    CHECK(plan_of(job).verdict == Verdict::go);
    job.main.circumference = 534.0 * units::mm;  // 170.0 mm: ISO 2531
    CHECK(has(plan_of(job), FindingCode::main_od_contradicts));
    CHECK(plan_of(job).verdict == Verdict::hold);
  }
  SECTION("by the record") {
    for (const char* const standard : {"C151", "AWWA", "AWWA C151/A21.51", "CIOD"}) {
      INFO(standard);
      job.main.standard = standard;
      CHECK(plan_of(job).verdict == Verdict::go);
    }
    job.main.standard = "ISO 2531";
    CHECK(plan_of(job).verdict == Verdict::hold);
  }
  SECTION("but an inch size converted is an inch size") {
    job.main.size = NominalSize::inches(6);
    CHECK(plan_of(job).verdict == Verdict::go);
  }
}

TEST_CASE("no main of a metric name goes unmeasured") {
  for (const int dn : {75, 80, 100, 150, 200, 250, 300, 350, 400, 450, 500, 600}) {
    const NominalSize size = *Catalog::builtin().metric_size(dn);
    for (std::size_t m = 0; m < material_count; ++m) {
      for (const Pipe& pipe : Catalog::builtin().pipes(static_cast<Material>(m), size)) {
        Job job = sound_job();
        job.main.material = static_cast<Material>(m);
        job.main.size = size;
        job.main.class_name = pipe.class_name;
        job.main.wall = pipe.wall;
        job.main.rating = 150.0 * units::psi;
        INFO(dn << ' ' << pipe.series->id << ' ' << pipe.class_name);
        REQUIRE(plan_of(job).verdict != Verdict::go);
      }
    }
  }
}

// ---- over every row and random jobs

TEST_CASE("a recalled year never betters a verdict") {
  int tried = 0;
  of_random_mains(21, 4000, [&](Dice& dice, const Pipe& pipe, const Job& job) {
    const bool iron = pipe.series->material == Material::cast_iron;
    if (pipe.series->material == Material::pvc) return;  // the year of its rerating is published
    const int from = iron ? 1918 : 1800;                 // and so is the first of spun iron, and its last
    const int to = iron ? 1980 : 2060;
    Job dated = job;
    dated.main.installed = from + static_cast<int>(dice.below(static_cast<std::size_t>(to - from + 1)));
    const Plan before = plan_of(job);
    const Plan after = plan_of(dated);
    INFO(told(job, before) << " became " << told(dated, after));
    REQUIRE(after.verdict >= before.verdict);
    if (!has(after, FindingCode::main_year_contradicts)) REQUIRE(candidates(after) == candidates(before));
    ++tried;
  });
  CHECK(tried > 1000);
}

// Without its class a main may be one that the line is not over the rating of, and a no-go becomes a hold; never a go.
TEST_CASE("leaving a word of the class out never makes a go") {
  int tried = 0;
  of_random_mains(22, 4000, [&](Dice& dice, const Pipe& pipe, Job job) {
    if (pipe.class_name.empty()) return;
    std::vector<std::string> words = {pipe.class_name};
    if (dice.chance(60)) words.insert(words.begin(), pipe.series->standard);
    if (dice.chance(30)) words.emplace_back(dice.chance(50) ? "Class 150" : "PC 235");
    if (dice.chance(20)) words.emplace_back(dice.chance(50) ? "AWWA" : "psi");
    const auto joined = [](const std::vector<std::string>& parts) {
      std::string text;
      for (const std::string& part : parts) text += (text.empty() ? "" : " ") + part;
      return text;
    };
    job.main.standard.clear();
    job.main.class_name = joined(words);
    if (dice.chance(50)) job.main.installed = 1960 + static_cast<int>(dice.below(65));
    const Plan before = plan_of(job);
    if (contradicts(before)) return;
    words.erase(words.begin() + static_cast<std::ptrdiff_t>(dice.below(words.size())));
    Job without = job;
    without.main.class_name = joined(words);
    const Plan after = plan_of(without);
    INFO(told(job, before) << " became " << told(without, after));
    REQUIRE((after.verdict != Verdict::go || before.verdict == Verdict::go));
    ++tried;
  });
  CHECK(tried > 1000);
}

TEST_CASE("verdicts are monotone in the wall, from nothing to more than the pipe can have") {
  int tried = 0;
  of_random_mains(23, 800, [&](Dice& dice, const Pipe& pipe, Job job) {
    if (!pipe.wall && !pipe.plausible) return;
    if (!pipe.od) job.main.od = pipe.plausible->od_from;
    // Through a thicker wall a bar travels further: this one reaches through any.
    const auto machine = truck_machine();
    machine->bar_travel = 60.0 * units::inch;
    job.machine.given = machine;
    const Length most = pipe.wall ? 1.7 * *pipe.wall : 1.2 * pipe.plausible->wall_to;
    Verdict worst = Verdict::no_go;
    const double step = dice.real(0.01, 0.05);
    for (double part = step; part <= 1.0; part += step) {
      job.main.wall = part * most;
      const Plan plan = plan_of(job);
      if (has(plan, FindingCode::main_wall_impossible)) {
        REQUIRE(plan.verdict >= Verdict::hold);
        continue;
      }
      INFO(told(job, plan));
      REQUIRE(plan.verdict <= worst);
      worst = plan.verdict;
    }
    ++tried;
  });
  CHECK(tried > 400);
}

TEST_CASE("lengths in millimeters and in inches give one plan") {
  of_random_mains(24, 2000, [](Dice&, const Pipe&, const Job& job) {
    Job metric = job;
    const auto by_text = [](std::optional<Length>& length) {
      if (!length) return;
      std::array<char, 40> text{};
      std::snprintf(text.data(), text.size(), "%.9f mm", *length / units::mm);
      length = Length::from_base(parse_measure(text.data(), Kind::length).value.base());
    };
    by_text(metric.main.od);
    by_text(metric.main.wall);
    const Plan a = plan_of(job);
    const Plan b = plan_of(metric);
    INFO(told(job, a) << " and " << told(metric, b));
    REQUIRE(a.verdict == b.verdict);
    REQUIRE(candidates(a) == candidates(b));
  });
}

TEST_CASE("threads are counted, and the wall asked for, at the smallest that the pipe can be") {
  int tried = 0;
  of_random_mains(25, 2000, [&](Dice& dice, const Pipe&, const Job& job) {
    const Plan plan = plan_of(job);
    if (!plan.engagement || !plan.engagement->wall_needed || plan.method.kind != Method::direct) return;
    const TapThread* thread = Catalog::builtin().thread(*plan.method.thread, plan.method.tap);
    if (thread == nullptr) return;
    for (const Pipe* pipe : plan.main.candidates) {
      if (!pipe->od) continue;
      Length really = *pipe->od + dice.real(-1, 1) * pipe->od_minus;
      if (job.main.od) really = *job.main.od + dice.real(-1, 1) * default_rules().measuring.od_uncertainty.value;
      if (job.main.od && (really < *plan.main.od_low || really > *plan.main.od_high)) continue;
      INFO(told(job, plan) << " at " << really / units::inch);
      const auto needed = mechanics::wall_needed(really, thread->form, plan.engagement->required);
      REQUIRE(needed);
      REQUIRE(*needed <= *plan.engagement->wall_needed + 1e-9 * units::inch);
      const auto held = mechanics::engagement({really, *plan.main.wall_least}, thread->form);
      REQUIRE(held.complete_threads >= plan.engagement->at_least->complete_threads - 1e-9);
      ++tried;
    }
  });
  CHECK(tried > 100);
}

TEST_CASE("14 and 16 in iron ask for the wall that its class guarantees, not for the nominal") {
  for (const double size : {14.0, 16.0}) {
    Job job = main_of(Material::ductile_iron, size, "PC 250");
    job.service.size = NominalSize::inches(1.25);
    job.main.pressure = 60.0 * units::psi;
    const Plan plan = plan_of(job);
    INFO(size);
    REQUIRE(plan.method.kind == Method::direct);
    job.main.wall = *plan.main.governing->wall - 0.03 * units::inch;  // sound: the casting tolerance is 0.07
    CHECK(plan_of(job).method.kind == Method::direct);
    CHECK(plan_of(job).verdict == plan.verdict);
  }
}
