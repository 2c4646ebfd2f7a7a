// What others wrote reaches people as text: nothing of it paints on their screen, in whatever place it comes.
#include <nlohmann/json.hpp>

#include "cli/options.hpp"
#include "cli/program_run.hpp"
#include "io/job/job_fields.hpp"
#include "support/catch.hpp"
#include "support/painted.hpp"

using namespace mainbore;
using namespace mainbore::test;
using Json = nlohmann::json;

namespace {

void fit_for_people(const Ran& ran) {
  CHECK(not_fit(ran.out) == "");
  CHECK(not_fit(ran.err) == "");
}
void run_fit(const std::vector<std::string>& arguments, const std::string& text = {}) {
  std::string line;
  for (const std::string& argument : arguments) line += text::visible(argument) + ' ';
  INFO(line);
  const Ran ran = run(arguments, {}, text);
  CHECK(ran.status != 70);
  fit_for_people(ran);
  const auto format = std::find(arguments.begin(), arguments.end(), "--format");
  if (ran.out.empty() || format == arguments.end() || *(format + 1) != "json") return;
  CHECK_NOTHROW(Json::parse(ran.out));
}

// A job with the text in one place: as the value of a fact, or as a key.
Json with_text(const std::string& path, const std::string& text) {
  Json job = Json::parse(R"({"id": "AV-1", "main": {"material": "PVC", "size": "6 in", "pressure": "60 psi"},
    "service": {"size": "1 in"}})");
  Json* at = &job;
  for (std::string_view rest = path;;) {
    const std::size_t end = rest.find_first_of(".[");
    Json& member = (*at)[std::string(rest.substr(0, end))];
    if (end == std::string_view::npos) {
      member = text;
      return job;
    }
    const bool list = rest[end] == '[';
    if (list) member = Json::array({Json{{"what", "tap"}, {"along", "4 ft"}}});
    at = list ? &member[0] : &member;
    rest.remove_prefix(end + (list ? 3 : 1));
  }
}

const std::vector<std::vector<std::string>> plan_formats = {{},
                                                            {"--steps", "--materials"},
                                                            {"--what-if"},
                                                            {"--format", "json"},
                                                            {"--format", "html"},
                                                            {"--format", "calc"},
                                                            {"--format", "calc-html"}};

}  // namespace

TEST_CASE("a job cannot paint a go") {
  const Ran ran = run({"plan", "-"}, {}, R"({"main": {"material": "PVC", "size": "6 in", "carries": "reclaimed water",
    "pressure": "\u001b[2J\u001b[HGO - painted, by somebody else\u001b[8m"}, "service": {"size": "1 in"}})");
  CHECK(ran.status == 2);
  CHECK(ran.err.find("\"<U+001B>[2J<U+001B>[HGO") != std::string::npos);
  fit_for_people(ran);
}

TEST_CASE("no fact of a job paints, in any format") {
  for (const io::JobField& field : io::job_fields()) {
    for (const std::string& paint : painting) {
      const std::string job = with_text(std::string(field.path), paint).dump();
      const bool text = field.type == io::FieldType::text || field.type == io::FieldType::lines;
      run_fit({"plan", "-"}, job);
      if (!text) continue;
      for (std::vector<std::string> format : plan_formats) {
        format.insert(format.begin(), {"plan", "-"});
        run_fit(format, job);
      }
    }
  }
  for (const std::string& paint : painting) {
    run_fit({"plan", "-"}, Json{{paint, paint}, {"main", {{paint, 1}}}}.dump());
    run_fit({"plan", "-"}, paint);
  }
}

TEST_CASE("no order of a batch paints, in any format") {
  for (const std::string& paint : painting) {
    std::string lines;
    std::string table =
        "id,place,crew,date,note,main.material,main.size,main.pressure,service.size," + Json(paint).dump() + "\n";
    for (const char* path : {"id", "place", "crew", "date", "note", "main.class", "main.material", "main.pressure"}) {
      lines += with_text(path, paint).dump() + '\n';
    }
    const auto cell = [](std::string text) {
      for (std::size_t at = text.find('"'); at != std::string::npos; at = text.find('"', at + 2))
        text.insert(at, 1, '"');
      return '"' + text + '"';
    };
    const std::string one = cell(paint);
    table = "id,place,crew,date,note,main.material,main.size,main.pressure,service.size\n";
    for (int column = 0; column < 9; ++column) {
      const std::vector<std::string> sound = {"A", "B", "C", "2026-05-04", "D", "PVC", "6 in", "60 psi", "1 in"};
      for (int i = 0; i < 9; ++i) {
        table += (i == column ? one : sound[static_cast<std::size_t>(i)]) + (i == 8 ? "\n" : ",");
      }
    }
    for (const std::string format : {"text", "ndjson", "csv", "html"}) {
      run_fit({"batch", "--in", "ndjson", "--format", format}, lines);
      run_fit({"batch", "--in", "csv", "--format", format}, table);
      run_fit({"batch", "--in", "csv", "--format", format}, one + "\n" + one + "\n");
      run_fit({"batch", "--in", "json", "--format", format}, "[" + paint + "]");
    }
    const Json nasty = {{"type", "Feature"}, {"geometry", nullptr}, {"properties", {{"id", paint}, {paint, paint}}}};
    const std::string feature = nasty.dump(-1, ' ', false, Json::error_handler_t::replace);
    for (const std::string format : {"geojson", "ndjson", "csv"}) {
      run_fit({"batch", "--in", "geojson", "--format", format}, feature);
      run_fit({"batch", "--in", "geojson", "--format", format, "--keep", format == "csv" ? "id" : "all"}, feature);
      run_fit({"batch", "--in", "geojson", "--format", format}, "\x1E" + paint);
      run_fit({"batch", "--in", "geojson", "--format", format},
              R"({"type":"FeatureCollection","name":)" +
                  Json(paint).dump(-1, ' ', false, Json::error_handler_t::replace) + ",\"features\":[" + feature + "," +
                  paint + "]}");
    }
    run_fit({"batch", "--in", "geojson", "--columns"}, feature);
    run_fit({"batch", "--in", "csv", "--format", "ndjson", "--keep", "all"}, table + one + "\n");
    run_fit({"batch", "--in", "ndjson", "--format", "ndjson", "--keep", "all"}, lines);
    run_fit({"batch", "--in", "csv", "--columns"}, table);
    run_fit({"batch", "--in", "csv", "--columns"}, one + ",main.size\n" + one + "," + one + "\n");
    run_fit({"batch", "--in", "ndjson", "--format", "ndjson", "--full"}, lines);
  }
}

TEST_CASE("no word of the command line paints") {
  cli::Requests requests;
  const auto program = cli::command_parser(requests);
  std::size_t tried = 0;
  for (const CLI::App* command : program->get_subcommands([](const CLI::App*) { return true; })) {
    std::vector<std::string> options = {""};  // an operand
    for (const CLI::Option* option : command->get_options()) {
      if (!option->get_lnames().empty()) options.push_back("--" + option->get_lnames().front());
    }
    for (const std::string& option : options) {
      // Where a result would be written, a file of that name would be: that is for the tests of the writer.
      if (option == "--output" || (command->get_name() == "new" && option.empty())) continue;
      for (std::string paint : painting) {
        for (const std::string& before : {std::string(), std::string("main.place="), std::string("depth=")}) {
          std::vector<std::string> arguments = {command->get_name()};
          if (!option.empty()) arguments.push_back(option);
          arguments.push_back(before + paint);
          run_fit(arguments);
          ++tried;
        }
        run_fit({command->get_name(), option + paint});
      }
    }
  }
  CHECK(tried > 1000);
  for (const std::string& paint : painting) {
    run_fit({paint});
    run_fit({"--" + paint});
    run_fit({"plan", sound_job, paint});
    run_fit({"rules", "show", paint});
    run_fit({"rules", paint});
    run_fit({"rules", "diff", paint, paint});
  }
}

TEST_CASE("no name of a file paints, and records with it are JSON") {
  const Folder folder;
  const std::string job = content(sound_job);
  const std::string rules = content(source + "/examples/rules/ashby_vale.json");
  std::vector<std::string> names(painting.begin(), painting.end());
  names.emplace_back("not\xFFutf8\xC3");
  for (std::string name : names) {
    std::replace(name.begin(), name.end(), '/', '_');
    const std::string path = folder.put(name + ".json", job);
    const std::string broken = folder.put("x" + name + ".json", "{");
    const std::string settings = folder.put("s" + name, R"({"crew": "North"})");
    for (const std::string& file : {path, broken}) {
      run_fit({"plan", file});
      for (const std::string format : {"ndjson", "csv", "text", "html"}) {
        run_fit({"batch", file, file, "--in", "ndjson", "--format", format});
      }
      for (const std::string& line : {run({"batch", path, broken, "--in", "ndjson", "--format", "ndjson"}).out}) {
        for (std::size_t at = 0, end = 0; (end = line.find('\n', at)) != std::string::npos; at = end + 1) {
          CHECK_NOTHROW(Json::parse(line.substr(at, end - at)));
        }
      }
      run_fit({"batch", file, "--in", "csv", "--columns"});
      run_fit({"batch", sound_job, "--map", file});
      run_fit({"plan", sound_job, "--settings", file});
      run_fit({"plan", sound_job, "--rules", file});
      run_fit({"table", "--machine", file});
      run_fit({"rules", "check", file});
    }
    for (std::vector<std::string> format : plan_formats) {
      format.insert(format.begin(), {"plan", path, "--settings", settings});
      run_fit(format);
    }
    run_fit({"plan", folder / ("missing" + name)});
    run_fit({"plan", sound_job, "--data", folder / ("missing" + name)});
    std::filesystem::create_directories(folder / ("d" + name));
    run_fit({"plan", sound_job, "--data", folder / ("d" + name)});
    run_fit({"batch", folder / ("d" + name)});
  }
}

TEST_CASE("no text of rules, settings, maps or tables paints") {
  const Folder folder;
  const std::string data = source + "/data";
  for (const std::string& paint : painting) {
    Json rules =
        Json::parse(R"({"name": "x", "direct": {"required_threads": {"value": 1, "reason": "r", "reference": "p"},
      "largest_first": [{"material": "PVC", "class": "DR 18", "largest": "none", "why": "w", "reference": "p"}]}})");
    std::vector<Json> files = {rules, rules, rules, rules, rules};
    files[0]["name"] = paint;
    files[1]["direct"]["required_threads"]["reason"] = paint;
    files[2]["direct"]["required_threads"]["reference"] = paint;
    files[3]["direct"]["largest_first"][0]["why"] = paint;
    files[4]["direct"]["largest_first"][0]["class"] = paint;
    for (const Json& file : files) {
      const std::string path = folder.put("rules.json", file.dump());
      run_fit({"rules", "check", path});
      run_fit({"rules", "show", "--rules", path, "--format", "json"});
      run_fit({"rules", "diff", "default", path});
      run_fit({"table", "--rules", path, "--format", "csv"});
      for (std::vector<std::string> format : plan_formats) {
        format.insert(format.begin(), {"plan", sound_job, "--rules", path});
        run_fit(format);
      }
    }
    const std::string settings =
        folder.put("settings.json", Json{{"crew", paint}, {"rules", {paint}}, {paint, 1}}.dump());
    run_fit({"plan", sound_job, "--settings", settings});
    run_fit({"plan", sound_job, "--settings", folder.put("crew.json", Json{{"crew", paint}}.dump())});
    const Json map = {{"columns", {{paint, "main.size"}}}, {"id", paint}, {paint, paint}};
    run_fit({"batch", "--in", "csv", "--map", folder.put("map.json", map.dump())}, "id\nx\n");
  }
  // A table whose every text paints, one file at a time.
  for (const auto& entry : std::filesystem::recursive_directory_iterator(data)) {
    if (entry.path().extension() != ".json") continue;
    const std::string name = entry.path().lexically_relative(data).string();
    for (const std::string& paint : {painting[0], painting[1], painting[5]}) {
      std::filesystem::remove_all(folder / "data");
      std::filesystem::copy(data, folder / "data", std::filesystem::copy_options::recursive);
      std::string text = content(entry.path());
      for (const std::string key : {"title", "note", "where", "class", "standard", "basis"}) {
        for (std::size_t at = text.find('"' + key + "\": \""); at != std::string::npos;
             at = text.find('"' + key + "\": \"", at + 1)) {
          text.insert(at + key.size() + 5,
                      Json(paint).dump(-1, ' ', true).substr(1, Json(paint).dump(-1, ' ', true).size() - 2));
        }
      }
      std::ofstream(folder / ("data/" + name), std::ios::binary) << text;
      run_fit({"plan", sound_job, "--data", folder / "data"});
      run_fit({"plan", sound_job, "--steps", "--materials", "--data", folder / "data"});
      run_fit({"table", "--data", folder / "data"});
      run_fit({"identify", "--od", "9.05 in", "--data", folder / "data"});
    }
  }
}
