// Runs the cases of tests/cli/cases in process.
#include <algorithm>
#include <filesystem>
#include <sstream>

#include "cli/case_file.hpp"
#include "cli/run.hpp"
#include "support/catch.hpp"

using namespace mainbore;
using namespace mainbore::test;
namespace fs = std::filesystem;

TEST_CASE("the program does what tests/cli/cases say") {
  const fs::path top = MAINBORE_SOURCE_DIR;
  const fs::path before = fs::current_path();
  fs::current_path(top);
  std::vector<fs::path> files;
  for (const auto& entry : fs::directory_iterator(top / "tests/cli/cases")) files.push_back(entry.path());
  std::sort(files.begin(), files.end());
  std::size_t count = 0;
  for (const fs::path& file : files) {
    for (const CliCase& one : read_cases(file.string())) {
      const auto flag = [&](std::string_view name) {
        return std::find(one.flags.begin(), one.flags.end(), name) != one.flags.end();
      };
      std::istringstream in(one.in);
      std::ostringstream out;
      std::ostringstream err;
      const int status = cli::run(one.arguments, in, out, err,
                                  {flag("in-terminal"), flag("out-terminal"), flag("no-color"), flag("err-terminal")});
      INFO(one.where << ": " << one.title);
      INFO("stdout: " << out.str().substr(0, 2000));
      INFO("stderr: " << err.str());
      CHECK(status == one.exit);
      CHECK(difference(one.out, out.str()) == "");
      CHECK(difference(one.err, err.str()) == "");
      ++count;
    }
  }
  fs::current_path(before);
  CHECK(count >= 30);  // no directory was silently empty
}

TEST_CASE("the comparison of cases can fail") {
  CHECK(difference("a\nb\n", "a\nb\n").empty());
  CHECK(difference("", "").empty());
  CHECK(difference("...\n", "x\ny\n").empty());
  CHECK(difference("a\n...\nz\n", "a\nb\nc\nz\n").empty());
  CHECK(difference("a {*} c{*}\n", "a bb c\n").empty());
  CHECK_FALSE(difference("a\n", "a\nb\n").empty());
  CHECK_FALSE(difference("a\nb\n", "a\n").empty());
  CHECK_FALSE(difference("a\n...\nz\n", "a\nb\n").empty());
  CHECK_FALSE(difference("a {*} c\n", "a bb d\n").empty());
  CHECK_FALSE(difference("", "x\n").empty());
}
