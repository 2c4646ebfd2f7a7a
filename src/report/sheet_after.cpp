// The third page of a field sheet: what to do when it goes wrong, the cautions, the record.
#include "mainbore/fingerprint.hpp"
#include "report/sheet_boxes.hpp"
#include "report/sheet_page.hpp"
#include "words/terms.hpp"

namespace mainbore::report {

using words::SheetWord;

void Sheet::trouble(bool own_page) {
  out_.start("h2", {{"id", id("trouble")}}).text(said(SheetWord::trouble)).end().line();
  out_.start("ul", {{"class", own_page ? "plain columns" : "plain"}}).line();
  for (const Step& step : contingencies(plan_, audience_)) {
    out_.start("li").element("b", step.condition).text(": ").prose(step.action);
    utility_says(step.id);
    out_.end().line();
  }
  out_.end().line();
}

void Sheet::always(bool whole, bool own_page) {
  heading(SheetWord::cautions, SheetWord::cautions_beside);
  out_.start("ul", {{"class", std::string("plain") + (own_page ? " columns" : "") + (whole ? "" : " brief")}}).line();
  // The first, on who decides, stands at the top of the sheet.
  const auto list = cautions(plan_, audience_);
  for (std::size_t i = 1; i < list.size(); ++i) {
    out_.start("li");
    if (!whole) out_.element("span", list[i].brief, {{"class", "print"}});
    out_.start("span", {{"class", "whole"}}).prose(list[i].text);
    if (!list[i].basis.empty())
      out_.text(" ").element("span", "(" + std::string(list[i].basis) + ")", {{"class", "screen"}});
    out_.end();
    utility_says(list[i].code);
    out_.end().line();
  }
  out_.end().line();
}

void Sheet::record() {
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
    blank(words::term(field.label, audience_.language), unit_of(field, audience_),
          !row.empty() && !field.kind ? "wide" : "", std::string(field.key));
  }
  if (!row.empty()) out_.end();
  out_.end();
  write_boxes(out_, plan_, audience_);
  out_.end().line();
}

void Sheet::foot() {
  out_.element("p", say(SheetWord::fingerprint, audience_.language, {{"print", in_words(fingerprint_of(plan_))}}),
               {{"class", "foot"}})
      .line();
}

}  // namespace mainbore::report
