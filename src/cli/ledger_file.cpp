#include "cli/ledger_file.hpp"

#include <fcntl.h>
#include <sys/file.h>
#include <sys/stat.h>
#include <unistd.h>

#include <cerrno>
#include <cstring>
#include <filesystem>
#include <iostream>

#include "cli/signals.hpp"

namespace mainbore::cli {
namespace {

[[noreturn]] void refuse(const std::string& path, const std::string& why, ExitStatus status = exit_no_output) {
  throw Stop(status, "cannot append to " + shown_name(path) + ": " + why);
}

bool is_locked(int descriptor) {
  while (::flock(descriptor, LOCK_EX) != 0) {
    if (errno != EINTR) return false;
  }
  return true;
}

// The name may have come to another file while this one was waited for.
bool is_still_named(const std::string& path, int descriptor) {
  struct stat named {};
  struct stat opened {};
  if (::stat(path.c_str(), &named) != 0) {
    if (errno == ENOENT) return false;
    refuse(path, std::strerror(errno));
  }
  if (::fstat(descriptor, &opened) != 0) refuse(path, std::strerror(errno));
  return named.st_dev == opened.st_dev && named.st_ino == opened.st_ino;
}

// To the disk. Not every file system can; one that can and fails has lost what was written.
bool is_kept(int descriptor) {
  while (::fsync(descriptor) != 0) {
    if (errno == EINTR) continue;
    return errno == EINVAL || errno == ENOTSUP;
  }
  return true;
}

// Of a file that was made: its folder, where that may be read.
bool is_name_kept(const std::string& path) {
  const std::filesystem::path folder = std::filesystem::path(path).parent_path();
  const Descriptor opened(::open(folder.empty() ? "." : folder.c_str(), O_RDONLY | O_DIRECTORY | O_CLOEXEC));
  return opened.number() < 0 || is_kept(opened.number());
}

std::string order_of(const TapRecord& record) {
  const std::string& id = record.planned.job.id;
  return id.empty() ? std::string(record.readings.text(RecordKey::order)) : id;
}

}  // namespace

LedgerFile::LedgerFile(const std::string& path, const TapRecord& record, const Catalog& catalog, Console& console)
    : path_(path),
      console_(console),
      record_(record),
      ledger_(order_of(record), record.readings.tap_number(), shown_name(path), catalog) {
  open();
  read();
}

void LedgerFile::open() {
  for (;;) {
    int descriptor = -1;
    do {
      descriptor = ::open(path_.c_str(), O_RDWR | O_APPEND | O_CREAT | O_NOCTTY | O_NONBLOCK | O_CLOEXEC, 0666);
    } while (descriptor < 0 && errno == EINTR);
    if (descriptor < 0) refuse(path_, std::strerror(errno));
    file_.reset(descriptor);
    const auto identity = regular_file(descriptor);
    if (!identity) refuse(path_, "it is no regular file");
    if (console_.files_read.name_of(*identity) != nullptr) refuse(path_, "it is read by this command too", exit_usage);
    if (!is_locked(descriptor)) refuse(path_, std::string("it cannot be locked: ") + std::strerror(errno));
    if (!is_still_named(path_, descriptor)) continue;
    console_.files_read.add(identity, path_);  // no result replaces it
    return;
  }
}

void LedgerFile::read() {
  std::string block(std::size_t{1} << 18, '\0');
  for (;;) {
    const ssize_t got = ::read(file_.number(), block.data(), block.size());
    if (got < 0 && errno == EINTR) continue;
    if (got < 0) refuse(path_, std::strerror(errno), exit_no_input);
    if (got == 0) break;
    ledger_.add(std::string_view(block).substr(0, static_cast<std::size_t>(got)));
    if (ledger_.size > longest_ledger) refuse(path_, "it is too long; begin another");
  }
  ledger_.end();
  size_ = ledger_.size;
  stop_on(ledger_.diagnostics, "nothing is appended", console_);
}

// What stands behind the last line end.
void LedgerFile::mend_end() {
  if (!ledger_.torn) return;
  if (ledger_.torn_is_whole) {
    if (!file_.write("\n")) refuse(path_, std::strerror(errno));
    ++size_;
    ledger_.revisions += ledger_.torn_is_of_tap ? 1 : 0;
    return;
  }
  if (::ftruncate(file_.number(), static_cast<off_t>(ledger_.whole)) != 0) refuse(path_, std::strerror(errno));
  size_ = ledger_.whole;
  console_.err << "mainbore: " << shown_name(path_)
               << ": a record that was never finished is taken away from its end\n";
}

int LedgerFile::append(UnitSystem units) {
  const SignalsHeld held;
  mend_end();
  const int revision = ledger_.revisions + 1;
  if (!file_.write(ledger_line(record_, revision, units))) {
    const int error = errno;
    take_back();
    refuse(path_, std::string(std::strerror(error)) + "; it is as it was");
  }
  if (!is_kept(file_.number()) || (size_ == 0 && !is_name_kept(path_))) {
    const int error = errno;
    take_back();
    refuse(path_, std::string(std::strerror(error)) + "; it is as it was");
  }
  return revision;
}

void LedgerFile::take_back() const {
  // Where even this fails, the next writer takes the unfinished line away.
  if (::ftruncate(file_.number(), static_cast<off_t>(size_)) != 0) errno = 0;
}

}  // namespace mainbore::cli
