#include "batch/pipeline.hpp"

#include <condition_variable>
#include <cstdint>
#include <exception>
#include <map>
#include <memory>
#include <mutex>
#include <optional>
#include <system_error>
#include <thread>
#include <utility>
#include <vector>

namespace mainbore::batch {
namespace {

// Every thread takes a piece, works on it and hands it in; whoever hands in the piece that is due gives it, and those that
// were waiting for it.
class InOrder {
 public:
  InOrder(std::size_t most_pieces, const Take& take, const std::function<Work()>& make_work, const Give& give)
      : most_pieces_(most_pieces), take_(take), make_work_(make_work), give_(give) {}

  void run() {
    try {
      std::optional<Work> work;
      while (const auto taken = next()) {
        if (!work) work = make_work_();
        (*work)(*taken->piece);
        hand_in(*taken);
      }
    } catch (...) {
      stop(std::current_exception());
    }
  }
  void throw_on() const {
    if (fault_) std::rethrow_exception(fault_);
  }

 private:
  struct Taken {
    std::uint64_t number;
    Piece* piece;
  };

  // One thread at a time takes, and may wait for input; the others work and give meanwhile.
  std::optional<Taken> next() {
    const std::scoped_lock turn(taking_);
    Piece* const piece = free_piece();
    if (piece == nullptr) return std::nullopt;
    if (!take_(*piece)) {
      stop(nullptr);
      return std::nullopt;
    }
    return Taken{taken_++, piece};
  }

  // Waits until one is free; nullptr at the end.
  Piece* free_piece() {
    std::unique_lock lock(mutex_);
    freed_.wait(lock, [&] { return ended_ || !free_.empty() || owned_.size() < most_pieces_; });
    if (ended_) return nullptr;
    if (free_.empty()) {
      owned_.push_back(std::make_unique<Piece>());
      return owned_.back().get();
    }
    Piece* const piece = free_.back();
    free_.pop_back();
    return piece;
  }

  void hand_in(const Taken& taken) {
    std::unique_lock lock(mutex_);
    done_.emplace(taken.number, taken.piece);
    if (giving_) return;
    giving_ = true;
    for (auto due = done_.find(given_); due != done_.end() && !fault_; due = done_.find(++given_)) {
      Piece* const piece = due->second;
      done_.erase(due);
      lock.unlock();
      give_(*piece);  // what it throws ends the run, and nothing more is given
      piece->clear();
      lock.lock();
      free_.push_back(piece);
      freed_.notify_one();
    }
    giving_ = false;
  }

  void stop(std::exception_ptr fault) {
    const std::scoped_lock lock(mutex_);
    ended_ = true;
    if (fault && !fault_) fault_ = std::move(fault);
    freed_.notify_all();
  }

  const std::size_t most_pieces_;
  const Take& take_;
  const std::function<Work()>& make_work_;
  const Give& give_;

  std::mutex taking_;
  std::uint64_t taken_ = 0;

  std::mutex mutex_;  // of all that follows
  std::condition_variable freed_;
  std::vector<std::unique_ptr<Piece>> owned_;
  std::vector<Piece*> free_;
  std::map<std::uint64_t, Piece*> done_;
  std::uint64_t given_ = 0;
  bool giving_ = false;
  bool ended_ = false;
  std::exception_ptr fault_;
};

}  // namespace

void run_in_order(int jobs, const Take& take, const std::function<Work()>& make_work, const Give& give) {
  if (jobs <= 1) {
    const Work work = make_work();
    for (Piece piece; take(piece); piece.clear()) {
      work(piece);
      give(piece);
    }
    return;
  }
  const auto threads = static_cast<std::size_t>(jobs);
  InOrder run(2 * threads + 1, take, make_work, give);
  std::vector<std::thread> others;
  try {
    while (others.size() + 1 < threads) others.emplace_back([&] { run.run(); });
  } catch (const std::system_error&) {
    // Fewer threads than were asked for give the same result.
  }
  run.run();
  for (std::thread& other : others) other.join();
  run.throw_on();
}

}  // namespace mainbore::batch
