// A stream that shows what others wrote and cannot be painted on: see text/foreign.hpp. Lines stay lines.
#pragma once

#include <ostream>
#include <streambuf>
#include <string>

#include "text/foreign.hpp"

namespace mainbore::cli {

class VisibleBuffer : public std::streambuf {
 public:
  explicit VisibleBuffer(std::ostream& to) : to_(to) {}
  ~VisibleBuffer() override { send(); }
  VisibleBuffer(const VisibleBuffer&) = delete;
  VisibleBuffer& operator=(const VisibleBuffer&) = delete;

 private:
  std::streamsize xsputn(const char* text, std::streamsize size) override {
    held_.append(text, static_cast<std::size_t>(size));
    if (held_.find('\n') != std::string::npos) send();
    return size;
  }
  int_type overflow(int_type c) override {
    if (c == traits_type::eof()) return traits_type::not_eof(c);
    const char byte = traits_type::to_char_type(c);
    xsputn(&byte, 1);
    return c;
  }
  int sync() override {
    send();
    to_.flush();
    return 0;
  }
  void send() {
    to_ << text::visible_lines(held_);
    held_.clear();
  }

  std::ostream& to_;
  std::string held_;
};

// What is written goes on with each line, and with each flush.
class VisibleStream : private VisibleBuffer, public std::ostream {
 public:
  explicit VisibleStream(std::ostream& to) : VisibleBuffer(to), std::ostream(static_cast<std::streambuf*>(this)) {}
};

}  // namespace mainbore::cli
