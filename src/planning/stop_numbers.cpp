// The numbers under the verdict: each doubt as a reading for the trench.
//
// Together they are a promise. Whatever is read, as long as all of it lies inside the numbers, a plan made with those
// readings taps in the same way and holds or stops for nothing that this plan does not say already. What each check
// allows by itself is therefore only where the search begins: warm plastic bears less than cold, and a surge or a
// smaller pipe takes its share too. The plan is made again with every reading at its worst end, and an end that goes too
// far is drawn back toward what the job says of it.
#include <algorithm>
#include <array>
#include <cmath>
#include <numbers>
#include <utility>
#include <vector>

#include "planning/calculations.hpp"
#include "planning/checks.hpp"
#include "planning/instrument.hpp"

namespace mainbore::planning {
namespace {

using std::numbers::pi;
constexpr Length sixteenth = 0.0625 * units::inch;

// The most the gauge may show when tapping, by each limit alone. A pipe or fitting that is over its rating already is a
// hold of its own: lowering the line for an hour is no cure for it, and raising it is none either.
std::optional<Pressure> pressure_to_read(const Site& site, const PressureChain& pressure) {
  std::optional<Pressure> least;
  if (!site.pressurized()) return least;
  for (const PressureLimit& limit : pressure.limits) {
    const bool for_good = limit.link == PressureLink::pipe || limit.link == PressureLink::corporation_stop ||
                          limit.link == PressureLink::saddle;
    const Pressure most = for_good ? std::max(limit.limit, site.line()) : limit.limit;
    if (!least || most < *least) least = most;
  }
  return least;
}

std::optional<Length> wall_to_read(const Site& site, const Candidate& plan) {
  if (plan.method.kind != Method::direct) return std::nullopt;
  if (plan.engagement && plan.engagement->judged && plan.engagement->wall_needed) {
    return wall_reading_for(*plan.engagement->wall_needed, site.rules);
  }
  return class_wall_reading(site.main.governing, site.rules);
}

// What a tape may read round this pipe, in whole marks. Where other candidates are so much larger or smaller that no pipe at
// all reads what lies between, theirs are left out: such a reading tells of another pipe.
std::optional<LengthRange> tape_to_read(const Site& site, Length od) {
  const ResolvedMain& main = site.main;
  std::vector<LengthRange> ranges;
  ranges.reserve(main.candidates.size());
  for (const Pipe* pipe : main.candidates) {
    if (pipe->od) ranges.push_back(tape_range(*pipe, site.rules));
  }
  if (ranges.empty()) return std::nullopt;
  std::sort(ranges.begin(), ranges.end(), [](const LengthRange& a, const LengthRange& b) { return a.low < b.low; });
  LengthRange joined = ranges.front();
  for (const LengthRange& range : ranges) {
    if (range.low > joined.high) {
      if (!over(pi * od, joined.high)) break;
      joined = range;
    }
    joined.high = std::max(joined.high, range.high);
  }
  return whole_marks(joined);
}

// One end of one reading, in base units.
struct End {
  ReadingId id = ReadingId::line_pressure;
  double home = 0.0;  // what the job says of it, or the planner takes it to be
  double end = 0.0;   // how far it may go
  double step = 1.0;  // of the gauge
};

void enter(Job& job, ReadingId id, double read) {
  switch (id) {
    case ReadingId::line_pressure:
      job.main.pressure = Pressure::from_base(read);
      return;
    case ReadingId::wall:
      job.main.wall = Length::from_base(read);
      return;
    case ReadingId::circumference:
      job.main.circumference = Length::from_base(read);
      return;
    case ReadingId::pipe_temperature:
      job.main.temperature = Temperature::fahrenheit(read);
      return;
    case ReadingId::joint_distance:
    case ReadingId::surge:
    case ReadingId::air_temperature:
      return;  // bounds that no other reading moves
  }
}

// Other homes, for a plan that the readings expected settle for the worse.
struct Homes {
  std::vector<LengthRange> tapes;      // of each candidate, and
  std::vector<Length> circumferences;  // the mark in it that the candidate is expected to read
  std::optional<double> temperature;
  std::optional<double> wall;
};

class Search {
 public:
  Search(const Site& site, const Candidate& chosen, const Findings& held)
      : site_(site), method_(chosen.method), job_(site.job()), may_be_refused_(chosen.pressure.reduce_to.has_value()) {
    for (const Findings* findings : {&site.findings, &held, &chosen.said.findings}) {
      for (const Finding& finding : findings->list()) {
        if (finding.severity >= Severity::hold) said_.push_back(&finding);
        may_be_refused_ |= finding.code == FindingCode::pressure_over_pipe_rating ||
                           finding.code == FindingCode::main_perhaps_not_tapped;
      }
    }
  }

  // Draws ends back until all of them together give no other answer. The first stand longest. False: no readings tried
  // bear the plan out.
  [[nodiscard]] bool settle(std::vector<End>& ends, const Homes& homes) {
    if (holds_good(ends)) return true;
    std::vector<End> box = at_home(ends);
    if (!holds_good(box)) {
      if (!move_home(ends, homes) && !let_holds_grow(ends, homes)) {
        ends = std::move(box);
        return false;
      }
      box = at_home(ends);
    }
    for (std::size_t i = 0; i < ends.size(); ++i) {
      box[i].end = ends[i].end;
      if (holds_good(box)) continue;
      box[i].end = draw_back(box, i);
    }
    ends = std::move(box);
    return true;
  }

 private:
  [[nodiscard]] static std::vector<End> at_home(std::vector<End> ends) {
    for (End& end : ends) end.end = end.home;
    return ends;
  }

  // Finds readings that do bear the plan out, where those expected do not: of a stronger candidate, or colder.
  [[nodiscard]] bool move_home(std::vector<End>& ends, const Homes& homes) {
    for (std::size_t tape = 0; tape <= homes.tapes.size(); ++tape) {
      for (const bool colder : {false, true}) {
        for (const bool thicker : {false, true}) {
          if ((colder && !homes.temperature) || (thicker && !homes.wall)) continue;
          std::vector<End> moved = ends;
          bool low = true;
          for (End& end : moved) {
            if (end.id == ReadingId::pipe_temperature && colder) end.home = *homes.temperature;
            if (end.id == ReadingId::wall && thicker) end.home = *homes.wall;
            if (end.id != ReadingId::circumference || tape == 0) continue;
            end.home = homes.circumferences[tape - 1].base();
            end.end = (low ? homes.tapes[tape - 1].low : homes.tapes[tape - 1].high).base();
            low = false;
          }
          if (!holds_good(at_home(moved))) continue;
          ends = std::move(moved);
          return true;
        }
      }
    }
    return false;
  }

  // What holds the plan may be more of a hold at any reading, as a weak stud is on whatever pipe is a little larger: no
  // reading is then worse than another, but none may raise the pressure or the warmth either.
  [[nodiscard]] bool let_holds_grow(std::vector<End>& ends, const Homes& homes) {
    holds_may_grow_ = true;
    for (End& end : ends) {
      if (end.id == ReadingId::line_pressure || end.id == ReadingId::pipe_temperature) end.end = end.home;
    }
    return holds_good(at_home(ends)) || move_home(ends, homes);
  }

  // The tape has two ends of its own, and one of them is entered at a time.
  [[nodiscard]] bool holds_good(const std::vector<End>& ends) {
    int tapes = 0;
    for (const End& end : ends) tapes += end.id == ReadingId::circumference ? 1 : 0;
    for (int entered = 0; entered < std::max(tapes, 1); ++entered) {
      int tape = 0;
      for (const End& end : ends) {
        if (end.id != ReadingId::circumference || tape++ == entered) enter(job_, end.id, end.end);
      }
      if (!bears_out(job_)) return false;
    }
    return std::all_of(ends.begin(), ends.end(),
                       [&](const End& end) { return !counts_alone(end.id) || stands_alone(end, ends.size()); });
  }

  // An end is tried by itself once, however often the others are moved; of one reading that is what was just tried.
  [[nodiscard]] bool stands_alone(const End& end, std::size_t count) {
    if (count == 1) return true;
    const auto tried = std::find_if(alone_.begin(), alone_.end(), [&](const Alone& one) {
      return one.id == end.id && one.read == end.end && one.holds_may_grow == holds_may_grow_;
    });
    if (tried != alone_.end()) return tried->good;
    Job job = site_.job();
    enter(job, end.id, end.end);
    alone_.push_back({end.id, end.end, holds_may_grow_, bears_out(job)});
    return alone_.back().good;
  }

  // Whether a reading may do harm before the others are taken: of threads, tape and wall decide together, and either may
  // tell of another pipe.
  [[nodiscard]] bool counts_alone(ReadingId id) const {
    const bool of_threads = method_.kind == Method::direct && (id == ReadingId::circumference || id == ReadingId::wall);
    return may_be_refused_ || of_threads;
  }

  // Does the job as read now leave the way of tapping as it was?
  [[nodiscard]] bool bears_out(const Job& read) const {
    std::array<std::byte, 16 * 1024> room;
    std::pmr::monotonic_buffer_resource memory(room.data(), room.size());
    const Context trial{site_.catalog, site_.rules, read, memory, PlanDepth::verdict, site_.approved};
    const JudgedMain judged = judge_main(trial, site_.record);
    Said of_line(trial);
    check_line_rating(trial, of_line);
    return nothing_new(judged.said.findings) && nothing_new(of_line.findings) &&
           nothing_new(judge_method(Site(trial, site_.record, judged), method_));
  }

  [[nodiscard]] bool nothing_new(const Findings& findings) const {
    return std::all_of(findings.list().begin(), findings.list().end(), [&](const Finding& finding) {
      if (finding.severity < Severity::hold) return true;
      if (finding.severity == Severity::stop) return false;
      return std::any_of(said_.begin(), said_.end(), [&](const Finding* said) {
        return said->code == finding.code && (holds_may_grow_ || !over(excess(finding), excess(*said)));
      });
    });
  }

  // How far a value lies outside its limit, in base units; of a limit alone, which is asked for, how much it asks.
  static double excess(const Finding& finding) {
    if (!finding.limit) return 0.0;
    const double value = finding.value ? finding.value->base() : 0.0;
    return finding.limit_is_least ? finding.limit->base() - value : value - finding.limit->base();
  }

  // By halves, to the last mark of the gauge that still holds good; to where it began if none does. Marks are counted
  // outward, whichever way that is.
  [[nodiscard]] double draw_back(std::vector<End> box, std::size_t index) {
    End& moved = box[index];
    const double mark = moved.end > moved.home ? moved.step : -moved.step;
    long good = std::lround(std::ceil(moved.home / mark - 1e-6)) - 1;
    long bad = std::lround(std::ceil(moved.end / mark - 1e-6));
    const long home = good;
    while (bad - good > 1) {
      const long middle = good + (bad - good) / 2;
      moved.end = static_cast<double>(middle) * mark;
      (holds_good(box) ? good : bad) = middle;
    }
    return good == home ? moved.home : static_cast<double>(good) * mark;
  }

  const Site& site_;
  const ChosenMethod& method_;
  Job job_;                           // every trial enters all readings, so that nothing is left in it of another
  std::vector<const Finding*> said_;  // what holds the plan: the same may be said of a reading, but not more of it
  // The class may settle a hold for the worse, or the line is over what it is to be lowered to: one reading may then refuse
  // the main before the others are taken, so that each is tried by itself too.
  bool may_be_refused_;
  bool holds_may_grow_ = false;
  struct Alone {
    ReadingId id;
    double read;
    bool holds_may_grow;
    bool good;
  };
  std::vector<Alone> alone_;
};

// What the plan asks to be read, in the order it is printed.
class ReadingWriter {
 public:
  ReadingWriter(const Site& site, const Candidate& chosen, const Findings& held, Recorder& taken)
      : site_(site), chosen_(chosen), held_(held), taken_(taken) {}

  std::vector<StopNumber> all() && {
    add_ends();
    const bool borne_out = Search(site_, chosen_, held_).settle(ends_, other_homes());
    pressure();
    // Where no reading bears the plan out, its holds say what to do, and no number says that a reading is good.
    if (borne_out) wall();
    if (borne_out) circumference();
    temperature(borne_out);
    air();
    joint();
    surge();
    return std::move(readings_);
  }

 private:
  [[nodiscard]] const MainFacts& facts() const { return site_.job().main; }
  [[nodiscard]] bool plastic() const { return is_plastic(site_.main.material); }
  [[nodiscard]] std::optional<double> end_of(ReadingId id, bool last = false) const {
    std::optional<double> found;
    for (const End& end : ends_) {
      if (end.id == id && (!found || last)) found = end.end;
    }
    return found;
  }
  void take(Taken what, const Basis& basis, Measure value) { taken_.take(PlanPart::readings, what, basis, value); }
  void add(ReadingId id, std::optional<Measure> at_least, std::optional<Measure> at_most) {
    readings_.push_back({id, at_least, at_most});
  }

  // Ice is no better for a window that a utility has set lower.
  [[nodiscard]] Temperature coldest() const {
    const Temperature limit = tapping_window(site_).coldest->value;
    return site_.pressurized() ? std::max(limit, freezing) : limit;
  }

  void add_ends() {
    const ResolvedMain& main = site_.main;
    ends_.reserve(5);
    if (plastic() && chosen_.method.kind != Method::sleeve) {
      const double limit = tapping_window(site_).warmest->value.fahrenheit();
      const double home = facts().temperature.value_or(temperature_assumed).fahrenheit();
      ends_.push_back({ReadingId::pipe_temperature, std::clamp(home, coldest().fahrenheit(), limit), limit, 1.0});
    }
    if (const auto limit = wall_to_read(site_, chosen_)) {
      const Length home = std::max(main.wall_nominal.value_or(*limit), *limit);
      ends_.push_back({ReadingId::wall, home.base(), limit->base(), 0.01});
    }
    if (main.od) {
      if (const auto tape = tape_to_read(site_, *main.od)) {
        const Length home = mark_in(*tape, facts().circumference.value_or(pi * *main.od));
        ends_.push_back({ReadingId::circumference, home.base(), tape->low.base(), sixteenth.base()});
        ends_.push_back({ReadingId::circumference, home.base(), tape->high.base(), sixteenth.base()});
      }
    }
    if (const auto limit = pressure_to_read(site_, chosen_.pressure)) {
      const Pressure home = std::min(site_.line(), *limit);
      ends_.push_back({ReadingId::line_pressure, home.base(), limit->base(), 1.0});
    }
  }

  [[nodiscard]] static Length mark_in(const LengthRange& range, Length expected) {
    return std::clamp(std::round(expected / sixteenth) * sixteenth, range.low, range.high);
  }

  [[nodiscard]] Homes other_homes() const {
    Homes homes;
    if (plastic()) homes.temperature = coldest().fahrenheit();
    for (const Pipe* pipe : site_.main.candidates) {
      if (pipe->wall && pipe->wall->base() > homes.wall.value_or(0.0)) homes.wall = pipe->wall->base();
      if (!pipe->od) continue;
      const auto range = tape_to_read(site_, *pipe->od);
      homes.tapes.push_back(*range);
      homes.circumferences.push_back(mark_in(*range, pi * *pipe->od));
    }
    return homes;
  }

  // A gauge is read to the psi: a bound that lies between two of them is the lower.
  [[nodiscard]] static Pressure whole_psi(Pressure most) {
    return most < 1.0 * units::psi ? most : std::floor(most / units::psi + 1e-6) * units::psi;
  }

  void pressure() {
    if (const auto most = end_of(ReadingId::line_pressure)) {
      const Pressure shown = whole_psi(Pressure::from_base(*most));
      add(ReadingId::line_pressure, std::nullopt, Measure(shown));
      if (!taken_.calculates()) return;
      const auto alone = pressure_to_read(site_, chosen_.pressure);
      if (alone && whole_psi(*alone) == shown && !(shown < 1.0 * units::psi)) {
        taken_.calculated(Worked(PlanPart::readings, Formula::pressure_to_read, {plain(alone->base(), Kind::pressure)},
                                 shown, name_of(ReadingId::line_pressure)));
      }
    }
  }

  void wall() {
    auto least = end_of(ReadingId::wall);
    if (!least) return;
    // What clears a hold on a thin wall: a second number for one gauge would be one too many.
    for (const Finding& finding : site_.findings.list()) {
      if (finding.code == FindingCode::main_wall_thin && finding.limit) least = std::max(*least, finding.limit->base());
    }
    const Rule<Length>& gauge = site_.rules.measuring.wall_uncertainty;
    take(Taken::gauge_error, gauge.basis, Measure(gauge.value));
    add(ReadingId::wall, Measure(Length::from_base(*least)), std::nullopt);
    write_wall(Length::from_base(*least));
  }

  // Where the bound is what the threads or the class ask for by themselves.
  void write_wall(Length least) {
    if (!taken_.calculates() || wall_to_read(site_, chosen_) != least) return;
    const CalculationInput gauge = figure(site_.rules.measuring.wall_uncertainty);
    const std::string_view of = name_of(ReadingId::wall);
    if (chosen_.engagement && chosen_.engagement->judged && chosen_.engagement->wall_needed) {
      taken_.calculated(Worked(PlanPart::readings, Formula::wall_to_read,
                               {worked_out(Formula::wall_needed, *chosen_.engagement->wall_needed), gauge}, least, of));
      return;
    }
    const Pipe& pipe = *site_.main.governing;
    const CalculationInput wall = figure(pipe, PipeColumn::wall, *pipe.wall);
    const CalculationInput minus = figure(pipe, PipeColumn::wall_minus, pipe.wall_minus);
    if (plastic()) taken_.calculated(Worked(PlanPart::readings, Formula::plastic_to_read, {wall, minus}, least, of));
    else taken_.calculated(Worked(PlanPart::readings, Formula::class_to_read, {wall, minus, gauge}, least, of));
  }

  // The candidates that set the ends of the tape; none where an end was drawn back.
  void write_tape(Length least, Length most) {
    if (!taken_.calculates()) return;
    const CalculationInput error = figure(site_.rules.measuring.circumference_uncertainty);
    const std::string_view of = name_of(ReadingId::circumference);
    bool low = false;
    bool high = false;
    for (const Pipe* pipe : site_.main.candidates) {
      if (!pipe->od) continue;
      const LengthRange marks = whole_marks(tape_range(*pipe, site_.rules));
      const CalculationInput od = figure(*pipe, PipeColumn::od, *pipe->od);
      if (!std::exchange(low, low || marks.low == least) && low) {
        taken_.calculated(Worked(PlanPart::readings, Formula::tape_least,
                                 {od, figure(*pipe, PipeColumn::od_minus, pipe->od_minus), error},
                                 Measure(least, Kind::tape), of));
      }
      if (!std::exchange(high, high || marks.high == most) && high) {
        taken_.calculated(Worked(PlanPart::readings, Formula::tape_most,
                                 {od, figure(*pipe, PipeColumn::od_plus, pipe->od_plus), error},
                                 Measure(most, Kind::tape), of));
      }
    }
  }

  void circumference() {
    const auto least = end_of(ReadingId::circumference);
    if (!least) return;
    const Rule<Length>& tape = site_.rules.measuring.circumference_uncertainty;
    take(Taken::tape_error, tape.basis, Measure(tape.value, Kind::tape));
    add(ReadingId::circumference, Measure(Length::from_base(*least), Kind::tape),
        Measure(Length::from_base(*end_of(ReadingId::circumference, true)), Kind::tape));
    write_tape(Length::from_base(*least), Length::from_base(*end_of(ReadingId::circumference, true)));
  }

  void temperature(bool borne_out) {
    if (const auto most = end_of(ReadingId::pipe_temperature); most && borne_out) {
      const TemperatureWindow window = tapping_window(site_);
      take(Taken::plastic_temperature, window.coldest->basis, Measure(window.coldest->value));
      take(Taken::plastic_temperature, window.warmest->basis, Measure(window.warmest->value));
      add(ReadingId::pipe_temperature, Measure(coldest()), Measure(Temperature::fahrenheit(*most)));
    } else if (!most && !facts().temperature && site_.pressurized()) {
      add(ReadingId::pipe_temperature, Measure(freezing), std::nullopt);
    }
  }

  void joint() {
    const Clearance* const clearance = clearance_from(site_.rules, NearbyThing::joint);
    if (clearance == nullptr || !(clearance->least.value > Length())) return;
    take(Taken::joint_distance, clearance->least.basis, Measure(clearance->least.value, Kind::distance));
    add(ReadingId::joint_distance, Measure(clearance->least.value, Kind::length), std::nullopt);
  }

  // The day's air is read on the day, whatever the order expects.
  void air() {
    const auto& coldest_air = site_.rules.main.coldest_air;
    if (!coldest_air.value) return;
    take(Taken::air_temperature, coldest_air.basis, Measure(*coldest_air.value));
    add(ReadingId::air_temperature, Measure(*coldest_air.value), std::nullopt);
  }

  // Of a surge that is only assumed: what was assumed, or what clears the holds on it.
  void surge() {
    if (facts().surge || !chosen_.pressure.surge) return;
    Pressure most = *chosen_.pressure.surge;
    for (const Findings* findings :
         std::initializer_list<const Findings*>{&site_.findings, &held_, &chosen_.said.findings}) {
      for (const Finding& finding : findings->list()) {
        const bool of_surge = finding.code == FindingCode::pressure_surge_over_rating ||
                              finding.code == FindingCode::pressure_surge_over_fitting;
        if (!of_surge || !finding.limit) continue;
        const Pressure room = finding.limit->as<Pressure>() - site_.line();
        if (room > Pressure()) most = std::min(most, room);
      }
    }
    add(ReadingId::surge, std::nullopt, Measure(whole_psi(most)));
  }

  const Site& site_;
  const Candidate& chosen_;
  const Findings& held_;
  Recorder& taken_;
  std::vector<StopNumber> readings_;
  std::vector<End> ends_;
};

}  // namespace

std::vector<StopNumber> stop_numbers(const Site& site, const Candidate& chosen, const Findings& held, Recorder& taken) {
  if (chosen.method.kind == Method::none) return {};
  return ReadingWriter(site, chosen, held, taken).all();
}

}  // namespace mainbore::planning
