// What people type, in their language, as a job has it; and the other way round.
#pragma once

#include <cstdint>
#include <optional>
#include <string>
#include <string_view>

#include "io/job/job_fields.hpp"
#include "mainbore/catalog.hpp"
#include "mainbore/diagnostic.hpp"
#include "mainbore/language.hpp"

namespace mainbore::interview {

// What a line may say besides a value.
enum class Said : std::uint8_t { value, blank, not_known, help, back, stop };
[[nodiscard]] Said said_in(std::string_view answer, Language language);
[[nodiscard]] std::optional<bool> yes_or_no(std::string_view answer, Language language);
// That a list has no more, and that there is nothing to write.
[[nodiscard]] bool says_nothing_more(std::string_view answer, Language language);
[[nodiscard]] bool says_no_text(std::string_view answer, Language language);

// As it is compared: small letters, without blanks, hyphens, dots and the accents of Spanish.
[[nodiscard]] std::string folded(std::string_view text);

// The answer in the words and units of a job: "hierro dúctil" is "ductile iron", "6 pulg" is "6 in". What is neither stays.
[[nodiscard]] std::string as_a_job_has_it(std::string_view answer, const io::JobField& field, Language language);
// A value of a job as people read it: "ductile iron" is "hierro dúctil".
[[nodiscard]] std::string as_people_say(std::string_view value, const io::JobField& field, Language language);

// What may be answered: "a pressure with its unit, such as ...". Empty for a text.
[[nodiscard]] std::string allowed(const io::JobField& field, const Catalog& catalog, Language language);

// Why an answer cannot be taken, and what to do about it, a line each.
struct Refusal {
  std::string message;
  std::string help;
};
[[nodiscard]] Refusal refusal_of(const Diagnostic& fault, std::string_view answer, const io::JobField& field,
                                 const Catalog& catalog, Language language);

}  // namespace mainbore::interview
