#include "report/sheet_script.hpp"
#include "report/sheet_style.hpp"
#include "text/sha256.hpp"

namespace mainbore::report {
namespace {

int value_of(char hexadecimal) { return hexadecimal <= '9' ? hexadecimal - '0' : hexadecimal - 'a' + 10; }

// A digest in hexadecimal digits as a content policy names it: base64 (RFC 4648), of 32 bytes.
std::string source_of(std::string_view text) {
  constexpr std::string_view letters = "ABCDEFGHIJKLMNOPQRSTUVWXYZabcdefghijklmnopqrstuvwxyz0123456789+/";
  std::string digest = text::sha256(text);
  digest += "00";  // to whole groups of three bytes
  std::string out = "'sha256-";
  for (std::size_t i = 0; i < digest.size(); i += 3) {
    const int bits = value_of(digest[i]) * 256 + value_of(digest[i + 1]) * 16 + value_of(digest[i + 2]);
    out += letters[static_cast<std::size_t>(bits / 64)];
    out += letters[static_cast<std::size_t>(bits % 64)];
  }
  out.back() = '=';
  return out + '\'';
}

}  // namespace

const std::string& sheet_policy(PageScript script) {
  // Browsers that do not know the two longer names of style-src go by the short one. Made once: a week has many pages.
  const auto policy = [](const std::string& scripts) {
    return "default-src 'none'; " + scripts + "style-src 'unsafe-inline'; style-src-elem " + source_of(sheet_style) +
           "; style-src-attr 'unsafe-inline'; img-src data:; base-uri 'none'; form-action 'none'";
  };
  static const std::string without = policy({});
  static const std::string with = policy("script-src " + source_of(sheet_script()) + "; ");
  return script == PageScript::readings ? with : without;
}

}  // namespace mainbore::report
