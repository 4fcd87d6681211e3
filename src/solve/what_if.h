// SPDX-License-Identifier: MIT
// A solved circuit, changed in a few places: what is different, without solving it all again.
#pragma once

#include <deque>
#include <memory>
#include <optional>

#include "solve/branch_law.h"
#include "solve/settle.h"
#include "solve/spread.h"

namespace loomfolio {

/// How an answer is wanted: by finding all that moves, or only where one looks (probe_volts, probe_amperes).
enum class WhatIfReach : std::uint8_t { spread, probe };
struct WhatIfAccuracy {
  double least_volts = 0.02;      ///< spread: nodes that move less may be left as they were
  double least_amperes = 0.0005;  ///< a bent law may be off by this much before it is followed
  WhatIfReach reach =
      WhatIfReach::spread;  ///< probe: of bent laws only batteries, chargers, limits and diodes are followed
};

/// Which bent laws an answer follows where they leave their line: all, or for the time being only those that may jump -
/// batteries, chargers, limits, diodes -, while filaments stay as straight as they stand in the sound machine.
enum class Bends : std::uint8_t { all, sharp };

/// Ask with begin(), then change(), open(), add(), then solve(); read; change more and solve() again if need be.
class WhatIf {
 public:
  /// `circuit` must outlive it. `base` holds relays that rest, and volts to start from where it has any.
  WhatIf(const Circuit& circuit, const Settled& base, Flash flash, WhatIfAccuracy accuracy);

  void begin();
  /// The branch now behaves like `law` (its nodes stay), whatever relays do.
  void change(int branch, const Branch& law);
  /// The branch is gone, whatever relays do.
  void open(int branch);
  /// A new branch between two nodes.
  void add(const Branch& branch);
  /// False when no answer was found. touched() is of the last answer with Bends::all in the spread reach.
  bool solve(Bends bends = Bends::all);
  /// Prepares find_moved(): branches that one wants to know the moved ones of.
  void watch(const std::vector<int>& branches);
  /// Of the watched branches, as places in the list given to watch(), those over which volts may have moved by
  /// `least_volts`, each once: all others surely have not. Nothing when that cannot be told without asking each.
  std::optional<std::vector<int>> find_moved(double least_volts);
  /// Bent laws that left their line go back to it, until the next answer shows that they leave it: call it where a
  /// change has taken most of the earlier ones back, such as a fuse that cuts off a short.
  void forget_bends();
  /// Lets relays and outputs follow, a round: true when one moved; then solve() again.
  bool move_relays();
  /// One relay's coil or one output now stands so, and its contacts with it; then solve() again.
  void move_device(GateType type, int device, bool is_on);
  std::size_t changed_places() const { return ports_.size(); }
  /// The sound circuit's volts; after learn_lines() no longer.
  const NodeVolts& base() const { return nodes_; }
  /// The answer becomes what further questions start from, as if it had been the base: the factor is updated place by place.
  /// False, and nothing changed, where it cannot be told so: an answer found anew, or one in the probe reach.
  bool adopt();
  /// Probe reach only; ends the question. Batteries and chargers that left their line in this answer stand in the factor by the line they came to:
  /// later questions that drive them the same way find them on it. Answers stay what they are; call watch() again.
  void learn_lines();

  double volts(int node) const;                   ///< now
  bool is_floating(int node) const;               ///< has lost its path to the reference (or never had one)
  double amperes(int branch) const;               ///< through a branch of the circuit now
  bool is_there(int branch) const;                ///< neither opened nor switched off
  std::vector<int> moved_branches() const;        ///< of the circuit, there now and not in the base, or the other way round
  double added_amperes(std::size_t which) const;  ///< through the which-th added branch
  /// The same, found from the couplings alone: right in either reach, a little slower.
  double probe_volts(int node);
  double probe_amperes(int branch);
  /// The last answer was found by solving the whole circuit: then volts() and amperes() are right everywhere, and
  /// probe_volts() and probe_amperes() are not.
  bool is_whole() const { return is_anew_; }
  const RelayState& relays() const { return relays_; }
  /// Nodes that may have moved by least_volts or more.
  const std::vector<int>& touched() const { return touched_; }
  /// Nodes that came to float, because a branch on whose other side they hang was opened.
  const std::vector<int>& floated() const { return floated_; }

 private:
  /// The straight line that the factored matrix holds for a branch.
  struct Line {
    double volts = 0, amperes = 0, siemens = 0;  // amperes at these volts
    double at(double over) const { return amperes + siemens * (over - volts); }
  };
  struct Port {
    int branch = -1;  // of the circuit, or -1: added
    int a = -1, b = -1;
    Branch law;
    bool is_open = false;
    bool is_held = false;  // relays no longer move it
    bool is_bend = false;  // here because its law left its line
    Line line;
    const SparseVector* pattern = nullptr;
    double volts = 0, current = 0;  // now; current: compensating
  };
  /// A bent law that left its line a little: its compensating current is found by asking again, not with the ports.
  struct MildBend {
    int branch = -1;
    double current = 0;
  };
  enum class Followed : std::uint8_t { nothing, some, too_many };

  Port& port_for(int branch);
  const SparseVector* pattern_of(int branch);
  void find_floating_side(int branch, bool a_floats);
  double probe_over(const SparseVector& pattern, double base) const;
  double base_over(int branch) const;
  bool was_there(int branch) const { return is_active(circuit_.branches[static_cast<std::size_t>(branch)], base_relays_, flash_); }
  void forget_patterns();
  // what_if_relays.cpp
  void gate(int device, GateType type);
  void find_base_islands();
  void find_revived();
  // what_if_ports.cpp
  Working law_of(const Port& port, double volts) const;
  double excess(const Port& port, double volts) const;
  void append(Port port);
  double ports_over(std::size_t port) const;
  bool solve_ports();
  bool step_ports(std::vector<double>& direction, std::vector<double>& current_step);
  double slope_along(const std::vector<double>& direction, const std::vector<double>& step, double share) const;
  double length_along(const std::vector<double>& direction, const std::vector<double>& step) const;
  bool solve_anew();
  NodeVolts solve_altered(const std::vector<double>& guess);
  // what_if_bends.cpp
  void gather();
  void spread(double least);
  Followed follow_bends(Bends bends, int round);
  double mild_slope_limit(int branch);
  void set_mild(int branch, double current);
  void forget_mild();

  const Circuit& circuit_;
  Flash flash_;
  WhatIfAccuracy accuracy_;
  RelayState base_relays_;
  NodeSolver solver_;
  NodeVolts nodes_;
  Spreading spreading_;
  std::vector<Line> lines_;                            // by branch
  std::vector<int> node_row_, row_node_;               // node <-> row of the factor
  std::vector<std::vector<int>> bent_at_, near_;       // by node: bent branches; all branches
  std::vector<std::vector<int>> coil_at_, output_at_;  // by node: devices that watch it
  std::vector<std::vector<int>> gated_by_coil_, gated_by_output_;
  std::vector<SparseVector> patterns_;  // by branch, made when first asked
  std::vector<char> has_pattern_;
  std::vector<SparseVector> node_patterns_;  // by node, to the reference
  std::vector<char> has_node_pattern_;
  std::vector<int> jumpy_;        // bent branches that may jump: compared after each answer that follows only such
  std::vector<std::vector<int>> watched_near_;   // by node: those over which 1 A put in there makes least_near or more
  std::vector<char> is_listed_;                  // by watched branch: scratch of find_moved()
  std::deque<SparseVector> added_patterns_;
  std::vector<int> base_island_;  // by node: the lowest node of its floating island, -1: hangs on the reference

  std::vector<Port> ports_;
  std::vector<std::size_t> added_;  // ports that were added
  std::vector<int> port_of_;        // by branch, -1
  std::vector<double> z_;           // couplings, row by row
  std::vector<MildBend> mild_;
  std::vector<int> mild_of_;        // by branch, -1
  std::vector<double> mild_sum_;    // by row of the factor: sum of the mild bends' patterns, times minus their currents
  std::vector<double> sum_;         // and of the ports' as well
  std::vector<int> sum_rows_;       // where it is not 0
  std::vector<char> is_in_sum_;     // by row
  std::vector<char> is_asked_;      // by branch: scratch of follow_bends()
  std::vector<double> moved_;       // by row of the factor: volts more than the base
  std::vector<int> touched_rows_, touched_, floated_;
  std::vector<char> floats_;   // by node
  std::vector<int> revived_;   // floating islands that hang on the reference now
  RelayState relays_;
  NodeVolts seen_;               // scratch of move_relays(): only nodes that devices watch
  std::vector<int> dead_coils_;  // opened: they let go whatever stands over them
  std::unique_ptr<Circuit> altered_;     // a copy for answers found anew, and its solver; made when first needed
  std::unique_ptr<NodeSolver> anew_;
  bool is_anew_ = false;         // the last answer was found anew: the ports' currents are not all there is
};

}  // namespace loomfolio
