// Words with the figures of a finding in their places; words/findings.hpp says which places there are.
#pragma once

#include <string>
#include <string_view>

#include "mainbore/finding_words.hpp"

namespace mainbore {

[[nodiscard]] std::string filled_words(std::string_view text, const Finding& finding, Audience audience,
                                       StopNumbers readings);

}  // namespace mainbore
