// Field sheets as files of a folder, with a page that leads to each, and from each back to that page.
//
//     SheetIndex index;
//     for (...) { const std::string name = index.add(order);  if (!name.empty()) ... sheet_page(order) goes into that file; }
//     index.page() goes into index.html
#pragma once

#include <string>
#include <string_view>
#include <unordered_set>

#include "report/week.hpp"

namespace mainbore::report {

class SheetIndex {
 public:
  static constexpr std::string_view file_name = "index.html";

  // Notes the order and gives the name of its file; empty where it has no sheet. Names are the orders' ids, in letters
  // that every system takes, and differ in more than case; where they would not, the order's place in the file is added.
  std::string add(const WeekOrder& order);
  [[nodiscard]] std::string page() const;
  [[nodiscard]] std::size_t sheets() const { return sheets_; }

 private:
  [[nodiscard]] std::string name_for(const WeekOrder& order);

  std::string rows_;
  std::size_t orders_ = 0;
  std::size_t sheets_ = 0;
  std::unordered_set<std::string> taken_;  // names in small letters
};

// The order's sheet as a page of its own.
[[nodiscard]] std::string sheet_page(const WeekOrder& order);

}  // namespace mainbore::report
