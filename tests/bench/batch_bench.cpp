// batch_bench [ORDERS]: how fast orders are read, planned and written, what it costs that they tell of the service line
// and demand, the cleaning and the trench as well, and how all that compares with `jq -c .` over the same file in the
// same run. Best of three, wall clock; ratios are what to look at, for they hold on another machine.
#include <algorithm>
#include <chrono>
#include <cstdio>
#include <cstdlib>
#include <cstring>
#include <filesystem>
#include <fstream>
#include <functional>
#include <string>
#include <thread>
#include <vector>

#include "batch/batch.hpp"
#include "bench/orders.hpp"
#include "io/fast_job.hpp"
#include "mainbore/job_file.hpp"
#include "mainbore/plan.hpp"
#include "mainbore/rules_file.hpp"

namespace {

using namespace mainbore;
namespace fs = std::filesystem;

double seconds(const std::function<void()>& run) {
  double best = 1e9;
  for (int round = 0; round < 3; ++round) {
    const auto begin = std::chrono::steady_clock::now();
    run();
    best = std::min(best, std::chrono::duration<double>(std::chrono::steady_clock::now() - begin).count());
  }
  return best;
}

void print(const char* what, std::size_t orders, double time) {
  std::printf("  %-44s %9.0f orders/s  %6.2f us\n", what, static_cast<double>(orders) / time,
              1e6 * time / static_cast<double>(orders));
}

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
      : path_(fs::temp_directory_path() / ("mainbore-bench-" + std::to_string(text.size()) + ".ndjson")) {
    std::ofstream(path_, std::ios::binary) << text;
  }
  ~Scratch() { fs::remove(path_); }
  Scratch(const Scratch&) = delete;
  Scratch& operator=(const Scratch&) = delete;
  [[nodiscard]] std::string path() const { return path_.string(); }

 private:
  fs::path path_;
};

class Bench {
 public:
  // How long reading and planning take, each for itself.
  void parts(const std::string& text) const {
    const std::string padded = text + std::string(io::FastJobReader::room_behind, '\n');
    std::vector<std::string_view> lines;
    for (std::size_t begin = 0; begin < text.size();) {
      const std::size_t end = text.find('\n', begin);
      lines.push_back(std::string_view(padded).substr(begin, end - begin));
      begin = end + 1;
    }
    const std::size_t count = lines.size();
    std::vector<Job> jobs(count);
    io::FastJobReader reader(catalog_);
    print("read, fast", count, seconds([&] {
            for (std::size_t i = 0; i < count; ++i) {
              Job* const job = reader.read(lines[i]);
              if (job == nullptr) std::abort();
              jobs[i] = std::move(*job);
            }
          }));
    const std::size_t some = std::max<std::size_t>(1, count / 20);
    print("read, in full", some, seconds([&] {
            for (std::size_t i = 0; i < some; ++i) {
              if (!read_job(lines[i], "orders", catalog_).job) std::abort();
            }
          }));
    print("plan", count, seconds([&] {
            for (Job& job : jobs) job = std::move(plan(std::move(job), catalog_, rules_, PlanDepth::verdict).job);
          }));
  }

  // End to end, in memory; prints and returns the time.
  double batch(const char* what, std::string_view text, batch::BatchFormat format, PlanScope scope, int threads) const {
    batch::BatchOptions options;
    options.format = format;
    options.scope = scope;
    options.jobs = threads;
    std::size_t bytes = 0;
    const double time = seconds([&] {
      bytes = 0;
      (void)batch::plan_orders(source_of(text), batch::InputFormat::ndjson, "orders", catalog_, rules_, options,
                               [&](batch::Piece& piece) { bytes += piece.out.size(); });
    });
    const auto count = static_cast<std::size_t>(std::count(text.begin(), text.end(), '\n'));
    print(what, count, time);
    std::printf("  %-44s %9zu bytes\n", "", bytes / count);
    return time;
  }

 private:
  const Catalog& catalog_ = Catalog::builtin();
  const RulesFile loaded_ = load_rules(catalog_);
  const Rules& rules_ = *loaded_.rules;
};

// The first tenth of the orders, whole ones.
std::string_view tenth(std::string_view text) { return text.substr(0, text.find('\n', text.size() / 10) + 1); }

}  // namespace

int main(int argc, char** argv) {
  const std::size_t count = argc > 1 ? std::strtoul(argv[1], nullptr, 10) : 200000;
  if (count == 0) return 64;
  const std::string text = bench::orders(count);
  const std::string telling = bench::orders(count, bench::OrderFacts::all);
  std::printf("%zu orders of %zu bytes, or %zu with all facts; %u cores\n", count, text.size() / count,
              telling.size() / count, std::thread::hardware_concurrency());
  const Bench bench;
  using enum batch::BatchFormat;
  using enum PlanScope;

  std::printf("apart:\n");
  bench.parts(text);
  std::printf("end to end, in memory:\n");
  const double one = bench.batch("verdicts", text, verdicts, whole, 1);
  const double two = bench.batch("verdicts, two threads", text, verdicts, whole, 2);
  bench.batch("plans, decisions", tenth(text), plans, decisions, 1);
  bench.batch("plans, whole", tenth(text), plans, whole, 1);

  std::printf("with the facts of line, demand, cleaning and trench, apart:\n");
  bench.parts(telling);
  std::printf("end to end, in memory:\n");
  const double all = bench.batch("verdicts", telling, verdicts, whole, 1);
  bench.batch("plans, whole", tenth(telling), plans, whole, 1);

  std::printf("ratios:\n  two threads to one: %.2f\n", one / two);
  std::printf("  verdicts with all facts to without: %.2f\n", one / all);
  if (std::system("command -v jq > /dev/null 2>&1") == 0) {
    const auto jq = [&](const std::string& orders) {
      const Scratch file(orders);
      const std::string command = "jq -c . " + file.path() + " > /dev/null";
      const double time = seconds([&] {
        if (std::system(command.c_str()) != 0) std::abort();
      });
      print("jq -c .", count, time);
      return time;
    };
    std::printf("  verdicts to jq: %.1f\n", jq(text) / one);
    std::printf("  verdicts with all facts to jq over those: %.1f\n", jq(telling) / all);
  }
  return 0;
}
