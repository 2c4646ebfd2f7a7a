// A faulty table stops the program with a message that names file, series, row and fault.
#include <filesystem>
#include <fstream>
#include <iterator>
#include <nlohmann/json.hpp>
#include <set>
#include <string>

#include "mainbore/catalog.hpp"
#include "mainbore/catalog_error.hpp"
#include "support/catch.hpp"

using namespace mainbore;

namespace {

DataFiles sound_files() {
  namespace fs = std::filesystem;
  const fs::path data = fs::path(MAINBORE_SOURCE_DIR) / "data";
  DataFiles files;
  for (const auto& entry : fs::recursive_directory_iterator(data)) {
    if (entry.path().extension() != ".json") continue;
    std::ifstream in(entry.path(), std::ios::binary);
    files[fs::relative(entry.path(), data).generic_string()] = std::string(std::istreambuf_iterator<char>(in), {});
  }
  return files;
}

const DataFiles& sound() {
  static const DataFiles files = sound_files();
  return files;
}

// The message for the sound files with one text of one of them changed.
std::string fault_with(const std::string& file, const std::string& from, const std::string& to) {
  DataFiles files = sound();
  std::string& text = files.at(file);
  const std::size_t at = text.find(from);
  REQUIRE(at != std::string::npos);
  text.replace(at, from.size(), to);
  try {
    const Catalog catalog(files);
  } catch (const CatalogError& error) {
    return error.what();
  }
  return "no fault";
}

std::string fault_of(const DataFiles& files) {
  try {
    const Catalog catalog(files);
  } catch (const CatalogError& error) {
    return error.what();
  }
  return "no fault";
}

// A small pipe table in place of the real one.
std::string fault_of_row(const std::string& row) {
  DataFiles files = sound();
  files["pipes/steel.json"] =
      R"({"series": [{"id": "test", "material": "steel", "standard": "S", "title": "T", "basis": "B",
    "laid": {"from": null, "to": null, "source": "common-practice", "how": "common practice"},
    "provenance": {
      "od": {"source": "recollection", "how": "memory"}, "od_minus": {"source": "recollection", "how": "memory"},
      "od_plus": {"source": "recollection", "how": "memory"}, "wall": {"source": "recollection", "how": "memory"},
      "wall_minus": {"source": "recollection", "how": "memory"}, "rating": {"source": "recollection", "how": "memory"}},
    "columns": ["size", "class", "also", "od", "od_minus", "od_plus", "wall", "wall_minus", "rating", "dr"],
    "rows": [["4", "STD", [], 4.5, 0.04, 0.04, 0.237, 0.03, null, null], )" +
      row + "]}]}";
  return fault_of(files);
}

using Catch::Matchers::StartsWith;

}  // namespace

TEST_CASE("the sound files load, and the built-in tables are the same") {
  CHECK(fault_of(sound()) == "no fault");
  const Catalog from_disk(sound());
  CHECK(from_disk.hash() == Catalog::builtin().hash());
  CHECK(from_disk.pipes().size() == Catalog::builtin().pipes().size());
}

TEST_CASE("the hash sees any byte, and which file it is in") {
  DataFiles files = sound();
  files["edition.json"] += ' ';
  CHECK(Catalog(files).hash() != Catalog::builtin().hash());
  DataFiles moved = sound();
  moved["pipes/z.json"] = R"({"series": []})";
  CHECK(Catalog(moved).hash() != Catalog::builtin().hash());
}

TEST_CASE("a broken file is named") {
  DataFiles files = sound();
  files.erase("threads.json");
  CHECK(fault_of(files) == "threads.json: the file is missing");

  for (const char* const name : {"sources.json", "pipes/pvc.json", "machines.json", "materials.json"}) {
    files = sound();
    files[name].resize(files[name].size() / 2);
    CHECK_THAT(fault_of(files), StartsWith(std::string(name) + ": not valid JSON: "));
  }
  files = sound();
  files["edition.json"] = "[]";
  CHECK(fault_of(files) == "edition.json: the file is not an object");
}

TEST_CASE("a file that nothing reads is named, and each file there is read") {
  DataFiles files = sound();
  files["stop.json"] = "{}";
  CHECK(fault_of(files) == "stop.json: nothing reads this file");
  CHECK(fault_with("stops.json", "cast leaded brass", "cast brass") == "stops.json: unknown key \"cast brass\"");
}

TEST_CASE("provenance must be there and be known") {
  CHECK(fault_with("pipes/pvc.json", R"("source": "awwa-c900-16")", R"("source": "awwa-c900-61")") ==
        "pipes/pvc.json: series pvc-c900: unknown source \"awwa-c900-61\"");
  CHECK_THAT(fault_with("pipes/pvc.json", R"("how": "published")", R"("how": "read somewhere")"),
             StartsWith("pipes/pvc.json: series pvc-c900: \"read somewhere\" does not say how a number was had"));
  CHECK(fault_with("pipes/pvc.json", R"("od_minus": {)", R"("od_mines": {)") ==
        "pipes/pvc.json: series pvc-c900: unknown key \"od_mines\"");
  CHECK(fault_with("sources.json", R"("recollection")", R"("common-practice")") ==
        "sources.json: source \"common-practice\": the id stands twice");
}

TEST_CASE("a row that no pipe can be is refused") {
  const std::string where = "pipes/steel.json: series test, row 2";
  CHECK(fault_of_row(R"(["6", "STD", [], 6.625, 0.06, 0.06, 0.28, 0.03, null, null])") == "no fault");
  CHECK(fault_of_row(R"(["6", "STD", [], 6.625, 0.06])") == where + ": 5 cells under 10 columns");
  CHECK(fault_of_row(R"([6, "STD", [], 6.625, 0.06, 0.06, 0.28, 0.03, null, null])") == where + ": size is not a text");
  CHECK(fault_of_row(R"(["6 in", "STD", [], 6.625, 0.06, 0.06, 0.28, 0.03, null, null])") ==
        where + ": size is not a nominal size: \"6 in\"");
  const std::string row = where + " (6 STD): ";
  CHECK(fault_of_row(R"(["6", "STD", [], "6.625", 0.06, 0.06, 0.28, 0.03, null, null])") == row + "od is not a number");
  CHECK(fault_of_row(R"(["6", "STD", [], 6.625, 0.06, 0.06, 3.32, 0.03, null, null])") ==
        row + "twice the wall is not less than the outside diameter");
  CHECK(fault_of_row(R"(["6", "STD", [], 66.25, 0.06, 0.06, 0.28, 0.03, null, null])") ==
        row + "an outside diameter in inches does not lie so far from the nominal size");
  CHECK(fault_of_row(R"(["6", "STD", [], 168.3, 1.6, 1.6, 7.1, 0.9, null, null])") ==
        row + "an outside diameter in inches does not lie so far from the nominal size");
  CHECK(fault_of_row(R"(["6", "STD", [], 6.625, null, 0.06, 0.28, 0.03, null, null])") ==
        row + "an outside diameter needs its tolerances");
  CHECK(fault_of_row(R"(["6", "STD", [], 6.625, 0.06, 0.06, 0.28, null, null, null])") ==
        row + "a wall needs its tolerance");
  CHECK(fault_of_row(R"(["6", "STD", [], 6.625, 0.06, -0.06, 0.28, 0.03, null, null])") ==
        row + "a tolerance is below zero");
  CHECK(fault_of_row(R"(["6", "STD", [], 6.625, 0.06, 0.06, 0.28, 0.28, null, null])") ==
        row + "the wall's tolerance leaves no wall");
  CHECK(fault_of_row(R"(["6", "STD", [], 6.625, 0.06, 0.06, 0.28, 0.03, 0, null])") ==
        row + "rating: 0 is out of range; from 1 to 5000 psi");
  CHECK(fault_of_row(R"(["6", "STD", [], 6.625, 0.06, 0.06, 0.28, 0.03, null, 18])") ==
        row + "the wall is not the outside diameter over the dimension ratio");
  CHECK(fault_of_row(R"(["4", "STD", [], 4.5, 0.04, 0.04, 0.3, 0.03, null, null])") ==
        where + " (4 STD): the size and class stand twice");
}

TEST_CASE("an earlier class is a class of the series, and never the higher") {
  const std::string where = "pipes/pvc.json: series pvc-c900, row 2: ";
  const std::string row =
      R"([18, "Class 150", ["c900 class 150", "class 150 dr 18", "dr 18 class 150", "dr 18 cl 150"], 150, 34])";
  CHECK(fault_with("pipes/pvc.json", row, R"([19, "Class 150", [], 150, 34])") ==
        where + "the series has no pipe of this dimension ratio");
  CHECK(fault_with("pipes/pvc.json", row, R"([18, "Class 150", [], 210, 34])") ==
        where + "an earlier rating with its surge is over the rating of today");
  CHECK(fault_with("pipes/pvc.json", R"("until": 2007)", R"("until": null)") ==
        "pipes/pvc.json: series pvc-c900: \"until\" is not a year");
}

TEST_CASE("plausible readings are ranges, and need a class") {
  const std::string where = "pipes/asbestos_cement.json: series ac-c400: ";
  CHECK(fault_with("pipes/asbestos_cement.json", "[1.07, 1.35]", "[1.35, 1.07]") ==
        where + "od_over_size is not a range");
  CHECK(fault_with("pipes/asbestos_cement.json", "[1.07, 1.35]", "[1.07]") == where + "od_over_size is not a range");
  CHECK(fault_with("pipes/asbestos_cement.json", "null, 100, null", "null, null, null") ==
        where + "a pipe without a class has no plausible wall");
}

TEST_CASE("other tables are checked as well") {
  CHECK(fault_with("threads.json", "0.98887", "0.98778") ==
        "threads.json: thread \"npt\", row 5 (3/4): e1 is not what the thread's formula gives");
  CHECK(fault_with("materials.json", R"("ductile iron")", R"("ductile irn")") ==
        "materials.json: material \"ductile irn\": a main is not made of it");
  CHECK(fault_with("material_names.json", R"("di", )", R"("D.I.", )") ==
        "material_names.json: \"ductile iron\": \"D.I.\" is not in the normal spelling \"di\"");
  CHECK_THAT(
      fault_with("temperature_factors.json", "[80, 0.88]", "[80, 1.88]"),
      StartsWith(
          "temperature_factors.json: temperature factors of \"PVC\", row 2: factor: 1.88 is out of range; from 0.01"));
  CHECK_THAT(fault_with("metric_sizes.json", "[20, ", "[15, "), StartsWith("metric_sizes.json, row 2: dn must be"));
  CHECK(fault_with("machines.json", R"("hand_limit": "90 psi")", R"("hand_limit": "90")") ==
        "machines.json: machine \"unspecified\": \"hand_limit\": \"90\" has no unit; write a pressure with its unit, "
        "such "
        "as \"82 psi\" or \"565 kPa\"");
  CHECK(fault_with("machines.json", R"("hand_limit": "90 psi")", R"("hand_limit": "110 psi")") ==
        "machines.json: machine \"unspecified\": a feed limit is over what the body holds");
  CHECK(fault_with("machines.json", R"("unspecified")", R"("other")") ==
        "machines.json: machine \"other\": the first machine, and no other, is \"unspecified\"");
}

namespace {

using Json = nlohmann::ordered_json;

// The numbers of a file: in each table the first and the last of each column, and all that stand in no table.
void numbers_of(const Json& at, const Json::json_pointer& path,
                std::vector<std::pair<Json::json_pointer, std::string>>& found) {
  if (at.is_object() && at.contains("columns") && at.contains("rows")) {
    const Json& rows = at["rows"];
    for (std::size_t column = 0; column < at["columns"].size(); ++column) {
      std::vector<std::size_t> with_number;
      for (std::size_t row = 0; row < rows.size(); ++row) {
        if (rows[row][column].is_number()) with_number.push_back(row);
      }
      if (with_number.empty()) continue;
      for (const std::size_t row : std::set<std::size_t>{with_number.front(), with_number.back()}) {
        found.emplace_back(path / "rows" / row / column, at["columns"][column].get<std::string>());
      }
    }
  }
  if (at.is_number()) found.emplace_back(path, path.back());
  if (at.is_object()) {
    for (const auto& [key, value] : at.items()) {
      if (key != "rows" && key != "columns") numbers_of(value, path / key, found);
    }
  } else if (at.is_array()) {
    for (std::size_t i = 0; i < at.size(); ++i) numbers_of(at[i], path / i, found);
  }
}

}  // namespace

TEST_CASE("no number of a table can be anything") {
  // Kept for readers of the tables; the program reads none of them.
  const std::set<std::string> not_read = {"angle_deg",
                                          "height_in_pitches",
                                          "vanish_pitches",
                                          "tolerance_turns",
                                          "wrench_turns",
                                          "tap_projection_tolerance",
                                          "spread",
                                          "cold",
                                          "hot",
                                          "lb_per_100000_gal_per_mg_l",
                                          "kg_per_100_m3_per_mg_l",
                                          "density_slug_ft3",
                                          "mu_1e-5_lbf_s_ft2",
                                          "vapor_psi",
                                          "degC",
                                          "nu_cSt",
                                          "density_g_cm3",
                                          "low",
                                          "high"};
  const std::set<std::string> files_not_read = {"stops.json"};
  std::size_t tried = 0;
  for (const auto& [name, text] : sound()) {
    if (name.starts_with("rules/") || files_not_read.contains(name)) continue;
    std::vector<std::pair<Json::json_pointer, std::string>> numbers;
    const Json file = Json::parse(text);
    numbers_of(file, Json::json_pointer(), numbers);
    for (const auto& [path, column] : numbers) {
      if (not_read.contains(column) || (name == "fittings.json" && path.to_string().starts_with("/illinois"))) continue;
      for (const double wrong : {1e18, -1e18, 1e300, 1e-300, -1.0}) {
        Json changed = file;
        changed[path] = wrong;
        // A tolerance may be next to nothing.
        if (wrong == 1e-300 && (column.ends_with("_minus") || column.ends_with("_plus") || column == "taper")) continue;
        DataFiles files = sound();
        files[name] = changed.dump();
        const std::string fault = fault_of(files);
        INFO(name << ' ' << path.to_string() << " (" << column << ") = " << wrong << ": " << fault);
        CHECK_THAT(fault, StartsWith(name));
        ++tried;
      }
    }
  }
  CHECK(tried > 500);
}

TEST_CASE("a table that says nothing is not a table that allows everything") {
  DataFiles files = sound();
  files["temperature_factors.json"] = "{}";
  CHECK(fault_of(files) ==
        "temperature_factors.json: no temperature factors of \"PVC\": without them it would be rated as if cold");
  for (const auto& [name, text] : sound()) {
    if (name == "stops.json" || name.ends_with("/sources.json") || name.starts_with("pipes/")) continue;
    INFO(name);
    files = sound();
    files.erase(name);
    CHECK(fault_of(files) == name + ": the file is missing");
    // The contents of rules and field tests are read when they are asked for.
    if (name == "rules/default.json" || name == "field_tests.json") continue;
    files[name] = "{}";
    CHECK_FALSE(fault_of(files) == "no fault");
  }
}

TEST_CASE("a fault of somebody's table is shown on one line, and cannot be painted with") {
  const std::string fault = fault_with("pipes/pvc.json", R"("source": "awwa-c900-16")", R"("source": "\u001b[2J\ngo")");
  CHECK(fault == "pipes/pvc.json: series pvc-c900: unknown source \"<U+001B>[2J<U+000A>go\"");
}
