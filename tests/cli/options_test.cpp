// Values of options: what cannot be is refused with what can, and nothing is taken for something.
#include "cli/options.hpp"

#include <nlohmann/json.hpp>

#include "cli/program_run.hpp"
#include "support/catch.hpp"

using namespace mainbore;
using namespace mainbore::test;

namespace {

// Every number of the JSON is one, and one that can be read at a pipe.
void all_plausible(const nlohmann::json& json) {
  if (json.is_number()) {
    CHECK(std::abs(json.get<double>()) < 1e7);
  } else if (json.is_structured()) {
    for (const auto& part : json) all_plausible(part);
  } else {
    CHECK_FALSE(json.is_null());
  }
}

}  // namespace

TEST_CASE("what no pipe, pressure or count can be is a wrong option") {
  struct Option {
    std::vector<std::string> before;
    std::vector<std::string> units;
    bool next_to_nothing = false;  // can be
  };
  const std::vector<Option> options = {
      {{"identify", "--circumference"}, {" in", " mm", " ft", " m"}},
      {{"identify", "--od"}, {" in", " mm"}},
      {{"identify", "--od", "9.05 in", "--wall"}, {" in", " mm"}},
      {{"identify", "--od", "9.05 in", "--installed"}, {""}},
      {{"table", "--pressure"}, {" psi", " kPa", " bar", " MPa"}},
      {{"table", "--from"}, {" in", " mm"}},
      {{"table", "--to"}, {" in", " mm"}},
      {{"drytap", "--trial", "depth=1 in, wrench=2, showing=3", "--threads"}, {""}},
      {{"drytap", "--trial", "depth=1 in, wrench=2, showing=3", "--threads", "14", "--wrench"}, {""}, true},
      {{"drytap", "--trial", "depth=1 in, wrench=2, showing=3", "--threads", "14", "--showing"}, {""}, true},
      {{"drytap", "--trial", "depth=1 in, wrench=2, showing=3", "--threads", "14", "--least"}, {""}},
  };
  for (const Option& option : options) {
    for (const std::string& unit : option.units) {
      for (const std::string number :
           {"1e18", "1e308", "1e309", "1e400", "-1e18", "-5", "1e-300", "1e-320", "nan", "inf", "-inf", "9e99",
            "1000000", "0.0000001", "1/0", "0x10", "1e18446744073709551616"}) {
        if (option.next_to_nothing && (number.starts_with("1e-3") || number.starts_with("0.0"))) continue;
        std::vector<std::string> arguments = option.before;
        arguments.push_back(number + unit);
        const Ran ran = run(arguments);
        INFO(arguments[0] << ' ' << arguments[arguments.size() - 2] << ' ' << arguments.back());
        CHECK(ran.status == 64);
        CHECK(ran.out.empty());
        CHECK(ran.err.find(arguments[arguments.size() - 2]) != std::string::npos);  // says which
      }
    }
  }
  for (const std::string trial : {"depth=1e18 in, wrench=2, showing=3", "depth=1 in, wrench=1e18, showing=3",
                                  "depth=1 in, wrench=2, showing=1e18", "depth=1 in, hand=1e308, wrench=2, showing=3",
                                  "depth=1e-300 in, wrench=2, showing=3", "depth=1 in, wrench=nan, showing=3"}) {
    INFO(trial);
    CHECK(run({"drytap", "--threads", "14", "--trial", trial}).status == 64);
  }
  CHECK(run({"batch", sound_job, "--jobs", "1000000"}).status == 64);
}

TEST_CASE("the ends of what can be are worked out in numbers") {
  for (const std::string od : {"0.3 in", "160 in", "4064 mm"}) {
    const Ran ran = run({"identify", "--od", od, "--format", "json"});
    CHECK((ran.status == 0 || ran.status == 1));
    all_plausible(nlohmann::json::parse(ran.out));
  }
  for (const std::string round : {"1 in", "500 in", "41 ft"}) {
    all_plausible(nlohmann::json::parse(run({"identify", "--circumference", round, "--format", "json"}).out));
  }
  for (const std::string pressure : {"1 psi", "1000 psi"}) {
    for (const std::string from : {"1/4 in", "150 in", "DN 200", "200 mm"}) {
      const Ran ran = run({"table", "--pressure", pressure, "--from", from, "--to", "150 in", "--format", "json"});
      CHECK(ran.status == 0);
      all_plausible(nlohmann::json::parse(ran.out));
    }
  }
}

TEST_CASE("an option takes the words that the fact takes") {
  CHECK(run({"identify", "--od", "9.05 in", "--carries", "potable water"}).status == 0);
  CHECK(run({"table", "--thread", "cc"}).out == run({"table", "--thread", "AWWA taper"}).out);
  CHECK(run({"table", "--from", "DN 200", "--to", "DN 200"}).out ==
        run({"table", "--from", "8 in", "--to", "8 in"}).out);
}

TEST_CASE("a word with nothing in it is wrong usage, wherever it stands") {
  cli::Requests requests;
  const auto program = cli::command_parser(requests);
  for (const CLI::App* command : program->get_subcommands([](const CLI::App*) { return true; })) {
    for (const CLI::Option* option : command->get_options()) {
      const std::string name = option->get_lnames().empty() ? std::string() : "--" + option->get_lnames().front();
      if (name == "--help" || (!name.empty() && option->get_expected_max() == 0)) continue;  // takes no value
      std::vector<std::string> arguments = {command->get_name()};
      if (!name.empty()) arguments.push_back(name);
      arguments.emplace_back();
      const Ran ran = run(arguments, {}, "{}");
      INFO(command->get_name() << ' ' << name);
      CHECK(ran.status == 64);
      CHECK(ran.out.empty());
    }
  }
  CHECK(run({"plan", ""}, {}, content(sound_job)).status == 64);
  CHECK(run({"batch", "", sound_job}).status == 64);
  CHECK(run({"rules", "check", ""}).status == 64);
  CHECK(run({""}).status == 64);
}

TEST_CASE("standard input can be one thing only") {
  for (const std::vector<std::string>& twice :
       std::vector<std::vector<std::string>>{{"batch", "-", "--map", "-"},
                                             {"batch", "-", "-"},
                                             {"batch", "-", "--rules", "-"},
                                             {"batch", "-", "--settings", "-"},
                                             {"batch", sound_job, "--rules", "-", "--rules", "-"},
                                             {"plan", "-", "--rules", "-"},
                                             {"plan", "-", "--settings", "-"},
                                             {"table", "--machine", "-", "--rules", "-"},
                                             {"rules", "check", "-", "-"},
                                             {"rules", "diff", "-", "-"}}) {
    const Ran ran = run(twice, {}, "{}");
    INFO(twice[0] << ' ' << twice[1]);
    CHECK(ran.status == 64);
    CHECK(ran.out.empty());
    CHECK(ran.err.find("standard input") != std::string::npos);
  }
}
