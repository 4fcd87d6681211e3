#!/bin/sh
# Installs what is missing, builds, and prints every sample to samples/printed/. Says what it printed.
set -eu
cd "$(dirname "$0")/.."
. ./tests/setup.sh
install_missing program
cmake --preset release -DLOOMFOLIO_TESTS=OFF >/dev/null
cmake --build --preset release
mkdir -p samples/printed
printed=0
failed=0
for spec in samples/*.toml; do
  pdf=samples/printed/$(basename "$spec" .toml).pdf
  if build/release/loomfolio print "$spec" -o "$pdf"; then
    echo "$spec -> $pdf, $(($(wc -c <"$pdf") / 1024)) kB"
    printed=$((printed + 1))
  else
    echo "$spec: not printed"
    failed=$((failed + 1))
  fi
done
echo "$printed printed to samples/printed/, $failed not"
[ "$failed" -eq 0 ] && [ "$printed" -gt 0 ]
