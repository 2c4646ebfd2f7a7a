#include "cli/result_writer.hpp"

#include <cerrno>
#include <cstring>
#include <filesystem>
#include <ostream>

namespace mainbore::cli {
namespace {

namespace fs = std::filesystem;

constexpr std::string_view part_suffix = ".part";

[[noreturn]] void cannot_write(const std::string& name, const std::string& why) {
  throw Stop(exit_no_output, "cannot write " + name + ": " + why);
}
std::string reason() { return errno == 0 ? "the write failed" : std::strerror(errno); }

// The file that a result becomes; empty where there is none: devices and pipes are written to.
std::string target_of(const std::string& path) {
  if (path.empty() || path == "-") return {};
  std::error_code error;
  if (fs::exists(path, error) && !fs::is_regular_file(path, error)) return {};
  return fs::is_symlink(path, error) ? fs::canonical(path, error).string() : path;
}

}  // namespace

ResultWriter::ResultWriter(const std::string& path, Console& console) : out_(&console.out), name_("standard output") {
  if (path.empty() || path == "-") return;
  name_ = path;
  target_ = target_of(path);
  const std::string opened = target_.empty() ? path : target_ + std::string(part_suffix);
  errno = 0;
  file_.open(opened, std::ios::binary | std::ios::trunc);
  if (!file_) {
    target_.clear();
    cannot_write(name_, reason());
  }
  out_ = &file_;
}

ResultWriter::~ResultWriter() {
  if (target_.empty()) return;
  file_.close();
  std::error_code error;
  fs::remove(target_ + std::string(part_suffix), error);
}

void ResultWriter::write(std::string_view text) {
  errno = 0;
  out_->write(text.data(), static_cast<std::streamsize>(text.size()));
  out_->flush();
  if (*out_) return;
  if (errno == EPIPE) throw Stop(exit_no_output, "");  // the reader went away: it knows
  cannot_write(name_, reason());
}

void ResultWriter::finish() {
  if (target_.empty()) return;
  errno = 0;
  file_.close();
  if (!file_) cannot_write(name_, reason());
  std::error_code error;
  fs::rename(target_ + std::string(part_suffix), target_, error);
  if (error) cannot_write(name_, error.message());
  target_.clear();
}

bool replaces(const std::string& output, const std::string& file) {
  const std::string target = target_of(output);
  std::error_code error;
  return !target.empty() &&
         (fs::equivalent(target, file, error) || fs::equivalent(target + std::string(part_suffix), file, error));
}

}  // namespace mainbore::cli
