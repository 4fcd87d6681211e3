// SPDX-License-Identifier: MIT
#include "solve/solution.h"
