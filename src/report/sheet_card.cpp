// The first page of a field sheet: the card with the drawings that matter.
#include <algorithm>
#include <cmath>

#include "mainbore/measure.hpp"
#include "mainbore/rule_words.hpp"
#include "report/sheet_boxes.hpp"
#include "report/sheet_page.hpp"

namespace mainbore::report {

using words::SheetWord;

void Sheet::first_page() {
  out_.start("section", {{"class", "page"}, {"style", filling(lines_on_card())}}).line();
  verdict();
  if (no_go()) stops();
  else readings_and_drawings();
  holds();
  bring();
  odd();
  if (no_go()) {
    always(true, true);
    foot();
  }
  out_.end().line();
}

void Sheet::verdict() {
  out_.start("header").start("div", {{"class", "verdict"}}).element("h1", card_.verdict);
  for (std::string line : card_.what) {
    std::replace(line.begin(), line.end(), hard_space, ' ');
    out_.prose_element("p", line);
  }
  out_.end().line();
  const auto known_cover = plan_.job.main.known_cover();
  const std::string cover = known_cover ? show(Measure(*known_cover, Kind::distance)) : std::string();
  const std::string rules = plan_.rules != nullptr ? documents_in_words(*plan_.rules) : std::string();
  const std::pair<std::string_view, const std::string*> given[] = {{said(SheetWord::order), &plan_.job.id},
                                                                   {said(SheetWord::place), &plan_.job.place},
                                                                   {said(SheetWord::planned_for), &plan_.job.date},
                                                                   {said(SheetWord::crew), &plan_.job.crew},
                                                                   {said(SheetWord::cover), &cover},
                                                                   {said(SheetWord::rules), &rules}};
  if (std::any_of(std::begin(given), std::end(given), [](const auto& fact) { return !fact.second->empty(); })) {
    out_.start("dl", {{"class", "facts"}});
    for (const auto& [label, text] : given) {
      if (!text->empty()) out_.start("div").element("dt", label).text(" ").prose_element("dd", *text).end();
    }
    out_.end().line();
  }
  // Who decides stands first among the cautions.
  const auto list = cautions(plan_, audience_);
  if (!list.empty()) {
    out_.start("p", {{"class", "who"}}).text(list.front().text);
    utility_says(list.front().code);
    out_.end();
  }
  if (!card_.translation.empty()) out_.element("p", card_.translation, {{"class", "who"}});
  out_.end().line();
}

void Sheet::stops() {
  heading(SheetWord::what_stops_it, SheetWord::what_stops_it_beside);
  out_.start("ul", {{"class", "plain"}}).line();
  for (const std::string& text : card_.stops) out_.prose_element("li", text).line();
  out_.end().line();
}

void Sheet::readings_and_drawings() {
  out_.start("div", {{"class", "pair"}}).start("div", {{"class", "half"}}).line();
  stop_numbers();
  set_up();
  marks();
  out_.end().start("div", {{"class", "half"}}).line();
  body_ += figures_;
  out_.end().end().line();
}

bool Sheet::moved_or_near() const {
  return !plan_.location.clearings.empty() || std::fabs(plan_.location.shift.base()) > 1e-9;
}

void Sheet::stop_numbers() {
  if (card_.readings.empty()) return;
  heading(SheetWord::stop_numbers, SheetWord::stop_numbers_beside);
  out_.start("table").start("tr");
  for (const std::string_view column :
       {said(SheetWord::column_read), said(SheetWord::column_bounds), said(SheetWord::column_reading)})
    out_.element("th", column, {{"scope", "col"}});
  out_.end().line();
  for (const CardReading& reading : card_.readings) {
    out_.start("tr").element("th", reading.what, {{"scope", "row"}});
    out_.prose_element("td", reading.bounds, {{"class", "limit"}});
    out_.element("td", "", {{"class", "read"}, {"data-reads", reads_of(reading.id)}}).end().line();
  }
  out_.end().line();
}

void Sheet::set_up() {
  heading(SheetWord::setup);
  out_.start("dl", {{"class", "rows"}}).line();
  for (const CardLine& line : card_.setup) {
    out_.start("div").element("dt", line.label).text(" ").prose_element("dd", line.text).end().line();
  }
  out_.end().line();
}

void Sheet::marks() {
  if (card_.marks.empty()) return;
  heading(SheetWord::marks, SheetWord::marks_beside);
  out_.start("dl", {{"class", "rows"}}).line();
  for (const BarMark& mark : card_.marks) {
    const std::string label = std::string(mark.sign) + " " + std::string(mark.name);
    out_.start("div").element("dt", label).text(" ").prose_element("dd", mark.where).end().line();
  }
  if (!card_.makeup.empty()) {
    out_.start("div").element("dt", said(SheetWord::makeup)).text(" ").prose_element("dd", card_.makeup).end().line();
  }
  out_.end().line();
}

void Sheet::holds() {
  for (const Clears clears : {Clears::office, Clears::site}) {
    const bool any =
        std::any_of(card_.holds.begin(), card_.holds.end(), [&](const auto& h) { return h.clears == clears; });
    if (!any) continue;
    if (clears == Clears::office) heading(no_go() ? SheetWord::office_open : SheetWord::office);
    else if (no_go()) heading(SheetWord::pipe_open);
    else heading(SheetWord::pipe, SheetWord::pipe_beside);
    out_.start("ol", {{"class", "holds"}}).line();
    for (const CardHold& hold : card_.holds) {
      if (hold.clears != clears) continue;
      out_.start("li")
          .prose_element("span", std::to_string(hold.number) + ". " + hold.text, {{"class", "what"}})
          .text(" ");
      out_.start("span", {{"class", "boxes"}});
      blank("", hold.unit, "first", reads_of(hold.code, HoldBox::found));
      blank(said(SheetWord::by), {}, {}, reads_of(hold.code, HoldBox::by));
      out_.end().end().line();
    }
    out_.end().line();
  }
}

void Sheet::bring() {
  if (card_.bring.empty()) return;
  heading(SheetWord::bring, SheetWord::bring_beside);
  out_.start("dl", {{"class", "bring"}}).line();
  for (const CardGroup& group : card_.bring) {
    out_.start("div").element("dt", group.label).text(" ").start("dd");
    for (const std::string& thing : group.things) out_.prose_element("span", thing, {{"class", "tick"}}).text(" ");
    out_.end().end().line();
  }
  out_.end().line();
}

void Sheet::odd() { odd(0, no_go() ? card_.odd.size() : room_for_odd()); }

void Sheet::odd_left() { odd(room_for_odd(), card_.odd.size()); }

void Sheet::odd(std::size_t from, std::size_t to) {
  if (from >= to) return;
  out_.start("div", {{"class", "odd"}});
  heading(SheetWord::about);
  out_.start("ul", {{"class", "plain"}}).line();
  for (std::size_t i = from; i < to; ++i) out_.prose_element("li", card_.odd[i]).line();
  out_.end().end().line();
}

}  // namespace mainbore::report
