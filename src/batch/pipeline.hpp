// Pieces worked on by several threads, taken and given in order.
#pragma once

#include <functional>

#include "batch/piece.hpp"

namespace mainbore::batch {

using Take = std::function<bool(Piece&)>;  // fills the piece; false: there is no more
using Work = std::function<void(Piece&)>;
using Give = std::function<void(Piece&)>;

// Takes pieces one at a time, works on up to `jobs` at once, gives them one at a time in the order they were taken.
// `make_work` is called once for each thread that works, and what it returns is never used by two at once. Holds at most
// 2 jobs + 1 pieces. With one job nothing but this thread is used. What any of them throws ends the run and is thrown on.
void run_in_order(int jobs, const Take& take, const std::function<Work()>& make_work, const Give& give);

}  // namespace mainbore::batch
