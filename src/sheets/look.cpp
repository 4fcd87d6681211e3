// SPDX-License-Identifier: MIT
#include "sheets/look.h"
