// The report of a week: what stands in it, in what order, and how loads add up.
#include "report/week.hpp"

#include <algorithm>
#include <cctype>
#include <set>

#include "batch/seen_ids.hpp"
#include "report/sheet_index.hpp"
#include "report/week_days.hpp"
#include "support/catch.hpp"
#include "support/plan_under.hpp"
#include "unit/batch/streams.hpp"

using namespace mainbore;
using namespace mainbore::report;
using namespace mainbore::test;

namespace {

WeekReport report_of(std::string_view csv) {
  WeekReport week;
  batch::BatchOptions options;
  options.format = batch::BatchFormat::week;
  (void)batch::plan_orders(source_of(csv), batch::InputFormat::csv, "week.csv", planner_under(default_rules()), options,
                           [&](batch::Piece& piece) {
                             for (WeekOrder& order : piece.week) week.add(std::move(order));
                           });
  return week;
}

std::size_t at(const std::string& text, std::string_view what) {
  INFO(text);
  const std::size_t found = text.find(what);
  CHECK(found != std::string::npos);
  return found;
}

WeekOrder order(std::string name, std::string date, std::string crew) {
  WeekOrder made;
  made.name = std::move(name);
  made.date = std::move(date);
  made.crew = std::move(crew);
  return made;
}

const std::string header = "id,date,crew,main.material,main.size,main.pressure,main.carries,service.size\n";

// The sheet's, with leave for it in the content policy; neither without the other.
bool has_script(const std::string& page) {
  const bool script = page.find("<script>") != std::string::npos;
  CHECK(script == (page.find("script-src") != std::string::npos));
  return script;
}

}  // namespace

TEST_CASE("trouble stands before what goes, each order once with its reason and remedy") {
  const std::string text = report_of(header +
                                     "A,2026-05-04,North,ductile iron,8 in,82 psi,water,1 in\n"
                                     "B,2026-05-04,North,PVC,6 in,60 psi,sewage,1 in\n"
                                     "C,2026-05-04,North,PVC,,60 psi,,1 in\n")
                               .text({});
  CHECK(text.starts_with("3 orders: 1 cannot be read, 1 no-go, 1 hold (1 for the office, 0 ready), 0 go\n"));
  const std::size_t unread = at(text, "CANNOT BE READ");
  const std::size_t stop = at(text, "NO-GO - send");
  const std::size_t hold = at(text, "OFFICE - hold");
  CHECK(unread < stop);
  CHECK(stop < hold);
  CHECK(hold < at(text, "ON SITE"));
  CHECK(text.find("carrying sewage") > stop);
  CHECK(text.find("LOAD LIST") != std::string::npos);
}

TEST_CASE("an empty week is a report too") {
  CHECK(report_of(header).text({}) == "0 orders: 0 cannot be read, 0 no-go, 0 hold, 0 go\n");
}

TEST_CASE("fittings add up, tools go from order to order") {
  WeekReport week;
  for (const std::string name : {"A", "B", "C"}) {
    WeekOrder one = order(name, name == "C" ? "2026-05-05" : "2026-05-04", "North");
    one.load = {{"corporation-stop", "Corporation stop", "1 in", 2, ""},
                {"combined-drill-and-tap", "Combined drill and tap", "1 in", 1, ""},
                {"pressure-gauge", "Pressure gauge", "", 1, ""}};
    week.add(std::move(one));
  }
  const std::string text = week.text({});
  const std::size_t monday = at(text, "2026-05-04, North: 2 orders");
  const std::size_t tuesday = at(text, "2026-05-05, North: 1 order\n");
  const std::string first = text.substr(monday, tuesday - monday);
  CHECK(first.find("Corporation stop: 4 x 1 in") != std::string::npos);
  CHECK(first.find("Combined drill and tap: 1 in") != std::string::npos);
  CHECK(first.find("One each: Pressure gauge") != std::string::npos);
  const std::size_t stores = at(text, "From stores");
  CHECK(text.find("Corporation stop: 6 x 1 in", stores) != std::string::npos);
  CHECK(text.find("Pressure gauge", stores) == std::string::npos);
}

TEST_CASE("orders without day and crew make one load") {
  WeekReport week;
  WeekOrder one = order("A", "", "");
  one.load = {{"corporation-stop", "Corporation stop", "1 in", 1, ""}};
  week.add(std::move(one));
  CHECK(week.text({}).find("All orders: 1 order\n") != std::string::npos);
}

TEST_CASE("one scarce thing wanted by two crews on one day is flagged") {
  const auto flagged = [](std::vector<WeekOrder> orders) {
    WeekReport week;
    for (WeekOrder& one : orders) {
      one.scarce = {"a powered feed"};
      week.add(std::move(one));
    }
    return week.text({}).find("SAME DAY, SAME THING") != std::string::npos;
  };
  CHECK(flagged({order("A", "2026-05-04", "North"), order("B", "2026-05-04", "South")}));
  CHECK(flagged({order("A", "2026-05-04", ""), order("B", "2026-05-04", "")}));
  CHECK_FALSE(flagged({order("A", "2026-05-04", "North"), order("B", "2026-05-04", "North")}));
  CHECK_FALSE(flagged({order("A", "2026-05-04", "North"), order("B", "2026-05-05", "South")}));
  CHECK_FALSE(flagged({order("A", "", "North"), order("B", "", "South")}));
}

TEST_CASE("the hold that fewest orders share stands first") {
  const auto hold = [](FindingCode code, const std::string& what) {
    WeekReason reason;
    reason.code = code;
    reason.what = what;
    reason.why = "why " + what;
    reason.fix = "fix " + what;
    reason.reading = "reading";
    return reason;
  };
  const WeekReason common = hold(FindingCode::place_not_looked, "common");
  const WeekReason rare = hold(FindingCode::main_wall_thin, "rare");
  WeekReport week;
  for (const bool both : {true, false}) {
    WeekOrder one = order(both ? "A" : "B", "", "");
    one.end = WeekEnd::ready;
    one.reasons = both ? std::vector{common, rare} : std::vector{common};
    week.add(std::move(one));
  }
  const std::string text = week.text({});
  CHECK(text.find("ready  A: rare, and 1 more") != std::string::npos);
  CHECK(text.find("Why: why rare") < text.find("Also: common."));
}

TEST_CASE("orders on hold stand by who clears them, with what to ask and whom") {
  const auto order_with = [](const std::string& name, const std::string& ask) {
    WeekOrder one = order(name, "", "");
    one.end = ask.empty() ? WeekEnd::ready : WeekEnd::office;
    one.reasons.push_back({FindingCode::place_not_looked, "not looked", "why", "fix", "Nearest", ""});
    if (!ask.empty()) {
      one.reasons.push_back(
          {FindingCode::machine_no_saddle, "no saddle", "why not", "get one", "Found", "", ask, "The yard"});
    }
    return one;
  };
  WeekReport week;
  week.add(order_with("A", ""));
  week.add(order_with("B", "Is there one?"));
  week.add(order_with("C", "Is there one?"));
  const std::string text = week.text({});
  CHECK(text.starts_with("3 orders: 0 cannot be read, 0 no-go, 3 hold (2 for the office, 1 ready), 0 go\n"));
  CHECK(at(text, "office B: no saddle, and 1 more") < at(text, "ready  A: not looked"));
  CHECK(at(text, "OFFICE - hold") < at(text, "READY - hold"));
  CHECK(at(text, "Ask: The yard: Is there one?") < at(text, "TO ASK"));
  CHECK(at(text, "TO ASK") < at(text, "  The yard\n    B, C: Is there one?\n"));
  CHECK(text.find("Nearest (not looked): A, B, C\n") > at(text, "ON SITE"));
  CHECK(week.html().find("Is there one?") != std::string::npos);
}

TEST_CASE("what is the same of many orders is said once, and their reasons fit a screen") {
  WeekReport week;
  for (int i = 0; i < 200; ++i) {
    WeekOrder one = order("A" + std::to_string(i), "", "");
    one.end = i % 4 == 0 ? WeekEnd::no_go : WeekEnd::ready;
    const std::string what = "reason " + std::to_string(i % 8);
    one.reasons.push_back({FindingCode::place_not_looked, what, "why " + what, "fix " + what, "reading", ""});
    week.add(std::move(one));
  }
  const std::string text = week.text({});
  const std::size_t glance = at(text, "AT A GLANCE");
  const std::string screen = text.substr(glance, text.find("\n\n", glance) - glance);
  CHECK(std::count(screen.begin(), screen.end(), '\n') <= 30);
  CHECK(screen.find("NO-GO  25: reason 0: A0, A8, A16, A24, A32, A40 and 19 more") != std::string::npos);
  CHECK(screen.find("ready  25: reason 7: A7, A15, A23") != std::string::npos);
  std::size_t said = 0;
  for (std::size_t found = text.find("Why: why reason 3\n"); found != std::string::npos;
       found = text.find("Why: why reason 3\n", found + 1)) {
    ++said;
  }
  CHECK(said == 1);
  // Every order stands in its section all the same.
  for (int i = 0; i < 200; ++i) CHECK(text.find("\n  A" + std::to_string(i) + '\n') != std::string::npos);
  CHECK(text.find("(reason 1): A1, A9") != std::string::npos);
}

TEST_CASE("a reading that every hold asks for names no orders") {
  WeekReport week;
  for (int i = 0; i < 20; ++i) {
    WeekOrder one = order("A" + std::to_string(i), "", "");
    one.end = WeekEnd::ready;
    one.reasons.push_back({FindingCode::place_not_looked, "not looked", "why", "fix", "Nearest", ""});
    week.add(std::move(one));
  }
  CHECK(week.text({}).find("Nearest (not looked): all orders on hold\n") != std::string::npos);
}

TEST_CASE("the page of a week is well-formed and holds the words of the text") {
  const std::string html = report_of(header + "A,2026-05-04,<b>&,ductile iron,8 in,82 psi,water,1 in\n").html();
  CHECK(html.starts_with("<!DOCTYPE html>"));
  CHECK(html.find("&lt;b&gt;&amp;") != std::string::npos);
  CHECK(html.find("<b>&") == std::string::npos);
  CHECK(html.ends_with("</html>\n"));
}

TEST_CASE("a day is a day however it is written, and a crew in any case") {
  using report::day_key;
  for (const std::string_view same : {"2026-05-04", "2026-05-04 07:30", "2026-05-04T00:00:00Z", "2026/5/4", "5/4/2026",
                                      "05/04/2026 12:00:00 AM", "4 May 2026", "May 4, 2026", "Mon 4-May-2026"}) {
    INFO(same);
    CHECK(day_key(same) == "2026-05-04");
  }
  CHECK(day_key("13/5/2026") == "2026-05-13");
  CHECK(day_key("2/30/2026") == "~2/30/2026");
  CHECK(day_key("next week") == "~next week");
  CHECK(day_key("").empty());
  const std::string row = ",ductile iron,8 in,82 psi,water,1 in\n";
  const std::string text =
      report_of(header + "A,6/1/2026,North" + row + "B,2026-05-04,south" + row + "C,5/4/2026,South" + row +
                "D,4 May 2026,\"SOUTH \"" + row + "E,12/1/2025,North" + row + "F,soon,North" + row)
          .text({});
  const std::string load = text.substr(at(text, "LOAD LIST"));
  const std::size_t first = at(load, "2025-12-01, North");
  const std::size_t second = at(load, "2026-05-04, south: 3 orders");
  const std::size_t third = at(load, "2026-06-01, North");
  CHECK(first < second);
  CHECK(second < third);
  CHECK(third < at(load, "soon, North"));
}

TEST_CASE("an export has no list a day, and the days asked for have theirs") {
  const auto load_of = [](int days, WeekReport::Days wanted) {
    WeekReport week(std::move(wanted));
    for (int day = 1; day <= days; ++day) {
      for (const std::string crew : {"North", "South"}) {
        WeekOrder one = order(crew + std::to_string(day),
                              "2026-05-" + std::string(day < 10 ? "0" : "") + std::to_string(day), crew);
        one.load = {{"corporation-stop", "Corporation stop", "1 in", 1, ""}};
        one.scarce = {"Valve key"};
        week.add(std::move(one));
      }
    }
    const std::string text = week.text({});
    CHECK((text.find("SAME DAY, SAME THING") != std::string::npos) ==
          (text.find("2026-05-05, North") != std::string::npos));
    return text.substr(at(text, "LOAD LIST"));
  };
  CHECK(load_of(14, {}).find("2026-05-14, South: 1 order") != std::string::npos);
  const std::string all = load_of(15, {});
  CHECK(all.find("15 days, 2026-05-01 to 2026-05-15") != std::string::npos);
  CHECK(all.find("2026-05-05, North") == std::string::npos);
  CHECK(all.find("Corporation stop: 30 x 1 in", at(all, "From stores")) != std::string::npos);
  const std::string two = load_of(15, {"2026-05-05", "2026-05-06"});
  CHECK(two.find("2026-05-05, North: 1 order") != std::string::npos);
  CHECK(two.find("2026-05-06, South: 1 order") != std::string::npos);
  CHECK(two.find("2026-05-07") == std::string::npos);
  CHECK(two.find("Corporation stop: 4 x 1 in", at(two, "From stores")) != std::string::npos);
  CHECK(load_of(3, {"2026-06-01", "2026-06-01"}).find("No order of these days") != std::string::npos);
  CHECK(all.find("no day that can be read") == std::string::npos);

  WeekReport week({"2026-05-01", "2026-05-01"});
  for (const std::string day : {"2026-05-01", "", "soon"}) {
    WeekOrder one = order("AV-" + day, day, "North");
    one.load = {{"corporation-stop", "Corporation stop", "1 in", 1, ""}};
    week.add(std::move(one));
  }
  CHECK(week.text({}).find("2 orders have no day that can be read") != std::string::npos);
}

TEST_CASE("stops that want nearly the same rating are one item") {
  const std::string text = report_of(header +
                                     "A,2026-05-04,North,ductile iron,8 in,131 psi,water,1 in\n"
                                     "B,2026-05-04,North,ductile iron,8 in,138.4 psi,water,1 in\n"
                                     "C,2026-05-04,North,ductile iron,8 in,150 psi,water,1 in\n")
                               .text({});
  const std::size_t marked = at(text, "marked 150 psi or more");
  CHECK(text.find("marked 13") == std::string::npos);
  CHECK(text.find("3 x 1 in", marked) != std::string::npos);
}

TEST_CASE("an id that comes again is told, within a bound") {
  batch::SeenIds seen;
  std::size_t again = 0;
  for (int i = 0; i < 20000; ++i) again += seen.add("AV-" + std::to_string(i % 15000)) ? 1u : 0u;
  CHECK(again == 5000);
  CHECK_FALSE(seen.is_full());
  batch::SeenIds full;
  for (std::size_t i = 0; i < batch::SeenIds::most + 10; ++i) {
    if (full.add("AV-" + std::to_string(i))) FAIL(i);
  }
  CHECK(full.is_full());
  CHECK(full.add("AV-7"));
  CHECK_FALSE(full.add("AV-" + std::to_string(batch::SeenIds::most + 5)));
}

TEST_CASE("a page without its sheets says so") {
  report::WeekReport week;
  for (std::size_t i = 0; i <= report::WeekReport::most_sheets; ++i) {
    WeekOrder one = order("AV-" + std::to_string(i), "", "");
    one.sheet = "<p>sheet</p>";
    week.add(std::move(one));
  }
  const std::string page = week.html();
  CHECK(page.find("The field sheets of these 201 orders are not on this page") != std::string::npos);
  CHECK(page.find("<p>sheet</p>") == std::string::npos);
  CHECK_FALSE(has_script(page));
}

TEST_CASE("a page takes readings where it holds sheets") {
  report::WeekReport week;
  CHECK_FALSE(has_script(week.html()));
  WeekOrder one = order("AV-1", "", "");
  one.sheet = "<p>sheet</p>";
  week.add(std::move(one));
  CHECK(has_script(week.html()));
}

TEST_CASE("sheets are filed under names that every system takes and tells apart") {
  report::SheetIndex index;
  std::vector<std::string> names;
  const std::vector<std::string> ids = {"AV-3001",
                                        "av-3001",
                                        "AV-3001",
                                        "../../etc/passwd",
                                        "a/b",
                                        "",
                                        "con",
                                        "index",
                                        ".hidden",
                                        "-rf",
                                        "AV 1",
                                        "\xC3\xA9",
                                        "x.",
                                        std::string(500, 'y'),
                                        std::string(500, 'y')};
  std::set<std::string> small;
  for (const std::string& id : ids) {
    WeekOrder one = order(id, "", "");
    one.sheet = "<p>sheet</p>";
    names.push_back(index.add(one));
    const std::string& name = names.back();
    INFO(name);
    CHECK(name.find_first_not_of("abcdefghijklmnopqrstuvwxyzABCDEFGHIJKLMNOPQRSTUVWXYZ0123456789-_.") ==
          std::string::npos);
    CHECK(name.size() <= 120);
    CHECK(name.ends_with(".html"));
    CHECK(name.front() != '.');
    CHECK(name.front() != '-');
    std::string lower = name;
    std::transform(lower.begin(), lower.end(), lower.begin(),
                   [](char c) { return static_cast<char>(std::tolower(c)); });
    CHECK(small.insert(lower).second);
    CHECK(lower != "index.html");
  }
  CHECK(names[0] == "AV-3001.html");
  WeekOrder unread = order("AV-9", "", "");
  CHECK(index.add(unread).empty());
  const std::string page = index.page();
  CHECK_FALSE(has_script(page));
  for (const std::string& name : names) CHECK(page.find("href=\"" + name + '"') != std::string::npos);
  WeekOrder one = order("AV-1", "", "");
  one.sheet = "<p>sheet</p>";
  CHECK(report::sheet_page(one).find("href=\"index.html\"") != std::string::npos);
  CHECK(has_script(report::sheet_page(one)));
}
