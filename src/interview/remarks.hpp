// What the planner would say at once to an answer: of a class that was never made in that size, of a reading that
// contradicts the record. The answer is kept; whoever gave it hears of it while the card is still in hand.
#pragma once

#include <string>
#include <vector>

#include "mainbore/job.hpp"
#include "mainbore/language.hpp"
#include "mainbore/planner.hpp"

namespace mainbore::interview {

// In the words of the findings. Empty as long as the main's material and size are not known.
[[nodiscard]] std::vector<std::string> remarks(Job job, const Planner& planner, Language language);

}  // namespace mainbore::interview
