// Words for the crew: as they stand in the program, or made for one plan. Most of a plan's are the former, and cost no
// copy until somebody prints them.
#pragma once

#include <string>
#include <string_view>
#include <utility>

namespace mainbore {

class Words {
 public:
  Words() = default;
  Words(const char* literal) : literal_(literal) {}  // NOLINT implicit by design; lives as long as the program
  // Text that lives as long as the program, and is not copied.
  [[nodiscard]] static Words standing(std::string_view text) {
    Words words;
    words.literal_ = text;
    return words;
  }
  Words(std::string made) : made_(std::move(made)) {}  // NOLINT implicit by design

  // Good as long as these words stay where they are.
  [[nodiscard]] std::string_view view() const { return made_.empty() ? literal_ : std::string_view(made_); }
  operator std::string_view() const { return view(); }  // NOLINT implicit by design
  [[nodiscard]] bool empty() const { return view().empty(); }

  friend bool operator==(const Words& a, const Words& b) { return a.view() == b.view(); }

 private:
  std::string_view literal_;
  std::string made_;
};

}  // namespace mainbore
