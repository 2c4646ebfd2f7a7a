#include "io/job/job_fields.hpp"

#include <set>
#include <string>
#include <vector>

#include "support/catch.hpp"

using namespace mainbore;
using namespace mainbore::io;

namespace {

const Catalog& catalog() { return Catalog::builtin(); }

const JobField& field(std::string_view path) {
  const auto found = find_field(path);
  REQUIRE(found);
  return *found->field;
}

template <class T>
T value(std::string_view path, std::string_view text) {
  INFO(path << " = " << text);
  const auto read = read_value(field(path), text, catalog());
  if (const auto* problem = std::get_if<Problem>(&read)) FAIL(problem->message);
  return std::get<T>(std::get<FieldValue>(read));
}

// The code of the refusal, or "" when the value was taken.
std::string refusal(std::string_view path, std::string_view text) {
  const auto read = read_value(field(path), text, catalog());
  const auto* problem = std::get_if<Problem>(&read);
  return problem == nullptr ? "" : std::string(problem->code);
}

double size(std::string_view text) { return value<NominalSize>("main.size", text).number(); }

// Something that may be written in the field.
std::string sample(const JobField& f) {
  switch (f.type) {
    case FieldType::text:
    case FieldType::lines:
      return "words";
    case FieldType::quantity:
      return format_measure(f.least, UnitSystem::us);
    case FieldType::size:
      return "3 in";
    case FieldType::material:
      return "steel";
    case FieldType::choice:
      return std::string(f.choice->names.back());
    case FieldType::machine:
      return "unspecified";
    case FieldType::flag:
      return "true";
    case FieldType::whole:
      return format_measure(f.greatest, UnitSystem::us);
    case FieldType::clock:
      return "1:30";
  }
  return {};
}

}  // namespace

TEST_CASE("the table is sound: paths once, rows of an object together, each helped and stored") {
  std::set<std::string_view> paths;
  std::vector<std::string> sections;
  for (const JobField& f : job_fields()) {
    INFO(f.path);
    CHECK(paths.insert(f.path).second);
    CHECK_FALSE(f.help.empty());
    CHECK((f.type != FieldType::choice || f.choice != nullptr));
    const std::string section(f.path.substr(0, f.path.rfind('.') == std::string_view::npos ? 0 : f.path.rfind('.')));
    if (sections.empty() || sections.back() != section) sections.push_back(section);

    JobDraft draft;
    const auto read = read_value(f, sample(f), catalog());
    REQUIRE(std::holds_alternative<FieldValue>(read));
    const std::size_t index = f.path.find("[]") == std::string_view::npos ? 0 : 2;
    f.store(draft, index, std::get<FieldValue>(read));
    const Job job = std::move(draft).finish();
    CHECK(f.load(job, index, f.kind) == std::get<FieldValue>(read));
    CHECK_FALSE(allowed_text(f, catalog()).empty());
  }
  CHECK(std::set<std::string>(sections.begin(), sections.end()).size() == sections.size());
}

TEST_CASE("a fact not given is not known") {
  const Job empty;
  for (const JobField& f : job_fields()) {
    INFO(f.path);
    CHECK(f.load(empty, 0, f.kind).index() == 0);
  }
}

TEST_CASE("paths into lists carry the place") {
  const auto found = find_field("nearby[3].along");
  REQUIRE(found);
  CHECK(found->field->path == "nearby[].along");
  CHECK(found->index == 3);
  CHECK(found->field->path_at(3) == "nearby[3].along");
  for (const std::string_view wrong : {"nearby.along", "nearby[].along", "nearby[-1].along", "nearby[1000].along",
                                       "nearby[1]along", "main[0].size", "size", "main", ""}) {
    INFO(wrong);
    CHECK_FALSE(find_field(wrong));
  }
}

TEST_CASE("nominal sizes: inches as written, metric trade sizes, exact conversions, and no snapping") {
  CHECK(size("8 in") == 8);
  CHECK(size("8\"") == 8);
  CHECK(size("1-1/4 in") == 1.25);
  CHECK(size("3/4 inch") == 0.75);
  CHECK(size("7 in") == 7);
  CHECK(size("DN 200") == 8);
  CHECK(size("dn200") == 8);
  CHECK(size("200 mm") == 8);
  CHECK(size("20 cm") == 8);
  CHECK(size("203.2 mm") == 8);
  CHECK(size("31.8 mm") == 1.25);  // 31.75 written to a tenth
  CHECK(size("177.8 mm") == 7);
  CHECK(size("180 mm") == 7.09);  // nobody's size: kept as it is
  CHECK(size("205 mm") == 8.07);
  CHECK(size("22 mm") == 0.87);
  CHECK(refusal("main.size", "8") == "job.no-unit");
  CHECK(refusal("main.size", "DN 210") == "job.unknown-value");
  CHECK(refusal("main.size", "8 psi") == "job.wrong-unit");
  CHECK(refusal("main.size", "8 inchs") == "job.unknown-unit");
  CHECK(refusal("main.size", "eight in") == "job.not-a-quantity");
  CHECK(refusal("main.size", "0 in") == "job.out-of-range");
  CHECK(refusal("main.size", "-8 in") == "job.out-of-range");
  CHECK(refusal("main.size", "151 in") == "job.out-of-range");
  CHECK(refusal("main.size", "") == "job.unknown-value");
  CHECK(refusal("main.size", "DN") != "");
}

TEST_CASE("quantities carry a unit and can be") {
  CHECK(value<Measure>("main.pressure", "565 kPa").base() == Catch::Approx(81.946).epsilon(1e-4));
  CHECK(value<Measure>("nearby[0].along", "-4 ft 6 in").base() == -54);
  CHECK(value<Measure>("main.temperature", "10 degC").base() == Catch::Approx(50));
  CHECK(refusal("main.pressure", "82") == "job.no-unit");
  CHECK(refusal("main.pressure", "0 psi") == "job.out-of-range");
  CHECK(refusal("main.pressure", "-5 psi") == "job.out-of-range");
  CHECK(refusal("main.pressure", "1001 psi") == "job.out-of-range");
  CHECK(refusal("main.pressure", "nan psi") == "job.not-a-quantity");
  CHECK(refusal("main.pressure", "inf psi") == "job.not-a-quantity");
  CHECK(refusal("main.pressure", "1e999 psi") == "job.out-of-range");
  CHECK(refusal("main.pressure", "82 psi psi") == "job.not-a-quantity");
  CHECK(refusal("main.pressure", "1 psi").empty());
  CHECK(refusal("main.pressure", "1000 psi").empty());
  CHECK(refusal("main.temperature", "-41 degF") == "job.out-of-range");
  CHECK(refusal("main.installed", "1799") == "job.out-of-range");
  CHECK(refusal("main.installed", "1962.5") == "job.wrong-type");
  CHECK(refusal("main.installed", "99999999999999") == "job.out-of-range");
  CHECK(value<int>("main.installed", "1962") == 1962);
}

TEST_CASE("words in any case, with spaces, hyphens or underscores; never by nearness") {
  CHECK(value<Material>("main.material", "Ductile Iron") == Material::ductile_iron);
  CHECK(value<Material>("main.material", "D.I.P.") == Material::ductile_iron);
  CHECK(refusal("main.material", "ductile irn") == "job.unknown-value");
  CHECK(refusal("main.material", "C") == "job.unknown-value");
  CHECK(value<int>("main.carries", "Reclaimed-Water") == static_cast<int>(Carries::reclaimed_water));
  CHECK(value<int>("nearby[0].what", "REPAIR_CLAMP") == static_cast<int>(NearbyThing::repair_clamp));
  CHECK(value<int>("service.thread", "awwa taper") == static_cast<int>(ThreadStandard::awwa_taper));
  CHECK(value<int>("service.thread", "CC") == static_cast<int>(ThreadStandard::awwa_taper));
  CHECK(refusal("service.method", "none") == "job.unknown-value");
  CHECK(refusal("main.condition", "soun") == "job.unknown-value");
  CHECK(value<bool>("main.encased", "Yes"));
  CHECK_FALSE(value<bool>("main.encased", "no"));
  CHECK(refusal("main.encased", "maybe") == "job.unknown-value");
}

TEST_CASE("an ambiguous material says why it is refused") {
  const auto read = read_value(field("main.material"), "vc", catalog());
  const auto* problem = std::get_if<Problem>(&read);
  REQUIRE(problem != nullptr);
  CHECK(problem->message.find(catalog().read_material("vc").why_not) != std::string::npos);
}

TEST_CASE("a plain name of the service's tubing is asked back, with the names that would do") {
  const auto help = [](std::string_view word) {
    const auto read = read_value(field("service.line.material"), word, catalog());
    const auto* problem = std::get_if<Problem>(&read);
    return problem == nullptr ? std::string() : problem->help;
  };
  for (const std::string_view word : {"copper", "Copper Tubing"}) {
    CHECK(help(word).find("\"copper type K\" or \"copper type L\"") != std::string::npos);
  }
  for (const std::string_view word : {"poly", "plastic"}) {
    CHECK(help(word).find("polyethylene SDR 9") != std::string::npos);
    CHECK(help(word).find("PEX SDR 9") != std::string::npos);
  }
  CHECK(help("PVC").find("PVC Schedule 80") != std::string::npos);
  CHECK(value<int>("service.line.material", "type K copper") == static_cast<int>(Tubing::copper_k));
}

TEST_CASE("places on the clock") {
  CHECK(value<ClockPosition>("service.clock", "1:30").minutes == 90);
  CHECK(value<ClockPosition>("service.clock", "12:00").minutes == 0);
  CHECK(value<ClockPosition>("service.clock", "12:59").minutes == 59);
  CHECK(value<ClockPosition>("service.clock", "2").minutes == 120);
  CHECK(value<ClockPosition>("service.clock", "2 o'clock").minutes == 120);
  CHECK(value<ClockPosition>("service.clock", "10:30").minutes == 630);
  for (const std::string_view wrong : {"0:30", "13:00", "1:60", "1:3", "1:300", ":30", "noon", "-1:30", "1.30"}) {
    INFO(wrong);
    CHECK(refusal("service.clock", wrong) == "job.unknown-value");
  }
}

TEST_CASE("text keeps to one line, has no control characters and an end") {
  CHECK(value<std::string>("place", " Mill Lane ") == "Mill Lane");
  CHECK(refusal("place", "a\nb") == "job.unknown-value");
  CHECK(refusal("note", "a\nb").empty());
  CHECK(refusal("note", "a\x1b[0m") == "job.unknown-value");
  CHECK(refusal("id", std::string(301, 'x')) == "job.out-of-range");
}
