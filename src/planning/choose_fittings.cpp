// What of the approved list goes on this main. The list is the office's word: an item that does not fit in every property
// is not taken, and where none fits, nothing is counted on that the list says.
#include <algorithm>
#include <array>
#include <bit>
#include <cstdint>
#include <limits>

#include "planning/checks.hpp"

namespace mainbore::planning {
namespace {

enum class Property : std::uint8_t { main, unknown_diameter, diameter, size, thread, rating, length, width };
constexpr std::array<std::string_view, 8> property_names = {
    "material of the main", "diameter, which is not known yet", "diameter", "size", "thread", "rating", "length",
    "cutting diameter"};

// What an item lacks, with the figures of the first that has any.
struct Lacks {
  unsigned properties = 0;
  std::optional<Measure> has;
  std::optional<Measure> needed;
  bool needed_is_least = false;

  [[nodiscard]] bool none() const { return properties == 0; }
  [[nodiscard]] int count() const { return std::popcount(properties); }
  void add(Property property) { properties |= 1U << static_cast<unsigned>(property); }
  void add(Property property, Measure value, Measure limit, bool is_least) {
    if (none()) {
      has = value;
      needed = limit;
      needed_is_least = is_least;
    }
    add(property);
  }
};
std::string_view first_name(unsigned properties) {
  return property_names[static_cast<std::size_t>(std::countr_zero(properties))];
}

class Chooser {
 public:
  Chooser(const Site& site, const ApprovedItems* among, Candidate& candidate)
      : site_(site), among_(among), candidate_(candidate) {}

  // Of those that fit, the one that leaves the bar the most way; of equals the first on the list.
  const ApprovedItem* choose(ApprovedKind kind) {
    const ApprovedItem* best = nullptr;
    for (const ApprovedItem& item : site_.approved->items) {
      if (!may_be(item, kind) || !lacks(item).none()) continue;
      if (best == nullptr || way_taken(item) < way_taken(*best)) best = &item;
    }
    if (best != nullptr) candidate_.method.fittings.push_back(best);
    return best;
  }

  void refuse(ApprovedKind kind, FindingCode code, Severity severity) {
    const ApprovedItem* nearest = nullptr;
    Lacks of_nearest;
    unsigned common = std::numeric_limits<unsigned>::max();
    for (const ApprovedItem& item : site_.approved->items) {
      if (!may_be(item, kind)) continue;
      const Lacks missing = lacks(item);
      common &= missing.properties;
      if (nearest != nullptr && missing.count() >= of_nearest.count()) continue;
      nearest = &item;
      of_nearest = missing;
    }
    auto finding = candidate_.said.findings.add(code, severity);
    finding.basis(stated_in_approved_list);
    if (nearest == nullptr) {
      finding.with(words_of(kind));
      return;
    }
    finding.with(words_of(kind), std::string_view(nearest->label), first_name(of_nearest.properties),
                 common != 0 ? Detail(first_name(common)) : Detail());
    if (!of_nearest.has) return;
    finding.value(*of_nearest.has);
    if (of_nearest.needed_is_least) finding.at_least(*of_nearest.needed);
    else finding.at_most(*of_nearest.needed);
  }

  [[nodiscard]] bool lists_any(ApprovedKind kind) const {
    const auto& items = site_.approved->items;
    return std::any_of(items.begin(), items.end(), [&](const ApprovedItem& item) { return item.kind == kind; });
  }

 private:
  [[nodiscard]] bool may_be(const ApprovedItem& item, ApprovedKind kind) const {
    return item.kind == kind &&
           (among_ == nullptr || std::find(among_->begin(), among_->end(), &item) != among_->end());
  }

  [[nodiscard]] Length way_taken(const ApprovedItem& item) const {
    if (item.kind == ApprovedKind::chain) return *item.length;
    if (candidate_.method.kind != Method::saddle) return Length();
    return item.length.value_or(std::numeric_limits<double>::max() * units::inch);
  }

  [[nodiscard]] Lacks lacks(const ApprovedItem& item) const {
    Lacks missing;
    const ChosenMethod& method = candidate_.method;
    if (!item.main.empty() && std::find(item.main.begin(), item.main.end(), site_.main.material) == item.main.end()) {
      missing.add(Property::main);
    }
    if (item.od_from) lacks_diameter(item, missing);
    const bool sized = item.kind != ApprovedKind::seat && item.kind != ApprovedKind::chain;
    if (sized && item.size != method.tap) missing.add(Property::size);
    if (item.thread && item.thread != method.thread) missing.add(Property::thread);
    if (item.kind == ApprovedKind::stop)
      lacks_rating(item, site_.job().service.stop_rating, site_.rules.pressure.stop_rating, missing);
    if (item.kind == ApprovedKind::saddle || item.kind == ApprovedKind::sleeve) {
      lacks_rating(item, site_.job().service.saddle_rating, site_.rules.pressure.saddle_rating, missing);
    }
    if (item.diameter && method.hole && over(*item.diameter, *method.hole)) {
      missing.add(Property::width, *item.diameter, *method.hole, false);
    }
    const auto& chain = candidate_.setup.chain;
    if (item.kind == ApprovedKind::chain && chain && over(chain->needed, *item.length)) {
      missing.add(Property::length, Measure(*item.length, Kind::tape), Measure(chain->needed, Kind::tape), true);
    }
    return missing;
  }

  // It must take every pipe that the main may turn out to be.
  void lacks_diameter(const ApprovedItem& item, Lacks& missing) const {
    const ResolvedMain& main = site_.main;
    if (!main.od_least || !main.od_greatest) missing.add(Property::unknown_diameter);
    else if (over(*item.od_from, *main.od_least)) missing.add(Property::diameter, *item.od_from, *main.od_least, false);
    else if (over(*main.od_greatest, *item.od_to))
      missing.add(Property::diameter, *item.od_to, *main.od_greatest, true);
  }

  // Of one whose rating the list does not say, what the job read or the rule assumes.
  void lacks_rating(const ApprovedItem& item, const std::optional<Pressure>& marked, const Rule<Pressure>& rule,
                    Lacks& missing) const {
    const Pressure rating = item.rating.value_or(marked.value_or(rule.value));
    const Pressure line = site_.line();
    const double factor = site_.rules.pressure.fitting_surge_factor.value;
    const Pressure surge = greatest_surge(site_);
    if (!over(line, rating) && !over(line + surge, factor * rating)) return;
    missing.add(Property::rating, rating, std::max(line, (1.0 / factor) * (line + surge)), true);
  }

  const Site& site_;
  const ApprovedItems* among_;
  Candidate& candidate_;
};

template <class T>
void supply(FittingFacts::Fact<T>& fact, const std::optional<T>& by_list) {
  if (!fact.value && by_list) fact = {by_list, &stated_in_approved_list};
}

void take_length(Candidate& candidate, const FittingFacts::Fact<Length>& length) {
  if (!length.value || length.basis != &stated_in_approved_list) return;
  candidate.said.taken.take(PlanPart::machine, Taken::fitting_length, *length.basis, Measure(*length.value));
}

}  // namespace

void choose_fittings(const Site& site, const ApprovedItems* among, Candidate& candidate) {
  const ServiceFacts& service = site.job().service;
  FittingFacts& facts = candidate.fitting;
  facts.stop_rating.value = service.stop_rating;
  facts.saddle_rating.value = service.saddle_rating;
  facts.stop_length.value = service.stop_length;
  facts.saddle_height.value = service.saddle_height;
  const Method method = candidate.method.kind;
  if (site.approved == nullptr || method == Method::none) return;

  Chooser chooser(site, among, candidate);
  const auto choose = [&](ApprovedKind kind) {
    const ApprovedItem* const item = chooser.choose(kind);
    if (item == nullptr) chooser.refuse(kind, FindingCode::approved_none_fits, Severity::hold);
    return item;
  };
  if (method == Method::sleeve) {
    if (const ApprovedItem* const sleeve = choose(ApprovedKind::sleeve)) supply(facts.saddle_rating, sleeve->rating);
    return;
  }
  if (method == Method::saddle) {
    if (const ApprovedItem* const saddle = choose(ApprovedKind::saddle)) {
      supply(facts.saddle_rating, saddle->rating);
      supply(facts.saddle_height, saddle->length);
    }
  }
  if (const ApprovedItem* const stop = choose(ApprovedKind::stop)) {
    supply(facts.stop_rating, stop->rating);
    if (method == Method::saddle) supply(facts.stop_length, stop->length);
  }
  take_length(candidate, facts.saddle_height);
  take_length(candidate, facts.stop_length);
}

void choose_tools(const Site& site, const ApprovedItems* among, Candidate& candidate) {
  const Method method = candidate.method.kind;
  if (method == Method::none) return;
  Chooser chooser(site, among, candidate);
  const auto choose = [&](ApprovedKind kind) {
    if (!chooser.lists_any(kind) || chooser.choose(kind) != nullptr) return;
    chooser.refuse(kind, FindingCode::approved_no_tool_fits, Severity::caution);
  };
  if (method != Method::direct) return choose(ApprovedKind::cutter);
  choose(ApprovedKind::tap);
  choose(ApprovedKind::seat);
  if (candidate.setup.chain) choose(ApprovedKind::chain);
}

}  // namespace mainbore::planning
