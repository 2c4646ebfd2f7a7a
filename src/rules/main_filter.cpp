#include "rules/main_filter.hpp"

#include <algorithm>

#include "units/tolerance.hpp"

namespace mainbore::rules {
namespace {

Match of(bool fits) { return fits ? Match::yes : Match::no; }

Match match_class(const MainFilter& row, const Pipe* pipe) {
  if (row.classes.empty() && row.series.empty()) return Match::yes;
  if (pipe == nullptr) return Match::perhaps;
  const bool of_class = row.classes.empty() || std::binary_search(row.pipes.begin(), row.pipes.end(), pipe);
  const bool of_series =
      row.series.empty() || std::find(row.series.begin(), row.series.end(), pipe->series->id) != row.series.end();
  return of(of_class && of_series);
}

Match at_least(const std::optional<Span>& known, Length least) {
  if (!known) return Match::perhaps;
  if (!over(least, known->low)) return Match::yes;
  return over(least, known->high) ? Match::no : Match::perhaps;
}
Match at_most(const std::optional<Span>& known, Length most) {
  if (!known) return Match::perhaps;
  if (!over(known->high, most)) return Match::yes;
  return over(known->low, most) ? Match::no : Match::perhaps;
}
Match opposite(Match match) {
  return match == Match::yes ? Match::no : match == Match::no ? Match::yes : Match::perhaps;
}

// The nominal wall: a reading within the casting tolerance makes no other class of the pipe.
std::optional<Span> wall_of(const Pipe* pipe, const KnownOfMain& known) {
  if (pipe != nullptr && pipe->wall) return Span{*pipe->wall, *pipe->wall};
  return known.wall;
}
std::optional<Span> bore_of(const Pipe* pipe, const KnownOfMain& known) {
  const auto wall = wall_of(pipe, known);
  const auto od = pipe != nullptr && pipe->od ? std::optional(Span{*pipe->od, *pipe->od}) : known.od;
  if (!wall || !od) return std::nullopt;
  return Span{od->low - 2.0 * wall->high, od->high - 2.0 * wall->low};
}

Match match_wall(const MainFilter& row, const Pipe* pipe, const KnownOfMain& known) {
  if (!row.wall_from && !row.wall_below) return Match::yes;
  const auto wall = wall_of(pipe, known);
  Match result = Match::yes;
  if (row.wall_from) result = std::min(result, at_least(wall, *row.wall_from));
  if (row.wall_below) result = std::min(result, opposite(at_least(wall, *row.wall_below)));
  return result;
}

Match match_bore(const MainFilter& row, const Pipe* pipe, const KnownOfMain& known) {
  if (!row.bore_from && !row.bore_to && !row.bore_above && !row.bore_below) return Match::yes;
  const auto bore = bore_of(pipe, known);
  Match result = Match::yes;
  if (row.bore_from) result = std::min(result, at_least(bore, *row.bore_from));
  if (row.bore_to) result = std::min(result, at_most(bore, *row.bore_to));
  if (row.bore_above) result = std::min(result, opposite(at_most(bore, *row.bore_above)));
  if (row.bore_below) result = std::min(result, opposite(at_least(bore, *row.bore_below)));
  return result;
}

Match match_year(const MainFilter& row, const KnownOfMain& known) {
  if (!row.laid_from && !row.laid_to) return Match::yes;
  if (!known.laid) return Match::perhaps;
  return of(!(row.laid_from && *known.laid < *row.laid_from) && !(row.laid_to && *known.laid > *row.laid_to));
}

}  // namespace

bool asks_of_pipe(const MainFilter& row) {
  return !row.classes.empty() || !row.series.empty() || row.wall_from || row.wall_below || row.bore_from ||
         row.bore_to || row.bore_above || row.bore_below;
}

Match match(const MainFilter& row, const Pipe* pipe, const KnownOfMain& known, AsksOf* open) {
  Match result = Match::yes;
  const auto take = [&](AsksOf what, Match one) {
    if (one < result) {
      result = one;
      if (open != nullptr && one == Match::perhaps) *open = what;
    }
    return result != Match::no;
  };
  if (take(AsksOf::pipe_class, match_class(row, pipe)) && take(AsksOf::wall, match_wall(row, pipe, known)) &&
      take(AsksOf::bore, match_bore(row, pipe, known))) {
    take(AsksOf::year, match_year(row, known));
  }
  return result;
}

}  // namespace mainbore::rules
