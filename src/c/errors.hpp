// The border: no exception leaves the library, and a result is the caller's to free.
#pragma once

#include <exception>
#include <new>
#include <span>
#include <string>
#include <string_view>

#include "mainbore.h"
#include "mainbore/diagnostic.hpp"

namespace mainbore::c {

// A copy that mainbore_free() frees; nullptr where there is no memory.
[[nodiscard]] char* handed_out(std::string_view text) noexcept;

// Every fault as JSON, see mainbore.h.
[[nodiscard]] std::string faults_to_json(std::span<const Diagnostic> faults);

// A fault that is none of a text's: of the call, or of the library. nullptr where there is no memory.
[[nodiscard]] char* told(std::string_view code, std::string_view message) noexcept;

// The status that `call` returns; what it throws is a fault of the library, or a want of memory.
template <class Call>
int guarded(char** result, Call call) noexcept {
  try {
    return call();
  } catch (const std::bad_alloc&) {
    if (result != nullptr) *result = nullptr;
  } catch (const std::exception& fault) {
    if (result != nullptr) *result = told("order.internal-error", fault.what());
  } catch (...) {
    if (result != nullptr) *result = told("order.internal-error", "an exception of another kind");
  }
  return MAINBORE_INTERNAL;
}

// A call that makes no sense. Says which part of it.
[[nodiscard]] int refused(char** result, std::string_view why) noexcept;

}  // namespace mainbore::c
