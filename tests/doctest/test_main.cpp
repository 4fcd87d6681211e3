// SPDX-License-Identifier: MIT
// Both words: the header itself comes precompiled, before this file can say the first.
#define DOCTEST_CONFIG_IMPLEMENT
#define DOCTEST_CONFIG_IMPLEMENT_WITH_MAIN
#include <doctest/doctest.h>
