// SPDX-License-Identifier: MIT
#include "layout/laid.h"
