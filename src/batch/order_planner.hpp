// Plans the orders of a piece, one after the other. One planner a thread.
#pragma once

#include <optional>
#include <span>
#include <string>
#include <string_view>

#include "batch/batch.hpp"
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
  // The job that was read, which may be moved from; nothing where the order cannot be read.
  Job* read_text(const Piece& piece, const OrderText& text);
  Job* read_members(const Piece& piece, const OrderText& text, std::string_view json);
  Job* read_job_text(const OrderText& text, std::string_view json);
  void finish(Piece& piece, Job* job);
  void plan_order(Piece& piece, Job& job);
  void write(Piece& piece, const Plan* plan);

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
};

}  // namespace mainbore::batch
