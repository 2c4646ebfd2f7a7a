#include "cli/rules_command.hpp"

#include <algorithm>
#include <array>

#include "cli/result_writer.hpp"
#include "io/text/nearest.hpp"
#include "mainbore/rules_report.hpp"
#include "text/foreign.hpp"

namespace mainbore::cli {
namespace {

constexpr std::array<std::string_view, 3> actions = {"check", "show", "diff"};

bool as_json(const RulesRequest& request) { return request.format == "json"; }

void refuse_rules_option(const RulesRequest& request) {
  if (request.rules.empty()) return;
  throw Stop(exit_usage, "--rules goes with \"rules show\"; to " + request.action + ", name the files behind the word");
}

std::string check(const RulesRequest& request, UnitSystem system, const Catalog& catalog, Console& console) {
  refuse_rules_option(request);
  if (request.words.empty()) throw Stop(exit_usage, "check what?\ntry: mainbore rules check FILE");
  const Rules usual = open_rules(catalog, {}, console);
  const Rules rules = open_rules(catalog, request.words, console);
  const auto differences = compare_rules(catalog, usual, rules);
  if (as_json(request)) return rules_check_to_json(rules, differences, system, JsonStyle::pretty);
  return rules_check_text(rules, differences, system);
}

// "place" and "place.clearances" are the beginnings of "place.clearances.tap"; "pla" is of none.
bool begins(std::string_view path, std::string_view prefix) {
  return path.starts_with(prefix) && (path.size() == prefix.size() || path[prefix.size()] == '.');
}

std::vector<RuleInForce> of_prefix(std::vector<RuleInForce> list, const std::string& prefix) {
  std::vector<std::string_view> known;
  for (const RuleInForce& rule : list) {
    for (std::size_t dot = rule.path.find('.');; dot = rule.path.find('.', dot + 1)) {
      known.push_back(rule.path.substr(0, dot));
      if (dot == std::string_view::npos) break;
    }
  }
  std::erase_if(list, [&](const RuleInForce& rule) { return !begins(rule.path, prefix); });
  if (list.empty()) {
    std::string message = "no rule " + text::quoted(prefix);
    if (const auto near = io::nearest(prefix, known)) message += ": did you mean \"" + std::string(*near) + "\"?";
    throw Stop(exit_usage, message + "\ntry: mainbore rules show");
  }
  return list;
}

std::string show(const RulesRequest& request, SettingsInForce& settings, const Catalog& catalog, Console& console) {
  const UnitSystem system = settings.units(request.units);
  const Rules rules = settings.rules(catalog, request.rules, console);
  const std::vector<RuleInForce> all = list_rules(rules);
  std::vector<RuleInForce> list;
  if (request.words.empty()) list = all;
  for (const std::string& prefix : request.words) {
    const auto some = of_prefix(all, prefix);
    list.insert(list.end(), some.begin(), some.end());
  }
  if (as_json(request)) return rules_show_to_json(rules, list, system, JsonStyle::pretty);
  return rules_show_text(rules, list, system);
}

std::string diff(const RulesRequest& request, UnitSystem system, const Catalog& catalog, Console& console) {
  refuse_rules_option(request);
  if (request.words.size() != 2) {
    throw Stop(exit_usage, "diff takes two sets, each a file or \"default\"\ntry: mainbore rules diff default FILE");
  }
  const auto set = [&](const std::string& name) {
    return open_rules(catalog, name == "default" ? std::vector<std::string>() : std::vector{name}, console);
  };
  const Rules before = set(request.words[0]);
  const Rules after = set(request.words[1]);
  const auto differences = compare_rules(catalog, before, after);
  if (as_json(request)) return rules_diff_to_json(before, after, differences, system, JsonStyle::pretty);
  return rules_diff_text(before, after, differences, system);
}

}  // namespace

ExitStatus rules_command(const RulesRequest& request, Console& console) {
  const std::string& word = request.action;
  if (std::find(actions.begin(), actions.end(), word) == actions.end()) {
    std::string message = word.empty() ? "rules: do what?" : "rules: unknown word " + text::quoted(word);
    if (const auto near = io::nearest(word, actions)) message += ": did you mean \"" + std::string(*near) + "\"?";
    throw Stop(exit_usage, message + "\none of: " + io::listed(actions));
  }
  const std::shared_ptr<const Catalog> tables = open_catalog(request.data, console);
  const Catalog& catalog = *tables;
  SettingsInForce settings(request.settings_file, UsersOwn::read, catalog, console);
  std::string result;
  if (word == "check") result = check(request, settings.units(request.units), catalog, console);
  else if (word == "show") result = show(request, settings, catalog, console);
  else result = diff(request, settings.units(request.units), catalog, console);
  write_result(result, console);
  return exit_go;
}

}  // namespace mainbore::cli
