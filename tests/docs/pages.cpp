// What says again what the program's own tables say: parts of docs/job.md, rules.md and findings.md, the manual page,
// and completion for the shells.
//
// Each .md page has words of its own down to the line of `marker`; what follows is made from the tables, and so is all
// of the others.
//     pages check DOCS_DIR    compares; exits 1 and names the page that differs
//     pages write DOCS_DIR    brings the pages up to date
#include <algorithm>
#include <array>
#include <exception>
#include <filesystem>
#include <fstream>
#include <iostream>
#include <iterator>
#include <stdexcept>
#include <string>
#include <vector>

#include "command_tree.hpp"
#include "completions.hpp"
#include "io/job/job_fields.hpp"
#include "mainbore/diagnostic.hpp"
#include "mainbore/finding_words.hpp"
#include "mainbore/rule_fields.hpp"
#include "mainbore/rules_file.hpp"
#include "manual_page.hpp"

namespace mainbore {
namespace {

constexpr std::string_view marker = "<!-- Below: made from the program's tables by tests/docs/pages.cpp -->\n";

// A cell of a Markdown table: one line, no bare bar.
std::string cell(std::string_view text) {
  std::string out;
  for (const char c : text) {
    if (c == '\n') {
      out += ' ';
    } else {
      if (c == '|') out += '\\';
      out += c;
    }
  }
  return out;
}

std::string job_table() {
  std::string out = "\n| path | what it is | what may be written |\n|---|---|---|\n";
  for (const io::JobField& field : io::job_fields()) {
    out += "| `" + std::string(field.path) + "`" + (field.need == io::Need::always ? " (required)" : "") + " | " +
           cell(field.help) + " | " + cell(io::allowed_text(field, Catalog::builtin())) + " |\n";
  }
  return out;
}

std::string rules_table() {
  std::string out = "\n| rule | what it is | stricter | guards people or pipe |\n|---|---|---|---|\n";
  const auto row = [&](std::string_view path, std::string_view help, std::string_view stricter, bool safety) {
    out += "| `" + std::string(path) + "` | " + cell(help) + " | " + std::string(stricter) + " | " +
           (safety ? "yes" : "") + " |\n";
  };
  row(not_tapped_path, not_tapped_help, "more rows", false);
  row(closed_season_path, closed_season_help, "more rows", false);
  for (const CapField& field : cap_fields()) row(field.path, field.help, "more rows", false);
  for (const PermissionField& field : permission_fields()) {
    row(field.path, field.help, "smaller", true);
    row(field.first, "rows that stand before those of `" + std::string(field.path) + "`", "smaller", true);
  }
  for (const SpecificationField& field : specification_fields()) row(field.path, field.help, "", false);
  row(std::string(clearances_path) + ".THING", "clearance along the main from each kind of thing near a tap", "higher",
      true);
  row(by_dwellings_path, by_dwellings_help, "more rows", false);
  row(own_words_path, own_words_help, "", false);
  for (const RuleField& field : rule_fields()) {
    constexpr std::array<std::string_view, 3> ways = {"", "higher", "lower"};
    const bool either = field.safety && field.stricter == Stricter::neither;
    row(field.path, field.help,
        either ? "neither: a reason either way" : ways[static_cast<std::size_t>(field.stricter)], field.safety);
  }
  return out;
}

std::string findings_table() {
  std::string out;
  for (std::size_t i = 0; i < finding_codes.size(); ++i) {
    const FindingText& text = text_of(static_cast<FindingCode>(i));
    out += "\n**`" + std::string(finding_codes[i]) + "`** " + std::string(text.title) + ". " + std::string(text.about) +
           "\n";
  }
  return out;
}

std::string read(const std::string& path) {
  std::ifstream file(path, std::ios::binary);
  return {std::istreambuf_iterator<char>(file), {}};
}

// A page of words of its own down to the marker, and the table below.
std::string below_marker(const std::string& path, const std::string& table) {
  const std::string page = read(path);
  const std::size_t at = page.find(marker);
  if (at == std::string::npos) throw std::runtime_error(path + " has no line: " + std::string(marker));
  return page.substr(0, at + marker.size()) + table;
}

std::vector<std::string> names_of_pages(const std::string& folder) {
  std::vector<std::string> names;
  for (const auto& entry : std::filesystem::directory_iterator(folder)) {
    if (entry.path().extension() == ".md") names.push_back(entry.path().filename().string());
  }
  std::sort(names.begin(), names.end());
  return names;
}

// Path and content of everything made.
std::vector<std::pair<std::string, std::string>> all_pages(const std::string& folder) {
  const docs::CommandFacts program = docs::command_tree();
  const auto with_table = [&](const std::string& name, const std::string& table) {
    return std::pair(folder + "/" + name, below_marker(folder + "/" + name, table));
  };
  return {with_table("job.md", job_table()),
          with_table("rules.md", rules_table()),
          with_table("findings.md", findings_table()),
          {folder + "/man/mainbore.1", docs::manual_page(program, names_of_pages(folder))},
          {folder + "/completions/mainbore.bash", docs::bash_completion(program)},
          {folder + "/completions/_mainbore", docs::zsh_completion(program)},
          {folder + "/completions/mainbore.fish", docs::fish_completion(program)}};
}

int run(const std::string& verb, const std::string& folder) {
  int wrong = 0;
  for (const auto& [path, wanted] : all_pages(folder)) {
    if (read(path) == wanted) continue;
    ++wrong;
    if (verb == "write") {
      if (!(std::ofstream(path, std::ios::binary) << wanted)) throw std::runtime_error("cannot write " + path);
    } else {
      std::cerr << path << " differs from the program's tables: run pages write DOCS_DIR\n";
    }
  }
  return verb == "check" && wrong > 0 ? 1 : 0;
}

}  // namespace
}  // namespace mainbore

int main(int argc, char** argv) {
  if (argc != 3) {
    std::cerr << "usage: pages check|write DOCS_DIR\n";
    return 64;
  }
  try {
    return mainbore::run(argv[1], argv[2]);
  } catch (const std::exception& fault) {
    std::cerr << fault.what() << '\n';
    return 1;
  }
}
