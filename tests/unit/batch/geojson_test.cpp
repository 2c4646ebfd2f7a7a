// GeoJSON in and out (RFC 7946, RFC 8142): every feature once, its geometry and properties as they stood.
#include <nlohmann/json.hpp>

#include "batch/batch.hpp"
#include "support/catch.hpp"
#include "unit/batch/streams.hpp"

using namespace mainbore;
using namespace mainbore::batch;
using namespace mainbore::test;
using nlohmann::json;
using nlohmann::ordered_json;

namespace {

std::string feature(const std::string& id, const std::string& geometry, const std::string& more = "") {
  return R"({"type":"Feature","geometry":)" + geometry + R"(,"properties":{"id":)" + id +
         R"(,"main.material":"DI","main_size [in]":8,"main":{"pressure":"82 psi"},"service.size":"1 in")" + more + "}}";
}

const std::string point = R"({"type":"Point","coordinates":[ -71.0500 , 42.0e0 ]})";
const std::string route = R"({"type":"LineString","coordinates":[[1,2],[3.10,4]]})";

std::string collection(const std::vector<std::string>& features, const std::string& between = ",\n") {
  std::string text = R"({"type":"FeatureCollection","name":"taps","crs":{"type":"name"},"features":[)";
  for (std::size_t i = 0; i < features.size(); ++i) text += (i > 0 ? between : "") + features[i];
  return text + "],\"more\":[1, 2]}\n";
}

std::vector<json> records(std::string_view text, BatchOptions options = {}, std::size_t piece = 1u << 16) {
  std::string out;
  (void)plan_orders(source_of(text, piece), InputFormat::geojson, "orders", planner_under(default_rules()), options,
                    [&](Piece& given) { out += given.out; });
  std::vector<json> list;
  for (const std::string& record : lines_of(out)) list.push_back(json::parse(record));
  return list;
}

// The features and what stands around them.
struct Given {
  std::string head, out, tail;
};
Given given_back(std::string_view text, BatchOptions options = {}) {
  options.format = BatchFormat::features;
  Given given;
  (void)plan_orders(source_of(text), InputFormat::geojson, "orders", planner_under(default_rules()), options,
                    [&](Piece& piece) {
                      given.head += piece.head;
                      given.out += piece.out;
                      given.tail += piece.tail;
                    });
  return given;
}

}  // namespace

TEST_CASE("the properties of features are columns, however the features stand") {
  const std::string a = feature("1", point);
  const std::string b = feature("\"AV-2\"", route);
  std::string pretty = json::parse(a).dump(2) + '\n' + json::parse(b).dump(2);
  for (const std::string& text : {collection({a, b}), "\xEF\xBB\xBF \n" + collection({a, b}), a + '\n' + b + '\n',
                                  "\x1E" + a + "\n\x1E" + b + "\n", "\n\x1E" + json::parse(a).dump(2) + "\n\x1E" + b,
                                  pretty, R"({"features":[)" + a + "," + b + R"(],"type":"FeatureCollection"})"}) {
    INFO(text);
    for (const std::size_t piece : {std::size_t{1}, std::size_t{7}, text.size()}) {
      const auto list = records(text, {}, piece);
      REQUIRE(list.size() == 2);
      CHECK(list[0]["id"] == "1");
      CHECK(list[0]["verdict"] == "hold");
      CHECK_FALSE(list[0].contains("kept"));
      CHECK(list[1]["id"] == "AV-2");
      CHECK(list[1]["row"] == 2);
    }
  }
  // Where no property is the id, the feature's own is.
  const auto own = records(R"({"type":"Feature","id":77,"geometry":null,"properties":{"main":{}}})");
  REQUIRE(own.size() == 1);
  CHECK(own[0]["id"] == "77");
}

TEST_CASE("a property that is no fact makes each order unreadable, in the same words, or is carried") {
  const std::string zone = R"(,"ZONE":"KIT 4","main.sise":"6 in")";
  const std::string text =
      collection({feature("1", point, zone), feature("2", route, zone), feature("3", route)}, " ,\n ");
  const auto list = records(text);
  REQUIRE(list.size() == 3);
  REQUIRE(list[0]["reasons"].size() == 2);
  CHECK(list[0]["reasons"][1]["help"].get<std::string>().find("did you mean main.size?") != std::string::npos);
  for (const std::size_t reason : {0u, 1u}) {
    CHECK(list[1]["reasons"][reason]["message"] == list[0]["reasons"][reason]["message"]);
    CHECK(list[1]["reasons"][reason]["help"] == list[0]["reasons"][reason]["help"]);
  }
  CHECK(list[2]["verdict"] == "hold");

  io::KeepColumns keep;
  keep.all = true;  // but what is nearly a fact is told
  BatchOptions options;
  options.keep = &keep;
  const auto kept = records(text, options);
  REQUIRE(kept.size() == 3);
  CHECK(kept[1]["reasons"].size() == 1);
  keep = {false, {"zone", "main.sise"}};
  for (std::size_t i = 0; i < 2; ++i) CHECK(records(text, options)[i]["verdict"] == "hold");
}

TEST_CASE("the first bytes tell GeoJSON") {
  CHECK(format_of(R"({"type":"FeatureCollection")") == InputFormat::geojson);
  CHECK(format_of("{ \"type\" :\n\"Feature\"") == InputFormat::geojson);
  CHECK(format_of("{\"features\": [") == InputFormat::geojson);
  CHECK(format_of("\x1E{") == InputFormat::geojson);
  CHECK(format_of(R"({"type":"valve")") == InputFormat::ndjson);
  CHECK(format_of(R"({"type":7)") == InputFormat::ndjson);
  for (const std::string_view start :
       {"", " ", "{", "{ ", "{\"ty", "{\"type\"", "{\"type\":", "{\"type\":\"Feat", "\xEF"}) {
    INFO(start);
    CHECK_FALSE(tells_format(start));
  }
  for (const std::string_view start : {"[", "i", "{\"type\":\"Feature\"", "{\"id\":7", "{}", "\x1E"}) {
    CHECK(tells_format(start));
  }
}

TEST_CASE("a feature that is broken loses only itself") {
  const std::string good = feature("1", point);
  const std::vector<std::string> faults = {
      R"({"type":"Feature","geometry":{"type":"Point","coordinates":[1,2},"properties":{"id":2}})",
      R"({"type":"Feature","geometry":{"type":"Point","coordinates":[1,2]},"properties":{"id":"2})",
      R"({"type":"Feature","geometry":{"type":"Point","coordinates":[1,2]},"properties":{"id":2)",
      R"({"type":"Feature","geometry":{"type":"Point","coordinates":[1,2]}},"properties":{"id":2}})",
      R"({"type":"Feature","geometry":{"type":"GeometryCollection","geometries":[{"type":"Point"},{"type":"Point}]},"properties":{"id":2}})",
      R"({"type":"Feature","geometry":[1,,2],"properties":{"id":2}})",
      R"({"type":"Polygon","coordinates":[]})",
      R"("a text")",
      R"({"type":"Feature","geometry":null,"properties":null})",
      R"({"type":"Feature","geometry":null})",
      R"({"type":"Feature","geometry":null,"properties":{},"properties":{}})"};
  for (const std::string& fault : faults) {
    INFO(fault);
    const auto list = records(collection({good, fault, feature("3", route), feature("4", route)}));
    REQUIRE(list.size() >= 4);
    CHECK(list[0]["verdict"] == "hold");
    CHECK(list[1]["verdict"] == "unreadable");
    CHECK(list[list.size() - 2]["id"] == "3");
    CHECK(list[list.size() - 2]["verdict"] == "hold");
    CHECK(list.back()["id"] == "4");
    CHECK(list.back()["verdict"] == "hold");
    for (const std::string& text :
         {good + '\n' + fault + '\n' + good + '\n', "\x1E" + good + "\n\x1E" + fault + "\n\x1E" + good + "\n"}) {
      const auto others = records(text);
      REQUIRE(others.size() == 3);
      CHECK(others[1]["verdict"] == "unreadable");
      CHECK(others[2]["verdict"] == "hold");
    }
  }
}

TEST_CASE("a collection that does not end as it should is a record of its own") {
  const std::string whole = collection({feature("1", point)});
  const auto cut = records(whole.substr(0, whole.rfind(']') + 1 - 9));
  REQUIRE_FALSE(cut.empty());
  CHECK(cut.back()["verdict"] == "unreadable");
  CHECK(records(whole).size() == 1);
  CHECK(records(R"({"type":"FeatureCollection","features":[]})").empty());
  CHECK(records(R"({"type":"FeatureCollection","name":01,"features":[)" + feature("1", point) + "]}").size() == 2);
}

TEST_CASE("a feature of several lines that is cut off before it has said anything is one record") {
  CHECK(records("{\n\"type\":\n\"Feature\"\n").size() == 1);
  CHECK(records("{\"type\":\"Feature\"").size() == 1);
}

TEST_CASE("features come back as they stood, with what was decided among their properties") {
  const std::string kept = R"(,"ZONE" : "K\u00e9", "x":[1, 2.50,{"a":"}"}],"note":"n")";
  io::KeepColumns keep;
  keep.names = {"ZONE", "x"};
  const std::vector<std::string> features = {
      feature("1", point, kept),
      R"({ "properties" :{"id":2,"main.material":"lead"}, "bbox":[1,2,3,4] , "geometry": )" + route +
          R"( ,"type":"Feature","id":"f"})",
      R"({"type":"Feature","geometry":)" + route + R"(,"properties":null,"foreign":{"a":1}})"};
  io::KeepColumns all;
  all.all = true;
  BatchOptions options;
  options.keep = &all;
  const Given given = given_back(collection(features), options);
  const std::string text =
      R"({"type":"FeatureCollection",)" + given.head + "\"features\":[" + given.out.substr(1) + "]" + given.tail + "}";
  const json back = json::parse(text);
  CHECK(back["name"] == "taps");
  CHECK(back["crs"]["type"] == "name");
  CHECK(given.tail.find("\"more\":[1, 2]") != std::string::npos);
  REQUIRE(back["features"].size() == 3);
  for (std::size_t i = 0; i < features.size(); ++i) {
    const json before = json::parse(features[i]);
    json after = back["features"][i];
    CHECK(after["geometry"] == before["geometry"]);
    if (before["properties"].is_object()) {
      for (const auto& [name, value] : before["properties"].items()) CHECK(after["properties"][name] == value);
    }
    after["properties"] = before["properties"];
    CHECK(after == before);
  }
  // Byte for byte, numbers and spaces too.
  CHECK(given.out.find(point) != std::string::npos);
  CHECK(given.out.find(R"("x":[1, 2.50,{"a":"}"}])") != std::string::npos);
  CHECK(given.out.find(R"("ZONE":"K\u00e9")") != std::string::npos);
  CHECK(given.out.find(R"( ,"type":"Feature","id":"f"})") != std::string::npos);
  CHECK(back["features"][0]["properties"]["verdict"] == "hold");
  CHECK(back["features"][0]["properties"]["method"] == "direct");
  CHECK(back["features"][0]["properties"]["tap_in"] == 1);
  CHECK(back["features"][0]["properties"]["limit_psi"] == 90);
  CHECK(back["features"][1]["properties"]["verdict"] == "unreadable");
  CHECK(back["features"][2]["properties"]["verdict"] == "unreadable");

  // With names only those, of a feature that another member makes unreadable as well.
  options.keep = &keep;
  const json some = json::parse("[" + given_back(features[0], options).out.substr(1) + "]");
  CHECK(some[0]["properties"]["ZONE"] == "Ké");
  CHECK_FALSE(some[0]["properties"].contains("note"));
  CHECK(some[0]["properties"]["verdict"] == "hold");
}

TEST_CASE("a property with the name of a result is never taken for it") {
  io::KeepColumns all;
  all.all = true;
  BatchOptions options;
  options.keep = &all;
  const std::string first = given_back(feature("1", point, R"(,"verdict":"go","holds":7)"), options).out.substr(2);
  const json once = json::parse(first);
  CHECK(once["properties"]["verdict"] == "hold");
  CHECK(once["properties"]["own_verdict"] == "go");
  CHECK(once["properties"]["own_holds"] == 7);
  const std::string again = given_back(first, options).out.substr(2);
  CHECK(json::parse(again)["properties"]["own_verdict"] == "go");
  CHECK(again.find("\"verdict\"") == again.rfind("\"verdict\""));
}

TEST_CASE("features are the same with any number of threads") {
  std::vector<std::string> features;
  for (int i = 0; i < 2000; ++i) {
    features.push_back(i % 97 == 0 ? R"({"type":"Feature","geometry":[1})"
                                   : feature(std::to_string(i), i % 2 == 0 ? point : route));
  }
  const std::string text = collection(features);
  const Given one = given_back(text);
  BatchOptions options;
  options.jobs = 4;
  const Given four = given_back(text, options);
  CHECK(one.out == four.out);
  CHECK(one.tail == four.tail);
}

TEST_CASE("a file that is no text is named for what it is") {
  using namespace std::string_view_literals;
  REQUIRE(foreign_file("SQLite format 3\0..."sv));
  CHECK(foreign_file("SQLite format 3\0..."sv)->pipe_format == "GeoJSON");
  CHECK(foreign_file("PK\x03\x04...."sv)->pipe_format == "CSV");
  CHECK(foreign_file("\0\0\x27\x0A...."sv)->what == "a shapefile");
  CHECK_FALSE(foreign_file("PIPE_ID,SIZE"sv));
  CHECK_FALSE(foreign_file(""sv));
  CHECK(may_be_foreign("PK"sv));
  CHECK_FALSE(may_be_foreign("PI"sv));
  CHECK_FALSE(may_be_foreign("{"sv));
}
