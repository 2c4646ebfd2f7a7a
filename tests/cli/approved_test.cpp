// The approved list and what is aboard, through the program.
#include <nlohmann/json.hpp>
#include <string>
#include <vector>

#include "cli/program_run.hpp"
#include "support/catch.hpp"
#include "support/one_line.hpp"

using namespace mainbore;
using namespace mainbore::test;
using Json = nlohmann::json;

namespace {

const std::vector<std::string> saddle = {"plan",
                                         "--set",
                                         "main.material=ductile iron",
                                         "--set",
                                         "main.size=8 in",
                                         "--set",
                                         "main.class=PC 350",
                                         "--set",
                                         "main.pressure=82 psi",
                                         "--set",
                                         "service.size=1 in",
                                         "--set",
                                         "service.method=saddle",
                                         "--no-settings"};

constexpr const char* list =
    "kind,main,od_from,od_to,size,thread,torque,stock\n"
    "saddle,ductile iron,8.54 in,9.40 in,1 in,,50 ft-lbf,41-117\n"
    "stop,,,,1 in,AWWA taper,,12-004\n";

}  // namespace

TEST_CASE("card, load list and JSON name the approved items") {
  const std::string example = source + "/examples/approved/ashby_vale.csv";
  const Ran card = run(with(saddle, {"--approved", example, "--materials"}), {});
  INFO(card.err);
  CHECK(has(on_one_line(card.out), "8.54 in to 9.4 in, 2 straps, wide bronze band, stock 41-117, nuts 50 ft-lbf"));
  CHECK(has(on_one_line(card.out), "1 in AWWA taper, full bore, stock 12-004"));
  const Json plan = Json::parse(run(with(saddle, {"--approved", example, "--format", "json"}), {}).out);
  CHECK(plan["approved"]["fittings"][0]["stock"] == "41-117");
  bool loaded = false;
  for (const Json& item : plan["materials"]) loaded |= item.value("stock", "") == "41-117";
  CHECK(loaded);
  // JSON and table say the same.
  const Json other = Json::parse(
      run(with(saddle, {"--approved", source + "/examples/approved/ashby_vale.json", "--format", "json"}), {}).out);
  CHECK(other["approved"]["fittings"] == plan["approved"]["fittings"]);
  CHECK(other["approved"]["edition"] == "2026-03");
}

TEST_CASE("an approved list with faults stops the run with all of them, and is never written over") {
  const Folder folder;
  folder.put("bad.csv", "kind,size,tread\nsadle,1 in,NPT\n");
  const Ran bad = run(with(saddle, {"--approved", folder / "bad.csv"}), {});
  CHECK(bad.status == 2);
  CHECK(has(bad.err, "did you mean \"thread\"?"));
  CHECK(run(with(saddle, {"--approved", folder / "none.csv"}), {}).status == 66);
  folder.put("good.csv", list);
  const Ran over = run(with(saddle, {"--approved", folder / "good.csv", "-o", folder / "good.csv"}), {});
  CHECK(over.status == 64);
  CHECK(has(over.err, "good.csv"));
}

TEST_CASE("settings name the list and what is aboard, and a plan says what the truck has and lacks") {
  const Folder folder;
  folder.put("approved.csv", list);
  folder.put("settings.json", R"({"approved": "approved.csv", "aboard": [{"stock": "41-117", "count": 1},
    {"item": "corporation stop", "size": "1 in"}, {"item": "repair clamp", "od_from": "8.6 in", "od_to": "9.2 in"},
    {"item": "shell cutter", "size": "1 in"}]})");
  auto arguments = saddle;
  arguments.pop_back();
  arguments.insert(arguments.end(), {"--settings", folder / "settings.json"});
  const Json plan = Json::parse(run(with(arguments, {"--format", "json"}), {}).out);
  const auto aboard = [&](const std::string& key) {
    for (const Json& item : plan["materials"]) {
      if (item["key"] == key) return item.value("aboard", -1);
    }
    return -2;
  };
  CHECK(aboard("service-saddle") == 1);
  CHECK(aboard("corporation-stop") == 0);  // the list's own stop, stock 12-004, is not aboard
  CHECK(aboard("repair-clamp") == 1);
  CHECK(aboard("shell-cutter") == 1);
  CHECK(aboard("ladder") == 0);
  const Ran text = run(with(arguments, {"--materials"}), {});
  CHECK(has(text.out, "Not aboard"));
  CHECK(has(text.out, "You have 1."));
  CHECK(has(text.out, "YOU LACK 1."));
  folder.put("wrong.json", R"({"aboard": [{"item": "corporation stp", "sise": "1 in"}, {"count": 2}]})");
  arguments.back() = folder / "wrong.json";
  const Ran wrong = run(arguments, {});
  CHECK(wrong.status == 2);
  CHECK(has(wrong.err, "did you mean \"corporation-stop\"?"));
  CHECK(has(wrong.err, "did you mean \"size\"?"));
  CHECK(has(wrong.err, "without item or stock"));
}

TEST_CASE("where the tap's tool is not aboard, that of smaller taps is named, and changes no verdict") {
  const Folder folder;
  const std::string job = std::string(MAINBORE_SOURCE_DIR) + "/examples/jobs/ductile_iron_direct.json";
  folder.put("settings.json", R"({"aboard": [{"item": "combined drill and tap", "size": "3/4 in"}]})");
  const auto plan = [&](const std::vector<std::string>& more) {
    std::vector<std::string> arguments = {"plan", job, "--set", "service.size=1 in"};
    arguments.insert(arguments.end(), more.begin(), more.end());
    return run(arguments, {});
  };
  const Ran with_truck = plan({"--settings", folder / "settings.json", "--format", "json"});
  const Json planned = Json::parse(with_truck.out);
  // (1 / 0.75) ^ 2.5 is 2.05: three taps.
  CHECK(planned["method"]["smaller_taps"]["count"] == 3);
  CHECK(planned["method"]["smaller_taps"]["tap"]["value"] == 0.75);
  CHECK(with_truck.status == plan({"--no-settings"}).status);
  const Ran text = plan({"--settings", folder / "settings.json", "--materials"});
  INFO(text.out);
  CHECK(has(text.out, "Aboard instead"));
  CHECK(has(text.out, "one for 3/4 in; 3 such taps, 1 ft 6 in apart"));
}

TEST_CASE("a day's orders are counted against one truck") {
  const Folder folder;
  folder.put("settings.json", R"({"aboard": [{"item": "corporation stop", "size": "1 in", "count": 1},
    {"item": "corporation stop", "size": "3/4 in", "count": 5}]})");
  folder.put("orders.csv",
             "id,date,main.material,main.size,main.class,service.size,main.pressure\n"
             "A,2026-05-04,ductile iron,8 in,PC 350,1 in,70 psi\n"
             "B,2026-05-04,ductile iron,6 in,PC 350,1 in,70 psi\n"
             "C,2026-05-04,ductile iron,6 in,PC 350,3/4 in,70 psi\n");
  const Ran week = run({"batch", folder / "orders.csv", "--settings", folder / "settings.json"}, {});
  INFO(week.out);
  CHECK(has(week.out, "SHORT on the truck: corporation stop 1 in: 1 of 2;"));
  CHECK_FALSE(has(week.out, "corporation stop 3/4 in:"));
}
