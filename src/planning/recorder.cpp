#include "planning/recorder.hpp"

#include <algorithm>
#include <array>
#include <iterator>

#include "planning/checks.hpp"

namespace mainbore::planning {
namespace {

bool same(const Evidence& a, const Evidence& b) {
  return a.part == b.part && a.what == b.what && a.finding == b.finding && a.from == b.from && a.value == b.value &&
         a.basis.source == b.basis.source && a.basis.how == b.basis.how && a.basis.utility == b.basis.utility &&
         a.basis.reference == b.basis.reference;
}

// Two checks may ask for one stroke.
bool same(const Calculation& a, const Calculation& b) {
  return a.formula == b.formula && a.part == b.part && a.of == b.of && a.result == b.result &&
         std::equal(
             a.inputs.begin(), a.inputs.end(), b.inputs.begin(), b.inputs.end(),
             [](const CalculationInput& one, const CalculationInput& other) { return one.value == other.value; });
}

// What decides about the tap is told first.
constexpr std::array told_in_order = {PlanPart::tap,   PlanPart::pipe,     PlanPart::pressure, PlanPart::machine,
                                      PlanPart::place, PlanPart::readings, PlanPart::service,  PlanPart::cleaning,
                                      PlanPart::pit,   PlanPart::rejected};

// Names and bases of what is recalled, each once, as many as a finding holds.
class RecalledNames {
 public:
  void add(std::string_view name, const Basis& basis) {
    if (std::find(names_.begin(), names_.end(), Detail(name)) != names_.end()) return;
    if (count_ < names_.size()) names_[count_] = name;
    else names_.back() = std::string_view("and more");
    ++count_;
    const auto free = std::find(bases_.begin(), bases_.end(), nullptr);
    if (free != bases_.end() && is_recalled(basis) && std::find(bases_.begin(), free, &basis) == free) *free = &basis;
  }
  [[nodiscard]] std::optional<Finding> finding() const {
    if (count_ == 0) return std::nullopt;
    Finding finding;
    finding.code = FindingCode::value_recalled;
    finding.severity = Severity::caution;
    finding.details = names_;
    finding.basis = bases_;
    return finding;
  }

 private:
  std::array<Detail, 4> names_;
  std::array<const Basis*, 3> bases_{};
  std::size_t count_ = 0;
};

}  // namespace

From Recorder::from_of(const Basis& basis, From otherwise) {
  if (basis.how == How::stated) return From::given;
  if (basis.how == How::stated_in_settings) return From::settings;
  if (basis.how == How::stated_in_approved_list) return From::approved_list;
  return basis.rule ? From::rule : otherwise;
}

void Recorder::put(PlanPart part, Taken what, const Basis& basis, Detail value, From from) {
  if (list_.capacity() == 0) list_.reserve(48);
  list_.push_back({{part, what, {}, value, from, basis}, &basis});
}

void Recorder::column(Taken what, const Pipe& pipe, PipeColumn column, Detail value) {
  const Basis& table = pipe.series->basis_of(column);
  Basis row = table;
  row.how = pipe.how_of(column);
  if (!keeps(row)) return;
  put(PlanPart::pipe, what, table, value, From::table);
  list_.back().evidence.basis = row;
}

void Recorder::refused(const Recorder& tried, const Finding& why) {
  for (const Basis* const basis : why.basis) {
    if (basis == nullptr || !keeps(*basis)) continue;
    const auto taken =
        std::find_if(tried.list_.begin(), tried.list_.end(), [&](const Item& item) { return item.stands == basis; });
    const bool known = taken != tried.list_.end();
    put(PlanPart::rejected, known ? taken->evidence.what : Taken::finding, *basis,
        known ? taken->evidence.value : Detail(), from_of(*basis, From::table));
    list_.back().evidence.finding = why.code;
  }
  for (const Calculation& made : tried.calculations_) {
    if (const auto utilization = made.utilization(); !utilization || !over(*utilization, 1.0)) continue;
    calculations_.push_back(made);
    calculations_.back().part = PlanPart::rejected;
    calculations_.back().refused = true;
  }
}

void Recorder::add(Recorder other) {
  list_.insert(list_.end(), other.list_.begin(), other.list_.end());
  calculations_.insert(calculations_.end(), std::make_move_iterator(other.calculations_.begin()),
                       std::make_move_iterator(other.calculations_.end()));
}

std::optional<Finding> recalled_caution(const Recorder& taken, std::span<const Findings* const> findings) {
  RecalledNames recalled;
  for (const PlanPart part : told_in_order) {
    for (const Recorder::Item& item : taken.list()) {
      const Evidence& it = item.evidence;
      if (it.part != part || !is_recalled(it)) continue;
      recalled.add(it.what == Taken::finding ? name_of(*it.finding) : name_of(it.what), *item.stands);
    }
  }
  // A limit that was only taken to be told of.
  for (const Findings* const list : findings) {
    for (const Finding& finding : list->list()) {
      for (const Basis* const basis : finding.basis) {
        if (basis == nullptr || !is_recalled(*basis)) continue;
        const bool told = std::any_of(taken.list().begin(), taken.list().end(), [&](const Recorder::Item& item) {
          return item.stands == basis && is_recalled(item.evidence);
        });
        if (!told) recalled.add(name_of(finding.code), *basis);
      }
    }
  }
  return recalled.finding();
}

namespace {

// Part by part, each once: of those that are the same, the first.
template <class T>
std::vector<T> part_by_part(std::vector<T>&& told) {
  std::vector<T> all;
  all.reserve(told.size());
  for (int part = 0; part <= static_cast<int>(PlanPart::rejected); ++part) {  // the last
    const std::size_t begin = all.size();
    for (T& one : told) {
      if (one.part != static_cast<PlanPart>(part)) continue;
      const bool known = std::any_of(all.begin() + static_cast<std::ptrdiff_t>(begin), all.end(),
                                     [&](const T& other) { return same(one, other); });
      if (!known) all.push_back(std::move(one));
    }
  }
  return all;
}

}  // namespace

std::vector<Evidence> evidence_for(const Plan& plan, const Recorder& taken) {
  std::vector<Evidence> told;
  told.reserve(taken.list().size() + 2 * plan.findings.size());
  for (const Recorder::Item& item : taken.list()) told.push_back(item.evidence);
  for (const Finding& finding : plan.findings) {
    for (const Basis* const basis : finding.basis) {
      if (basis == nullptr) continue;
      told.push_back(
          {PlanPart::findings, Taken::finding, finding.code, {}, Recorder::from_of(*basis, From::table), *basis});
    }
  }
  return part_by_part(std::move(told));
}

std::vector<Calculation> calculations_of(Recorder&& taken) { return part_by_part(std::move(taken).calculations()); }

}  // namespace mainbore::planning
