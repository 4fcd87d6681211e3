// SPDX-License-Identifier: MIT
// An entry for libFuzzer: any bytes are read as a spec, a kind, a paper and words; what is found is printed. Built on
// request only, with clang:
//     cmake -S . -B build/fuzz -G Ninja -DCMAKE_CXX_COMPILER=clang++ -DCMAKE_BUILD_TYPE=Debug -DLOOMFOLIO_SANITIZE=ON \
//       -DCMAKE_CXX_FLAGS="-O1 -fsanitize=fuzzer-no-link"
//     cmake --build build/fuzz --target fuzz_read
//     build/fuzz/tests/read/fuzz_read -max_len=4000 CORPUS samples tests/suite/*
#include <cstddef>
#include <cstdint>

#include "read/read.h"
#include "read/small_spec.h"
#include "read/test_files.h"

using namespace loomfolio;

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
  const std::string text(reinterpret_cast<const char*>(data), size);
  TestFiles files;
  files.in_memory["l/parts/fuzz.toml"] = text;
  files.in_memory["l/papers/fuzz.toml"] = text;
  files.in_memory["l/words/en.toml"] = "a = \"b {c}\"\n";
  files.in_memory["l/words/fuzz.toml"] = text;
  Sources sources;
  Diagnostics findings;
  Library library = read_library("l", files, sources, findings);
  read_words(library, "fuzz", files, sources, findings);
  read_spec("fuzz.toml", text, library, sources, findings);
  // The library that every spec meets has kinds; those of a small spec stand for them.
  read_spec("behind.toml", small_spec + text, library, sources, findings);
  sort_diagnostics(findings);
  print_diagnostics(findings, sources, Paint::coloured);
  print_diagnostics_json(findings, sources);
  return 0;
}
