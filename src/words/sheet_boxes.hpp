// Words of the boxes of a field sheet on a screen, where readings are typed in.
#pragma once

#include <cstdint>
#include <string_view>

#include "mainbore/language.hpp"

namespace mainbore::words {

enum class BoxWord : std::uint8_t {
  inside,  // a stop number
  outside,
  unreadable,
  holds,  // a leak check, as it is typed
  leaks,
  unsure,
  first,  // before the label of a box that keeps the rest from being saved
  save,
  saved,  // before the name of the file
  hold,   // what the boxes of a hold are called to those who cannot see them
  end,
};

[[nodiscard]] std::string_view say(BoxWord word, Language language);

}  // namespace mainbore::words
