#include "c/errors.hpp"

#include <cstdlib>
#include <cstring>

#include "io/text/json_writer.hpp"
#include "mainbore/version.hpp"

namespace mainbore::c {

char* handed_out(std::string_view text) noexcept {
  char* const copy = static_cast<char*>(std::malloc(text.size() + 1));
  if (copy == nullptr) return nullptr;
  std::memcpy(copy, text.data(), text.size());
  copy[text.size()] = '\0';
  return copy;
}

std::string faults_to_json(std::span<const Diagnostic> faults) {
  std::string text;
  io::JsonWriter out(text, JsonStyle::compact);
  out.begin_object();
  out.begin_array("faults");
  for (const Diagnostic& fault : faults) {
    out.begin_object();
    out.text("code", fault.code);
    if (!fault.file.empty()) out.text("file", fault.file);
    if (fault.line > 0) out.whole("line", fault.line);
    if (fault.column > 0) out.whole("column", fault.column);
    if (!fault.pointer.empty()) out.text("path", fault.pointer);
    out.text("message", fault.message);
    if (!fault.help.empty()) out.text("help", fault.help);
    if (!fault.excerpt.empty()) out.text("excerpt", fault.excerpt);
    out.text("text", format_diagnostic(fault));
    out.end_object();
  }
  out.end_array();
  out.end_object();
  return text;
}

char* told(std::string_view code, std::string_view message) noexcept {
  try {
    Diagnostic fault;
    fault.code = code;
    fault.message = message;
    return handed_out(faults_to_json({&fault, 1}));
  } catch (...) {
    return nullptr;
  }
}

int refused(char** result, std::string_view why) noexcept {
  if (result != nullptr) *result = told("call.wrong-usage", why);
  return MAINBORE_USAGE;
}

}  // namespace mainbore::c

const char* mainbore_version(void) { return MAINBORE_VERSION; }

void mainbore_free(char* result) { std::free(result); }
