#include "interview/interview.hpp"

#include <algorithm>
#include <cstdint>
#include <istream>
#include <ostream>

#include "interview/answers.hpp"
#include "interview/remarks.hpp"
#include "interview/spoken.hpp"
#include "io/text/text_scan.hpp"
#include "report/text_page.hpp"
#include "text/foreign.hpp"
#include "words/asking.hpp"
#include "words/terms.hpp"

namespace mainbore::interview {
namespace {

using io::FieldType;
using io::FieldValue;
using io::JobField;
using words::AskWord;

constexpr int width = 79;

// Examples in messages stand in quotes, and are copied with them.
std::string_view without_quotes(std::string_view answer) {
  const bool quoted = answer.size() > 2 && answer.front() == '"' && answer.back() == '"';
  return quoted ? io::trimmed(answer.substr(1, answer.size() - 2)) : answer;
}

bool is_text(const JobField& field) { return field.type == FieldType::text || field.type == FieldType::lines; }

// How an answer was understood, where that is not just what was written.
std::string understood(const JobField& field, const FieldValue& value) {
  switch (field.type) {
    case FieldType::material:
      return std::string(name_of(std::get<Material>(value)));
    case FieldType::choice:
      return std::string(field.choice->names[static_cast<std::size_t>(std::get<int>(value))]);
    case FieldType::size:
      return std::get<NominalSize>(value).label() + " in";
    case FieldType::clock:
      return std::get<ClockPosition>(value).label();
    default:
      return {};
  }
}

std::string wrapped(std::string_view text, int indent, std::string_view lead) {
  report::TextPage page(width, false);
  page.paragraph(text, indent, lead);
  return std::move(page).take();
}

// As a shell takes it for one word.
std::string shell_word(std::string_view word) {
  const bool plain = std::all_of(word.begin(), word.end(), [](unsigned char c) {
    return (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z') || io::is_digit(static_cast<char>(c)) || c >= 0x80 ||
           c == '/' || c == '.' || c == '_' || c == '-' || c == '+' || c == ',';
  });
  if (plain && !word.empty()) return std::string(word);
  std::string quoted = "'";
  for (const char c : word) quoted += c == '\'' ? std::string("'\\''") : std::string(1, c);
  return quoted + '\'';
}

// What is still to be found, each with how it is found.
std::string list_of(const std::vector<const Question*>& open, Language language) {
  std::string text;
  for (const Question* question : open) {
    const words::QuestionText& asks = words::question_text(question->words, language);
    text +=
        wrapped(std::string(question->path) + ": " + std::string(asks.ask) + ' ' + std::string(asks.more), 4, "  - ");
  }
  return text;
}

// --- the interview ------------------------------------------------------------------------------------------------

class Interview {
 public:
  Interview(std::istream& in, std::ostream& out, std::string_view file, const Planner& planner, Language language)
      : in_(in),
        out_(out),
        file_(file),
        planner_(planner),
        catalog_(planner.catalog()),
        language_(language),
        answers_(planner.catalog()) {}

  std::optional<std::vector<Setting>> run() {
    say(words::say(AskWord::this_asks, language_, {{"file", file_}}));
    say(AskWord::how_to_answer);
    Place place;
    for (;;) {
      Next next = Next::on;
      if (place.section == sections().size()) {
        next = confirm();
        if (next == Next::on) return answers_.facts();
      } else if (applies(place)) {
        next = ask(place);
        if (next == Next::on) asked_.push_back(place);
      } else {
        answers_.drop(place);
      }
      if (next == Next::stop) return std::nullopt;
      place = next == Next::back ? before() : behind(place);
    }
  }

 private:
  enum class Next : std::uint8_t { on, back, stop };

  void say(std::string_view text, int indent = 0, std::string_view lead = {}) { out_ << wrapped(text, indent, lead); }
  void say(AskWord word, int indent = 0, std::string_view lead = {}) { say(word_of(word), indent, lead); }
  [[nodiscard]] std::string_view word_of(AskWord word) const { return words::say(word, language_); }
  [[nodiscard]] const words::QuestionText& text_of(const Question& question) const {
    return words::question_text(question.words, language_);
  }

  // --- from question to question ---

  [[nodiscard]] bool applies(const Place& place) const {
    const Question& question = place.asks();
    if (question.asked_by != nullptr && !question.asked_by(planner_.rules())) return false;
    return question.applies == nullptr || question.applies(answers_.job(place));
  }

  // The question asked before; the first again where there is none.
  Place before() {
    if (asked_.empty()) {
      say(AskWord::first_question, 2);
      return {};
    }
    const Place place = asked_.back();
    asked_.pop_back();
    heading_.reset();
    return place;
  }

  Place behind(Place place) {
    const Section& section = place.in();
    if (!answers_.goes_on(place)) {
      answers_.drop_rest(place);
      return {place.section + 1, 0, 0};
    }
    ++place.question;
    if (place.question < section.questions.size()) return place;
    if (section.list.empty() || place.element + 1 == io::longest_list) return {place.section + 1, 0, 0};
    return {place.section, place.element + 1, 1};
  }

  // --- one question ---

  Next ask(const Place& place) {
    const Section& section = place.in();
    const Question& question = place.asks();
    if (heading_ != section.title) out_ << '\n' << word_of(section.title) << '\n';
    heading_ = section.title;
    put_question(place);
    offered_.clear();
    for (;;) {
      const std::optional<std::string> line = prompt(offered_.empty() ? default_of(place) : offered_ + "?");
      if (!line) return Next::stop;
      std::string answer(without_quotes(io::trimmed(*line)));
      const Answer* const earlier = answers_.at(place);
      if (answer.empty()) answer = offered_;
      offered_.clear();
      if (answer.empty() && earlier != nullptr && earlier->kind == Answer::Kind::value) answer = earlier->text;
      switch (said_in(answer, language_)) {
        case Said::help:
          put_help(place);
          continue;
        case Said::back:
          return Next::back;
        case Said::stop:
          return Next::stop;
        case Said::blank:
          take_blank(place);
          return Next::on;
        case Said::not_known:
          take_not_known(place);
          return Next::on;
        case Said::value:
          if (question.opens_section() ? take_gate(place, answer) : take_value(place, answer)) return Next::on;
      }
    }
  }

  // What may be answered, and what the tables have for it.
  void put_allowed(const Place& place) {
    const JobField* const field = place.asks().field();
    std::string text =
        field == nullptr ? std::string(word_of(AskWord::yes_or_no)) : allowed(*field, catalog_, language_);
    if (place.begins_element())
      text += "; " + std::string(word_of(place.element == 0 ? AskWord::or_nothing : AskWord::or_nothing_more));
    if (!text.empty()) say(text, 4, "    ");
  }

  void put_question(const Place& place) {
    const Question& question = place.asks();
    out_ << '\n';
    const bool another = place.begins_element() && place.element > 0;
    say(another ? word_of(AskWord::what_else) : text_of(question).ask, 2, "  ");
    put_allowed(place);
    if (question.classes == nullptr) return;
    if (const std::string classes = question.classes(answers_.job(place), catalog_); !classes.empty())
      say(words::say(AskWord::tables_have, language_, {{"classes", classes}}), 4, "    ");
  }

  void put_help(const Place& place) {
    const Question& question = place.asks();
    if (!question.opens_section()) say(place.path() + ": " + std::string(text_of(question).ask), 4, "    ");
    if (const std::string_view more = text_of(question).more; !more.empty()) say(more, 4, "    ");
    put_allowed(place);
    say(AskWord::also, 4, "    ");
  }

  // What an empty answer takes.
  [[nodiscard]] std::string default_of(const Place& place) const {
    const Answer* const earlier = answers_.at(place);
    if (earlier != nullptr && earlier->kind == Answer::Kind::value) return spoken(place, earlier->text);
    if (place.begins_element() && place.element > 0) return std::string(word_of(AskWord::blank_nothing_more));
    return std::string(word_of(place.asks().blank));
  }

  [[nodiscard]] std::string spoken(const Place& place, const std::string& value) const {
    if (const JobField* const field = place.asks().field()) return as_people_say(value, *field, language_);
    return std::string(word_of(value == "yes" ? AskWord::yes : AskWord::no));
  }

  // A line, or nothing at the end of the input. A line that is cut off by the end was not finished by anybody.
  std::optional<std::string> prompt(std::string_view standing) {
    out_ << "  [" << report::printable(standing) << "] > " << std::flush;
    std::string line;
    if (std::getline(in_, line) && !in_.eof()) return line;
    out_ << '\n';
    return std::nullopt;
  }

  // --- taking an answer ---

  void take_blank(const Place& place) {
    if (place.begins_element() && place.element > 0) {
      answers_.put(place, {Answer::Kind::nothing_more, {}});
    } else if (place.asks().opens_section()) {
      answers_.put(place, {Answer::Kind::value, "no"});
    } else {
      leave_open(place);
    }
  }

  void leave_open(const Place& place) {
    answers_.put(place, {Answer::Kind::not_known, {}});
    if (all_need(place)) say(*place.in().left_out, 4, "    ");
  }

  // Where the job has a word for it, that is said; else the fact is left out.
  void take_not_known(const Place& place) {
    const JobField* const field = place.asks().field();
    if (field == nullptr) return take_blank(place);
    const bool has_word =
        field->type == FieldType::choice &&
        std::find(field->choice->names.begin(), field->choice->names.end(), "unknown") != field->choice->names.end();
    if (!has_word) return leave_open(place);
    take_value(place, "unknown");
  }

  bool take_gate(const Place& place, std::string_view answer) {
    const auto yes = yes_or_no(answer, language_);
    if (!yes) {
      refuse(of_answer(AskWord::neither, answer), "");
      return false;
    }
    answers_.put(place, {Answer::Kind::value, *yes ? "yes" : "no"});
    return true;
  }

  [[nodiscard]] std::string of_answer(AskWord word, std::string_view answer) const {
    return words::say(word, language_, {{"answer", text::quoted(answer)}});
  }

  void refuse(std::string_view message, std::string_view help) {
    say(message, 4, "  ! ");
    while (!help.empty()) {
      const std::size_t end = std::min(help.find('\n'), help.size());
      say(help.substr(0, end), 4, "    ");
      help.remove_prefix(std::min(end + 1, help.size()));
    }
  }

  bool take_value(const Place& place, std::string text) {
    const JobField& field = *place.asks().field();
    text = as_a_job_has_it(text, field, language_);
    if (place.begins_element() && says_nothing_more(text, language_)) {
      answers_.put(place, {Answer::Kind::nothing_more, {}});
      return true;
    }
    if (is_text(field) && says_no_text(text, language_)) {
      leave_open(place);
      return true;
    }
    if (field.type == FieldType::flag) {
      if (const auto yes = yes_or_no(text, language_)) text = *yes ? "yes" : "no";
    }
    if (!holds(place, text)) return false;
    const std::vector<std::string> told = remarks(answers_.job(place), planner_, language_);
    answers_.put(place, {Answer::Kind::value, text});
    tell(place, told);
    return true;
  }

  // By the strict reader: the value itself, and together with what was told before it.
  bool holds(const Place& place, const std::string& text) {
    if (io::first_not_utf8(text)) {
      refuse(word_of(AskWord::not_utf8), word_of(AskWord::set_utf8));
      return false;
    }
    std::vector<Setting> facts = answers_.facts(place);
    facts.push_back({place.path(), text, ""});
    const JobFile read = job_from_settings(facts, catalog_);
    const auto fault = std::find_if(read.diagnostics.begin(), read.diagnostics.end(),
                                    [](const Diagnostic& d) { return d.code != "job.missing"; });
    if (fault == read.diagnostics.end()) return true;
    const JobField& field = *place.asks().field();
    if (fault->code == "job.no-unit") offered_ = with_usual_unit(field, text);
    const Refusal refusal = refusal_of(*fault, text, field, catalog_, language_);
    refuse(refusal.message, refusal.help);
    return false;
  }

  // Nobody guesses a unit: it is asked for, and Enter says yes.
  [[nodiscard]] static std::string with_usual_unit(const JobField& field, const std::string& number) {
    const std::string_view unit =
        field.type == FieldType::size ? "in" : shown(Measure(0.0, field.kind), UnitSystem::us).unit;
    return (number + ' ').append(unit);
  }

  // How the answer was understood, and what the planner says of it that it did not say before.
  void tell(const Place& place, const std::vector<std::string>& told_before) {
    const JobField& field = *place.asks().field();
    const std::string& text = answers_.at(place)->text;
    const auto read = io::read_value(field, text, catalog_);
    if (const auto* value = std::get_if<FieldValue>(&read)) {
      const std::string means = understood(field, *value);
      if (!means.empty() && means != text)
        say(words::say(AskWord::taken_as, language_, {{"answer", words::term(means, language_)}}), 4, "    ");
    }
    const Place next{place.section, place.element, place.question + 1};
    for (const std::string& remark : remarks(answers_.job(next), planner_, language_)) {
      if (std::find(told_before.begin(), told_before.end(), remark) == told_before.end()) say(remark, 4, "  * ");
    }
  }

  // --- the end ---

  Next confirm() {
    const std::vector<Setting> facts = answers_.facts();
    out_ << '\n' << word_of(AskWord::heading_job) << '\n' << settings_to_json(facts, catalog_);
    const std::vector<const Question*> open = still_to_find(facts);
    if (!open.empty()) {
      std::string names;
      for (const Question* question : open) (names += names.empty() ? "" : ", ") += question->path;
      say(words::say(AskWord::still_to_find, language_, {{"facts", names}}));
    }
    out_ << '\n';
    say(words::say(AskWord::write_it, language_, {{"file", file_}}), 2, "  ");
    say(AskWord::yes_back_or_stop, 4, "    ");
    for (;;) {
      const std::optional<std::string> line = prompt(word_of(AskWord::yes));
      if (!line) return Next::stop;
      const std::string_view answer = without_quotes(io::trimmed(*line));
      switch (said_in(answer, language_)) {
        case Said::blank:
        case Said::not_known:
          return Next::on;
        case Said::back:
          return Next::back;
        case Said::stop:
          return Next::stop;
        case Said::help:
          say(AskWord::end_help, 4, "    ");
          continue;
        case Said::value:
          break;
      }
      const auto yes = yes_or_no(answer, language_);
      if (yes) return *yes ? Next::on : Next::stop;
      refuse(of_answer(AskWord::none_of_these, answer), word_of(AskWord::yes_back_or_stop));
    }
  }

  std::istream& in_;
  std::ostream& out_;
  std::string file_;
  const Planner& planner_;
  const Catalog& catalog_;
  Language language_;
  Answers answers_;
  std::vector<Place> asked_;  // in order: the way back
  std::optional<AskWord> heading_;
  std::string offered_;  // "82 psi" for an 82: what Enter says yes to
};

}  // namespace

std::optional<std::vector<Setting>> interview(std::istream& in, std::ostream& out, std::string_view file,
                                              const Planner& planner, Language language) {
  return Interview(in, out, file, planner, language).run();
}

std::string closing_words(const std::vector<Setting>& facts, std::string_view file, Language language) {
  std::string command = "mainbore plan " + text::visible(shell_word(file));
  if (language != Language::english) (command += " --language ") += name_of(language);
  const std::vector<const Question*> open = still_to_find(facts);
  if (open.empty()) return words::say(AskWord::next_command, language, {{"command", command}}) + '\n';
  std::string text = open.size() == 1
                         ? std::string(words::say(AskWord::one_to_find, language))
                         : words::say(AskWord::facts_to_find, language, {{"count", std::to_string(open.size())}});
  text += '\n' + list_of(open, language) + std::string(words::say(AskWord::then_write, language)) + "\n  " + command;
  for (const Question* question : open) {
    text += " \\\n    --set " + std::string(question->path) + "=\"...\"";
  }
  return text + '\n';
}

}  // namespace mainbore::interview
