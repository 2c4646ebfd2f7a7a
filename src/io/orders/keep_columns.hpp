// Which columns of an order its record carries on.
#pragma once

#include <algorithm>
#include <string>
#include <string_view>
#include <vector>

#include "io/text/nearest.hpp"

namespace mainbore::io {

struct KeepColumns {
  bool all = false;
  std::vector<std::string> names;  // as they were asked for

  [[nodiscard]] bool any() const { return all || !names.empty(); }
  // The place among `names`, which is names.size() where it is none of them. Names compare as those of a map do.
  [[nodiscard]] std::size_t place_of(std::string_view name) const {
    return static_cast<std::size_t>(
        std::find_if(names.begin(), names.end(), [&](const std::string& own) { return same_name(own, name); }) -
        names.begin());
  }
  [[nodiscard]] bool has(std::string_view name) const { return place_of(name) < names.size(); }
};

}  // namespace mainbore::io
