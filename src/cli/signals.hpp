// What a signal that ends the program must not leave behind.
#pragma once

#include <csignal>
#include <string>

namespace mainbore::cli {

// While it lives, an interrupt or a closed terminal waits: a file is written and renamed, or not begun.
class SignalsHeld {
 public:
  SignalsHeld();
  ~SignalsHeld();
  SignalsHeld(const SignalsHeld&) = delete;
  SignalsHeld& operator=(const SignalsHeld&) = delete;

 private:
  sigset_t before_{};
};

// While one is set, a signal that ends the program first removes the file and says `message` on standard error. Signals
// that were ignored stay ignored.
void remove_on_signal(int folder, const std::string& name, const std::string& message);
void keep_on_signal();

}  // namespace mainbore::cli
