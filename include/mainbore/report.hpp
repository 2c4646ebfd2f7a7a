// A plan as plain text, to be read in a truck or a trench.
//
// The card comes first: at most 48 lines of 80 columns to tap by. Its order is that of use: verdict, what and where; stop
// numbers; what must be cleared, by the office and at the pipe; set-up; the marks on the bar and make-up; what to bring; what
// is odd about the job; the standing cautions. Behind it, as asked: why (each hold and finding in full, threads, pressures,
// assumptions, sources, what was not checked), what to load with the checks in the yard, the order of work. Nothing is worked
// out here: every number is the plan's.
//
// Lines are at most `width` columns wide (one column a code point); a word longer than a line is broken. The text ends
// with a line break, is UTF-8 where the job's own words are, and carries no control character of theirs. The same plan
// gives the same bytes.
//
//     std::cout << text_report(planner.plan(job), {.units = UnitSystem::si});
#pragma once

#include <string>
#include <string_view>

#include "mainbore/language.hpp"
#include "mainbore/plan.hpp"
#include "mainbore/work.hpp"

namespace mainbore {

struct TextOptions {
  UnitSystem units = UnitSystem::us;
  // A translated page says whether a crew that speaks the language has reviewed it, and which parts stay English.
  Language language = Language::english;
  bool color = false;     // terminal emphasis: bold and reverse. It adds nothing that the words do not say
  bool why = true;        // behind the card: what it rests on
  bool steps = true;      // the order of work, and what to do when it goes wrong
  bool materials = true;  // what to load
  int width = 80;         // 40 to 200; outside, the nearest of the two
};

// The cautions are always printed: there is no option for them.
[[nodiscard]] std::string text_report(const Plan& plan, const TextOptions& options = {});

// The plan in one sentence, in its parts: each reader puts together those that it wants.
struct Summary {
  std::string_view verdict;  // "Hold"
  std::string work;          // "1 in direct tap in the 6 in ductile iron main at 82 psi"
  std::string_view why;      // what stops it: "not a drinking-water main"; empty where nothing does
  std::string once;          // "once 2 holds are cleared"; empty where there are none

  // Without its verdict, which stands above it: "1 in direct tap in the 6 in ... at 82 psi, once 2 holds are cleared."
  [[nodiscard]] std::string sentence() const;
  // With it: "Hold: 1 in direct tap in the 6 in ductile iron main at 82 psi, once 2 holds are cleared."
  [[nodiscard]] std::string whole() const;
};
[[nodiscard]] Summary summary_of(const Plan& plan, Audience audience);

// What goes into the blank under a hold: "Outside diameter", "Line pressure". "Found" where no one reading clears it.
[[nodiscard]] std::string_view reading_for(FindingCode code, Language language = Language::english);

}  // namespace mainbore
