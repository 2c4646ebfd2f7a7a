#include "cli/files_read.hpp"

#include <fcntl.h>
#include <sys/stat.h>
#include <unistd.h>

#include <algorithm>
#include <cerrno>
#include <cstring>
#include <utility>

#include "cli/console.hpp"

namespace mainbore::cli {

std::optional<FileIdentity> regular_file(int descriptor) {
  struct stat status {};
  if (::fstat(descriptor, &status) != 0 || !S_ISREG(status.st_mode)) return std::nullopt;
  return FileIdentity{status.st_dev, status.st_ino};
}

void FilesRead::add(const std::optional<FileIdentity>& file, std::string name) {
  if (file && name_of(*file) == nullptr) files_.push_back({*file, std::move(name)});
}

const std::string* FilesRead::name_of(const FileIdentity& file) const {
  const auto found = std::find_if(files_.begin(), files_.end(), [&](const Entry& entry) { return entry.file == file; });
  return found == files_.end() ? nullptr : &found->name;
}

InputFile::InputFile(const std::string& path, FilesRead& list) : path_(path) {
  do {
    descriptor_ = ::open(path.c_str(), O_RDONLY | O_NOCTTY | O_CLOEXEC);
  } while (descriptor_ < 0 && errno == EINTR);
  const auto refuse = [&](const char* why) {
    throw Stop(exit_no_input, "cannot open " + shown_name(path) + ": " + why);
  };
  if (descriptor_ < 0) refuse(std::strerror(errno));
  struct stat status {};
  if (::fstat(descriptor_, &status) == 0 && S_ISDIR(status.st_mode)) {
    ::close(descriptor_);
    refuse("it is a directory");
  }
  list.add(regular_file(descriptor_), path);
}

InputFile::~InputFile() { ::close(descriptor_); }

std::size_t InputFile::read(char* to, std::size_t room) {
  for (;;) {
    const ssize_t got = ::read(descriptor_, to, room);
    if (got >= 0) return static_cast<std::size_t>(got);
    if (errno != EINTR) {
      throw Stop(exit_no_input, "cannot read " + shown_name(path_) + ": " + std::strerror(errno));
    }
  }
}

}  // namespace mainbore::cli
