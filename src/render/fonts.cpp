// SPDX-License-Identifier: MIT
#include "render/render.h"
