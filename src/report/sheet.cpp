// The field sheet: three pages of paper at most, the plan's parts in the order a crew needs them. All engineering is the
// plan's; the first page is its card.
#include "mainbore/sheet.hpp"

#include <algorithm>
#include <array>
#include <cmath>
#include <vector>

#include "mainbore/evidence.hpp"
#include "mainbore/fingerprint.hpp"
#include "mainbore/measure.hpp"
#include "mainbore/report.hpp"
#include "mainbore/wording.hpp"
#include "mainbore/work.hpp"
#include "report/card.hpp"
#include "report/figures/figures.hpp"
#include "report/html_writer.hpp"
#include "report/settings_words.hpp"
#include "report/sheet_lines.hpp"
#include "report/sheet_style.hpp"
#include "words/card.hpp"
#include "words/sheet.hpp"
#include "words/terms.hpp"
#include "work/filled_words.hpp"

namespace mainbore {
namespace {

using report::Card;
using report::HtmlWriter;
using words::SheetWord;

std::string sentence_case(std::string text) {
  if (!text.empty() && text.front() >= 'a' && text.front() <= 'z')
    text.front() = static_cast<char>(text.front() - 'a' + 'A');
  return text;
}

std::string number(double value, int decimals) {
  std::string text;
  append_number(text, value, decimals);
  return text;
}

// Paper in the units of the print style, 96 to the inch: what letter and A4 both have between the margins.
namespace paper {
constexpr double page = 990.0;
constexpr double half_column = 26.3;   // ems of body type
constexpr double whole_column = 53.6;
constexpr double least_line = 15.4;
constexpr double most_line = 18.4;     // further apart than this, lines read as a list of lists
constexpr double heading = 1.75;       // lines
constexpr double plain_heading = 1.4;  // across the page
// Words are not set quite as counted: kept free on each page.
constexpr double spare = 3.0;
}  // namespace paper

// How many lines a text takes.
double lines_of(std::initializer_list<std::string_view> texts, double column) {
  report::Lines lines(column);
  for (const std::string_view text : texts) lines.add(text);
  return lines.count();
}

// Lines set so far apart that they fill a page, within what reads well.
std::string filling(double lines) {
  const double apart = std::clamp(paper::page / (lines + paper::spare), paper::least_line, paper::most_line);
  return "line-height:" + number(0.75 * apart, 2) + "pt";
}

class Sheet {
 public:
  Sheet(std::string& body, const Plan& plan, Audience audience, int count)
      : body_(body), out_(body), plan_(plan), audience_(audience), card_(report::card_of(plan, audience)),
        steps_(procedure(plan, audience)), prefix_("s" + std::to_string(count) + "-") {
    HtmlWriter beside(figures_);
    if (no_go()) return;
    const auto room = [](const report::FigureRoom& figure) { return 1.15 * figure.words + figure.drawing; };
    figures_room_ = moved_or_near() ? room(report::write_along_figure(beside, plan, audience, prefix_))
                                    : room(report::write_section_figure(beside, plan, audience, prefix_));
    figures_room_ += room(report::write_machine_figure(beside, plan, audience, prefix_));
  }

  void write() {
    out_.start("article", {{"class", "sheet " + std::string(name_of(plan_.verdict))}}).line();
    jumps();
    first_page();
    work_and_after();
    more();
    out_.end().line();
  }

 private:
  [[nodiscard]] std::string show(Measure measure) const { return format_measure(measure, audience_); }
  [[nodiscard]] bool no_go() const { return plan_.verdict == Verdict::no_go || plan_.method.kind == Method::none; }
  [[nodiscard]] std::string id(std::string_view name) const { return prefix_ + std::string(name); }

  [[nodiscard]] std::vector<const Finding*> of(Severity severity) const {
    std::vector<const Finding*> list;
    for (const Finding& finding : plan_.findings) {
      if (finding.severity == severity) list.push_back(&finding);
    }
    return list;
  }

  [[nodiscard]] std::string_view said(SheetWord word) const { return say(word, audience_.language); }
  void heading(SheetWord word) { heading(said(word)); }
  void heading(SheetWord word, SheetWord beside) { heading(said(word), said(beside)); }
  void heading(std::string_view text, std::string_view beside = {}) {
    out_.start("h2").text(text);
    if (!beside.empty()) out_.text(" ").element("small", beside);
    out_.end().line();
  }

  // A label and a line to write on.
  void blank(std::string_view label, std::string_view unit = {}, std::string_view style = {}) {
    if (style.empty()) out_.start("span");
    else out_.start("span", {{"class", std::string(style)}});
    out_.text(label).text(" ").start("i", {{"class", "blank"}}).text("").end();
    if (!unit.empty()) out_.text(" ").text(unit);
    out_.end();
  }

  // ---- where things are, for a screen

  void jumps() {
    if (no_go()) return;
    out_.start("nav");
    std::string_view phase;
    int count = 0;
    for (const Step& step : steps_) {
      if (step.phase == phase) continue;
      phase = step.phase;
      out_.element("a", phase, {{"href", "#" + id("phase" + std::to_string(++count))}}).text(" ");
    }
    out_.element("a", said(SheetWord::trouble_link), {{"href", "#" + id("trouble")}}).text(" ");
    out_.element("a", said(SheetWord::record_link), {{"href", "#" + id("record")}}).end().line();
  }

  // ---- the first page: the card

  void first_page() {
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

  void verdict() {
    out_.start("header").start("div", {{"class", "verdict"}}).element("h1", card_.verdict);
    for (std::string line : card_.what) {
      std::replace(line.begin(), line.end(), report::hard_space, ' ');
      out_.element("p", line);
    }
    out_.end().line();
    const auto known_cover = plan_.job.main.known_cover();
    const std::string cover = known_cover ? show(Measure(*known_cover, Kind::distance)) : std::string();
    const std::pair<std::string_view, const std::string*> given[] = {{said(SheetWord::order), &plan_.job.id},
                                                                     {said(SheetWord::place), &plan_.job.place},
                                                                     {said(SheetWord::planned_for), &plan_.job.date},
                                                                     {said(SheetWord::crew), &plan_.job.crew},
                                                                     {said(SheetWord::cover), &cover}};
    if (std::any_of(std::begin(given), std::end(given), [](const auto& fact) { return !fact.second->empty(); })) {
      out_.start("dl", {{"class", "facts"}});
      for (const auto& [label, text] : given) {
        if (!text->empty()) out_.start("div").element("dt", label).text(" ").element("dd", *text).end();
      }
      out_.end().line();
    }
    // Who decides stands first among the cautions.
    const auto list = cautions(plan_, audience_);
    if (!list.empty()) out_.element("p", list.front().text, {{"class", "who"}});
    if (!card_.translation.empty()) out_.element("p", card_.translation, {{"class", "who"}});
    out_.end().line();
  }

  void stops() {
    heading(SheetWord::what_stops_it, SheetWord::what_stops_it_beside);
    out_.start("ul", {{"class", "plain"}}).line();
    for (const std::string& text : card_.stops) out_.element("li", text).line();
    out_.end().line();
  }

  void readings_and_drawings() {
    out_.start("div", {{"class", "pair"}}).start("div", {{"class", "half"}}).line();
    stop_numbers();
    set_up();
    marks();
    out_.end().start("div", {{"class", "half"}}).line();
    body_ += figures_;
    out_.end().end().line();
  }

  // Where along the main is the matter where things lie near; else where round the pipe.
  [[nodiscard]] bool moved_or_near() const {
    return !plan_.location.clearings.empty() || std::fabs(plan_.location.shift.base()) > 1e-9;
  }

  void stop_numbers() {
    if (card_.readings.empty()) return;
    heading(SheetWord::stop_numbers, SheetWord::stop_numbers_beside);
    out_.start("table").start("tr");
    for (const std::string_view column : {said(SheetWord::column_read), said(SheetWord::column_bounds), said(SheetWord::column_reading)})
      out_.element("th", column, {{"scope", "col"}});
    out_.end().line();
    for (const report::CardReading& reading : card_.readings) {
      out_.start("tr").element("th", reading.what, {{"scope", "row"}});
      out_.element("td", reading.bounds, {{"class", "limit"}}).element("td", "", {{"class", "read"}}).end().line();
    }
    out_.end().line();
  }

  void set_up() {
    heading(SheetWord::setup);
    out_.start("dl", {{"class", "rows"}}).line();
    for (const report::CardLine& line : card_.setup) {
      out_.start("div").element("dt", line.label).text(" ").element("dd", line.text).end().line();
    }
    out_.end().line();
  }

  void marks() {
    if (card_.marks.empty()) return;
    heading(SheetWord::marks, SheetWord::marks_beside);
    out_.start("dl", {{"class", "rows"}}).line();
    for (const BarMark& mark : card_.marks) {
      const std::string label = std::string(mark.sign) + " " + std::string(mark.name);
      out_.start("div").element("dt", label).text(" ").element("dd", mark.where).end().line();
    }
    if (!card_.makeup.empty()) {
      out_.start("div").element("dt", said(SheetWord::makeup)).text(" ").element("dd", card_.makeup).end().line();
    }
    out_.end().line();
  }

  void holds() {
    for (const Clears clears : {Clears::office, Clears::site}) {
      const bool any = std::any_of(card_.holds.begin(), card_.holds.end(), [&](const auto& h) { return h.clears == clears; });
      if (!any) continue;
      if (clears == Clears::office) heading(no_go() ? SheetWord::office_open : SheetWord::office);
      else if (no_go()) heading(SheetWord::pipe_open);
      else heading(SheetWord::pipe, SheetWord::pipe_beside);
      out_.start("ol", {{"class", "holds"}}).line();
      for (const report::CardHold& hold : card_.holds) {
        if (hold.clears != clears) continue;
        out_.start("li").element("span", std::to_string(hold.number) + ". " + hold.text, {{"class", "what"}}).text(" ");
        out_.start("span", {{"class", "boxes"}});
        blank("", hold.unit, "first");
        blank(said(SheetWord::by));
        out_.end().end().line();
      }
      out_.end().line();
    }
  }

  void bring() {
    if (card_.bring.empty()) return;
    heading(SheetWord::bring, SheetWord::bring_beside);
    out_.start("dl", {{"class", "bring"}}).line();
    for (const report::CardGroup& group : card_.bring) {
      out_.start("div").element("dt", group.label).text(" ").start("dd");
      for (const std::string& thing : group.things) out_.element("span", thing, {{"class", "tick"}}).text(" ");
      out_.end().end().line();
    }
    out_.end().line();
  }

  // As much as the page has room for; the rest stands on the last page.
  void odd() { odd(0, no_go() ? card_.odd.size() : room_for_odd()); }
  void odd_left() { odd(room_for_odd(), card_.odd.size()); }
  void odd(std::size_t from, std::size_t to) {
    if (from >= to) return;
    out_.start("div", {{"class", "odd"}});
    heading(SheetWord::about);
    out_.start("ul", {{"class", "plain"}}).line();
    for (std::size_t i = from; i < to; ++i) out_.element("li", card_.odd[i]).line();
    out_.end().end().line();
  }

  // ---- its height, in lines of body type

  [[nodiscard]] double lines_on_card() const {
    return std::min(lines_but_odd() + (card_.odd.empty() ? 0.0 : paper::heading + lines_of_odd(room_for_odd())), full());
  }
  [[nodiscard]] static double full() { return paper::page / paper::least_line - paper::spare; }

  [[nodiscard]] double lines_but_odd() const {
    double lines = 2.6;  // verdict
    for (const std::string& line : card_.what) lines += lines_of({line}, paper::whole_column - 2.0);
    lines += card_.order.empty() ? 0.0 : 0.4 + lines_of({card_.order, "Order Place Planned for Crew Cover 10 ft 10 in"}, paper::whole_column);
    lines += 2.4 + (card_.translation.empty() ? 0.0 : 1.2);  // who decides, and who has reviewed a translation
    for (const std::string& text : card_.stops) lines += lines_of({text}, paper::whole_column);
    if (no_go()) lines += paper::heading + lines_of_cautions(true);
    if (!no_go()) lines += std::max(lines_of_numbers(), figures_room_ / paper::least_line);
    for (const Clears clears : {Clears::office, Clears::site}) lines += lines_of_holds(clears);
    if (!card_.bring.empty()) lines += paper::plain_heading;
    for (const report::CardGroup& group : card_.bring) {
      report::Lines run(paper::whole_column - 6.0);
      for (const std::string& thing : group.things) run.add("ooo " + thing + "    ");
      lines += run.count();
    }
    return lines;
  }
  // Two to a row, each beside its blanks.
  [[nodiscard]] double lines_of_holds(Clears clears) const {
    double lines = 0.0;
    double row = 0.0;
    int count = 0;
    for (const report::CardHold& hold : card_.holds) {
      if (hold.clears != clears) continue;
      if (count++ % 2 == 0) {
        lines += row;
        row = 0.0;
      }
      row = std::max(row, 0.2 + lines_of({"10. ", hold.text}, 0.58 * paper::half_column));
    }
    return count == 0 ? 0.0 : lines + row + paper::plain_heading;
  }
  [[nodiscard]] double lines_of_numbers() const {
    double lines = card_.readings.empty() ? 0.0 : paper::heading + 1.3;
    for (const report::CardReading& reading : card_.readings) lines += 1.3 * lines_of({reading.what}, 10.0);
    lines += paper::heading;
    for (const report::CardLine& line : card_.setup) lines += lines_of_row(line.label, line.text);
    lines += paper::heading;
    for (const BarMark& mark : card_.marks) lines += lines_of_row("4 " + std::string(mark.name), mark.where);
    return lines + lines_of_row("Make-up", card_.makeup);
  }
  // A label of a third of the column, and bold words beside it.
  [[nodiscard]] static double lines_of_row(std::string_view label, std::string_view text) {
    report::Lines lines(0.66 * paper::half_column);
    lines.add(text, true);
    return std::max(lines_of({label}, 0.3 * paper::half_column), static_cast<double>(lines.count()));
  }
  [[nodiscard]] double lines_of_odd(std::size_t count) const {
    double lines = 0.0;
    for (std::size_t i = 0; i < std::min(count, card_.odd.size()); ++i) lines += lines_of({card_.odd[i]}, paper::half_column - 1.0);
    return std::ceil(0.5 * lines);  // in two columns
  }
  // As much of it as the page has room for.
  [[nodiscard]] std::size_t room_for_odd() const {
    const double room = paper::page / paper::least_line - lines_but_odd() - paper::plain_heading - 1.2;
    std::size_t count = card_.odd.size();
    while (count > 0 && lines_of_odd(count) > room) --count;
    return count;
  }

  [[nodiscard]] double lines_of_odd_left(bool own_page) const {
    double lines = 0.0;
    for (std::size_t i = room_for_odd(); i < card_.odd.size(); ++i)
      lines += lines_of({card_.odd[i]}, paper::half_column - 1.2);
    return lines == 0.0 ? 0.0 : 0.5 * lines + (own_page ? 1.0 : 0.5) * paper::heading;
  }

  // ---- the second page: the order of work

  [[nodiscard]] double lines_of_work() const {
    double lines = 2.0 * paper::heading;
    std::string_view phase;
    for (const Step& step : steps_) {
      if (step.phase != phase) lines += 1.2;
      phase = step.phase;
      lines += lines_of({in_words(step), " ", step.hold_point, step.hold_point.empty() ? "" : " bold"}, paper::half_column - 3.2);
      if (step.moves_valves) lines += 1.0;
    }
    return lines / 2.0 + 0.8;
  }

  // On a page of its own where it has room there; else it runs on, and what comes after with it.
  void work_and_after() {
    if (no_go()) return;
    const double work = lines_of_work();
    const bool own_page = work <= full();
    const double after = lines_of_trouble() + lines_of_record(own_page) + lines_of_odd_left(own_page) + lines_of_foot;
    const double pages = own_page ? full() : 2.0 * full() - ragged;
    const double taken = (own_page ? 0.0 : work) + after;
    const bool whole = taken + lines_of_cautions(true) <= pages;
    const double lines = taken + lines_of_cautions(whole);
    const std::string_view columns = own_page ? "" : " columns";
    out_.start("section", {{"class", "page" + std::string(columns)}, {"style", filling(own_page ? work : (lines + ragged) / 2.0)}}).line();
    order_of_work(own_page);
    if (own_page) {
      out_.end().line();
      out_.start("section", {{"class", "page"}, {"style", filling(lines)}}).line();
    }
    trouble(own_page);
    odd_left();
    always(whole, own_page);
    record();
    foot();
    out_.end().line();
  }
  // Lost at the feet of columns, because no step is parted.
  static constexpr double ragged = 4.0;

  void order_of_work(bool own_page) {
    out_.start("div", {{"class", "wide"}});
    heading(SheetWord::work, SheetWord::work_beside);
    legend();
    out_.end().line();
    out_.start("div", {{"class", own_page ? "columns" : "runs"}}).line();
    std::string_view phase;
    int phases = 0;
    int count = 0;
    for (const Step& step : steps_) {
      if (step.phase != phase) {
        if (!phase.empty()) out_.end().line();
        phase = step.phase;
        out_.element("h3", phase, {{"id", id("phase" + std::to_string(++phases))}});
        out_.start("ol", {{"class", "steps"}}).line();
      }
      write_step(step, ++count);
    }
    out_.end().end().line();
  }

  void write_step(const Step& step, int count) {
    out_.start("li").element("b", std::to_string(count), {{"class", "n"}}).text(" ");
    if (!step.condition.empty()) out_.element("b", step.condition).text(": ");
    out_.text(step.action);
    if (!step.hold_point.empty()) out_.text(" ").element("b", step.hold_point, {{"class", "until"}});
    if (step.moves_valves) strip(step.state);
    out_.end().line();
  }

  // Valves and chamber as small pictures: a valve is filled when shut, the chamber when it holds pressure.
  void strip(const RigState& state) {
    out_.start("span", {{"class", "now"}});
    const auto valves = valves_of(state, seat_of(plan_.method.kind), audience_.language);
    for (std::size_t i = 0; i < valves.size(); ++i) {
      const bool chamber = valve_keys[i] == "chamber";
      out_.start("span");
      picture(chamber, chamber ? valves[i].open : !valves[i].open);
      out_.text(valves[i].brief).text(" ").element("b", valves[i].brief_stands).end().text(" ");
    }
    out_.end();
  }
  void picture(bool chamber, bool filled) {
    out_.start("svg", {{"class", "sign"}, {"viewBox", "0 0 16 12"}, {"aria-hidden", "true"}});
    out_.empty("path", {{"class", filled ? "head" : "edge"}, {"d", chamber ? "M3 1H13V11H3Z" : "M1 1L15 11V1L1 11Z"}});
    out_.end();
  }
  void legend() {
    bool any = false;
    for (const Step& step : steps_) any = any || step.moves_valves;
    if (!any) return;
    out_.start("p", {{"class", "legend"}});
    picture(false, false);
    out_.text(said(SheetWord::legend_open)).text(" ");
    picture(false, true);
    out_.text(said(SheetWord::legend_shut)).text(" ");
    picture(true, true);
    out_.text(said(SheetWord::legend_full)).text(" ");
    picture(true, false);
    out_.text(said(SheetWord::legend_zero)).end().line();
  }

  // ---- the third page: trouble, cautions, record

  [[nodiscard]] double lines_of_trouble() const {
    double lines = 0.0;
    for (const Step& step : contingencies(plan_, audience_)) lines += lines_of({in_words(step)}, paper::half_column - 1.2) + 0.2;
    return lines / 2.0 + paper::heading + 0.8;
  }
  [[nodiscard]] double lines_of_cautions(bool whole) const {
    double lines = 0.0;
    const auto list = cautions(plan_, audience_);
    for (std::size_t i = 1; i < list.size(); ++i) {
      lines += lines_of({whole ? list[i].text.view() : list[i].brief}, paper::half_column - 1.2) + 0.2;
    }
    return lines / 2.0 + paper::heading + 0.8;
  }
  [[nodiscard]] double lines_of_record(bool own_page) const {
    const double in_a_row = own_page ? 4.0 : 2.0;
    double rows = 0.0;
    double single = 0.0;
    std::string_view row;
    for (const RecordField& field : record_form(plan_)) {
      if (field.row.empty()) single += 1.0;
      else if (field.row != row) rows += 1.0;
      row = field.row;
    }
    return (paper::heading + 1.6 * (rows + std::ceil(single / in_a_row))) / (own_page ? 1.0 : 2.0);
  }

  void trouble(bool own_page) {
    out_.start("h2", {{"id", id("trouble")}}).text(said(SheetWord::trouble)).end().line();
    out_.start("ul", {{"class", own_page ? "plain columns" : "plain"}}).line();
    for (const Step& step : contingencies(plan_, audience_)) {
      out_.start("li").element("b", step.condition).text(": ").text(step.action).end().line();
    }
    out_.end().line();
  }

  void always(bool whole, bool own_page) {
    heading(SheetWord::cautions, SheetWord::cautions_beside);
    out_.start("ul", {{"class", std::string("plain") + (own_page ? " columns" : "") + (whole ? "" : " brief")}}).line();
    // The first, on who decides, stands at the top of the sheet.
    const auto list = cautions(plan_, audience_);
    for (std::size_t i = 1; i < list.size(); ++i) {
      out_.start("li");
      if (!whole) out_.element("span", list[i].brief, {{"class", "print"}});
      out_.start("span", {{"class", "whole"}}).text(list[i].text);
      if (!list[i].basis.empty()) out_.text(" ").element("span", "(" + std::string(list[i].basis) + ")", {{"class", "screen"}});
      out_.end().end().line();
    }
    out_.end().line();
  }

  // Fields of one row share a line of their own; words get the more room there.
  void record() {
    const auto form = record_form(plan_);
    if (form.empty()) return;
    out_.start("section", {{"class", "record"}, {"id", id("record")}});
    heading(SheetWord::record, SheetWord::record_beside);
    out_.start("div");
    std::string_view row;
    for (const RecordField& field : form) {
      if (field.row != row) {
        if (!row.empty()) out_.end();
        if (!field.row.empty()) out_.start("span", {{"class", "tie"}});
        row = field.row;
      }
      blank(words::term(field.label, audience_.language), unit_of(field, audience_), !row.empty() && !field.kind ? "wide" : "");
    }
    if (!row.empty()) out_.end();
    out_.end().end().line();
  }

  // What must be the same for this sheet to be made again.
  void foot() { out_.element("p", say(SheetWord::fingerprint, audience_.language, {{"print", in_words(fingerprint_of(plan_))}}), {{"class", "foot"}}).line(); }
  static constexpr double lines_of_foot = 1.5;

  // ---- on a screen alone: what the plan rests on

  void more() {
    out_.start("section", {{"class", "more"}}).line();
    in_full(Severity::stop, said(SheetWord::stops_in_full));
    in_full(Severity::hold, said(SheetWord::holds_in_full));
    found();
    load();
    // What has no translation stands last, and is said to have none.
    if (audience_.language != Language::english)
      out_.element("p", say(words::CardWord::english_from_here, audience_.language)).line();
    out_.start("div", {{"lang", "en"}}).line();
    assumed();
    numbers_of_this_job();
    if (!no_go()) drawings();
    sources();
    out_.end().line();
    out_.end().line();
  }

  // Figures as gauges are read, and whose rule decided where a utility has rules of its own.
  [[nodiscard]] std::string words(std::string_view text, const Finding& finding) const {
    return filled_words(text, finding, audience_, plan_.readings);
  }
  [[nodiscard]] std::string detail_with_whose(const Finding& finding) const {
    std::string detail = words(text_of(finding.code, audience_.language).detail, finding);
    if (plan_.rules == nullptr || !plan_.rules->has_own()) return detail;
    if (audience_.language != Language::english) return detail;
    const std::string whose = decided_in_words(finding);
    return whose.empty() ? detail : detail + " " + whose;
  }

  // The office's first, numbered as on the card.
  void in_full(Severity severity, std::string_view title) {
    auto list = of(severity);
    if (list.empty()) return;
    const bool holds = severity == Severity::hold;
    if (holds) {
      std::stable_partition(list.begin(), list.end(),
                            [](const Finding* finding) { return clears_by(finding->code) == Clears::office; });
    }
    heading(title);
    int count = 0;
    for (const Finding* finding : list) {
      std::string text = sentence_case(std::string(text_of(finding->code, audience_.language).title));
      if (holds) {
        text = std::to_string(++count) + ". " + text +
               std::string(said(clears_by(finding->code) == Clears::office ? SheetWord::of_office : SheetWord::of_pipe));
      }
      out_.element("h3", text);
      out_.element("p", detail_with_whose(*finding)).element("p", words(text_of(finding->code, audience_.language).fix, *finding)).line();
    }
  }

  void found() {
    const auto warnings = of(Severity::caution);
    const auto notes = of(Severity::note);
    if (warnings.empty() && notes.empty()) return;
    heading(SheetWord::found, SheetWord::found_beside);
    out_.start("ul", {{"class", "plain"}}).line();
    for (const auto* const list : {&warnings, &notes}) {
      for (const Finding* finding : *list) {
        out_.element("li", detail_with_whose(*finding) + " " + words(text_of(finding->code, audience_.language).fix, *finding)).line();
      }
    }
    out_.end().line();
  }

  void assumed() {
    if (plan_.main.assumed.empty()) return;
    heading("Assumed", "a reading takes the place of each");
    out_.start("ul", {{"class", "plain"}}).line();
    for (const Assumption& assumption : plan_.main.assumed) {
      const report::AssumedWords said = report::assumed_words(assumption, audience_.units);
      std::string text = sentence_case(said.fact);
      if (!said.value.empty()) text += ": " + said.value;
      if (!assumption.because.empty()) text += ", " + std::string(assumption.because);
      text += ".";
      if (!assumption.settle.empty()) text += " " + sentence_case(std::string(assumption.settle)) + ".";
      out_.element("li", text).line();
    }
    out_.end().line();
  }

  struct Fact {
    std::string label;
    std::string text;
  };

  // What neither the stop numbers nor the drawings show.
  [[nodiscard]] std::vector<Fact> facts() const {
    std::vector<Fact> list;
    if (no_go()) return list;
    const auto add = [&](std::string label, std::string text) { list.push_back({std::move(label), std::move(text)}); };
    const ChosenMethod& method = plan_.method;
    const Setup& setup = plan_.setup;
    std::string main = plan_.main.size.label() + " in " + std::string(name_of(plan_.main.material));
    if (plan_.main.governing != nullptr && !plan_.main.governing->class_name.empty()) {
      main += plan_.main.candidates.size() > 1 ? ", worst case " : ", ";
      main += plan_.main.governing->class_name;
    }
    add("Main", main);
    if (method.thread)
      add("Thread, tool and stop alike", std::string(name_of(*method.thread)) + " " + method.tap.label() + " in");
    if (method.specification != nullptr) {
      add(method.kind == Method::sleeve ? "Sleeve, as the utility asks" : "Saddle, as the utility asks",
          method.specification->text);
    }
    if (setup.machine != nullptr && method.kind != Method::sleeve) {
      add("Machine, feed", setup.machine->title + ", " + std::string(name_of(setup.feed)));
    }
    if (method.kind == Method::direct && setup.clamp) {
      add("Hold the machine down with", show(setup.clamp->force));
      if (setup.clamp->stud_torque) add("Stud torque, dry", show(setup.clamp->stud_torque->usual));
    }
    const auto far = [&](Length length) { return on_tape(length, audience_, Toward::more); };
    if (plan_.excavation) {
      const PitPlan& pit = *plan_.excavation;
      add("Pit, bottom",
          far(pit.pit.along) + " along by " + far(pit.pit.across) + ", " + far(pit.pit.depth) + " deep");
      if (pit.pit.slope > 0.0)
        add("Walls sloped", number(pit.pit.slope, 2) + " to 1, " + std::string(name_of(pit.soil.type)));
      if (pit.bank_otherwise) {
        const auto dug = [&](Volume volume) { return number(std::ceil(shown(Measure(volume, Kind::earth), audience_).value), 0) + " " + std::string(shown(Measure(volume, Kind::earth), audience_).unit); };
        const bool sloped = pit.pit.slope > 0.0;
        add("To be dug", dug(pit.bank) + (sloped ? " sloped; " : " shielded; ") + dug(*pit.bank_otherwise) + (sloped ? " with a shield" : " sloped"));
      }
      add("Spoil back from the edge", far(pit.setback));
    }
    if (plan_.cleaning) {
      const SwabMix& swab = plan_.cleaning->swab;
      if (swab.liquid) {
        add("Swab with", number(swab.wanted.percent(), 2) + " %: " +
                             (audience_.units == UnitSystem::si
                                  ? number(swab.millilitres_per_litre(), 0) + " mL stock to each litre made"
                                  : number(swab.fluid_ounces_per_gallon(), 1) + " fl oz stock to each gallon made"));
      }
      if (plan_.cleaning->flush)
        add("Flush", format_measure(Measure(plan_.cleaning->flush->full.flow), audience_, Toward::more) + " for " +
                         format_measure(Measure(plan_.cleaning->flush->full.time), audience_, Toward::more));
    }
    if (plan_.service)
      add("Left behind the meter", on_gauge(plan_.service->residual_least, audience_, Toward::less) + " at " + show(plan_.service->demand.flow));
    return list;
  }


  void numbers_of_this_job() {
    const std::vector<Fact> list = facts();
    if (list.empty()) return;
    heading("Numbers of this job");
    out_.start("dl", {{"class", "rows"}}).line();
    for (const Fact& fact : list) {
      out_.start("div").element("dt", fact.label).text(" ").element("dd", fact.text).end().line();
    }
    out_.end().line();
  }

  // Those that do not stand on the first page.
  void drawings() {
    out_.start("div", {{"class", "figures"}}).line();
    if (moved_or_near()) report::write_section_figure(out_, plan_, audience_.units, prefix_);
    else report::write_along_figure(out_, plan_, audience_.units, prefix_);
    report::write_threads_figure(out_, plan_, audience_, prefix_);
    report::write_pit_figure(out_, plan_, audience_, prefix_);
    report::write_profile_figure(out_, plan_, audience_, prefix_);
    out_.end().line();
  }

  void load() {
    const auto list = materials(plan_, audience_);
    if (list.empty()) return;
    heading(SheetWord::load, SheetWord::load_beside);
    out_.start("ul", {{"class", "plain"}}).line();
    for (const LoadItem& thing : list) {
      const std::string name = (thing.quantity > 1 ? std::to_string(thing.quantity) + " " : std::string()).append(thing.item);
      out_.start("li").element("b", name).text((thing.size.empty() ? std::string() : ", " + thing.size) + ". ");
      out_.text(thing.check).end().line();
    }
    out_.end().line();
  }

  // The publications by name, in the order met; the text report says which number rests on which.
  void sources() {
    struct Resting {
      std::string name;
      bool recalled;  // some of it
    };
    std::vector<Resting> list;
    for (const Evidence& item : plan_.evidence) {
      const Basis& basis = item.basis;
      if (!basis.utility && basis.source == nullptr) continue;
      std::string name = "The utility's own rule";
      if (basis.utility && basis.reference != nullptr) name += ", " + *basis.reference;
      if (!basis.utility) name = basis.source->brief;
      const auto known = std::find_if(list.begin(), list.end(), [&](const Resting& r) { return r.name == name; });
      if (known == list.end()) list.push_back({name, is_recalled(item)});
      else known->recalled = known->recalled || is_recalled(item);
    }
    if (list.empty()) return;
    std::string text;
    for (const Resting& resting : list)
      text += (text.empty() ? "" : "; ") + resting.name + (resting.recalled ? " (" + std::string(check_this_value) + ")" : "");
    heading("Numbers rest on");
    out_.element("p", text + ".").line();
  }

  std::string& body_;
  HtmlWriter out_;
  const Plan& plan_;
  Audience audience_;
  Card card_;
  std::vector<Step> steps_;
  std::string prefix_;
  std::string figures_;         // of the first page
  double figures_room_ = 0.0;   // they take
};

}  // namespace

void append_page_head(std::string& out, std::string_view title, Language language) {
  out += "<!DOCTYPE html>\n";
  HtmlWriter head(out);
  (out += "<html lang=\"").append(name_of(language)) += "\">\n";
  head.start("head").empty("meta", {{"charset", "utf-8"}});
  head.empty("meta", {{"name", "viewport"}, {"content", "width=device-width, initial-scale=1"}});
  head.element("title", title);
  // An icon of nothing, so that a browser does not go looking for one.
  head.empty("link", {{"rel", "icon"}, {"href", "data:,"}});
  out += "<style>";
  out += report::sheet_style;
  out += "</style>";
  head.end();
  out += "\n<body>\n";
}

void append_sheet_body(std::string& out, const Plan& plan, Audience audience, int number) {
  Sheet(out, plan, audience, number).write();
}

void append_page_tail(std::string& out) { out += "</body>\n</html>\n"; }

std::string sheet_html(const Plan& plan, Audience audience) {
  std::string out;
  const std::string verdict(name_of(plan.verdict));
  const std::string name = plan.job.id.empty() ? std::string(say(SheetWord::title_sheet, audience.language)) : plan.job.id;
  append_page_head(out, name + ": " + verdict, audience.language);
  append_sheet_body(out, plan, audience, 1);
  append_page_tail(out);
  return out;
}

}  // namespace mainbore
