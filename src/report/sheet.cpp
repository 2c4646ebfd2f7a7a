// The field sheet: three pages of paper at most, the plan's parts in the order a crew needs them. All engineering is the
// plan's; the first page is its card.
#include "mainbore/sheet.hpp"

#include "report/figures/figures.hpp"
#include "report/html_writer.hpp"
#include "report/sheet_page.hpp"
#include "report/sheet_script.hpp"
#include "report/sheet_style.hpp"

namespace mainbore {

using words::SheetWord;

namespace report {

Sheet::Sheet(std::string& body, const Plan& plan, Audience audience, int count)
    : body_(body),
      out_(body),
      plan_(plan),
      audience_(audience),
      card_(card_of(plan, audience)),
      steps_(procedure(plan, audience)),
      prefix_("s" + std::to_string(count) + "-") {
  if (no_go()) return;
  const auto room = [](const FigureRoom& figure) { return 1.15 * figure.words + figure.drawing; };
  const bool moved = moved_or_near();
  std::string place;
  HtmlWriter first(place);
  const double place_room = room(moved ? write_along_figure(first, plan, audience, prefix_)
                                       : write_section_figure(first, plan, audience, prefix_));
  std::string machine;
  HtmlWriter second(machine);
  const double machine_room = room(write_machine_figure(second, plan, audience, prefix_));
  figures_room_ = place_room + machine_room;
  // Where a full card has no room for both, what must be read and cleared goes before one of them.
  const bool one = lines_but_odd() > full();
  if (one) figures_room_ = moved ? place_room : machine_room;
  if (!one || moved) figures_ += place;
  if (!one || !moved) figures_ += machine;
}

void Sheet::write() {
  out_.start("article", {{"class", "sheet " + std::string(name_of(plan_.verdict))}}).line();
  jumps();
  first_page();
  work_and_after();
  more();
  out_.end().line();
}

std::string Sheet::show(Measure measure) const { return format_measure(measure, audience_); }

bool Sheet::no_go() const { return plan_.verdict == Verdict::no_go || plan_.method.kind == Method::none; }

std::string Sheet::id(std::string_view name) const { return prefix_ + std::string(name); }

std::vector<const Finding*> Sheet::of(Severity severity) const {
  std::vector<const Finding*> list;
  for (const Finding& finding : plan_.findings) {
    if (finding.severity == severity) list.push_back(&finding);
  }
  return list;
}

std::string_view Sheet::said(SheetWord word) const { return say(word, audience_.language); }

std::string Sheet::said(SheetWord word, std::initializer_list<words::Figure> figures) const {
  return say(word, audience_.language, figures);
}

void Sheet::heading(SheetWord word) { heading(said(word)); }

void Sheet::heading(SheetWord word, SheetWord beside) { heading(said(word), said(beside)); }

void Sheet::heading(std::string_view text, std::string_view beside) {
  out_.start("h2").text(text);
  if (!beside.empty()) out_.text(" ").element("small", beside);
  out_.end().line();
}

void Sheet::blank(std::string_view label, std::string_view unit, std::string_view style, std::string reads) {
  if (style.empty()) out_.start("span");
  else out_.start("span", {{"class", std::string(style)}});
  out_.text(label).text(" ").start("i", {{"class", "blank"}, {"data-reads", std::move(reads)}}).end();
  if (!unit.empty()) out_.text(" ").text(unit);
  out_.end();
}

void Sheet::jumps() {
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

}  // namespace report

void append_page_head(std::string& out, std::string_view title, PageScript script, Language language) {
  out += "<!DOCTYPE html>\n";
  report::HtmlWriter head(out);
  (out += "<html lang=\"").append(name_of(language)) += "\">\n";
  head.start("head").empty("meta", {{"charset", "utf-8"}});
  head.empty("meta", {{"name", "viewport"}, {"content", "width=device-width, initial-scale=1"}});
  head.empty("meta", {{"http-equiv", "Content-Security-Policy"}, {"content", report::sheet_policy(script)}});
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
  report::Sheet(out, plan, audience, number).write();
}

void append_page_tail(std::string& out, PageScript script) {
  if (script == PageScript::readings) ((out += "<script>") += report::sheet_script()) += "</script>\n";
  out += "</body>\n</html>\n";
}

std::string sheet_html(const Plan& plan, Audience audience) {
  std::string out;
  const std::string verdict(name_of(plan.verdict));
  const std::string name =
      plan.job.id.empty() ? std::string(say(SheetWord::title_sheet, audience.language)) : plan.job.id;
  append_page_head(out, name + ": " + verdict, PageScript::readings, audience.language);
  append_sheet_body(out, plan, audience, 1);
  append_page_tail(out, PageScript::readings);
  return out;
}

}  // namespace mainbore
