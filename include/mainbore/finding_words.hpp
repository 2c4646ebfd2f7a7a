// The words of a finding: one place, whoever prints them.
#pragma once

#include <cstdint>
#include <optional>
#include <span>
#include <string>
#include <string_view>
#include <vector>

#include "mainbore/finding.hpp"
#include "mainbore/language.hpp"
#include "mainbore/stop_number.hpp"

namespace mainbore {

struct Plan;

// What a code means, for `mainbore explain` and the documentation.
struct FindingText {
  std::string_view title;  // "line pressure over the feed limit"
  std::string_view
      detail;  // with {value} {limit} {margin} {0} ... in it; {0+} is a figure that must be reached, {wall} and
               // the like the bounds of a reading
  std::string_view fix;    // what to do about it; the same placeholders
  std::string_view about;  // the why, in a paragraph: in English alone
};
[[nodiscard]] const FindingText& text_of(FindingCode code, Language language = Language::english);

// The sentence for this finding, numbers filled in. What a crew reads is quoted from the plan's readings where they are
// given (`plan.stop_numbers`); a verdict alone has none, and the sentence then tells the check's own limit.
using StopNumbers = std::span<const StopNumber>;
[[nodiscard]] std::string detail_of(const Finding& finding, Audience audience, StopNumbers readings = {});
[[nodiscard]] std::string fix_of(const Finding& finding, Audience audience, StopNumbers readings = {});
// The same in one line of a card: what is to be done or read, or what to know.
[[nodiscard]] std::string line_of(const Finding& finding, Audience audience, StopNumbers readings = {});
// What stops a tap and the way forward, in the whole figures of a card.
[[nodiscard]] std::string stop_of(const Finding& finding, Audience audience, StopNumbers readings = {});
// Who can clear a hold: the office (a record, a permission, a machine, parts, an engineer), or the crew on the site, by what
// it sees or reads at the pipe before the cut.
enum class Clears : std::uint8_t { office, site };
[[nodiscard]] constexpr std::string_view name_of(Clears clears) { return clears == Clears::office ? "office" : "site"; }
[[nodiscard]] Clears clears_by(FindingCode code);
// What a plan on hold waits for: the office, where any of its holds is the office's to clear; else it is ready to send, and
// the site clears what is left. Nothing of a go and of a no-go.
[[nodiscard]] std::optional<Clears> waits_for(const Plan& plan);
// Of a hold that the office clears: the question that clears it, and whom to ask.
[[nodiscard]] std::string question_of(const Finding& finding, UnitSystem system, StopNumbers readings = {});
[[nodiscard]] std::string_view whom_to_ask(FindingCode code);
// What to do without a plan at hand: "<limit>" and the like stand where a plan has its figures.
[[nodiscard]] std::string fix_in_general(FindingCode code);
// Whose rule decided a finding.
enum class Decided : std::uint8_t {
  by_no_rule,  // by the job, or by the tables
  by_default,
  by_utility,
};
struct DecidedBy {
  Decided by = Decided::by_no_rule;
  const Basis* rule = nullptr;
};
[[nodiscard]] DecidedBy decided_by(const Finding& finding);
// The same as a sentence: "By the utility's rule: Standard 4.2 (crowded mains)." Empty where no rule decided.
[[nodiscard]] std::string decided_in_words(const Finding& finding);
void append_detail(std::string& out, const Detail& detail, Audience audience);

}  // namespace mainbore
