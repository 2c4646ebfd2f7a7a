// The folder that --sheets names: a field sheet an order, and the page that leads to them.
#pragma once

#include <string>

#include "cli/console.hpp"
#include "report/sheet_index.hpp"

namespace mainbore::cli {

class SheetFolder {
 public:
  // Makes the folder where there is none. Throws Stop where it cannot be made.
  SheetFolder(const std::string& folder, Console& console);

  // Writes the order's sheet, and takes it from the order.
  void add(report::WeekOrder& order);
  // Writes the index, once all orders have come.
  void finish();

 private:
  void write(const std::string& name, const std::string& page);

  std::string folder_;
  Console& console_;
  report::SheetIndex index_;
};

}  // namespace mainbore::cli
