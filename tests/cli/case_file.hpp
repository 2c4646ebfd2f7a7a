// Command-line tests as data. A file holds cases:
//
//     # A bare number is refused.              why; names the test
//     $ plan - --set main.size=8               arguments as a shell splits them
//     % terminal                               optional: in-terminal, out-terminal, err-terminal, no-color
//     --- stdin                                optional sections; one that is missing is empty
//     {"main": ...}
//     --- exit 2
//     --- stdout
//     --- stderr
//     ...                                      a line of three dots: any lines, or none
//     standard input:1:1: error[{*}            {*}: any text within the line
//
// Lines are compared whole. Paths in arguments are seen from the top of the source tree.
#pragma once

#include <string>
#include <string_view>
#include <vector>

namespace mainbore::test {

struct CliCase {
  std::string where;  // "plan.txt:12"
  std::string title;
  std::vector<std::string> arguments;
  std::vector<std::string> flags;
  std::string in;
  int exit = 0;
  std::string out;
  std::string err;
};

// Throws std::runtime_error naming the file and line of what it cannot understand.
std::vector<CliCase> read_cases(const std::string& path);

// Empty where the text is as expected; else what differs.
std::string difference(std::string_view expected, std::string_view found);

}  // namespace mainbore::test
