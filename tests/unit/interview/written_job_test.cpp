// A job file made of facts as they were written.
#include "io/job/job_fields.hpp"
#include "mainbore/job_file.hpp"
#include "support/catch.hpp"

using namespace mainbore;

namespace {

// Something that may be written there.
std::string sample(const io::JobField& field) {
  switch (field.type) {
    case io::FieldType::text:
      return "north side, \"old\" works";
    case io::FieldType::lines:
      return "first line\nsecond";
    case io::FieldType::quantity: {
      const Measure middle(field.least.base() + 0.25 * (field.greatest.base() - field.least.base()), field.kind);
      return format_measure(middle, UnitSystem::si);
    }
    case io::FieldType::size:
      return "DN 200";
    case io::FieldType::material:
      return "DI";
    case io::FieldType::choice:
      return std::string(field.choice->names.back());
    case io::FieldType::machine:
      return Catalog::builtin().machines().front().id;
    case io::FieldType::flag:
      return "yes";
    case io::FieldType::whole:
      return format_measure(field.greatest, UnitSystem::us);
    case io::FieldType::clock:
      return "2 o'clock";
  }
  return {};
}

void check_reads_back(const std::vector<Setting>& settings) {
  const std::string text = settings_to_json(settings, Catalog::builtin());
  INFO(text);
  const JobFile direct = job_from_settings(settings, Catalog::builtin());
  const JobFile read = read_job(text, "job.json", Catalog::builtin());
  for (const Diagnostic& d : direct.diagnostics) UNSCOPED_INFO(format_diagnostic(d));
  for (const Diagnostic& d : read.diagnostics) UNSCOPED_INFO(format_diagnostic(d));
  REQUIRE(direct.job);
  REQUIRE(read.job);
  const auto json = [](const Job& job) { return job_to_json(job, UnitSystem::us, JsonStyle::pretty); };
  CHECK(json(*read.job) == json(*direct.job));
}

}  // namespace

TEST_CASE("every fact of a job reads back from the file as it was told") {
  std::vector<Setting> own_machine;
  std::vector<Setting> listed_machine;
  for (const io::JobField& field : io::job_fields()) {
    const bool figure = field.path.starts_with("machine.") && field.path != "machine.feed" &&
                        field.path != "machine.extensions" && field.path != "machine.profile";
    if (field.path != "machine.profile") own_machine.push_back({field.path_at(0), sample(field), ""});
    if (!figure) listed_machine.push_back({field.path_at(0), sample(field), ""});
  }
  check_reads_back(own_machine);
  check_reads_back(listed_machine);
}

TEST_CASE("a quantity stays as it was written, a word becomes the one of the table") {
  const std::vector<Setting> settings = {
      {"service.size", " 3/4\" ", ""},  {"main.cover", "4 ft 6 in", ""},
      {"main.material", "DI", ""},      {"main.size", "DN 200", ""},
      {"main.pressure", "565 kPa", ""}, {"main.encased", "no", ""},
      {"main.installed", "1994", ""},   {"service.demand.fixture_units", "12.5", ""}};
  CHECK(settings_to_json(settings, Catalog::builtin()) == R"({
  "main": {
    "material": "ductile iron",
    "size": "DN 200",
    "pressure": "565 kPa",
    "installed": 1994,
    "encased": false,
    "cover": "4 ft 6 in"
  },
  "service": {
    "size": "3/4\"",
    "demand": {
      "fixture_units": "12.5"
    }
  }
}
)");
  check_reads_back(settings);
}

TEST_CASE("a list that is known and empty is written, one that is not known is not") {
  CHECK(settings_to_json({}, Catalog::builtin()) == "{}\n");
  const std::vector<Setting> nothing_near = {{"nearby", "none", ""}};
  CHECK(settings_to_json(nothing_near, Catalog::builtin()) == "{\n  \"nearby\": []\n}\n");
  const std::vector<Setting> taken_back = {{"nearby[0].what", "bell", ""}, {"nearby", "none", ""}};
  CHECK(settings_to_json(taken_back, Catalog::builtin()) == "{\n  \"nearby\": []\n}\n");
  const std::vector<Setting> two = {{"nearby[0].what", "bell", ""},
                                    {"nearby[0].along", "7 ft", ""},
                                    {"nearby[1].what", "tap", ""},
                                    {"nearby[1].along", "-5 ft", ""}};
  const std::string text = settings_to_json(two, Catalog::builtin());
  CHECK(text.find("\"along\": \"7 ft\"") < text.find("\"along\": \"-5 ft\""));
  CHECK(text.find("\"along\": \"-5 ft\"") != std::string::npos);
}
