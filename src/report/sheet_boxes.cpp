#include "report/sheet_boxes.hpp"

#include <algorithm>
#include <vector>

#include "mainbore/finding_words.hpp"
#include "mainbore/measure.hpp"
#include "mainbore/tap_record.hpp"
#include "mainbore/work.hpp"
#include "words/leak_words.hpp"
#include "words/sheet_boxes.hpp"
#include "words/terms.hpp"

namespace mainbore::report {
namespace {

using words::BoxWord;

// As the script knows them.
std::string_view kind_of(const RecordEntry& entry) {
  if (entry.key == RecordKey::clock) return "clock";
  if (entry.key == RecordKey::leak_check) return "leak";
  switch (entry.type) {
    case RecordType::day:
      return "day";
    case RecordType::time:
      return "time";
    case RecordType::whole:
      return "whole";
    case RecordType::choice:
      return "choice";
    case RecordType::text:
      return "text";
    case RecordType::quantity:
      break;
  }
  switch (entry.kind) {
    case Kind::length:
    case Kind::tape:
    case Kind::distance:
      return "length";
    case Kind::pressure:
      return "pressure";
    case Kind::temperature:
      return "temperature";
    default:
      return "number";
  }
}

std::string number(double value) {
  constexpr int places = 6;
  std::string text;
  append_number(text, value, places);
  return text;
}

// "sound=sano|pitted=picado": as the file has it, and as it is shown.
std::string choices(const RecordEntry& entry, Language language) {
  std::string list;
  const auto add = [&](std::string_view word) {
    list.append(list.empty() ? "" : "|").append(word).append("=").append(words::term(word, language));
  };
  if (entry.key == RecordKey::condition) std::for_each(condition_names.begin(), condition_names.end(), add);
  else std::for_each(entry.words.begin(), entry.words.end(), add);
  return list;
}

// The lists of leak_words.hpp, in their order.
std::string leak_lists() {
  std::string lists;
  for (const std::string_view list : words::leak_words()) lists.append(lists.empty() ? "" : "|").append(list);
  return lists;
}

}  // namespace

std::string reads_of(ReadingId id) {
  const auto entries = record_entries();
  const auto entry =
      std::find_if(entries.begin(), entries.end(), [&](const RecordEntry& one) { return one.reading == id; });
  return std::string(entry->name);
}

std::string reads_of(FindingCode hold, HoldBox box) {
  return "holds." + std::string(name_of(hold)) + (box == HoldBox::found ? ".found" : ".by");
}

void write_boxes(HtmlWriter& out, const Plan& plan, Audience audience) {
  const auto say = [&](BoxWord word) { return std::string(words::say(word, audience.language)); };
  out.start("ul", {{"class", "reads"},
                   {"hidden", "hidden"},
                   {"data-order", plan.job.id},
                   {"data-inside", say(BoxWord::inside)},
                   {"data-outside", say(BoxWord::outside)},
                   {"data-unreadable", say(BoxWord::unreadable)},
                   {"data-holds", say(BoxWord::holds)},
                   {"data-leaks", say(BoxWord::leaks)},
                   {"data-unsure", say(BoxWord::unsure)},
                   {"data-first", say(BoxWord::first)},
                   {"data-save", say(BoxWord::save)},
                   {"data-saved", say(BoxWord::saved)},
                   {"data-hold", say(BoxWord::hold)}});
  for (const RecordEntry& entry : record_entries()) {
    if (entry.key == RecordKey::order) continue;
    const StopNumber* const stop_number = entry.reading ? plan.stop_number(*entry.reading) : nullptr;
    std::vector<Attribute> list = {{"data-name", std::string(entry.name)}, {"data-kind", std::string(kind_of(entry))}};
    const auto add = [&](std::string_view name, std::string value) {
      if (!value.empty()) list.push_back({name, std::move(value)});
    };
    if (entry.type == RecordType::quantity) {
      add("data-unit",
          std::string(shown(Measure(0.0, stop_number != nullptr ? stop_number->kind() : entry.kind), audience).unit));
    }
    if (entry.least < entry.greatest) {
      add("data-from", number(entry.least));
      add("data-to", number(entry.greatest));
    }
    if (stop_number != nullptr) {
      const BoundTexts bounds = printed_bounds(*stop_number, audience);
      add("data-least", bounds.least);
      add("data-most", bounds.most);
    }
    if (entry.type == RecordType::choice) add("data-words", choices(entry, audience.language));
    if (entry.key == RecordKey::leak_check) add("data-words", leak_lists());
    out.start("li", list).text(words::term(entry.label, audience.language)).end();
  }
  out.end().line();
}

}  // namespace mainbore::report
