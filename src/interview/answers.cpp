#include "interview/answers.hpp"

#include <algorithm>

namespace mainbore::interview {

std::string Place::path() const {
  const io::JobField* const field = asks().field();
  return field == nullptr ? std::string() : field->path_at(element);
}

bool all_need(const Place& place) {
  const io::JobField* const field = place.asks().field();
  return field != nullptr && place.in().left_out && field->need != io::Need::optional;
}

void Answers::drop_rest(const Place& place) {
  const auto first = answers_.upper_bound(place);
  answers_.erase(first, answers_.lower_bound(Place{place.section + 1, 0, 0}));
}

const Answer* Answers::at(const Place& place) const {
  const auto found = answers_.find(place);
  return found == answers_.end() ? nullptr : &found->second;
}

bool Answers::goes_on(const Place& place) const {
  const Answer* const answer = at(place);
  if (answer == nullptr) return true;  // it does not apply
  if (place.asks().opens_section()) return answer->text == "yes";
  if (answer->kind == Answer::Kind::nothing_more) return false;
  return answer->kind == Answer::Kind::value || !all_need(place);
}

bool Answers::left_out(std::size_t section) const {
  const auto last = answers_.lower_bound(Place{section + 1, 0, 0});
  return std::any_of(answers_.lower_bound(Place{section, 0, 0}), last, [](const auto& entry) {
    return entry.second.kind == Answer::Kind::not_known && all_need(entry.first);
  });
}

std::vector<Setting> Answers::facts(std::optional<Place> end) const {
  std::vector<Setting> facts;
  for (const auto& [place, answer] : answers_) {
    if (end && !(place < *end)) break;
    if (place.asks().opens_section() || left_out(place.section)) continue;
    if (answer.kind == Answer::Kind::value) {
      facts.push_back({place.path(), answer.text, ""});
    } else if (answer.kind == Answer::Kind::nothing_more && place.element == 0) {
      facts.push_back({std::string(place.in().list), "none", ""});
    }
  }
  return facts;
}

Job Answers::job(std::optional<Place> end) const {
  io::JobDraft draft;
  for (const Setting& fact : facts(end)) {
    const auto target = io::find_field(fact.path);
    if (!target) {
      io::make_list(draft.job, fact.path);
      continue;
    }
    const auto read = io::read_value(*target->field, fact.value, catalog_);
    if (const auto* value = std::get_if<io::FieldValue>(&read)) target->field->store(draft, target->index, *value);
  }
  return std::move(draft).finish();
}

std::vector<const Question*> still_to_find(const std::vector<Setting>& facts) {
  std::vector<const Question*> open;
  for (const Section& section : sections()) {
    for (const Question& question : section.questions) {
      const io::JobField* const field = question.field();
      if (field == nullptr || field->need != io::Need::always || !section.list.empty()) continue;
      const auto known = [&](const Setting& fact) { return fact.path == question.path; };
      if (std::none_of(facts.begin(), facts.end(), known)) open.push_back(&question);
    }
  }
  return open;
}

}  // namespace mainbore::interview
