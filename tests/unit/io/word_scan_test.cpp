#include "io/text/word_scan.hpp"

#include <algorithm>
#include <random>
#include <string>

#include "support/catch.hpp"

using namespace mainbore::io;

namespace {

template <class Test, class ByteTest>
void agree(const std::string& text, Test test, ByteTest of_byte) {
  const auto first =
      std::find_if(text.begin(), text.end(), [&](char c) { return of_byte(static_cast<unsigned char>(c)); });
  const auto before = static_cast<std::size_t>(first - text.begin());
  CAPTURE(text);
  REQUIRE(any_byte(text, test) == (first != text.end()));
  // What does not fill a word is left to whoever asks.
  REQUIRE(bytes_without(text, test) <= before);
  REQUIRE(bytes_without(text, test) + 8 > std::min(before, text.size()));
}

}  // namespace

TEST_CASE("bytes asked eight at a time say what they say one at a time") {
  std::mt19937 random(11);
  for (int i = 0; i < 20000; ++i) {
    std::string text(random() % 40, 'a');
    for (char& c : text) {
      if (random() % 8 == 0) c = static_cast<char>(random());
    }
    agree(text, below_space, [](unsigned char byte) { return byte < 0x20; });
    agree(text, delete_or_above, [](unsigned char byte) { return byte >= 0x7F; });
    agree(
        text, [](TextWord bytes) { return equal_to('"', bytes); }, [](unsigned char byte) { return byte == '"'; });
  }
}
