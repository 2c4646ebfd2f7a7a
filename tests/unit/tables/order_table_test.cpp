#include <algorithm>
#include <random>

#include "mainbore/job_file.hpp"
#include "mainbore/plan.hpp"
#include "mainbore/rules_file.hpp"
#include "support/catch.hpp"
#include "support/plan_under.hpp"
#include "unit/tables/tables.hpp"

using namespace mainbore;
using namespace mainbore::test;

namespace {

// One row under a header of required facts, with one more column.
OrderRecord row_with(const std::string& header, const std::string& cell) {
  const ReadTable read = read_table("main.material,main.size,main.pressure,service.size," + header +
                                    "\nductile iron,8 in,80 psi,1 in," + cell + "\n");
  REQUIRE(read.faults.empty());
  REQUIRE(read.orders.size() == 1);
  return read.orders[0];
}

std::string json_of(const OrderRecord& order) {
  return order.job ? job_to_json(*order.job, UnitSystem::us, JsonStyle::compact) : "";
}

}  // namespace

TEST_CASE("headers are the paths of a job, however they are written") {
  const ReadTable plain =
      read_table("id,main.material,main.size,main.pressure,service.size\nA-1,DI,8 in,82 psi,1 in\n");
  REQUIRE(plain.faults.empty());
  REQUIRE(plain.orders.size() == 1);
  REQUIRE(plain.orders[0].job);
  CHECK(plain.orders[0].row == 1);
  CHECK(plain.orders[0].line == 2);
  CHECK(plain.orders[0].id == "A-1");
  CHECK(plain.orders[0].job->id == "A-1");
  for (const std::string_view text :
       {"ID,Main Material,MAIN_SIZE [in],Main.Pressure (psi),service size\r\nA-1,D.I.,8,82,1 in\r\n",
        "\xEF\xBB\xBFid\tmain.material\tmain.size [mm]\tmain.pressure [kPa]\tservice.size\nA-1\tductile "
        "iron\t200\t565.37\t1 in\n",
        "main_size;service_size;main_pressure;id;main_material\nDN 200;1 in;82 psi;A-1;DIP\n"}) {
    const ReadTable other = read_table(text);
    INFO(text);
    REQUIRE(other.faults.empty());
    REQUIRE(other.orders.size() == 1);
    REQUIRE(other.orders[0].job);
    CHECK(other.orders[0].job->main.material == plain.orders[0].job->main.material);
    CHECK(other.orders[0].job->main.size == plain.orders[0].job->main.size);
    CHECK(other.orders[0].job->main.pressure->base() == Catch::Approx(82).epsilon(1e-4));
    CHECK(other.orders[0].job->service.size == plain.orders[0].job->service.size);
  }
}

TEST_CASE("a header that cannot be used says why") {
  const auto one = [](std::string_view text, const io::OrderMap* map = nullptr) {
    const ReadTable read = read_table(text, map);
    if (read.faults.size() != 1) return std::to_string(read.faults.size()) + " faults";
    return std::string(read.faults[0].code) + ' ' + read.faults[0].message + " / " + read.faults[0].help;
  };
  CHECK(one("main.material,main.sise\n").find("did you mean main.size?") != std::string::npos);
  CHECK(one("main.material [in]\n").starts_with("csv.header"));
  CHECK(one("main.size [psi]\n").starts_with("csv.header"));
  CHECK(one("main.size,Main Size\n").find("two columns for main.size") != std::string::npos);
  CHECK(one("PIPE,CODE\n").find("a map file says") != std::string::npos);
  CHECK(one(std::string("\xFF\xFEm\0a\0", 6)).find("UTF-16") != std::string::npos);

  const io::OrderMap map = map_of(R"({"format": 1, "columns": {"PIPE_SIZE": {"to": "main.size", "unit": "in"}}})");
  CHECK(one("PIPE_SIZ,B\n", &map).find("did you mean \"PIPE_SIZ\"?") != std::string::npos);
  CHECK(one("pipe size,Pipe_Size\n", &map).starts_with("csv.header"));
  CHECK(read_table("pipe size,anything\n", &map).faults.empty());

  const io::OrderMap strict = map_of(R"({"format": 1, "columns": {"A": "main.material"}, "ignore_others": false})");
  CHECK(read_table("A,main.size\n", &strict).faults.empty());
  CHECK(one("A,other\n", &strict).starts_with("csv.header"));

  // Rows under a header that cannot be used come out all the same.
  const auto rows = records_of("PIPE,CODE\n1,2\n3,4\n");
  io::OrderTable table(Catalog::builtin(), nullptr, "orders.csv", rows.at(0));
  OrderRecord order;
  table.read(rows.at(2), order);
  CHECK(order.row == 2);
  CHECK(order.diagnostics.size() == 1);
}

TEST_CASE("what exports write for not known is not known") {
  for (const std::string mark :
       {"", " ", "NULL", "#NULL#", "None", "N/A", "XXX", "Unk", "unknown", "<blank>", "\" \""}) {
    INFO(mark);
    for (const std::string header :
         {"main.class", "main.installed", "main.wall [in]", "main.condition", "main.encased", "place"}) {
      const OrderRecord order = row_with(header, mark);
      INFO(header);
      REQUIRE(order.job);
      CHECK(order.remarks.empty());
      CHECK(order.job->main.class_name.empty());
      CHECK(order.job->place.empty());
      CHECK_FALSE(order.job->main.installed);
      CHECK_FALSE(order.job->main.wall);
    }
  }
  for (const std::string filler : {"0", "0.0", "-999", "-9999.00"}) {
    CHECK(row_with("main.wall [in]", filler).remarks.empty());
    CHECK(row_with("main.od [mm]", filler).remarks.empty());
    CHECK(row_with("main.installed", filler).remarks.empty());
  }
  // Where the word is one of those asked for, it is an answer.
  CHECK(row_with("main.carries", "unknown").job->main.carries == Carries::unknown);
  // Zero feet of cover is what exports write where nobody measured.
  CHECK_FALSE(row_with("main.cover [ft]", "0").job->main.cover);
}

TEST_CASE("sizes are what is written, never a size nearby") {
  const auto size = [](const std::string& cell) {
    const ReadTable read =
        read_table("main.material,main.size [in],main.pressure,service.size\nDI," + cell + ",80 psi,1 in\n");
    return read.orders[0].job ? read.orders[0].job->main.size->number() : 0.0;
  };
  CHECK(size("7") == 7.0);
  CHECK(size("49.5") == 49.5);
  CHECK(size("2.25") == 2.25);
  CHECK(size("31.4") == 31.4);
  CHECK(size("6.00") == 6.0);
  CHECK(size("200 mm") == 8.0);
  CHECK(size("1-1/2") == 1.5);
  CHECK(size("0") == 0.0);
  CHECK(size("9e99") == 0.0);
  CHECK(size("1e999") == 0.0);
}

TEST_CASE("of a date only the year is taken") {
  for (const std::string date : {"1/1/1979", "1979/01/01 00:00:00+00", "1979-06-01T00:00:00.0000000", "1979", "1979.0",
                                 "1979-06-01T00:00:00-0500", "1-Jan-1979 13:00"}) {
    INFO(date);
    const OrderRecord order = row_with("main.installed", date);
    REQUIRE(order.job);
    CHECK(order.job->main.installed == 1979);
  }
  for (const std::string year : {"1650", "9124", "61", "1-Jan-10", "1950-1960", "about 19xx"}) {
    INFO(year);
    const OrderRecord order = row_with("main.installed", year);
    REQUIRE(order.job);
    CHECK_FALSE(order.job->main.installed);
    REQUIRE(order.remarks.size() == 1);
    CHECK(order.remarks[0].pointer == "/main/installed");
    CHECK(order.remarks[0].message.find("planned without main.installed") != std::string::npos);
    CHECK(order.job->unread == std::vector<std::string_view>{"main.installed"});
  }
}

// Days and their counts by GNU date: date -u -d 1979-01-01 +%s.
TEST_CASE("a date as a count since 1970 is the day, where map or header says that it is one") {
  const io::OrderMap map = map_of(
      R"({"format": 1, "columns": {"WO": "id", "DAY": {"to": "date", "unit": "ms"},
          "LAID": {"to": "main.installed", "unit": "ms", "least": 1860}, "MAT": "main.material"},
          "defaults": {"main.size": "8 in", "main.pressure": "80 psi", "service.size": "1 in"}})");
  const auto row_of = [&](const std::string& cells) {
    const ReadTable read = read_table("WO,DAY,LAID,MAT\n1," + cells + ",DI\n", &map);
    REQUIRE(read.faults.empty());
    return read.orders.at(0).job.value();
  };
  const auto installed = [&](const std::string& cell) { return row_of("," + cell).main.installed; };
  CHECK(installed("284014800000") == 1979);
  CHECK(installed("283996800000.0") == 1979);
  CHECK(installed("2.839968e11") == 1979);
  CHECK(installed("-1577923200001") == 1919);
  CHECK(installed("-1577923200000") == 1920);
  CHECK(installed("1979-01-01") == 1979);  // as people write it
  CHECK(installed("1961") == 1961);
  CHECK_FALSE(installed("0"));
  CHECK_FALSE(installed("-3500000000000"));  // 1859, below the least of the map
  CHECK(row_of("1476316800000,").date == "2016-10-13");
  CHECK(row_of("1476403199999,").date == "2016-10-13");
  CHECK(row_of("13 Oct 2016,").date == "13 Oct 2016");

  // Nobody has said that it is one: it is not guessed.
  const std::string facts = ",main.material,main.size,main.pressure,service.size\n";
  const std::string tap = ",DI,8 in,80 psi,1 in\n";
  const ReadTable plain = read_table("id,date,main.installed" + facts + "1,1476316800000,1481241600000" + tap +
                                     "2,201610131200,1961" + tap);
  REQUIRE(plain.orders.at(0).job);
  CHECK(plain.orders.at(0).job->date.empty());
  CHECK_FALSE(plain.orders.at(0).job->main.installed);
  REQUIRE(plain.orders.at(0).remarks.size() == 2);
  CHECK(plain.orders.at(0).remarks.at(0).code == "order.day-count");
  CHECK(plain.orders.at(0).remarks.at(1).code == "order.day-count");
  CHECK(plain.orders.at(1).job.value().date == "201610131200");
  const ReadTable seconds = read_table("id,date [s],main.installed [s]" + facts + "1,1476316800,284014800" + tap);
  CHECK(seconds.orders.at(0).job.value().date == "2016-10-13");
  CHECK(seconds.orders.at(0).job.value().main.installed == 1979);
  CHECK(read_table("id,date [h]\n1,2\n").faults.at(0).message.find("not a unit of date") != std::string::npos);
  const auto refused = io::read_order_map(R"({"format": 1, "columns": {"D": {"to": "date", "unit": "days"}}})",
                                          "map.json", Catalog::builtin());
  CHECK(refused.diagnostics.at(0).message.find("is not how days are counted") != std::string::npos);
}

TEST_CASE("what somebody wrote and nobody can read holds the order") {
  const RulesFile loaded = load_rules(Catalog::builtin());
  const auto unread = [&](const std::string& header, const std::string& cell) {
    const OrderRecord order = row_with(header, cell);
    REQUIRE(order.job);
    const Plan plan = plan_under(*order.job, *loaded.rules);
    const bool held = std::any_of(plan.findings.begin(), plan.findings.end(), [](const Finding& finding) {
      return finding.code == FindingCode::order_fact_unread && finding.severity == Severity::hold;
    });
    CHECK(held == !order.job->unread.empty());
    return !order.job->unread.empty();
  };
  CHECK(unread("main.wall [in]", "0.12 - pitted"));
  CHECK(unread("main.wall [in]", "\"0,12\""));
  CHECK(unread("service.stop_rating [psi]", "60 lbs"));
  CHECK(unread("main.rating", "50#"));
  CHECK(unread("excavation.distress", "yes - cracks"));
  CHECK(unread("service.method", "saddle only"));
  CHECK_FALSE(unread("main.wall [in]", "0.42"));
  CHECK_FALSE(unread("main.wall [in]", "n/a"));
  CHECK_FALSE(unread("main.wall [in]", ""));
  CHECK_FALSE(unread("crew", "North\x01"));
}

TEST_CASE("a wall that is a dimension ratio is rejected and the row stands") {
  const auto wall = [](const std::string& material, const std::string& size, const std::string& cell) {
    const ReadTable read = read_table("main.material,main.size [in],main.pressure,service.size,main.wall [in]\n" +
                                      material + ',' + size + ",80 psi,1 in," + cell + "\n");
    REQUIRE(read.orders[0].job);
    CHECK(read.orders[0].job->main.wall.has_value() == read.orders[0].remarks.empty());
    return read.orders[0].job->main.wall.has_value();
  };
  CHECK_FALSE(wall("HDPE", "30", "13.5"));
  CHECK_FALSE(wall("HDPE", "24", "13.5"));
  CHECK_FALSE(wall("HDPE", "36", "32.5"));
  CHECK_FALSE(wall("PVC", "8", "18"));
  CHECK_FALSE(wall("CI", "24", "89"));
  CHECK(wall("concrete cylinder", "60", "6.25"));
  CHECK(wall("PVC", "8", "0.503"));
  CHECK(wall("HDPE", "4", "0.643"));     // DR 7
  CHECK(wall("steel", "1/2", "0.294"));  // double extra strong
}

TEST_CASE("materials are read by the catalog and the map, never by nearness") {
  const auto read = [](const std::string& cell, const io::OrderMap* map = nullptr) {
    return read_table("M,S,P,V\n\"" + cell + "\",8 in,80 psi,1 in\n", map).orders.at(0);
  };
  const io::OrderMap bare = map_of(R"({"format": 1, "columns":
    {"M": "main.material", "S": "main.size", "P": "main.pressure", "V": "service.size"}})");
  const io::OrderMap own = map_of(R"({"format": 1, "columns":
    {"M": {"to": "main.material", "values": {"0": "steel"}},
     "S": "main.size", "P": "main.pressure", "V": "service.size"},
    "materials": {"CO": "copper", "CI": "ductile iron"}})");
  for (const std::string known : {"C.I.", "ci", "Cast Iron", "C.I.P."}) {
    REQUIRE(read(known, &bare).job);
    CHECK(read(known, &bare).job->main.material == Material::cast_iron);
  }
  for (const std::string doubtful :
       {"CO", "ST", "C", "RUPTURE", "2", "CON", "PVD", "HDPE IN CI", "PLASTIC", "0", "PVC200"}) {
    const OrderRecord order = read(doubtful, &bare);
    INFO(doubtful);
    CHECK_FALSE(order.job);
    REQUIRE(order.diagnostics.size() == 1);
    CHECK(order.diagnostics[0].pointer == "/main/material");
    CHECK(order.diagnostics[0].message.starts_with("M: "));
    CHECK(order.diagnostics[0].help.find("map file") != std::string::npos);
  }
  for (const std::string two : {"DI/CI", "PVC, AC", "Ductile Iron & Cast Iron", "C.I. TO STEEL"}) {
    const OrderRecord order = read(two, &bare);
    INFO(two);
    CHECK(has_code(order.diagnostics, "order.two-materials"));
  }
  CHECK(read("co", &own).job->main.material == Material::copper);
  CHECK(read("C.I.", &own).job->main.material == Material::ductile_iron);  // the utility's own list comes first
  CHECK(read("0.0", &own).job->main.material == Material::steel);
}

TEST_CASE("of several columns the first that says something counts, and a default never covers a rejected cell") {
  const io::OrderMap map = map_of(R"({"format": 1, "columns":
    {"NEW": {"to": "main.material", "missing": ["CONC"]}, "OLD": "main.material",
     "S": {"to": "main.size", "unit": "in"},
     "P": {"to": "main.pressure", "unit": "psi"}},
    "defaults": {"main.pressure": "70 psi", "service.size": "1 in", "main.material": "steel"}})");
  // The order of the map counts, not that of the file.
  const ReadTable read =
      read_table("OLD,NEW,S,P\nCI,DI,8,90\nCI,,8,\nRCC,CONC,8,NULL\n,,8,\nCI,RUPTURE,8,\nCI,DI,8,lots\n", &map);
  REQUIRE(read.faults.empty());
  REQUIRE(read.orders.size() == 6);
  CHECK(read.orders[0].job->main.material == Material::ductile_iron);
  CHECK(read.orders[0].job->main.pressure == 90.0 * units::psi);
  CHECK(read.orders[1].job->main.material == Material::cast_iron);
  CHECK(read.orders[1].job->main.pressure == 70.0 * units::psi);
  CHECK(read.orders[2].job->main.material == Material::concrete_cylinder);
  CHECK(read.orders[3].job->main.material == Material::steel);
  CHECK_FALSE(read.orders[4].job);
  CHECK(has_code(read.orders[4].diagnostics, "job.unknown-value"));
  CHECK_FALSE(read.orders[5].job);
  CHECK(has_code(read.orders[5].diagnostics, "job.not-a-quantity"));
}

TEST_CASE("a range of the map is checked in its own unit") {
  const io::OrderMap map = map_of(R"({"format": 1, "id": ["D", "N"], "columns":
    {"M": "main.material", "S": {"to": "main.size", "unit": "cm", "greatest": 120},
     "Y": {"to": "main.installed", "least": 1880}},
    "defaults": {"main.pressure": "70 psi", "service.size": "1 in"}})");
  const ReadTable read = read_table("D,N,M,S,Y\nE,1,DI,150,1950\nE,2,DI,15,1822\nE,,DI,15,1881\n", &map);
  REQUIRE(read.orders.size() == 3);
  CHECK(has_code(read.orders[0].diagnostics, "order.out-of-map-range"));  // mm under a header that says cm
  CHECK(read.orders[0].id == "E-1");
  REQUIRE(read.orders[1].job);
  CHECK(read.orders[1].job->main.size == NominalSize::inches(6));
  CHECK(has_code(read.orders[1].remarks, "order.out-of-map-range"));
  CHECK(read.orders[2].job->main.installed == 1881);
  CHECK(read.orders[2].id == "E");
}

TEST_CASE("one record comes out for each that goes in, with all its reasons") {
  const std::string text =
      std::string("id,main.material,main.size [in],main.pressure [psi],service.size [in],place\n") +
      "1,cheese,,lots,1,\n"      // three reasons
      "2,DI,8,80,1,a,b\n"        // too many cells
      "3,DI,8\n"                 // too few
      "4,DI,8,80,1,x,,\n"        // empty cells too many do no harm
      ",,,,,\n"                  // says nothing
      "6,DI,8,80,1,\"6\" x\"\n"  // a quote not doubled
      "7,DI,8,80,1,caf\xE9\n"    // an optional cell in another encoding
      "8,D\xE9I,8,80,1,\n"       // a required one
      "9,DI,8,80,1,ok\n";
  const ReadTable read = read_table(text);
  REQUIRE(read.faults.empty());
  REQUIRE(read.orders.size() == 9);
  for (std::size_t i = 0; i < read.orders.size(); ++i) {
    CHECK(read.orders[i].row == i + 1);
    CHECK(read.orders[i].line == static_cast<int>(i) + 2);
    CHECK(read.orders[i].job.has_value() == read.orders[i].diagnostics.empty());
  }
  CHECK(read.orders[0].diagnostics.size() == 3);
  CHECK(read.orders[0].id == "1");
  CHECK(has_code(read.orders[1].diagnostics, "csv.ragged"));
  CHECK(read.orders[1].id.empty());
  CHECK(has_code(read.orders[2].diagnostics, "csv.ragged"));
  CHECK(read.orders[3].job);
  CHECK(read.orders[4].diagnostics.size() == 1);
  CHECK(has_code(read.orders[5].diagnostics, "csv.quote"));
  CHECK(has_code(read.orders[6].remarks, "csv.encoding"));
  CHECK(has_code(read.orders[7].diagnostics, "csv.encoding"));
  CHECK(read.orders[8].job->place == "ok");
  const Diagnostic& cheese = read.orders[0].diagnostics[0];
  CHECK(cheese.line == 2);
  CHECK(cheese.column == 3);
  CHECK(cheese.excerpt == "1,cheese,,lots,1,");
  CHECK(cheese.caret == 2);
  CHECK(cheese.caret_length == 6);
}

TEST_CASE("things nearby stand in numbered columns, and none of them is lost") {
  const std::string header =
      "main.material,main.size,main.pressure,service.size,nearby[0].what,nearby_0_along [ft],"
      "Nearby 1 What,nearby[1].along,nearby[1].clock\n";
  const ReadTable read =
      read_table(header + "DI,8 in,80 psi,1 in,valve,3,,,\n" + "DI,8 in,80 psi,1 in,,,joint,2 ft,3:00\n" +
                 "DI,8 in,80 psi,1 in,,,,,\n" + "DI,8 in,80 psi,1 in,valve,,,,\n" + "DI,8 in,80 psi,1 in,gizmo,3,,,\n" +
                 "DI,8 in,80 psi,1 in,tap,3,joint,2 ft,27:00\n");
  REQUIRE(read.faults.empty());
  REQUIRE(read.orders.size() == 6);
  REQUIRE(read.orders[0].job->nearby);
  CHECK(read.orders[0].job->nearby->size() == 1);
  REQUIRE(read.orders[1].job->nearby->size() == 1);
  CHECK(read.orders[1].job->nearby->at(0).what == NearbyThing::joint);
  CHECK(read.orders[1].job->nearby->at(0).clock == ClockPosition{180});
  CHECK_FALSE(read.orders[2].job->nearby);
  CHECK(has_code(read.orders[3].diagnostics, "job.missing"));
  CHECK(has_code(read.orders[4].diagnostics, "job.unknown-value"));
  REQUIRE(read.orders[5].job);
  CHECK(read.orders[5].remarks.size() == 1);
  CHECK(read.orders[5].job->nearby->size() == 2);
}

TEST_CASE("a machine given by its own figures needs those that every check rests on") {
  const OrderRecord order = row_with("machine.title", "the old one");
  CHECK_FALSE(order.job);
  CHECK(order.diagnostics.size() == 5);
}

TEST_CASE("one line of text stays one line, and notes may have several") {
  CHECK(row_with("place", "\"Mill Road\r\nbehind the lock\"").job->place == "Mill Road behind the lock");
  CHECK(row_with("note", "\"ring\nfirst\"").job->note == "ring\nfirst");
  CHECK(row_with("main.encased", "Y").job->main.encased == true);
  CHECK(row_with("main.encased", "no").job->main.encased == false);
  CHECK(row_with("main.encased", "1").remarks.size() == 1);
}

TEST_CASE("the same orders in other words, units, order and line ends are the same jobs") {
  std::mt19937_64 random(7);
  struct Order {
    std::string material, inches, mm, pressure;
  };
  const std::vector<Order> kinds = {
      {"DI", "8", "203.2", "82"}, {"cast iron", "6", "152.4", "75"}, {"P.V.C.", "12", "304.8", "60"}};
  std::string us = "id,main.material,main.size [in],main.pressure [psi],service.size\n";
  std::vector<std::string> rows;
  for (int i = 0; i < 200; ++i) {
    const Order& order = kinds[random() % kinds.size()];
    us += std::to_string(i) + ',' + order.material + ',' + order.inches + ',' + order.pressure + ",1 in\n";
    rows.push_back("1 in," + order.mm + ",\"" + order.material + "\"," + order.pressure + " psi," + std::to_string(i) +
                   "\r\n");
  }
  for (std::size_t i = rows.size(); i > 1; --i) std::swap(rows[i - 1], rows[random() % i]);
  std::string metric = "\xEF\xBB\xBFservice_size,MAIN SIZE [mm],Main Material,main pressure,ID\r\n";
  for (const std::string& row : rows) metric += row;

  const ReadTable one = read_table(us);
  ReadTable two = read_table(metric);
  REQUIRE(one.orders.size() == two.orders.size());
  std::sort(two.orders.begin(), two.orders.end(),
            [](const OrderRecord& a, const OrderRecord& b) { return std::stoi(a.id) < std::stoi(b.id); });
  for (std::size_t i = 0; i < one.orders.size(); ++i) CHECK(json_of(one.orders[i]) == json_of(two.orders[i]));
}

TEST_CASE("a table reads a row the same whatever it has read before") {
  const std::string header = "id,main.material,main.size [in],main.pressure [psi],service.size [in],main.class,note\n";
  std::string text = header;
  std::vector<std::string> rows;
  std::mt19937_64 random(11);
  for (int i = 0; i < 6000; ++i) {  // more spellings than a column remembers
    rows.push_back(std::to_string(i) + (random() % 3 == 0 ? ",CI," : ",cheese,") + std::to_string(random() % 40) + ',' +
                   std::to_string(i) + "." + std::to_string(random() % 100) + ",1,,\n");
    text += rows.back();
  }
  const ReadTable all = read_table(text);
  REQUIRE(all.orders.size() == rows.size());
  for (std::size_t i = 0; i < rows.size(); i += 37) {
    const ReadTable alone = read_table(header + rows[i]);
    CHECK(json_of(all.orders[i]) == json_of(alone.orders[0]));
    REQUIRE(all.orders[i].diagnostics.size() == alone.orders[0].diagnostics.size());
    for (std::size_t d = 0; d < alone.orders[0].diagnostics.size(); ++d) {
      CHECK(all.orders[i].diagnostics[d].message == alone.orders[0].diagnostics[d].message);
    }
  }
}

TEST_CASE("a code of the map says several facts") {
  const io::OrderMap map =
      map_of(R"({"format": 1, "columns": {"M": "main.material", "C": "main.class", "Y": "main.installed"},
    "materials": {"PVC200": {"main.material": "PVC", "main.standard": "ASTM D2241", "main.class": "SDR 21"},
                  "CI-SPUN": {"main.material": "cast iron", "main.installed": 1930}, "B": "copper"},
    "defaults": {"main.size": "6 in", "main.pressure": "60 psi", "service.size": "1 in", "main.installed": 1950}})");
  const ReadTable read = read_table("M,C,Y\nPVC 200,,\npvc-200,DR 18,1980\nci spun,,\nci spun,,1650\nB,,\n", &map);
  REQUIRE(read.faults.empty());
  REQUIRE(read.orders.size() == 5);
  for (const OrderRecord& order : read.orders) REQUIRE(order.job);
  CHECK(read.orders[0].job->main.material == Material::pvc);
  CHECK(read.orders[0].job->main.standard == "ASTM D2241");
  CHECK(read.orders[0].job->main.class_name == "SDR 21");
  CHECK(read.orders[0].job->main.installed == 1950);
  CHECK(read.orders[1].job->main.class_name == "DR 18");  // a column of its own comes first
  CHECK(read.orders[1].job->main.installed == 1980);
  CHECK(read.orders[2].job->main.installed == 1930);  // before what the map has for all
  CHECK_FALSE(read.orders[3].job->main.installed);    // and never covers up what was rejected
  CHECK(read.orders[4].job->main.class_name.empty());
}

TEST_CASE("numbers as keyboards and word processors write them") {
  for (const std::string cell :
       {"8\xE2\x80\x9D", "8 in.", "8\xC2\xA0in", "8\xE2\x80\xB3", "\xC2\xA0 8 in\xC2\xA0", "8 IN."}) {
    INFO(cell);
    const ReadTable read =
        read_table("main.material,main.size,main.pressure,service.size\nDI," + cell + ",80 psi,1 in\n");
    REQUIRE(read.orders[0].job);
    CHECK(read.orders[0].job->main.size == NominalSize::inches(8));
  }
  for (const std::string cell : {"1\xC2\xBD\xE2\x80\x9D", "1 \xC2\xBD in", "1-1/2 in.",
                                 "1\xE2\x80\x93"
                                 "1/2 in"}) {
    INFO(cell);
    const ReadTable read =
        read_table("main.material,main.size,main.pressure,service.size\nDI,8 in,80 psi," + cell + "\n");
    REQUIRE(read.orders[0].job);
    CHECK(read.orders[0].job->service.size == NominalSize::inches(1.5));
  }
  const ReadTable blank =
      read_table("main.material,main.size,main.pressure,service.size,crew\nDI,8 in,80 psi,1 in,\xC2\xA0\n");
  REQUIRE(blank.orders[0].job);
  CHECK(blank.orders[0].job->crew.empty());
}

TEST_CASE("zero is no cover and no surge unless the map says so") {
  for (const std::string path : {"main.cover [ft]", "main.surge [psi]", "main.wall [in]"}) {
    INFO(path);
    const OrderRecord order = row_with(path, "0.0");
    REQUIRE(order.job);
    CHECK(order.remarks.empty());
    CHECK_FALSE(order.job->main.cover);
    CHECK_FALSE(order.job->main.surge);
    CHECK_FALSE(order.job->main.wall);
  }
  const io::OrderMap map =
      map_of(R"({"format": 1, "columns": {"S": {"to": "main.surge", "unit": "psi", "values": {"0": "0 psi"}}},
    "defaults": {"main.material": "PVC", "main.size": "6 in", "main.pressure": "60 psi", "service.size": "1 in"}})");
  const ReadTable read = read_table("S\n0\n", &map);
  REQUIRE(read.orders[0].job);
  CHECK(read.orders[0].job->main.surge == Pressure());
}

TEST_CASE("decimal commas by map, or where every number of a semicolon table has one") {
  const std::string header = "main.material;main.size;main.pressure [psi];service.size;main.wall [in]\n";
  const auto walls = [](const ReadTable& read) {
    std::string found;
    for (const OrderRecord& order : read.orders) {
      found += order.job && order.job->main.wall
                   ? job_to_json(*order.job, UnitSystem::us, JsonStyle::compact).find("0.31") != std::string::npos ? "y"
                                                                                                                   : "n"
                   : "-";
    }
    return found;
  };
  const std::string row = "DI;8 in;82;1 in;";
  CHECK(walls(read_table(header + row + "0,31\n" + row + "\n" + row + "0,31 in\n")) == "y-y");
  // A point among them, or nothing but thousands: nobody knows.
  CHECK(walls(read_table(header + row + "0,31\n" + row + "0.31\n")) == "-y");
  CHECK(walls(read_table(header + row + "0,310\n")) == "-");
  // Behind the rows that were looked at a point is rejected.
  std::string many = header;
  for (std::size_t i = 0; i < io::TableRows::rows_ahead; ++i) many += row + "0,31\n";
  const ReadTable read = read_table(many + row + "0.31\n");
  CHECK_FALSE(read.orders.back().job->main.wall);
  CHECK(has_code(read.orders.back().remarks, "order.decimal"));
  const io::OrderMap map = map_of(R"({"format": 1, "decimal": ",", "columns": {"W": {"to": "main.wall", "unit": "in"}},
    "defaults": {"main.material": "DI", "main.size": "8 in", "main.pressure": "60 psi", "service.size": "1 in"}})");
  CHECK(walls(read_table("X,W\n1,\"0,31\"\n2,0.31\n", &map)) == "y-");
}

TEST_CASE("titles, separator lines, empty rows and twin headers of spreadsheets") {
  const std::string header = "id;main.material;main.size;main.pressure;service.size\n";
  const std::string row = "A;DI;8 in;82 psi;1 in\n";
  for (const std::string& text :
       {"sep=;\r\n" + header + row, "Work orders of May\n\n" + header + row,
        "Work orders;;;;\n;;;;\n" + header + row + ";;;;\n\xC2\xA0;;;;\n", "SEP=;\n" + header + row}) {
    INFO(text);
    const ReadTable read = read_table(text);
    REQUIRE(read.faults.empty());
    REQUIRE(read.orders.size() == 1);
    CHECK(read.orders[0].row == 1);
    CHECK(read.orders[0].id == "A");
    CHECK(read.orders[0].job);
  }
  const io::OrderMap map = map_of(R"({"format": 1, "columns": {"SIZE#1": {"to": "main.size", "unit": "in"},
    "Size#2": {"to": "service.size", "unit": "in"}, "M": "main.material"}, "defaults": {"main.pressure": "60 psi"}})");
  const ReadTable twins = read_table("Title\nM,SIZE,SIZE\nDI,8,1\n", &map);
  REQUIRE(twins.faults.empty());
  REQUIRE(twins.orders[0].job);
  CHECK(twins.orders[0].job->main.size == NominalSize::inches(8));
  CHECK(twins.orders[0].job->service.size == NominalSize::inches(1));
  const io::OrderMap one = map_of(R"({"format": 1, "columns": {"SIZE": "main.size", "MAT": "main.material"}})");
  const ReadTable told = read_table("Title\nSIZE,SIZE,MTA\n8,1,DI\n", &one);
  REQUIRE(told.faults.size() == 2);  // of the header, not of the title
  CHECK(told.faults[0].help == "name the first \"SIZE#1\" and the second \"SIZE#2\"");
}

TEST_CASE("spellings of spun, pit cast and lined pipe whose meaning is sure") {
  const auto material = [](std::string_view cell) { return Catalog::builtin().read_material(cell).material; };
  for (const std::string_view cell : {"PE80", "PE 100", "PE-63"}) CHECK(material(cell) == Material::polyethylene);
  for (const std::string_view cell :
       {"Cast Iron - Spun", "Spun Cast Iron", "CI-SPUN", "Pit Cast Iron", "spun grey iron"}) {
    INFO(cell);
    CHECK(material(cell) == Material::cast_iron);
  }
  for (const std::string_view cell : {"STCL", "MSCL", "Steel Cement Lined"}) CHECK(material(cell) == Material::steel);
  for (const std::string_view cell : {"SP", "SPCL", "CONP", "PCPP"}) CHECK_FALSE(material(cell));
}
