#include "cli/signals.hpp"

#include <unistd.h>

#include <algorithm>
#include <array>
#include <atomic>
#include <cerrno>
#include <cstddef>
#include <cstring>

namespace mainbore::cli {
namespace {

constexpr std::array ending = {SIGHUP, SIGINT, SIGQUIT, SIGPIPE, SIGTERM, SIGXCPU};

// A handler may call little and allocate nothing, so all it needs stands here.
struct Doomed {
  std::atomic<bool> set = false;
  int folder = -1;
  std::array<char, 64> name{};
  std::array<char, 512> message{};
  std::size_t message_size = 0;
  std::array<struct sigaction, ending.size()> before{};
};
Doomed doomed;
static_assert(std::atomic<bool>::is_always_lock_free);

sigset_t ending_signals() {
  sigset_t set;
  sigemptyset(&set);
  for (const int signal : ending) sigaddset(&set, signal);
  return set;
}

extern "C" void remove_and_end(int signal) {
  const int kept = errno;
  // Of several threads one removes it. Where it has its final name already, there is nothing to remove or to say.
  if (doomed.set.exchange(false) && ::unlinkat(doomed.folder, doomed.name.data(), 0) == 0) {
    [[maybe_unused]] const ssize_t told = ::write(STDERR_FILENO, doomed.message.data(), doomed.message_size);
  }
  errno = kept;
  ::signal(signal, SIG_DFL);
  ::raise(signal);  // comes when this returns, and ends the program as if it had never been caught
}

}  // namespace

SignalsHeld::SignalsHeld() {
  sigset_t held = ending_signals();
  sigaddset(&held, SIGTSTP);
  pthread_sigmask(SIG_BLOCK, &held, &before_);
}

SignalsHeld::~SignalsHeld() { pthread_sigmask(SIG_SETMASK, &before_, nullptr); }

void remove_on_signal(int folder, const std::string& name, const std::string& message) {
  doomed.folder = folder;
  std::strncpy(doomed.name.data(), name.c_str(), doomed.name.size() - 1);
  doomed.message_size = std::min(message.size(), doomed.message.size());
  std::copy_n(message.data(), doomed.message_size, doomed.message.data());
  doomed.set = true;
  struct sigaction action {};
  action.sa_handler = remove_and_end;
  action.sa_mask = ending_signals();
  for (std::size_t i = 0; i < ending.size(); ++i) {
    sigaction(ending[i], nullptr, &doomed.before[i]);
    if (doomed.before[i].sa_handler == SIG_DFL) sigaction(ending[i], &action, nullptr);
  }
}

void keep_on_signal() {
  if (!doomed.set.exchange(false)) return;
  for (std::size_t i = 0; i < ending.size(); ++i) sigaction(ending[i], &doomed.before[i], nullptr);
}

}  // namespace mainbore::cli
