// The folder that --sheets names: a field sheet an order, and the page that leads to them.
#pragma once

#include <string>

#include "cli/console.hpp"
#include "report/sheet_index.hpp"

namespace mainbore::cli {

class SheetFolder {
 public:
  // The folder is made with the first sheet. Throws Stop where the result has a file of its own.
  SheetFolder(const std::string& folder, Console& console);

  // Writes the order's sheet, and takes it from the order. Throws Stop where it cannot be written.
  void add(report::WeekOrder& order);
  // Writes the index, once all orders have come.
  void finish();

 private:
  void make();
  void write(const std::string& name, const std::string& page);

  std::string folder_;
  Console& console_;
  report::SheetIndex index_;
  bool made_ = false;
};

}  // namespace mainbore::cli
