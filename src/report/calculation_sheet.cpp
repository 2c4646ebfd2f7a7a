// The calculation sheet as text and as a page.
#include "mainbore/calculation_sheet.hpp"

#include <algorithm>

#include "mainbore/report.hpp"
#include "mainbore/sheet.hpp"
#include "mainbore/work.hpp"
#include "report/calculation_lines.hpp"
#include "report/html_writer.hpp"
#include "report/text_page.hpp"

namespace mainbore {
namespace {

using report::CalculationLine;
using report::TextPage;

constexpr std::string_view title = "CALCULATION SHEET";
constexpr std::string_view as_filed = "worked out by the plan, printed to five digits";

std::string capitals(std::string_view text) {
  std::string out(text);
  std::transform(out.begin(), out.end(), out.begin(),
                 [](char c) { return c >= 'a' && c <= 'z' ? static_cast<char>(c - 'a' + 'A') : c; });
  return out;
}

std::string limit_in_words(const CalculationLine& line) {
  if (line.limit.empty()) return {};
  std::string text = line.limit;
  if (!line.utilization.empty()) text += "; utilization " + line.utilization;
  if (!line.met) text += ", NOT MET";
  return text;
}

class CalculationText {
 public:
  CalculationText(const Plan& plan, UnitSystem system, int width) : plan_(plan), system_(system), page_(width, false) {}

  std::string all() && {
    page_.title(std::string(title) + " - " + std::string(as_filed), true);
    page_.paragraph(summary_of(plan_, system_).whole());
    for (const report::HeadLine& line : report::calculation_head(plan_)) page_.field(line.label, line.text, 16);
    stop_numbers();
    calculations();
    others();
    not_looked_at();
    page_.heading("CAUTIONS", "read out at the pit, every time");
    for (const Caution& caution : cautions(plan_, system_)) page_.paragraph(caution.text.view(), 4, "  ! ");
    page_.heading("SIGNED");
    for (const std::string_view who : {"Worked out by", "Checked by"}) {
      page_.field(who, "________________________   date ____________", 20);
    }
    return std::move(page_).take();
  }

 private:
  void stop_numbers() {
    const auto lines = report::stop_number_lines(plan_, system_);
    if (lines.empty()) return;
    page_.heading("STOP NUMBERS", "and the line that each comes from");
    for (const report::StopNumberLine& line : lines) page_.field(line.what, line.bounds + ": " + line.by, 36);
  }

  void calculations() {
    std::optional<PlanPart> part;
    for (const CalculationLine& line : report::calculation_lines(plan_, system_)) {
      if (line.part != part) page_.heading(capitals(report::name_of(line.part)));
      part = line.part;
      std::string number = std::to_string(line.number) + ". ";
      number.insert(0, number.size() < 5 ? 5 - number.size() : 0, ' ');
      page_.coded(line.title, line.id, 5, number);
      const auto labeled = [&](std::string_view label, const std::string& text) {
        std::string lead = "     " + std::string(label);
        lead.resize(14, ' ');
        page_.paragraph(text, 14, lead);
      };
      labeled("formula", line.formula);
      labeled("figures", line.figures);
      labeled("result", line.result);
      if (!line.limit.empty()) labeled("limit", limit_in_words(line) + "; " + line.limit_source);
      for (const report::CalculationFigure& figure : line.with)
        labeled("with", figure.symbol + " = " + figure.value + ": " + figure.what + "; " + figure.source);
    }
  }

  void others() {
    const auto list = report::other_limits(plan_, system_);
    if (list.empty()) return;
    page_.heading("STOPS, HOLDS AND OTHER LIMITS");
    for (const report::OtherLimit& one : list) {
      std::string text = capitals(one.severity) + ": " + one.what;
      if (!one.value.empty()) text += ": " + one.value;
      if (!one.limit.empty()) text += (one.value.empty() ? ": " : ", ") + one.limit;
      page_.coded(text, one.code, 4, "  - ");
    }
  }

  void not_looked_at() {
    const auto list = not_checked(plan_);
    if (list.empty()) return;
    page_.heading("NOT CHECKED", "facts that would give each");
    for (const NotChecked& one : list) page_.paragraph(std::string(one.what) + ": " + one.give, 4, "  - ");
  }

  const Plan& plan_;
  UnitSystem system_;
  TextPage page_;
};

class CalculationPage {
 public:
  CalculationPage(std::string& body, const Plan& plan, UnitSystem system) : out_(body), plan_(plan), system_(system) {}

  void write() {
    out_.start("article", {{"class", "sheet " + std::string(name_of(plan_.verdict))}}).line();
    out_.start("header").start("div", {{"class", "verdict"}}).element("h1", "Calculation sheet");
    out_.element("p", summary_of(plan_, system_).whole()).end().line();
    out_.start("dl", {{"class", "facts"}});
    for (const report::HeadLine& line : report::calculation_head(plan_))
      out_.start("div").element("dt", line.label).text(" ").element("dd", line.text).end();
    out_.end().end().line();
    stop_numbers();
    calculations();
    others();
    always();
    out_.end().line();
  }

 private:
  void row(std::string_view cell, std::initializer_list<std::string_view> texts) {
    out_.start("tr");
    for (const std::string_view text : texts) out_.element(cell, text);
    out_.end().line();
  }

  void stop_numbers() {
    const auto lines = report::stop_number_lines(plan_, system_);
    if (lines.empty()) return;
    out_.element("h2", "Stop numbers").start("table").line();
    for (const report::StopNumberLine& line : lines) row("td", {line.what, line.bounds, line.by});
    out_.end().line();
  }

  void calculations() {
    std::optional<PlanPart> part;
    for (const CalculationLine& line : report::calculation_lines(plan_, system_)) {
      if (line.part != part) {
        if (part) out_.end().line();
        out_.element("h2", report::name_of(line.part)).start("table").line();
        row("th", {"No.", "Formula and figures", "Result", "Limit", "Utilization"});
      }
      part = line.part;
      out_.start("tr").element("td", std::to_string(line.number)).start("td");
      out_.element("b", line.title).empty("br").element("code", line.formula).empty("br").element("code", line.figures);
      out_.start("ul", {{"class", "plain"}});
      for (const report::CalculationFigure& figure : line.with)
        out_.element("li", figure.symbol + " = " + figure.value + ": " + figure.what + "; " + figure.source);
      out_.end().end();
      out_.element("td", line.result);
      out_.start("td").text(line.limit);
      if (!line.limit_source.empty()) out_.empty("br").element("small", line.limit_source);
      out_.end().element("td", line.utilization + (line.met ? "" : " NOT MET")).end().line();
    }
    if (part) out_.end().line();
  }

  void others() {
    const auto list = report::other_limits(plan_, system_);
    if (!list.empty()) {
      out_.element("h2", "Stops, holds and other limits").start("table").line();
      for (const report::OtherLimit& one : list) row("td", {one.severity, one.what, one.code, one.value, one.limit});
      out_.end().line();
    }
    const auto open = not_checked(plan_);
    if (open.empty()) return;
    out_.element("h2", "Not checked").start("ul", {{"class", "plain"}}).line();
    for (const NotChecked& one : open) out_.element("li", std::string(one.what) + ": " + one.give).line();
    out_.end().line();
  }

  void always() {
    out_.element("h2", "Cautions").start("ul", {{"class", "plain"}}).line();
    for (const Caution& caution : cautions(plan_, system_)) out_.element("li", caution.text.view()).line();
    out_.end().element("h2", "Signed").start("div", {{"class", "rows"}});
    for (const std::string_view who : {"Worked out by", "Checked by"}) {
      out_.start("div").text(who).text(" ").start("i", {{"class", "blank"}}).text("").end().text(" date ");
      out_.start("i", {{"class", "blank"}}).text("").end().end();
    }
    out_.end().line();
  }

  report::HtmlWriter out_;
  const Plan& plan_;
  UnitSystem system_;
};

}  // namespace

std::string calculation_sheet_text(const Plan& plan, UnitSystem system, int width) {
  return CalculationText(plan, system, width).all();
}

std::string calculation_sheet_html(const Plan& plan, UnitSystem system) {
  std::string out;
  append_page_head(out, plan.job.id.empty() ? "Calculation sheet" : plan.job.id + ": calculation sheet",
                   PageScript::none);
  CalculationPage(out, plan, system).write();
  append_page_tail(out, PageScript::none);
  return out;
}

}  // namespace mainbore
