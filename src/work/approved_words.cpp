// What the approved list has for a tap, in words.
#include "mainbore/measure.hpp"
#include "mainbore/work.hpp"
#include "words/terms.hpp"

namespace mainbore {

std::string approved_in_words(const ApprovedItem& item, Audience audience) {
  std::string text;
  const auto add = [&](const std::string& part) {
    if (!part.empty()) text += (text.empty() ? "" : ", ") + part;
  };
  const auto term = [&](std::string_view word) { return std::string(words::term(word, audience.language)); };
  if (item.kind == ApprovedKind::stop || item.kind == ApprovedKind::cutter || item.kind == ApprovedKind::tap) {
    add(item.size.label() + " in" + (item.thread ? ' ' + std::string(name_of(*item.thread)) : std::string()));
  }
  if (item.od_from && item.od_to) {
    const std::string between = " " + term("to") + " ";
    add(on_caliper(*item.od_from, audience) + between + on_caliper(*item.od_to, audience));
  }
  if (item.kind == ApprovedKind::chain && item.length) add(format_measure(Measure(*item.length, Kind::tape), audience));
  if (item.straps) add(std::to_string(*item.straps) + ' ' + term(*item.straps == 1 ? "strap" : "straps"));
  add(item.text);
  if (!item.stock.empty()) add(term("stock") + ' ' + item.stock);
  if (item.torque) add(term("nuts") + ' ' + format_measure(*item.torque, audience));
  return text;
}

std::string approved_in_words(const ChosenMethod& method, Audience audience) {
  std::string text;
  for (const ApprovedItem* item : method.fittings) {
    text += (text.empty() ? "" : "; ") + std::string(words::term(words_of(item->kind), audience.language)) + ' ' +
            approved_in_words(*item, audience);
  }
  return text;
}

}  // namespace mainbore
