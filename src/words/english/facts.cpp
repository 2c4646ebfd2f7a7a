// Facts of a job that a plan assumes, as a crew says them.
#include <algorithm>
#include <iterator>

#include "words/tables.hpp"

namespace mainbore::words::english {
namespace {

struct Fact {
  std::string_view path;
  std::string_view words;
};

constexpr Fact facts[] = {
    {"machine", "machine"},
    {"machine.extensions", "chain extensions"},
    {"main.class", "class"},
    {"main.pressure_low", "lowest line pressure"},
    {"main.rating", "pipe rating"},
    {"main.surge", "surge"},
    {"main.temperature", "pipe temperature"},
    {"main.wall", "least wall"},
    {"service.clock", "clock position"},
    {"service.line.rise", "rise to the customer"},
    {"service.meter", "meter"},
    {"service.saddle_rating", "saddle's mark"},
    {"service.stop_rating", "stop's mark"},
    {"service.thread", "thread"},
};

}  // namespace

std::string_view fact(std::string_view path) {
  const auto* const found =
      std::find_if(std::begin(facts), std::end(facts), [&](const Fact& one) { return one.path == path; });
  return found == std::end(facts) ? path : found->words;
}

}  // namespace mainbore::words::english
