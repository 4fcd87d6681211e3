// SPDX-License-Identifier: MIT
#include "read/read.h"
