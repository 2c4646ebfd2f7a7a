#include "cli/replacement.hpp"

#include <fcntl.h>
#include <sys/stat.h>
#include <unistd.h>

#include <cerrno>
#include <cstdio>
#include <filesystem>
#include <random>
#include <system_error>

#include "cli/console.hpp"
#include "cli/signals.hpp"

namespace mainbore::cli {
namespace {

namespace fs = std::filesystem;

[[noreturn]] void fail() { throw std::system_error(errno, std::generic_category()); }
[[noreturn]] void fail(int error) { throw std::system_error(error, std::generic_category()); }

// As short whatever the file is called, so that the longest name can be replaced too.
std::string unused_name() {
  std::random_device random;
  std::string name = ".mainbore-";
  for (int i = 0; i < 4; ++i) {
    for (unsigned value = random(), digit = 0; digit < 4; ++digit, value /= 16) name += "0123456789abcdef"[value % 16];
  }
  return name;
}

// The path with every link in it followed; the folder's part of it where there is no file yet.
fs::path real_path(const std::string& path) {
  std::error_code error;
  fs::path real = fs::canonical(path, error);
  if (!error) return real;
  const fs::path folder = fs::path(path).parent_path();
  return (folder.empty() ? fs::path(".") : folder) / fs::path(path).filename();
}

int open_folder(const fs::path& folder) {
  const int descriptor = ::open(folder.c_str(), O_RDONLY | O_DIRECTORY | O_CLOEXEC);
  if (descriptor < 0) fail();
  return descriptor;
}

// A link of the name is never followed, and a file of the name never opened.
int create(int folder, const std::string& name, mode_t mode) {
  return ::openat(folder, name.c_str(), O_WRONLY | O_CREAT | O_EXCL | O_NOFOLLOW | O_CLOEXEC, mode);
}

int create_beside(int folder, const std::string& name, std::string& made) {
  // Nobody else's eyes until it has the mode of the file it replaces; else as the user's mask says.
  struct stat old {};
  const mode_t mode = ::fstatat(folder, name.c_str(), &old, AT_SYMLINK_NOFOLLOW) == 0 ? 0600 : 0666;
  int descriptor = -1;
  for (int tries = 0; tries < 100 && descriptor < 0; ++tries) {
    made = unused_name();
    descriptor = create(folder, made, mode);
    if (descriptor < 0 && errno != EEXIST) break;
  }
  if (descriptor < 0) fail();
  return descriptor;
}

}  // namespace

Descriptor::~Descriptor() {
  if (number_ >= 0) ::close(number_);
}

void Descriptor::reset(int number) {
  if (number_ >= 0) ::close(number_);
  number_ = number;
}

bool Descriptor::write(std::string_view text) const {
  while (!text.empty()) {
    const ssize_t written = ::write(number_, text.data(), text.size());
    if (written >= 0) text.remove_prefix(static_cast<std::size_t>(written));
    else if (errno != EINTR) return false;
  }
  return true;
}

Replacement::Replacement(const std::string& path) : Replacement(real_path(path), shown_name(path)) {
  keep_mode_and_owner();
}

Replacement::Replacement(const fs::path& real, const std::string& shown)
    : name_(real.filename().string()), folder_(open_folder(real.parent_path())), file_(make(shown)) {}

int Replacement::make(const std::string& shown) {
  // A file that may not be written is not replaced either, though its folder would let it.
  if (::faccessat(folder_.number(), name_.c_str(), W_OK, AT_EACCESS) != 0 && errno != ENOENT) fail();
  const SignalsHeld held;
  const int descriptor = create_beside(folder_.number(), name_, made_);
  const std::string unchanged = replaced() ? "; " + shown + " was not changed" : std::string();
  remove_on_signal(folder_.number(), made_, "mainbore: stopped by a signal" + unchanged + '\n');
  return descriptor;
}

Replacement::~Replacement() {
  if (made_.empty()) return;
  ::unlinkat(folder_.number(), made_.c_str(), 0);
  keep_on_signal();
}

void Replacement::keep_mode_and_owner() const {
  struct stat old {};
  if (::fstatat(folder_.number(), name_.c_str(), &old, AT_SYMLINK_NOFOLLOW) != 0) return;
  const bool owned = ::fchown(file_.number(), old.st_uid, old.st_gid) == 0 ||
                     ::fchown(file_.number(), static_cast<uid_t>(-1), old.st_gid) == 0;
  mode_t mode = old.st_mode & 0777;
  // Where it has another group, that group may do no more than anybody.
  if (!owned) mode &= ~static_cast<mode_t>(070) | ((mode & 07) << 3);
  if (::fchmod(file_.number(), mode) != 0) fail();
}

void Replacement::write(std::string_view text) {
  if (!file_.write(text)) fail();
}

std::optional<FileIdentity> Replacement::replaced() const {
  struct stat old {};
  if (::fstatat(folder_.number(), name_.c_str(), &old, AT_SYMLINK_NOFOLLOW) != 0) return std::nullopt;
  return FileIdentity{old.st_dev, old.st_ino};
}

void Replacement::commit(Over over) {
  const int folder = folder_.number();
  // Not every file system can; one that can and fails has lost what was written.
  if (::fsync(file_.number()) != 0 && errno != EINVAL && errno != ENOTSUP) fail();
  if (over == Over::file) {
    if (::renameat(folder, made_.c_str(), folder, name_.c_str()) != 0) fail();
  } else {
    // A rename replaces and a hard link does not. Some file systems know no hard links.
    if (::linkat(folder, made_.c_str(), folder, name_.c_str(), 0) == 0) {
      ::unlinkat(folder, made_.c_str(), 0);
    } else {
      if (errno == EEXIST) fail();
      if (replaced()) fail(EEXIST);
      if (::renameat(folder, made_.c_str(), folder, name_.c_str()) != 0) fail();
    }
  }
  keep_on_signal();
  made_.clear();
  ::fsync(folder);  // the name too outlives a power cut; the file is in place whatever comes of it
}

}  // namespace mainbore::cli
