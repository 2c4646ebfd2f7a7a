#include "mainbore/pocket_table.hpp"

#include <algorithm>
#include <utility>

#include "rules/dwelling_sizes.hpp"

namespace mainbore {
namespace {

// A machine that never stands in the way.
const std::shared_ptr<const MachineProfile>& any_machine() {
  static const std::shared_ptr<const MachineProfile> machine = [] {
    auto any = std::make_shared<MachineProfile>();
    any->id = "any";
    any->title = "any machine";
    any->maker_figures = true;
    any->without_limits = true;
    any->largest_tap = NominalSize::inches(64);
    any->body_rating = 1.0e6 * units::psi;
    return any;
  }();
  return machine;
}

constexpr Pressure ample_rating = 1.0e6 * units::psi;

bool asks(const Plan& plan, Method method) {
  return plan.verdict != Verdict::no_go && plan.method.kind == method && plan.method.count == 1;
}

void take_threads(PocketCell& cell, const Plan& plan, const Catalog& catalog) {
  if (!plan.engagement) return;
  cell.threads_nominal = plan.engagement->at_nominal.complete_threads;
  if (plan.engagement->at_least) cell.threads_least = plan.engagement->at_least->complete_threads;
  cell.wall_needed = plan.engagement->wall_needed;
  cell.threads_judged = plan.engagement->judged;
  const TapThread* const thread = plan.method.thread ? catalog.thread(*plan.method.thread, plan.method.tap) : nullptr;
  cell.threads_recalled = thread != nullptr && is_recalled(thread->basis);
}

void take_chain(PocketCell& cell, const Plan& plan) {
  if (!plan.setup.chain) return;
  cell.chain_needed = plan.setup.chain->needed;
  cell.chain_extensions = plan.setup.chain->extensions;
}

bool rests_on_recalled_maximum(const Plan& plan) {
  return plan.method.limit != nullptr && is_recalled(plan.method.limit->basis);
}

const Finding* first_hold(const Plan& plan) {
  const auto found = std::find_if(plan.findings.begin(), plan.findings.end(),
                                  [](const Finding& finding) { return finding.severity == Severity::hold; });
  return found == plan.findings.end() ? nullptr : &*found;
}

// Why the smallest tap was refused by this method: the rejection, or else what stops every method.
std::optional<Finding> refusal(const Plan& plan, Method method) {
  for (const RejectedMethod& rejected : plan.method.rejected) {
    if (rejected.kind == method && rejected.count == 1) return rejected.why;
  }
  if (!plan.findings.empty() && plan.findings.front().severity == Severity::stop) return plan.findings.front();
  return std::nullopt;
}

// A service that the utility's rules have no word against: how many dwellings it is for, and in which ground it lies, is for
// the plan.
void suit_service(Job& job, const Rules& rules) {
  LineFacts& line = job.service.line;
  job.air_temperature = rules.main.coldest_air.value;
  line.cover = rules.line.least_cover.value;
  line.gas = rules.line.from_gas.value;
  line.electric = rules.line.from_electric.value;
  line.sewer = rules.line.from_sewer.value;
  if (rules.water.most_premises.value) job.service.premises = 1;
  const auto& rows = rules.water.by_dwellings;
  if (rows.empty()) return;
  job.service.dwellings = rows.front().from;
  const auto sizes = rules::least_sizes(rules.water, rows.front().from);
  if (!sizes) return;
  if (sizes->line.size > line.size.value_or(*job.service.size)) line.size = sizes->line.size;
  if (sizes->meter.size > job.service.meter) job.service.meter = sizes->meter.size;
}

// A day and a cover that no rule of the utility's has a word against: the table is of mains, not of days.
void suit(Job& job, const Rules& rules) {
  if (rules.place.least_cover.value) job.main.cover = rules.place.least_cover.value;
  else job.main.cover = rules.place.greatest_cover.value;
  // Saddle and stop are parts of the day: how far the bar has to reach through them is for the plan.
  job.service.saddle_height = Length();
  job.service.stop_length = Length();
  suit_service(job, rules);
  if (rules.main.closed_season.empty()) return;
  for (int month = 1; month <= 12; ++month) {
    for (const int day : {1, 15, 28}) {
      const bool closed = std::any_of(rules.main.closed_season.begin(), rules.main.closed_season.end(),
                                      [&](const ClosedSeason& season) {
                                        return season.holds_on({month, day});
                                      });
      if (closed) continue;
      const auto two = [](int n) { return (n < 10 ? "0" : "") + std::to_string(n); };
      job.date = "2001-" + two(month) + "-" + two(day);
      return;
    }
  }
}

PocketTap largest_tap(PocketCell& cell, const Planner& planner, const PocketOptions& options, Method method) {
  PocketTap result;
  for (const NominalSize tap : pocket_taps) {
    Job job = pocket_job(*cell.pipe, tap, method, options);
    suit(job, planner.rules());
    const Plan plan = planner.plan(std::move(job));
    if (!asks(plan, method)) {
      if (tap == pocket_taps.back() && !result.held) result.refused = refusal(plan, method);
      continue;
    }
    if (!result.held) {  // the largest so far
      if (method == Method::direct) {
        take_threads(cell, plan, planner.catalog());
        take_chain(cell, plan);
      }
      result.recalled = rests_on_recalled_maximum(plan);
    }
    if (plan.verdict == Verdict::go) {
      result.go = tap;
      break;
    }
    if (!result.held) {
      result.held = tap;
      if (const Finding* hold = first_hold(plan)) result.hold = hold->code;
    }
  }
  return result;
}

bool same(const PocketTap& a, const PocketTap& b) {
  return a.go == b.go && a.held == b.held && a.hold == b.hold && a.recalled == b.recalled;
}

bool on_one_line(const PocketCell& a, const PocketCell& b) {
  return a.pipe->series == b.pipe->series && a.pipe->size == b.pipe->size && same(a.direct, b.direct) &&
         same(a.saddle, b.saddle) && a.od == b.od && a.chain_extensions == b.chain_extensions &&
         a.threads_nominal.has_value() == b.threads_nominal.has_value();
}

}  // namespace

Job pocket_job(const Pipe& pipe, NominalSize tap, Method method, const PocketOptions& options) {
  Job job;
  job.main.material = pipe.series->material;
  job.main.size = pipe.size;
  job.main.standard = pipe.series->id;
  job.main.class_name = pipe.class_name;
  job.main.pressure = options.line;
  job.main.wall = options.wall;
  job.main.condition = Condition::sound;
  job.main.curved = false;
  job.main.temperature = Temperature::fahrenheit(55.0);
  job.main.surge = Pressure();
  if (!pipe.rating) job.main.rating = ample_rating;
  job.main.carries = Carries::water;
  job.nearby.emplace();
  job.service.size = tap;
  job.service.thread = options.thread;
  job.service.method = method;
  job.service.stop_rating = ample_rating;
  job.service.saddle_rating = ample_rating;
  job.machine.given = options.machine ? options.machine : any_machine();
  return job;
}

PocketCell pocket_cell(const Pipe& pipe, const Planner& planner, const PocketOptions& options) {
  PocketCell cell;
  cell.pipe = &pipe;
  cell.od = pipe.od;
  cell.direct = largest_tap(cell, planner, options, Method::direct);
  cell.saddle = largest_tap(cell, planner, options, Method::saddle);
  return cell;
}

PocketTable pocket_table(const Planner& planner, PocketOptions options) {
  const Catalog& catalog = planner.catalog();
  const Rules& rules = planner.rules();
  PocketTable table;
  table.options = std::move(options);
  table.thread = table.options.thread.value_or(rules.direct.default_thread.value);
  table.catalog = &catalog;
  table.rules = &rules;
  table.keeps = planner.keeps();
  const std::vector<Material>& materials = table.options.materials;
  for (const Pipe& pipe : catalog.pipes()) {
    const bool wanted =
        materials.empty() || std::find(materials.begin(), materials.end(), pipe.series->material) != materials.end();
    if (!wanted || (table.options.main_from && pipe.size < *table.options.main_from) ||
        (table.options.main_to && pipe.size > *table.options.main_to)) {
      continue;
    }
    table.cells.push_back(pocket_cell(pipe, planner, table.options));
  }
  return table;
}

std::vector<PocketLine> pocket_lines(const PocketTable& table) {
  std::vector<PocketLine> lines;
  const auto threads = [](const PocketCell& cell) { return cell.threads_least.value_or(0.0); };
  for (const PocketCell& cell : table.cells) {
    if (lines.empty() || !on_one_line(*lines.back().first, cell)) {
      lines.push_back({&cell, &cell, &cell});
      continue;
    }
    PocketLine& line = lines.back();
    line.last = &cell;
    if (threads(cell) < threads(*line.governing)) line.governing = &cell;
  }
  // The catalog goes by material and size; a reader by material and series.
  std::vector<const PipeSeries*> series;
  for (const PocketLine& line : lines) {
    const PipeSeries* one = line.first->pipe->series;
    if (std::find(series.begin(), series.end(), one) == series.end()) series.push_back(one);
  }
  const auto place = [&](const PocketLine& line) {
    return std::find(series.begin(), series.end(), line.first->pipe->series);
  };
  std::stable_sort(lines.begin(), lines.end(), [&](const PocketLine& a, const PocketLine& b) {
    return std::pair(a.first->pipe->series->material, place(a)) < std::pair(b.first->pipe->series->material, place(b));
  });
  return lines;
}

}  // namespace mainbore
