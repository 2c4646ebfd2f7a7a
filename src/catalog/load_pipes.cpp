#include <algorithm>
#include <cmath>
#include <numeric>
#include <span>
#include <utility>

#include "catalog/load_tables.hpp"
#include "catalog/spelling.hpp"
#include "catalog/table_reader.hpp"

namespace mainbore::tables {
namespace {

constexpr std::array<std::string_view, pipe_column_count> pipe_column_names = {"od",   "od_minus",   "od_plus",
                                                                               "wall", "wall_minus", "rating"};

class PipeTables : public TableReader {
 public:
  PipeTables(TableFiles& at, const Catalog& catalog, Pipes into)
      : TableReader(at), catalog_(catalog), series_(into.series), standards_(into.standards), pipes_(into.pipes) {
    pipes_.reserve(1024);  // some more than the tables list: none is moved for want of room
  }

  void read_file(object file) {
    only(file, {"series"});
    for (const element entry : as_array(member(file, "series"), "series")) {
      enter("a series");
      read_series(as_object(entry, "the series"));
      series_of_.resize(pipes_.size(), series_.size() - 1);
    }
  }

  // A pipe points at its series, which may only be done once the series have stopped moving.
  void put_in_order() {
    for (std::size_t i = 0; i < series_of_.size(); ++i) pipes_[i].series = &series_[series_of_[i]];
    const auto place = [](const Pipe& pipe) { return std::pair(pipe.series->material, pipe.size); };
    // Their numbers are sorted, and each pipe then changes places but once: they are large.
    std::vector<std::size_t> order(pipes_.size());
    std::iota(order.begin(), order.end(), std::size_t{0});
    std::stable_sort(order.begin(), order.end(),
                     [&](std::size_t a, std::size_t b) { return place(pipes_[a]) < place(pipes_[b]); });
    for (std::size_t i = 0; i < pipes_.size(); ++i) {
      std::size_t from = order[i];
      while (from < i) from = order[from];  // it has changed places since
      std::swap(pipes_[i], pipes_[from]);
    }
  }

 private:
  // The place of a standard among those known, new or not.
  std::uint8_t standard_place(std::string_view name) {
    const std::string word = normal_spelling(name);
    std::vector<std::string>& known = standards_;
    const auto found = std::find(known.begin(), known.end(), word);
    if (found != known.end()) return static_cast<std::uint8_t>(found - known.begin());
    if (known.size() > 250) fault("more standards than can be told apart");
    known.push_back(word);
    return static_cast<std::uint8_t>(known.size() - 1);
  }

  // The words of a standard's name that hold a number.
  std::vector<StandardUse> designations(std::string_view standard) {
    std::vector<StandardUse> found;
    for (std::size_t begin = 0; begin < standard.size();) {
      const std::size_t end = std::min(standard.find_first_of(" /,", begin), standard.size());
      const std::string_view word = standard.substr(begin, end - begin);
      if (word.find_first_of("0123456789") != std::string_view::npos) found.push_back({standard_place(word), {}});
      begin = end + 1;
    }
    return found;
  }

  // Standards that the series' own took in, or that speak of the same pipe.
  void read_also_made_to(element list, PipeSeries& series) {
    for (const element entry : as_array(list, "also_made_to")) {
      const object one = as_object(entry, "a standard");
      only(one, {"standard", "main_from", "source", "how", "note"});
      static_cast<void>(basis_of(one));  // checked: it says what it rests on
      StandardUse use{standard_place(text_member(one, "standard")), {}};
      if (element from; !one.at_key("main_from").get(from)) use.from = as_size(from, "main_from");
      series.made_to.push_back(use);
    }
  }

  static OdFamily family_of(std::string_view basis) {
    if (basis.find("(IPS)") != std::string_view::npos) return OdFamily::iron_pipe_size;
    if (basis.find("(CTS)") != std::string_view::npos) return OdFamily::copper_tube;
    const bool cast =
        basis.find("(CIOD)") != std::string_view::npos || basis.find("cast-iron") != std::string_view::npos;
    return cast ? OdFamily::cast_iron : OdFamily::unnamed;
  }

  void read_series(object from) {
    PipeSeries series;
    series.id = text_member(from, "id");
    enter("series " + series.id);
    for (const PipeSeries& other : series_) {
      if (other.id == series.id) fault("the id stands twice");
    }
    only(from, {"id", "material", "standard", "also_made_to", "title", "basis", "laid", "provenance", "earlier",
                "plausible", "usual", "note", "columns", "rows"});
    const std::string_view material_name = text_member(from, "material");
    const auto material = material_named(material_name);
    if (!material) fault("unknown material " + quoted(material_name));
    series.material = *material;
    series.standard = text_member(from, "standard");
    series.made_to = designations(series.standard);
    if (element also; !from.at_key("also_made_to").get(also)) read_also_made_to(also, series);
    series.title = text_member(from, "title");
    series.basis = text_member(from, "basis");
    series.family = family_of(series.basis);

    const object laid = as_object(member(from, "laid"), "laid");
    only(laid, {"from", "to", "source", "how"});
    series.laid_from = year(laid, "from");
    series.laid_to = year(laid, "to");
    series.laid_basis = basis_of(laid);
    if (series.laid_from && series.laid_to && *series.laid_to < *series.laid_from)
      fault("laid to before it was laid from");

    const object provenance = as_object(member(from, "provenance"), "provenance");
    only(provenance, {"od", "od_minus", "od_plus", "wall", "wall_minus", "rating"});
    for (std::size_t i = 0; i < pipe_column_count; ++i) {
      series.provenance[i] = basis_of(as_object(member(provenance, pipe_column_names[i]), pipe_column_names[i]));
    }
    series_.push_back(std::move(series));
    read_series_rows(from);
    if (element earlier; !from.at_key("earlier").get(earlier)) read_earlier(as_object(earlier, "earlier"));
    if (element plausible; !from.at_key("plausible").get(plausible)) read_plausible(as_object(plausible, "plausible"));
    if (element usual; !from.at_key("usual").get(usual)) read_usual(as_object(usual, "usual"));
  }

  [[nodiscard]] std::span<Pipe> pipes_of_series() { return std::span(pipes_).subspan(first_of_series_); }

  // What earlier editions called and rated the same pipe, by its dimension ratio.
  void read_earlier(object from) {
    only(from, {"until", "main_to", "source", "how", "note", "columns", "rows"});
    PipeSeries& series = series_.back();
    series.rerated = year(from, "until");
    if (!series.rerated) fault("\"until\" is not a year");
    series.earlier_basis = basis_of(from);
    const NominalSize largest = as_size(member(from, "main_to"), "main_to");
    constexpr std::array<std::string_view, 5> names = {"dr", "class", "also", "rating", "surge"};
    std::size_t count = 0;
    const auto at = columns_of(from, names, names.size(), count);
    each_row(from, count, [&](const Cells& cells) {
      const double dr = as_number(cells[at[0]], names[0]);
      EarlierClass earlier;
      earlier.class_name = as_text(cells[at[1]], names[1]);
      add_words(earlier.names, earlier.class_name);
      std::vector<ClassWord> spellings = earlier.names;
      for (const element spelling : as_array(cells[at[2]], names[2]))
        add_words(spellings, as_text(spelling, "a spelling"));
      earlier.rating = number_within(cells[at[3]], pressure_limits, names[3]) * units::psi;
      earlier.surge = number_within(cells[at[4]], {1, 500, "psi"}, names[4]) * units::psi;
      bool found = false;
      for (Pipe& pipe : pipes_of_series()) {
        if (pipe.dr != dr || pipe.size > largest) continue;
        if (!pipe.rating || earlier.rating + earlier.surge > *pipe.rating) {
          fault("an earlier rating with its surge is over the rating of today");
        }
        for (const ClassWord& word : spellings) add_word(pipe.names, word);
        pipe.earlier = earlier;
        found = true;
      }
      if (!found) fault("the series has no pipe of this dimension ratio");
    });
    for (Pipe& pipe : pipes_of_series()) pipe.since_rerating = pipe.size <= largest && !pipe.earlier;
  }

  // Names that mean one class as a rule, though no standard says so.
  void read_usual(object from) {
    only(from, {"source", "how", "note", "columns", "rows"});
    series_.back().usual_basis = basis_of(from);
    std::size_t count = 0;
    const auto at = columns_of(from, std::array<std::string_view, 3>{"class", "name", "main_to"}, 3, count);
    each_row(from, count, [&](const Cells& cells) {
      const std::string_view class_name = as_text(cells[at[0]], "class");
      const NominalSize largest = as_size(cells[at[2]], "main_to");
      bool found = false;
      for (Pipe& pipe : pipes_of_series()) {
        if (pipe.class_name != class_name || pipe.size > largest) continue;
        add_words(pipe.usual_names, as_text(cells[at[1]], "name"));
        found = true;
      }
      if (!found) fault("the series has no class " + quoted(class_name));
    });
  }

  // Readings that a pipe without tabulated dimensions can give, as shares of its nominal size; the wall goes with the
  // class.
  void read_plausible(object from) {
    only(from, {"od_over_size", "wall_over_size_per_100_psi", "source", "how", "note"});
    series_.back().plausible_basis = basis_of(from);
    const auto range = [&](std::string_view key) {
      std::array<double, 2> ends{};
      std::size_t count = 0;
      for (const element end : as_array(member(from, key), key)) {
        if (count < ends.size()) ends[count] = as_number(end, key);
        ++count;
      }
      if (count != ends.size() || ends[1] <= ends[0]) fault(std::string(key) + " is not a range");
      for (const double end : ends) within(end, {0.001, 3}, key);
      return ends;
    };
    const auto od = range("od_over_size");
    const auto wall = range("wall_over_size_per_100_psi");
    for (Pipe& pipe : pipes_of_series()) {
      if (!pipe.rating) fault("a pipe without a class has no plausible wall");
      const Length size = pipe.size.number() * units::inch;
      const double hundreds = *pipe.rating / (100.0 * units::psi);
      pipe.plausible = {od[0] * size, od[1] * size, wall[0] * hundreds * size, wall[1] * hundreds * size};
    }
  }

  std::optional<int> year(object laid, std::string_view key) const {
    const auto number = as_number_or_unknown(member(laid, key), key);
    if (!number) return std::nullopt;
    within(*number, {1700, 2200}, key);
    if (*number != std::floor(*number)) fault(quoted(key) + " is not a year");
    return static_cast<int>(*number);
  }

  void read_series_rows(object from) {
    enum { size, class_name, also, od, od_minus, od_plus, wall, wall_minus, rating, dr, how, note };
    constexpr std::array<std::string_view, 12> names = {"size", "class",      "also",   "od", "od_minus", "od_plus",
                                                        "wall", "wall_minus", "rating", "dr", "how",      "note"};
    std::size_t count = 0;
    const auto at = columns_of(from, names, how, count);
    const std::size_t first = first_of_series_ = pipes_.size();
    each_row(from, count, [&](const Cells& cells) {
      Pipe pipe;
      pipe.size = as_size(cells[at[size]], "size");
      pipe.class_name = as_text(cells[at[class_name]], "class");
      at_.row_name = pipe.size.label() + (pipe.class_name.empty() ? "" : " " + pipe.class_name);
      add_words(pipe.names, pipe.class_name);
      for (const element spelling : as_array(cells[at[also]], "also")) {
        add_words(pipe.names, as_text(spelling, "a spelling"));
      }

      const auto number = [&](std::size_t column) { return as_number_or_unknown(cells[at[column]], names[column]); };
      const auto length = [&](std::size_t column) {
        const auto value = number(column);
        return value ? std::optional(*value * units::inch) : std::nullopt;
      };
      pipe.od = length(od);
      pipe.od_minus = length(od_minus).value_or(Length());
      pipe.od_plus = length(od_plus).value_or(Length());
      pipe.wall = length(wall);
      pipe.wall_minus = length(wall_minus).value_or(Length());
      if (const auto value = number(rating)) pipe.rating = *value * units::psi;
      pipe.dr = number(dr);
      if (at[how] != npos && !cells[at[how]].is_null()) pipe.how = as_how(as_text(cells[at[how]], "how"));
      if (at[note] != npos && !cells[at[note]].is_null()) pipe.note = as_text(cells[at[note]], "note");
      check(pipe, !cells[at[od_minus]].is_null() && !cells[at[od_plus]].is_null(), !cells[at[wall_minus]].is_null());
      for (std::size_t i = first; i < pipes_.size(); ++i) {
        const Pipe& other = pipes_[i];
        if (other.size == pipe.size && other.class_name == pipe.class_name) fault("the size and class stand twice");
      }
      pipes_.push_back(std::move(pipe));
    });
    if (pipes_.size() == first) fault("no rows");
  }

  static void add_word(std::vector<ClassWord>& names, const ClassWord& word) {
    if (std::find(names.begin(), names.end(), word) == names.end()) names.push_back(word);
  }

  void add_words(std::vector<ClassWord>& names, std::string_view spelling) const {
    const ClassWords read = catalog_.read_class(spelling, series_.back().material);
    if (!read.stray.empty()) fault(quoted(spelling) + " has a word that means nothing: " + quoted(read.stray.view()));
    for (const ClassWord& word : read.words) add_word(names, word);
  }

  // Refuses what no pipe can be: the slips that a table takes when it is typed or converted.
  void check(const Pipe& pipe, bool od_tolerance_known, bool wall_tolerance_known) const {
    const Length nothing;
    if (pipe.od) {
      const Length nominal = pipe.size.number() * units::inch;
      if (*pipe.od <= nothing) fault("the outside diameter is not above zero");
      // Every pipe of the tables is at least as wide as its name, and none by half of it and half an inch more.
      if (*pipe.od < nominal || *pipe.od > 1.5 * nominal + 0.5 * units::inch) {
        fault("an outside diameter in inches does not lie so far from the nominal size");
      }
      // None of the tables allows a twentieth of the diameter and a tenth of an inch.
      const Length widest = 0.05 * *pipe.od + 0.1 * units::inch;
      if (pipe.od_minus > widest || pipe.od_plus > widest) fault("the diameter's tolerance is wider than any pipe's");
      if (!od_tolerance_known) fault("an outside diameter needs its tolerances");
    }
    if (pipe.od_minus < nothing || pipe.od_plus < nothing || pipe.wall_minus < nothing)
      fault("a tolerance is below zero");
    if (pipe.wall) {
      within(*pipe.wall / units::inch, {0.01, 24, "in"}, "wall");
      if (!wall_tolerance_known) fault("a wall needs its tolerance");
      if (pipe.wall_minus >= *pipe.wall) fault("the wall's tolerance leaves no wall");
      if (pipe.od && 2.0 * *pipe.wall >= *pipe.od) fault("twice the wall is not less than the outside diameter");
    }
    if (pipe.rating) within(*pipe.rating / units::psi, pressure_limits, "rating");
    if (pipe.dr) {
      within(*pipe.dr, {2.1, 100}, "dr");
      const Length rounding = 0.001 * units::inch;
      if (pipe.od && pipe.wall && abs(*pipe.od / *pipe.dr - *pipe.wall) > rounding + 0.005 * *pipe.wall) {
        fault("the wall is not the outside diameter over the dimension ratio");
      }
    }
  }

  const Catalog& catalog_;
  std::vector<PipeSeries>& series_;
  std::vector<std::string>& standards_;
  std::vector<Pipe>& pipes_;
  std::vector<std::size_t> series_of_ = {};  // by pipe
  std::size_t first_of_series_ = 0;          // pipe of the series that is being read
};

}  // namespace

void load_pipes(TableFiles& at, const Catalog& catalog, Pipes into) {
  PipeTables tables(at, catalog, into);
  for (const auto& [path, text] : at.files) {
    if (path.starts_with("pipes/")) tables.read_file(tables.open(path));
  }
  tables.put_in_order();
}

}  // namespace mainbore::tables
