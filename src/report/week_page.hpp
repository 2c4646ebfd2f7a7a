// What a report of a week is written on: plain text, or a page of HTML.
#pragma once

#include <string>
#include <string_view>

#include "report/html_writer.hpp"
#include "report/text_page.hpp"

namespace mainbore::report {

class WeekPage {
 public:
  virtual ~WeekPage() = default;
  virtual void title(std::string_view text) = 0;
  virtual void paragraph(std::string_view text) = 0;
  virtual void heading(std::string_view text, std::string_view beside) = 0;
  // An order, a truck, a reading.
  virtual void entry(std::string_view name, std::string_view text) = 0;
  // One of many that take a line each.
  virtual void row(std::string_view name, std::string_view text) = 0;
  // "Why: ..." of an entry.
  virtual void line(std::string_view label, std::string_view text) = 0;
  // A thing to tick off.
  virtual void tick(std::string_view text) = 0;
};

class WeekText : public WeekPage {
 public:
  WeekText(int width, bool color) : page_(width, color) {}
  void title(std::string_view text) override { page_.title(text, true); }
  void paragraph(std::string_view text) override { page_.paragraph(text, 2, "  "); }
  void heading(std::string_view text, std::string_view beside) override { page_.heading(text, beside); }
  void entry(std::string_view name, std::string_view text) override {
    page_.paragraph(text, 4, "  " + std::string(name) + ' ');
  }
  void row(std::string_view name, std::string_view text) override { entry(name, text); }
  void line(std::string_view label, std::string_view text) override {
    page_.paragraph(text, 8, "    " + std::string(label) + ": ");
  }
  void tick(std::string_view text) override { page_.paragraph(text, 8, "    [ ] "); }
  [[nodiscard]] std::string take() && { return std::move(page_).take(); }

 private:
  TextPage page_;
};

class WeekHtml : public WeekPage {
 public:
  explicit WeekHtml(std::string& out) : out_(out) { out_.start("main", {{"class", "sheet"}}).line(); }
  void title(std::string_view text) override { out_.element("h1", text).line(); }
  void paragraph(std::string_view text) override {
    end_list();
    out_.element("p", text).line();
  }
  void heading(std::string_view text, std::string_view beside) override {
    end_list();
    out_.start("h2").text(text).text(" ").element("small", beside).end().line();
  }
  void entry(std::string_view name, std::string_view text) override {
    end_list();
    out_.start("h3").text(name).text(" ").text(text).end().line();
  }
  void row(std::string_view name, std::string_view text) override {
    end_list();
    out_.start("p").element("b", name).text(" ").text(text).end().line();
  }
  void line(std::string_view label, std::string_view text) override {
    end_list();
    out_.start("p").element("b", std::string(label) + ": ").text(text).end().line();
  }
  void tick(std::string_view text) override {
    if (!in_list_) out_.start("ul", {{"class", "marks"}}).line();
    in_list_ = true;
    out_.element("li", text).line();
  }
  void finish() {
    end_list();
    out_.end().line();
  }

 private:
  void end_list() {
    if (in_list_) out_.end().line();
    in_list_ = false;
  }

  HtmlWriter out_;
  bool in_list_ = false;
};

}  // namespace mainbore::report
