#include "batch/pipeline.hpp"

#include <tbb/global_control.h>
#include <tbb/info.h>
#include <tbb/parallel_pipeline.h>
#include <tbb/task_arena.h>

#include <memory>
#include <mutex>
#include <optional>
#include <utility>
#include <vector>

namespace mainbore::batch {
namespace {

// Things that are used in turn; one is made where none is free. The stock owns them all, those handed out too: a run that
// ends by an exception leaves some on their way.
template <class T>
class Stock {
 public:
  template <class Make>
  T* take(Make make) {
    {
      const std::scoped_lock lock(mutex_);
      if (!free_.empty()) {
        T* const one = free_.back();
        free_.pop_back();
        return one;
      }
    }
    auto made = std::make_unique<T>(make());
    const std::scoped_lock lock(mutex_);
    owned_.push_back(std::move(made));
    return owned_.back().get();
  }
  void put_back(T* one) {
    const std::scoped_lock lock(mutex_);
    free_.push_back(one);
  }

 private:
  std::mutex mutex_;
  std::vector<std::unique_ptr<T>> owned_;
  std::vector<T*> free_;
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
  Stock<Piece> pieces;
  Stock<Work> workers;
  const auto threads = static_cast<std::size_t>(jobs);
  // More threads than cores only where they are asked for.
  std::optional<tbb::global_control> more;
  if (jobs > tbb::info::default_concurrency()) more.emplace(tbb::global_control::max_allowed_parallelism, threads);
  tbb::task_arena arena(jobs);
  const auto taking = tbb::make_filter<void, Piece*>(
      tbb::filter_mode::serial_in_order, [&](tbb::flow_control& flow) -> Piece* {
        Piece* const piece = pieces.take([] { return Piece(); });
        if (take(*piece)) return piece;
        flow.stop();
        return nullptr;
      });
  const auto working = tbb::make_filter<Piece*, Piece*>(tbb::filter_mode::parallel, [&](Piece* piece) {
    Work* const work = workers.take(make_work);
    (*work)(*piece);
    workers.put_back(work);
    return piece;
  });
  const auto giving = tbb::make_filter<Piece*, void>(tbb::filter_mode::serial_in_order, [&](Piece* piece) {
    give(*piece);
    piece->clear();
    pieces.put_back(piece);
  });
  arena.execute([&] { tbb::parallel_pipeline(2 * threads, taking & working & giving); });
}

}  // namespace mainbore::batch
