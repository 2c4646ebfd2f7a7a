// The files a run reads, so that its result replaces none of them.
#pragma once

#include <sys/types.h>

#include <cstddef>
#include <optional>
#include <string>
#include <vector>

namespace mainbore::cli {

// One file under all its names: links, other paths to it, what a shell opened.
struct FileIdentity {
  dev_t device;
  ino_t number;
  friend bool operator==(const FileIdentity&, const FileIdentity&) = default;
};

// What an open descriptor reads or writes; nothing for a pipe, a terminal or a device, where writing destroys nothing.
[[nodiscard]] std::optional<FileIdentity> regular_file(int descriptor);

class FilesRead {
 public:
  void add(const std::optional<FileIdentity>& file, std::string name);
  // The name it was read under; null where it was not read.
  [[nodiscard]] const std::string* name_of(const FileIdentity& file) const;

 private:
  struct Entry {
    FileIdentity file;
    std::string name;
  };
  std::vector<Entry> files_;
};

// A file opened for reading, and listed as read. Every file of a run is opened here.
class InputFile {
 public:
  // Throws Stop where it cannot be opened.
  InputFile(const std::string& path, FilesRead& list);
  ~InputFile();
  InputFile(const InputFile&) = delete;
  InputFile& operator=(const InputFile&) = delete;

  // Waits for the first byte only; 0 at the end. Throws Stop where it cannot be read.
  [[nodiscard]] std::size_t read(char* to, std::size_t room);

 private:
  std::string path_;
  int descriptor_;
};

}  // namespace mainbore::cli
