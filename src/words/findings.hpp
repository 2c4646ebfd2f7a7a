// The words of findings. Their figures: {value}, {limit}, {margin} and {0} to {3} are what the finding carries; {0+} and the
// like must be reached, and are rounded up; {wall} and the other ids of readings are the bounds of a stop number.
#pragma once

#include <string_view>

#include "mainbore/finding_words.hpp"
#include "mainbore/language.hpp"

namespace mainbore::words {

[[nodiscard]] const FindingText& finding_text(FindingCode code, Language language);
// In a line of the card: for a hold an order that ends in what to write down, else what to know.
[[nodiscard]] std::string_view finding_line(FindingCode code, Language language);
// What goes into the blank under a hold.
[[nodiscard]] std::string_view finding_blank(FindingCode code, Language language);

}  // namespace mainbore::words
