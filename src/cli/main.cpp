// The process: its arguments, its streams, its exit status.
#include <fcntl.h>
#include <sys/ioctl.h>
#include <unistd.h>

#include <algorithm>
#include <csignal>
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

// A file opened later must not come to be standard output or error because that was closed. Reading and writing there
// fails as it would.
void keep_standard_descriptors() {
  for (const int descriptor : {STDIN_FILENO, STDOUT_FILENO, STDERR_FILENO}) {
    if (::fcntl(descriptor, F_GETFD) == -1) {
      [[maybe_unused]] const int kept = ::open("/dev/null", descriptor == STDIN_FILENO ? O_WRONLY : O_RDONLY);
    }
  }
}

// A wider page is no easier to read.
int columns_of_terminal() {
  constexpr int widest = 100;
  winsize size{};
  if (isatty(STDOUT_FILENO) == 0 || ioctl(STDOUT_FILENO, TIOCGWINSZ, &size) != 0) return 0;
  return std::min<int>(size.ws_col, widest);
}

}  // namespace

int main(int argc, char** argv) {
  keep_standard_descriptors();
  std::signal(SIGXFSZ, SIG_IGN);  // a file grown too large is a write that fails
  std::ios::sync_with_stdio(false);
  std::cin.tie(nullptr);
  mainbore::cli::Environment environment;
  environment.in_is_terminal = isatty(STDIN_FILENO) != 0;
  environment.out_is_terminal = isatty(STDOUT_FILENO) != 0;
  environment.err_is_terminal = isatty(STDERR_FILENO) != 0;
  environment.no_color = !variable("NO_COLOR").empty();
  environment.config_home = variable("XDG_CONFIG_HOME");
  environment.home = variable("HOME");
  environment.in_file = mainbore::cli::regular_file(STDIN_FILENO);
  environment.out_file = mainbore::cli::regular_file(STDOUT_FILENO);
  environment.out_columns = columns_of_terminal();
  const std::vector<std::string> arguments(argv + (argc > 0 ? 1 : 0), argv + argc);
  return mainbore::cli::run(arguments, std::cin, std::cout, std::cerr, environment);
}
