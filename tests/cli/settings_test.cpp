// The settings file: where it is looked for, what comes first, what is said of it.
#include <nlohmann/json.hpp>

#include "cli/program_run.hpp"
#include "support/catch.hpp"

using namespace mainbore;
using namespace mainbore::test;
using Json = nlohmann::json;
namespace fs = std::filesystem;

namespace {

const std::vector<std::string> bare = {"plan",
                                       "--set",
                                       "main.material=ductile iron",
                                       "--set",
                                       "main.size=8 in",
                                       "--set",
                                       "main.pressure=82 psi",
                                       "--set",
                                       "service.size=1 in"};

constexpr const char* machine = R"("machine": {"title": "Truck 4", "smallest_tap": "3/4 in", "largest_tap": "1 in",
  "hand_limit": "90 psi", "body_rating": "250 psi", "bar_diameter": "1 in"})";
std::string with_machine(const std::string& more = {}) { return std::string("{") + machine + more + "}"; }

Json plan_of(const std::vector<std::string>& arguments, const cli::Environment& environment = {}) {
  const Ran ran = run(with(arguments, {"--format", "json"}), environment);
  INFO(ran.err);
  REQUIRE_FALSE(ran.out.empty());
  return Json::parse(ran.out);
}

// An environment whose own settings file says `text`.
cli::Environment own(const Folder& folder, const std::string& text) {
  folder.put("config/mainbore/settings.json", text);
  return {.config_home = folder / "config"};
}

}  // namespace

TEST_CASE("the user's own settings are found by XDG, else under the home directory") {
  const Folder folder;
  folder.put("home/.config/mainbore/settings.json", R"({"crew": "home"})");
  folder.put("config/mainbore/settings.json", R"({"crew": "config"})");
  const auto crew = [&](const cli::Environment& environment) {
    return plan_of(bare, environment)["job"].value("crew", "none");
  };
  const std::string home = folder / "home";
  CHECK(crew({.config_home = folder / "config", .home = home}) == "config");
  CHECK(crew({.home = home}) == "home");
  CHECK(crew({.config_home = "config", .home = home}) == "home");         // not absolute: passed over
  CHECK(crew({.config_home = folder / "none", .home = home}) == "none");  // XDG says where, and there is no file
  CHECK(crew({.home = folder / "none"}) == "none");
  CHECK(crew({.home = "home"}) == "none");
  CHECK(crew({}) == "none");
  folder.put("file", "");
  CHECK(crew({.config_home = folder / "file"}) == "none");  // a file where a folder should be: no settings in it
}

TEST_CASE("a plan lists what it took, and is as if the job had said it") {
  const Folder folder;
  const cli::Environment mine = own(folder, with_machine(R"(, "crew": "North yard", "units": "si")"));
  const Json plan = plan_of(bare, mine);
  CHECK(plan["job"]["crew"] == "North yard");
  CHECK(plan["job"]["machine"]["title"] == "Truck 4");
  CHECK(plan["pressure"]["line"]["unit"] == "kPa");
  CHECK(plan["settings"]["file"] == folder / "config/mainbore/settings.json");
  std::map<std::string, Json> taken;
  for (const Json& fact : plan["settings"]["taken"]) taken[fact["path"]] = fact["value"];
  CHECK(taken.size() == 8);
  CHECK(taken["units"] == "si");
  CHECK(taken["crew"] == "North yard");
  CHECK(taken["machine.title"] == "Truck 4");
  CHECK(taken["machine.hand_limit"] == plan["job"]["machine"]["hand_limit"]);
  CHECK(plan["settings"]["set_aside"] == Json::array());

  // The plan of a job that says the same: all the same but for the list, and where the machine's figures are stated.
  folder.put("job.json", R"({"main": {"material": "ductile iron", "size": "8 in", "pressure": "82 psi"},
    "service": {"size": "1 in"}, "crew": "North yard", )" +
                             std::string(machine) + "}");
  std::string said = plan_of({"plan", folder / "job.json", "--units", "si"}).dump();
  Json without = plan;
  without.erase("settings");
  std::string laid = without.dump();
  for (std::size_t at = 0; (at = laid.find("stated in the settings", at)) != std::string::npos;) {
    laid.replace(at, 22, "stated in the job");
  }
  for (std::size_t at = 0; (at = laid.find(R"("from":"settings")", at)) != std::string::npos;) {
    laid.replace(at, 17, R"("from":"given")");
  }
  CHECK(laid == said);
  CHECK(without.dump() != said);

  const Ran text = run(with(bare, {"--why"}), mine);
  CHECK(has(text.out, "\nFROM SETTINGS - the job and the command line come first\n"));
  CHECK(has(text.out, "  Machine ................ Truck 4; smallest tap 3/4 in;"));
  CHECK(has(text.out, "  Crew ................... North yard\n"));
  CHECK(has(text.out, "As the settings file gives it"));
  CHECK(has(text.out, "  Units .................. si\n"));
  const Ran sheet = run(with(bare, {"--format", "html"}), mine);
  CHECK(has(sheet.out, "From settings: units si; machine Truck 4; crew North yard ("));
  const Ran what_if = run(with(bare, {"--what-if", "--format", "json"}), mine);
  CHECK(Json::parse(what_if.out)["settings"] == plan["settings"]);
}

TEST_CASE("no list where there are no settings, and an empty file is one that gives nothing") {
  const Folder folder;
  CHECK_FALSE(plan_of(bare).contains("settings"));
  CHECK_FALSE(has(run(with(bare, {"--why"})).out, "FROM SETTINGS"));
  const Json plan = plan_of(bare, own(folder, "{}"));
  CHECK(plan["settings"]["taken"] == Json::array());
  CHECK(has(run(with(bare, {"--why"}), own(folder, "{}")).out, "  Taken .................. nothing\n"));
  CHECK(run(bare, own(folder, "{}")).status == run(bare).status);
}

TEST_CASE("the job and the command line come before settings") {
  const Folder folder;
  const cli::Environment mine = own(folder, with_machine(R"(, "crew": "North yard", "units": "si")"));
  const Json set =
      plan_of(with(bare, {"--units", "us", "--set", "crew=South yard", "--set", "machine.feed=hand"}), mine);
  CHECK(set["job"]["crew"] == "South yard");
  CHECK(set["job"]["machine"] == Json{{"feed", "hand"}});
  CHECK(set["pressure"]["line"]["unit"] == "psi");
  CHECK(set["settings"]["taken"] == Json::array());
  CHECK(set["settings"]["set_aside"] == Json{"units", "machine", "crew"});
  CHECK(has(run(with(bare, {"--why", "--set", "machine.feed=hand"}), mine).out,
            "  Not taken .............. machine: the job or the command line says otherwise\n"));
  // A job whose machine stands in its file.
  const Json filed = plan_of({"plan", source + "/tests/schema/jobs/valid/own_machine.json"}, mine);
  CHECK(filed["job"]["machine"]["title"] == "the district's machine");
  CHECK(filed["job"]["machine"]["chain_length"]["value"] == 1447.8);
}

TEST_CASE("an option names another settings file, or none") {
  const Folder folder;
  const cli::Environment mine = own(folder, R"({"crew": "mine"})");
  const std::string other = folder.put("other.json", R"({"crew": "other"})");
  CHECK(plan_of(with(bare, {"--settings", other}), mine)["job"]["crew"] == "other");
  CHECK_FALSE(plan_of(with(bare, {"--no-settings"}), mine)["job"].contains("crew"));
  CHECK(run(with(bare, {"--no-settings"}), mine).out == run(bare).out);
  CHECK(run(with(bare, {"--no-settings", "--settings", other}), mine).status == 64);
  const Ran missing = run(with(bare, {"--settings", folder / "none.json"}), mine);
  CHECK(missing.status == 66);
  CHECK(missing.out.empty());
  CHECK(has(missing.err, "none.json"));
  CHECK(run(with(bare, {"--settings", ""}), mine).status == 64);
  // The name of a file may hold bytes that JSON may not.
  const std::string odd = folder.put("b\xFF\x01<b>/s.json", R"({"rules": ["r.json"]})");
  folder.put("b\xFF\x01<b>/r.json", "{}");
  CHECK(plan_of(with(bare, {"--settings", odd}))["settings"]["file"] == folder / "b<FF><U+0001><b>/s.json");
  CHECK(has(run(with(bare, {"--settings", odd, "--format", "html"})).out, "b&lt;FF&gt;&lt;U+0001&gt;&lt;b&gt;/s.json"));
  CHECK_FALSE(has(run(with(bare, {"--settings", odd})).out, "\x01"));
  // From a pipe.
  CHECK(has(run(with(bare, {"--settings", "-"}), mine, R"({"crew": "piped"})").out, "piped"));
}

TEST_CASE("a broken settings file is refused, named, and there is a way on") {
  const Folder folder;
  for (const std::string text :
       {"", "{", "[]", "null", R"({"crew": 7})", R"({"machine": {"title": "half"}})", R"({"units": "metric"})",
        "{\"crew\": \"\xC3\x28\"}", R"({"crew": "a", "crew": "b"})"}) {
    const cli::Environment mine = own(folder, text);
    const Ran ran = run(bare, mine);
    INFO(text);
    CHECK(ran.status == 2);
    CHECK(ran.out.empty());
    CHECK(ran.err.starts_with(folder / "config/mainbore/settings.json"));
    CHECK(has(ran.err, "--no-settings"));
    CHECK(run(with(bare, {"--no-settings"}), mine).out == run(bare).out);
  }
  const Ran both = run(bare, own(folder, R"({"crwe": 1, "units": "metric"})"));
  CHECK(has(both.err, "did you mean \"crew\"?"));
  CHECK(has(both.err, "/units"));
  CHECK(has(both.err, "mainbore: 2 errors;"));
}

TEST_CASE("what cannot be opened is not passed over") {
  const Folder folder;
  fs::create_directories(folder / "config/mainbore/settings.json");
  const cli::Environment mine{.config_home = folder / "config"};
  const Ran ran = run(bare, mine);
  CHECK(ran.status == 66);
  CHECK(ran.out.empty());
  CHECK(has(ran.err, "it is a directory"));
  CHECK(has(ran.err, "--no-settings"));
  CHECK(run(with(bare, {"--no-settings"}), mine).status == 3);
  fs::remove(folder / "config/mainbore/settings.json");
  fs::create_symlink(folder / "gone.json", folder / "config/mainbore/settings.json");
  CHECK(run(bare, mine).status == 66);
}

TEST_CASE("rules of settings are seen from their folder and lie under those of the command line") {
  const Folder folder;
  folder.put("config/mainbore/own/first.json", R"({"name": "first", "pressure": {"stop_rating": "60 psi"}})");
  folder.put("config/mainbore/second.json", R"({"name": "second", "pressure": {"stop_rating": "70 psi"}})");
  const std::string last = folder.put("last.json", R"({"name": "last", "pressure": {"stop_rating": "75 psi"}})");
  const auto stop_limit = [](const Json& plan) {
    for (const Json& limit : plan["pressure"]["limits"]) {
      if (limit["link"] == "corporation stop") return limit["limit"]["value"].get<double>();
    }
    return 0.0;
  };
  const cli::Environment both = own(folder, R"({"rules": ["own/first.json", "second.json"]})");
  const Json plan = plan_of(bare, both);
  CHECK(stop_limit(plan) == 70);
  CHECK(plan["settings"]["taken"] == Json::parse(R"([{"path": "rules", "value": "own/first.json"},
                                                     {"path": "rules", "value": "second.json"}])"));
  CHECK(stop_limit(plan_of(with(bare, {"--rules", last}), both)) == 75);
  CHECK(stop_limit(plan_of(bare, own(folder, "{\"rules\": [\"" + last + "\"]}"))) == 75);  // an absolute path

  const Ran missing = run(bare, own(folder, R"({"rules": ["none.json"]})"));
  CHECK(missing.status == 66);
  CHECK(has(missing.err, "none.json"));
  CHECK(has(missing.err, "settings.json"));
  CHECK(has(missing.err, "--no-settings"));
  folder.put("config/mainbore/second.json", R"({"pressure": {"stop_ratin": "70 psi"}})");
  const Ran broken = run(bare, own(folder, R"({"rules": ["own/first.json", "second.json"]})"));
  CHECK(broken.status == 2);
  CHECK(broken.out.empty());
  CHECK(broken.err.starts_with(folder / "config/mainbore/second.json"));
  CHECK(has(broken.err, "--no-settings"));
}

TEST_CASE("a batch depends on its arguments alone") {
  const Folder folder;
  const std::string orders = source + "/examples/orders/week.csv";
  const cli::Environment mine = own(folder, with_machine(R"(, "crew": "North yard", "units": "si")"));
  for (const std::vector<std::string>& how : {std::vector<std::string>{"--format", "text"},
                                              {"--format", "html"},
                                              {"--format", "csv"},
                                              {"--format", "ndjson"},
                                              {"--format", "ndjson", "--full"}}) {
    const std::vector<std::string> arguments = with({"batch", orders}, how);
    CHECK(run(arguments, mine).out == run(arguments).out);
    CHECK(run(arguments, own(folder, "{")).out == run(arguments).out);
  }
  own(folder, with_machine(R"(, "crew": "North yard", "units": "si")"));
  CHECK(run({"batch", orders, "--no-settings"}).status == 64);

  const std::string file = folder / "config/mainbore/settings.json";
  const std::vector<std::string> full = {"batch", "-", "--format", "ndjson", "--full", "--settings", file};
  const std::string line = R"({"main": {"material": "PVC", "size": "6 in", "pressure": "60 psi"},
    "service": {"size": "1 in"}, "crew": "South yard"})";
  std::string one_line = line;
  std::replace(one_line.begin(), one_line.end(), '\n', ' ');
  const Ran ran = run(full, {}, one_line + "\n" + one_line + "\n");
  INFO(ran.out + ran.err);
  std::istringstream lines(ran.out);
  for (std::string record; std::getline(lines, record);) {
    const Json plan = Json::parse(record).value("plan", Json::parse(record));
    CHECK(plan["settings"]["file"] == file);
    CHECK(plan["job"]["machine"]["title"] == "Truck 4");
    CHECK(plan["settings"]["set_aside"] == Json{"crew"});
    CHECK(plan["pressure"]["line"]["unit"] == "kPa");
  }
  // The same on one core and on several.
  const std::vector<std::string> rows = {"batch", orders, "--format", "ndjson", "--full", "--settings", file};
  CHECK(run(rows).out == run(with(rows, {"--jobs", "3"})).out);
  // A broken file is refused, with what to do about it here.
  const Ran broken = run({"batch", orders, "--settings", folder.put("broken.json", "{")});
  CHECK(broken.status == 2);
  CHECK(broken.out.empty());
  CHECK(has(broken.err, "leave out --settings"));
}

TEST_CASE("the smaller tools take rules, units and, for the table, the machine") {
  const Folder folder;
  folder.put("config/mainbore/r.json", R"({"name": "Ashby Vale", "pressure": {"stop_rating": "60 psi"}})");
  const cli::Environment mine = own(folder, with_machine(R"(, "units": "si", "rules": ["r.json"], "crew": "x")"));
  const std::vector<std::vector<std::string>> tools = {
      {"table", "--material", "PVC"},
      {"identify", "--od", "6.9 in"},
      {"trial", "--threads", "14", "--trial", "depth=1.5 in, wrench=2, showing=3"}};
  for (const std::vector<std::string>& tool : tools) {
    const Ran ran = run(with(tool, {"--format", "json"}), mine);
    INFO(tool.front() << ran.err);
    const Json answer = Json::parse(ran.out);
    CHECK(answer["settings"]["taken"][0] == Json::parse(R"({"path": "units", "value": "si"})"));
    CHECK(answer["settings"]["taken"][1] == Json::parse(R"({"path": "rules", "value": "r.json"})"));
    CHECK(answer["settings"]["taken"].size() == (tool.front() == "table" ? 8 : 2));
    CHECK(has(run(tool, mine).out, "rom settings"));
    CHECK(has(run(tool, mine).out, " mm"));
    CHECK_FALSE(has(run(tool).out, "rom settings"));
    CHECK(run(with(tool, {"--no-settings"}), mine).out == run(tool).out);
    CHECK(run(tool, own(folder, "{")).status == 2);
    (void)own(folder, with_machine(R"(, "units": "si", "rules": ["r.json"], "crew": "x")"));
  }
  CHECK(has(run(tools[0], mine).out, "machine: Truck 4"));
  CHECK(has(run(with(tools[0], {"--format", "html"}), mine).out, "machine Truck 4"));
  const std::string own_machine = source + "/tests/schema/jobs/valid/own_machine.json";
  const Ran named = run(with(tools[0], {"--machine", own_machine, "--format", "json"}), mine);
  CHECK(Json::parse(named.out)["machine"] == "the district's machine");
  CHECK(Json::parse(named.out)["settings"]["set_aside"] == Json{"machine"});
}
