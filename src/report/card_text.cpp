// The card on lines. It is set as loosely as its lines allow: blank lines go first, then what is odd about the job and the
// ends of the lists of what to bring. Stop numbers, holds, set-up, marks and cautions always stand, whole.
#include <algorithm>

#include "report/card.hpp"
#include "words/card.hpp"

namespace mainbore::report {
namespace {

using words::CardWord;

constexpr std::size_t sections_with_blank = 6;
constexpr std::size_t most_lines_of_odd = 3;

// How much of a card is set.
struct Typesetting {
  std::size_t odd = odd_lines;  // of whole sentences
  std::size_t blank_lines = sections_with_blank;
  bool short_bring = false;    // a line a group, what is over left to the load list
  std::size_t bring_more = 0;  // lines over that, to the first groups that want them
  bool no_bring = false;       // the load list alone
  bool short_order = false;    // number and place on a line, day and crew where they still fit
  bool run_on = false;         // what it is in one paragraph, and no line for the touch, which the heading names
  bool bare = false;           // no word of the load list, and no heading over cautions, which have their own sign
  bool plain_setup = false;  // no heading over the set-up, whose lines have labels; of a translation, with its own line
  bool short_blanks = false;  // half the room for what is written in words
  bool once = false;          // nothing at the top that set-up and marks say again
};

// The first words of a text that fit, "..." behind them. Of somebody's own text alone: no sentence of the program is cut.
std::string clipped(std::string_view text, std::size_t room) {
  std::string out = printable(text);
  if (columns(out) <= room) return out;
  const auto drop_last = [&out] {
    while ((static_cast<unsigned char>(out.back()) & 0xC0U) == 0x80U) out.pop_back();
    out.pop_back();
  };
  while (columns(out) + 4 > room) drop_last();
  constexpr std::size_t longest_word = 24;
  const std::size_t space = out.find_last_of(' ');
  if (space != std::string::npos && out.size() - space < longest_word) out.resize(space);
  return out + " ...";
}

// Number, place, day and crew, as many of them as fit; the first two stand whatever the room.
std::string order_line(const std::vector<std::string>& parts, std::size_t room) {
  std::string out;
  for (std::size_t i = 0; i < parts.size(); ++i) {
    const std::string part = (i == 0 ? "" : "; ") + printable(parts[i]);
    if (i > 1 && columns(out) + columns(part) > room) break;
    out += part;
  }
  return clipped(out, room);
}

// As many things of a list as fit, and how many more there are.
std::string shortened_list(const std::vector<std::string>& things, std::size_t room, Language language) {
  std::string out;
  for (std::size_t i = 0; i < things.size(); ++i) {
    const std::string more = say(CardWord::more_to_bring, language, {{"count", std::to_string(things.size() - i)}});
    const bool last = i + 1 == things.size();
    if (i > 0 && columns(out) + 2 + columns(things[i]) + (last ? 0 : columns(more)) > room) return out + more;
    out += (i == 0 ? "" : ", ") + things[i];
  }
  return out;
}

class CardLayout {
 public:
  CardLayout(const Card& card, const Typesetting& setting, int width, bool emphasis)
      : card_(card), setting_(setting), page_(width, emphasis), width_(static_cast<std::size_t>(page_.width())) {}

  std::string all() && {
    page_.title(card_.verdict, true);
    what();
    if (!card_.order.empty())
      page_.paragraph(order_line(card_.order, setting_.short_order ? width_ : width_ + width_ / 2));
    stops();
    readings();
    holds();
    setup();
    marks();
    bring();
    odd();
    cautions();
    if (!card_.translation.empty()) page_.paragraph(card_.translation);
    return std::move(page_).take();
  }

 private:
  [[nodiscard]] std::string_view said(CardWord word) const { return say(word, card_.language); }
  void heading(std::string_view text, std::string_view beside = {}) {
    if (sections_++ < setting_.blank_lines) page_.blank();
    page_.plain_heading(text, beside);
  }
  [[nodiscard]] std::string blank(std::string_view unit) const {
    if (unit.empty()) return std::string(setting_.short_blanks ? 8 : 14, '_');
    return std::string("________") + hard_space + std::string(unit);
  }

  void what() {
    std::string all;
    for (const std::string& line : card_.what) {
      if (setting_.once && &line != &card_.what.front()) break;
      if (!setting_.run_on) page_.paragraph(line);
      all += (all.empty() ? "" : " ") + line;
    }
    if (setting_.run_on) page_.paragraph(all);
  }

  void stops() {
    if (card_.stops.empty()) return;
    heading(said(CardWord::what_stops_it), said(CardWord::what_stops_it_beside));
    for (const std::string& text : card_.stops) page_.paragraph(text, 4, "  - ");
  }

  void readings() {
    if (card_.readings.empty()) return;
    heading(said(CardWord::stop_numbers), said(CardWord::stop_numbers_beside));
    std::size_t widest = 0;
    std::size_t widest_bounds = 0;
    for (const CardReading& reading : card_.readings) {
      widest = std::max(widest, columns(reading.what));
      widest_bounds = std::max(widest_bounds, columns(reading.bounds));
    }
    const int column = static_cast<int>(std::min<std::size_t>(widest + 6, 38));
    for (const CardReading& reading : card_.readings) {
      // Padded so that the blanks stand under each other.
      std::string text = reading.bounds;
      text.append(widest_bounds + 1 - columns(text), hard_space);
      if (!reading.unit.empty()) text += ' ' + std::string(said(CardWord::read)) + ' ' + blank(reading.unit);
      page_.field(reading.what, text, column);
    }
  }

  void holds() {
    const bool planned = card_.stops.empty();
    for (const Clears clears : {Clears::office, Clears::site}) {
      bool first = true;
      for (const CardHold& hold : card_.holds) {
        if (hold.clears != clears) continue;
        if (first) {
          if (clears == Clears::office) heading(said(planned ? CardWord::clear_by_office : CardWord::open_for_office));
          else if (!planned) heading(said(CardWord::open_at_pipe));
          else
            heading(said(CardWord::clear_at_pipe),
                    said(hold.number == 1 ? CardWord::clear_at_pipe_ready : CardWord::clear_at_pipe_beside));
        }
        first = false;
        // Number, order, blank and name: the blank to the right, where a hand finds it.
        std::string lead = std::to_string(hold.number) + ". ";
        lead.insert(0, lead.size() < 4 ? 4 - lead.size() : 0, ' ');
        const std::string place = blank(hold.unit) + hard_space + std::string(said(CardWord::by)) + hard_space + "____";
        page_.blanked(hold.text, place, 4, lead);
      }
    }
  }

  void setup() {
    if (card_.setup.empty()) return;
    if (!setting_.plain_setup) heading(said(CardWord::setup));
    for (const CardLine& line : card_.setup) page_.field(line.label, line.text, 18);
  }

  void marks() {
    if (card_.marks.empty()) return;
    heading(said(CardWord::marks), said(CardWord::marks_beside));
    std::size_t widest = 0;
    for (const BarMark& mark : card_.marks) widest = std::max(widest, columns(mark.name));
    for (const BarMark& mark : card_.marks) {
      if (setting_.run_on && mark.key == "touch") continue;
      page_.field(std::string(mark.sign) + hard_space + std::string(mark.name), mark.where.view(),
                  static_cast<int>(widest) + 8);
    }
    if (!card_.makeup.empty()) page_.field(said(CardWord::makeup), card_.makeup, static_cast<int>(widest) + 8);
  }

  void bring() {
    if (card_.bring.empty() || setting_.bare) return;
    if (setting_.no_bring) return heading(said(CardWord::bring), said(CardWord::bring_all_beside));
    heading(said(CardWord::bring), said(CardWord::bring_beside));
    constexpr std::size_t column = 13;
    constexpr std::size_t all_of_them = 10000;
    std::size_t more = setting_.bring_more;
    for (const CardGroup& group : card_.bring) {
      const std::string all = shortened_list(group.things, all_of_them, card_.language);
      std::string text = all;
      if (setting_.short_bring) {
        std::size_t room = width_ - column;
        text = shortened_list(group.things, room, card_.language);
        for (; text != all && more > 0; --more) {
          room += width_ - column;
          text = shortened_list(group.things, room, card_.language);
        }
      }
      page_.field(group.label, text, column);
    }
  }

  // As many as have room; the office's note is the one that may be cut.
  void odd() {
    std::string all;
    std::size_t lines = 0;
    std::size_t more = card_.odd.size();
    for (const std::string& text : card_.odd) {
      TextPage one(page_.width(), false);
      one.paragraph("- " + clipped(text, most_lines_of_odd * (width_ - 2)), 2);
      const std::string set = std::move(one).take();
      lines += static_cast<std::size_t>(std::count(set.begin(), set.end(), '\n'));
      if (lines > setting_.odd) break;
      all += set;
      --more;
    }
    if (all.empty()) return;
    heading(said(CardWord::about),
            more == 0 ? std::string() : say(CardWord::more_about, card_.language, {{"count", std::to_string(more)}}));
    page_.append(all);
  }

  // Side by side where there is room for two.
  void cautions() {
    if (card_.cautions.empty()) return;
    if (!setting_.bare) heading(said(CardWord::every_time));
    std::size_t widest = 0;
    for (const std::string_view text : card_.cautions) widest = std::max(widest, columns(text));
    const bool two = 2 * (widest + 2) <= width_;
    const std::size_t rows = two ? (card_.cautions.size() + 1) / 2 : card_.cautions.size();
    for (std::size_t i = 0; i < rows; ++i) {
      std::string line = "! " + std::string(card_.cautions[i]);
      if (i + rows < card_.cautions.size()) {
        line.append(width_ / 2 - columns(line), hard_space);
        line += "! " + std::string(card_.cautions[i + rows]);
      }
      page_.paragraph(line);
    }
  }

  const Card& card_;
  const Typesetting& setting_;
  TextPage page_;
  std::size_t width_;
  std::size_t sections_ = 0;
};

}  // namespace

namespace {

bool fits(const std::string& text) {
  return static_cast<std::size_t>(std::count(text.begin(), text.end(), '\n')) <= card_lines;
}

}  // namespace

void write_card(TextPage& page, const Card& card) {
  Typesetting setting;
  std::string text;
  // From the loosest to the tightest.
  for (;;) {
    text = CardLayout(card, setting, page.width(), page.emphasis()).all();
    if (fits(text)) break;
    if (setting.blank_lines > 0) --setting.blank_lines;
    else if (setting.odd > 4) --setting.odd;
    else if (!setting.short_bring) setting.short_bring = true;
    else if (!setting.short_order) setting.short_order = true;
    else if (setting.odd > 0) --setting.odd;
    else if (!setting.no_bring) setting.no_bring = true;
    else if (!setting.run_on) setting.run_on = true;
    else if (!setting.bare) setting.bare = true;
    else if (!setting.plain_setup) setting.plain_setup = true;
    else if (!setting.short_blanks) setting.short_blanks = true;
    else if (!setting.once) setting.once = true;
    else break;
  }
  // A step gives up several lines at once: what is over goes to the lists of things, then to what is odd.
  const auto fuller = [&](std::size_t Typesetting::*part) {
    ++(setting.*part);
    std::string more = CardLayout(card, setting, page.width(), page.emphasis()).all();
    const bool better = more != text && fits(more);
    if (better) text = std::move(more);
    else --(setting.*part);
    return better;
  };
  if (setting.short_bring) {
    while (!setting.no_bring && fuller(&Typesetting::bring_more)) continue;
    while (setting.odd < odd_lines && fuller(&Typesetting::odd)) continue;
  }
  page.append(text);
}

}  // namespace mainbore::report
