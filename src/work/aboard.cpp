#include "work/aboard.hpp"

#include <algorithm>
#include <array>
#include <cmath>

#include "mainbore/measure.hpp"
#include "words/load.hpp"

namespace mainbore::work {
namespace {

bool is_one_of(std::string_view key, std::initializer_list<std::string_view> keys) {
  return std::find(keys.begin(), keys.end(), key) != keys.end();
}
// Of these one of another size, or for another diameter, does not do.
bool of_tap_size(std::string_view key) {
  return is_one_of(key, {"corporation-stop", "service-saddle", "tapping-sleeve", "tapping-valve", "insertion-tool",
                         "combined-drill-and-tap", "shell-cutter", "stop-adapter", "valve-adapter", "plug"});
}
bool of_diameter(std::string_view key) {
  return is_one_of(key, {"service-saddle", "tapping-sleeve", "machine-saddle", "repair-clamp"});
}

class Counter {
 public:
  Counter(const Plan& plan, const Aboard& aboard, Audience audience)
      : plan_(plan), aboard_(aboard), audience_(audience) {}

  void count(LoadItem& item) const {
    int have = 0;
    for (std::size_t i = 0; i < aboard_.size(); ++i) {
      if (!serves(aboard_[i], item)) continue;
      have += aboard_[i].count;
      item.aboard_as += std::to_string(i) + ' ';
    }
    item.aboard = have;
    if (item.lacking() > 0) item.instead = instead_of(item);
  }

 private:
  [[nodiscard]] bool serves(const AboardItem& thing, const LoadItem& item) const {
    if (!item.stock.empty()) return thing.stock == item.stock;
    return thing.item == item.key && fits(thing, item.key);
  }

  [[nodiscard]] bool fits(const AboardItem& thing, std::string_view key) const {
    if (of_tap_size(key) && thing.size != plan_.method.tap) return false;
    if (of_diameter(key) && !covers(thing)) return false;
    if (key == "chain" && plan_.setup.chain) return thing.length && whole_chain(thing) >= plan_.setup.chain->needed;
    return true;
  }

  [[nodiscard]] bool covers(const AboardItem& thing) const {
    const ResolvedMain& main = plan_.main;
    return thing.od_from && thing.od_to && main.od_least && main.od_greatest && *thing.od_from <= *main.od_least &&
           *thing.od_to >= *main.od_greatest;
  }

  // A chain with the extensions that the plan counts on, which are things of their own.
  [[nodiscard]] Length whole_chain(const AboardItem& thing) const {
    const ChainPlan& chain = *plan_.setup.chain;
    const MachineProfile* const machine = plan_.setup.machine;
    const Length each = machine != nullptr ? machine->chain_extension.value_or(Length()) : Length();
    return *thing.length + static_cast<double>(chain.extensions) * each;
  }

  // Another of the same kind, which is not the one that was chosen but takes its place.
  [[nodiscard]] std::string instead_of(const LoadItem& item) const {
    if (item.key == "chain" && plan_.setup.chain) return chain_with_extensions();
    for (const AboardItem& thing : aboard_) {
      if (thing.item != item.key || thing.count < item.lacking() || serves(thing, item)) continue;
      const bool may_stand_in = is_one_of(item.key, {"machine-saddle", "shell-cutter", "combined-drill-and-tap"});
      if (may_stand_in && !item.stock.empty() && fits(thing, item.key)) return other_in_words(thing, item.key);
    }
    return tool_of_smaller_taps(item);
  }

  // The tool of a smaller tap, of which several would do.
  [[nodiscard]] std::string tool_of_smaller_taps(const LoadItem& item) const {
    const auto& smaller = plan_.method.smaller_taps;
    const bool is_tool = is_one_of(item.key, {"combined-drill-and-tap", "shell-cutter"});
    if (!smaller || !is_tool || plan_.method.kind != Method::direct) return {};
    const bool aboard = std::any_of(aboard_.begin(), aboard_.end(), [&](const AboardItem& thing) {
      return thing.item == item.key && thing.size == smaller->tap && thing.count > 0;
    });
    if (!aboard) return {};
    return say(words::LoadWord::smaller_tool, audience_.language,
               {{"tap", smaller->tap.label() + " in"},
                {"count", std::to_string(smaller->count)},
                {"spacing", on_tape(smaller->spacing, audience_, Toward::more)}});
  }

  [[nodiscard]] std::string other_in_words(const AboardItem& thing, std::string_view key) const {
    if (key != "machine-saddle") return say(words::LoadWord::other_tool, audience_.language, {{"stock", thing.stock}});
    return say(words::LoadWord::other_seat, audience_.language,
               {{"low", on_caliper(*thing.od_from, audience_)},
                {"high", on_caliper(*thing.od_to, audience_)},
                {"stock", thing.stock}});
  }

  // A shorter chain, with as many extensions as it then wants.
  [[nodiscard]] std::string chain_with_extensions() const {
    const Length needed = plan_.setup.chain->needed;
    for (const AboardItem& chain : aboard_) {
      if (chain.item != "chain" || !chain.length || chain.count < 1) continue;
      for (const AboardItem& extension : aboard_) {
        if (extension.item != "chain-extension" || !extension.length || !(*extension.length > Length())) continue;
        const double wanted = std::ceil((needed - *chain.length) / *extension.length - 1e-9);
        if (wanted > static_cast<double>(extension.count)) continue;
        const int count = std::max(static_cast<int>(wanted), 0);
        return say(words::LoadWord::extended_chain, audience_.language,
                   {{"chain", format_measure(Measure(*chain.length, Kind::tape), audience_)},
                    {"count", std::to_string(count)},
                    {"extension", format_measure(Measure(*extension.length, Kind::tape), audience_)}});
      }
    }
    return {};
  }

  const Plan& plan_;
  const Aboard& aboard_;
  Audience audience_;
};

}  // namespace

void count_aboard(const Plan& plan, const Aboard& aboard, Audience audience, std::vector<LoadItem>& list) {
  const Counter counter(plan, aboard, audience);
  for (LoadItem& item : list) counter.count(item);
}

}  // namespace mainbore::work

namespace mainbore {

std::string aboard_in_words(const LoadItem& item, Language language) {
  using words::LoadWord;
  if (!item.aboard) return {};
  const int lacking = item.lacking();
  if (lacking == 0) return say(LoadWord::you_have, language, {{"count", std::to_string(*item.aboard)}});
  return say(LoadWord::you_lack, language, {{"count", std::to_string(lacking)}, {"instead", item.instead}});
}

}  // namespace mainbore
