#include "interview/spoken.hpp"

#include <algorithm>
#include <array>
#include <span>
#include <utility>
#include <vector>

#include "io/text/nearest.hpp"
#include "io/text/text_scan.hpp"
#include "text/foreign.hpp"
#include "words/asking.hpp"
#include "words/terms.hpp"

namespace mainbore::interview {
namespace {

using io::FieldType;
using io::JobField;
using words::AnswerWords;
using words::AskWord;

using Words = std::span<const std::string_view> AnswerWords::*;

bool is_among(Words words, std::string_view plain, Language language) {
  const auto has = [&](Language one) {
    const auto& list = words::answer_words(one).*words;
    return std::find(list.begin(), list.end(), plain) != list.end();
  };
  return has(Language::english) || has(language);
}

// The words of a field, as a job has them; empty where it has none of its own.
std::span<const std::string_view> names_of(const JobField& field) {
  if (field.type == FieldType::material) return material_names;
  return field.type == FieldType::choice ? field.choice->names : std::span<const std::string_view>();
}

std::vector<std::string_view> spoken_names(const JobField& field, Language language) {
  std::vector<std::string_view> spoken;
  for (const std::string_view name : names_of(field)) spoken.push_back(words::term(name, language));
  return spoken;
}

bool is_letter(char c) {
  return (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z') || static_cast<unsigned char>(c) >= 0x80;
}

// "4 pies 6 pulg." -> "4 ft 6 in"
std::string with_units(std::string_view answer, Language language) {
  std::string out;
  while (!answer.empty()) {
    std::size_t end = 1;
    if (!is_letter(answer.front())) {
      while (end < answer.size() && !is_letter(answer[end])) ++end;
      out += answer.substr(0, end);
    } else {
      while (end < answer.size() && answer[end] != ' ') ++end;
      const std::string plain = folded(answer.substr(0, end));
      const auto& units = words::answer_words(language).units;
      const auto known = std::find_if(units.begin(), units.end(), [&](const auto& unit) { return unit.said == plain; });
      out += known == units.end() ? answer.substr(0, end) : known->unit;
    }
    answer.remove_prefix(end);
  }
  return out;
}

AskWord word_of(MeasureFault fault) {
  switch (fault) {
    case MeasureFault::empty:
      return AskWord::nothing_given;
    case MeasureFault::no_unit:
      return AskWord::no_unit;
    case MeasureFault::unknown_unit:
      return AskWord::unknown_unit;
    case MeasureFault::wrong_unit:
      return AskWord::wrong_unit;
    case MeasureFault::out_of_range:
      return AskWord::not_usable;
    case MeasureFault::trailing:
      return AskWord::left_over;
    case MeasureFault::two_numbers:
      return AskWord::two_numbers;
    default:
      return AskWord::no_number;
  }
}

// Makes the refusal of one answer.
class Refusing {
 public:
  Refusing(const Diagnostic& fault, std::string_view answer, const JobField& field, const Catalog& catalog,
           Language language)
      : fault_(fault),
        answer_(answer),
        quoted_(text::quoted(answer)),
        field_(field),
        language_(language),
        allowed_(allowed(field, catalog, language)),
        catalog_(catalog) {}

  [[nodiscard]] Refusal make() const {
    if (fault_.code == "job.contradiction") {
      return {std::string(words::term(fault_.message, language_)), std::string(words::term(fault_.help, language_))};
    }
    switch (field_.type) {
      case FieldType::quantity:
      case FieldType::size:
        return of_measure();
      case FieldType::material:
      case FieldType::choice:
        return of_word();
      case FieldType::flag:
        return {say(AskWord::neither), std::string(words::say(AskWord::yes_or_no, language_))};
      case FieldType::whole:
        return {say(fault_.code == "job.out-of-range" ? AskWord::out_of_range : AskWord::not_whole), allowed_};
      case FieldType::clock:
        return {say(AskWord::not_a_clock), allowed_};
      default:
        break;
    }
    if (field_.meaning == io::TextMeaning::day && io::first_not_utf8(answer_) == std::nullopt) {
      return {say(AskWord::not_a_day), std::string(words::say(AskWord::a_day, language_))};
    }
    return {say(AskWord::not_taken), std::string(words::say(AskWord::a_line, language_))};
  }

 private:
  [[nodiscard]] std::string say(AskWord word) const { return words::say(word, language_, {{"answer", quoted_}}); }

  [[nodiscard]] Refusal of_measure() const {
    const Kind kind = field_.type == FieldType::size ? Kind::length : field_.kind;
    const ParsedMeasure read = parse_measure(answer_, kind);
    if (read) return fault_.code == "job.out-of-range" ? out_of_range() : Refusal{say(AskWord::not_a_word), allowed_};
    const bool two = read.fault == MeasureFault::two_numbers && kind == Kind::pressure;
    const bool comma = read.fault == MeasureFault::unknown_unit && answer_.find(',') != std::string_view::npos;
    std::string help;
    if (read.fault == MeasureFault::no_unit) help = with_unit() + "; ";
    if (two) help = std::string(words::say(AskWord::the_highest, language_)) + "; ";
    if (comma) help = std::string(words::say(AskWord::no_comma, language_)) + "; ";
    return {say(word_of(read.fault)), help + allowed_};
  }

  [[nodiscard]] std::string with_unit() const {
    const std::string bare(io::trimmed(answer_));
    if (field_.type == FieldType::size) {
      const std::string inches = bare + " in";
      return words::say(AskWord::write_size, language_, {{"inches", inches}});
    }
    const auto with = [&](UnitSystem system) {
      return bare + ' ' + std::string(shown(Measure(0.0, field_.kind), system).unit);
    };
    const std::string us = with(UnitSystem::us);
    const std::string si = with(UnitSystem::si);
    return words::say(AskWord::write_either, language_, {{"us", us}, {"si", si}});
  }

  [[nodiscard]] Refusal out_of_range() const {
    const auto both = [](Measure measure) {
      const std::string us = format_measure(measure, UnitSystem::us);
      const std::string si = format_measure(measure, UnitSystem::si);
      return us == si ? us : us + " (" + si + ')';
    };
    const std::string least = both(field_.least);
    const std::string greatest = both(field_.greatest);
    Refusal refusal{say(AskWord::out_of_range),
                    words::say(AskWord::between, language_, {{"least", least}, {"greatest", greatest}})};
    const ParsedMeasure read = parse_measure(answer_, field_.kind);
    if (field_.path == "main.pressure" && read && read.value.base() < field_.least.base())
      refusal.help += '\n' + std::string(words::say(AskWord::dry_main, language_));
    return refusal;
  }

  // A word that is not among those of the field, or that could be several of them.
  [[nodiscard]] Refusal of_word() const {
    if (field_.type == FieldType::material) {
      if (const auto read = catalog_.read_material(answer_); !read.why_not.empty())
        return {quoted_ + ": " + std::string(words::term(read.why_not, language_)), allowed_};
    } else {
      for (const io::AskedWord& asked : field_.choice->asked) {
        if (io::plain_name(asked.word) == io::plain_name(answer_))
          return {say(AskWord::not_enough), std::string(words::term(asked.ask, language_))};
      }
    }
    Refusal refusal{say(AskWord::not_a_word), allowed_};
    if (const auto near = io::nearest(answer_, spoken_names(field_, language_)))
      refusal.help = words::say(AskWord::did_you_mean, language_, {{"word", *near}}) + "  " + refusal.help;
    return refusal;
  }

  const Diagnostic& fault_;
  std::string_view answer_;
  std::string quoted_;
  const JobField& field_;
  Language language_;
  std::string allowed_;
  const Catalog& catalog_;
};

}  // namespace

std::string folded(std::string_view text) {
  // In UTF-8 the accented letters of Spanish are C3 and one more byte.
  constexpr std::array<std::pair<std::string_view, char>, 7> accented = {{{"\x81\xA1", 'a'},
                                                                          {"\x89\xA9", 'e'},
                                                                          {"\x8D\xAD", 'i'},
                                                                          {"\x91\xB1", 'n'},
                                                                          {"\x93\xB3", 'o'},
                                                                          {"\x9A\xBA", 'u'},
                                                                          {"\x9C\xBC", 'u'}}};
  const std::string plain = io::plain_name(text);
  std::string out;
  for (std::size_t i = 0; i < plain.size(); ++i) {
    const auto* const letter = plain[i] != '\xC3' || i + 1 == plain.size()
                                   ? accented.end()
                                   : std::find_if(accented.begin(), accented.end(), [&](const auto& one) {
                                       return one.first.find(plain[i + 1]) != std::string_view::npos;
                                     });
    if (letter == accented.end()) {
      out += plain[i];
    } else {
      out += letter->second;
      ++i;
    }
  }
  return out;
}

Said said_in(std::string_view answer, Language language) {
  if (answer.empty()) return Said::blank;
  const std::string plain = folded(answer);
  if (is_among(&AnswerWords::not_known, plain, language)) return Said::not_known;
  if (is_among(&AnswerWords::help, plain, language)) return Said::help;
  if (is_among(&AnswerWords::back, plain, language)) return Said::back;
  return is_among(&AnswerWords::stop, plain, language) ? Said::stop : Said::value;
}

std::optional<bool> yes_or_no(std::string_view answer, Language language) {
  const std::string plain = folded(answer);
  if (is_among(&AnswerWords::yes, plain, language)) return true;
  if (is_among(&AnswerWords::no, plain, language)) return false;
  return std::nullopt;
}

bool says_nothing_more(std::string_view answer, Language language) {
  return is_among(&AnswerWords::nothing, folded(answer), language);
}

bool says_no_text(std::string_view answer, Language language) {
  return is_among(&AnswerWords::no_text, folded(answer), language);
}

std::string as_a_job_has_it(std::string_view answer, const JobField& field, Language language) {
  if (language == Language::english) return std::string(answer);
  if (field.type == FieldType::quantity || field.type == FieldType::size) return with_units(answer, language);
  for (const std::string_view name : names_of(field)) {
    if (folded(answer) == folded(words::term(name, language))) return std::string(name);
  }
  return std::string(answer);
}

std::string as_people_say(std::string_view value, const JobField& field, Language language) {
  if (field.type == FieldType::flag) {
    if (const auto yes = yes_or_no(value, Language::english))
      return std::string(words::say(*yes ? AskWord::yes : AskWord::no, language));
  }
  const auto names = names_of(field);
  const bool word = std::find(names.begin(), names.end(), value) != names.end();
  return std::string(word ? words::term(value, language) : value);
}

std::string allowed(const JobField& field, const Catalog& catalog, Language language) {
  switch (field.type) {
    case FieldType::text:
    case FieldType::lines:
      return {};
    case FieldType::flag:
      return std::string(words::say(AskWord::yes_or_no, language));
    case FieldType::size:
      return std::string(words::say(AskWord::a_size, language));
    case FieldType::clock:
      return std::string(words::say(AskWord::a_clock, language));
    case FieldType::material:
    case FieldType::choice:
      return words::say(AskWord::one_of, language, {{"words", io::listed(spoken_names(field, language))}});
    case FieldType::whole:
      return words::say(AskWord::whole_between, language,
                        {{"least", format_measure(field.least, UnitSystem::us)},
                         {"greatest", format_measure(field.greatest, UnitSystem::us)}});
    case FieldType::quantity:
    case FieldType::machine:
      break;
  }
  return std::string(words::term(io::allowed_text(field, catalog), language));
}

Refusal refusal_of(const Diagnostic& fault, std::string_view answer, const JobField& field, const Catalog& catalog,
                   Language language) {
  return Refusing(fault, answer, field, catalog, language).make();
}

}  // namespace mainbore::interview
