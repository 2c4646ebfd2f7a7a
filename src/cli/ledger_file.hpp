// The one file that is added to: a ledger of records.
#pragma once

#include <string>

#include "cli/console.hpp"
#include "cli/replacement.hpp"
#include "mainbore/ledger.hpp"

namespace mainbore::cli {

// Opened and locked (flock) until the object goes; who comes next waits. What a writer that was killed left unfinished is
// taken away before the next record is written: it was never acknowledged. Nothing else of the file is ever changed.
class LedgerFile {
 public:
  // Makes the file where there is none. Throws Stop where it cannot be opened, is no regular file, was read by this run, or
  // holds anything but records.
  LedgerFile(const std::string& path, const TapRecord& record, const Catalog& catalog, Console& console);

  // All of the record on the disk, or the file as it was and a Stop. The revision that it was written as.
  int append(UnitSystem units);

 private:
  void open();
  void read();
  void mend_end();
  void take_back() const;

  std::string path_;
  Console& console_;
  Descriptor file_{-1};
  const TapRecord& record_;
  LedgerScan ledger_;
  std::size_t size_ = 0;  // of the file, once its end is mended
};

}  // namespace mainbore::cli
