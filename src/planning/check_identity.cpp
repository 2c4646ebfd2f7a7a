#include <algorithm>
#include <array>

#include "planning/checks.hpp"

namespace mainbore::planning {
namespace {

void check_what_it_carries(const Context& context, Said& said) {
  const auto& carries = context.job().main.carries;
  if (!carries) {
    said.findings.add(FindingCode::identity_unconfirmed, Severity::hold);
  } else if (*carries == Carries::unknown) {
    said.findings.add(FindingCode::identity_unknown, Severity::stop);
  } else if (*carries != Carries::water) {
    said.findings.add(FindingCode::identity_not_water, Severity::stop)
        .with(carries_names[static_cast<std::size_t>(*carries)]);
  }
}

void check_unread(const Context& context, Said& said) {
  const std::vector<std::string_view>& unread = context.job().unread;
  if (unread.empty()) return;
  std::array<Detail, 4> named;
  for (std::size_t i = 0; i < std::min(unread.size(), named.size()); ++i) named[i] = unread[i];
  if (unread.size() > named.size()) named.back() = std::string_view("and more");
  said.findings.add(FindingCode::order_fact_unread, Severity::hold).with(named[0], named[1], named[2], named[3]);
}

void check_condition(const Context& context, Said& said) {
  const auto& condition = context.job().main.condition;
  if (!condition) {
    said.findings.add(FindingCode::main_condition_unseen, Severity::hold);
  } else if (*condition == Condition::poor) {
    said.findings.add(FindingCode::main_condition_poor, Severity::stop);
  } else if (*condition == Condition::pitted) {
    said.findings.add(FindingCode::main_condition_pitted, Severity::hold);
  }
  if (context.job().main.encased.value_or(false)) {
    said.findings.add(FindingCode::main_encased, Severity::caution);
  }
}

void check_cold(const Context& context, Said& said) {
  const auto& temperature = context.job().main.temperature;
  if (!temperature || !context.pressurized() || *temperature >= freezing) return;
  said.findings.add(FindingCode::main_freezing, Severity::hold).value(*temperature).at_least(Measure(freezing));
}

}  // namespace

void check_identity(const Context& context, Said& said) {
  check_what_it_carries(context, said);
  check_unread(context, said);
  check_condition(context, said);
  check_cold(context, said);
  // A branch as large as the pipe it leaves is a tee or a sleeve, designed as a connection between mains.
  if (context.asked() >= context.size()) {
    said.findings.add(FindingCode::service_not_smaller, Severity::stop).with(context.asked(), context.size());
  }
}

}  // namespace mainbore::planning
