#include "mainbore/mechanics/trial_taps.hpp"

#include <algorithm>
#include <numeric>

#include "precondition.hpp"

namespace mainbore::mechanics {
namespace {

// A count read off a mark is never better than this: what differs by less is equal.
constexpr double same_turns = 1e-9;

void require_trials(std::span<const TrialTap> trials, InverseLength threads_per_inch, const MakeupGoal& wanted,
                    const TrialLimits& limits) {
  require(!trials.empty(), "trial_taps: at least one trial is needed");
  require(is_positive(threads_per_inch), "trial_taps: threads per inch must be positive");
  require(is_not_negative(wanted.wrench_turns) && is_not_negative(wanted.threads_showing),
          "trial_taps: wanted wrench turns and threads showing must not be negative");
  require(limits.least_agreeing >= 1 && is_not_negative(limits.spread) && is_not_negative(limits.reach),
          "trial_taps: limits must not be negative, and one trial is the least");
  for (const TrialTap& trial : trials) {
    require(std::isfinite(trial.depth.base()) && std::isfinite(trial.threads_showing),
            "trial_taps: depth and threads showing must be finite");
    require(is_not_negative(trial.wrench_turns) && is_not_negative(trial.hand_turns.value_or(0.0)),
            "trial_taps: turns must not be negative");
  }
}

// The places of the trials that agree, shallowest mark first.
std::vector<std::size_t> agreeing(const std::vector<Length>& marks, Length spread) {
  std::vector<std::size_t> order(marks.size());
  std::iota(order.begin(), order.end(), std::size_t{0});
  std::stable_sort(order.begin(), order.end(), [&](std::size_t a, std::size_t b) { return marks[a] < marks[b]; });
  std::size_t best_first = 0;
  std::size_t best_count = 0;
  Length best_width;
  for (std::size_t first = 0; first < order.size(); ++first) {
    std::size_t count = 1;
    while (first + count < order.size() && marks[order[first + count]] - marks[order[first]] <= spread) ++count;
    const Length width = marks[order[first + count - 1]] - marks[order[first]];
    if (count > best_count || (count == best_count && width < best_width)) {
      best_first = first;
      best_count = count;
      best_width = width;
    }
  }
  const auto begin = order.begin() + static_cast<std::ptrdiff_t>(best_first);
  return {begin, begin + static_cast<std::ptrdiff_t>(best_count)};
}

struct HandCount {
  std::optional<double> at_mark;  // h*
  double spread_turns = 0.0;      // of c
};

HandCount hand_count(std::span<const TrialTap> trials, const std::vector<std::size_t>& agree, Length mark,
                     Length pitch) {
  std::vector<double> constants;  // c, in turns
  for (const std::size_t i : agree) {
    if (trials[i].hand_turns) constants.push_back(trials[i].depth / pitch - *trials[i].hand_turns);
  }
  if (constants.empty()) return {};
  const auto [least, greatest] = std::minmax_element(constants.begin(), constants.end());
  const double mean = std::accumulate(constants.begin(), constants.end(), 0.0) / static_cast<double>(constants.size());
  return {mark / pitch - mean, *greatest - *least};
}

}  // namespace

TrialResult trial_taps(std::span<const TrialTap> trials, InverseLength threads_per_inch, const MakeupGoal& wanted,
                       const TrialLimits& limits) {
  require_trials(trials, threads_per_inch, wanted, limits);
  const Length pitch = 1.0 / threads_per_inch;
  TrialResult result;
  for (const TrialTap& trial : trials) {
    const double turns_deeper =
        trial.wrench_turns + trial.threads_showing - wanted.wrench_turns - wanted.threads_showing;
    result.marks.push_back(trial.depth + turns_deeper * pitch);
  }

  const std::vector<std::size_t> agree = agreeing(result.marks, (limits.spread + same_turns) * pitch);
  Length sum;
  for (const std::size_t i : agree) sum += result.marks[i];
  result.mark = sum / static_cast<double>(agree.size());
  result.spread = result.marks[agree.back()] - result.marks[agree.front()];
  result.spread_turns = result.spread / pitch;
  result.turns_from_last = (result.mark - trials.back().depth) / pitch;
  for (std::size_t i = 0; i < trials.size(); ++i) {
    if (std::find(agree.begin(), agree.end(), i) == agree.end()) result.stray.push_back(i);
  }
  const HandCount hand = hand_count(trials, agree, result.mark, pitch);
  result.hand_turns = hand.at_mark;

  const bool near_a_trial = std::any_of(agree.begin(), agree.end(), [&](std::size_t i) {
    return abs(result.mark - trials[i].depth) <= (limits.reach + same_turns) * pitch;
  });
  const int count = static_cast<int>(agree.size());
  // A stray among few is as likely the right one; among many it is a slip of the hand.
  const bool outvoted = count >= limits.least_agreeing && count > 2 * static_cast<int>(result.stray.size());
  if (count < limits.least_agreeing) result.doubts.push_back(TrialDoubt::too_few);
  if (!result.stray.empty() && !outvoted) result.doubts.push_back(TrialDoubt::do_not_agree);
  if (!near_a_trial) result.doubts.push_back(TrialDoubt::outside_tried);
  if (hand.spread_turns > limits.spread + same_turns) result.doubts.push_back(TrialDoubt::hand_turns_differ);
  if (hand.at_mark && *hand.at_mark <= 0.0) result.doubts.push_back(TrialDoubt::thread_too_short);
  if (!result.settled()) result.further_trials = std::max(1, limits.least_agreeing - count);
  return result;
}

}  // namespace mainbore::mechanics
