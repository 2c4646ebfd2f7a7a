// What must hold over the whole space of jobs, whatever the rules say of any one of them.
#include <algorithm>
#include <array>
#include <string>

#include "io/orders/verdict_record.hpp"
#include "mainbore/finding_words.hpp"
#include "mainbore/plan_file.hpp"
#include "mainbore/what_if.hpp"
#include "support/catch.hpp"
#include "support/plan_under.hpp"
#include "unit/planning/random_jobs.hpp"

using namespace mainbore;
using namespace mainbore::test;

namespace {

constexpr int jobs = 3000;

bool same(const Finding& a, const Finding& b) {
  return a.code == b.code && a.severity == b.severity && a.value == b.value && a.limit == b.limit &&
         a.details == b.details && a.basis == b.basis && a.limit_is_least == b.limit_is_least;
}

}  // namespace

TEST_CASE("more pressure never betters a verdict") {
  RandomJobs random(1);
  for (int i = 0; i < jobs; ++i) {
    const Job job = random.next();
    Job more = job;
    more.main.pressure = *job.main.pressure + random.real(0.01, 60) * units::psi;
    never_better(job, more, "more pressure");
  }
}

TEST_CASE("more surge never betters a verdict") {
  RandomJobs random(2);
  for (int i = 0; i < jobs; ++i) {
    Job job = random.next();
    if (!job.main.surge) job.main.surge = 10.0 * units::psi;
    Job more = job;
    more.main.surge = *job.main.surge + random.real(0.1, 100) * units::psi;
    never_better(job, more, "more surge");
  }
}

TEST_CASE("more of an occasional surge never betters a verdict") {
  RandomJobs random(9);
  for (int i = 0; i < jobs; ++i) {
    Job job = random.next();
    Job more = job;
    more.main.occasional_surge = job.main.occasional_surge.value_or(Pressure()) + random.real(0.1, 150) * units::psi;
    never_better(job, more, "more occasional surge");
    // Nor does it matter to have it called recurring.
    Job often = job;
    often.main.surge = std::max(job.main.surge.value_or(Pressure()), job.main.occasional_surge.value_or(Pressure()));
    if (job.main.surge) never_better(job, often, "an occasional surge that recurs");
  }
}

TEST_CASE("a lower rating never betters a verdict, of the main or of the tubing") {
  RandomJobs random(10);
  for (int i = 0; i < jobs; ++i) {
    Job job = random.next();
    job.main.rating = random.real(40, 350) * units::psi;
    Job lower = job;
    lower.main.rating = random.real(0.2, 0.99) * *job.main.rating;
    never_better(job, lower, "lower rating");
    job.service.line.material = random.chance(50) ? Tubing::polyethylene : Tubing::pex;
    job.service.line.rating = random.real(40, 350) * units::psi;
    Job weaker = job;
    weaker.service.line.rating = random.real(0.2, 0.99) * *job.service.line.rating;
    never_better(job, weaker, "weaker tubing");
  }
}

TEST_CASE("no main goes whose rating nobody knows") {
  RandomJobs random(11);
  int tried = 0;
  for (int i = 0; i < jobs; ++i) {
    Job job = random.next();
    job.main.rating.reset();
    const Plan plan = plan_of(job);
    if (plan.main.rating) continue;
    REQUIRE(plan.verdict != Verdict::go);
    ++tried;
  }
  CHECK(tried > 100);
}

TEST_CASE("a bigger tap never betters a verdict") {
  RandomJobs random(3);
  constexpr std::array taps = {0.625, 0.75, 1.0, 1.25, 1.5, 2.0, 3.0, 4.0, 6.0, 8.0, 12.0};
  for (int i = 0; i < jobs; ++i) {
    Job job = random.next();
    // Within what the machine and the thread tables know: a smaller tap than the machine cuts is held too.
    const std::size_t small = random.below(taps.size() - 1);
    const std::size_t large = small + 1 + random.below(taps.size() - 1 - small);
    if (job.machine.given) job.machine.given = truck_machine();
    // A size in which the thread is not made is held by itself.
    if (job.service.thread != ThreadStandard::awwa_taper && taps[small] == 0.625) continue;
    job.service.size = NominalSize::inches(taps[small]);
    Job bigger = job;
    bigger.service.size = NominalSize::inches(taps[large]);
    never_better(job, bigger, "bigger tap");
  }
}

TEST_CASE("a thinner wall never betters a verdict") {
  RandomJobs random(4);
  int tried = 0;
  for (int i = 0; i < jobs; ++i) {
    Job job = random.next();
    if (!job.main.wall) continue;
    // A reading too thick to be believed is a contradiction of its own, not a better wall.
    if (has(plan_of(job), FindingCode::main_wall_impossible)) continue;
    Job thinner = job;
    thinner.main.wall = random.real(0.05, 0.99) * *job.main.wall;
    never_better(job, thinner, "thinner wall");
    ++tried;
  }
  CHECK(tried > 500);
}

// A crew that reads every number and finds each inside its limits may go on: entered in the job, those readings lead to the
// same way of tapping, and to nothing that holds or stops it which the plan did not say.
TEST_CASE("readings inside all the stop numbers bear the plan out") {
  RandomJobs random(13);
  int tried = 0;
  for (int i = 0; i < jobs; ++i) {
    Job job = random.next();
    if (random.chance(30)) job.main.pressure = random.real(20, 120) * units::psi;
    if (random.chance(30)) job.main.class_name.clear();
    if (random.chance(10)) job.main.pressurized = false;
    const Plan before = plan_of(job);
    if (before.method.kind == Method::none) continue;
    // Where the utility rates a main of unknown class, a reading may tell of a pipe never made for that: its word stands.
    if (job.main.rating && before.main.candidates.size() > 1) continue;
    for (int corner = 0; corner < 8; ++corner) {
      Job read = job;
      std::string readings;
      // The ends first, then places between them, then the ends as they are shown in metric units.
      const bool metric = corner >= 6;
      const auto end = [&](const Measure& bound, Toward toward) {
        if (!metric) return bound.base();
        return parse_measure(format_measure(bound, UnitSystem::si, toward), bound.kind()).value.base();
      };
      const auto between = [&](const StopNumber& stop, bool low) {
        double least = stop.at_least ? end(*stop.at_least, Toward::more) : 0.0;
        double most = stop.at_most ? end(*stop.at_most, Toward::less) : 1.05 * least;
        if (most < least) {  // no step of the metric gauge lies between
          least = stop.at_least->base();
          most = stop.at_most->base();
        }
        return corner < 4 || metric ? (low ? least : most) : random.real(least, most);
      };
      for (const StopNumber& stop : before.stop_numbers) {
        double value = 0.0;
        if (stop.id == ReadingId::line_pressure) {
          value = between(stop, false);
          read.main.pressure = Pressure::from_base(value);
        } else if (stop.id == ReadingId::wall) {
          value = between(stop, true);
          read.main.wall = Length::from_base(value);
        } else if (stop.id == ReadingId::circumference) {
          value = between(stop, corner % 2 == 0);
          read.main.circumference = Length::from_base(value);
        } else if (stop.id == ReadingId::pipe_temperature) {
          value = between(stop, corner / 2 % 2 == 0);
          read.main.temperature = Temperature::fahrenheit(value);
        } else if (stop.id == ReadingId::surge) {
          value = between(stop, false);
          read.main.surge = Pressure::from_base(value);
        } else if (stop.id == ReadingId::air_temperature) {
          value = between(stop, true);
          read.air_temperature = Temperature::fahrenheit(value);
        } else {
          REQUIRE(stop.id == ReadingId::joint_distance);
          if (!read.nearby) read.nearby.emplace();
          Nearby joint;
          joint.what = NearbyThing::joint;
          value = between(stop, true);
          joint.along = before.location.shift + Length::from_base(value);
          read.nearby->push_back(joint);
        }
        readings += std::string(name_of(stop.id)) + " " + std::to_string(value) + ", ";
      }
      const Plan after = plan_of(read);
      INFO(name_of(*job.main.material) << " " << job.main.size->label() << " [" << job.main.class_name << "] tap "
                                       << job.service.size->label() << " at " << job.main.pressure->base()
                                       << " psi, wall " << (job.main.wall ? job.main.wall->base() : -1.0)
                                       << "; read: " << readings);
      const Outcome was = outcome_of(before);
      const Outcome now = outcome_of(after);
      const auto told = [](const Plan& plan) {
        std::string text(name_of(plan.method.kind));
        for (const Finding& f : plan.findings) {
          if (f.severity >= Severity::hold) text += " " + std::string(name_of(f.code));
        }
        return text;
      };
      const auto psi = [](const std::optional<Pressure>& p) { return p ? p->base() : -1.0; };
      INFO("surge " << psi(job.main.surge) << ", occasional " << psi(job.main.occasional_surge) << ", rated "
                    << psi(job.main.rating));
      INFO("before: " << told(before) << "; after: " << told(after));
      // A reading too thick to be believed is a contradiction of its own; no number says how thick a wall may be.
      if (corner >= 4 && !metric && has(after, FindingCode::main_wall_impossible)) continue;
      ++tried;
      const auto said = [&](FindingCode code) {
        INFO("arrives: " << name_of(code));
        REQUIRE(std::find(was.hindrances.begin(), was.hindrances.end(), code) != was.hindrances.end());
      };
      REQUIRE(after.method.kind != Method::none);
      if (after.method.kind == before.method.kind) {
        for (const FindingCode code : now.hindrances) said(code);
      }
      REQUIRE(after.verdict <= before.verdict);
      if (after.method.kind == before.method.kind) {
        REQUIRE(after.method.count == before.method.count);
        REQUIRE(after.method.tap == before.method.tap);
      } else if (const RejectedMethod* passed = rejection(after, before.method.kind)) {
        // Another method has passed this one, which still has no holds but those that were said.
        REQUIRE(passed->why.severity < Severity::stop);
        said(passed->why.code);
      }
    }
  }
  CHECK(tried > 1000);
}

TEST_CASE("a closer joint never betters a verdict") {
  RandomJobs random(5);
  for (int i = 0; i < jobs; ++i) {
    Job job = random.next();
    Nearby joint;
    joint.what = NearbyThing::joint;
    joint.along = random.real(1, 80) * units::inch;
    job.nearby = {joint};
    Job closer = job;
    closer.nearby->front().along = random.real(0, 1) * joint.along;
    never_better(job, closer, "closer joint");
  }
}

TEST_CASE("worse condition never betters a verdict") {
  RandomJobs random(6);
  for (int i = 0; i < jobs; ++i) {
    Job job = random.next();
    job.main.condition = Condition::sound;
    Job pitted = job;
    pitted.main.condition = Condition::pitted;
    never_better(job, pitted, "pitted");
    Job poor = job;
    poor.main.condition = Condition::poor;
    never_better(pitted, poor, "poor");
  }
}

TEST_CASE("leaving a fact out never turns what it could rule out into a go") {
  RandomJobs random(7);
  const auto check = [](const Job& without, std::initializer_list<Job> worst, const char* fact) {
    if (plan_of(without).verdict != Verdict::go) return;
    for (const Job& job : worst) {
      const Plan plan = plan_of(job);
      INFO("a go without " << fact << " of " << name_of(*job.main.material) << " " << job.main.size->label() << " ["
                           << job.main.class_name << "]"
                           << (plan.findings.empty() ? "" : std::string(": ") += name_of(plan.findings.front().code)));
      REQUIRE(plan.verdict == Verdict::go);
    }
  };
  for (int i = 0; i < jobs; ++i) {
    const Job job = random.next();
    {
      Job without = job;
      without.main.condition.reset();
      Job poor = job;
      poor.main.condition = Condition::poor;
      check(without, {poor}, "condition");
    }
    {
      Job without = job;
      without.main.carries.reset();
      Job gas = job;
      gas.main.carries = Carries::gas;
      check(without, {gas}, "what it carries");
    }
    {
      Job without = job;
      without.main.curved.reset();
      Job bent = job;
      bent.main.curved = true;
      check(without, {bent}, "curve");
    }
    {
      Job without = job;
      without.main.temperature.reset();
      Job warm = job;
      warm.main.temperature = Temperature::fahrenheit(95);
      check(without, {warm}, "temperature");
    }
    {
      Job without = job;
      without.nearby.reset();
      Job close = job;
      close.nearby = {Nearby{}};
      check(without, {close}, "what lies near");
    }
    if (job.main.material == Material::pvc) {
      Job without = job;
      without.main.installed.reset();
      Job old = job;
      old.main.installed = 1990;
      // A ratio that was not made then, or a wall that no pipe of then had, is no pipe of that year.
      const Plan dated = plan_of(old);
      const bool contradicted =
          has(dated, FindingCode::main_year_contradicts) || has(dated, FindingCode::main_wall_impossible);
      if (!contradicted) check(without, {old}, "the year");
      Job late = job;
      late.main.installed = 2015;
      check(without, {late}, "the year");
    }
    {
      // Any class the catalog lists for this pipe may be the one in the ground; a utility's word on the rating would
      // say that some of them are not.
      Job without = job;
      without.main.rating.reset();
      without.main.class_name.clear();
      without.main.wall.reset();
      if (plan_of(without).verdict != Verdict::go) continue;
      for (const Pipe& pipe : Catalog::builtin().pipes(*job.main.material, *job.main.size)) {
        Job with = without;
        with.main.class_name = pipe.class_name;
        with.main.standard = pipe.series->id;
        check(without, {with}, "class");
      }
    }
  }
}

TEST_CASE("leaving out a figure of the machine never turns what it could rule out into a go") {
  RandomJobs random(9);
  struct Figure {
    std::optional<Length> MachineProfile::*member;
    double worst;  // inches
  };
  constexpr std::array<Figure, 11> figures = {{{&MachineProfile::bar_travel, 0.5},
                                               {&MachineProfile::standoff, 60},
                                               {&MachineProfile::saddle_od_from, 160},
                                               {&MachineProfile::saddle_od_to, 0.3},
                                               {&MachineProfile::chain_length, 6},
                                               {&MachineProfile::chain_extension, 1},
                                               {&MachineProfile::chain_thickness, 6},
                                               {&MachineProfile::anchor_offset, 60},
                                               {&MachineProfile::anchor_height, -60},
                                               {&MachineProfile::gasket_diameter, 60},
                                               {&MachineProfile::stud_diameter, 0.25}}};
  for (int i = 0; i < jobs; ++i) {
    Job job = random.next();
    job.machine.given = truck_machine();
    const auto never_hides = [&](const Job& without, const Job& worst, std::size_t which) {
      if (plan_of(without).verdict != Verdict::go) return;
      INFO("a go without figure " << which << " of the machine in " << name_of(*job.main.material) << " "
                                  << job.main.size->label());
      REQUIRE(plan_of(worst).verdict == Verdict::go);
    };
    for (std::size_t f = 0; f < figures.size(); ++f) {
      auto silent = truck_machine();
      auto poor = truck_machine();
      ((*silent).*figures[f].member).reset();
      (*poor).*figures[f].member = figures[f].worst * units::inch;
      Job without = job;
      Job worst = job;
      without.machine.given = silent;
      worst.machine.given = poor;
      never_hides(without, worst, f);
    }
  }
}

TEST_CASE("every random job gets a plan that hangs together") {
  RandomJobs random(8);
  for (int i = 0; i < jobs; ++i) {
    const Job job = random.next();
    const Plan plan = plan_of(job);
    Severity worst = Severity::note;
    for (const Finding& finding : plan.findings) worst = std::max(worst, finding.severity);
    const Verdict expected = worst == Severity::stop   ? Verdict::no_go
                             : worst == Severity::hold ? Verdict::hold
                                                       : Verdict::go;
    REQUIRE(plan.verdict == expected);
    REQUIRE((plan.method.kind == Method::none) == (plan.verdict == Verdict::no_go));
    REQUIRE(std::is_sorted(plan.findings.begin(), plan.findings.end(),
                           [](const Finding& a, const Finding& b) { return a.severity > b.severity; }));
    if (plan.engagement) REQUIRE(std::isfinite(plan.engagement->at_nominal.complete_threads));
    // A go is never given on the unspecified machine, an unknown carrier or an unseen pipe.
    if (plan.verdict == Verdict::go) {
      REQUIRE(job.machine.given);
      REQUIRE(job.main.carries == Carries::water);
      REQUIRE(job.main.condition == Condition::sound);
    }
  }
}

TEST_CASE("no words of a plan hang on the text of its job, which moves with the plan") {
  const auto words_of = [](const Plan& plan) {
    std::string words;
    for (const Finding& finding : plan.findings)
      words += detail_of(finding, UnitSystem::us) + fix_of(finding, UnitSystem::us);
    for (const RejectedMethod& rejected : plan.method.rejected) words += detail_of(rejected.why, UnitSystem::us);
    for (const Assumption& assumed : plan.main.assumed) append_detail(words, assumed.value, UnitSystem::us);
    return words;
  };
  RandomJobs random(12);
  for (int i = 0; i < jobs; ++i) {
    Job job = telling_job(random);
    job.date = "2026-05-04";
    if (i % 2 == 0) job.main.installed = 2030;
    Plan plan = plan_of(job);
    const std::string before = words_of(plan);
    for (std::string* text :
         {&plan.job.id, &plan.job.place, &plan.job.date, &plan.job.crew, &plan.job.note, &plan.job.main.class_name,
          &plan.job.main.standard, &plan.job.service.demand.fixtures, &plan.job.machine.profile}) {
      std::fill(text->begin(), text->end(), '#');
    }
    REQUIRE(words_of(plan) == before);
  }
}

std::string codes_of(const std::vector<Finding>& findings) {
  std::string codes;
  for (const Finding& finding : findings) codes += ' ' + std::string(name_of(finding.code));
  return codes;
}

TEST_CASE("a verdict alone decides and finds what the whole plan does") {
  RandomJobs random(9);
  int starved = 0;
  for (int i = 0; i < jobs; ++i) {
    const Job job = telling_job(random);
    const Plan whole = plan_of(job);
    const Plan verdict = plan_under(job, default_rules(), PlanDepth::verdict);
    REQUIRE(verdict.verdict == whole.verdict);
    REQUIRE(verdict.evidence.empty());
    // What is made from the evidence is the whole plan's alone.
    std::vector<Finding> found = whole.findings;
    std::erase_if(found, [](const Finding& finding) { return finding.code == FindingCode::value_recalled; });
    INFO(codes_of(verdict.findings) << "\nof the whole plan:" << codes_of(found));
    REQUIRE(std::equal(verdict.findings.begin(), verdict.findings.end(), found.begin(), found.end(), same));
    REQUIRE(verdict.service.has_value() == whole.service.has_value());
    REQUIRE(verdict.stop_numbers.empty());
    REQUIRE(verdict.main.assumed.empty());
    REQUIRE(io::decision_of(verdict, io::RecordShape::line).text == io::decision_of(whole, io::RecordShape::line).text);
    starved += has(whole, FindingCode::service_starved) ? 1 : 0;
  }
  CHECK(starved > 0);
  CHECK(starved < jobs);
}

std::string decisions_of(const Plan& plan) {
  std::string text;
  append_plan_json(text, plan, UnitSystem::us, JsonStyle::compact, PlanScope::decisions);
  return text;
}

TEST_CASE("decisions are what the whole plan writes of them") {
  RandomJobs random(10);
  int recalled = 0;
  for (int i = 0; i < jobs; ++i) {
    const Job job = telling_job(random);
    const Plan whole = plan_of(job);
    const Plan decisions = plan_under(job, default_rules(), PlanDepth::decisions);
    REQUIRE(decisions_of(decisions) == decisions_of(whole));
    REQUIRE(decisions.evidence.empty());
    REQUIRE(decisions.calculations.empty());
    recalled += has(whole, FindingCode::value_recalled) ? 1 : 0;
  }
  CHECK(recalled > 0);
}
