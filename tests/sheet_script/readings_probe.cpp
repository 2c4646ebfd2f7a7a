// What the program makes of a reading. Each line in is the name of a reading, a tab and the reading as JSON text; each line out
// its value in base units, its words, "unread", or "refused"; of a leak check what it says, and a tab, before its words.
#include <cstdio>
#include <iostream>
#include <string>
#include <variant>

#include "mainbore/catalog.hpp"
#include "mainbore/readings_file.hpp"

using namespace mainbore;

int main() {
  const Catalog& catalog = Catalog::builtin();
  std::ios::sync_with_stdio(false);
  for (std::string line; std::getline(std::cin, line);) {
    const std::size_t tab = line.find('\t');
    const std::string name = line.substr(0, tab);
    const ReadingsFile file = read_readings("{\"" + name + "\": " + line.substr(tab + 1) + "}", "", catalog);
    const RecordEntry* const entry = record_entry_named(name);
    if (!file.readings || entry == nullptr) {
      std::cout << "refused\n";
      continue;
    }
    const RecordValue& value = file.readings->at(entry->key);
    if (const auto* measure = std::get_if<Measure>(&value)) {
      char number[40];
      std::snprintf(number, sizeof number, "%.17g", measure->base());
      std::cout << number << '\n';
    } else if (value.index() == 0) {
      std::cout << "unread\n";
    } else {
      if (entry->key == RecordKey::leak_check)
        std::cout << leak_check_names[static_cast<std::size_t>(leak_said(std::get<std::string>(value)))] << '\t';
      std::cout << written(value, UnitSystem::us) << '\n';
    }
  }
}
