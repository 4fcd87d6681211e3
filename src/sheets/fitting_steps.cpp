// SPDX-License-Identifier: MIT
#include "sheets/fitting_steps.h"

namespace loomfolio {

const FittingProcedure& fitting_procedure(FittingShape shape) {
  switch (shape) {
    case FittingShape::blade:
      return blade_procedure();
    case FittingShape::contact:
      return contact_procedure();
    case FittingShape::sealed:
      return sealed_procedure();
    case FittingShape::ring:
      return ring_procedure();
    case FittingShape::bullet:
      return bullet_procedure();
    case FittingShape::splice:
      return splice_procedure();
    case FittingShape::lead:
      return lead_procedure();
    case FittingShape::cap:
      return cap_procedure();
    case FittingShape::bare:
      return bare_procedure();
  }
  return bare_procedure();
}

}  // namespace loomfolio
