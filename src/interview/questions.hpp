// What is asked, and in which order: a table. A new question is a new row.
//
// The kind of value, its range and its choices come from the field table (io/job_fields.hpp) by the row's path.
#pragma once

#include <optional>
#include <span>
#include <string>
#include <string_view>

#include "io/job/job_fields.hpp"
#include "mainbore/catalog.hpp"
#include "mainbore/job.hpp"
#include "mainbore/rules.hpp"
#include "words/asking.hpp"
#include "words/questions.hpp"

namespace mainbore::interview {

struct Question {
  std::string_view path;  // of the field table; empty: yes or no, whether the section is gone through
  words::QuestionWord words = words::QuestionWord::end;
  // What an empty answer means; the fact is left out of the job then.
  words::AskWord blank = words::AskWord::blank_not_known;
  bool (*applies)(const Job& so_far) = nullptr;                                 // absent: to every job
  bool (*asked_by)(const Rules& rules) = nullptr;                               // absent: whatever the rules
  std::string (*classes)(const Job& so_far, const Catalog& catalog) = nullptr;  // those that the tables have

  [[nodiscard]] bool opens_section() const { return path.empty(); }
  // Null for the question that opens a section.
  [[nodiscard]] const io::JobField* field() const;
};

struct Section {
  words::AskWord title;
  std::span<const Question> questions;  // the first may be the one that opens it
  std::string_view list;                // asked once an element of this list of the job
  // For a section whose facts stand or fall together: what is said when one that all need is not known.
  std::optional<words::AskWord> left_out;
};

[[nodiscard]] std::span<const Section> sections();

}  // namespace mainbore::interview
