// The field sheet: a plan as a page to hold in the trench, on a phone or printed on three pages.
//
// One self-contained page: no picture from elsewhere, nothing to load. A script in it lets boxes take readings on a screen,
// marks them against the stop numbers as printed, and saves the readings file (readings_file.hpp); a content policy allows
// nothing else. Paper, and a page without scripts, have blanks there. It is HTML5 that also parses as XML, every
// text escaped, whoever wrote it. Drawings are inline SVG, to scale, computed from the plan; each has a title, a
// description and a caption. Nothing is worked out here beyond the geometry of the drawings: every number is the plan's,
// and in drawings each carries its path in the plan document (`data-path="main.od"`) with value and unit as written there.
// What the plan does not know is not drawn, and the caption says so. The cautions are on every sheet.
//
// On paper it takes three pages at most, letter or A4, with body type of 10.5 points in a condensed face, or in what the
// machine has, drawn as narrow: the card with the two drawings that matter; the order of work, a box to each step and valves as
// small pictures where one is moved; what to do when it goes wrong, cautions and the record. Where the order of work is longer
// than its page, what comes after runs on behind it. What the plan rests on stays on the screen. The same plan gives the same bytes.
//
//     std::ofstream("sheet.html") << sheet_html(planner.plan(job), UnitSystem::us);
#pragma once

#include <cstdint>
#include <string>
#include <string_view>

#include "mainbore/language.hpp"
#include "mainbore/plan.hpp"

namespace mainbore {

[[nodiscard]] std::string sheet_html(const Plan& plan, Audience audience);

// The pieces of it, for a page that holds more: a head with the style, bodies that each begin a page of paper, the end.
//     std::string page;
//     append_page_head(page, "Week of the 4th", PageScript::readings);
//     append_sheet_body(page, monday, UnitSystem::us, 1);
//     append_sheet_body(page, tuesday, UnitSystem::us, 2);
//     append_page_tail(page, PageScript::readings);
// A page without sheets has no boxes that take readings: neither the script, nor leave for one in its content policy.
enum class PageScript : std::uint8_t { none, readings };
void append_page_head(std::string& out, std::string_view title, PageScript script,
                      Language language = Language::english);
// `number` tells the sheets of a page apart, and must differ in each.
void append_sheet_body(std::string& out, const Plan& plan, Audience audience, int number);
void append_page_tail(std::string& out, PageScript script);

}  // namespace mainbore
