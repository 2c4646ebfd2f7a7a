// What has been answered so far, kept by place in the interview, so that going back loses nothing.
#pragma once

#include <compare>
#include <cstdint>
#include <map>
#include <optional>
#include <string>
#include <vector>

#include "interview/questions.hpp"
#include "mainbore/job_file.hpp"

namespace mainbore::interview {

// A question of the table; places compare in the order in which they are asked.
struct Place {
  std::size_t section = 0;
  std::size_t element = 0;  // of the section's list
  std::size_t question = 0;
  friend auto operator<=>(const Place&, const Place&) = default;

  [[nodiscard]] const Section& in() const { return sections()[section]; }
  [[nodiscard]] const Question& asks() const { return in().questions[question]; }
  // "nearby[1].along"; empty for the question that opens a section.
  [[nodiscard]] std::string path() const;
  // Whether the question asks for the next element of the list, if there is one.
  [[nodiscard]] bool begins_element() const { return !in().list.empty() && question == 1; }
};

struct Answer {
  enum class Kind : std::uint8_t { value, not_known, nothing_more };
  Kind kind = Kind::not_known;
  std::string text;  // of a value, as it was written; "yes" or "no" where a section opens
};

class Answers {
 public:
  explicit Answers(const Catalog& catalog) : catalog_(catalog) {}

  void put(const Place& place, Answer answer) { answers_[place] = std::move(answer); }
  void drop(const Place& place) { answers_.erase(place); }
  // Forgets what was answered in the section behind this place, when it is not gone through any further.
  void drop_rest(const Place& place);
  [[nodiscard]] const Answer* at(const Place& place) const;

  // Whether the section may be gone through behind this place: no where it was declined, where its list has ended, and
  // where a fact is not known that all the others need.
  [[nodiscard]] bool goes_on(const Place& place) const;

  // The facts answered before `end`, or all of them.
  [[nodiscard]] std::vector<Setting> facts(std::optional<Place> end = std::nullopt) const;
  // The same as a job, as far as it is known.
  [[nodiscard]] Job job(std::optional<Place> end = std::nullopt) const;

 private:
  [[nodiscard]] bool left_out(std::size_t section) const;

  const Catalog& catalog_;
  std::map<Place, Answer> answers_;
};

// Whether the section's facts are all left out when this one is not known.
[[nodiscard]] bool all_need(const Place& place);

// The facts that a job cannot be planned without and that are not among these.
[[nodiscard]] std::vector<const Question*> still_to_find(const std::vector<Setting>& facts);

}  // namespace mainbore::interview
