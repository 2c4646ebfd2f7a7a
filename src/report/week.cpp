#include "report/week.hpp"

#include <algorithm>
#include <set>
#include <tuple>
#include <utility>

#include "mainbore/sheet.hpp"
#include "report/week_days.hpp"
#include "report/week_page.hpp"

namespace mainbore::report {
namespace {

bool is_hold(WeekEnd end) { return end == WeekEnd::office || end == WeekEnd::ready; }

constexpr std::size_t most_names = 200;   // of orders that go: nobody reads more
constexpr std::size_t most_wanting = 40;  // names of orders that want one thing
// What one screen holds: so many orders a line each, else so many reasons of a kind with so many names.
constexpr std::size_t most_at_a_glance = 30;
constexpr std::size_t most_reasons = 10;
constexpr std::size_t most_of_a_reason = 6;

// What stays in the ground or is used up is added up over the orders of a truck. Of everything else, which goes from one
// order to the next, a truck carries as many as the most demanding order asks for.
bool is_used_up(std::string_view key) {
  constexpr std::array<std::string_view, 11> keys = {
      "corporation-stop", "service-saddle", "tapping-sleeve",  "tapping-valve", "support",        "service-pipe",
      "curb-stop",        "machine-gasket", "encasement-tape", "trial-piece",   "branch-fittings"};
  return std::find(keys.begin(), keys.end(), key) != keys.end();
}

void add_load(std::vector<LoadItem>& load, const LoadItem& item) {
  const auto same = std::find_if(load.begin(), load.end(), [&](const LoadItem& known) {
    return known.key == item.key && known.item == item.item && known.size == item.size && known.stock == item.stock;
  });
  if (same == load.end()) load.push_back(item);
  else if (is_used_up(item.key)) same->quantity += item.quantity;
  else same->quantity = std::max(same->quantity, item.quantity);
}

std::string joined(const std::vector<std::string>& words, std::string_view between = ", ") {
  std::string text;
  for (const std::string& word : words) {
    if (!text.empty()) text += between;
    text += word;
  }
  return text;
}

// "A, B, C and 14 more"
std::string some_of(const std::vector<std::string>& names, std::size_t all, std::size_t most) {
  const std::size_t shown = std::min(names.size(), all > most + 1 ? most : all);
  std::string text = joined({names.begin(), names.begin() + static_cast<std::ptrdiff_t>(shown)});
  if (all > shown) text += " and " + std::to_string(all - shown) + " more";
  return text;
}

// The beginning, in whole words; all of it stands further below.
std::string cut_short(const std::string& text) {
  constexpr std::size_t longest = 56;
  if (text.size() <= longest) return text;
  const std::size_t space = text.rfind(' ', longest);
  return space == std::string::npos ? text : text.substr(0, space) + " ...";
}

std::string orders_in_words(std::uint64_t count) { return std::to_string(count) + (count == 1 ? " order" : " orders"); }

// "AV-3009", "2026-05-04, North, 9 Ropewalk: 1 in direct tap in the ..."; of an order that has no such facts "row 1:" and
// the tap alone.
std::pair<std::string, std::string> heading_of(const WeekOrder& order) {
  std::vector<std::string> facts;
  for (const std::string* fact : {&order.date, &order.crew, &order.place}) {
    if (!fact->empty()) facts.push_back(*fact);
  }
  if (facts.empty()) return {order.summary.empty() ? order.name : order.name + ':', order.summary};
  return {order.name, joined(facts) + ": " + order.summary};
}

// A thing a line, its sizes behind it: "Corporation stop, AWWA taper inlet: 2 x 1 in; 3 x 3/4 in". `used_up` says of
// which kind the lines are. What has no size and is needed once goes to `single`, where that is wanted.
void write_items(WeekPage& page, const std::vector<LoadItem>& load, bool used_up, std::vector<std::string>* single) {
  std::vector<std::pair<std::string, std::string>> lines;
  for (const LoadItem& item : load) {
    if (is_used_up(item.key) != used_up) continue;
    if (single != nullptr && item.size.empty() && item.stock.empty() && item.quantity == 1) {
      single->emplace_back(item.item);
      continue;
    }
    std::string much = item.quantity > 1 || used_up ? std::to_string(item.quantity) : std::string();
    if (!item.size.empty()) much += (much.empty() ? "" : " x ") + item.size;
    if (!item.stock.empty()) much += ", stock " + item.stock;
    const auto same =
        std::find_if(lines.begin(), lines.end(), [&](const auto& line) { return line.first == item.item.view(); });
    if (same == lines.end()) lines.emplace_back(item.item.view(), std::move(much));
    else same->second += "; " + much;
  }
  for (auto& [name, much] : lines) page.tick((name += ": ") += much);
}

// Items that draw on the same things aboard, added up.
std::vector<LoadItem> drawn_together(const std::vector<LoadItem>& load) {
  std::vector<LoadItem> together;
  for (const LoadItem& item : load) {
    const auto same = std::find_if(together.begin(), together.end(), [&](const LoadItem& known) {
      return known.key == item.key && !item.aboard_as.empty() && known.aboard_as == item.aboard_as;
    });
    if (same == together.end()) together.push_back(item);
    else if (is_used_up(item.key)) same->quantity += item.quantity;
    else same->quantity = std::max(same->quantity, item.quantity);
  }
  return together;
}

// What the day's orders want together and one truck has not, in numbers.
void write_short(WeekPage& page, const std::vector<LoadItem>& load) {
  if (std::none_of(load.begin(), load.end(), [](const LoadItem& item) { return item.aboard.has_value(); })) return;
  std::vector<std::string> things;
  for (const LoadItem& item : drawn_together(load)) {
    if (item.lacking() == 0) continue;
    std::string thing(item.key);
    std::replace(thing.begin(), thing.end(), '-', ' ');
    if (!item.size.empty()) thing += ' ' + item.size;
    if (!item.stock.empty()) thing += ", stock " + item.stock;
    thing += ": " + std::to_string(item.lacking()) + " of " + std::to_string(item.quantity);
    if (!item.instead.empty()) thing += " (aboard: " + item.instead + ")";
    things.push_back(std::move(thing));
  }
  if (things.empty()) page.tick("Aboard: all of it");
  else page.tick("SHORT on the truck: " + joined(things, "; "));
}

}  // namespace

void WeekReport::add(WeekOrder order) {
  ++counts_[static_cast<std::size_t>(order.end)];
  for (std::string& remark : order.remarks) remarks_.emplace_back(order.name, std::move(remark));
  order.remarks.clear();
  if (!order.load.empty()) {
    const auto [place, fresh] = truck_of_.try_emplace({day_key(order.date), crew_key(order.crew)}, trucks_.size());
    if (fresh) trucks_.push_back({day_shown(order.date), order.crew, 0, 0, {}});
    Truck& truck = trucks_[place->second];
    ++truck.orders;
    if (is_hold(order.end)) ++truck.holds;
    for (const LoadItem& item : order.load) add_load(truck.load, item);
    order.load = {};
  }
  for (const std::string& thing : order.scarce) {
    if (order.date.empty()) continue;
    const auto [place, fresh] = wanted_of_.try_emplace({day_key(order.date), thing}, wanted_.size());
    if (fresh) wanted_.push_back({day_shown(order.date), thing, {}});
    wanted_[place->second].orders.push_back({order.name, order.crew});
  }
  if (!order.sheet.empty()) {
    if (++sheet_count_ <= most_sheets) sheets_ += order.sheet;
    else sheets_ = {};
    order.sheet = {};
  }
  if (order.end == WeekEnd::go) {
    if (go_.size() < most_names) go_.push_back(order.name);
    return;
  }
  if (is_hold(order.end)) {
    for (const WeekReason& reason : order.reasons) ++holds_by_code_[static_cast<std::size_t>(reason.code)];
  }
  troubled_.push_back(std::move(order));
}

const WeekReason& WeekReport::particular(const WeekOrder& order) const {
  if (!is_hold(order.end)) return order.reasons.front();
  const auto orders_with = [&](const WeekReason& reason) {
    return holds_by_code_[static_cast<std::size_t>(reason.code)];
  };
  // Of an order that waits for the office, what the office clears.
  const auto rank = [&](const WeekReason& reason) {
    return std::pair(order.end == WeekEnd::office && reason.ask.empty(), orders_with(reason));
  };
  return *std::min_element(order.reasons.begin(), order.reasons.end(),
                           [&](const WeekReason& a, const WeekReason& b) { return rank(a) < rank(b); });
}

void WeekReport::write(WeekPage& page) const {
  std::uint64_t all = 0;
  for (const std::uint64_t orders : counts_) all += orders;
  page.title(orders_in_words(all) + ": " + std::to_string(count(WeekEnd::unreadable)) + " cannot be read, " +
             std::to_string(count(WeekEnd::no_go)) + " no-go, " + std::to_string(holds()) + " hold" +
             (holds() == 0 ? std::string()
                           : " (" + std::to_string(count(WeekEnd::office)) + " for the office, " +
                                 std::to_string(count(WeekEnd::ready)) + " ready)") +
             ", " + std::to_string(count(WeekEnd::go)) + " go");
  write_missing_sheets(page);
  write_twice(page);
  write_glance(page);
  write_troubled(page);
  write_questions(page);
  write_on_site(page);
  write_go(page);
  write_remarks(page);
  write_scarce(page);
  write_load(page);
}

void WeekReport::write_missing_sheets(WeekPage& page) const {
  if (sheet_count_ <= most_sheets) return;
  page.paragraph("The field sheets of these " + orders_in_words(sheet_count_) + " are not on this page, which holds " +
                 std::to_string(most_sheets) + " at most: --sheets DIR writes each to a file of its own.");
}

// Records are joined by their ids, and sheets are filed by them.
void WeekReport::write_twice(WeekPage& page) const {
  if (twice_.empty()) return;
  page.heading("ONE ID, TWO ORDERS", "ask which of the orders is meant");
  for (const auto& [id, where] : twice_) page.row(id, where);
}

// All that will go wrong on one screen: an order a line, or a reason a line where orders are many.
void WeekReport::write_glance(WeekPage& page) const {
  if (troubled_.empty()) return;
  page.heading("AT A GLANCE", "what does not simply go");
  constexpr std::array<std::pair<WeekEnd, std::string_view>, 4> ends = {{{WeekEnd::unreadable, "unread"},
                                                                         {WeekEnd::no_go, "NO-GO "},
                                                                         {WeekEnd::office, "office"},
                                                                         {WeekEnd::ready, "ready "}}};
  for (const auto& [end, word] : ends) {
    if (troubled_.size() > most_at_a_glance) write_reasons(page, end, word);
    else write_orders(page, end, word);
  }
}

void WeekReport::write_orders(WeekPage& page, WeekEnd end, std::string_view word) const {
  for (const WeekOrder& order : troubled_) {
    if (order.end != end || order.reasons.empty()) continue;
    const WeekReason& reason = particular(order);
    std::string text = order.name;
    if (!order.date.empty()) text += ' ' + order.date;
    if (!order.crew.empty()) text += ' ' + order.crew;
    text += ": " + (end == WeekEnd::unreadable ? cut_short(reason.why) : reason.what);
    if (order.reasons.size() > 1) text += ", and " + std::to_string(order.reasons.size() - 1) + " more";
    page.row(word, text);
  }
}

void WeekReport::write_reasons(WeekPage& page, WeekEnd end, std::string_view word) const {
  std::vector<std::pair<std::string, std::vector<std::string>>> reasons;
  std::map<std::string, std::size_t> place_of;
  for (const WeekOrder& order : troubled_) {
    if (order.end != end || order.reasons.empty()) continue;
    const WeekReason& reason = particular(order);
    const std::string what = end == WeekEnd::unreadable ? cut_short(reason.why) : reason.what;
    const auto [place, fresh] = place_of.try_emplace(what, reasons.size());
    if (fresh) reasons.emplace_back(what, std::vector<std::string>());
    reasons[place->second].second.push_back(order.name);
  }
  std::stable_sort(reasons.begin(), reasons.end(),
                   [](const auto& a, const auto& b) { return a.second.size() > b.second.size(); });
  const std::size_t shown = reasons.size() > most_reasons + 1 ? most_reasons : reasons.size();
  for (std::size_t i = 0; i < shown; ++i) {
    const auto& [what, orders] = reasons[i];
    page.row(word,
             std::to_string(orders.size()) + ": " + what + ": " + some_of(orders, orders.size(), most_of_a_reason));
  }
  if (shown < reasons.size())
    page.row(word, "and " + std::to_string(reasons.size() - shown) + " more reasons: see below");
}

// Orders of which the same is to be said stand together, and it is said once.
void WeekReport::write_entries(WeekPage& page, WeekEnd end) const {
  struct Alike {
    std::vector<Saying> sayings;
    std::vector<const WeekOrder*> orders;
  };
  std::vector<Alike> groups;
  std::map<std::vector<Saying>, std::size_t> place_of;
  for (const WeekOrder& order : troubled_) {
    if (order.end != end || order.reasons.empty()) continue;
    std::vector<Saying> sayings = is_hold(end) ? sayings_of_hold(order) : sayings_of_refusal(order);
    const auto [place, fresh] = place_of.try_emplace(sayings, groups.size());
    if (fresh) groups.push_back({std::move(sayings), {}});
    groups[place->second].orders.push_back(&order);
  }
  for (const Alike& group : groups) {
    for (const WeekOrder* order : group.orders) {
      const auto [name, text] =
          end == WeekEnd::unreadable ? std::pair(order->name, "(" + order->where + ")") : heading_of(*order);
      page.entry(name, text);
    }
    for (const auto& [label, text] : group.sayings) page.line(label, text);
  }
}

std::vector<WeekReport::Saying> WeekReport::sayings_of_refusal(const WeekOrder& order) {
  std::vector<Saying> sayings;
  for (const WeekReason& reason : order.reasons) {
    sayings.emplace_back("Why", reason.why);
    if (!reason.fix.empty()) sayings.emplace_back("Do", reason.fix);
  }
  return sayings;
}

// What is particular to the order first, with its remedy; the other holds by name.
std::vector<WeekReport::Saying> WeekReport::sayings_of_hold(const WeekOrder& order) const {
  const WeekReason& first = particular(order);
  std::vector<Saying> sayings = {{"Why", first.why}, {"Do", first.fix}};
  std::vector<std::string> others;
  for (const WeekReason& reason : order.reasons) {
    if (!reason.ask.empty()) sayings.emplace_back("Ask", std::string(reason.whom) + ": " + reason.ask);
    if (&reason != &first) others.push_back(reason.what);
  }
  if (!others.empty()) sayings.emplace_back("Also", joined(others, "; ") + ".");
  return sayings;
}

void WeekReport::write_troubled(WeekPage& page) const {
  constexpr std::array<std::array<std::string_view, 2>, 4> headings = {
      {{"READY", "hold: send the crew, which clears each hold at the pipe before the cut"},
       {"OFFICE", "hold: the office has something to clear before a crew is sent"},
       {"NO-GO", "send no crew"},
       {"CANNOT BE READ", "ask for what is missing; nothing was planned"}}};
  for (const WeekEnd end : {WeekEnd::unreadable, WeekEnd::no_go, WeekEnd::office, WeekEnd::ready}) {
    if (count(end) == 0) continue;
    const auto& [heading, beside] = headings[static_cast<std::size_t>(end) - 1];
    page.heading(heading, beside);
    write_entries(page, end);
  }
}

// By whom to ask, because that is one call.
void WeekReport::write_questions(WeekPage& page) const {
  std::map<std::string_view, std::map<std::string_view, std::vector<std::string>>> asked;
  for (const WeekOrder& order : troubled_) {
    if (order.end != WeekEnd::office) continue;
    for (const WeekReason& reason : order.reasons) {
      if (!reason.ask.empty()) asked[reason.whom][reason.ask].push_back(order.name);
    }
  }
  if (asked.empty()) return;
  page.heading("TO ASK", "what the office has to clear, by whom to ask");
  for (const auto& [whom, questions] : asked) {
    page.entry(whom, "");
    for (const auto& [question, orders] : questions) {
      page.line(some_of(orders, orders.size(), most_of_a_reason), question);
    }
  }
}

// Reading by reading, because that is how the instruments are taken along.
void WeekReport::write_on_site(WeekPage& page) const {
  struct ReadingToTake {
    std::string name;
    std::string what;
    std::vector<std::string> orders;
  };
  std::vector<ReadingToTake> readings;
  std::map<std::string, std::size_t> reading_of;
  for (const WeekOrder& order : troubled_) {
    if (!is_hold(order.end)) continue;
    for (const WeekReason& reason : order.reasons) {
      if (!reason.ask.empty()) continue;
      const std::string name = reason.bound.empty() ? reason.reading : reason.reading + ", " + reason.bound;
      const auto [place, fresh] = reading_of.try_emplace(name + '\n' + reason.what, readings.size());
      if (fresh) readings.push_back({name, reason.what, {}});
      readings[place->second].orders.push_back(order.name);
    }
  }
  std::stable_sort(readings.begin(), readings.end(),
                   [](const ReadingToTake& a, const ReadingToTake& b) { return a.orders.size() > b.orders.size(); });
  if (readings.empty()) return;
  page.heading("ON SITE", "what the holds ask to be read at the pipe, and for which orders");
  for (const ReadingToTake& reading : readings) {
    const bool all = reading.orders.size() == holds() && reading.orders.size() > most_of_a_reason;
    page.row(reading.name,
             "(" + reading.what +
                 "): " + (all ? "all orders on hold" : some_of(reading.orders, reading.orders.size(), most_wanting)));
  }
}

void WeekReport::write_go(WeekPage& page) const {
  if (count(WeekEnd::go) == 0) return;
  page.heading("GO", "inside the stop numbers of each plan");
  page.paragraph(some_of(go_, count(WeekEnd::go), most_names));
}

void WeekReport::write_remarks(WeekPage& page) const {
  if (remarks_.empty()) return;
  page.heading("SET ASIDE", "cells that cannot be read; those that matter hold the order");
  for (const auto& [name, remark] : remarks_) page.row(name, remark);
}

// Two orders of one crew come one after the other. Of two crews, or of crews nobody has named, one waits.
void WeekReport::write_scarce(WeekPage& page) const {
  bool begun = false;
  if (!lists_days()) return;
  for (const Wanted& wanted : wanted_) {
    if (!is_listed(day_key(wanted.date))) continue;
    std::set<std::string> crews;
    bool unnamed = false;
    std::vector<std::string> names;
    for (const Wanting& order : wanted.orders) {
      crews.insert(crew_key(order.crew));
      unnamed = unnamed || order.crew.empty();
      names.push_back(order.crew.empty() ? order.name : order.name + " (" + order.crew + ")");
    }
    if (wanted.orders.size() < 2 || (crews.size() < 2 && !unnamed)) continue;
    if (!begun) page.heading("SAME DAY, SAME THING", "see that there is one for each, or move an order");
    begun = true;
    page.row(wanted.date, wanted.thing + " for " + some_of(names, names.size(), most_wanting));
  }
}

// The map's keys are in the order of the days, and of the crews of a day.
std::vector<const WeekReport::Truck*> WeekReport::trucks_by_day() const {
  std::vector<const Truck*> trucks;
  for (const auto& [key, place] : truck_of_) {
    if (is_listed(key.first)) trucks.push_back(&trucks_[place]);
  }
  return trucks;
}

std::vector<std::string_view> WeekReport::days_to_load_for() const {
  std::vector<std::string_view> days;
  for (const auto& [key, place] : truck_of_) {
    const std::string_view day = key.first;
    if (names_day(day) && (days.empty() || days.back() != day)) days.push_back(day);
  }
  return days;
}

void WeekReport::write_undated(WeekPage& page) const {
  std::uint64_t undated = 0;
  for (const auto& [key, place] : truck_of_) {
    if (!names_day(key.first)) undated += trucks_[place].orders;
  }
  if (undated == 0) return;
  page.paragraph(std::to_string(undated) + (undated == 1 ? " order has" : " orders have") +
                 " no day that can be read, and no list by day.");
}

void WeekReport::write_load(WeekPage& page) const {
  if (trucks_.empty()) return;
  page.heading("LOAD LIST", "fittings added up; of a tool as many as the order that needs most of them");
  const bool by_day = lists_days();
  if (!by_day) {
    const auto days = days_to_load_for();
    page.paragraph("These orders are of " + std::to_string(days.size()) + " days, " + std::string(days.front()) +
                   " to " + std::string(days.back()) +
                   ": what each of them wants is left out. --days FIRST..LAST, or a day alone, prints it, with "
                   "what two crews want on the same day.");
  }
  const std::vector<const Truck*> trucks = trucks_by_day();
  if (trucks.empty()) page.paragraph("No order of these days wants anything.");
  if (!by_day || !days_.first.empty()) write_undated(page);
  std::vector<LoadItem> stores;
  for (const Truck* truck : trucks) {
    if (by_day) write_truck(page, *truck);
    for (const LoadItem& item : truck->load) {
      if (is_used_up(item.key)) add_load(stores, item);
    }
  }
  if (trucks.size() < 2) return;
  page.entry("From stores,", "for all of them");
  write_items(page, stores, true, nullptr);
}

void WeekReport::write_truck(WeekPage& page, const Truck& truck) const {
  std::vector<std::string> whose;
  for (const std::string* fact : {&truck.date, &truck.crew}) {
    if (!fact->empty()) whose.push_back(*fact);
  }
  if (whose.empty()) whose.emplace_back(trucks_.size() > 1 ? "No day and no crew" : "All orders");
  const std::string first = whose.front() + (whose.size() > 1 ? "," : ":");
  std::string orders = whose.size() > 1 ? whose[1] + ": " : std::string();
  orders += orders_in_words(truck.orders);
  if (truck.holds > 0) orders += ", " + std::to_string(truck.holds) + " of them on hold";
  page.entry(first, orders);
  write_items(page, truck.load, true, nullptr);
  std::vector<std::string> tools;
  write_items(page, truck.load, false, &tools);
  if (!tools.empty()) page.tick("One each: " + joined(tools, "; "));
  write_short(page, truck.load);
}

std::string WeekReport::text(const WeekTextOptions& options) const {
  WeekText page(options.width, options.color);
  write(page);
  return std::move(page).take();
}

std::string WeekReport::html() const {
  std::string out;
  const PageScript script = sheets_.empty() ? PageScript::none : PageScript::readings;
  append_page_head(out, "Orders", script);
  WeekHtml page(out);
  write(page);
  page.finish();
  out += sheets_;
  append_page_tail(out, script);
  return out;
}

}  // namespace mainbore::report
