// A record of a tap on a page.
#include <initializer_list>
#include <string>

#include "mainbore/measure.hpp"
#include "mainbore/report.hpp"
#include "mainbore/tap_record.hpp"
#include "mainbore/work.hpp"
#include "report/text_page.hpp"
#include "words/record.hpp"
#include "words/terms.hpp"

namespace mainbore {
namespace {

using words::RecordWord;

class RecordPage {
 public:
  RecordPage(const TapRecord& record, Audience audience, int width)
      : record_(record), audience_(audience), units_(audience.units), page_(width, false) {}

  std::string write() && {
    head();
    reasons();
    stop_numbers();
    as_built();
    holds();
    deviations();
    missing();
    return std::move(page_).take();
  }

 private:
  [[nodiscard]] std::string say(RecordWord word, std::initializer_list<words::Figure> figures = {}) const {
    return words::say(word, audience_.language, figures);
  }

  void head() {
    page_.title(record_.leak_check() == LeakCheck::leaks ? say(RecordWord::title_leaks)
                : record_.is_void()                      ? say(RecordWord::title_void)
                : record_.is_complete()
                    ? say(RecordWord::title_complete)
                    : say(RecordWord::title_missing, {{"count", std::to_string(record_.missing.size())}}));
    const Plan& planned = record_.planned;
    std::string order;
    const std::string number =
        record_.readings.has(RecordKey::tap_number)
            ? say(RecordWord::tap_number, {{"number", std::to_string(record_.readings.tap_number())}})
            : std::string();
    for (const std::string* part : {&planned.job.id, &number, &planned.job.place, &planned.job.crew}) {
      if (!part->empty()) order += (order.empty() ? "" : "; ") + *part;
    }
    if (!order.empty()) page_.paragraph(order);
    page_.field(say(RecordWord::planned), answer_of(planned), 20);
    // Of what cannot be planned with, such as a joint's distance, the plan knows nothing.
    const bool goes = record_.found.verdict == Verdict::go;
    page_.field(say(RecordWord::with_readings),
                goes && record_.is_outside()                       ? say(RecordWord::holds_outside)
                : goes && record_.leak_check() == LeakCheck::leaks ? say(RecordWord::holds_leaking)
                                                                   : answer_of(record_.found),
                20);
  }

  [[nodiscard]] std::string answer_of(const Plan& plan) const {
    const Summary summary = summary_of(plan, audience_);
    return std::string(words::term(summary.verdict, audience_.language)) + ": " + summary.sentence();
  }

  void reasons() {
    if (!record_.is_void()) return;
    page_.heading(say(RecordWord::why_void), say(RecordWord::why_void_beside));
    for (const VoidReason& why : record_.because)
      page_.coded(words::sentence_case(why.text), std::string(why.code), 4, "  - ");
  }

  void stop_numbers() {
    if (record_.judged.empty()) return;
    page_.heading(say(RecordWord::stop_numbers));
    for (const JudgedReading& one : record_.judged) {
      const std::string bounds = bounds_in_words(one.stop_number, audience_);
      const std::string value = one.value ? value_in_words(one, units_) : std::string();
      const RecordWord word = one.judged == Judged::unread   ? RecordWord::not_read
                              : one.judged == Judged::inside ? RecordWord::read_inside
                                                             : RecordWord::read_outside;
      page_.field(words::sentence_case(std::string(words_of(one.stop_number.id, audience_.language))),
                  one.judged == Judged::unread ? say(word, {{"bounds", bounds}})
                                               : say(word, {{"bounds", bounds}, {"value", value}}),
                  36);
    }
  }

  // A word of a choice is a fact of the table, and has its term.
  [[nodiscard]] std::string value_of(const RecordEntry& entry) const {
    std::string value = written(entry, record_.readings.at(entry.key), units_);
    const bool word = entry.type == RecordType::choice;
    return word ? std::string(words::term(value, audience_.language)) : value;
  }

  void as_built() {
    page_.heading(say(RecordWord::as_built));
    for (const RecordEntry& entry : record_entries()) {
      const bool said = entry.key == RecordKey::order || entry.key == RecordKey::tap_number;
      if (said || !record_.readings.has(entry.key)) continue;
      page_.field(words::term(entry.label, audience_.language), value_of(entry), 36);
    }
  }

  [[nodiscard]] std::string title_of(FindingCode code) const {
    return words::sentence_case(std::string(text_of(code, audience_.language).title));
  }

  void holds() {
    if (record_.holds.empty() && record_.settled.empty()) return;
    page_.heading(say(RecordWord::holds));
    for (const FindingCode code : record_.settled)
      page_.paragraph(say(RecordWord::hold_settled, {{"hold", title_of(code)}}), 4, "  - ");
    for (const HoldLeft& hold : record_.holds) {
      const std::string title = title_of(hold.code);
      const RecordWord word = !hold.found.empty() ? RecordWord::hold_cleared
                              : hold.by_reading   ? RecordWord::hold_by_gauge
                                                  : RecordWord::hold_open;
      page_.paragraph(say(word, {{"hold", title}, {"found", hold.found}, {"by", hold.by}}), 4, "  - ");
    }
  }

  void deviations() {
    if (record_.deviations.empty()) return;
    page_.heading(say(RecordWord::deviations));
    for (const Deviation& one : record_.deviations) {
      const RecordWord word = one.done.empty() ? RecordWord::deviation_told : RecordWord::deviation;
      page_.paragraph(
          say(word, {{"what", one.what}, {"done", one.done}, {"planned", one.planned}, {"reason", one.reason}}), 4,
          "  - ");
    }
  }

  void missing() {
    if (record_.is_complete()) return;
    page_.heading(say(RecordWord::missing));
    for (const Missing& one : record_.missing) page_.coded(one.label, one.name, 4, "  - ");
  }

  const TapRecord& record_;
  Audience audience_;
  UnitSystem units_;
  report::TextPage page_;
};

}  // namespace

std::string record_text(const TapRecord& record, Audience audience, int width) {
  return RecordPage(record, audience, width).write();
}

}  // namespace mainbore
