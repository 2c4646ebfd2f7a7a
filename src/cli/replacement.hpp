// A file made beside the one it replaces, and put in its place whole.
#pragma once

#include <sys/types.h>

#include <filesystem>
#include <optional>
#include <string>
#include <string_view>

#include "cli/files_read.hpp"

namespace mainbore::cli {

// An open descriptor, closed with the object.
class Descriptor {
 public:
  explicit Descriptor(int number) : number_(number) {}
  ~Descriptor();
  Descriptor(const Descriptor&) = delete;
  Descriptor& operator=(const Descriptor&) = delete;
  [[nodiscard]] int number() const { return number_; }
  // Takes another in place of its own, which is closed.
  void reset(int number);
  // All of the text; false, with errno set, where not all of it could be written.
  [[nodiscard]] bool write(std::string_view text) const;

 private:
  int number_;
};

// The new file has a name that no other has, in the folder of the old one, and keeps the mode and, where the system
// lets it, the owner and group of the old one. Until commit() the old one is as it was; without commit(), and when a
// signal ends the program, the new one is removed. One at a time in a process: a signal knows of one.
//
// Every function throws std::system_error where the system refuses.
class Replacement {
 public:
  // `path` names a regular file or nothing; a link to a file stands for that file.
  explicit Replacement(const std::string& path);
  ~Replacement();
  Replacement(const Replacement&) = delete;
  Replacement& operator=(const Replacement&) = delete;

  void write(std::string_view text);

  // The file that commit() would replace now; nothing where there is none.
  [[nodiscard]] std::optional<FileIdentity> replaced() const;

  enum class Over : bool { nothing, file };
  // On the disk first, then under its name. Over::nothing: fails with EEXIST where a file of the name has come
  // meanwhile.
  void commit(Over over);

 private:
  Replacement(const std::filesystem::path& real, const std::string& shown);
  int make(const std::string& shown);
  void keep_mode_and_owner() const;

  std::string name_;  // within the folder
  std::string made_;  // what the new file is called until then
  Descriptor folder_;
  Descriptor file_;
};

}  // namespace mainbore::cli
