// SPDX-License-Identifier: MIT
#include "check/check.h"
