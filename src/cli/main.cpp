// The process: its arguments, its streams, its exit status.
#include <unistd.h>

#include <cstdlib>
#include <iostream>
#include <string>
#include <vector>

#include "cli/run.hpp"

namespace {

std::string variable(const char* name) {
  const char* const value = std::getenv(name);
  return value == nullptr ? std::string() : std::string(value);
}

}  // namespace

int main(int argc, char** argv) {
  std::ios::sync_with_stdio(false);
  std::cin.tie(nullptr);
  mainbore::cli::Environment environment;
  environment.in_is_terminal = isatty(STDIN_FILENO) != 0;
  environment.out_is_terminal = isatty(STDOUT_FILENO) != 0;
  environment.err_is_terminal = isatty(STDERR_FILENO) != 0;
  environment.no_colour = !variable("NO_COLOR").empty();
  environment.config_home = variable("XDG_CONFIG_HOME");
  environment.home = variable("HOME");
  const std::vector<std::string> arguments(argv + (argc > 0 ? 1 : 0), argv + argc);
  return mainbore::cli::run(arguments, std::cin, std::cout, std::cerr, environment);
}
