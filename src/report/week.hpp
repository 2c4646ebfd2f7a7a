// The report of a week of orders: what will go wrong and why, what the holds need on site, what the trucks must carry.
//
// An order comes in as the few lines that the report may say of it, made of its plan by week_order(), so that plans need
// not be kept. Memory grows with the orders that are not a plain go, and with the days and crews.
//
//     WeekReport week;
//     for (...) week.add(week_order(order, &plan, {}));
//     std::cout << std::move(week).text({});
#pragma once

#include <array>
#include <cstdint>
#include <map>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

#include "mainbore/finding.hpp"
#include "mainbore/order_file.hpp"
#include "mainbore/plan.hpp"
#include "mainbore/work.hpp"

namespace mainbore::report {

// A hold waits for the office, or it is ready: the site clears all of it.
enum class WeekEnd : std::uint8_t { go, ready, office, no_go, unreadable };

// Why an order does not simply go, and what to do about it.
struct WeekReason {
  FindingCode code = FindingCode::method_none;  // of a finding
  std::string what;                             // in a few words: "wall not gauged at the tap"
  std::string why;
  std::string fix;
  std::string reading;   // what is to be read on site: "Least wall"
  std::string bound;     // "at least 0.31 in"; may be empty
  std::string ask = {};  // of a hold that the office clears
  std::string_view whom = {};
};

struct WeekOrder {
  std::string name;   // the work order, else its row
  std::string where;  // in the file: "row 12, line 14"
  std::string date;
  std::string crew;
  std::string place;
  WeekEnd end = WeekEnd::go;
  std::string summary;
  std::vector<WeekReason> reasons;        // why it is unreadable; the stops of a no-go; the holds of a hold
  std::vector<std::string> remarks;       // cells that were set aside
  std::vector<LoadItem> load;             // for a go and a hold
  std::vector<std::string> scarce;        // what it wants that there may be one of
  std::string sheet;                      // its field sheet, where one is wanted
  Language language = Language::english;  // of the sheet
};

struct WeekOrderOptions {
  UnitSystem units = UnitSystem::us;
  std::string_view file = {};  // named where there are several
  bool sheets = false;
  int orders_before = 0;                  // in earlier files: tells the sheets of a page apart
  Language language = Language::english;  // of the sheets
};

// `plan` is nullptr exactly where the order could not be read.
[[nodiscard]] WeekOrder week_order(const OrderRecord& order, const Plan* plan, const WeekOrderOptions& options);

struct WeekTextOptions {
  bool color = false;
  int width = 80;
};

class WeekPage;

class WeekReport {
 public:
  // More sheets than this make no page: then it has none, and says so.
  static constexpr std::size_t most_sheets = 200;

  // Days whose lists are wanted, the first and the last, as day_key has them.
  struct Days {
    std::string first;
    std::string last;
  };
  // Without days, orders of more of them than this are an export, and no week to load for: then no day has lists.
  static constexpr std::size_t most_days = 14;
  explicit WeekReport(Days days = {}) : days_(std::move(days)) {}

  void add(WeekOrder order);
  // An order whose id another had before it.
  void note_twice(std::string id, std::string where) { twice_.emplace_back(std::move(id), std::move(where)); }

  [[nodiscard]] std::string text(const WeekTextOptions& options) const;
  // One self-contained page, the sheets of the orders behind the report.
  [[nodiscard]] std::string html() const;

 private:
  struct Truck {  // of one crew on one day
    std::string date;
    std::string crew;
    std::uint64_t orders = 0;
    std::uint64_t holds = 0;
    std::vector<LoadItem> load;
  };
  struct Wanting {
    std::string name;
    std::string crew;
  };
  struct Wanted {  // one scarce thing on one day
    std::string date;
    std::string thing;
    std::vector<Wanting> orders;
  };

  void write(WeekPage& page) const;
  void write_missing_sheets(WeekPage& page) const;
  void write_twice(WeekPage& page) const;
  void write_glance(WeekPage& page) const;
  void write_orders(WeekPage& page, WeekEnd end, std::string_view word) const;
  void write_reasons(WeekPage& page, WeekEnd end, std::string_view word) const;
  void write_troubled(WeekPage& page) const;
  void write_entries(WeekPage& page, WeekEnd end) const;
  void write_questions(WeekPage& page) const;
  void write_on_site(WeekPage& page) const;
  void write_go(WeekPage& page) const;
  void write_remarks(WeekPage& page) const;
  void write_scarce(WeekPage& page) const;
  void write_load(WeekPage& page) const;
  void write_undated(WeekPage& page) const;
  void write_truck(WeekPage& page, const Truck& truck) const;
  using Saying = std::pair<std::string_view, std::string>;  // "Why", and why
  [[nodiscard]] static std::vector<Saying> sayings_of_refusal(const WeekOrder& order);
  [[nodiscard]] std::vector<Saying> sayings_of_hold(const WeekOrder& order) const;
  // What fewest orders have is what is particular to one.
  [[nodiscard]] const WeekReason& particular(const WeekOrder& order) const;
  [[nodiscard]] std::uint64_t count(WeekEnd end) const { return counts_[static_cast<std::size_t>(end)]; }
  [[nodiscard]] std::uint64_t holds() const { return count(WeekEnd::office) + count(WeekEnd::ready); }
  [[nodiscard]] std::vector<const Truck*> trucks_by_day() const;
  // Of the orders that something is to be loaded for, each day once.
  [[nodiscard]] std::vector<std::string_view> days_to_load_for() const;
  [[nodiscard]] bool lists_days() const { return !days_.first.empty() || days_to_load_for().size() <= most_days; }
  [[nodiscard]] bool is_listed(std::string_view day) const {
    return days_.first.empty() || (day >= days_.first && day <= days_.last);
  }

  Days days_;
  std::array<std::uint64_t, 5> counts_{};
  std::array<std::uint64_t, finding_codes.size()> holds_by_code_{};
  std::vector<WeekOrder> troubled_;                           // all but those that go, in order
  std::vector<std::string> go_;                               // the first of those that go
  std::vector<std::pair<std::string, std::string>> remarks_;  // order, remark
  std::vector<std::pair<std::string, std::string>> twice_;    // id, where
  std::vector<Truck> trucks_;
  std::map<std::pair<std::string, std::string>, std::size_t>
      truck_of_;  // by day and crew, as week_days.hpp compares them
  std::vector<Wanted> wanted_;
  std::map<std::pair<std::string, std::string>, std::size_t> wanted_of_;
  std::string sheets_;
  std::size_t sheet_count_ = 0;
};

}  // namespace mainbore::report
