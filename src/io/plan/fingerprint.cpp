// What is hashed is text: the job as it is written in US units, and a line a rule.
#include "mainbore/fingerprint.hpp"

#include <memory>
#include <string_view>

#include "io/job/job_json.hpp"
#include "io/text/json_writer.hpp"
#include "mainbore/rule_words.hpp"
#include "mainbore/rules_compare.hpp"
#include "mainbore/version.hpp"
#include "text/sha256.hpp"

namespace mainbore {
namespace {

std::string short_hash(std::string_view text) { return text::sha256(text).substr(0, 16); }

void write_value(io::JsonWriter& out, const Detail& value) {
  constexpr int exact = 9;
  if (const auto* measure = std::get_if<Measure>(&value)) out.number("value", measure->base(), exact);
  if (const auto* size = std::get_if<NominalSize>(&value)) out.size("value", *size);
  if (const auto* name = std::get_if<std::string_view>(&value)) out.text("value", *name);
  if (const auto* word = std::get_if<ShortText>(&value)) out.text("value", word->view());
  if (const auto* whole = std::get_if<int>(&value)) out.whole("value", *whole);
  if (const auto* clock = std::get_if<ClockPosition>(&value)) out.text("value", clock->label());
}

std::string hash_of(const Rules& rules) {
  std::string text;
  io::JsonWriter out(text, JsonStyle::compact);
  out.begin_array();
  out.text({}, rules.name);
  for (const RuleInForce& rule : list_rules(rules)) {
    out.begin_object();
    out.text("path", rule.path);
    write_value(out, rule.value);
    for (const UnitSystem system : {UnitSystem::us, UnitSystem::si}) {
      const std::string row = rule_in_words({}, rule.row, system);
      if (!row.empty()) out.text("row", row);
    }
    if (rule.basis != nullptr) {
      out.flag("utility", rule.basis->utility);
      if (rule.basis->reference != nullptr) out.text("reference", *rule.basis->reference);
      if (rule.basis->reason != nullptr) out.text("reason", *rule.basis->reason);
    }
    out.end_object();
  }
  out.end_array();
  return short_hash(text);
}

std::string hash_of(const ApprovedList& list) {
  std::string text;
  io::JsonWriter out(text, JsonStyle::compact);
  const auto number = [&](std::string_view key, const auto& value) {
    constexpr int exact = 9;
    if (value) out.number(key, value->base(), exact);
  };
  out.begin_array();
  for (const ApprovedItem& item : list.items) {
    out.begin_object();
    out.text("kind", name_of(item.kind));
    out.text("stock", item.stock);
    out.text("text", item.text);
    for (const Material main : item.main) out.text("main", name_of(main));
    number("od_from", item.od_from);
    number("od_to", item.od_to);
    out.size("size", item.size);
    if (item.thread) out.text("thread", name_of(*item.thread));
    if (item.straps) out.whole("straps", *item.straps);
    number("torque", item.torque);
    number("rating", item.rating);
    number("length", item.length);
    number("diameter", item.diameter);
    out.end_object();
  }
  out.end_array();
  return short_hash(text);
}

std::string hash_of(const Job& job) {
  std::string text;
  io::JsonWriter out(text, JsonStyle::compact);
  io::write_job(out, {}, job, UnitSystem::us);
  out.settle();
  return short_hash(text);
}

// Of the last planner that was asked for: a batch prints thousands of plans made under one.
struct MadeUnder {
  std::weak_ptr<const void> keeps;
  const Rules* in_force = nullptr;
  std::string tables;
  std::string rules;
  std::string approved;
};

const MadeUnder& made_under(const Plan& plan) {
  thread_local MadeUnder last;
  const bool same = plan.keeps != nullptr && last.in_force == plan.rules && last.keeps.lock() == plan.keeps;
  if (!same) {
    last = {plan.keeps, plan.rules, plan.catalog != nullptr ? plan.catalog->hash() : std::string(),
            plan.rules != nullptr ? hash_of(*plan.rules) : std::string(),
            plan.approved != nullptr ? hash_of(*plan.approved) : std::string()};
  }
  return last;
}

}  // namespace

Fingerprint fingerprint_of(const Plan& plan) {
  const MadeUnder& under = made_under(plan);
  Fingerprint made;
  made.program = MAINBORE_VERSION;
  made.tables = under.tables;
  made.rules = under.rules;
  made.job = hash_of(plan.job);
  made.approved = under.approved;
  std::string all = made.program + '\n' + made.tables + '\n' + made.rules + '\n' + made.job + '\n';
  if (!made.approved.empty()) all += made.approved + '\n';
  made.plan = short_hash(all);
  return made;
}

std::string in_words(const Fingerprint& fingerprint) {
  return fingerprint.plan + " (mainbore " + fingerprint.program + ", tables " + fingerprint.tables + ", rules " +
         fingerprint.rules + ", job " + fingerprint.job +
         (fingerprint.approved.empty() ? std::string() : ", approved list " + fingerprint.approved) + ")";
}

}  // namespace mainbore
