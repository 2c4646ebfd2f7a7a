#include "cli/console.hpp"

#include <algorithm>
#include <filesystem>
#include <iostream>

#include "io/job/machine_ranges.hpp"
#include "mainbore/catalog_error.hpp"
#include "mainbore/field_tests.hpp"
#include "mainbore/job.hpp"
#include "mainbore/rules_file.hpp"
#include "text/foreign.hpp"

namespace mainbore::cli {
namespace {

namespace fs = std::filesystem;

// All that `read` gives, up to one byte over `most`.
template <class Read>
std::string read_all(Read read, std::size_t most) {
  std::string text;
  std::vector<char> block(std::size_t{1} << 16);
  while (text.size() <= most) {
    const std::size_t got = read(block.data(), std::min(block.size(), most + 1 - text.size()));
    if (got == 0) break;
    text.append(block.data(), got);
  }
  return text;
}

std::string read_file(const std::string& path, std::size_t most, FilesRead& list) {
  InputFile file(path, list);
  return read_all([&](char* to, std::size_t room) { return file.read(to, room); }, most);
}

}  // namespace

std::string read_text(const std::string& path, std::size_t most, Console& console) {
  if (path != "-") return read_file(path, most, console.files_read);
  console.files_read.add(console.environment.in_file, path);
  const auto read = [&](char* to, std::size_t room) {
    console.in.read(to, static_cast<std::streamsize>(room));
    return static_cast<std::size_t>(console.in.gcount());
  };
  std::string text = read_all(read, most);
  if (console.in.bad()) throw Stop(exit_no_input, "cannot read standard input");
  return text;
}

std::shared_ptr<const Catalog> open_catalog(const std::string& directory, Console& console) {
  if (directory.empty()) return builtin_catalog();
  const std::string name = shown_name(directory);
  std::error_code error;
  if (!fs::is_directory(directory, error)) throw Stop(exit_no_input, "cannot open " + name + ": not a directory");
  DataFiles files;
  try {
    for (const fs::directory_entry& entry : fs::recursive_directory_iterator(directory)) {
      if (!entry.is_regular_file() || entry.path().extension() != ".json") continue;
      files[entry.path().lexically_relative(directory).generic_string()] =
          read_file(entry.path().string(), std::size_t{1} << 26, console.files_read);
    }
  } catch (const fs::filesystem_error& failure) {
    throw Stop(exit_no_input, "cannot read " + name + ": " + failure.code().message());
  }
  std::shared_ptr<const Catalog> held;
  try {
    held = std::make_shared<const Catalog>(files);
    static_cast<void>(load_field_tests(*held));
  } catch (const CatalogError& fault) {
    throw Stop(exit_unreadable, name + ": " + fault.what());
  }
  if (const auto fault = io::machine_out_of_range(*held)) throw Stop(exit_unreadable, name + ": " + *fault);
  std::string told;
  for (const Diagnostic& diagnostic : load_rules(*held).diagnostics) told += '\n' + format_diagnostic(diagnostic);
  if (!told.empty()) throw Stop(exit_unreadable, name + ": no plan is made under these tables" + told);
  return held;
}

std::string shown_name(const std::string& path) { return path == "-" ? "standard input" : text::visible(path); }

Rules open_rules(const Catalog& catalog, const std::vector<std::string>& files, Console& console) {
  std::vector<RuleText> texts;
  for (const std::string& file : files) {
    texts.push_back({shown_name(file), read_text(file, longest_rules, console)});
  }
  RulesFile read = load_rules(catalog, texts);
  stop_on(read.diagnostics, "no plan is made under them", console);
  return *std::move(read.rules);
}

void stop_on(const std::vector<Diagnostic>& diagnostics, std::string_view outcome, Console& console) {
  if (diagnostics.empty()) return;
  for (const Diagnostic& diagnostic : diagnostics) console.err << format_diagnostic(diagnostic);
  const std::string count = diagnostics.size() == 1 ? "1 error" : std::to_string(diagnostics.size()) + " errors";
  throw Stop(exit_unreadable, count + "; " + std::string(outcome));
}

}  // namespace mainbore::cli
