// Rules that may not stand together as they do. What is free of these can be planned under.
#pragma once

#include <cstdint>
#include <string_view>
#include <vector>

#include "mainbore/rules.hpp"

namespace mainbore::rules {

enum class Clash : std::uint8_t { above, below, equal };

// "`one` lies above `other`"; of a place round the pipe, by its height.
struct RuleConflict {
  std::string_view one;
  std::string_view other;
  Clash clash = Clash::above;
};
[[nodiscard]] std::vector<RuleConflict> conflicts(const Rules& rules);

// Every main that `later` is for, `earlier` is for too, and stands before it.
[[nodiscard]] bool leaves_nothing_to(const TapLimit& earlier, const TapLimit& later);

}  // namespace mainbore::rules
