#include "cli/batch_command.hpp"

#include <algorithm>
#include <chrono>
#include <cstring>
#include <filesystem>
#include <iostream>
#include <optional>
#include <thread>
#include <utility>

#include "batch/batch.hpp"
#include "batch/seen_ids.hpp"
#include "cli/result_writer.hpp"
#include "cli/sheet_folder.hpp"
#include "io/orders/columns_report.hpp"
#include "io/orders/order_map.hpp"
#include "io/orders/verdict_record.hpp"
#include "io/text/text_scan.hpp"
#include "report/week.hpp"
#include "report/week_days.hpp"
#include "text/foreign.hpp"

namespace mainbore::cli {
namespace {

using batch::BatchFormat;
using batch::BatchOptions;
using batch::InputFormat;
using batch::Tally;

// The line that makes text of a file of another kind.
std::string way_out(const std::string& name, std::string_view pipe_format) {
  if (pipe_format.empty()) return "\nunpack it first";
  const bool map = pipe_format == "GeoJSON";
  return "\ntry: ogr2ogr -f " + std::string(pipe_format) + " /vsistdout/ " + name + " | mainbore batch - --in " +
         (map ? "geojson" : "csv") + " ...\nogr2ogr is part of GDAL (package gdal-bin)";
}

// All inputs are looked at before the first is read: half a result is none. A pipe is opened once only, since whoever
// writes to it would take its closing for the end.
void check_inputs(const std::vector<std::string>& files, Console& console) {
  std::string told;
  for (const std::string& path : files) {
    std::error_code error;
    const std::filesystem::file_status status = std::filesystem::status(path, error);
    const bool pipe_or_device = std::filesystem::is_other(status);
    if (path == "-") console.files_read.add(console.environment.in_file, path);
    if (path == "-" || pipe_or_device) continue;
    if (std::filesystem::is_directory(status) && std::filesystem::path(path).extension() == ".gdb") {
      told += (told.empty() ? "" : "\nmainbore: ") + shown_name(path) + " is a file geodatabase, not text" +
              way_out(shown_name(path), "GeoJSON");
      continue;
    }
    try {
      const InputFile file(path, console.files_read);
    } catch (const Stop& stop) {
      told += (told.empty() ? "" : "\nmainbore: ") + std::string(stop.what());
    }
  }
  if (!told.empty()) throw Stop(exit_no_input, told);
}

// One input and its name for messages.
class Input {
 public:
  Input(const std::string& path, Console& console) : name_(shown_name(path)) {
    if (path == "-") {
      in_ = &console.in;
    } else {
      file_.emplace(path, console.files_read);
    }
  }
  Input(const Input&) = delete;
  Input& operator=(const Input&) = delete;

  [[nodiscard]] const std::string& name() const { return name_; }

  // The first bytes, as many as tell the format; they are read again by bytes().
  [[nodiscard]] std::string_view first_bytes() {
    while (ahead_.size() < 4096 && !batch::tells_format(ahead_) && look_further()) {
    }
    if (ahead_.back() == '{') look_further();  // whether its line goes on
    return ahead_;
  }

  // Refuses a file that is no text, by its name, with the way to make text of it.
  void require_text() {
    do {
      if (!look_further()) break;
    } while (batch::may_be_foreign(ahead_));
    const auto foreign = batch::foreign_file(ahead_);
    if (!foreign) return;
    throw Stop(exit_unreadable,
               name_ + " is " + std::string(foreign->what) + ", not text" + way_out(name_, foreign->pipe_format));
  }

  [[nodiscard]] io::ByteSource bytes() {
    return [this](char* to, std::size_t room) {
      if (ahead_.empty()) return take(to, room);
      const std::size_t size = std::min(room, ahead_.size());
      std::memcpy(to, ahead_.data(), size);
      ahead_.erase(0, size);
      return size;
    };
  }

 private:
  // Waits for the first byte only, so that an order is answered when it has come.
  std::size_t take(char* to, std::size_t room) {
    if (file_) return file_->read(to, room);
    if (in_->peek() == std::istream::traits_type::eof()) {
      if (in_->bad()) throw Stop(exit_no_input, "cannot read " + name_);
      return 0;
    }
    std::size_t got = 0;
    while (got < room) {
      const std::streamsize more = in_->readsome(to + got, static_cast<std::streamsize>(room - got));
      if (more <= 0) break;
      got += static_cast<std::size_t>(more);
    }
    return got;
  }

  bool look_further() {
    char c = '\0';
    if (take(&c, 1) == 0) return false;
    ahead_ += c;
    return true;
  }

  std::string name_;
  std::istream* in_ = nullptr;
  std::optional<InputFile> file_;
  std::string ahead_;
};

InputFormat format_of(const std::string& asked, const std::string& path, Input& input) {
  const auto named = [](std::string_view name) -> std::optional<InputFormat> {
    if (name == "csv" || name == "tsv") return InputFormat::csv;
    if (name == "ndjson" || name == "jsonl") return InputFormat::ndjson;
    if (name == "json") return InputFormat::json;
    if (name == "geojson" || name == "geojsonl" || name == "geojsons") return InputFormat::geojson;
    return std::nullopt;
  };
  if (const auto format = named(asked)) return *format;
  std::string extension = std::filesystem::path(path).extension().string();
  std::transform(extension.begin(), extension.end(), extension.begin(),
                 [](char c) { return c >= 'A' && c <= 'Z' ? static_cast<char>(c - 'A' + 'a') : c; });
  if (!extension.empty()) {
    if (const auto format = named(extension.substr(1))) return *format;
  }
  return batch::format_of(input.first_bytes());
}

// An input that is text, with its format, which the options must go with.
InputFormat open_format(const BatchRequest& request, const std::string& path, Input& input) {
  input.require_text();
  const InputFormat in = format_of(request.in, path, input);
  if (in != InputFormat::csv && !request.delimiter.empty()) {
    throw Stop(exit_usage, "--delimiter is for tables, and " + input.name() + " is JSON");
  }
  if (in != InputFormat::geojson && request.format == "geojson") {
    throw Stop(exit_usage,
               "--format geojson gives features back, and " + input.name() +
                   " has none: take --format ndjson or csv\na table with coordinates becomes GeoJSON by: "
                   "ogr2ogr -f GeoJSON /vsistdout/ TABLE.csv -oo X_POSSIBLE_NAMES=x -oo Y_POSSIBLE_NAMES=y");
  }
  return in;
}

std::optional<char> delimiter_of(const std::string& text) {
  if (text.empty()) return std::nullopt;
  if (text == "comma" || text == ",") return ',';
  if (text == "semicolon" || text == ";") return ';';
  return '\t';
}

std::optional<io::OrderMap> open_map(const std::string& path, const Catalog& catalog, Console& console) {
  if (path.empty()) return std::nullopt;
  const std::string text = read_text(path, io::longest_map, console);
  io::OrderMapFile read = io::read_order_map(text, shown_name(path), catalog);
  stop_on(read.diagnostics, "no order is read through it", console);
  return *std::move(read.map);
}

// How far it is, for whoever waits at a terminal.
class Progress {
 public:
  explicit Progress(Console& console) : err_(console.progress), shown_(console.environment.err_is_terminal) {}
  ~Progress() {
    if (any_) err_ << "\r\x1b[K" << std::flush;
  }
  Progress(const Progress&) = delete;
  Progress& operator=(const Progress&) = delete;

  void show(std::uint64_t orders) {
    if (!shown_) return;
    const auto now = std::chrono::steady_clock::now();
    if (now - last_ < std::chrono::milliseconds(250)) return;
    last_ = now;
    any_ = true;
    const auto seconds = std::chrono::duration<double>(now - begun_).count();
    err_ << '\r' << orders << " orders, " << static_cast<std::uint64_t>(static_cast<double>(orders) / seconds)
         << " a second" << std::flush;
  }

 private:
  std::ostream& err_;
  bool shown_;
  bool any_ = false;
  std::chrono::steady_clock::time_point begun_ = std::chrono::steady_clock::now();
  std::chrono::steady_clock::time_point last_ = begun_;
};

ExitStatus status_of(const Tally& tally, const std::string& fail_on) {
  if (tally.internal > 0) return exit_internal;  // no gate is told that all is well by a program that failed
  if (fail_on == "never") return exit_go;
  if (tally.unreadable > 0) return exit_unreadable;
  if (fail_on == "unreadable") return exit_go;
  if (tally.no_go > 0) return exit_no_go;
  if (fail_on == "no-go") return exit_go;
  return (fail_on == "office" ? tally.office : tally.hold) > 0 ? exit_hold : exit_go;
}

void show_columns(const std::vector<std::string>& files, const BatchRequest& request, const BatchOptions& options,
                  const Catalog& catalog, Console& console) {
  std::string text;
  for (const std::string& path : files) {
    Input input(path, console);
    const InputFormat in = open_format(request, path, input);
    const bool jobs = in != InputFormat::csv && in != InputFormat::geojson && options.map == nullptr;
    if (jobs) {
      throw Stop(exit_usage, "--columns is for tables, GeoJSON and orders under a map file, and " + input.name() +
                                 " is JSON without one");
    }
    const batch::ColumnsResult result = batch::look_at_columns(input.bytes(), in, input.name(), catalog, options);
    stop_on(result.faults, "the table is not read", console);
    if (result.report.file.empty()) throw Stop(exit_unreadable, input.name() + " is empty");
    if (!text.empty()) text += '\n';
    text += io::format_columns_report(result.report, request.all);
  }
  write_result(text, console);
}

// Names between commas; "all" is every column.
io::KeepColumns keep_of(const std::vector<std::string>& asked) {
  io::KeepColumns keep;
  for (const std::string& list : asked) {
    for (std::size_t at = 0; at <= list.size();) {
      const std::size_t comma = std::min(list.find(',', at), list.size());
      const std::string name(io::trimmed(std::string_view(list).substr(at, comma - at)));
      at = comma + 1;
      if (name.empty()) throw Stop(exit_usage, "--keep takes names of columns with commas between, or all");
      if (name == "all") keep.all = true;
      else if (!keep.has(name)) keep.names.push_back(name);
    }
  }
  return keep;
}

// Orders whose id another had before them.
class Ids {
 public:
  void add(const batch::Piece& piece, const std::string& file) {
    std::size_t at = 0;
    for (const batch::OrderId& id : piece.ids) {
      const std::string_view text = std::string_view(piece.id_texts).substr(at, id.size);
      at += id.size;
      if (!seen_.add(text)) continue;
      if (++count_ > most_told) continue;
      std::string where = "row " + std::to_string(id.row) + ", line " + std::to_string(id.line);
      if (!file.empty()) where.insert(0, file + ", ");
      twice_.emplace_back(text::visible(text), std::move(where));
    }
  }
  // In the report, else on standard error.
  void tell(report::WeekReport* week, Console& console) const {
    if (count_ > 0 && week == nullptr) {
      console.err << "mainbore: " << count_ << (count_ == 1 ? " order has" : " orders have")
                  << " the id of an order before:\n";
    }
    for (const auto& [id, where] : twice_) {
      if (week != nullptr) week->note_twice(id, where);
      else console.err << "  " << id << " (" << where << ")\n";
    }
    const std::string more = std::to_string(count_ - std::min(count_, most_told)) + " more";
    if (count_ > most_told && week != nullptr) week->note_twice("and", more);
    else if (count_ > most_told) console.err << "  and " << more << '\n';
    if (seen_.is_full()) {
      console.err << "mainbore: ids are compared with those of the first " << batch::SeenIds::most << " orders alone\n";
    }
  }

 private:
  static constexpr std::uint64_t most_told = 20;
  batch::SeenIds seen_;
  std::uint64_t count_ = 0;
  std::vector<std::pair<std::string, std::string>> twice_;
};

// Records as they are written: what stands before the first and behind the last of them.
class Records {
 public:
  Records(ResultWriter& result, const BatchOptions& options, const io::KeepColumns& keep)
      : result_(result), options_(options), keep_(keep) {}

  void begin_file(const std::string& name, InputFormat in) {
    name_ = name;
    if (options_.format != BatchFormat::table) return;
    if (in != InputFormat::csv && keep_.all) {
      throw Stop(exit_usage, "the members of " + name +
                                 " are not known before the last order: with --format csv name "
                                 "those to keep, or take --format ndjson");
    }
    if (!keep_.all) write_header(keep_.names);
  }
  void begin_records(std::span<const std::string> kept) {
    if (options_.format != BatchFormat::table || !keep_.all) return;
    write_header(kept);
    if (!std::equal(kept.begin(), kept.end(), kept_.begin(), kept_.end())) {
      throw Stop(exit_usage, name_ + " has other columns than the table before it: name those to keep");
    }
  }

  void write(const batch::Piece& piece) {
    if (options_.format != BatchFormat::features) return result_.write(piece.out);
    begin_collection(piece.head);
    tail_ += piece.tail;
    if (piece.out.empty()) return;
    result_.write(std::string_view(piece.out).substr(first_ ? 1 : 0));  // no comma before the first
    first_ = false;
  }
  void end() {
    if (options_.format != BatchFormat::features) return;
    begin_collection({});
    result_.write("\n]" + tail_ + "}\n");
  }

 private:
  void begin_collection(const std::string& head) {
    if (std::exchange(any_, true)) return;
    result_.write("{\"type\":\"FeatureCollection\",\n" + head + "\"features\":[");
  }
  void write_header(std::span<const std::string> kept) {
    if (header_written_) return;
    header_written_ = true;
    kept_.assign(kept.begin(), kept.end());
    io::RecordOptions record;
    record.units = options_.units;
    record.rows = options_.rows;
    record.kept = kept_;
    if (options_.name_files) record.file = name_;
    std::string header;
    io::append_verdict_header(header, record);
    result_.write(header);
  }

  ResultWriter& result_;
  const BatchOptions& options_;
  const io::KeepColumns& keep_;
  std::string name_;
  bool header_written_ = false;
  std::vector<std::string> kept_;  // of the table's header
  bool any_ = false;
  bool first_ = true;
  std::string tail_;
};

BatchOptions options_of(const BatchRequest& request) {
  BatchOptions options;
  const bool lines = request.format == "ndjson";
  if (request.full && request.decisions) throw Stop(exit_usage, "give --full or --decisions, not both");
  if ((request.full || request.decisions) && !lines) {
    throw Stop(exit_usage, "--full and --decisions go with --format ndjson");
  }
  options.format = request.full || request.decisions ? BatchFormat::plans
                   : lines                           ? BatchFormat::verdicts
                   : request.format == "csv"         ? BatchFormat::table
                   : request.format == "geojson"     ? BatchFormat::features
                                                     : BatchFormat::week;
  if (request.all && !request.columns) throw Stop(exit_usage, "--all goes with --columns");
  if (options.format == BatchFormat::week && !request.keep.empty() && !request.columns) {
    throw Stop(exit_usage, "--keep goes with --format ndjson, csv or geojson");
  }
  options.scope = request.decisions ? PlanScope::decisions : PlanScope::whole;
  options.rows = !request.no_rows;
  options.sheets = request.format == "html" || !request.sheets.empty();
  if (!request.sheets.empty() && (options.format != BatchFormat::week || request.columns)) {
    throw Stop(exit_usage, "--sheets goes with --format text or html");
  }
  if (!request.language.empty() && !options.sheets)
    throw Stop(exit_usage, "--language is of the field sheets: it goes with --sheets or --format html");
  options.delimiter = delimiter_of(request.delimiter);
  options.jobs = request.jobs;
  if (options.jobs == 0) options.jobs = static_cast<int>(std::max(1u, std::thread::hardware_concurrency()));
  return options;
}

// "2026-05-04", "2026-05-04..2026-05-08".
report::WeekReport::Days days_of(const BatchRequest& request, BatchFormat format) {
  if (request.days.empty()) return {};
  if (format != BatchFormat::week || request.columns) throw Stop(exit_usage, "--days goes with --format text or html");
  const std::string_view text = request.days;
  const std::size_t dots = text.find("..");
  const std::string_view first = text.substr(0, dots);
  const std::string_view last = dots == std::string_view::npos ? first : text.substr(dots + 2);
  for (const std::string_view day : {first, last}) {
    if (day.starts_with('.') || !report::day_written(day)) {
      throw Stop(exit_usage,
                 "--days: " + text::quoted(day) + " is no day; give one such as 2026-05-04, or 2026-05-04..2026-05-08");
    }
  }
  report::WeekReport::Days days{report::day_key(first), report::day_key(last)};
  if (days.last < days.first) throw Stop(exit_usage, "--days: " + days.last + " is before " + days.first);
  return days;
}

}  // namespace

ExitStatus batch_command(const BatchRequest& request, Console& console) {
  BatchOptions options = options_of(request);
  std::vector<std::string> files = request.orders;
  if (files.empty()) {
    if (console.environment.in_is_terminal) {
      throw Stop(exit_usage, "no orders: name files, or - for standard input\ntry: mainbore batch --help");
    }
    files.emplace_back("-");
  }
  check_inputs(files, console);
  const std::shared_ptr<const Catalog> tables = open_catalog(request.data, console);
  const Catalog& catalog = *tables;
  const std::optional<io::OrderMap> map = open_map(request.map, catalog, console);
  options.map = map ? &*map : nullptr;
  const io::KeepColumns keep = keep_of(request.keep);
  options.keep = keep.any() ? &keep : nullptr;
  if (request.columns) {
    show_columns(files, request, options, catalog, console);
    return exit_go;
  }
  SettingsInForce in_force(request.settings_file, UsersOwn::never, catalog, console);
  options.units = in_force.units(request.units);
  options.language = in_force.language(request.language, options.sheets);
  const Planner planner = in_force.planner(tables, request.rules, request.approved, console);
  options.settings = &in_force.file();
  options.from_settings = in_force.taken();
  options.name_files = files.size() > 1;

  if (options.format == BatchFormat::features && files.size() > 1) {
    throw Stop(exit_usage,
               "--format geojson takes one input: coordinates of two may not be of one system\nrun it for each");
  }

  std::optional<SheetFolder> sheets;
  if (!request.sheets.empty()) sheets.emplace(request.sheets, console);
  ResultWriter result(console);
  Records records(result, options, keep);
  Progress progress(console);
  report::WeekReport week(days_of(request, options.format));
  Ids ids;
  Tally tally;
  std::vector<Diagnostic> faults;
  std::vector<std::string> without_orders;  // nothing to plan is no "all go" for a gate
  for (const std::string& path : files) {
    Input input(path, console);
    const InputFormat in = open_format(request, path, input);
    records.begin_file(input.name(), in);
    options.begin = [&](std::span<const std::string> kept) { records.begin_records(kept); };
    options.orders_before = static_cast<int>(tally.all());
    const batch::BatchResult planned =
        batch::plan_orders(input.bytes(), in, input.name(), planner, options, [&](batch::Piece& piece) {
          if (options.format == BatchFormat::week) {
            for (report::WeekOrder& order : piece.week) {
              if (sheets) sheets->add(order);
              week.add(std::move(order));
            }
          } else {
            records.write(piece);
          }
          ids.add(piece, options.name_files ? input.name() : std::string());
          tally += piece.tally;
          progress.show(tally.all());
        });
    faults.insert(faults.end(), planned.faults.begin(), planned.faults.end());
    if (planned.faults.empty() && planned.tally.all() == 0) without_orders.push_back(input.name());
  }
  records.end();
  ids.tell(options.format == BatchFormat::week ? &week : nullptr, console);
  if (options.format == BatchFormat::week && faults.empty()) {
    report::WeekTextOptions text;
    text.color = console.output.empty() && console.environment.out_is_terminal && !console.environment.no_color;
    result.write(request.format == "html" ? week.html() : week.text(text));
  }
  if (request.fail_on == "never") without_orders.clear();
  for (const std::string& name : without_orders) console.err << "mainbore: no orders were found in " << name << '\n';
  const bool of_members = !faults.empty() && faults.front().line == 0;  // of orders that were read
  stop_on(faults, of_members ? "what is named is not in the orders" : "the table is not read", console);
  if (sheets && tally.all() > 0) sheets->finish();
  result.finish();
  if (tally.internal > 0) {
    console.err << "mainbore: internal error in " << tally.internal << (tally.internal == 1 ? " order" : " orders")
                << ", which " << (tally.internal == 1 ? "is" : "are") << " not planned; the others are\n";
  }
  return without_orders.empty() ? status_of(tally, request.fail_on) : exit_unreadable;
}

}  // namespace mainbore::cli
