// The field sheet: the plan's parts in the order a crew needs them. All engineering is the plan's.
#include "mainbore/sheet.hpp"

#include <algorithm>
#include <array>
#include <cmath>
#include <vector>

#include "mainbore/evidence.hpp"
#include "mainbore/measure.hpp"
#include "mainbore/report.hpp"
#include "mainbore/wording.hpp"
#include "mainbore/work.hpp"
#include "report/html_writer.hpp"
#include "report/settings_words.hpp"
#include "report/sheet_lines.hpp"
#include "report/sheet_style.hpp"
#include "report/svg_drawing.hpp"

namespace mainbore {
namespace {

using report::HtmlWriter;

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

// Room on paper, in the units of the print style (96 to the inch): two letter pages of two columns. A sheet is laid out
// here, by what its words will take, and not by the browser's columns: those leave pages half empty.
namespace paper {
constexpr double page = 1008.0;  // height between the margins
constexpr double heading = 18.0;
// Words are not set quite as counted: kept free on each page.
constexpr double reserve = 27.0;
constexpr double least_worth_filling = 60.0;
// Lost at the feet of columns, because no item is parted.
constexpr double ragged = 60.0;
}  // namespace paper

// How tight the print style sets a sheet: each level does what those before it do.
enum class Tightness : std::uint8_t {
  lists,     // every list as a list
  bring,     // what to bring runs on as one paragraph
  trouble,   // so does what may go wrong
  cautions,  // and the cautions
  brief,     // checks of what to bring and advice with warnings stay on the screen
  close,     // lines nearer to each other
  small,     // type half a point smaller
  smallest,  // and a full point
};
constexpr std::array<std::string_view, 8> tightness_styles = {
    "",
    " run-bring",
    " run-bring run-trouble",
    " run-bring run-trouble run-cautions",
    " run-bring run-trouble run-cautions brief",
    " run-bring run-trouble run-cautions brief close",
    " run-bring run-trouble run-cautions brief close small",
    " run-bring run-trouble run-cautions brief close smallest",
};

// Heights of the first three columns that the lists run through; the fourth takes what is left.
using Rooms = std::array<double, 3>;
constexpr Rooms boundless = {1e9, 1e9, 1e9};

class Sheet {
 public:
  Sheet(const Plan& plan, UnitSystem system, int count, Tightness tightness, const Rooms& rooms)
      : out_(body_),
        plan_(plan),
        system_(system),
        prefix_("s" + std::to_string(count) + "-"),
        tightness_(tightness),
        rooms_(rooms) {
    out_.start("article", {{"class", "sheet " + std::string(name_of(plan_.verdict)) +
                                         std::string(tightness_styles[static_cast<std::size_t>(tightness)])}})
        .line();
    verdict();
    readings();
    drawings();
    out_.start("div", {{"class", "pair"}}).start("div", {{"class", "half"}}).line();
    always();
    load();
    figure_in_lists(report::write_pit_figure);
    steps();
    trouble();
    figure_in_lists(report::write_profile_figure);
    record();
    sources();
    out_.end().end().end().line();
  }

  [[nodiscard]] double head() const { return head_; }    // height of what stands across both columns
  [[nodiscard]] double lists() const { return lists_; }  // length of what runs through the columns
  [[nodiscard]] const std::vector<double>& items() const { return items_; }  // that never are parted
  [[nodiscard]] const std::string& text() const { return body_; }

 private:
  [[nodiscard]] std::string show(Measure measure) const { return format_measure(measure, system_); }
  [[nodiscard]] bool no_go() const { return plan_.verdict == Verdict::no_go; }
  [[nodiscard]] bool wet() const { return plan_.job.main.pressurised.value_or(true); }

  [[nodiscard]] std::vector<const Finding*> of(Severity severity) const {
    std::vector<const Finding*> list;
    for (const Finding& finding : plan_.findings) {
      if (finding.severity == severity) list.push_back(&finding);
    }
    return list;
  }

  // As wide as a box to tick with its margins.
  static constexpr std::string_view box_width = "OO ";

  [[nodiscard]] bool at_least(Tightness level) const { return tightness_ >= level; }
  [[nodiscard]] double line() const {
    switch (tightness_) {
      case Tightness::smallest:
        return 10.75;
      case Tightness::small:
        return 11.5;
      case Tightness::close:
        return 12.0;
      default:
        return 12.5;
    }
  }
  // Words in a row, bold or not.
  struct Piece {
    std::string_view text;
    bool bold = false;
  };
  using Pieces = std::initializer_list<Piece>;

  [[nodiscard]] report::Lines column() const {
    constexpr double at_nine_points = 31.7;
    const double points = tightness_ == Tightness::smallest ? 8.0 : tightness_ == Tightness::small ? 8.5 : 9.0;
    return report::Lines(at_nine_points * 9.0 / points);
  }
  // What a paragraph takes in a column.
  [[nodiscard]] double words(Pieces pieces) const {
    report::Lines lines = column();
    for (const Piece& piece : pieces) lines.add(piece.text, piece.bold);
    return line() * lines.count();
  }
  // What an item of a list takes; where the list runs on, what it adds to the items before.
  double item(report::Lines& run, bool runs_on, Pieces pieces) const {
    if (!runs_on) return words(pieces);
    const int before = run.count();
    for (const Piece& piece : pieces) run.add(piece.text, piece.bold);
    return line() * (run.count() - before);
  }

  // Makes room in the columns for something that should not be parted: goes on to the next column where it does not
  // fit.
  void place(double height) {
    while (column_ < rooms_.size() && (column_used_ > 0.0 || rooms_[column_] <= 0.0) &&
           column_used_ + height > rooms_[column_]) {
      if (!list_.empty()) out_.end();
      out_.end();
      if (column_ % 2 == 1) out_.end().start("div", {{"class", "pair next"}});
      out_.start("div", {{"class", "half"}}).line();
      if (!list_.empty()) out_.start("ul", {{"class", list_}});
      ++column_;
      column_used_ = 0.0;
    }
    column_used_ += height;
    items_.push_back(height);
    lists_ += height;
  }
  void open_list(std::string style) {
    list_ = std::move(style);
    out_.start("ul", {{"class", list_}}).line();
  }
  void close_list() {
    out_.end().line();
    list_.clear();
  }

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

  void verdict() {
    out_.start("header").start("div", {{"class", "verdict"}});
    switch (plan_.verdict) {
      case Verdict::go:
        out_.element("h1", "GO: tap as planned, inside the stop numbers");
        break;
      case Verdict::hold:
        out_.element("h1", "HOLD: do not cut until every hold is cleared");
        break;
      case Verdict::no_go:
        out_.element("h1", "NO-GO: do not tap");
        break;
    }
    out_.element("p", sentence_case(summary_of(plan_, system_).sentence()));
    out_.end().line();

    const Job& job = plan_.job;
    const auto known_cover = job.main.known_cover();
    const std::string cover = known_cover ? show(Measure(*known_cover, Kind::distance)) : std::string();
    const std::string settings = report::settings_line(plan_.from_settings);
    double given_width = 0.0;
    const std::pair<std::string_view, const std::string*> given[] = {
        {"Order", &job.id},   {"Place", &job.place}, {"Planned for", &job.date},   {"Crew", &job.crew},
        {"Cover", &cover},    {"Note", &job.note},   {"From settings", &settings},
    };
    if (std::any_of(std::begin(given), std::end(given), [](const auto& fact) { return !fact.second->empty(); })) {
      out_.start("dl", {{"class", "facts"}});
      for (const auto& [label, text] : given) {
        given_width += report::condensed_width(label, true) + std::min(report::condensed_width(*text), 100.0) + 2.0;
        if (!text->empty()) out_.start("div").element("dt", label).text(" ").element("dd", *text).end();
      }
      out_.end().line();
    }
    // Who decides stands first among the cautions.
    const auto list = cautions(plan_, system_);
    if (!list.empty()) out_.element("p", list.front().text, {{"class", "who"}});
    out_.end().line();
    constexpr double box = 47.0;
    head_ += box + 6.0 + line() * (std::floor(given_width / 62.0) + 1.0);
    if (!list.empty()) head_ += line() * (std::floor(report::condensed_width(list.front().text) / 62.0) + 1.0);
  }

  double stop_numbers() {
    if (plan_.readings.empty() || no_go()) return 0.0;
    heading("Stop numbers", "read each one; outside it, stop and plan again");
    out_.start("table").start("tr");
    for (const std::string_view column : {"Read", "Stop unless", "Reading"})
      out_.element("th", column, {{"scope", "col"}});
    out_.end().line();
    for (const Reading& reading : plan_.readings) {
      out_.start("tr").element("th", sentence_case(std::string(words_of(reading.id))), {{"scope", "row"}});
      out_.element("td", bounds_in_words(reading, system_), {{"class", "limit"}}).element("td", "", {{"class", "read"}}).end().line();
    }
    out_.end().line();
    return paper::heading + (line() + 3.0) * static_cast<double>(plan_.readings.size() + 1);
  }

  double stops() {
    const auto list = of(Severity::stop);
    if (list.empty()) return 0.0;
    double height = paper::heading;
    heading("What stops it", "and the way forward");
    out_.start("ol", {{"class", "holds"}});
    for (const Finding* finding : list) {
      out_.start("li").element("h3", sentence_case(std::string(text_of(finding->code).title)));
      const std::string detail = detail_with_whose(*finding);
      out_.element("p", detail).element("p", fix_of(*finding, system_, plan_.readings));
      out_.end().line();
      const std::string fix = fix_of(*finding, system_, plan_.readings);
      height += words({{text_of(finding->code).title, true}}) + words({{detail}, {" "}, {fix}}) + 5.0;
    }
    out_.end().line();
    return height;
  }

  // Whose rule decided is said where a utility has rules of its own.
  [[nodiscard]] std::string detail_with_whose(const Finding& finding) const {
    const std::string detail = detail_of(finding, system_, plan_.readings);
    if (plan_.rules == nullptr || !plan_.rules->has_own()) return detail;
    const std::string whose = decided_in_words(finding);
    return whose.empty() ? detail : detail + " " + whose;
  }

  [[nodiscard]] static std::string clearer(const Finding& finding) {
    return clears_by(finding.code) == Clears::office ? " (office)" : " (at the pipe)";
  }

  [[nodiscard]] double height_of_hold(const Finding& finding) const {
    const std::string fix = fix_of(finding, system_, plan_.readings);
    return words({{"1. ", true}, {text_of(finding.code).title, true}, {clearer(finding)}, {". "}, {fix}}) + line() + 5.0;
  }

  void hold(const Finding& finding, int count) {
    out_.start("li").element(
        "h3", std::to_string(count) + ". " + sentence_case(std::string(text_of(finding.code).title)) + clearer(finding) + ".");
    out_.text(" ").element("p", detail_with_whose(finding), {{"class", "screen"}}).text(" ");
    out_.element("p", fix_of(finding, system_, plan_.readings), {{"class", "do"}});
    out_.start("p", {{"class", "boxes"}});
    blank(reading_for(finding.code), finding.limit ? shown(*finding.limit, system_).unit : std::string_view(), "first");
    blank("by");
    blank("time");
    out_.end().end().line();
  }

  // What to read and to clear, in two columns as long as each other: the second begins at the hold that passes the
  // middle.
  void readings() {
    out_.start("div", {{"class", "pair"}}).start("div", {{"class", "half"}}).line();
    double left = stop_numbers() + stops();
    auto list = of(Severity::hold);  // the office's first, numbered as on the card
    std::stable_partition(list.begin(), list.end(),
                          [](const Finding* finding) { return clears_by(finding->code) == Clears::office; });
    const std::vector<Fact> numbers = facts();
    double right = height_of_facts(numbers);
    for (const Finding* finding : list) right += height_of_hold(*finding);
    bool second = false;
    int count = 0;
    for (const Finding* finding : list) {
      if (!second && left + height_of_hold(*finding) / 2.0 > right) {
        if (count > 0) out_.end();
        out_.end().start("div", {{"class", "half"}}).line();
        if (count > 0) out_.start("ol", {{"class", "holds"}});
        second = true;
      }
      if (count == 0) {
        if (no_go()) heading("Also open", "to settle before it is planned again");
        else heading("Holds", "clear each one, write it in, sign");
        (second ? right : left) += paper::heading;
        out_.start("ol", {{"class", "holds"}});
      }
      hold(*finding, ++count);
      if (second) continue;
      left += height_of_hold(*finding);
      right -= height_of_hold(*finding);
    }
    if (count > 0) out_.end().line();
    if (!second) out_.end().start("div", {{"class", "half"}}).line();
    if (no_go()) right += found() + assumed();
    write_facts(numbers);
    out_.end().end().line();
    head_ += std::max(left, right) + 6.0;
  }

  struct Fact {
    std::string label;
    std::string text;
  };

  // What neither the stop numbers nor the drawings show.
  [[nodiscard]] std::vector<Fact> facts() const {
    std::vector<Fact> list;
    if (no_go() || plan_.method.kind == Method::none) return list;
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
    for (const BarMark& mark : bar_marks(plan_, system_))
      add("Mark " + std::string(mark.sign) + ", " + std::string(mark.name), std::string(mark.where));
    if (const std::string makeup = makeup_in_words(plan_); !makeup.empty()) add("Make-up", makeup);
    if (setup.machine != nullptr && method.kind != Method::sleeve) {
      add("Machine, feed", setup.machine->title + ", " + std::string(name_of(setup.feed)));
      if (wet() && setup.push > Force()) add("Line pushes the bar with", show(setup.push));
    }
    if (method.kind == Method::direct && setup.clamp) {
      add("Hold the machine down with", show(setup.clamp->force));
      if (setup.clamp->stud_torque) add("Stud torque, dry", show(setup.clamp->stud_torque->usual));
    }
    const auto far = [&](Length length) { return on_tape(length, system_, Toward::more); };
    if (plan_.excavation) {
      const PitPlan& pit = *plan_.excavation;
      const auto taped = [&](Length length) { return on_tape(length, system_, Toward::more); };
      add("Pit, bottom",
          taped(pit.pit.along) + " along by " + taped(pit.pit.across) + ", " + far(pit.pit.depth) + " deep");
      if (pit.pit.slope > 0.0)
        add("Walls sloped", number(pit.pit.slope, 2) + " to 1, " + std::string(name_of(pit.soil.type)));
      add("Spoil back from the edge", far(pit.setback));
    }
    if (plan_.cleaning) {
      const SwabMix& swab = plan_.cleaning->swab;
      if (swab.liquid) {
        add("Swab with", number(swab.wanted.percent(), 2) + " %: " +
                             (system_ == UnitSystem::si
                                  ? number(swab.millilitres_per_litre(), 0) + " mL stock to each litre made"
                                  : number(swab.fluid_ounces_per_gallon(), 1) + " fl oz stock to each gallon made"));
      }
      if (plan_.cleaning->flush)
        add("Flush", show(plan_.cleaning->flush->full.flow) + " for " + show(plan_.cleaning->flush->full.time));
    }
    if (plan_.service)
      add("Left behind the meter", show(plan_.service->residual_least) + " at " + show(plan_.service->demand.flow));
    return list;
  }

  // On paper they run on.
  [[nodiscard]] double height_of_facts(const std::vector<Fact>& list) const {
    if (list.empty()) return 0.0;
    report::Lines lines = column();
    for (const Fact& fact : list) {
      lines.add(fact.label + " ");
      lines.add(fact.text + " . ", true);
    }
    return paper::heading + line() * lines.count();
  }

  void write_facts(const std::vector<Fact>& list) {
    if (list.empty()) return;
    heading("Numbers of this job");
    out_.start("dl", {{"class", "numbers"}}).line();
    for (const Fact& fact : list) {
      out_.start("div").element("dt", fact.label).text(" ").element("dd", fact.text).end().line();
    }
    out_.end().line();
  }

  // Two columns of two, and under the shorter one what there is to watch for.
  void drawings() {
    if (no_go() || plan_.method.kind == Method::none) return;
    out_.start("div", {{"class", "pair"}}).start("div", {{"class", "half"}}).line();
    double left = room(report::write_section_figure(out_, plan_, system_, prefix_));
    left += room(report::write_along_figure(out_, plan_, system_, prefix_));
    std::string second;
    HtmlWriter beside(second);
    double right = room(report::write_threads_figure(beside, plan_, system_, prefix_));
    right += room(report::write_machine_figure(beside, plan_, system_, prefix_));
    const bool on_the_left = left < right;
    if (on_the_left) left += found() + assumed();
    out_.end().start("div", {{"class", "half"}}).line();
    body_ += second;
    if (!on_the_left) right += found() + assumed();
    out_.end().end().line();
    head_ += std::max(left, right);
  }

  // Room a figure takes: on the tightest sheets drawings are set smaller with the type.
  [[nodiscard]] double room(const report::FigureRoom& figure) const {
    const double share = tightness_ == Tightness::smallest ? 0.82 : tightness_ == Tightness::small ? 0.9 : 1.0;
    return figure.words + share * figure.drawing;
  }

  // A drawing that not every job has stands in the lists, where the work comes to it.
  void figure_in_lists(report::FigureRoom (*write)(HtmlWriter&, const Plan&, UnitSystem, const std::string&)) {
    std::string figure;
    HtmlWriter apart(figure);
    const double height = room(write(apart, plan_, system_, prefix_));
    if (height == 0.0) return;
    place(height);
    body_ += figure;
  }

  double found() {
    const auto warnings = of(Severity::caution);
    const auto notes = of(Severity::note);
    if (warnings.empty() && notes.empty()) return 0.0;
    double height = paper::heading;
    heading("Watch for", "found while planning");
    out_.start("ul", {{"class", "plain"}}).line();
    for (const Finding* finding : warnings) {
      const std::string detail = detail_with_whose(*finding) + " ";
      const std::string advice = fix_of(*finding, system_, plan_.readings);
      height += words({{"- "}, {detail}, {at_least(Tightness::brief) ? std::string_view() : advice}});
      out_.start("li").text(detail).element("span", advice, {{"class", "more"}}).end().line();
    }
    for (const Finding* finding : notes) {
      const std::string detail = detail_with_whose(*finding);
      if (finding->code == FindingCode::rules_looser) {  // the one note that goes to the pit
        height += words({{"- "}, {detail}});
        out_.start("li").text(detail).end().line();
        continue;
      }
      out_.start("li", {{"class", "screen"}}).text(detail).text(" ").text(fix_of(*finding, system_, plan_.readings)).end().line();
    }
    out_.end().line();
    return height;
  }

  double assumed() {
    if (plan_.main.assumed.empty()) return 0.0;
    heading("Assumed", "a reading takes the place of each");
    report::Lines run = column();
    out_.start("ul", {{"class", "plain runs"}}).line();
    for (const Assumption& assumption : plan_.main.assumed) {
      std::string path(assumption.path);
      std::replace_if(
          path.begin(), path.end(), [](char c) { return c == '.' || c == '_'; }, ' ');
      std::string value;
      append_detail(value, assumption.value, system_);
      const std::string what = sentence_case(path) + (value.empty() ? "" : ": " + value);
      run.add(what + ".  ");
      out_.start("li").text(what);
      if (!assumption.because.empty())
        out_.start("span", {{"class", "screen"}}).text(", ").text(assumption.because).end();
      out_.text(". ");
      if (!assumption.settle.empty())
        out_.element("span", sentence_case(std::string(assumption.settle)) + ". ", {{"class", "screen"}});
      out_.end().line();
    }
    out_.end().line();
    return paper::heading + line() * run.count();
  }

  void always() {
    const auto list = cautions(plan_, system_);
    const bool runs_on = at_least(Tightness::cautions);
    report::Lines run = column();
    // The first, on who decides, stands at the top of the sheet.
    for (std::size_t i = 1; i < list.size(); ++i) {
      const double height = item(run, runs_on, {{"- "}, {list[i].text}, {" "}});
      if (i == 1) {
        place(paper::heading + line() + height);
        heading("Cautions", "read out at the pit, every time");
        open_list("plain cautions");
      } else {
        place(height);
      }
      out_.start("li").text(list[i].text).text(" ");
      if (!list[i].basis.empty()) out_.element("span", "(" + std::string(list[i].basis) + ")", {{"class", "screen"}});
      out_.end().line();
    }
    if (list.size() > 1) close_list();
  }

  void load() {
    const auto list = materials(plan_, system_);
    if (list.empty()) return;
    report::Lines run = column();
    for (const LoadItem& thing : list) {
      const std::string name = (thing.quantity > 1 ? std::to_string(thing.quantity) + " " : std::string()).append(thing.item);
      const std::string size = (thing.size.empty() ? std::string() : ", " + thing.size) + ". ";
      const std::string check = at_least(Tightness::brief) ? std::string() : std::string(thing.check) + " ";
      const double height = item(run, at_least(Tightness::bring), {{box_width}, {name, true}, {size}, {check}});
      if (&thing == &list.front()) {
        place(paper::heading + line() + height);
        heading("Bring", "tick each one");
        open_list("marks bring");
      } else {
        place(height + (at_least(Tightness::bring) ? 0.0 : 0.6));
      }
      out_.start("li")
          .element("b", name)
          .text(size)
          .element("span", thing.check, {{"class", "more"}})
          .text(" ")
          .end()
          .line();
    }
    close_list();
  }

  // Where valve, bleed and pressure stand after a step that moved one of them.
  [[nodiscard]] std::string now(const RigState& state) const {
    const Seat seat = seat_of(plan_.method.kind);
    const std::string_view valve = seat == Seat::stop ? "stop" : "valve";
    const bool open = seat == Seat::stop ? state.stop_open : state.valve_open;
    return std::string(valve) + (open ? " OPEN" : " SHUT") +
           (seat == Seat::pipe ? std::string(", bypass ") + (state.bypass_open ? "OPEN" : "SHUT") : "") + ", bleed " + (state.bleed_open ? "OPEN" : "SHUT") +
           ", chamber " + (state.pressure_above ? "FULL" : "ZERO");
  }

  void steps() {
    const auto list = procedure(plan_, system_);
    if (list.empty()) return;
    std::string_view phase;
    std::string before;
    int count = 0;
    for (const Step& step : list) {
      const std::string state = now(step.state);
      const bool moved = wet() && step.state.machine_on && step.state.chamber_closed && state != before;
      before = state;
      const bool first = phase.empty();
      const bool begins = step.phase != phase;
      if (begins && !first) close_list();
      const std::string number = std::to_string(++count) + ".";
      place(words({{number, true},
                   {" "},
                   {step.text},
                   {" "},
                   {moved ? std::string_view(state) : ""},
                   {" "},
                   {step.hold_point.empty() ? "" : box_width},
                   {step.hold_point, true}}) +
            (begins ? line() + 2.0 : 0.0) + (first ? paper::heading : 0.0));
      if (first) heading("Order of work", "box: go no further until it is so");
      if (begins) {
        phase = step.phase;
        out_.element("h3", phase);
        open_list("steps");
      }
      out_.start("li").element("b", number, {{"class", "n"}}).text(" ").text(step.text);
      if (moved) out_.text(" ").element("span", state, {{"class", "now"}});
      if (!step.hold_point.empty()) out_.text(" ").element("b", step.hold_point, {{"class", "until"}});
      out_.end().line();
    }
    close_list();
  }

  void trouble() {
    const auto list = contingencies(plan_, system_);
    if (list.empty()) return;
    report::Lines run = column();
    for (const Step& step : list) {
      // What goes wrong stands before the colon.
      const std::string_view text = step.text;
      const std::size_t colon = std::min(text.find(':'), text.size());
      const double height =
          item(run, at_least(Tightness::trouble), {{"- "}, {text.substr(0, colon), true}, {text.substr(colon)}, {" "}});
      if (&step == &list.front()) {
        place(paper::heading + line() + height);
        heading("If it goes wrong");
        open_list("plain trouble");
      } else {
        place(height);
      }
      out_.start("li").element("b", text.substr(0, colon)).text(std::string(text.substr(colon)) + " ").end().line();
    }
    close_list();
  }

  // Fields of one row share a line of their own; words get the more room there.
  void record() {
    const auto form = record_form(plan_);
    if (form.empty()) return;
    constexpr double row_height = 17.0;
    constexpr double beside_each_other = 3.0;
    double rows = 0.0;
    double single = 0.0;
    std::string_view row;
    for (const RecordField& field : form) {
      if (field.row.empty()) single += 1.0;
      else if (field.row != row) rows += 1.0;
      row = field.row;
    }
    place(paper::heading + row_height * (rows + std::ceil(single / beside_each_other)));
    out_.start("section", {{"class", "record"}});
    heading("Record", "as done");
    out_.start("div");
    row = {};
    for (const RecordField& field : form) {
      if (field.row != row) {
        if (!row.empty()) out_.end();
        if (!field.row.empty()) out_.start("span", {{"class", "tie"}});
        row = field.row;
      }
      blank(field.label, unit_of(field, system_), !row.empty() && !field.kind ? "wide" : "");
    }
    if (!row.empty()) out_.end();
    out_.end().end().line();
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
      // What follows the first comma or semicolon of a title describes it.
      std::string name = "The utility's own rule";
      if (basis.utility && basis.reference != nullptr) name += ", " + *basis.reference;
      if (!basis.utility) name = basis.source->title.substr(0, basis.source->title.find_first_of(",;"));
      const auto known = std::find_if(list.begin(), list.end(), [&](const Resting& r) { return r.name == name; });
      if (known == list.end()) list.push_back({name, is_recalled(item)});
      else known->recalled = known->recalled || is_recalled(item);
    }
    if (list.empty()) return;
    std::string text;
    for (const Resting& resting : list)
      text += (text.empty() ? "" : "; ") + resting.name + (resting.recalled ? " (" + std::string(check_this_value) + ")" : "");
    place(paper::heading + words({{text}}));
    heading("Numbers rest on");
    out_.element("p", text + ".").line();
  }

  std::string body_;
  HtmlWriter out_;
  const Plan& plan_;
  UnitSystem system_;
  std::string prefix_;
  Tightness tightness_;
  Rooms rooms_;
  std::size_t column_ = 0;
  double column_used_ = 0.0;
  std::string list_;  // style of the list that is open
  double head_ = 0.0;
  double lists_ = 0.0;
  std::vector<double> items_;
};

// What is left for the column behind the first `count`, filled as place() fills them.
double left_behind(const std::vector<double>& items, const Rooms& rooms, std::size_t count) {
  std::size_t column = 0;
  double used = 0.0;
  for (const double height : items) {
    while (column < count && (used > 0.0 || rooms[column] <= 0.0) && used + height > rooms[column]) {
      ++column;
      used = 0.0;
    }
    used += height;
  }
  return column == count ? used : 0.0;
}

// Gives the last of the first `count` columns the least room, of what a page has, that leaves the column behind it no
// longer. False: that column is longer than the page all the same.
bool level(const std::vector<double>& items, Rooms& rooms, std::size_t count, double page) {
  constexpr double step = 6.0;
  double& room = rooms[count - 1];
  while (room < page && left_behind(items, rooms, count) > room) room = std::min(room + step, page);
  return left_behind(items, rooms, count) <= page;
}

}  // namespace

void append_page_head(std::string& out, std::string_view title) {
  out += "<!DOCTYPE html>\n";
  HtmlWriter head(out);
  out += "<html lang=\"en\">\n";
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

void append_sheet_body(std::string& out, const Plan& plan, UnitSystem system, int number) {
  // Laid out loosely first, then as tight as it takes to hold it on two pages.
  for (const Tightness tightness : {Tightness::lists, Tightness::bring, Tightness::trouble, Tightness::cautions,
                                    Tightness::brief, Tightness::close, Tightness::small, Tightness::smallest}) {
    const Sheet trial(plan, system, number, tightness, boundless);
    const double first_page = std::max(paper::page - paper::reserve - trial.head(), 0.0);
    const double second_page = paper::page - paper::reserve;
    if (trial.lists() + paper::ragged > 2.0 * (first_page + second_page) && tightness != Tightness::smallest) continue;
    // Columns beside each other end level: on the first page at its foot, on the last where the lists end.
    Rooms rooms = boundless;
    bool fits = false;
    if (trial.lists() <= 2.0 * first_page) {
      rooms[0] = trial.lists() / 2.0;
      fits = level(trial.items(), rooms, 1, first_page);
    }
    if (!fits) {
      const double filled = first_page < paper::least_worth_filling ? 0.0 : first_page;
      rooms = {filled, filled, trial.lists() / 2.0 - filled};
      fits = level(trial.items(), rooms, 3, second_page);
    }
    if (!fits && tightness != Tightness::smallest) continue;
    out += Sheet(plan, system, number, tightness, rooms).text();
    return;
  }
}

void append_page_tail(std::string& out) { out += "</body>\n</html>\n"; }

std::string sheet_html(const Plan& plan, UnitSystem system) {
  std::string out;
  const std::string verdict(name_of(plan.verdict));
  append_page_head(out, plan.job.id.empty() ? "Field sheet: " + verdict : plan.job.id + ": " + verdict);
  append_sheet_body(out, plan, system, 1);
  append_page_tail(out);
  return out;
}

}  // namespace mainbore
