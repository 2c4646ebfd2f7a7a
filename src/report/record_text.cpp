// A record of a tap on a page.
#include <algorithm>

#include "mainbore/measure.hpp"
#include "mainbore/report.hpp"
#include "mainbore/tap_record.hpp"
#include "mainbore/work.hpp"
#include "report/text_page.hpp"

namespace mainbore {
namespace {

std::string capital(std::string text) {
  if (!text.empty() && text.front() >= 'a' && text.front() <= 'z')
    text.front() = static_cast<char>(text.front() - 'a' + 'A');
  return text;
}

class RecordPage {
 public:
  RecordPage(const TapRecord& record, UnitSystem units, int width)
      : record_(record), units_(units), page_(width, false) {}

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
  void head() {
    const std::string count = std::to_string(record_.missing.size());
    page_.title(record_.is_void()       ? "RECORD - the sheet is void"
                : record_.is_complete() ? "RECORD - complete"
                                        : "RECORD - " + count + " missing");
    const Plan& planned = record_.planned;
    std::string order;
    const std::string number = record_.readings.has(RecordKey::tap_number)
                                   ? "tap " + std::to_string(record_.readings.tap_number())
                                   : std::string();
    for (const std::string* part : {&planned.job.id, &number, &planned.job.place, &planned.job.crew}) {
      if (!part->empty()) order += (order.empty() ? "" : "; ") + *part;
    }
    if (!order.empty()) page_.paragraph(order);
    page_.field("Planned", summary_of(planned, units_).whole(), 20);
    page_.field("With readings", summary_of(record_.found, units_).whole(), 20);
  }

  void reasons() {
    if (!record_.is_void()) return;
    page_.heading("WHY THE SHEET IS VOID", "stop, and plan again with these readings");
    for (const VoidReason& why : record_.because) page_.coded(capital(why.text), std::string(why.code), 4, "  - ");
  }

  void stop_numbers() {
    if (record_.judged.empty()) return;
    page_.heading("STOP NUMBERS");
    for (const JudgedReading& one : record_.judged) {
      std::string text = bounds_in_words(one.stop_number, units_);
      if (one.value)
        text += "; read " + value_in_words(one, units_) + ": " +
                std::string(judged_names[static_cast<std::size_t>(one.judged)]);
      else text += "; not read";
      page_.field(capital(std::string(words_of(one.stop_number.id))), text, 36);
    }
  }

  void as_built() {
    page_.heading("AS BUILT");
    for (const RecordEntry& entry : record_entries()) {
      const bool said = entry.key == RecordKey::order || entry.key == RecordKey::tap_number;
      if (said || !record_.readings.has(entry.key)) continue;
      page_.field(entry.label, written(entry, record_.readings.at(entry.key), units_), 36);
    }
  }

  void holds() {
    if (record_.holds.empty() && record_.settled.empty()) return;
    page_.heading("HOLDS");
    for (const FindingCode code : record_.settled) {
      page_.paragraph(capital(std::string(text_of(code).title)) + ": settled by what was read.", 4, "  - ");
    }
    for (const HoldLeft& hold : record_.holds) {
      std::string text = capital(std::string(text_of(hold.code).title)) + ": ";
      if (!hold.found.empty()) text += hold.found + (hold.by.empty() ? std::string() : ", by " + hold.by) + '.';
      else text += hold.by_reading ? "cleared by the gauge." : "not written as cleared.";
      page_.paragraph(text, 4, "  - ");
    }
  }

  void deviations() {
    if (record_.deviations.empty()) return;
    page_.heading("DEVIATIONS");
    for (const Deviation& one : record_.deviations) {
      std::string text = one.what + ": ";
      if (!one.done.empty()) text += one.done + ", planned " + one.planned + ": ";
      page_.paragraph(text + (one.reason.empty() ? "no reason given." : one.reason), 4, "  - ");
    }
  }

  void missing() {
    if (record_.is_complete()) return;
    page_.heading("STILL MISSING");
    for (const Missing& one : record_.missing) page_.coded(one.label, one.name, 4, "  - ");
  }

  const TapRecord& record_;
  UnitSystem units_;
  report::TextPage page_;
};

}  // namespace

std::string record_text(const TapRecord& record, UnitSystem units, int width) {
  return RecordPage(record, units, width).write();
}

}  // namespace mainbore
