#include "interview/readings_asked.hpp"

#include <algorithm>
#include <istream>
#include <ostream>

#include "interview/spoken.hpp"
#include "io/record/readings_reader.hpp"
#include "io/text/nearest.hpp"
#include "io/text/text_scan.hpp"
#include "mainbore/readings_file.hpp"
#include "mainbore/report.hpp"
#include "mainbore/tap_record.hpp"
#include "mainbore/work.hpp"
#include "text/foreign.hpp"
#include "words/asking.hpp"
#include "words/terms.hpp"

namespace mainbore::interview {
namespace {

using words::AskWord;

// What may be answered to an entry of the record, and what stands in it.
class EntryWords {
 public:
  EntryWords(const RecordEntry& entry, const Catalog& catalog, Language language)
      : entry_(entry), field_(io::field_of(entry)), catalog_(catalog), language_(language) {}

  [[nodiscard]] std::string more() const {
    const std::string help(words::term(entry_.help, language_));
    const std::string may = allowed();
    return may.empty() ? help : help + "; " + may;
  }

  [[nodiscard]] std::string as_recorded(std::string_view answer) const {
    for (const std::string_view word : entry_.words) {
      if (folded(answer) == folded(words::term(word, language_))) return std::string(word);
    }
    return as_a_job_has_it(answer, field_, language_);
  }

  [[nodiscard]] std::string refusal(const Diagnostic& fault, const std::string& answer) const {
    const auto of_answer = [&](AskWord word) {
      return words::say(word, language_, {{"answer", text::quoted(answer)}}) + "; " + allowed();
    };
    if (entry_.type == RecordType::time) return of_answer(AskWord::not_a_time);
    if (entry_.type == RecordType::day) return of_answer(AskWord::not_a_day);
    if (!entry_.words.empty()) return of_answer(AskWord::not_a_word);
    const Refusal refused = refusal_of(fault, answer, field_, catalog_, language_);
    return refused.message + "; " + refused.help;
  }

 private:
  [[nodiscard]] std::string allowed() const {
    if (entry_.type == RecordType::time) return std::string(words::say(AskWord::a_time, language_));
    if (entry_.type == RecordType::day) return std::string(words::say(AskWord::a_day, language_));
    if (entry_.words.empty()) return interview::allowed(field_, catalog_, language_);
    std::string names;
    for (const std::string_view word : entry_.words)
      names.append(names.empty() ? "" : ", ").append(words::term(word, language_));
    return words::say(AskWord::one_of, language_, {{"words", names}});
  }

  const RecordEntry& entry_;
  io::JobField field_;
  const Catalog& catalog_;
  Language language_;
};

class Asking {
 public:
  Asking(std::istream& in, std::ostream& out, const Catalog& catalog, Language language)
      : in_(in), out_(out), catalog_(catalog), language_(language) {}

  // False: stopped.
  bool ask(const std::string& path, const std::string& question, const EntryWords& words, const std::string& more) {
    for (;;) {
      out_ << question << " > " << std::flush;
      std::string line;
      if (!std::getline(in_, line)) return false;
      const std::string answer(io::trimmed(line));
      switch (said_in(answer, language_)) {
        case Said::blank:
        case Said::not_known:
          return true;
        case Said::stop:
          return false;
        case Said::help:
          out_ << "  " << more << '\n';
          continue;
        default:
          break;
      }
      const Setting setting{path, words.as_recorded(answer), path};
      const ReadingsFile read = readings_from_settings(std::span(&setting, 1), catalog_);
      if (read.readings) {
        answers.push_back(setting);
        return true;
      }
      for (const Diagnostic& told : read.diagnostics) out_ << "  " << words.refusal(told, setting.value) << '\n';
    }
  }

  std::vector<Setting> answers;

 private:
  std::istream& in_;
  std::ostream& out_;
  const Catalog& catalog_;
  Language language_;
};

std::string question_of(const RecordEntry& entry, const Plan& plan, Audience crew) {
  std::string text(words::term(entry.label, crew.language));
  if (const StopNumber* stop_number = entry.reading ? plan.stop_number(*entry.reading) : nullptr) {
    text += " (" + bounds_in_words(*stop_number, crew) + ')';
  }
  return text;
}

}  // namespace

std::optional<std::vector<Setting>> ask_readings(std::istream& in, std::ostream& out, const Plan& plan, Audience crew,
                                                 const Catalog& catalog) {
  const Language language = crew.language;
  out << words::say(AskWord::readings_begin, language) << '\n';
  Asking asking(in, out, catalog, language);
  for (const RecordEntry& entry : record_entries()) {
    if (entry.key == RecordKey::order || (entry.needed == Needed::direct_tap && plan.method.kind != Method::direct))
      continue;
    const EntryWords words(entry, catalog, language);
    if (!asking.ask(std::string(entry.name), question_of(entry, plan, crew), words, words.more())) return std::nullopt;
  }
  const EntryWords a_line(entry_of(RecordKey::remarks), catalog, language);
  for (const Finding& finding : plan.findings) {
    if (finding.severity != Severity::hold) continue;
    const std::string path = "holds." + std::string(name_of(finding.code));
    const std::string more = fix_of(finding, crew, plan.stop_numbers);
    const std::size_t before = asking.answers.size();
    const std::string found =
        words::say(AskWord::hold_found, language, {{"hold", text_of(finding.code, language).title}});
    if (!asking.ask(path + ".found", found, a_line, more)) return std::nullopt;
    if (asking.answers.size() == before) continue;
    if (!asking.ask(path + ".by", std::string(words::say(AskWord::hold_by, language)), a_line, more))
      return std::nullopt;
  }
  return std::move(asking.answers);
}

}  // namespace mainbore::interview
