#include "cli/result_writer.hpp"

#include <fcntl.h>
#include <sys/stat.h>
#include <unistd.h>

#include <cerrno>
#include <charconv>
#include <cstring>
#include <ostream>
#include <system_error>

namespace mainbore::cli {
namespace {

[[noreturn]] void cannot_write(const std::string& name, const std::string& why) {
  throw Stop(exit_no_output, "cannot write " + name + ": " + why);
}

[[noreturn]] void write_failed(const std::string& name, int error) {
  if (error == EPIPE) throw Stop(exit_no_output, "");  // the reader went away: it knows
  cannot_write(name, error == 0 ? "the write failed" : std::strerror(error));
}

bool to_standard_output(const std::string& output) { return output.empty() || output == "-"; }

// The descriptor that a name of the system stands for. Opened by its name, a file behind it would be written from its
// beginning once more.
std::optional<int> descriptor_named(std::string_view path) {
  if (path == "/dev/stdin") return STDIN_FILENO;
  if (path == "/dev/stdout") return STDOUT_FILENO;
  if (path == "/dev/stderr") return STDERR_FILENO;
  for (const std::string_view folder : {"/dev/fd/", "/proc/self/fd/"}) {
    if (!path.starts_with(folder)) continue;
    const std::string_view digits = path.substr(folder.size());
    int number = -1;
    const auto [end, error] = std::from_chars(digits.data(), digits.data() + digits.size(), number);
    if (error == std::errc() && end == digits.data() + digits.size() && number >= 0) return number;
  }
  return std::nullopt;
}

}  // namespace

ResultWriter::ResultWriter(Console& console, Replacement::Over over) : console_(console), over_(over) {
  try {
    open();
  } catch (const std::system_error& error) {
    cannot_write(shown_name(console.output), error.code().message());
  }
  refuse_what_was_read();
}

void ResultWriter::open() {
  const std::string& path = console_.output;
  if (to_standard_output(path)) return;
  if (const auto descriptor = descriptor_named(path)) {
    if (*descriptor == STDOUT_FILENO) return;
    open_already_ = std::make_unique<Descriptor>(::fcntl(*descriptor, F_DUPFD_CLOEXEC, 3));
  } else if (struct stat there{}; ::stat(path.c_str(), &there) != 0) {
    const int error = errno;
    if (::lstat(path.c_str(), &there) == 0 && S_ISLNK(there.st_mode)) {
      cannot_write(shown_name(path), "it is a link to a file that is not there; name that file");
    }
    if (error != ENOENT) throw std::system_error(error, std::generic_category());
    replacement_.emplace(path);
  } else if (S_ISREG(there.st_mode)) {
    replacement_.emplace(path);
  } else {
    open_already_ = std::make_unique<Descriptor>(::open(path.c_str(), O_WRONLY | O_NOCTTY | O_CLOEXEC));
  }
  if (open_already_ && open_already_->number() < 0) throw std::system_error(errno, std::generic_category());
}

void ResultWriter::refuse_what_was_read() const {
  const bool to_file = replacement_ || open_already_;
  const auto target = replacement_    ? replacement_->replaced()
                      : open_already_ ? regular_file(open_already_->number())
                                      : console_.environment.out_file;
  const std::string* const read = target ? console_.files_read.name_of(*target) : nullptr;
  if (read == nullptr) return;
  if (!to_file) {
    throw Stop(exit_usage, "standard output goes to " + shown_name(*read) + ", which is read: send it to another file");
  }
  const std::string named = shown_name(console_.output);
  std::string what = shown_name(*read);
  if (*read == "-") what = named + ", which is read on standard input";
  else if (*read != console_.output) what += " (" + named + " is the same file), which is read";
  else what += ", which is read";
  throw Stop(exit_usage, "the result would replace " + what + ": give -o another name");
}

void ResultWriter::write(std::string_view text) {
  if (replacement_) {
    try {
      replacement_->write(text);
    } catch (const std::system_error& error) {
      write_failed(shown_name(console_.output), error.code().value());
    }
  } else if (open_already_) {
    if (!open_already_->write(text)) write_failed(shown_name(console_.output), errno);
  } else {
    errno = 0;
    console_.out.write(text.data(), static_cast<std::streamsize>(text.size()));
    console_.out.flush();
    if (!console_.out) write_failed("standard output", errno);
  }
}

void ResultWriter::finish() {
  if (!replacement_) return;
  refuse_what_was_read();
  try {
    replacement_->commit(over_);
  } catch (const std::system_error& error) {
    cannot_write(shown_name(console_.output), error.code().message());
  }
}

void write_result(std::string_view text, Console& console) {
  ResultWriter result(console);
  result.write(text);
  result.finish();
}

std::string unchanged_output(const std::string& output) {
  struct stat there {};
  if (to_standard_output(output) || descriptor_named(output)) return {};
  if (::stat(output.c_str(), &there) != 0 || !S_ISREG(there.st_mode)) return {};
  return shown_name(output) + " was not changed";
}

}  // namespace mainbore::cli
