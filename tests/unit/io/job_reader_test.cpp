#include <algorithm>
#include <fstream>
#include <nlohmann/json.hpp>
#include <random>
#include <sstream>

#include "io/job/job_fields.hpp"
#include "mainbore/job_file.hpp"
#include "support/catch.hpp"

using namespace mainbore;

namespace {

constexpr std::string_view least =
    R"({"main": {"material": "PVC", "size": "6 in", "pressure": "60 psi"}, "service": {"size": "1 in"}})";

JobFile read(std::string_view text, std::span<const Setting> settings = {}) {
  return read_job(text, "job.json", Catalog::builtin(), settings);
}

Job good(std::string_view text, std::span<const Setting> settings = {}) {
  JobFile file = read(text, settings);
  for (const Diagnostic& d : file.diagnostics) UNSCOPED_INFO(format_diagnostic(d));
  REQUIRE(file.job);
  return *std::move(file.job);
}

// "code pointer" of every diagnostic, in order.
std::vector<std::string> faults(std::string_view text, std::span<const Setting> settings = {}) {
  const JobFile file = read(text, settings);
  CHECK(file.job.has_value() == file.diagnostics.empty());
  std::vector<std::string> all;
  for (const Diagnostic& d : file.diagnostics)
    all.push_back(std::string(d.code) + ' ' + (d.line > 0 ? d.pointer : d.file));
  return all;
}

// The least job with further members in its main.
std::string with_main(std::string_view members) {
  return R"({"main": {"material": "PVC", "size": "6 in", "pressure": "60 psi", )" + std::string(members) +
         R"(}, "service": {"size": "1 in"}})";
}

using List = std::vector<std::string>;

}  // namespace

TEST_CASE("four facts make a job; the rest is not known") {
  const Job job = good(least);
  CHECK(job.main.material == Material::pvc);
  CHECK(job.main.size == NominalSize::inches(6));
  CHECK(job.main.pressure == 60 * units::psi);
  CHECK(job.service.size == NominalSize::inches(1));
  CHECK_FALSE(job.main.encased);
  CHECK_FALSE(job.nearby);
  CHECK_FALSE(job.machine.given);
}

TEST_CASE("each of the four is asked for, at the innermost object there is") {
  const JobFile file = read("{\n  \"main\": {\"size\": \"6 in\"}\n}");
  REQUIRE(file.diagnostics.size() == 3);
  CHECK(file.diagnostics[0].pointer == "/service/size");
  CHECK(file.diagnostics[0].line == 1);
  CHECK(file.diagnostics[1].pointer == "/main/material");
  CHECK(file.diagnostics[1].line == 2);
  CHECK(file.diagnostics[1].column == 3);
  CHECK(file.diagnostics[2].pointer == "/main/pressure");
  for (const Diagnostic& d : file.diagnostics) CHECK(d.code == "job.missing");
  CHECK(faults("{}").size() == 4);
}

TEST_CASE("byte-order mark and Windows line ends are accepted") {
  CHECK(read("\xEF\xBB\xBF" + std::string(least) + "\r\n").job);
  const JobFile file = read("\xEF\xBB\xBF{\r\n\"main\": 5\r\n}");
  CHECK(std::any_of(file.diagnostics.begin(), file.diagnostics.end(),
                    [](const Diagnostic& d) { return d.line == 2 && d.column == 9 && d.code == "job.wrong-type"; }));
}

TEST_CASE("what is no text is refused cleanly") {
  CHECK(faults(std::string_view("\xFF\xFE{\0}\0", 6)) == List{"json.encoding "});
  CHECK(faults(std::string(least) + '\0') == List{"json.encoding "});
  CHECK(faults("{\"id\": \"\xE9\"}") == List{"json.encoding "});
  CHECK(faults(std::string(longest_job + 1, ' ')) == List{"json.too-large "});
  CHECK(faults("") == List{"json.syntax "});
  CHECK(faults("[]") == List{"job.wrong-type "});
  CHECK(faults("\"x\"") == List{"job.wrong-type "});
}

TEST_CASE("every fault of a job is reported at once, in the order of the text") {
  CHECK(faults(R"({
    "main": {"material": "ductile irn", "size": 8, "pressure": "0 psi", "clas": "PC 350", "encased": "yes",
             "od": null, "installed": "1962", "size": "6 in", "wall": {"value": 3}, "curved": 1},
    "service": {"size": "1 psi", "clock": 2},
    "nearby": [{"what": "bel"}, 5],
    "wall": 3})") == List{"job.unknown-value /main/material", "job.no-unit /main/size",
                          "job.out-of-range /main/pressure", "job.unknown-key /main/clas",
                          "job.wrong-type /main/encased", "job.wrong-type /main/od", "job.wrong-type /main/installed",
                          "job.duplicate-key /main/size", "job.no-unit /main/wall", "job.wrong-type /main/curved",
                          "job.wrong-unit /service/size", "job.wrong-type /service/clock",
                          "job.missing /nearby/0/along", "job.unknown-value /nearby/0/what", "job.wrong-type /nearby/1",
                          "job.unknown-key /wall"});
}

TEST_CASE("nearest right things are offered, never taken") {
  const auto helps = [](std::string_view text, std::string_view with) {
    return read(text).diagnostics.at(0).help.find(with) != std::string::npos;
  };
  CHECK(helps(with_main(R"("clas": "x")"), "did you mean \"class\"?"));
  CHECK(helps(with_main(R"("stop_rating": "x")"), "did you mean service.stop_rating?"));
  CHECK(helps(with_main(R"("carries": "watr")"), "did you mean \"water\"?"));
  CHECK(helps(with_main(R"("wall": 0.3)"), "write \"0.3 in\""));
  CHECK(helps(with_main(R"("od": null)"), "leave the key out"));
  CHECK(helps(R"({"main": {"material": "PVC", "size": "6 in", "pressure": "0 psi"}, "service": {"size": "1 in"}})",
              "main.pressurized = false"));
}

TEST_CASE("a path is no key") {
  CHECK(faults(R"({"main.size": "6 in", "main": {"material": "PVC", "size": "6 in", "pressure": "60 psi"},
                   "service": {"size": "1 in"}})") == List{"job.unknown-key /main.size"});
  CHECK(faults(with_main(R"("": 1)")) == List{"job.unknown-key /main/"});
}

TEST_CASE("a fact is read by its older name too, and never by both") {
  CHECK(good(with_main(R"("pressurized": false)")).main.pressurized == false);
  CHECK(good(with_main(R"("pressurised": false)")).main.pressurized == false);
  for (const std::string_view both :
       {R"("pressurised": false, "pressurized": true)", R"("pressurized": true, "pressurised": false)",
        R"("pressurised": true, "pressurized": true)"}) {
    CHECK(faults(with_main(both)).size() == 1);
  }
  CHECK(faults(with_main(R"("pressurised": false, "pressurized": true)")) ==
        List{"job.duplicate-key /main/pressurized"});
  for (const std::string_view path : {"main.pressurised", "main.pressurized"}) {
    const auto found = io::find_field(path);
    REQUIRE(found);
    CHECK(found->field->path == "main.pressurized");
  }
}

TEST_CASE("a quantity may be an object") {
  const Job job = good(with_main(R"("wall": {"unit": "mm", "value": 7.62}, "cover": {"value": -0, "unit": "m"})"));
  CHECK(*job.main.wall / units::inch == Catch::Approx(0.3));
  CHECK(*job.main.cover / units::foot == 0.0);
  CHECK(faults(with_main(R"("wall": {"value": "0.3", "unit": "in"})")) == List{"job.wrong-type /main/wall/value"});
  CHECK(faults(with_main(R"("wall": {"value": 0.3, "unit": 5})")) == List{"job.wrong-type /main/wall/unit"});
  CHECK(faults(with_main(R"("wall": {"value": 0.3, "units": "in"})")) == List{"job.unknown-key /main/wall/units"});
  CHECK(faults(with_main(R"("wall": {"unit": "in"})")) == List{"job.not-a-quantity /main/wall"});
  CHECK(faults(with_main(R"("wall": {"value": 0.3})")) == List{"job.no-unit /main/wall"});
  CHECK(faults(with_main(R"("wall": {})")) == List{"job.not-a-quantity /main/wall"});
}

TEST_CASE("nothing nearby is not the same as nobody looked") {
  CHECK_FALSE(good(least).nearby);
  const std::string text = R"({"nearby": [], )" + std::string(least.substr(1));
  REQUIRE(good(text).nearby);
  CHECK(good(text).nearby->empty());
}

TEST_CASE("a machine given by its own figures needs the ones checks rest on") {
  const auto with_machine = [](std::string_view machine) {
    return R"({"machine": )" + std::string(machine) + ", " + std::string(least.substr(1));
  };
  CHECK(good(with_machine(R"({"feed": "hand", "profile": "unspecified"})")).machine.profile == "unspecified");
  CHECK(faults(with_machine(R"({"bar_diameter": "1.25 in", "extensions": 2})")) ==
        List{"job.missing /machine/title", "job.missing /machine/smallest_tap", "job.missing /machine/largest_tap",
             "job.missing /machine/hand_limit", "job.missing /machine/body_rating"});
  const std::string whole = R"("title": "ours", "smallest_tap": "1/2 in", "largest_tap": "1 in", "hand_limit": "90 psi",
      "body_rating": "150 psi", "bar_diameter": "1.25 in")";
  const Job job = good(with_machine("{" + whole + "}"));
  REQUIRE(job.machine.given);
  CHECK(job.machine.given->maker_figures);
  CHECK(job.machine.given->title == "ours");
  CHECK(faults(with_machine("{" + whole + R"(, "profile": "unspecified"})")) ==
        List{"job.contradiction /machine/profile"});
  CHECK(faults(with_machine("{" + whole + R"(, "saddle_od_from": "9 in", "saddle_od_to": "4 in"})")) ==
        List{"job.contradiction /machine/saddle_od_from"});
}

TEST_CASE("settings stand in place of the file's values, right or wrong") {
  const std::vector<Setting> fix = {
      {"main.size", "8 in", ""}, {"nearby[0].what", "joint", ""}, {"nearby[0].along", "4 ft", ""}};
  const Job job =
      good(R"({"main": {"material": "PVC", "size": 6, "pressure": "60 psi"}, "service": {"size": "1 in"}})", fix);
  CHECK(job.main.size == NominalSize::inches(8));
  REQUIRE(job.nearby);
  CHECK(job.nearby->at(0).along == 4 * units::foot);

  const std::vector<Setting> twice = {{"main.size", "8 in", ""}, {"main.size", "10 in", ""}};
  CHECK(good(least, twice).main.size == NominalSize::inches(10));
  const std::vector<Setting> none = {{"nearby", "none", ""}};
  CHECK(good(R"({"nearby": [{"what": "joint", "along": "1 ft"}], )" + std::string(least.substr(1)), none)
            .nearby->empty());

  const std::vector<Setting> wrong = {
      {"main.size", "8", ""}, {"main.sise", "8 in", ""}, {"main.size", "9 psi", "cell C2"}};
  CHECK(faults(least, wrong) ==
        List{"job.no-unit --set main.size", "job.unknown-key --set main.sise", "job.wrong-unit cell C2"});
  const JobFile file = read(least, wrong);
  CHECK(format_diagnostic(file.diagnostics[0])
            .starts_with("--set main.size: error[job.no-unit]: \"8\" has no unit\n"
                         "  |  main.size=8\n"
                         "  |            ^\n"));
}

TEST_CASE("settings alone make a job") {
  const std::vector<Setting> all = {{"main.material", "cast iron", ""},
                                    {"main.size", "DN 150", ""},
                                    {"main.pressure", "4 bar", ""},
                                    {"service.size", "3/4\"", ""},
                                    {"main.encased", "no", ""}};
  const JobFile file = job_from_settings(all, Catalog::builtin());
  REQUIRE(file.job);
  CHECK(file.job->main.size == NominalSize::inches(6));
  CHECK(file.job->main.encased == false);
  const JobFile three = job_from_settings(std::span(all).first(3), Catalog::builtin());
  REQUIRE(three.diagnostics.size() == 1);
  CHECK(three.diagnostics[0].pointer == "/service/size");
}

TEST_CASE("a job in the middle of a file is named by its lines and its id") {
  const JobFile file = read_job(R"({"id": "AV-7", "main": 3})", "orders.ndjson", Catalog::builtin(), {}, 17);
  CHECK(file.id == "AV-7");
  CHECK(file.diagnostics.at(0).line == 17);
}

TEST_CASE("the list of faults has an end") {
  std::string text = "{";
  for (int i = 0; i < 5000; ++i) text += "\"k" + std::to_string(i) + "\": 1, ";
  CHECK(read(text + "\"id\": \"x\"}").diagnostics.size() == most_diagnostics);
}

TEST_CASE("as many faults as a job has room for are read") {
  std::string unknown;
  std::string twice;
  for (int i = 0; i < 60000; ++i) {
    unknown += "\"k" + std::to_string(i) + "\": 1, ";
    twice += "\"note\": 1, ";
  }
  for (const std::string& text : {"{" + unknown + "\"id\": \"x\"}", "{" + twice + "\"id\": \"x\"}",
                                  "{\"main\": {" + unknown + "\"size\": \"8 in\"}}"}) {
    REQUIRE(text.size() <= longest_job);
    CHECK(read(text).diagnostics.size() == most_diagnostics);
  }
}

TEST_CASE("no damage to a job makes the reader fail, and no fault passes") {
  std::mt19937_64 random(77);
  const std::string whole =
      R"({"id":"a","main":{"material":"PVC","size":"6 in","pressure":{"value":60,"unit":"psi"},"wall":"0.3 in",
    "temperature":"50 degF","installed":1990,"encased":true},"nearby":[{"what":"tap","along":"-3 ft","clock":"1:30","size":"1 in"}],
    "service":{"size":"DN 25"},"machine":{"feed":"hand"}})";
  std::size_t read_whole = 0;
  for (int round = 0; round < 20000; ++round) {
    std::string text = whole;
    for (std::uint64_t edits = 1 + random() % 3; edits > 0; --edits) {
      const std::size_t at = random() % text.size();
      if (random() % 2 == 0) {
        text[at] = static_cast<char>(random() % 256);
      } else {
        text.erase(at, 1 + random() % 4);
      }
    }
    const JobFile file = read(text);
    REQUIRE(file.job.has_value() == file.diagnostics.empty());
    for (const Diagnostic& d : file.diagnostics) REQUIRE_FALSE(format_diagnostic(d).empty());
    if (!file.job) continue;
    ++read_whole;
    REQUIRE(nlohmann::json::accept(text));
    REQUIRE(file.job->main.pressure->base() >= 1);
  }
  CHECK(read_whole > 100);
}

TEST_CASE("a written job reads back as the same job, in either system of units") {
  const std::string folder = std::string(MAINBORE_SOURCE_DIR) + "/examples/jobs/";
  for (const std::string name : {"ductile_iron_direct", "ductile_iron_large", "old_cast_iron", "pvc_direct",
                                 "pvc_saddle", "asbestos_cement", "reclaimed_water", "high_pressure"}) {
    INFO(name);
    std::ifstream file(folder + name + ".json");
    std::stringstream text;
    text << file.rdbuf();
    const Job job = good(text.str());
    const std::string once = job_to_json(job, UnitSystem::us, JsonStyle::pretty);
    CHECK(job_to_json(good(once), UnitSystem::us, JsonStyle::pretty) == once);
    const std::string metric = job_to_json(job, UnitSystem::si, JsonStyle::compact);
    CHECK(metric.find('\n') == std::string::npos);
    CHECK(job_to_json(good(metric), UnitSystem::us, JsonStyle::pretty) == once);
  }
}

TEST_CASE("a day that no calendar has is refused; words are not read as one") {
  const auto with_date = [](std::string_view date) {
    return R"({"date": ")" + std::string(date) +
           R"(", "main": {"material": "PVC", "size": "6 in", "pressure": "60 psi"}, "service": {"size": "1 in"}})";
  };
  CHECK(faults(with_date("2026-02-31")) == List{"job.out-of-range /date"});
  CHECK(faults(with_date("2026-13-01 07:00")) == List{"job.out-of-range /date"});
  CHECK(faults(with_date("2026-02-29")) == List{"job.out-of-range /date"});
  CHECK(good(with_date("2028-02-29")).date == "2028-02-29");
  CHECK(good(with_date("Monday week")).date == "Monday week");
}

TEST_CASE("a word for not known is no class and no standard") {
  for (const std::string_view word : {"unknown", "N/A", "?", "", " ", "Unk"}) {
    INFO(word);
    const std::string value = '"' + std::string(word) + '"';
    const Job job = good(with_main("\"class\": " + value + ", \"standard\": " + value));
    CHECK(job.main.class_name.empty());
    CHECK(job.main.standard.empty());
  }
  CHECK(good(with_main(R"("class": "DR 18")")).main.class_name == "DR 18");
}

TEST_CASE("a title that has to be there is not empty") {
  const auto machine = [](std::string_view title) {
    return R"({"main": {"material": "PVC", "size": "6 in", "pressure": "60 psi"}, "service": {"size": "1 in"},
      "machine": {"title": ")" +
           std::string(title) + R"(", "smallest_tap": "1/2 in", "largest_tap": "1 in",
      "hand_limit": "90 psi", "body_rating": "100 psi", "bar_diameter": "1 in"}})";
  };
  CHECK(faults(machine(" ")) == List{"job.unknown-value /machine/title"});
  CHECK(faults(machine("ours")).empty());
}

TEST_CASE("a value of the command line that is not UTF-8 is refused") {
  const std::vector<Setting> settings = {{"place", "Ropewalk \xE9", ""}};
  CHECK(faults(least, settings) == List{"json.encoding --set place"});
}
