#include <algorithm>
#include <array>

#include "planning/checks.hpp"

namespace mainbore::planning {
namespace {

void check_what_it_carries(Context& context) {
  const auto& carries = context.job().main.carries;
  if (!carries) {
    context.common.add(FindingCode::identity_unconfirmed, Severity::hold);
  } else if (*carries == Carries::unknown) {
    context.common.add(FindingCode::identity_unknown, Severity::stop);
  } else if (*carries != Carries::water) {
    context.common.add(FindingCode::identity_not_water, Severity::stop)
        .with(carries_names[static_cast<std::size_t>(*carries)]);
  }
}

void check_unread(Context& context) {
  const std::vector<std::string_view>& unread = context.job().unread;
  if (unread.empty()) return;
  std::array<Detail, 4> named;
  for (std::size_t i = 0; i < std::min(unread.size(), named.size()); ++i) named[i] = unread[i];
  if (unread.size() > named.size()) named.back() = std::string_view("and more");
  context.common.add(FindingCode::order_fact_unread, Severity::hold).with(named[0], named[1], named[2], named[3]);
}

void check_condition(Context& context) {
  const auto& condition = context.job().main.condition;
  if (!condition) {
    context.common.add(FindingCode::main_condition_unseen, Severity::hold);
  } else if (*condition == Condition::poor) {
    context.common.add(FindingCode::main_condition_poor, Severity::stop);
  } else if (*condition == Condition::pitted) {
    context.common.add(FindingCode::main_condition_pitted, Severity::hold);
  }
  if (context.job().main.encased.value_or(false)) {
    context.common.add(FindingCode::main_encased, Severity::caution);
  }
}

void check_cold(Context& context) {
  const auto& temperature = context.job().main.temperature;
  if (!temperature || !context.pressurised() || *temperature >= freezing) return;
  context.common.add(FindingCode::main_freezing, Severity::hold).value(*temperature).at_least(Measure(freezing));
}

}  // namespace

void check_identity(Context& context) {
  check_what_it_carries(context);
  check_unread(context);
  check_condition(context);
  check_cold(context);
  // A branch as large as the pipe it leaves is a tee or a sleeve, designed as a connection between mains.
  if (context.asked() >= context.plan.main.size) {
    context.common.add(FindingCode::service_not_smaller, Severity::stop).with(context.asked(), context.plan.main.size);
  }
}

}  // namespace mainbore::planning
