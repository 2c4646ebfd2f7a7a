// Which pipes the words of a class mean: the same for an order's card and for a row of a utility's rules.
#pragma once

#include <vector>

#include "mainbore/catalog.hpp"

namespace mainbore {

// Whether a word of a class means this pipe. A class with a number alone may be a pressure class; a bare number any of the
// kinds that are told by a pressure.
[[nodiscard]] bool means(const ClassWord& word, const std::vector<ClassWord>& names);

// Of several standards the pipe is made to one.
[[nodiscard]] bool of_standard(const Pipe& pipe, const ClassWords& words);

// A compound that is not named is never taken for the stronger one: "DR 11" is not "DR 11 PE4710".
[[nodiscard]] bool compound_left_out(const ClassWords& words, const Pipe& pipe);

// Whether each word is one of these names.
[[nodiscard]] bool of_class(const ClassWords& words, const std::vector<ClassWord>& names);

// All of the above.
[[nodiscard]] bool means_pipe(const ClassWords& words, const Pipe& pipe);

}  // namespace mainbore
