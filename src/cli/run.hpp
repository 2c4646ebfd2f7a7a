// The whole program but for the process: arguments and streams in, exit status out. Tests call it in process.
#pragma once

#include <iosfwd>
#include <optional>
#include <span>
#include <string>

#include "cli/files_read.hpp"

namespace mainbore::cli {

struct Environment {
  bool in_is_terminal = false;
  bool out_is_terminal = false;
  bool no_color = false;  // NO_COLOR is set
  bool err_is_terminal = false;
  std::string config_home = {};  // XDG_CONFIG_HOME
  std::string home = {};         // HOME
  // The files that standard input and output are, where a shell made them such.
  std::optional<FileIdentity> in_file = {};
  std::optional<FileIdentity> out_file = {};
  int out_columns = 0;  // of the terminal written to; 0: none, or it does not tell
};

// `arguments` without the program's name. Writes the result to `out` and everything else to `err`; `out` stays empty
// when something went wrong. Never throws.
[[nodiscard]] int run(std::span<const std::string> arguments, std::istream& in, std::ostream& out, std::ostream& err,
                      const Environment& environment);

}  // namespace mainbore::cli
