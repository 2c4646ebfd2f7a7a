// The second page of a field sheet: the order of work, with the valves as small pictures.
#include "report/sheet_page.hpp"

namespace mainbore::report {

using words::SheetWord;

void Sheet::work_and_after() {
  if (no_go()) return;
  const double work = lines_of_work();
  const bool own_page = work <= full();
  const double after = lines_of_trouble() + lines_of_record(own_page) + lines_of_odd_left(own_page) + lines_of_foot;
  const double pages = own_page ? full() : 2.0 * full() - ragged;
  const double taken = (own_page ? 0.0 : work) + after;
  const bool whole = taken + lines_of_cautions(true) <= pages;
  const double lines = taken + lines_of_cautions(whole);
  const std::string_view columns = own_page ? "" : " columns";
  out_.start("section",
             {{"class", "page" + std::string(columns)}, {"style", filling(own_page ? work : (lines + ragged) / 2.0)}})
      .line();
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

void Sheet::order_of_work(bool own_page) {
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

void Sheet::write_step(const Step& step, int count) {
  out_.start("li").element("b", std::to_string(count), {{"class", "n"}}).text(" ");
  if (!step.condition.empty()) out_.element("b", step.condition).text(": ");
  out_.prose(step.action);
  if (!step.hold_point.empty()) out_.text(" ").prose_element("b", step.hold_point, {{"class", "until"}});
  utility_says(step.id);
  if (step.moves_valves) strip(step.state);
  out_.end().line();
}

void Sheet::utility_says(std::string_view id) {
  const std::string words = utility_in_words(plan_, id, audience_.language);
  if (!words.empty()) out_.text(" ").prose_element("i", words);
}

void Sheet::strip(const RigState& state) {
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

void Sheet::picture(bool chamber, bool filled) {
  out_.start("svg", {{"class", "sign"}, {"viewBox", "0 0 16 12"}, {"aria-hidden", "true"}});
  out_.empty("path", {{"class", filled ? "head" : "edge"}, {"d", chamber ? "M3 1H13V11H3Z" : "M1 1L15 11V1L1 11Z"}});
  out_.end();
}

void Sheet::legend() {
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

}  // namespace mainbore::report
