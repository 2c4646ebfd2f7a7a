// The result of a command, written as it is made: the only place of the program that writes it.
#pragma once

#include <memory>
#include <optional>
#include <string_view>

#include "cli/console.hpp"
#include "cli/replacement.hpp"

namespace mainbore::cli {

// To standard output, or to the file that console.output names.
// - A regular file, or a name that nothing has yet, is replaced whole by finish(), so that nobody ever sees half a
// file;
//   without finish() it is as it was. A link to a file stands for that file.
// - A pipe or a device is written to as it is, and so is a descriptor ("/dev/stdout", "/dev/fd/3").
// A file that the run has read is never written to, under whatever name.
class ResultWriter {
 public:
  // Throws Stop where the file cannot be written, or was read.
  explicit ResultWriter(Console& console, Replacement::Over over = Replacement::Over::file);
  ResultWriter(const ResultWriter&) = delete;
  ResultWriter& operator=(const ResultWriter&) = delete;

  // Throws Stop when the write failed: quietly when the reader went away.
  void write(std::string_view text);
  void finish();

 private:
  void open();
  void refuse_what_was_read() const;

  Console& console_;
  Replacement::Over over_;
  // At most one of these; neither: standard output.
  std::unique_ptr<Descriptor> open_already_;
  std::optional<Replacement> replacement_;
};

// The whole result at once.
void write_result(std::string_view text, Console& console);

// What is to be said where a run with an output file has failed: that it still holds what it held. Empty where there
// was no such file.
[[nodiscard]] std::string unchanged_output(const std::string& output);

}  // namespace mainbore::cli
