// Rules in force, and what differs between two sets, as JSON.
#include <algorithm>

#include "io/text/json_writer.hpp"
#include "mainbore/rule_fields.hpp"
#include "mainbore/rules_report.hpp"
#include "mainbore/tool_file.hpp"

namespace mainbore {
namespace {

using io::JsonWriter;

class RulesWriter {
 public:
  RulesWriter(JsonStyle style, UnitSystem system) : out_(text_, style), system_(system), style_(style) {
    out_.begin_object();
    out_.whole("format", tool_format);
  }
  std::string done() && {
    out_.end_object();
    if (style_ == JsonStyle::pretty) text_ += '\n';
    return std::move(text_);
  }
  void text(std::string_view key, std::string_view value) { out_.text(key, value); }
  void documents(const Rules& rules) {
    out_.begin_array("documents");
    for (const RulesDocument& document : rules.documents) {
      out_.begin_object();
      for (const DocumentLine& line : document_lines()) {
        if (const std::string& text = document.*line.text; !text.empty()) out_.text(line.key, text);
      }
      out_.end_object();
    }
    out_.end_array();
  }
  void whole(std::string_view key, long value) { out_.whole(key, value); }

  void differences(std::span<const RuleDifference> list) {
    out_.begin_array("differences");
    for (const RuleDifference& one : list) {
      out_.begin_object();
      out_.text("path", one.path);
      if (one.material) {
        out_.begin_object("mains");
        out_.text("material", name_of(*one.material));
        out_.size("from", *one.main_from);
        out_.size("to", *one.main_to);
        if (!one.first_class.empty()) out_.text("such_as", one.first_class);
        out_.end_object();
      }
      out_.text("change", name_of(one.change));
      out_.flag("safety", one.safety);
      out_.begin_object("before");
      side(one.before, one.row_before, one.before_basis);
      out_.end_object();
      out_.begin_object("after");
      side(one.after, one.row_after, one.after_basis);
      out_.end_object();
      out_.end_object();
    }
    out_.end_array();
  }

  void rules(std::span<const RuleInForce> list) {
    out_.begin_array("rules");
    for (const RuleInForce& rule : list) {
      out_.begin_object();
      out_.text("path", rule.path);
      out_.text("help", rule.help);
      side(rule.value, rule.row, rule.basis);
      out_.end_object();
    }
    out_.end_array();
  }

 private:
  void side(const Detail& value, const RuleRow& row, const Basis* basis) {
    if (const auto* measure = std::get_if<Measure>(&value)) out_.quantity("value", *measure, system_);
    if (const auto* size = std::get_if<NominalSize>(&value)) out_.size("value", *size);
    if (const auto* name = std::get_if<std::string_view>(&value)) out_.text("value", *name);
    if (const auto* clock = std::get_if<ClockPosition>(&value)) out_.text("value", clock->label());
    if (const std::string words = rule_in_words({}, row, system_); !words.empty()) out_.text("row", words);
    if (basis == nullptr) return;
    out_.flag("utility", basis->utility);
    if (basis->reference != nullptr) out_.text("reference", *basis->reference);
    if (basis->reason != nullptr) out_.text("reason", *basis->reason);
    if (basis->file != nullptr) out_.text("file", *basis->file);
    if (basis->source != nullptr) out_.text("source", basis->source->id);
    if (!basis->utility) out_.text("how", name_of(basis->how));
  }

  std::string text_;
  JsonWriter out_;
  UnitSystem system_;
  JsonStyle style_;
};

}  // namespace

std::string rules_check_to_json(const Rules& rules, std::span<const RuleDifference> differences, UnitSystem system,
                                JsonStyle style) {
  const std::vector<RuleInForce> list = list_rules(rules);
  RulesWriter out(style, system);
  out.text("name", rules.name);
  out.documents(rules);
  out.whole("rules_set", std::count_if(list.begin(), list.end(), [](const RuleInForce& rule) {
              return rule.basis != nullptr && rule.basis->utility;
            }));
  out.differences(differences);
  return std::move(out).done();
}

std::string rules_show_to_json(const Rules& rules, std::span<const RuleInForce> list, UnitSystem system,
                               JsonStyle style) {
  RulesWriter out(style, system);
  out.text("name", rules.name);
  out.rules(list);
  return std::move(out).done();
}

std::string rules_diff_to_json(const Rules& before, const Rules& after, std::span<const RuleDifference> differences,
                               UnitSystem system, JsonStyle style) {
  RulesWriter out(style, system);
  out.text("before", before.name);
  out.text("after", after.name);
  out.differences(differences);
  return std::move(out).done();
}

}  // namespace mainbore
