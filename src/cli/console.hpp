// What a command works with: streams, files, and the one way to give up.
#pragma once

#include <iosfwd>
#include <memory>
#include <stdexcept>
#include <string>
#include <string_view>
#include <vector>

#include "cli/exit_status.hpp"
#include "cli/files_read.hpp"
#include "cli/run.hpp"
#include "mainbore/catalog.hpp"
#include "mainbore/diagnostic.hpp"
#include "mainbore/planner.hpp"
#include "mainbore/rules.hpp"

namespace mainbore::cli {

struct Console {
  std::istream& in;
  std::ostream& out;
  std::ostream& err;       // shows what others wrote, and cannot be painted on by it
  std::ostream& progress;  // standard error as it is, for the line that is written over itself
  const Environment& environment;
  std::string output = {};  // the file that the result goes to; empty or "-": standard output
  FilesRead files_read = {};
};

// Ends the command with a message and a status. An empty message ends it quietly: what there is to say has been said.
class Stop : public std::runtime_error {
 public:
  Stop(ExitStatus status, const std::string& message) : std::runtime_error(message), status_(status) {}
  [[nodiscard]] ExitStatus status() const { return status_; }

 private:
  ExitStatus status_;
};

// The text of a file, or of standard input for "-". Reads no more than one byte over `most`, so that a wrong file is
// refused without being held in memory.
[[nodiscard]] std::string read_text(const std::string& path, std::size_t most, Console& console);

// The tables built in, or those of a directory of the same layout.
[[nodiscard]] std::shared_ptr<const Catalog> open_catalog(const std::string& directory, Console& console);

// The path as people may see it: the name of a file may hold any bytes.
[[nodiscard]] std::string shown_name(const std::string& path);

// The default rules with the files laid over them.
[[nodiscard]] Rules open_rules(const Catalog& catalog, const std::vector<std::string>& files, Console& console);

// Prints the diagnostics and stops when there are any.
void stop_on(const std::vector<Diagnostic>& diagnostics, std::string_view outcome, Console& console);

}  // namespace mainbore::cli
