// Plans the orders of a piece, one after the other. One planner a thread.
#pragma once

#include <optional>
#include <span>
#include <string>
#include <string_view>

#include "batch/batch.hpp"
#include "batch/decision_memory.hpp"
#include "batch/piece.hpp"
#include "io/fast/fast_job.hpp"
#include "io/orders/order_members.hpp"
#include "io/orders/order_table.hpp"
#include "io/orders/verdict_record.hpp"
#include "mainbore/order_file.hpp"
#include "mainbore/planner.hpp"

namespace mainbore::batch {

class OrderPlanner {
 public:
  // What is passed by reference must outlive the planner. `table`: of a table of orders, copied.
  OrderPlanner(const Planner& planner, const BatchOptions& options, const std::string& file_name, InputFormat in,
               const io::OrderTable* table, std::span<const std::string> kept);

  void plan(Piece& piece);
  // Which names of the map and of --keep the orders had; of a table nothing.
  [[nodiscard]] const io::MemberRows::Met& met() const;

 private:
  void plan_text(Piece& piece, const OrderText& text);
  void plan_members(Piece& piece, const OrderText& text, std::string_view json);
  void plan_job_text(Piece& piece, const OrderText& text, std::string_view json);
  void finish_broken(Piece& piece, const OrderText& text);
  void plan_row(Piece& piece, const io::CsvRecord& row);
  [[nodiscard]] bool is_asked() { return remembers_ && memory_.is_asked(); }
  bool recall(Piece& piece, std::string_view facts);
  void finish(Piece& piece, Job* job);
  void plan_order(Piece& piece, Job& job);
  void write(Piece& piece, const io::Decision* decision, const Plan* plan = nullptr);

  const Planner& planner_;
  const BatchOptions& options_;
  const std::string& file_name_;
  io::RecordOptions record_;
  io::FastJobReader reader_;
  std::optional<io::OrderTable> table_;
  std::optional<io::MemberRows> rows_;        // of members that a map names, and of features
  std::optional<io::JobMembers> members_;     // of jobs with members that are carried on
  const io::FeatureText* feature_ = nullptr;  // of the order at hand
  OrderRecord order_;
  io::Decision decision_;  // the last that was made
  bool remembers_ = false;
  bool is_new_ = false;  // the order at hand was looked for, and not found
  DecisionMemory memory_;
};

}  // namespace mainbore::batch
