#include <algorithm>
#include <fstream>
#include <nlohmann/json.hpp>
#include <random>
#include <sstream>

#include "io/text/json_writer.hpp"
#include "mainbore/plan_file.hpp"
#include "mainbore/rules_file.hpp"
#include "support/catch.hpp"
#include "support/plan_under.hpp"

using namespace mainbore;
using nlohmann::json;

namespace {

const Rules& rules() {
  static const RulesFile read = load_rules(Catalog::builtin());
  REQUIRE(read.rules);
  return *read.rules;
}

Plan plan_of(const std::string& example) {
  std::ifstream file(std::string(MAINBORE_SOURCE_DIR) + "/examples/jobs/" + example + ".json");
  std::stringstream text;
  text << file.rdbuf();
  JobFile read = read_job(text.str(), example, Catalog::builtin());
  REQUIRE(read.job);
  return test::plan_under(*std::move(read.job), rules());
}

json written(const std::string& example, UnitSystem system = UnitSystem::us) {
  return json::parse(plan_to_json(plan_of(example), system, JsonStyle::pretty));
}

// Calls `visit` with every value of the document.
template <class Visit>
void walk(const json& value, const Visit& visit) {
  visit(value);
  if (value.is_structured()) {
    for (const json& child : value) walk(child, visit);
  }
}

const std::vector<std::string> examples = {"ductile_iron_direct", "ductile_iron_large", "old_cast_iron",
                                           "pvc_direct",          "pvc_saddle",         "asbestos_cement",
                                           "reclaimed_water",     "high_pressure"};

}  // namespace

TEST_CASE("the writer escapes what JSON asks for, and nothing breaks out of a text") {
  std::string out;
  io::JsonWriter writer(out, JsonStyle::compact);
  const std::string nasty = "a\"b\\c\nd\te\x01\x7F\xC3\xA9</script>";
  writer.begin_object();
  writer.text("k", nasty);
  writer.begin_array("list");
  writer.number({}, 0.5, 3);
  writer.flag({}, true);
  writer.whole({}, -7);
  writer.end_array();
  writer.begin_object("empty");
  writer.end_object();
  writer.begin_object_named("anybody's \"name\"");
  writer.end_object();
  writer.begin_object_named(nasty);
  writer.end_object();
  const io::JsonWriter::Mark before = writer.mark();
  writer.begin_object("taken_back");
  CHECK(writer.nothing_yet());
  writer.back_to(before);
  writer.quantity("q", Measure(82 * units::psi), UnitSystem::us);
  writer.size("s", NominalSize::inches(0.75));
  writer.end_object();
  const json read = json::parse(out);
  CHECK(read["k"] == nasty);
  CHECK(read.contains(nasty));
  CHECK_FALSE(read.contains("taken_back"));
  CHECK(read["list"] == json::parse("[0.5, true, -7]"));
  CHECK(read["q"] == json::parse(R"({"value": 82, "unit": "psi"})"));
  CHECK(read["s"]["value"] == 0.75);
  CHECK(out.find('\n') == std::string::npos);
}

TEST_CASE("any text is written so that another reader reads the same") {
  const std::vector<std::string> pieces = {
      "a", "word ", "\"", "\\", "\n", "\x01", "\x1F", " ", "!", "\x7F", "\xC3\xA9", "\xF0\x9F\x98\x80", "/"};
  std::mt19937_64 random(40);
  for (int round = 0; round < 3000; ++round) {
    std::string text;
    for (std::uint64_t n = random() % 20; n > 0; --n) text += pieces[random() % pieces.size()];
    std::string out;
    io::JsonWriter(out, JsonStyle::compact).text({}, text);
    INFO(out);
    REQUIRE(json::parse(out) == text);
    REQUIRE(std::none_of(out.begin(), out.end(), [](char c) { return (c >= 0 && c < 0x20) || c == 0x7F; }));
  }
}

TEST_CASE("whatever the length of a text, what stands round it is whole") {
  for (const JsonStyle style : {JsonStyle::compact, JsonStyle::pretty}) {
    for (std::size_t size = 0; size<9000; size += size % 4096> 3800 ? 1 : 61) {
      const std::string plain(size, 'x');
      const std::string odd = plain + '"' + plain;
      std::string out = "before ";
      io::JsonWriter writer(out, style);
      writer.begin_object();
      writer.text("plain", plain);
      writer.word("name", "a name of ours");
      writer.quantity("q", Measure(82 * units::psi), UnitSystem::us);
      writer.text("odd", odd);
      const io::JsonWriter::Mark before = writer.mark();
      writer.begin_object("taken_back");
      writer.text("plain", plain);
      writer.back_to(before);
      writer.begin_object_named(plain);
      writer.end_object();
      writer.flag("last", true);
      writer.end_object();
      INFO(size);
      REQUIRE(out.starts_with("before {"));
      const json read = json::parse(out.substr(7));
      const json expected = {{"plain", plain}, {"name", "a name of ours"}, {"q", {{"value", 82}, {"unit", "psi"}}},
                             {"odd", odd},     {plain, json::object()},    {"last", true}};
      REQUIRE(read == expected);
    }
  }
}

TEST_CASE("scripts find their paths in every plan") {
  for (const std::string& name : examples) {
    INFO(name);
    const json plan = written(name);
    CHECK(plan["format"] == plan_format);
    for (const char* path :
         {"/job/main/material", "/verdict", "/summary", "/main/material", "/main/size/value", "/main/assumed",
          "/method/kind", "/method/rejected", "/pressure/line/unit", "/pressure/limits", "/setup", "/location/clock",
          "/readings", "/holds", "/findings", "/materials", "/procedure", "/cautions", "/sources"}) {
      INFO(path);
      CHECK(plan.contains(json::json_pointer(path)));
    }
    CHECK_FALSE(plan["cautions"].empty());
    for (const json& finding : plan["findings"]) {
      INFO(finding.dump());
      CHECK(finding_named(finding["code"].get<std::string>()));
      CHECK(finding.contains("title"));
      CHECK(finding.contains("detail"));
      CHECK(finding.contains("fix"));
      for (const json& source : finding["sources"]) CHECK(plan["sources"].contains(source.get<std::string>()));
    }
    std::size_t holds = 0;
    for (const json& finding : plan["findings"]) holds += finding["severity"] == "hold";
    CHECK(plan["holds"].size() == holds);
    CHECK((plan["verdict"] != "hold" || holds > 0));
    CHECK((plan["verdict"] != "go" || holds == 0));
  }
}

TEST_CASE("a plan has no nulls, and a quantity is a number with its unit") {
  for (const std::string& name : examples) {
    for (const UnitSystem system : {UnitSystem::us, UnitSystem::si}) {
      INFO(name);
      walk(written(name, system), [](const json& value) {
        CHECK_FALSE(value.is_null());
        if (!value.is_object() || !value.contains("unit")) return;
        CHECK(value.size() == 2);
        CHECK(value["value"].is_number());
        CHECK_FALSE(value["unit"].get<std::string>().empty());
      });
    }
  }
}

TEST_CASE("the numbers of the file are the numbers of the plan") {
  const Plan plan = plan_of("ductile_iron_direct");
  const json us = json::parse(plan_to_json(plan, UnitSystem::us, JsonStyle::compact));
  const json si = json::parse(plan_to_json(plan, UnitSystem::si, JsonStyle::compact));
  REQUIRE(plan.pressure.governed_by);
  CHECK(us["pressure"]["limit"]["value"] == Catch::Approx(plan.pressure.governed_by->limit / units::psi));
  CHECK(us["pressure"]["margin"]["value"] ==
        Catch::Approx((plan.pressure.governed_by->limit - plan.pressure.line) / units::psi));
  CHECK(si["pressure"]["line"]["value"] == Catch::Approx(plan.pressure.line / units::kpa).margin(0.5));
  CHECK(si["pressure"]["line"]["unit"] == "kPa");
  CHECK(si["main"]["size"] == us["main"]["size"]);  // a name, in either system
  REQUIRE(plan.main.wall_least);
  CHECK(us["main"]["wall_min"]["value"] == Catch::Approx(*plan.main.wall_least / units::inch).margin(0.0005));
  CHECK(si["main"]["wall_min"]["value"] == Catch::Approx(*plan.main.wall_least / units::mm).margin(0.05));
}

TEST_CASE("the job in a plan is a job file") {
  const json plan = written("pvc_saddle");
  const JobFile again = read_job(plan["job"].dump(), "job", Catalog::builtin());
  REQUIRE(again.job);
  CHECK(again.job->main.curved == true);
  CHECK(again.job->nearby->size() == 2);
}

TEST_CASE("the same plan gives the same bytes, on one line where asked") {
  const Plan plan = plan_of("old_cast_iron");
  const std::string line = plan_to_json(plan, UnitSystem::us, JsonStyle::compact);
  CHECK(line == plan_to_json(plan, UnitSystem::us, JsonStyle::compact));
  CHECK(line.find('\n') == std::string::npos);
  const std::string page = plan_to_json(plan, UnitSystem::us, JsonStyle::pretty);
  CHECK(page.back() == '\n');
  CHECK(json::parse(page) == json::parse(line));
  std::string both = "x";
  append_plan_json(both, plan, UnitSystem::us, JsonStyle::compact);
  CHECK(both == "x" + line);
}
