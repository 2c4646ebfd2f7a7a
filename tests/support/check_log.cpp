#include "support/check_log.hpp"

#include <algorithm>
#include <cstdlib>
#include <fstream>

#define CATCH_CONFIG_EXTERNAL_INTERFACES
#include "support/catch.hpp"

namespace mainbore::test {
namespace {

#if __has_include(<catch2/catch_all.hpp>)
using Listener = Catch::EventListenerBase;
using Ended = void;
#else
using Listener = Catch::TestEventListenerBase;
using Ended = bool;
#endif

class CheckLog : public Listener {
 public:
  using Listener::Listener;

  void testCaseStarting(const Catch::TestCaseInfo& info) override {
    Listener::testCaseStarting(info);
    test_ = info.name;
  }

  Ended assertionEnded(const Catch::AssertionStats& stats) override {
    const ReferenceRead read = take_last_read();
    const char* const path = std::getenv("MAINBORE_CHECK_LOG");
    if (path != nullptr && !read.where.empty() && stats.assertionResult.hasExpression()) {
      std::string expression = stats.assertionResult.getExpandedExpression();
      std::replace(expression.begin(), expression.end(), '\n', ' ');
      std::ofstream(path, std::ios::app) << read.where << '\t' << read.column << '\t' << test_ << '\t' << expression
                                         << '\n';
    }
    return static_cast<Ended>(true);
  }

 private:
  std::string test_;
};

}  // namespace

CATCH_REGISTER_LISTENER(CheckLog)

}  // namespace mainbore::test
