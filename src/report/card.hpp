// The crew's card: what a tap is made by, on one page. The words of each part, from a plan; layout is for whoever prints it.
#pragma once

#include <string>
#include <string_view>
#include <vector>

#include "mainbore/finding_words.hpp"
#include "mainbore/plan.hpp"
#include "mainbore/work.hpp"
#include "report/text_page.hpp"

namespace mainbore::report {

struct CardReading {
  std::string what;
  std::string bounds;
  std::string unit;
  ReadingId id = ReadingId::line_pressure;
};

struct CardHold {
  FindingCode code = FindingCode::method_none;
  int number = 0;
  Clears clears = Clears::site;
  std::string text;
  std::string unit;  // of the figure written down; empty: words
};

struct CardLine {
  std::string label;
  std::string text;
};

struct CardGroup {
  std::string label;
  std::vector<std::string> things;
};

struct Card {
  Language language = Language::english;
  std::string verdict;                // "HOLD - do not cut until every hold is cleared"
  std::vector<std::string> what;      // and where, and the figures of the tap in short
  std::vector<std::string> order;     // number, place, day, crew; none where none is given
  std::vector<std::string> stops;     // of a no-go: what stops it, and the way forward
  std::vector<CardReading> readings;  // stop numbers
  std::vector<CardHold> holds;        // the office's first
  std::vector<CardLine> setup;
  std::vector<BarMark> marks;
  std::string makeup;
  std::vector<CardGroup> bring;
  std::vector<std::string> odd;  // about this job, the gravest first
  std::vector<std::string_view> cautions;
  std::string translation;  // who has reviewed it; empty in English
};
// "main class" and "PC 350".
struct AssumedWords {
  std::string fact;
  std::string value;
};
[[nodiscard]] AssumedWords assumed_words(const Assumption& assumed, Audience audience);
[[nodiscard]] Card card_of(const Plan& plan, Audience audience);

// Whether a crew that speaks the language has reviewed the words, or who has, by a utility's settings. Empty in English.
[[nodiscard]] std::string translation_line(const FromSettings& from, Language language);

// At most so many lines of 80 columns for any job: what is odd about it, and the things to bring, give way to the rest.
inline constexpr std::size_t card_lines = 48;
// Of them, what is odd about the job.
inline constexpr std::size_t odd_lines = 6;
void write_card(TextPage& page, const Card& card);

}  // namespace mainbore::report
