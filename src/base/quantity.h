// SPDX-License-Identifier: MIT
// Numbers that carry their unit. A raw double enters at the edges only (a build spec, a table) and leaves at the
// edges only (cairo, the solver's matrix).
#pragma once

#include <compare>

namespace loomfolio {

/// A double in one fixed unit, named by `Tag`. Only like adds to like; the products below are those that physics has.
template <class Tag>
class Quantity {
 public:
  constexpr Quantity() = default;
  explicit constexpr Quantity(double number) : number_(number) {}
  /// The bare number, in the unit the type is named after.
  constexpr double number() const { return number_; }

  constexpr Quantity operator-() const { return Quantity(-number_); }
  constexpr Quantity& operator+=(Quantity other) { number_ += other.number_; return *this; }
  constexpr Quantity& operator-=(Quantity other) { number_ -= other.number_; return *this; }
  friend constexpr Quantity operator+(Quantity a, Quantity b) { return Quantity(a.number_ + b.number_); }
  friend constexpr Quantity operator-(Quantity a, Quantity b) { return Quantity(a.number_ - b.number_); }
  friend constexpr Quantity operator*(Quantity a, double k) { return Quantity(a.number_ * k); }
  friend constexpr Quantity operator*(double k, Quantity a) { return Quantity(a.number_ * k); }
  friend constexpr Quantity operator/(Quantity a, double k) { return Quantity(a.number_ / k); }
  friend constexpr double operator/(Quantity a, Quantity b) { return a.number_ / b.number_; }
  friend constexpr auto operator<=>(Quantity, Quantity) = default;

 private:
  double number_ = 0;
};

using Millimetres = Quantity<struct MillimetresTag>;              ///< on paper, and on the face or body of a part
using Metres = Quantity<struct MetresTag>;                        ///< along the loom
using SquareMillimetres = Quantity<struct SquareMillimetresTag>;  ///< metal of a conductor
using Volts = Quantity<struct VoltsTag>;
using Amperes = Quantity<struct AmperesTag>;
using Ohms = Quantity<struct OhmsTag>;
using Watts = Quantity<struct WattsTag>;
using AmpereHours = Quantity<struct AmpereHoursTag>;
using Seconds = Quantity<struct SecondsTag>;
using Celsius = Quantity<struct CelsiusTag>;                      ///< a temperature, not a difference
using NewtonMetres = Quantity<struct NewtonMetresTag>;

constexpr Volts operator*(Amperes i, Ohms r) { return Volts(i.number() * r.number()); }
constexpr Volts operator*(Ohms r, Amperes i) { return i * r; }
constexpr Watts operator*(Volts v, Amperes i) { return Watts(v.number() * i.number()); }
constexpr Watts operator*(Amperes i, Volts v) { return v * i; }
constexpr Amperes operator/(Volts v, Ohms r) { return Amperes(v.number() / r.number()); }
constexpr Ohms operator/(Volts v, Amperes i) { return Ohms(v.number() / i.number()); }
constexpr Amperes operator/(Watts p, Volts v) { return Amperes(p.number() / v.number()); }

/// Paper and motorcycle never add; the type system keeps them apart.
template <class A, class B>
concept Addable = requires(A a, B b) { a + b; };
static_assert(Addable<Millimetres, Millimetres>);
static_assert(!Addable<Millimetres, Metres>);

}  // namespace loomfolio
