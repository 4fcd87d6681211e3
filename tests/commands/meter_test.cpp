// SPDX-License-Identifier: MIT
// `loomfolio meter`: what it prints agrees with itself and with a hand's calculation, and what it refuses it explains.
#include <doctest/doctest.h>

#include <cmath>

#include "base/json.h"
#include "memory_files.h"

using namespace loomfolio;

namespace {

Ran measure(std::vector<std::string> arguments, const std::string& spec = small_spec()) {
  MemoryFiles files;
  files.held["lamp.toml"] = spec;
  arguments.insert(arguments.begin(), {"meter", "lamp.toml"});
  return run_with(files, arguments);
}

/// The one reading of a request, from its JSON; nan: open.
double reading(std::vector<std::string> arguments) {
  arguments.push_back("--json");
  const Ran ran = measure(std::move(arguments));
  REQUIRE(ran.code == 0);
  std::string error;
  const Json json = read_json(ran.out, error);
  REQUIRE(error.empty());
  REQUIRE(json.at("readings").items.size() == 1);
  const Json& one = json.at("readings").items.front();
  return one.at("open").boolean ? std::nan("") : one.at("number").number;
}

}  // namespace

TEST_CASE("volts at a terminal: a row a situation, with what the probes are on") {
  const Ran ran = measure({"lamp.56a"});
  CHECK(ran.code == 0);
  CHECK(ran.err.empty());
  CHECK(ran.out.starts_with(
      "volts, red probe on `lamp.56a` (Driving lamp 56a), black probe on `battery.-` (Battery -)\n"));
  CHECK(ran.out.find("  lit  ") != std::string::npos);
  CHECK(ran.out.find(" V   Lamp on\n") != std::string::npos);
}

TEST_CASE("volts along the way of the current add up to the battery's") {
  const double battery = reading({"battery.+"});
  const double along = reading({"battery.+,fuse.out"}) + reading({"fuse.out,switch.56"}) +
                       reading({"switch.56,lamp.56a"}) + reading({"lamp.56a,lamp.31"}) + reading({"lamp.31,battery.-"});
  CHECK(battery > 12);
  CHECK(std::abs(battery - along) < 1e-5);
  CHECK(std::abs(reading({"lamp.56a,lamp.31"}) + reading({"lamp.31,lamp.56a"})) < 1e-9);
}

TEST_CASE("amperes through a wire: its resistance by IEC 60228's copper times them is the drop the volts show") {
  const double amperes = reading({"3"});
  CHECK(amperes > 3);
  CHECK(amperes < 6);
  CHECK(reading({"wire 3"}) == amperes);
  // 0.6 m of 1.5 mm2 at 13.3 ohm/km and 20 degC (IEC 60228 class 5) is the least that can be lost there; its two joints
  // and the warmer wire add to it.
  const double lost = reading({"switch.56,lamp.56a"});
  CHECK(lost > amperes * 0.6 * 0.0133);
  CHECK(lost < amperes * 0.6 * 0.0133 * 3);
}

TEST_CASE("ohms, the battery off: the wire's way is near nothing, an open fuse way is open") {
  CHECK(reading({"switch.56,lamp.56a", "--ohms"}) < 0.1);
  CHECK(reading({"lamp.31", "--ohms"}) < 0.1);
  const double cold = reading({"lamp.56a,lamp.31", "--ohms"});
  const double hot = reading({"lamp.56a,lamp.31"}) / reading({"3"});
  CHECK(cold > hot / 20);  // a cold filament has about a tenth of its hot resistance (trade paper)
  CHECK(cold < hot / 5);
}

TEST_CASE("a name that is not there is refused with the likely one") {
  const Ran near = measure({"lamp.56aa"});
  CHECK(near.code == 2);
  CHECK(near.out.empty());
  CHECK(near.err == "loomfolio: there is no terminal or wire `lamp.56aa`\nhint: did you mean `lamp.56a`? the terminals there are `lamp.56a`, `lamp.31`\n");
  const Ran far = measure({"lamp.brightness"});
  CHECK(far.code == 2);
  CHECK(far.err.find("the terminals there are `lamp.56a`, `lamp.31`") != std::string::npos);
  const Ran second = measure({"lamp.56a,lmap.31"});
  CHECK(second.err.find("did you mean `lamp.31`?") != std::string::npos);
  CHECK(measure({"lamp.56a", "--in", "list"}).err.find("there is no situation `list`\nhint: did you mean `lit`?") !=
        std::string::npos);
  CHECK(measure({"lamp.56a", "--variant", "other"}).code == 2);
  CHECK(measure({"a,b,c"}).err.find("is no place to measure") != std::string::npos);
  CHECK(measure({"lamp.56a"}, small_spec() + "nonsense = 1\n").code == 1);
}

TEST_CASE("where the check finds errors the meter still reads, and says that it does") {
  std::string spec = small_spec();
  spec.replace(spec.find("lamp = \"on\""), 11, "lamp = \"off\"");
  const Ran ran = measure({"lamp.56a"}, spec);
  CHECK(ran.code == 1);
  CHECK(ran.out.find(" V ") != std::string::npos);
  CHECK(ran.err.find("`loomfolio check lamp.toml` says which") != std::string::npos);
}
