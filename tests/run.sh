#!/bin/sh
# Installs what is missing, builds, and runs every test, as many programs at once as there are processors. The last line
# is `N passed, N failed`.
set -eu
cd "$(dirname "$0")/.."
. ./tests/setup.sh
install_missing tests
cmake --preset whole >/dev/null
cmake --build --preset whole
logs=$(mktemp -d)
trap 'rm -rf "$logs"' EXIT
# Each program leaves NAME.log and NAME.code; the longest go first, so that none is waited for alone at the end: the three that
# take longest, then the others by size.
{
  for room in commands layout sheets; do echo "build/whole/tests/$room/test_$room"; done
  find build/whole/tests -maxdepth 2 -type f -name 'test_*' -printf '%s %p\n' | sort -rn | cut -d' ' -f2
} | awk '!seen[$0]++' | xargs -P "$(nproc)" -I '{}' sh -c '
  code=0
  "$1" >"$2/$(basename "$1").log" 2>&1 || code=$?
  echo "$code" >"$2/$(basename "$1").code"' run '{}' "$logs"
passed=0
failed=0
for log in "$logs"/*.log; do
  name=$(basename "$log" .log)
  code=$(cat "$logs/$name.code")
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
