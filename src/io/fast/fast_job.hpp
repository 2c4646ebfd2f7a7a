// Jobs read at speed: one JSON object a text, many texts one after the other.
//
// It reads what read_job() would read, and gives the same job; whatever it is not sure of it leaves to read_job(), so
// that there is one wording of errors and one judge of what is an error. A differential test holds the two together.
//
// The field table alone says what the keys and values of a job are. What makes it fast: the members of an object are
// looked for in the order in which the last job had them, and what a spelling such as "8 in" means is remembered.
//
//     FastJobReader reader(catalog);
//     Job* const job = reader.read(line);
//     if (job == nullptr) { const JobFile read = read_job(line, ...); ... }
//
// Exports say the same of one main and tap over and over. What an order says of them is had before it is read:
//
//     reader.open(line);
//     if (const auto written = reader.facts()) { ... an order with the same facts is known: written->id ... }
//     Job* const job = reader.read();
#pragma once

#include <cstddef>
#include <memory>
#include <optional>
#include <string_view>

#include "mainbore/catalog.hpp"
#include "mainbore/job.hpp"

namespace mainbore::io {

class FastJobReader {
 public:
  // Bytes behind the text that must be readable, whatever is in them.
  static constexpr std::size_t room_behind = 64;

  // The catalog must outlive the reader. One reader a thread.
  explicit FastJobReader(const Catalog& catalog);
  FastJobReader(FastJobReader&&) noexcept;
  FastJobReader& operator=(FastJobReader&&) noexcept;
  ~FastJobReader();

  // The job of the text, which is the reader's until the next text and may be moved from; nothing: ask read_job().
  [[nodiscard]] Job* read(std::string_view text);

  // The same in steps. The text must outlive them.
  void open(std::string_view text);
  [[nodiscard]] Job* read();

  // The text without the values of what only names the order (JobField::names_order): where read() takes one text, it
  // takes every other with the same facts, and both are the same job but for those values. Says nothing of a text that it
  // is not sure of. Good until the next text.
  struct Facts {
    std::string_view written;
    std::string_view id;  // as Job::id
  };
  [[nodiscard]] std::optional<Facts> facts();

 private:
  class Reader;
  std::unique_ptr<Reader> reader_;
};

}  // namespace mainbore::io
