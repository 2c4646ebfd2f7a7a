#include "interview/interview.hpp"

#include <algorithm>
#include <array>
#include <cstdint>
#include <istream>
#include <ostream>

#include "interview/answers.hpp"
#include "interview/remarks.hpp"
#include "io/text/nearest.hpp"
#include "io/text/text_scan.hpp"
#include "report/text_page.hpp"
#include "text/foreign.hpp"

namespace mainbore::interview {
namespace {

using io::FieldType;
using io::FieldValue;
using io::JobField;

constexpr int width = 79;
constexpr std::string_view nothing_more = "nothing more";

// --- what a line may say ------------------------------------------------------------------------------------------

enum class Word : std::uint8_t { none, blank, not_known, help, back, stop };

template <std::size_t N>
bool is_one_of(std::string_view plain, const std::array<std::string_view, N>& words) {
  return std::find(words.begin(), words.end(), plain) != words.end();
}

// As compared: plain_name() has taken out blanks, hyphens and dots.
constexpr std::array<std::string_view, 15> words_not_known = {
    "don'tknow", "dontknow", "don\u2019tknow", "donotknow", "idon'tknow", "idontknow", "idon\u2019tknow", "unknown",
    "notknown",  "noidea",   "notsure",        "dunno",     "idk",        "dk",        "cannottell"};
constexpr std::array<std::string_view, 2> words_help = {"?", "help"};
constexpr std::array<std::string_view, 4> words_stop = {"stop", "quit", "exit", "cancel"};
constexpr std::array<std::string_view, 5> words_nothing = {"nothing", "nothingmore", "none", "nomore", "no"};
constexpr std::array<std::string_view, 3> words_no_text = {"none", "n/a", "no"};

Word word_of(std::string_view answer) {
  if (answer.empty()) return Word::blank;
  const std::string plain = io::plain_name(answer);
  if (is_one_of(plain, words_not_known)) return Word::not_known;
  if (is_one_of(plain, words_help)) return Word::help;
  if (plain == "back") return Word::back;
  return is_one_of(plain, words_stop) ? Word::stop : Word::none;
}

// Examples in messages stand in quotes, and are copied with them.
std::string_view without_quotes(std::string_view answer) {
  const bool quoted = answer.size() > 2 && answer.front() == '"' && answer.back() == '"';
  return quoted ? io::trimmed(answer.substr(1, answer.size() - 2)) : answer;
}

std::optional<bool> yes_or_no(std::string_view answer) {
  const std::string plain = io::plain_name(answer);
  if (plain == "yes" || plain == "y" || plain == "true") return true;
  if (plain == "no" || plain == "n" || plain == "false") return false;
  return std::nullopt;
}

// --- words for people ---------------------------------------------------------------------------------------------

bool is_text(const JobField& field) { return field.type == FieldType::text || field.type == FieldType::lines; }

std::string allowed(const Place& place, const Catalog& catalog) {
  const JobField* const field = place.asks().field();
  if (field == nullptr || field->type == FieldType::flag) return "yes or no";
  if (is_text(*field)) return {};
  std::string text = io::allowed_text(*field, catalog);
  if (place.begins_element()) text += place.element == 0 ? "; or: nothing" : "; or: nothing more";
  return text;
}

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
std::string list_of(const std::vector<const Question*>& open) {
  std::string text;
  for (const Question* question : open) {
    text += wrapped(
        std::string(question->path) + ": " + std::string(question->field()->help) + ". " + std::string(question->more),
        4, "  - ");
  }
  return text;
}

// --- the interview ------------------------------------------------------------------------------------------------

class Interview {
 public:
  Interview(std::istream& in, std::ostream& out, std::string_view file, const Planner& planner)
      : in_(in), out_(out), file_(file), planner_(planner), catalog_(planner.catalog()), answers_(planner.catalog()) {}

  std::optional<std::vector<Setting>> run() {
    say("This asks what is known of one tap, and writes " + file_ + " at the end.");
    say("Enter alone takes what stands in brackets. \"don't know\" is an answer everywhere: the plan then takes the "
        "safe side, and says so. \"?\" says more, \"back\" goes to the question before, \"stop\" leaves and writes "
        "nothing.");
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

  // --- from question to question ---

  [[nodiscard]] bool applies(const Place& place) const {
    const Question& question = place.asks();
    return question.applies == nullptr || question.applies(answers_.job(place));
  }

  // The question asked before; the first again where there is none.
  Place before() {
    if (asked_.empty()) {
      say("This is the first question.", 2);
      return {};
    }
    const Place place = asked_.back();
    asked_.pop_back();
    heading_ = {};
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
    if (heading_ != section.title) out_ << '\n' << section.title << '\n';
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
      switch (word_of(answer)) {
        case Word::help:
          put_help(place);
          continue;
        case Word::back:
          return Next::back;
        case Word::stop:
          return Next::stop;
        case Word::blank:
          take_blank(place);
          return Next::on;
        case Word::not_known:
          take_not_known(place);
          return Next::on;
        case Word::none:
          if (question.opens_section() ? take_gate(place, answer) : take_value(place, answer)) return Next::on;
      }
    }
  }

  void put_question(const Place& place) {
    const Question& question = place.asks();
    std::string text(question.ask);
    if (place.begins_element() && place.element > 0) text = "What else lies there?";
    out_ << '\n';
    say(text, 2, "  ");
    if (const std::string hint = allowed(place, catalog_); !hint.empty()) say(hint, 4, "    ");
    if (question.hint == nullptr) return;
    if (const std::string hint = question.hint(answers_.job(place), catalog_); !hint.empty()) say(hint, 4, "    ");
  }

  void put_help(const Place& place) {
    const Question& question = place.asks();
    if (const JobField* const field = question.field()) {
      say(place.path() + ": " + std::string(field->help), 4, "    ");
    }
    if (!question.more.empty()) say(question.more, 4, "    ");
    if (const std::string hint = allowed(place, catalog_); !hint.empty()) say(hint, 4, "    ");
    say("Also: don't know, back, stop.", 4, "    ");
  }

  // What an empty answer takes.
  [[nodiscard]] std::string default_of(const Place& place) const {
    const Answer* const earlier = answers_.at(place);
    if (earlier != nullptr && earlier->kind == Answer::Kind::value) return earlier->text;
    if (place.begins_element() && place.element > 0) return std::string(nothing_more);
    return std::string(place.asks().blank);
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
    if (all_need(place)) say(place.in().left_out, 4, "    ");
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
    const auto yes = yes_or_no(answer);
    if (!yes) {
      refuse("\"" + report::printable(answer) + "\" is neither yes nor no", "");
      return false;
    }
    answers_.put(place, {Answer::Kind::value, *yes ? "yes" : "no"});
    return true;
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
    if (place.begins_element() && is_one_of(io::plain_name(text), words_nothing)) {
      answers_.put(place, {Answer::Kind::nothing_more, {}});
      return true;
    }
    if (is_text(field) && is_one_of(io::plain_name(text), words_no_text)) {
      leave_open(place);
      return true;
    }
    if (field.type == FieldType::flag) {
      if (const auto yes = yes_or_no(text)) text = *yes ? "yes" : "no";
    }
    if (!holds(place, text)) return false;
    const std::vector<std::string> told = remarks(answers_.job(place), planner_);
    answers_.put(place, {Answer::Kind::value, text});
    tell(place, told);
    return true;
  }

  // By the strict reader: the value itself, and together with what was told before it.
  bool holds(const Place& place, const std::string& text) {
    if (io::first_not_utf8(text)) {
      refuse("that is not UTF-8 text", "set the terminal to UTF-8, or write without accents");
      return false;
    }
    std::vector<Setting> facts = answers_.facts(place);
    facts.push_back({place.path(), text, ""});
    const JobFile read = job_from_settings(facts, catalog_);
    const auto fault = std::find_if(read.diagnostics.begin(), read.diagnostics.end(),
                                    [](const Diagnostic& d) { return d.code != "job.missing"; });
    if (fault == read.diagnostics.end()) return true;
    if (fault->code == "job.no-unit") offered_ = with_usual_unit(*place.asks().field(), text);
    const bool flag = place.asks().field()->type == FieldType::flag;
    refuse(fault->message, flag ? "yes or no" : fault->help);
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
      if (!means.empty() && means != text) say("taken as " + means, 4, "    ");
    }
    const Place next{place.section, place.element, place.question + 1};
    for (const std::string& remark : remarks(answers_.job(next), planner_)) {
      if (std::find(told_before.begin(), told_before.end(), remark) == told_before.end()) say(remark, 4, "  * ");
    }
  }

  // --- the end ---

  Next confirm() {
    const std::vector<Setting> facts = answers_.facts();
    out_ << "\nTHE JOB\n" << settings_to_json(facts, catalog_);
    const std::vector<const Question*> open = still_to_find(facts);
    if (!open.empty()) {
      std::string names;
      for (const Question* question : open) (names += names.empty() ? "" : ", ") += question->path;
      say("Still to be found out before it can be planned: " + names + ".");
    }
    out_ << '\n';
    say("Write it to " + file_ + "?", 2, "  ");
    say("yes, back or stop", 4, "    ");
    for (;;) {
      const std::optional<std::string> line = prompt("yes");
      if (!line) return Next::stop;
      const std::string_view answer = without_quotes(io::trimmed(*line));
      switch (word_of(answer)) {
        case Word::blank:
        case Word::not_known:
          return Next::on;
        case Word::back:
          return Next::back;
        case Word::stop:
          return Next::stop;
        case Word::help:
          say("yes writes the file; back goes to the last question; stop leaves and writes nothing", 4, "    ");
          continue;
        case Word::none:
          break;
      }
      const auto yes = yes_or_no(answer);
      if (yes) return *yes ? Next::on : Next::stop;
      refuse("\"" + report::printable(answer) + "\" is none of these", "yes, back or stop");
    }
  }

  std::istream& in_;
  std::ostream& out_;
  std::string file_;
  const Planner& planner_;
  const Catalog& catalog_;
  Answers answers_;
  std::vector<Place> asked_;  // in order: the way back
  std::string_view heading_;
  std::string offered_;  // "82 psi" for an 82: what Enter says yes to
};

}  // namespace

std::optional<std::vector<Setting>> interview(std::istream& in, std::ostream& out, std::string_view file,
                                              const Planner& planner) {
  return Interview(in, out, file, planner).run();
}

std::string closing_words(const std::vector<Setting>& facts, std::string_view file) {
  std::string command = "mainbore plan " + text::visible(shell_word(file));
  const std::vector<const Question*> open = still_to_find(facts);
  if (open.empty()) return "next: " + command + '\n';
  std::string text = open.size() == 1 ? "one fact is still to be found out:\n"
                                      : std::to_string(open.size()) + " facts are still to be found out:\n";
  text += list_of(open) + "then write them into the file, or:\n  " + command;
  for (const Question* question : open) {
    text += " \\\n    --set " + std::string(question->path) + "=\"...\"";
  }
  return text + '\n';
}

}  // namespace mainbore::interview
