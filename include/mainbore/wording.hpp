// The words of a finding: one place, whoever prints them.
#pragma once

#include <string>
#include <string_view>
#include <vector>

#include "mainbore/finding.hpp"

namespace mainbore {

// What a code means, for `mainbore explain` and the documentation.
struct FindingText {
  std::string_view title;   // "line pressure over the feed limit"
  std::string_view detail;  // with {value} {limit} {margin} {0} ... in it
  std::string_view fix;     // what to do about it; the same placeholders
  std::string_view about;   // the why, in a paragraph
};
[[nodiscard]] const FindingText& text_of(FindingCode code);

// The sentence for this finding, numbers filled in.
[[nodiscard]] std::string detail_of(const Finding& finding, UnitSystem system);
[[nodiscard]] std::string fix_of(const Finding& finding, UnitSystem system);
void append_detail(std::string& out, const Detail& detail, UnitSystem system);

}  // namespace mainbore
