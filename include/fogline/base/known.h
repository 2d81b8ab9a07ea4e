#pragma once

#include <fogline/base/fact.h>
#include <fogline/base/unknown.h>

#include <optional>
#include <utility>

namespace fogline {

/// Why a value is absent.
using WhyUnknown = Fact<Unknown>;

/// A value, or why there is none. Used like an optional; one that nobody has set says that it isn't
/// told.
template <typename T>
class Known {
 public:
  Known() = default;
  Known(T value) : value_(std::move(value)) {}
  Known(WhyUnknown why) : why_(std::move(why)) {}
  Known(Unknown why) : why_(fact_of(why)) {}

  [[nodiscard]] bool has_value() const { return value_.has_value(); }
  explicit operator bool() const { return value_.has_value(); }

  /// Of a value that is there.
  const T& operator*() const { return *value_; }
  T& operator*() { return *value_; }
  const T* operator->() const { return &*value_; }
  T* operator->() { return &*value_; }

  template <typename U>
  T value_or(U&& other) const {
    return value_.value_or(std::forward<U>(other));
  }
  /// The value alone, for those who don't ask why.
  [[nodiscard]] const std::optional<T>& optional() const { return value_; }

  /// Of a value that is absent.
  [[nodiscard]] const WhyUnknown& why() const { return why_; }

  friend bool operator==(const Known& one, const Known& other) {
    return one.value_ == other.value_ && (one.value_.has_value() || one.why_ == other.why_);
  }

 private:
  std::optional<T> value_;
  WhyUnknown why_;
};

/// A value that may be absent, with the reason for which it then is.
template <typename T>
Known<T> known_or(std::optional<T> value, WhyUnknown why) {
  return value ? Known<T>(*std::move(value)) : Known<T>(std::move(why));
}
template <typename T>
Known<T> known_or(std::optional<T> value, Unknown why) {
  return known_or(std::move(value), fact_of(why));
}

}  // namespace fogline
