// Somebody who answers an interview: looks at what was asked last, and says what they were told to say to it.
#pragma once

#include <istream>
#include <sstream>
#include <streambuf>
#include <string>
#include <utility>
#include <vector>

#include "interview/interview.hpp"
#include "mainbore/rules_file.hpp"
#include "support/one_line.hpp"
#include "support/plan_under.hpp"

namespace mainbore::test {

// Part of a question, and the answer to it. Of several to one question each is said once, in order, the last again and
// again.
using Replies = std::vector<std::pair<std::string, std::string>>;

class Person : public std::streambuf {
 public:
  Person(std::ostringstream& heard, Replies answers, std::string otherwise)
      : heard_(heard), answers_(std::move(answers)), otherwise_(std::move(otherwise)) {}

 protected:
  int_type underflow() override {
    // An answer that is refused is asked for again: nobody says it for ever.
    if (++lines_ > 1000) return traits_type::eof();
    line_ = answer() + '\n';
    if (line_ == "(end)\n") return traits_type::eof();
    for (const char c : line_) heard_ << (c == '\x1b' ? "^[" : std::string(1, c));  // as a terminal echoes it
    setg(line_.data(), line_.data(), line_.data() + line_.size());
    return traits_type::to_int_type(line_.front());
  }

 private:
  // A question begins at the last empty line.
  std::string answer() {
    std::string asked = heard_.str();
    asked = asked.substr(asked.rfind("\n\n") + 2);
    asked = on_one_line(asked);
    for (std::size_t i = 0; i < answers_.size(); ++i) {
      if (asked.find(answers_[i].first) == std::string::npos) continue;
      const std::string says = answers_[i].second;
      for (std::size_t j = i + 1; j < answers_.size(); ++j) {
        if (answers_[j].first != answers_[i].first) continue;
        answers_.erase(answers_.begin() + static_cast<std::ptrdiff_t>(i));
        break;
      }
      return says;
    }
    return otherwise_;
  }

  std::ostringstream& heard_;
  Replies answers_;
  std::string otherwise_;
  std::string line_;
  int lines_ = 0;
};

struct Interviewed {
  std::optional<std::vector<Setting>> facts;
  std::string heard;

  [[nodiscard]] std::string fact(std::string_view path) const {
    for (const Setting& setting : facts.value()) {
      if (setting.path == path) return setting.value;
    }
    return "-";
  }
  // Wherever the lines were broken.
  [[nodiscard]] bool heard_of(std::string_view text) const {
    return on_one_line(heard).find(text) != std::string::npos;
  }
};

inline const Rules& default_rules() {
  static const RulesFile read = load_rules(Catalog::builtin());
  return *read.rules;
}

inline Interviewed interviewed(Replies answers, std::string otherwise = "", Language language = Language::english,
                               const Rules& rules = default_rules()) {
  std::ostringstream out;
  Person person(out, std::move(answers), std::move(otherwise));
  std::istream in(&person);
  Interviewed result;
  result.facts = interview::interview(in, out, "job.json", planner_under(rules), language);
  result.heard = out.str();
  return result;
}

}  // namespace mainbore::test
