#include "cli/sheet_folder.hpp"

#include <filesystem>
#include <system_error>
#include <utility>

#include "cli/result_writer.hpp"

namespace mainbore::cli {

SheetFolder::SheetFolder(const std::string& folder, Console& console) : folder_(folder), console_(console) {
  if (!console.output.empty() && console.output != "-") {
    throw Stop(exit_usage, "-o and --sheets do not go together: the sheets are found from " +
                               shown_name(folder + "/index.html") + "; send the report there with >");
  }
}

void SheetFolder::make() {
  if (std::exchange(made_, true)) return;
  std::error_code error;
  std::filesystem::create_directory(folder_, error);
  std::error_code none;
  if (std::filesystem::is_directory(folder_, none)) return;
  throw Stop(exit_no_output, "cannot make the folder " + shown_name(folder_) + ": " +
                                 (error ? error.message() : "a file of that name is there"));
}

// Through the one place that writes results: whole files, and none that the run has read.
void SheetFolder::write(const std::string& name, const std::string& page) {
  make();
  const std::string output = std::exchange(console_.output, folder_ + '/' + name);
  try {
    write_result(page, console_);
  } catch (...) {
    console_.output = output;
    throw;
  }
  console_.output = output;
}

void SheetFolder::add(report::WeekOrder& order) {
  const std::string name = index_.add(order);
  if (name.empty()) return;
  write(name, report::sheet_page(order));
  order.sheet.clear();
}

void SheetFolder::finish() { write(std::string(report::SheetIndex::file_name), index_.page()); }

}  // namespace mainbore::cli
