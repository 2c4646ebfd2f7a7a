// Terms that stand inside sentences: materials, methods, things near a tap, what is on the truck. They are facts of tables
// and checks, known by their English.
#pragma once

#include <string_view>

#include "mainbore/language.hpp"

namespace mainbore::words {

// Where a language has no term of its own (a name, a class, a thread), the English one.
[[nodiscard]] std::string_view term(std::string_view english, Language language);

// A fact of a job by its path ("service.clock"), as a plan tells what it assumes.
[[nodiscard]] std::string_view fact(std::string_view path, Language language);

}  // namespace mainbore::words
