#!/bin/sh
# Installs what is missing, builds, and runs every test. The last line is `N passed, N failed`.
set -eu
cd "$(dirname "$0")/.."
. ./tests/setup.sh
install_missing tests
cmake --preset dev >/dev/null
cmake --build --preset dev
passed=0
failed=0
log=$(mktemp)
trap 'rm -f "$log"' EXIT
for program in build/dev/tests/*/test_*; do
  [ -x "$program" ] || continue
  name=$(basename "$program")
  code=0
  "$program" >"$log" 2>&1 || code=$?
  cat "$log"
  p=$(sed -n 's/^\[doctest\] test cases: *[0-9]* | *\([0-9]*\) passed.*/\1/p' "$log" | tail -1)
  f=$(sed -n 's/^\[doctest\] test cases:.*| *\([0-9]*\) failed.*/\1/p' "$log" | tail -1)
  if [ -z "$p" ] || { [ "$code" -ne 0 ] && [ "${f:-0}" -eq 0 ]; }; then
    echo "$name: ended with code $code before its summary"
    f=$((${f:-0} + 1))
  fi
  passed=$((passed + ${p:-0}))
  failed=$((failed + ${f:-0}))
done
echo "$passed passed, $failed failed"
[ "$failed" -eq 0 ] && [ "$passed" -gt 0 ]
