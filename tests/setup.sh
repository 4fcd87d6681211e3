# Sourced by samples/print.sh and tests/run.sh: the Debian 12 packages that each needs, and their installation.
program_packages="cmake ninja-build g++ pkg-config libcairo2-dev libpango1.0-dev libfontconfig-dev libtomlplusplus-dev
libeigen3-dev libcli11-dev libqpdf-dev fonts-b612 fonts-noto-core"
test_packages="doctest-dev poppler-utils qpdf ngspice python3"

# install_missing program|tests: installs the packages that are not there, as root or with sudo.
install_missing() {
  wanted=$program_packages
  [ "$1" = tests ] && wanted="$wanted $test_packages"
  missing=
  for package in $wanted; do
    dpkg-query -W -f='${Status}' "$package" 2>/dev/null | grep -q 'ok installed' || missing="$missing $package"
  done
  [ -n "$missing" ] || return 0
  echo "installing:$missing"
  sudo=
  [ "$(id -u)" -eq 0 ] || sudo=sudo
  $sudo apt-get update -qq
  # shellcheck disable=SC2086
  DEBIAN_FRONTEND=noninteractive $sudo apt-get install -y -qq --no-install-recommends $missing >/dev/null
}
