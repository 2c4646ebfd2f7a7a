// A number for the trench is made once: whatever repeats a stop number prints that very value.
#include <filesystem>
#include <fstream>
#include <sstream>
#include <string>
#include <vector>

#include "mainbore/finding_words.hpp"
#include "mainbore/job_file.hpp"
#include "mainbore/report.hpp"
#include "mainbore/sheet.hpp"
#include "mainbore/work.hpp"
#include "support/catch.hpp"
#include "support/plain_numbers.hpp"
#include "unit/planning/random_jobs.hpp"
#include "unit/planning/whole_jobs.hpp"

using namespace mainbore;
using namespace mainbore::test;

namespace {

// What stands between two pieces of a text, wherever both are found.
std::vector<std::string> between(std::string_view text, std::string_view lead, std::string_view tail) {
  std::vector<std::string> found;
  for (std::size_t at = text.find(lead); at != std::string_view::npos; at = text.find(lead, at + 1)) {
    const std::size_t start = at + lead.size();
    const std::size_t end = text.find(tail, start);
    if (end == std::string_view::npos) break;
    if (end - start < 40) found.emplace_back(text.substr(start, end - start));
  }
  return found;
}

// The phrases in which a plan's words repeat a stop number.
struct Phrase {
  ReadingId id;
  std::string_view lead;
  std::string_view tail;
};
constexpr std::array phrases = {
    Phrase{ReadingId::line_pressure, "lowered to ", " or less"},
    Phrase{ReadingId::line_pressure, "Stop over ", ". "},
    Phrase{ReadingId::line_pressure, "at the tap: at most ", ". "},
    Phrase{ReadingId::line_pressure, "Lower the main to ", " or less"},
    Phrase{ReadingId::wall, "The wall reads at least ", ";"},
    Phrase{ReadingId::wall, "where the wall reads at least ", ";"},
    Phrase{ReadingId::wall, "It must read at least ", "; if less"},
    Phrase{ReadingId::wall, "It must be at least ", "; stop if less"},
    Phrase{ReadingId::wall, "sound wall of at least ", ". "},
    Phrase{ReadingId::wall, "sound wall at the tap at least ", ";"},
    Phrase{ReadingId::pipe_temperature, "Tap only at ", ". "},
    Phrase{ReadingId::pipe_temperature, "It must lie within ", ". "},
    Phrase{ReadingId::joint_distance, "; joint by ", ";"},
    Phrase{ReadingId::surge, "and how often: ", " has room"},
};

void repeats_its_stop_numbers(const Plan& plan, std::string_view text, UnitSystem system) {
  for (const Phrase& phrase : phrases) {
    for (const std::string& number : between(text, phrase.lead, phrase.tail)) {
      const StopNumber* const reading = plan.stop_number(phrase.id);
      INFO(phrase.lead << number << phrase.tail << " in: " << text);
      if (reading == nullptr) continue;  // a saddle's plan asks for no wall
      CHECK(number == bare_bounds(*reading, system));
    }
  }
}

Pressure in_words(std::string_view text) { return parse_measure(text, Kind::pressure).value.as<Pressure>(); }

// Whatever is loaded for a pressure is good for the stop number, or for the line where that is more.
void loads_for_the_stop_number(const Plan& plan, UnitSystem system) {
  const StopNumber* const line = plan.stop_number(ReadingId::line_pressure);
  if (line == nullptr) return;
  const std::string stop = bare_bounds(*line, system);
  for (const LoadItem& item : load_list(plan, system)) {
    const std::string check(item.check.view());
    for (const std::string& number : between(check + " ", "Good for at least ", ". ")) CHECK(number == stop);
    for (const std::string& number : between(check, "and for at least ", ". ")) {
      INFO(item.item.view() << ": " << check);
      if (plan.pressure.line <= line->at_most->as<Pressure>()) CHECK(number == stop);
      else CHECK(in_words(number) >= plan.pressure.line * (1.0 - 1e-6));
    }
  }
}

void one_number(const Plan& plan) {
  for (const UnitSystem system : {UnitSystem::us, UnitSystem::si}) {
    std::string words;
    for (const Finding& finding : plan.findings) {
      repeats_its_stop_numbers(plan, detail_of(finding, system, plan.stop_numbers) + " ", system);
      repeats_its_stop_numbers(plan, fix_of(finding, system, plan.stop_numbers) + " ", system);
    }
    for (const Step& step : procedure(plan, system)) {
      repeats_its_stop_numbers(plan, std::string(step.action.view()) + " ", system);
      if (step.id != "pipe.check") continue;
      for (const StopNumber& reading : plan.stop_numbers) {
        if (reading.kind() == Kind::pressure) continue;
        CHECK(step.action.view().find(bounds_in_words(reading, system)) != std::string_view::npos);
      }
    }
    loads_for_the_stop_number(plan, system);
  }
}

// Figures that stand in several places of a page: each phrase of a group leads up to the same one. The pit, the set-up and
// the water, in the whole text and on the sheet with its drawings.
struct Repeated {
  std::string_view what;
  std::vector<std::pair<std::string_view, std::string_view>> phrases;
};
const std::vector<Repeated>& repeated() {
  static const std::vector<Repeated> list = {
      {"depth of the pit",
       {{"  Depth .................. ", "\n"},
        {"    At ", " no protective system is required"},
        {"    At ", ", or by a sign found, the pit"},
        {"    At ", " the pit is deeper than"},
        {"    At ", " a ladder is required"},
        {"    The pit is ", " deep and bad air"},
        {"    People cross a pit ", " deep."},
        {"The pit is ", " deep and"},
        {"\"excavation.depth\">", "<"}}},
      {"bottom of the pit",
       {{" along the main, ", " across;"},
        {" deep and ", " wide at the bottom"},
        {"\"excavation.bottom.across\">", "<"}}},
      {"spoil",
       {{"from the edge; ", " high and"}, {"The spoil stands ", " high and"}, {"\"excavation.spoil.height\">", "<"}}},
      {"chain",
       {{"Chain needed ........... ", ", hook to hook"},
        {"    ", " of chain is needed"},
        {"At least ", ", hook to hook"}}},
      {"travel", {{"Bar travel needed ...... ", "\n"}, {"; this tap needs ", "."}}},
      {"left behind the meter",
       {{"; ", " with the thickest walls"}, {"left behind the meter is ", ";"}, {"\"service.residual_least\">", "<"}}},
      {"stock to swab with", {{"On the jug ............. ", " made"}, {"of the stock ", " made"}}},
      {"push on the bar",
       {{"Push on the bar ........ ", " at line"},
        {"line pushes the bar with ", ":"},
        {"The line pushes the bar with ", ";"}}},
  };
  return list;
}

void says_each_figure_once(const Plan& plan) {
  for (const UnitSystem system : {UnitSystem::us, UnitSystem::si}) {
    TextOptions options;
    options.units = system;
    const std::string pages = text_report(plan, options) + plain_numbers(sheet_html(plan, system));
    for (const Repeated& figure : repeated()) {
      std::string first;
      for (const auto& [lead, tail] : figure.phrases) {
        for (const std::string& number : between(pages, lead, tail)) {
          if (number.find_first_of("\n;") != std::string::npos) continue;
          if (first.empty()) first = number;
          INFO(figure.what << ": " << lead << number << tail);
          CHECK(number == first);
        }
      }
    }
  }
}

std::vector<std::filesystem::path> example_jobs() {
  std::vector<std::filesystem::path> paths;
  for (const auto& entry : std::filesystem::directory_iterator(std::string(MAINBORE_SOURCE_DIR) + "/examples/jobs")) {
    paths.push_back(entry.path());
  }
  REQUIRE_FALSE(paths.empty());
  return paths;
}

}  // namespace

TEST_CASE("every number that repeats a stop number is that stop number, in each example") {
  for (const auto& path : example_jobs()) {
    INFO(path);
    std::ifstream file(path);
    std::stringstream text;
    text << file.rdbuf();
    const JobFile read = read_job(text.str(), path.string(), Catalog::builtin());
    REQUIRE(read.job);
    one_number(plan_of(*read.job));
  }
}

TEST_CASE("every number that repeats a stop number is that stop number, in random jobs") {
  RandomJobs random(22);
  const int jobs = random_jobs(3000);
  for (int i = 0; i < jobs; ++i) one_number(plan_of(half_read_job(random)));
}

TEST_CASE("a figure that stands in several places of the pages is the same in each, in random jobs") {
  WholeJobs random(23);
  const int jobs = random_jobs(60);
  for (int i = 0; i < jobs; ++i) says_each_figure_once(plan_of(random.next()));
}

TEST_CASE("a sheet says one pressure") {
  // 6-inch C900 of DR 25, laid when it was rated 100 psi, through a saddle: warm, it bears less than that.
  Job job = sound_job();
  job.main.material = Material::pvc;
  job.main.size = NominalSize::inches(6);
  job.main.standard = "C900";
  job.main.class_name = "DR 25";
  job.main.installed = 1990;
  job.main.pressure = 55.0 * units::psi;
  job.main.surge = Pressure();
  job.service.method = Method::saddle;
  const Plan plan = plan_of(job);
  const StopNumber* const line = plan.stop_number(ReadingId::line_pressure);
  REQUIRE(line != nullptr);
  const std::string stop = bare_bounds(*line, UnitSystem::us);
  CHECK(plan.pressure.governed_by->limit > line->at_most->as<Pressure>());
  const std::string sheet = plain_numbers(sheet_html(plan, UnitSystem::us));
  CHECK(sheet.find("Stop over " + stop) != std::string::npos);
  CHECK(sheet.find("Pressure limit") == std::string::npos);
}
