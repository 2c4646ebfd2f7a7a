// The spelling of a material that comparisons use.
#pragma once

#include <string>
#include <string_view>

namespace mainbore {

// "D.I.P.", "Ductile-Iron" and "ductile iron" lose case, dots, spaces, hyphens, underscores and slashes.
[[nodiscard]] inline std::string normal_spelling(std::string_view text) {
  std::string spelling;
  for (const char c : text) {
    if (c == '.' || c == ' ' || c == '\t' || c == '-' || c == '_' || c == '/') continue;
    spelling += c >= 'A' && c <= 'Z' ? static_cast<char>(c - 'A' + 'a') : c;
  }
  return spelling;
}

}  // namespace mainbore
