// One list of sources: text, sheet and JSON tell the same, and whatever a finding rests on is in it.
#include "mainbore/evidence.hpp"

#include <algorithm>
#include <filesystem>
#include <fstream>
#include <iterator>
#include <nlohmann/json.hpp>
#include <set>
#include <string>

#include "mainbore/job_file.hpp"
#include "mainbore/plan_file.hpp"
#include "mainbore/report.hpp"
#include "mainbore/sheet.hpp"
#include "support/catch.hpp"
#include "support/one_line.hpp"
#include "support/plain_numbers.hpp"
#include "unit/planning/random_jobs.hpp"
#include "unit/planning/whole_jobs.hpp"

using namespace mainbore;
using namespace mainbore::test;

namespace {

// As a page writes it.
std::string escaped(std::string_view text) {
  std::string out;
  for (const char c : text) {
    if (c == '&') out += "&amp;";
    else if (c == '<') out += "&lt;";
    else if (c == '>') out += "&gt;";
    else if (c == '"') out += "&quot;";
    else out += c;
  }
  return out;
}

void readers_tell_the_same(const Plan& plan) {
  const std::string text = on_one_line(text_report(plan, {.width = 200}));
  const std::string sheet = plain_numbers(sheet_html(plan, UnitSystem::us));
  const auto json = nlohmann::json::parse(plan_to_json(plan, UnitSystem::us, JsonStyle::compact));
  std::set<std::string> ids;
  bool recalled = false;
  for (const Evidence& item : plan.evidence) {
    recalled = recalled || is_recalled(item);
    if (item.basis.source == nullptr) continue;
    ids.insert(item.basis.source->id);
    if (item.basis.utility) continue;
    const std::string& title = item.basis.source->title;
    INFO(words_of(item) << ": " << title);
    CHECK(text.find(title.substr(1)) != std::string::npos);
    CHECK(sheet.find(escaped(item.basis.source->brief)) != std::string::npos);
  }
  // A calculation also names what it takes from a handbook and nothing is decided by: the weight of a foot of water.
  for (const Calculation& made : plan.calculations) {
    for (const CalculationInput& input : made.inputs) {
      if (!input.worked_out && input.basis.source != nullptr) ids.insert(input.basis.source->id);
    }
    if (made.limit && !made.limit->worked_out && made.limit->basis.source != nullptr)
      ids.insert(made.limit->basis.source->id);
  }
  std::set<std::string> named;
  for (const auto& [id, source] : json["sources"].items()) named.insert(id);
  CHECK(named == ids);
  CHECK(json["evidence"].size() == plan.evidence.size());
  const bool told = std::any_of(plan.findings.begin(), plan.findings.end(),
                                [](const Finding& finding) { return finding.code == FindingCode::value_recalled; });
  CHECK(told == recalled);
  for (const std::string_view reader : {std::string_view(text), std::string_view(sheet)}) {
    CHECK((reader.find(check_this_value) != std::string_view::npos) == recalled);
    CHECK((reader.find("Check this value: ") != std::string_view::npos) == recalled);
  }
}

// What a plan shows a basis of, beside its findings.
std::vector<const Basis*> bases_shown(const Plan& plan) {
  std::vector<const Basis*> shown = {plan.main.rating_basis};
  for (const PressureLimit& limit : plan.pressure.limits) shown.push_back(limit.basis);
  if (plan.method.limit != nullptr) shown.push_back(&plan.method.limit->basis);
  if (plan.method.specification != nullptr) shown.push_back(&plan.method.specification->basis);
  if (plan.setup.machine != nullptr && plan.method.kind != Method::none && plan.method.kind != Method::sleeve) {
    shown.push_back(&plan.setup.machine->basis);
  }
  if (plan.service) {
    shown.insert(shown.end(), {plan.service->demand.basis, plan.service->friction_basis, &plan.service->tube->basis});
    if (plan.service->meter != nullptr) shown.push_back(&plan.service->meter->basis);
  }
  if (plan.cleaning) {
    for (const ChlorineDose* const dose : plan.cleaning->doses) shown.push_back(&dose->basis);
  }
  return shown;
}

// What bounds a stop number; of the pressure, the least of the limits.
std::optional<Taken> bounded_by(const StopNumber& reading) {
  switch (reading.id) {
    case ReadingId::wall:
      return Taken::gauge_error;
    case ReadingId::circumference:
      return Taken::tape_error;
    case ReadingId::pipe_temperature:
      return reading.at_most ? std::optional(Taken::plastic_temperature) : std::nullopt;  // else that of ice
    case ReadingId::joint_distance:
      return Taken::joint_distance;
    case ReadingId::surge:
      return Taken::surge;
    case ReadingId::air_temperature:
      return Taken::air_temperature;
    case ReadingId::line_pressure:
      return Taken::line_pressure;
  }
  return std::nullopt;
}

void everything_is_in_it(const Plan& plan) {
  const auto in_it = [&](const auto& holds) { return std::any_of(plan.evidence.begin(), plan.evidence.end(), holds); };
  const auto rests = [&](const Finding& finding, PlanPart part) {
    for (const Basis* const basis : finding.basis) {
      if (basis == nullptr) continue;
      INFO(name_of(finding.code));
      CHECK(in_it([&](const Evidence& item) {
        return item.part == part && item.finding == finding.code && item.basis.source == basis->source &&
               item.basis.how == basis->how;
      }));
    }
  };
  for (const Finding& finding : plan.findings) rests(finding, PlanPart::findings);
  for (const RejectedMethod& rejected : plan.method.rejected) rests(rejected.why, PlanPart::rejected);
  for (const Basis* const basis : bases_shown(plan)) {
    if (basis == nullptr) continue;
    INFO((basis->source != nullptr ? basis->source->id : "stated"));
    CHECK(in_it([&](const Evidence& item) {
      return item.part < PlanPart::findings && item.basis.source == basis->source &&
             item.basis.reference == basis->reference;
    }));
  }
  for (const Assumption& assumption : plan.main.assumed) {
    INFO(assumption.path);
    CHECK(in_it([&](const Evidence& item) { return item.from == From::assumed && item.value == assumption.value; }));
  }
  for (const StopNumber& reading : plan.stop_numbers) {
    const auto what = bounded_by(reading);
    if (!what) continue;
    INFO(name_of(*what));
    CHECK(in_it([&](const Evidence& item) { return item.what == *what; }));
  }
  for (std::size_t i = 1; i < plan.evidence.size(); ++i) CHECK(plan.evidence[i - 1].part <= plan.evidence[i].part);
}

void check_evidence(const Plan& plan) {
  everything_is_in_it(plan);
  readers_tell_the_same(plan);
}

Job example_job(const std::filesystem::path& path) {
  std::ifstream file(path);
  const std::string text((std::istreambuf_iterator<char>(file)), std::istreambuf_iterator<char>());
  JobFile read = read_job(text, path.string(), Catalog::builtin());
  REQUIRE(read.job);
  return *std::move(read.job);
}

const Evidence* first(const Plan& plan, Taken what) {
  const auto found =
      std::find_if(plan.evidence.begin(), plan.evidence.end(), [&](const Evidence& item) { return item.what == what; });
  return found == plan.evidence.end() ? nullptr : &*found;
}

}  // namespace

TEST_CASE("all that an example's plan shows rests on its evidence, and each reader names the same sources") {
  int examples = 0;
  for (const auto& entry : std::filesystem::directory_iterator(MAINBORE_SOURCE_DIR "/examples/jobs")) {
    INFO(entry.path().string());
    check_evidence(plan_of(example_job(entry.path())));
    ++examples;
  }
  CHECK(examples > 0);
}

TEST_CASE("all that a random job's plan shows rests on its evidence, and each reader names the same sources") {
  RandomJobs random(23);
  WholeJobs whole(41);
  const int jobs = random_jobs(300);
  for (int i = 0; i < jobs; ++i) {
    check_evidence(plan_of(i % 3 == 0 ? telling_job(random) : i % 3 == 1 ? half_read_job(random) : whole.next()));
  }
}

TEST_CASE("a recalled tolerance that decides is not told as published") {
  const Plan plan = plan_of(sound_job());
  const Evidence* const found = first(plan, Taken::wall_tolerance);
  REQUIRE(found != nullptr);
  CHECK(found->basis.how == plan.main.governing->series->basis_of(PipeColumn::wall_minus).how);
}

TEST_CASE("a recalled row is not told as the published table it stands in") {
  const auto pipes = Catalog::builtin().pipes();
  const auto row = std::find_if(pipes.begin(), pipes.end(), [](const Pipe& pipe) { return pipe.how == How::memory; });
  REQUIRE(row != pipes.end());
  Job job = sound_job();
  job.main.material = row->series->material;
  job.main.size = row->size;
  job.main.class_name = row->class_name;
  const Plan plan = plan_of(job);
  const Evidence* const found = first(plan, Taken::pipe_wall);
  REQUIRE(found != nullptr);
  CHECK(is_recalled(*found));
}

TEST_CASE("the rating told is the one planned with, not another candidate's") {
  Job job = sound_job();
  job.main.class_name.clear();
  const Plan plan = plan_of(job);
  REQUIRE(plan.main.candidates.size() > 1);
  const Evidence* const found = first(plan, Taken::pipe_rating);
  REQUIRE(found != nullptr);
  CHECK(found->value == Detail(Measure(*plan.main.rating)));
}

TEST_CASE("what a settings file gave is told as the settings'") {
  auto machine = truck_machine();
  machine->basis = stated_in_settings;
  Job job = sound_job();
  job.machine.given = machine;
  const Plan plan = plan_of(job);
  const Evidence* const found = first(plan, Taken::machine);
  REQUIRE(found != nullptr);
  CHECK(found->from == From::settings);
}
