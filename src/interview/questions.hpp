// What is asked, in which order and in which words: a table. A new question is a new row.
//
// The kind of value, its range and its words come from the field table (io/job_fields.hpp) by the row's path.
#pragma once

#include <span>
#include <string>
#include <string_view>

#include "io/job/job_fields.hpp"
#include "mainbore/catalog.hpp"
#include "mainbore/job.hpp"

namespace mainbore::interview {

inline constexpr std::string_view usual_blank = "don't know";

struct Question {
  std::string_view path;                 // of the field table; empty: yes or no, whether the section is gone through
  std::string_view ask;                  // in plain words
  std::string_view more;                 // for who asks what is meant; of a required fact, how it is found out
  std::string_view blank = usual_blank;  // what an empty answer means; the fact is left out of the job then
  bool (*applies)(const Job& so_far) = nullptr;                              // absent: to every job
  std::string (*hint)(const Job& so_far, const Catalog& catalog) = nullptr;  // further help, from the tables

  [[nodiscard]] bool opens_section() const { return path.empty(); }
  // Null for the question that opens a section.
  [[nodiscard]] const io::JobField* field() const;
};

struct Section {
  std::string_view title;
  std::span<const Question> questions;  // the first may be the one that opens it
  std::string_view list;                // asked once an element of this list of the job
  // For a section whose facts stand or fall together: what is said when one that all need is not known.
  std::string_view left_out;
};

[[nodiscard]] std::span<const Section> sections();

}  // namespace mainbore::interview
