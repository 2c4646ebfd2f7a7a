// An interview: what is known of one tap, asked line by line, each answer checked before the next question.
//
// Lines in, lines out: no cursor, no color, so that it runs over any terminal, and in a test over strings. An empty
// answer takes what stands in brackets; "don't know" is an answer everywhere, and leaves the fact out of the job or,
// where the job has a word for it, says so. "?" says more, "back" goes to the question before, "stop" gives up. In another
// language than English the answers may be in either: what is told is the same.
#pragma once

#include <iosfwd>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "mainbore/job_file.hpp"
#include "mainbore/language.hpp"
#include "mainbore/planner.hpp"

namespace mainbore::interview {

// The facts told, for settings_to_json(), or nothing where the interview was given up or the input ended. `file` is
// what the job file will be called. Nothing is written but the interview itself.
[[nodiscard]] std::optional<std::vector<Setting>> interview(std::istream& in, std::ostream& out, std::string_view file,
                                                            const Planner& planner,
                                                            Language language = Language::english);

// What is said once the file is written: what must still be found out, how, and the next command.
[[nodiscard]] std::string closing_words(const std::vector<Setting>& facts, std::string_view file,
                                        Language language = Language::english);

}  // namespace mainbore::interview
