// Figures whose unit is a word: turns and threads.
#pragma once

#include <optional>
#include <string>

#include "mainbore/language.hpp"
#include "mainbore/measure.hpp"

namespace mainbore {

// "3-3/4 turns", in quarters.
[[nodiscard]] std::string turns_in_words(double turns, Language language, std::optional<Toward> toward = std::nullopt);
// As format_measure has it, with the unit in the reader's language.
void append_in_words(std::string& out, const Measure& measure, Audience audience,
                     std::optional<Toward> toward = std::nullopt);

}  // namespace mainbore
