// A word of at most fifteen letters that a value carries with it, so that nothing else has to outlive it.
//
// Only letters, digits, blanks and . - + / are kept as they are; any other byte shows as '?', and a longer word ends in "..".
#pragma once

#include <algorithm>
#include <array>
#include <cstdint>
#include <string_view>

namespace mainbore {

class ShortText {
 public:
  static constexpr std::size_t longest = 15;

  constexpr ShortText() = default;
  constexpr explicit ShortText(std::string_view text)
      : size_(static_cast<std::uint8_t>(std::min(text.size(), longest))) {
    for (std::size_t i = 0; i < size_; ++i) text_[i] = plain(text[i]) ? text[i] : '?';
    if (text.size() > longest) text_[longest - 2] = text_[longest - 1] = '.';
  }
  [[nodiscard]] constexpr std::string_view view() const { return {text_.data(), size_}; }
  [[nodiscard]] constexpr bool empty() const { return size_ == 0; }

  friend constexpr bool operator==(const ShortText&, const ShortText&) = default;

 private:
  static constexpr bool plain(char c) {
    return (c >= '0' && c <= '9') || (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z') || c == '.' || c == '-' ||
           c == '+' || c == '/' || c == ' ';
  }
  std::array<char, longest> text_{};
  std::uint8_t size_ = 0;
};

}  // namespace mainbore
