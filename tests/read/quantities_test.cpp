// SPDX-License-Identifier: MIT
#include "read/quantities.h"

#include <doctest/doctest.h>

#include <limits>

using namespace loomfolio;

namespace {

constexpr Limits any{-1e9, 1e9};

double read(std::string_view text, Dimension dimension) {
  QuantityFault fault;
  return parse_quantity(text, dimension, any, fault).value_or(std::numeric_limits<double>::quiet_NaN());
}

QuantityFault refuse(std::string_view text, Dimension dimension, Limits limits = any) {
  QuantityFault fault;
  CHECK_FALSE(parse_quantity(text, dimension, limits, fault));
  return fault;
}

}  // namespace

TEST_CASE("every unit is read into its dimension's own") {
  struct Row {
    std::string_view text;
    Dimension dimension;
    double number;
  };
  // Factors: BIPM SI brochure; inch and foot by the 1959 international agreement, 25.4 mm and 304.8 mm.
  for (const Row& row : {Row{"350 mm", Dimension::loom_length, 0.35},
                         Row{"35cm", Dimension::loom_length, 0.35},
                         Row{"1.5 m", Dimension::loom_length, 1.5},
                         Row{"10 in", Dimension::loom_length, 0.254},
                         Row{"2 ft", Dimension::loom_length, 0.6096},
                         Row{"0.5 in", Dimension::paper_length, 12.7},
                         Row{"2.5 mm2", Dimension::area, 2.5},
                         Row{"200 mV", Dimension::voltage, 0.2},
                         Row{"-12 V", Dimension::voltage, -12},
                         Row{"30 mA", Dimension::current, 0.03},
                         Row{"2 mohm", Dimension::resistance, 0.002},
                         Row{"4.7 kohm", Dimension::resistance, 4700},
                         Row{"55 W", Dimension::power, 55},
                         Row{"9 Ah", Dimension::charge, 9},
                         Row{"40 degC", Dimension::temperature, 40},
                         Row{"212 degF", Dimension::temperature, 100},
                         Row{"20 ms", Dimension::time, 0.02},
                         Row{"4 Nm", Dimension::torque, 4},
                         Row{" 1e2 mm ", Dimension::paper_length, 100},
                         Row{"+.5 V", Dimension::voltage, 0.5}}) {
    CAPTURE(row.text);
    CHECK(read(row.text, row.dimension) == doctest::Approx(row.number).epsilon(1e-12));
  }
}

TEST_CASE("wire gauges have the metal of ASTM B258") {
  // ASTM B258: 4/0 is 0.4600 in and 36 is 0.0050 in by definition; 10 AWG 2.588 mm, 5.261 mm2.
  CHECK(read("4/0 AWG", Dimension::area) == doctest::Approx(0.785398163 * 11.684 * 11.684).epsilon(1e-6));
  CHECK(read("36 AWG", Dimension::area) == doctest::Approx(0.785398163 * 0.127 * 0.127).epsilon(1e-6));
  CHECK(read("10 AWG", Dimension::area) == doctest::Approx(5.261).epsilon(1e-4));
  CHECK(read("14 AWG", Dimension::area) == doctest::Approx(2.0809).epsilon(1e-4));
  CHECK(read("1/0 AWG", Dimension::area) == doctest::Approx(53.4751).epsilon(1e-5));
  for (const std::string_view wrong : {"14.5 AWG", "0 AWG", "5/0 AWG", "-2 AWG", "37 AWG", "1/1 AWG"}) {
    CAPTURE(wrong);
    CHECK(refuse(wrong, Dimension::area).id == DiagnosticId::out_of_range);
  }
}

TEST_CASE("what is no quantity says why, and what would be one") {
  CHECK(refuse("12", Dimension::voltage).message == "`12` has no unit; a voltage is written with one of `V`, `mV`");
  CHECK(refuse("12", Dimension::voltage).id == DiagnosticId::bare_number);
  CHECK(refuse("12 A", Dimension::voltage).message ==
        "unit `A` does not fit; a voltage is written with one of `V`, `mV`");
  CHECK(refuse("12 A", Dimension::voltage).id == DiagnosticId::wrong_unit);
  CHECK(refuse("2,5 mm2", Dimension::area).message ==
        "`2,5` is not a number; a conductor size has a decimal point, no comma");
  for (const std::string_view wrong : {"", " ", "V", "nan V", "inf V", "- V", "1-2 V", "1..2 V", "--1 V", "1/0 V"}) {
    CAPTURE(wrong);
    CHECK(refuse(wrong, Dimension::voltage).id == DiagnosticId::not_a_number);
  }
  CHECK(refuse("0x10 V", Dimension::voltage).id == DiagnosticId::wrong_unit);
}

TEST_CASE("other spellings of a unit are explained, not taken") {
  CHECK(refuse("2.5 mm\xC2\xB2", Dimension::area).hint == "write \"2.5 mm2\"");
  CHECK(refuse("2.5 mm", Dimension::area).hint == "write \"2.5 mm2\"");
  CHECK(refuse("4 \xCE\xA9", Dimension::resistance).hint == "write \"4 ohm\"");
  CHECK(refuse("4 \xE2\x84\xA6", Dimension::resistance).hint == "write \"4 ohm\"");
  CHECK(refuse("12 volts", Dimension::voltage).hint == "write \"12 V\"");
  CHECK(refuse("12 v", Dimension::voltage).hint == "write \"12 V\"");
  CHECK(refuse("10 awg", Dimension::area).hint == "write \"10 AWG\"");
  CHECK(refuse("10 inches", Dimension::loom_length).hint == "write \"10 in\"");
  CHECK(refuse("12 ah", Dimension::voltage).hint.empty());
}

TEST_CASE("limits hold on both sides and are named") {
  const Limits limits{0.005, 30};
  QuantityFault fault;
  CHECK(parse_quantity("5 mm", Dimension::loom_length, limits, fault));
  CHECK(parse_quantity("30 m", Dimension::loom_length, limits, fault));
  for (const std::string_view wrong : {"0 mm", "-1 m", "4 mm", "31 m", "1e999 m"}) {
    CAPTURE(wrong);
    CHECK(refuse(wrong, Dimension::loom_length, limits).id == DiagnosticId::out_of_range);
  }
  CHECK(refuse("31 m", Dimension::loom_length, limits).message ==
        "`31 m` is out of range; here a length is from 0.005 m to 30 m");
}

TEST_CASE("a text of megabytes is refused in one line") {
  CHECK(refuse(std::string(1'000'000, '9') + " V", Dimension::voltage).message.size() < 300);
  CHECK(refuse("1 " + std::string(1'000'000, 'x'), Dimension::voltage).message.size() < 300);
}
