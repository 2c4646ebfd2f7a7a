// Any words at all as options of the tools: a result or a message, never a crash or an internal error, and nothing in
// either that paints on a screen. Words are apart by line feeds; none names a file that is written.
#include <algorithm>
#include <cstddef>
#include <cstdint>
#include <cstdlib>
#include <sstream>
#include <string>
#include <string_view>
#include <vector>

#include "cli/run.hpp"
#include "text/foreign.hpp"

namespace {

using namespace mainbore;

void require(bool holds) {
  if (!holds) std::abort();
}

void require_fit(std::string_view shown) {
  while (!shown.empty()) {
    const text::Character one = text::first_character(shown);
    require(one.good && (one.code == U'\n' || one.code == U'\r' || !text::is_hidden(one.code)));
    shown.remove_prefix(one.size);
  }
}

}  // namespace

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
  static const std::vector<std::string> commands = {"table", "identify", "trial", "explain", "rules", "schema"};
  if (size == 0) return 0;
  std::vector<std::string> arguments = {commands[data[0] % commands.size()]};
  std::string_view rest(reinterpret_cast<const char*>(data) + 1, size - 1);
  while (!rest.empty()) {
    const std::size_t end = std::min(rest.find('\n'), rest.size());
    std::string word(rest.substr(0, end));
    rest.remove_prefix(std::min(end + 1, rest.size()));
    word.erase(std::remove(word.begin(), word.end(), '\0'), word.end());  // no word of a command line has one
    // Neither a file is written, nor a folder of this machine read.
    if (word.starts_with("-o") || word.starts_with("--o") || word.starts_with("--d")) return 0;
    arguments.push_back(std::move(word));
  }
  std::istringstream in("{}");
  std::ostringstream out;
  std::ostringstream err;
  require(cli::run(arguments, in, out, err, {}) != 70);
  require_fit(out.str());
  require_fit(err.str());
  require(out.str().find("\"value\": inf") == std::string::npos && out.str().find("nan,") == std::string::npos);
  return 0;
}
