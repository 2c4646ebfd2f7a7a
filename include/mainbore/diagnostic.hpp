// What is wrong with a file somebody wrote, said so that they can put it right.
//
// A diagnostic names the place (file, line, column, and the path inside the JSON), what was found, what is allowed, and
// the nearest right thing. Readers collect every fault they can find; they never print.
//
//     job.json:3:19: error[job.unknown-value]: /main/material: "ductile irn" is not a known material
//       |  "material": "ductile irn",
//       |              ^^^^^^^^^^^^^
//       = did you mean "ductile iron"?  one of: ductile iron, cast iron, PVC, ...
#pragma once

#include <cstdint>
#include <span>
#include <string>
#include <string_view>

namespace mainbore {

struct Diagnostic {
  std::string_view code;  // stable: one of diagnostic_texts()
  std::string file;       // as the user named it; "--set main.size" for a value from the command line
  std::int64_t line = 0;  // from 1; 0 where lines mean nothing
  int column = 0;         // from 1, in characters
  std::string pointer;    // JSON Pointer (RFC 6901): "/main/material"; empty for the whole file
  std::string message;    // what was found
  std::string help;       // what is allowed, the nearest right thing; lines apart by '\n'; may be empty
  std::string excerpt;    // the source line, or the part of a long one round the place; may be empty
  int caret = 0;          // where the fault begins in the excerpt, in characters from 0
  int caret_length = 0;
};

// The diagnostic as above, each line ended.
[[nodiscard]] std::string format_diagnostic(const Diagnostic& diagnostic);

// What a code means, for `mainbore explain` and the documentation.
struct DiagnosticText {
  std::string_view code;
  std::string_view title;
  std::string_view about;
};
[[nodiscard]] std::span<const DiagnosticText> diagnostic_texts();

}  // namespace mainbore
