// One run of the program in process, and a folder for its files.
#pragma once

#include <cstdlib>
#include <filesystem>
#include <fstream>
#include <sstream>
#include <stdexcept>
#include <string>
#include <vector>

#include "cli/run.hpp"

namespace mainbore::test {

inline const std::string source = MAINBORE_SOURCE_DIR;
inline const std::string sound_job = source + "/examples/jobs/ductile_iron_direct.json";

// Arguments with more behind them.
inline std::vector<std::string> with(std::vector<std::string> arguments, const std::vector<std::string>& more) {
  arguments.insert(arguments.end(), more.begin(), more.end());
  return arguments;
}

inline bool has(const std::string& text, const std::string& part) { return text.find(part) != std::string::npos; }

struct Ran {
  int status;
  std::string out;
  std::string err;
};

inline Ran run(const std::vector<std::string>& arguments, const cli::Environment& environment = {},
               const std::string& text = {}) {
  std::istringstream in(text);
  std::ostringstream out;
  std::ostringstream err;
  const int status = cli::run(arguments, in, out, err, environment);
  return {status, out.str(), err.str()};
}

inline std::string content(const std::filesystem::path& path) {
  std::ifstream file(path, std::ios::binary);
  std::stringstream text;
  text << file.rdbuf();
  return text.str();
}

// A directory of its own, removed with everything in it. Tests run side by side, so its name is made unique.
class Folder {
 public:
  Folder() {
    std::string pattern = (std::filesystem::temp_directory_path() / "mainbore-test-XXXXXX").string();
    if (::mkdtemp(pattern.data()) == nullptr) throw std::runtime_error("cannot make a folder like " + pattern);
    path_ = pattern;
  }
  ~Folder() { std::filesystem::remove_all(path_); }
  Folder(const Folder&) = delete;
  Folder& operator=(const Folder&) = delete;
  [[nodiscard]] std::string operator/(const std::string& name) const { return (path_ / name).string(); }
  // Writes a file, with the folders it stands in.
  std::string put(const std::string& name, const std::string& text) const {
    const std::filesystem::path path = path_ / name;
    std::filesystem::create_directories(path.parent_path());
    std::ofstream(path, std::ios::binary) << text;
    return path.string();
  }
  [[nodiscard]] std::size_t files() const {
    return static_cast<std::size_t>(
        std::distance(std::filesystem::directory_iterator(path_), std::filesystem::directory_iterator()));
  }

 private:
  std::filesystem::path path_;
};

}  // namespace mainbore::test
