#include "mainbore/catalog.hpp"

#include <simdjson.h>

#include <algorithm>
#include <cstdint>

#include "catalog/embedded.hpp"
#include "catalog/spelling.hpp"
#include "mainbore/catalog_error.hpp"

namespace mainbore {
namespace {

// FNV-1a, 64 bits: not a seal, but enough that no slip of a finger goes unseen.
class Fnv1a {
 public:
  void add(std::string_view bytes) {
    for (const char byte : bytes) {
      state_ = (state_ ^ static_cast<unsigned char>(byte)) * 0x100000001b3U;
    }
    state_ *= 0x100000001b3U;  // the end of a text counts, so that moving bytes from one file to the next shows
  }
  [[nodiscard]] std::string hex() const {
    constexpr std::string_view digits = "0123456789abcdef";
    std::string text(16, '0');
    for (std::size_t i = 0; i < text.size(); ++i) text[i] = digits[(state_ >> (60 - 4 * i)) & 15U];
    return text;
  }

 private:
  std::uint64_t state_ = 0xcbf29ce484222325U;
};

}  // namespace

const Catalog& Catalog::builtin() {
  static const Catalog catalog([] {
    DataFiles files;
    for (const embedded::File& file : embedded::files()) {
      std::string& text = files[std::string(file.path)];
      std::size_t size = simdjson::SIMDJSON_PADDING;  // behind the text: it is then parsed where it stands
      for (const std::string_view piece : file.pieces) size += piece.size();
      text.reserve(size);
      for (const std::string_view piece : file.pieces) text += piece;
    }
    return files;
  }());
  return catalog;
}

std::string Catalog::hash() const {
  Fnv1a hash;
  for (const auto& [path, text] : files_) {
    hash.add(path);
    hash.add(text);
  }
  return hash.hex();
}

std::span<const Pipe> Catalog::pipes(Material material, NominalSize size) const {
  const auto found = index_.find({material, size});
  if (found == index_.end()) return {};
  return std::span(pipes_).subspan(found->second.first, found->second.count);
}

std::vector<NominalSize> Catalog::sizes(Material material) const {
  std::vector<NominalSize> sizes;
  for (const auto& [key, range] : index_) {
    if (key.first == material) sizes.push_back(key.second);
  }
  return sizes;
}

const TapThread* Catalog::thread(ThreadStandard standard, NominalSize size) const {
  const auto found = std::find_if(threads_.begin(), threads_.end(), [&](const TapThread& thread) {
    return thread.standard == standard && thread.size == size;
  });
  return found == threads_.end() ? nullptr : &*found;
}

const MachineProfile* Catalog::machine(std::string_view id) const {
  const auto found =
      std::find_if(machines_.begin(), machines_.end(), [&](const MachineProfile& machine) { return machine.id == id; });
  return found == machines_.end() ? nullptr : &*found;
}

const Source* Catalog::source(std::string_view id) const {
  const auto found =
      std::find_if(sources_.begin(), sources_.end(), [&](const Source& source) { return source.id == id; });
  return found == sources_.end() ? nullptr : &*found;
}

std::optional<NominalSize> Catalog::metric_size(double dn) const {
  for (const MetricSize& metric : metric_sizes_) {
    if (metric.dn == dn) return metric.size;
  }
  return std::nullopt;
}

Catalog::MaterialReading Catalog::read_material(std::string_view text) const {
  const std::string spelling = normal_spelling(text);
  if (const auto known = material_spellings_.find(spelling); known != material_spellings_.end()) {
    return {known->second, {}};
  }
  if (const auto doubtful = ambiguous_spellings_.find(spelling); doubtful != ambiguous_spellings_.end()) {
    return {std::nullopt, doubtful->second};
  }
  return {};
}

const std::string& Catalog::file(std::string_view path) const {
  const auto found = files_.find(path);
  if (found == files_.end()) throw CatalogError(std::string(path) + ": there is no such file");
  return found->second;
}

}  // namespace mainbore
