// A list that never grows beyond a few elements, kept where it stands: it costs no call of the allocator.
#pragma once

#include <array>
#include <cstddef>
#include <initializer_list>
#include <stdexcept>

namespace mainbore {

// T must be made by default at no cost. Throws std::length_error rather than hold more than N.
template <class T, std::size_t N>
class BoundedList {
 public:
  BoundedList() = default;
  BoundedList(std::initializer_list<T> elements) {
    for (const T& element : elements) push_back(element);
  }

  void push_back(const T& element) {
    if (size_ == N) throw std::length_error("BoundedList: full");
    elements_[size_++] = element;
  }
  [[nodiscard]] std::size_t size() const { return size_; }
  [[nodiscard]] bool empty() const { return size_ == 0; }
  [[nodiscard]] T* begin() { return elements_.data(); }
  [[nodiscard]] T* end() { return elements_.data() + size_; }
  [[nodiscard]] const T* begin() const { return elements_.data(); }
  [[nodiscard]] const T* end() const { return elements_.data() + size_; }
  [[nodiscard]] T& operator[](std::size_t i) { return elements_[i]; }
  [[nodiscard]] const T& operator[](std::size_t i) const { return elements_[i]; }
  [[nodiscard]] const T& front() const { return elements_[0]; }
  [[nodiscard]] const T& back() const { return elements_[size_ - 1]; }

 private:
  std::array<T, N> elements_{};
  std::size_t size_ = 0;
};

}  // namespace mainbore
