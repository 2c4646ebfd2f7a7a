// The process: its arguments, its streams, its exit status.
#include <unistd.h>

#include <cstdlib>
#include <iostream>
#include <string>
#include <vector>

#include "cli/run.hpp"

int main(int argc, char** argv) {
  std::ios::sync_with_stdio(false);
  std::cin.tie(nullptr);
  mainbore::cli::Environment environment;
  environment.in_is_terminal = isatty(STDIN_FILENO) != 0;
  environment.out_is_terminal = isatty(STDOUT_FILENO) != 0;
  environment.err_is_terminal = isatty(STDERR_FILENO) != 0;
  const char* const no_color = std::getenv("NO_COLOR");
  environment.no_colour = no_color != nullptr && *no_color != '\0';
  const std::vector<std::string> arguments(argv + (argc > 0 ? 1 : 0), argv + argc);
  return mainbore::cli::run(arguments, std::cin, std::cout, std::cerr, environment);
}
