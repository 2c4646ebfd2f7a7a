// Eight threads plan with one planner; each must get what one alone gets. The thread sanitizer watches it in the preset "threads".
#include <mainbore.h>

#include <cstdio>
#include <string>
#include <thread>
#include <vector>

namespace {

std::string job(int number) {
  static const char* const materials[] = {"ductile iron", "PVC", "cast iron", "asbestos cement", "steel"};
  return std::string(R"({"id":"AV-)") + std::to_string(number) + R"(","main":{"material":")" + materials[number % 5] +
         R"(","size":")" + std::to_string(4 + 2 * (number % 4)) + R"( in","pressure":")" +
         std::to_string(40 + 5 * (number % 30)) + R"( psi"},"service":{"size":"1 in"}})";
}

std::string plans(const mainbore_planner* planner, int first, int count) {
  std::string all;
  for (int number = first; number < first + count; ++number) {
    const std::string text = job(number);
    for (const unsigned what :
         {MAINBORE_VERDICT, MAINBORE_PLAN, MAINBORE_CARD_FULL | MAINBORE_SPANISH, MAINBORE_SHEET}) {
      char* result = nullptr;
      mainbore_plan(planner, text.data(), text.size(), what, &result);
      if (result != nullptr) all += result;
      mainbore_free(result);
    }
  }
  return all;
}

std::string batch(const mainbore_planner* planner, int jobs) {
  std::string orders;
  for (int number = 0; number < 400; ++number) orders += job(number) + '\n';
  mainbore_batch_options options = {};
  options.jobs = jobs;
  std::string records;
  const auto receive = [](void* context, const char* text, std::size_t size) {
    static_cast<std::string*>(context)->append(text, size);
    return 0;
  };
  char* result = nullptr;
  mainbore_batch(planner, orders.data(), orders.size(), &options, receive, &records, nullptr, &result);
  mainbore_free(result);
  char* text = nullptr;
  mainbore_batch_text(planner, orders.data(), orders.size(), &options, nullptr, &text, &result);
  if (text == nullptr || records != text) records.clear();
  mainbore_free(text);
  return records;
}

}  // namespace

int main() {
  constexpr int threads = 8;
  constexpr int jobs = 20;
  mainbore_planner* planner = nullptr;
  char* result = nullptr;
  const std::string list = "kind,size,thread,length,stock\nstop,1 in,AWWA taper,3.5 in,12-004\n";
  const mainbore_text approved = {"approved.csv", list.data(), list.size()};
  mainbore_inputs inputs = {};
  inputs.size = sizeof inputs;
  inputs.approved = &approved;
  if (mainbore_planner_from(&inputs, &planner, &result) != MAINBORE_GO) return 1;
  // First the threads, so that whatever is made at the first call is made by several at once.
  std::vector<std::string> made(threads);
  std::vector<std::string> records(threads);
  std::vector<std::thread> running;
  for (int i = 0; i < threads; ++i) {
    running.emplace_back([&, i] {
      made[static_cast<std::size_t>(i)] = plans(planner, jobs * (i % 2), jobs);
      records[static_cast<std::size_t>(i)] = batch(planner, 1 + i % 3);
    });
  }
  for (std::thread& thread : running) thread.join();
  bool same = true;
  const std::string alone[] = {plans(planner, 0, jobs), plans(planner, jobs, jobs)};
  const std::string records_alone = batch(planner, 1);
  for (std::size_t i = 0; i < threads; ++i) same = same && made[i] == alone[i % 2] && records[i] == records_alone;
  mainbore_planner_free(planner);
  if (!same || alone[0].empty() || records_alone.empty()) std::puts("what a thread got differs");
  return same && !alone[0].empty() && !records_alone.empty() ? 0 : 1;
}
