// What the parts of a field sheet take on paper, in lines of body type, so that each page is filled and none runs over.
#include <algorithm>
#include <cmath>

#include "report/figures/figure.hpp"
#include "report/sheet_lines.hpp"
#include "report/sheet_page.hpp"

namespace mainbore::report {

double lines_of(std::initializer_list<std::string_view> texts, double column) {
  Lines lines(column);
  for (const std::string_view text : texts) lines.add(text);
  return lines.count();
}

std::string filling(double lines) {
  const double apart = std::clamp(paper::page / (lines + paper::spare), paper::least_line, paper::most_line);
  return "line-height:" + plain(0.75 * apart, 2) + "pt";
}

double Sheet::lines_on_card() const {
  return std::min(lines_but_odd() + (card_.odd.empty() ? 0.0 : paper::heading + lines_of_odd(room_for_odd())), full());
}

double Sheet::full() { return paper::page / paper::least_line - paper::spare; }

double Sheet::lines_but_odd() const {
  double lines = 2.6;  // verdict
  for (const std::string& line : card_.what) lines += lines_of({line}, paper::whole_column - 2.0);
  std::string order;
  for (const std::string& part : card_.order) order += part + ' ';
  lines += card_.order.empty()
               ? 0.0
               : 0.4 + lines_of({order, "Order Place Planned for Crew Cover 10 ft 10 in"}, paper::whole_column);
  lines += 2.4 + (card_.translation.empty() ? 0.0 : 2.0);  // who decides, and who has reviewed a translation
  for (const std::string& text : card_.stops) lines += lines_of({text}, paper::whole_column);
  if (no_go()) lines += paper::heading + lines_of_cautions(true);
  if (!no_go()) lines += std::max(lines_of_numbers(), figures_room_ / paper::least_line);
  for (const Clears clears : {Clears::office, Clears::site}) lines += lines_of_holds(clears);
  if (!card_.bring.empty()) lines += paper::plain_heading;
  for (const CardGroup& group : card_.bring) {
    Lines run(paper::whole_column - 6.0);
    for (const std::string& thing : group.things) run.add("ooo " + thing + "    ");
    lines += run.count();
  }
  return lines;
}

double Sheet::lines_of_holds(Clears clears) const {
  double lines = 0.0;
  double row = 0.0;
  int count = 0;
  for (const CardHold& hold : card_.holds) {
    if (hold.clears != clears) continue;
    if (count++ % 2 == 0) {
      lines += row;
      row = 0.0;
    }
    row = std::max(row, 0.2 + lines_of({"10. ", hold.text}, 0.58 * paper::half_column));
  }
  return count == 0 ? 0.0 : lines + row + paper::plain_heading;
}

double Sheet::lines_of_numbers() const {
  double lines = card_.readings.empty() ? 0.0 : paper::heading + 1.3;
  for (const CardReading& reading : card_.readings) lines += 1.3 * lines_of({reading.what}, 10.0);
  lines += paper::heading;
  for (const CardLine& line : card_.setup) lines += lines_of_row(line.label, line.text);
  lines += paper::heading;
  for (const BarMark& mark : card_.marks) lines += lines_of_row("4 " + std::string(mark.name), mark.where);
  return lines + lines_of_row("Make-up", card_.makeup);
}

double Sheet::lines_of_row(std::string_view label, std::string_view text) {
  Lines lines(0.66 * paper::half_column);
  lines.add(text, true);
  return std::max(lines_of({label}, 0.3 * paper::half_column), static_cast<double>(lines.count()));
}

double Sheet::lines_of_odd(std::size_t count) const {
  double lines = 0.0;
  for (std::size_t i = 0; i < std::min(count, card_.odd.size()); ++i)
    lines += lines_of({card_.odd[i]}, paper::half_column - 1.0);
  return std::ceil(0.5 * lines);  // in two columns
}

std::size_t Sheet::room_for_odd() const {
  const double room = paper::page / paper::least_line - lines_but_odd() - paper::plain_heading - 1.2;
  std::size_t count = card_.odd.size();
  while (count > 0 && lines_of_odd(count) > room) --count;
  return count;
}

double Sheet::lines_of_odd_left(bool own_page) const {
  double lines = 0.0;
  for (std::size_t i = room_for_odd(); i < card_.odd.size(); ++i)
    lines += lines_of({card_.odd[i]}, paper::half_column - 1.2);
  return lines == 0.0 ? 0.0 : 0.5 * lines + (own_page ? 1.0 : 0.5) * paper::heading;
}

double Sheet::lines_of_work() const {
  double lines = 2.0 * paper::heading;
  std::string_view phase;
  for (const Step& step : steps_) {
    if (step.phase != phase) lines += 1.2;
    phase = step.phase;
    lines += lines_of({in_words(step), " ", step.hold_point, step.hold_point.empty() ? "" : " bold", " ",
                       utility_in_words(plan_, step.id, audience_.language)},
                      paper::half_column - 3.2);
    if (step.moves_valves) lines += 1.0;
  }
  return lines / 2.0 + 0.8;
}

double Sheet::lines_of_trouble() const {
  double lines = 0.0;
  for (const Step& step : contingencies(plan_, audience_))
    lines += lines_of({in_words(step), " ", utility_in_words(plan_, step.id, audience_.language)},
                      paper::half_column - 1.2) +
             0.2;
  return lines / 2.0 + paper::heading + 0.8;
}

double Sheet::lines_of_cautions(bool whole) const {
  double lines = 0.0;
  const auto list = cautions(plan_, audience_);
  for (std::size_t i = 1; i < list.size(); ++i) {
    lines += lines_of({whole ? list[i].text.view() : list[i].brief, " ",
                       utility_in_words(plan_, list[i].code, audience_.language)},
                      paper::half_column - 1.2) +
             0.2;
  }
  return lines / 2.0 + paper::heading + 0.8;
}

double Sheet::lines_of_record(bool own_page) const {
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

}  // namespace mainbore::report
