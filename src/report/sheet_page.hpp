// The pages of one field sheet: each part of them in a file of its own, by what it draws.
#pragma once

#include <initializer_list>
#include <string>
#include <string_view>
#include <vector>

#include "mainbore/finding_words.hpp"
#include "mainbore/language.hpp"
#include "mainbore/plan.hpp"
#include "mainbore/work.hpp"
#include "report/card.hpp"
#include "report/html_writer.hpp"
#include "words/sheet.hpp"

namespace mainbore::report {

// Paper in the units of the print style, 96 to the inch: what letter and A4 both have between the margins.
namespace paper {
constexpr double page = 990.0;
constexpr double half_column = 26.3;  // ems of body type
constexpr double whole_column = 53.6;
constexpr double least_line = 15.4;
constexpr double most_line = 18.4;     // further apart than this, lines read as a list of lists
constexpr double heading = 1.75;       // lines
constexpr double plain_heading = 1.4;  // across the page
// Words are not set quite as counted: kept free on each page.
constexpr double spare = 3.0;
}  // namespace paper

// How many lines a text takes.
[[nodiscard]] double lines_of(std::initializer_list<std::string_view> texts, double column);
// Lines set so far apart that they fill a page, within what reads well.
[[nodiscard]] std::string filling(double lines);

class Sheet {
 public:
  Sheet(std::string& body, const Plan& plan, Audience audience, int count);
  void write();

 private:
  [[nodiscard]] std::string show(Measure measure) const;
  [[nodiscard]] bool no_go() const;
  [[nodiscard]] std::string id(std::string_view name) const;
  [[nodiscard]] std::vector<const Finding*> of(Severity severity) const;
  [[nodiscard]] std::string_view said(words::SheetWord word) const;
  [[nodiscard]] std::string said(words::SheetWord word, std::initializer_list<words::Figure> figures) const;
  void heading(words::SheetWord word);
  void heading(words::SheetWord word, words::SheetWord beside);
  void heading(std::string_view text, std::string_view beside = {});
  // A label and a line to write on.
  // On a screen it takes the reading of that name.
  void blank(std::string_view label, std::string_view unit, std::string_view style, std::string reads);

  // ---- where things are, for a screen
  void jumps();

  // ---- the first page: the card
  void first_page();
  void verdict();
  void stops();
  void readings_and_drawings();
  // Where along the main is the matter where things lie near; else where around the pipe.
  [[nodiscard]] bool moved_or_near() const;
  void stop_numbers();
  void set_up();
  void marks();
  void holds();
  void bring();
  // As much as the page has room for; the rest stands on the last page.
  void odd();
  void odd_left();
  void odd(std::size_t from, std::size_t to);

  // ---- its height, in lines of body type
  [[nodiscard]] double lines_on_card() const;
  [[nodiscard]] static double full();
  [[nodiscard]] double lines_but_odd() const;
  // Two to a row, each beside its blanks.
  [[nodiscard]] double lines_of_holds(Clears clears) const;
  [[nodiscard]] double lines_of_numbers() const;
  // A label of a third of the column, and bold words beside it.
  [[nodiscard]] static double lines_of_row(std::string_view label, std::string_view text);
  [[nodiscard]] double lines_of_odd(std::size_t count) const;
  // As much of it as the page has room for.
  [[nodiscard]] std::size_t room_for_odd() const;
  [[nodiscard]] double lines_of_odd_left(bool own_page) const;

  // ---- the second page: the order of work
  [[nodiscard]] double lines_of_work() const;
  // On a page of its own where it has room there; else it runs on, and what comes after with it.
  void work_and_after();
  // Lost at the feet of columns, because no step is parted.
  static constexpr double ragged = 4.0;
  void order_of_work(bool own_page);
  void write_step(const Step& step, int count);
  // Valves and chamber as small pictures: a valve is filled when shut, the chamber when it holds pressure.
  void strip(const RigState& state);
  // What the utility says of a step or caution, behind the program's words.
  void utility_says(std::string_view id);
  void picture(bool chamber, bool filled);
  void legend();

  // ---- the third page: trouble, cautions, record
  [[nodiscard]] double lines_of_trouble() const;
  [[nodiscard]] double lines_of_cautions(bool whole) const;
  [[nodiscard]] double lines_of_record(bool own_page) const;
  void trouble(bool own_page);
  void always(bool whole, bool own_page);
  // Fields of one row share a line of their own; words get the more room there.
  void record();
  // What must be the same for this sheet to be made again.
  void foot();
  static constexpr double lines_of_foot = 1.5;

  // ---- on a screen alone: what the plan rests on
  void more();
  // Figures as gauges are read, and whose rule decided where a utility has rules of its own.
  [[nodiscard]] std::string with_figures(std::string_view text, const Finding& finding) const;
  [[nodiscard]] std::string detail_with_whose(const Finding& finding) const;
  // The office's first, numbered as on the card.
  void in_full(Severity severity, std::string_view title);
  void found();
  void assumed();
  struct Fact {
    std::string_view label;
    std::string text;
  };
  // What neither the stop numbers nor the drawings show.
  [[nodiscard]] std::vector<Fact> facts() const;
  [[nodiscard]] std::string main_in_words() const;
  void facts_of_machine(std::vector<Fact>& list) const;
  void facts_of_pit(std::vector<Fact>& list) const;
  void facts_of_water(std::vector<Fact>& list) const;
  void numbers_of_this_job();
  // Those that do not stand on the first page.
  void drawings();
  void load();
  // The publications by name, in the order met; the text report says which number rests on which.
  void sources();

  std::string& body_;
  HtmlWriter out_;
  const Plan& plan_;
  Audience audience_;
  Card card_;
  std::vector<Step> steps_;
  std::string prefix_;
  std::string figures_;        // of the first page
  double figures_room_ = 0.0;  // they take
};

}  // namespace mainbore::report
