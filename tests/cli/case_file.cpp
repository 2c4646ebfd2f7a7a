#include "cli/case_file.hpp"

#include <algorithm>
#include <filesystem>
#include <fstream>
#include <stdexcept>

namespace mainbore::test {
namespace {

// Spaces apart, double and single quotes together, as far as the cases need a shell's rules.
std::vector<std::string> split(const std::string& line) {
  std::vector<std::string> words;
  std::string word;
  bool begun = false;
  char quote = '\0';
  for (const char c : line) {
    if (quote != '\0') {
      if (c == quote) quote = '\0';
      else word += c;
    } else if (c == '"' || c == '\'') {
      quote = c;
      begun = true;
    } else if (c == ' ') {
      if (begun) words.push_back(word);
      word.clear();
      begun = false;
    } else {
      word += c;
      begun = true;
    }
  }
  if (begun) words.push_back(word);
  return words;
}

std::vector<std::string_view> lines_of(std::string_view text) {
  std::vector<std::string_view> lines;
  while (!text.empty()) {
    const std::size_t end = std::min(text.find('\n'), text.size());
    lines.push_back(text.substr(0, end));
    text.remove_prefix(std::min(end + 1, text.size()));
  }
  return lines;
}

bool line_matches(std::string_view pattern, std::string_view line) {
  const std::size_t any = pattern.find("{*}");
  if (any == std::string_view::npos) return pattern == line;
  if (!line.starts_with(pattern.substr(0, any))) return false;
  pattern.remove_prefix(any + 3);
  for (std::size_t from = any; from <= line.size(); ++from) {
    if (line_matches(pattern, line.substr(from))) return true;
  }
  return false;
}

}  // namespace

std::vector<CliCase> read_cases(const std::string& path) {
  std::ifstream file(path);
  if (!file) throw std::runtime_error("cannot open " + path);
  const std::string name = std::filesystem::path(path).filename().string();
  std::vector<CliCase> cases;
  std::string title;
  std::string* section = nullptr;
  int number = 0;
  for (std::string line; std::getline(file, line);) {
    const std::string where = name + ':' + std::to_string(++number);
    if (line.starts_with("# ")) {
      title = line.substr(2);
      section = nullptr;
    } else if (line == "$" || line.starts_with("$ ")) {
      if (title.empty()) throw std::runtime_error(where + ": a case without a title");
      cases.push_back({where, title, split(line.substr(1)), {}, "", 0, "", ""});
      section = nullptr;
    } else if (line.starts_with("% ") && !cases.empty() && section == nullptr) {
      cases.back().flags = split(line.substr(2));
    } else if (line.starts_with("--- ") && !cases.empty()) {
      CliCase& current = cases.back();
      const std::string what = line.substr(4);
      section = what == "stdin"    ? &current.in
                : what == "stdout" ? &current.out
                : what == "stderr" ? &current.err
                                   : nullptr;
      if (what.starts_with("exit ")) current.exit = std::stoi(what.substr(5));
      else if (section == nullptr) throw std::runtime_error(where + ": unknown section " + what);
    } else if (section != nullptr) {
      *section += line + '\n';
    } else if (!line.empty()) {
      throw std::runtime_error(where + ": outside a case: " + line);
    }
  }
  // The empty line before the next title belongs to the file, not to the text above it.
  for (CliCase& one : cases) {
    for (std::string* text : {&one.in, &one.out, &one.err}) {
      if (text->ends_with("\n\n")) text->pop_back();
      if (*text == "\n") text->clear();
    }
  }
  return cases;
}

std::string difference(std::string_view expected, std::string_view found) {
  const auto want = lines_of(expected);
  const auto have = lines_of(found);
  std::size_t j = 0;
  for (std::size_t i = 0; i < want.size(); ++i) {
    if (want[i] == "...") {
      if (i + 1 == want.size()) return {};
      while (j < have.size() && !line_matches(want[i + 1], have[j])) ++j;
      if (j == have.size()) return "no line like: " + std::string(want[i + 1]);
      continue;
    }
    if (j == have.size()) return "ends before: " + std::string(want[i]);
    if (!line_matches(want[i], have[j])) {
      return "line " + std::to_string(j + 1) + "\n  expected: " + std::string(want[i]) +
             "\n  found:    " + std::string(have[j]);
    }
    ++j;
  }
  return j == have.size() ? "" : "something more: " + std::string(have[j]);
}

}  // namespace mainbore::test
