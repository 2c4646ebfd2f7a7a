// The result of a command, written as it is made.
#pragma once

#include <fstream>
#include <string>
#include <string_view>

#include "cli/console.hpp"

namespace mainbore::cli {

// To standard output, or to `path` where it is neither empty nor "-": under a temporary name beside it first, then
// renamed by finish(), so that nobody ever sees half a file. Without finish() the file is as it was.
class ResultWriter {
 public:
  // Throws Stop where the file cannot be written.
  ResultWriter(const std::string& path, Console& console);
  ~ResultWriter();
  ResultWriter(const ResultWriter&) = delete;
  ResultWriter& operator=(const ResultWriter&) = delete;

  // Throws Stop when the write failed: quietly when the reader went away.
  void write(std::string_view text);
  void finish();

 private:
  std::ostream* out_;
  std::ofstream file_;
  std::string name_;    // for messages
  std::string target_;  // what the file becomes; empty: there is nothing to rename
};

// Whether the file would be replaced by a result that goes to `output`, or by what stands beside it meanwhile.
[[nodiscard]] bool replaces(const std::string& output, const std::string& file);

}  // namespace mainbore::cli
