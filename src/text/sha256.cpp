// Names are those of FIPS 180-4, sections 4.1.2, 5.1.1 and 6.2.
#include "text/sha256.hpp"

#include <array>
#include <bit>
#include <cstddef>
#include <cstdint>

namespace mainbore::text {
namespace {

using Word = std::uint32_t;

constexpr std::array<Word, 64> k = {
    0x428a2f98, 0x71374491, 0xb5c0fbcf, 0xe9b5dba5, 0x3956c25b, 0x59f111f1, 0x923f82a4, 0xab1c5ed5,
    0xd807aa98, 0x12835b01, 0x243185be, 0x550c7dc3, 0x72be5d74, 0x80deb1fe, 0x9bdc06a7, 0xc19bf174,
    0xe49b69c1, 0xefbe4786, 0x0fc19dc6, 0x240ca1cc, 0x2de92c6f, 0x4a7484aa, 0x5cb0a9dc, 0x76f988da,
    0x983e5152, 0xa831c66d, 0xb00327c8, 0xbf597fc7, 0xc6e00bf3, 0xd5a79147, 0x06ca6351, 0x14292967,
    0x27b70a85, 0x2e1b2138, 0x4d2c6dfc, 0x53380d13, 0x650a7354, 0x766a0abb, 0x81c2c92e, 0x92722c85,
    0xa2bfe8a1, 0xa81a664b, 0xc24b8b70, 0xc76c51a3, 0xd192e819, 0xd6990624, 0xf40e3585, 0x106aa070,
    0x19a4c116, 0x1e376c08, 0x2748774c, 0x34b0bcb5, 0x391c0cb3, 0x4ed8aa4a, 0x5b9cca4f, 0x682e6ff3,
    0x748f82ee, 0x78a5636f, 0x84c87814, 0x8cc70208, 0x90befffa, 0xa4506ceb, 0xbef9a3f7, 0xc67178f2};

using State = std::array<Word, 8>;
constexpr State start = {0x6a09e667, 0xbb67ae85, 0x3c6ef372, 0xa54ff53a,
                         0x510e527f, 0x9b05688c, 0x1f83d9ab, 0x5be0cd19};

constexpr std::size_t block = 64;

// Written out: a loop over the bytes costs a tenth of the digest.
Word word_at(std::string_view bytes, std::size_t at) {
  const auto byte = [&](std::size_t i) { return static_cast<Word>(static_cast<unsigned char>(bytes[at + i])); };
  return byte(0) << 24 | byte(1) << 16 | byte(2) << 8 | byte(3);
}

// A round; Ch and Maj with one operation less than they are defined with. The working variables keep their places and change
// their names from round to round, so that none is moved.
[[gnu::always_inline]] inline void take_word(Word k_and_w, Word a, Word b, Word c, Word& d, Word e, Word f, Word g,
                                             Word& h) {
  const Word big1 = std::rotr(e, 6) ^ std::rotr(e, 11) ^ std::rotr(e, 25);
  const Word t1 = h + big1 + (g ^ (e & (f ^ g))) + k_and_w;
  const Word big0 = std::rotr(a, 2) ^ std::rotr(a, 13) ^ std::rotr(a, 22);
  d += t1;
  h = t1 + big0 + ((a & b) | (c & (a | b)));
}

void take_block(State& state, std::string_view bytes) {
  std::array<Word, 64> w{};
  for (std::size_t t = 0; t < 16; ++t) w[t] = word_at(bytes, 4 * t);
  for (std::size_t t = 16; t < 64; ++t) {
    const Word s0 = std::rotr(w[t - 15], 7) ^ std::rotr(w[t - 15], 18) ^ (w[t - 15] >> 3);
    const Word s1 = std::rotr(w[t - 2], 17) ^ std::rotr(w[t - 2], 19) ^ (w[t - 2] >> 10);
    w[t] = s1 + w[t - 7] + s0 + w[t - 16];
  }
  auto [a, b, c, d, e, f, g, h] = state;
  for (std::size_t t = 0; t < 64; t += 8) {
    take_word(k[t] + w[t], a, b, c, d, e, f, g, h);
    take_word(k[t + 1] + w[t + 1], h, a, b, c, d, e, f, g);
    take_word(k[t + 2] + w[t + 2], g, h, a, b, c, d, e, f);
    take_word(k[t + 3] + w[t + 3], f, g, h, a, b, c, d, e);
    take_word(k[t + 4] + w[t + 4], e, f, g, h, a, b, c, d);
    take_word(k[t + 5] + w[t + 5], d, e, f, g, h, a, b, c);
    take_word(k[t + 6] + w[t + 6], c, d, e, f, g, h, a, b);
    take_word(k[t + 7] + w[t + 7], b, c, d, e, f, g, h, a);
  }
  const State added = {a, b, c, d, e, f, g, h};
  for (std::size_t i = 0; i < state.size(); ++i) state[i] += added[i];
}

// What stands behind the last whole block: the rest, a bit that is set, zeros, and the length in bits.
std::string padded_end(std::string_view bytes) {
  std::string end(bytes.substr(bytes.size() / block * block));
  end += '\x80';
  end.append((2 * block - 8 - end.size()) % block, '\0');
  const std::uint64_t bits = 8 * static_cast<std::uint64_t>(bytes.size());
  for (int shift = 56; shift >= 0; shift -= 8) end += static_cast<char>((bits >> shift) & 0xFFU);
  return end;
}

}  // namespace

std::string sha256(std::string_view bytes) {
  State state = start;
  const std::string end = padded_end(bytes);
  for (std::size_t at = 0; at + block <= bytes.size(); at += block) take_block(state, bytes.substr(at, block));
  for (std::size_t at = 0; at < end.size(); at += block) take_block(state, std::string_view(end).substr(at, block));
  constexpr std::string_view digits = "0123456789abcdef";
  std::string hex;
  hex.reserve(64);
  for (const Word word : state) {
    for (int shift = 28; shift >= 0; shift -= 4) hex += digits[(word >> shift) & 0xFU];
  }
  return hex;
}

}  // namespace mainbore::text
