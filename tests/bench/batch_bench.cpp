// batch_bench [ORDERS]: how fast orders are read, planned and written, and how that compares with `jq -c .` over the same
// file in the same run. Best of three, wall clock; ratios are what to look at, for they hold on another machine.
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

}  // namespace

int main(int argc, char** argv) {
  const std::size_t count = argc > 1 ? std::strtoul(argv[1], nullptr, 10) : 200000;
  if (count == 0) return 64;
  const std::string text = bench::orders(count);
  const Catalog& catalog = Catalog::builtin();
  const RulesFile loaded = load_rules(catalog);
  const Rules& rules = *loaded.rules;
  std::printf("%zu orders of %zu bytes, %u cores\n", count, text.size() / count, std::thread::hardware_concurrency());

  std::vector<std::string_view> lines;
  const std::string padded = text + std::string(io::FastJobReader::room_behind, '\n');
  for (std::size_t begin = 0; begin < text.size();) {
    const std::size_t end = text.find('\n', begin);
    lines.push_back(std::string_view(padded).substr(begin, end - begin));
    begin = end + 1;
  }
  std::vector<Job> jobs(count);
  std::printf("apart:\n");
  io::FastJobReader reader(catalog);
  print("read, fast", count, seconds([&] {
          for (std::size_t i = 0; i < count; ++i) {
            if (!reader.read(lines[i], jobs[i])) std::abort();
          }
        }));
  const std::size_t some = std::max<std::size_t>(1, count / 20);
  print("read, in full", some, seconds([&] {
          for (std::size_t i = 0; i < some; ++i) {
            if (!read_job(lines[i], "orders", catalog).job) std::abort();
          }
        }));
  print("plan", count, seconds([&] {
          for (Job& job : jobs) job = std::move(plan(std::move(job), catalog, rules).job);
        }));

  std::printf("end to end, in memory:\n");
  std::size_t bytes = 0;
  const auto batch = [&](batch::BatchFormat format, PlanScope scope, int threads, std::string_view orders) {
    batch::BatchOptions options;
    options.format = format;
    options.scope = scope;
    options.jobs = threads;
    bytes = 0;
    (void)batch::plan_orders(source_of(orders), batch::InputFormat::ndjson, "orders", catalog, rules, options,
                             [&](batch::Piece& piece) { bytes += piece.out.size(); });
  };
  using enum batch::BatchFormat;
  const double verdict_time = seconds([&] { batch(verdicts, PlanScope::whole, 1, text); });
  print("verdicts", count, verdict_time);
  std::printf("  %-44s %9zu bytes\n", "", bytes / count);
  const double two_time = seconds([&] { batch(verdicts, PlanScope::whole, 2, text); });
  print("verdicts, two threads", count, two_time);
  std::string_view part(text);
  part = part.substr(0, part.find('\n', part.size() / 10) + 1);
  const auto part_count = static_cast<std::size_t>(std::count(part.begin(), part.end(), '\n'));
  print("plans, decisions", part_count, seconds([&] { batch(plans, PlanScope::decisions, 1, part); }));
  print("plans, whole", part_count, seconds([&] { batch(plans, PlanScope::whole, 1, part); }));

  std::printf("ratios:\n  two threads to one: %.2f\n", verdict_time / two_time);
  if (std::system("command -v jq > /dev/null 2>&1") == 0) {
    const Scratch file(text);
    const std::string command = "jq -c . " + file.path() + " > /dev/null";
    const double jq_time = seconds([&] {
      if (std::system(command.c_str()) != 0) std::abort();
    });
    print("jq -c .", count, jq_time);
    std::printf("  verdicts to jq: %.1f\n", jq_time / verdict_time);
  }
  return 0;
}
