// batch_bench [ORDERS]: how fast orders are read, planned and written, what it costs that they tell of the service line
// and demand, the cleaning and the trench as well, what a register saves whose orders repeat, and how all that compares with
// `jq -c .` over the same file in the same run, of features with `jq -c .features[]`. MAINBORE_OPEN_DATA names a folder with
// real exports: those of them that are at hand are measured too. Everything runs once in each of five rounds, and the best of each counts: a machine that is slow for a while
// is so for all. Wall clock; ratios are what to look at, for they hold better on another machine.
#include <algorithm>
#include <array>
#include <chrono>
#include <cstdio>
#include <cstdlib>
#include <cstring>
#include <deque>
#include <filesystem>
#include <fstream>
#include <functional>
#include <optional>
#include <sstream>
#include <string>
#include <thread>
#include <utility>
#include <vector>

#include "batch/batch.hpp"
#include "bench/orders.hpp"
#include "io/fast/fast_job.hpp"
#include "io/orders/order_map.hpp"
#include "mainbore/job_file.hpp"
#include "mainbore/planner.hpp"
#include "mainbore/rules_file.hpp"

namespace {

using namespace mainbore;
namespace fs = std::filesystem;

// What is measured, and the best time of it so far.
class Measured {
 public:
  Measured(std::string what, std::size_t orders, std::function<void()> run)
      : what_(std::move(what)), orders_(orders), run_(std::move(run)) {}

  void run() {
    const auto begin = std::chrono::steady_clock::now();
    run_();
    best_ = std::min(best_, std::chrono::duration<double>(std::chrono::steady_clock::now() - begin).count());
  }
  void print() const {
    std::printf("  %-52s %9.0f orders/s  %6.2f us\n", what_.c_str(), static_cast<double>(orders_) / best_,
                1e6 * each());
  }
  // Seconds an order.
  [[nodiscard]] double each() const { return best_ / static_cast<double>(orders_); }

 private:
  std::string what_;
  std::size_t orders_ = 0;
  std::function<void()> run_;
  double best_ = 1e9;
};

io::ByteSource source_of(std::string_view text) {
  return [text](char* to, std::size_t room) mutable {
    const std::size_t size = std::min(text.size(), room);
    if (size > 0) std::memcpy(to, text.data(), size);
    text.remove_prefix(size);
    return size;
  };
}

// A file that is removed with this.
class Scratch {
 public:
  explicit Scratch(const std::string& text)
      : path_(fs::temp_directory_path() /
              ("mainbore-bench-" + std::to_string(text.size()) + '-' + std::to_string(++made) + ".json")) {
    std::ofstream(path_, std::ios::binary) << text;
  }
  ~Scratch() { fs::remove(path_); }
  Scratch(const Scratch&) = delete;
  Scratch& operator=(const Scratch&) = delete;
  [[nodiscard]] std::string path() const { return path_.string(); }

 private:
  inline static int made = 0;
  fs::path path_;
};

std::string file_text(const fs::path& path) {
  std::ostringstream text;
  text << std::ifstream(path, std::ios::binary).rdbuf();
  return text.str();
}

std::size_t count_lines(std::string_view text) {
  return static_cast<std::size_t>(std::count(text.begin(), text.end(), '\n'));
}
// The first tenth of the orders, whole ones.
std::string_view tenth(std::string_view text) { return text.substr(0, text.find('\n', text.size() / 10) + 1); }

// The orders of one file, and what is measured over them.
class Bench {
 public:
  Bench(const std::string& text, std::string behind) : text_(text), behind_(std::move(behind)), file_(text) {
    padded_ = text + std::string(io::FastJobReader::room_behind, '\n');
    for (std::size_t begin = 0; begin < text.size();) {
      const std::size_t end = text.find('\n', begin);
      lines_.push_back(std::string_view(padded_).substr(begin, end - begin));
      begin = end + 1;
    }
    jobs_.resize(lines_.size());
  }

  // Reading and planning, each for itself; in this order, for what is read is planned.
  Measured read() {
    return {"read, fast" + behind_, lines_.size(), [this] {
              for (std::size_t i = 0; i < lines_.size(); ++i) {
                Job* const job = reader_.read(lines_[i]);
                if (job == nullptr) std::abort();
                jobs_[i] = std::move(*job);
              }
            }};
  }
  Measured read_in_full() {
    const std::size_t some = std::max<std::size_t>(1, lines_.size() / 20);
    return {"read, in full" + behind_, some, [this, some] {
              for (std::size_t i = 0; i < some; ++i) {
                if (!read_job(lines_[i], "orders", catalog_).job) std::abort();
              }
            }};
  }
  Measured plan() {
    return {"plan" + behind_, lines_.size(), [this] {
              for (Job& job : jobs_) {
                job = std::move(planner_.plan(std::move(job), PlanDepth::verdict).job);
              }
            }};
  }

  // End to end, in memory.
  Measured verdicts(int threads) {
    const std::string with = threads > 1 ? ", " + std::to_string(threads) + " threads" : "";
    return batch("verdicts" + with, text_, batch::BatchFormat::verdicts, PlanScope::whole, threads);
  }
  Measured plans(std::string_view what, PlanScope scope) {
    return batch("plans, " + std::string(what), tenth(text_), batch::BatchFormat::plans, scope, 1);
  }

  Measured jq() {
    return {"jq -c ." + behind_, lines_.size(), [command = "jq -c . " + file_.path() + " > /dev/null"] {
              if (std::system(command.c_str()) != 0) std::abort();
            }};
  }

 private:
  Measured batch(const std::string& what, std::string_view text, batch::BatchFormat format, PlanScope scope,
                 int threads) {
    batch::BatchOptions options;
    options.format = format;
    options.scope = scope;
    options.jobs = threads;
    return {what + behind_, count_lines(text), [this, text, options] {
              std::size_t bytes = 0;
              (void)batch::plan_orders(source_of(text), batch::InputFormat::ndjson, "orders", planner_, options,
                                       [&](batch::Piece& piece) { bytes += piece.out.size(); });
              if (bytes == 0) std::abort();
            }};
  }

  const Catalog& catalog_ = Catalog::builtin();
  const Planner planner_{*load_rules(catalog_).rules};
  std::string_view text_;
  std::string behind_;
  Scratch file_;
  std::string padded_;
  std::vector<std::string_view> lines_;
  std::vector<Job> jobs_;
  io::FastJobReader reader_{catalog_};
};

// Orders of one file that come under a map or not, end to end, and how many of them repeat one before.
class Export {
 public:
  // Of features `jq -c .features[]` is what to compare with.
  Export(std::string what, std::string text, batch::InputFormat in, const std::string& map)
      : what_(std::move(what)), text_(std::move(text)), in_(in), file_(text_) {
    if (!map.empty()) map_ = *io::read_order_map(map, "map", catalog_).map;
    keep_.all = true;
    const batch::BatchResult result = run(true, [](const batch::Piece&) {});
    count_ = result.tally.all();
    std::printf("%s: %zu orders of %zu bytes, %.0f %% judged with one before\n", what_.c_str(), count_,
                text_.size() / std::max<std::size_t>(1, count_),
                100.0 * static_cast<double>(result.tally.recalled) / static_cast<double>(count_));
  }

  Measured measured(bool remember = true) {
    return {what_ + (remember ? "" : ", each for itself"), count_, [this, remember] {
              std::size_t bytes = 0;
              (void)run(remember, [&](const batch::Piece& piece) { bytes += piece.out.size(); });
              if (bytes == 0) std::abort();
            }};
  }
  Measured jq() {
    const char* const filter = in_ == batch::InputFormat::geojson ? "'.features[]'" : ".";
    return {"jq -c " + std::string(filter) + ", " + what_, count_,
            [command = "jq -c " + std::string(filter) + ' ' + file_.path() + " > /dev/null"] {
              if (std::system(command.c_str()) != 0) std::abort();
            }};
  }
  [[nodiscard]] bool is_json() const { return in_ != batch::InputFormat::csv; }
  [[nodiscard]] const std::string& what() const { return what_; }

 private:
  batch::BatchResult run(bool remember, const std::function<void(batch::Piece&)>& give) {
    batch::BatchOptions options;
    options.format = in_ == batch::InputFormat::geojson ? batch::BatchFormat::features : batch::BatchFormat::verdicts;
    options.remember = remember;
    if (map_) options.map = &*map_;
    if (in_ == batch::InputFormat::geojson) options.keep = &keep_;
    return batch::plan_orders(source_of(text_), in_, "orders", planner_, options, give);
  }

  const Catalog& catalog_ = Catalog::builtin();
  const Planner planner_{*load_rules(catalog_).rules};
  std::string what_;
  std::string text_;
  batch::InputFormat in_;
  Scratch file_;
  std::optional<io::OrderMap> map_;
  io::KeepColumns keep_;
  std::size_t count_ = 0;
};

// Real exports, which are not part of the project; their features are GDAL's conversion of the table.
void add_open_data(std::deque<Export>& exports) {
  const char* const folder = std::getenv("MAINBORE_OPEN_DATA");
  if (folder == nullptr) return;
  const fs::path maps = fs::path(MAINBORE_SOURCE_DIR) / "tests/maps";
  for (const auto& [file, map] : {std::pair{"ca_kitchener_water_mains_raw.csv", "city_mains_mm.json"},
                                  std::pair{"us_la_trunk_mains_raw.csv", "trunk_mains.json"},
                                  std::pair{"us_la_leak_workorders.csv", "leak_work_orders.json"}}) {
    const fs::path path = fs::path(folder) / file;
    if (!fs::exists(path)) continue;
    exports.emplace_back(file, file_text(path), batch::InputFormat::csv, file_text(maps / map));
    const Scratch features("");
    const std::string command =
        "ogr2ogr -f GeoJSON /vsistdout/ " + path.string() + " > " + features.path() + " 2> /dev/null";
    if (std::system(command.c_str()) != 0) continue;
    exports.emplace_back(std::string(file) + " as features", file_text(features.path()), batch::InputFormat::geojson,
                         file_text(maps / map));
  }
}

}  // namespace

int main(int argc, char** argv) {
  const std::size_t count = argc > 1 ? std::strtoul(argv[1], nullptr, 10) : 200000;
  if (count == 0) return 64;
  const std::string text = bench::orders(count);
  const std::string telling = bench::orders(count, bench::OrderFacts::all);
  const std::string few = bench::orders(count, bench::OrderFacts::few);
  std::printf("%zu orders of %zu bytes, or %zu with all facts, %zu sparse; %u cores\n", count, text.size() / count,
              telling.size() / count, few.size() / count, std::thread::hardware_concurrency());
  Bench plain(text, "");
  Bench all(telling, ", with all facts");
  Bench sparse(few, ", sparse");

  std::deque<Export> exports;
  exports.emplace_back("register", bench::register_orders(count), batch::InputFormat::ndjson, "");
  exports.emplace_back("register as features", bench::features(count, bench::Repeats::most),
                       batch::InputFormat::geojson, std::string(bench::feature_map));
  exports.emplace_back("chance as features", bench::features(count, bench::Repeats::few), batch::InputFormat::geojson,
                       std::string(bench::feature_map));
  add_open_data(exports);

  std::vector<Measured> measured;
  measured.reserve(64);  // they are referred to
  const auto add = [&](Measured one) -> const Measured& { return measured.emplace_back(std::move(one)); };
  const Measured& one = add(plain.verdicts(1));
  const Measured& two = add(plain.verdicts(2));
  const Measured& decisions = add(plain.plans("decisions", PlanScope::decisions));
  const Measured& whole = add(plain.plans("whole", PlanScope::whole));
  const Measured& told = add(all.verdicts(1));
  add(all.plans("whole", PlanScope::whole));
  const Measured& thin = add(sparse.verdicts(1));
  for (Bench* bench : {&plain, &all, &sparse}) {
    add(bench->read());
    add(bench->plan());
    add(bench->read_in_full());
  }
  const bool with_jq = std::system("command -v jq > /dev/null 2>&1") == 0;
  const Measured* const jq = with_jq ? &add(plain.jq()) : nullptr;
  const Measured* const jq_told = with_jq ? &add(all.jq()) : nullptr;
  const Measured* const jq_thin = with_jq ? &add(sparse.jq()) : nullptr;

  std::vector<std::array<const Measured*, 3>> of_exports;  // remembering, each for itself, jq
  for (Export& one_export : exports) {
    auto& of_this = of_exports.emplace_back();
    of_this = {&add(one_export.measured()), &add(one_export.measured(false)), nullptr};
    if (with_jq && one_export.is_json()) of_this[2] = &add(one_export.jq());
  }

  constexpr int rounds = 5;
  for (int round = 0; round < rounds; ++round) {
    for (Measured& each : measured) each.run();
  }
  for (const Measured& each : measured) each.print();
  std::printf("ratios:\n  two threads to one: %.2f\n", one.each() / two.each());
  std::printf("  verdicts with all facts to without: %.2f\n", one.each() / told.each());
  if (jq != nullptr) {
    std::printf("  to jq over the same file: verdicts %.1f, decisions %.1f, whole plans %.1f\n",
                jq->each() / one.each(), jq->each() / decisions.each(), jq->each() / whole.each());
    std::printf("  verdicts with all facts %.1f, verdicts of sparse orders %.1f\n", jq_told->each() / told.each(),
                jq_thin->each() / thin.each());
  }
  for (std::size_t i = 0; i < exports.size(); ++i) {
    const auto& [together, apart, by_jq] = of_exports[i];
    std::printf("  %s: to each for itself %.1f", exports[i].what().c_str(), apart->each() / together->each());
    if (by_jq != nullptr) std::printf(", to jq %.1f", by_jq->each() / together->each());
    std::printf("\n");
  }
  return 0;
}
