#!/bin/sh
# From a fresh clone to a measured strip: installs the packages that are missing (Debian 12), builds,
# and measures or tests. Every step is skipped where it has been done already.
set -eu

root=$(CDPATH='' cd -- "$(dirname -- "$0")" && pwd)
sample=$root/sample_scans/good-135.tif

# Everything fogline needs, by what needs it. Nothing else in the project names a package.
build_packages='g++ cmake ninja-build
  libopencv-core-dev libopencv-imgproc-dev libeigen3-dev
  libtiff-dev libpng-dev libjpeg62-turbo-dev liblcms2-dev
  nlohmann-json3-dev libtomlplusplus-dev libboost-program-options-dev'
# The image package brings scans made by other hands; Python checks the report against its schema;
# groff sets the man pages.
test_packages='libgtest-dev libgmock-dev golang-golang-x-image-dev python3 python3-jsonschema
  groff-base'
check_packages='clang-format clang-tidy ccache python3'
fuzz_packages='clang libclang-rt-14-dev'

# How long to wait for another package manager to finish, in seconds: a fresh machine may be
# updating itself.
lock_patience=600

usage() {
  cat <<'TEXT'
Usage: setup.sh COMMAND

  measure [ARGUMENT...]  build fogline and measure a scan; the arguments are those of
                         `fogline measure`, without any the sample strip is measured
  test                   build, measure the sample strip, build the tests and pass them
  build                  build only; the program is build/release/fogline
  packages [SET...]      install packages only; the sets are build, test, check and fuzz,
                         without any build is meant
  help, --help           this text

Missing packages are installed with apt-get (through sudo unless run as root); nothing else
outside this folder is touched.
TEXT
}

say() { printf '\n== %s\n' "$*" >&2; }
fail() { printf 'setup.sh: %s\n' "$*" >&2; exit 1; }

is_installed() {
  case $(dpkg-query -W -f '${db:Status-Status} ' "$1" 2>/dev/null) in
    *not-installed*) return 1 ;;
    *installed*) return 0 ;;
    *) return 1 ;;
  esac
}

missing_of() {
  for package in "$@"; do
    is_installed "$package" || printf '%s ' "$package"
  done
}

# apt-get as root, silent but for trouble.
apt() {
  if [ "$(id -u)" -eq 0 ]; then
    as_root=''
  elif command -v sudo >/dev/null 2>&1; then
    as_root=sudo
  else
    fail "packages are missing ($missing) and there is no sudo; run 'setup.sh packages' as root first"
  fi
  $as_root env DEBIAN_FRONTEND=noninteractive apt-get -qq -o Dpkg::Use-Pty=0 \
    -o DPkg::Lock::Timeout=$lock_patience "$@" >/dev/null
}

# apt-get waits for dpkg's lock by itself, but not for the one of the package lists, and an update
# fails for little else: servers out of reach are only warned of.
update_lists() {
  tries_left=12
  until apt update; do
    tries_left=$((tries_left - 1))
    [ $tries_left -gt 0 ] || fail 'the package lists could not be updated (see above)'
    say 'Trying again in 10 seconds'
    sleep 10
  done
}

lists_know() {
  for package in "$@"; do
    apt-cache show --no-all-versions "$package" >/dev/null 2>&1 || return 1
  done
}

install_packages() {
  if ! command -v apt-get >/dev/null 2>&1; then
    say "Not a Debian system: taking for granted what these packages bring: $*"
    return
  fi
  missing=$(missing_of "$@")
  [ -n "$missing" ] || return 0
  say "Installing packages: $missing"
  # shellcheck disable=SC2086  # a list of words
  if lists_know $missing && apt install --yes --no-remove --no-install-recommends $missing; then
    return
  fi
  # Lists that are absent, or so old that the files they name are gone.
  say 'Updating the package lists'
  update_lists
  # shellcheck disable=SC2086
  apt install --yes --no-remove --no-install-recommends $missing ||
    fail 'the packages could not be installed (see above)'
}

# $1: ON or OFF, whether the tests are built too.
build() {
  say 'Building'
  (
    cd "$root"
    CMAKE_BUILD_PARALLEL_LEVEL=${CMAKE_BUILD_PARALLEL_LEVEL:-$(nproc)}
    export CMAKE_BUILD_PARALLEL_LEVEL
    cmake --preset release -D FOGLINE_TESTS="$1" -D FOGLINE_UNITY=ON --log-level=WARNING >/dev/null
    cmake --build --preset release >&2
  )
}

measure() {
  [ $# -gt 0 ] || set -- "$sample"
  say "Measuring: fogline measure $*"
  "$root/build/release/fogline" measure "$@"
}

run_tests() {
  say 'Testing'
  (cd "$root" && CTEST_PARALLEL_LEVEL=${CTEST_PARALLEL_LEVEL:-$(nproc)} ctest --preset release)
}

# shellcheck disable=SC2086  # the package sets are lists of words
main() {
  command=${1:-}
  [ $# -eq 0 ] || shift
  case $command in
    measure)
      install_packages $build_packages
      build OFF
      measure "$@"
      ;;
    test)
      [ $# -eq 0 ] || fail "'test' takes no argument"
      install_packages $build_packages $test_packages
      build ON
      measure
      run_tests
      ;;
    build)
      [ $# -eq 0 ] || fail "'build' takes no argument"
      install_packages $build_packages
      build OFF
      ;;
    packages)
      [ $# -gt 0 ] || set -- build
      list=''
      for name in "$@"; do
        case $name in
          build) list="$list $build_packages" ;;
          test) list="$list $test_packages" ;;
          check) list="$list $check_packages" ;;
          fuzz) list="$list $fuzz_packages" ;;
          *) fail "no set of packages is called '$name'; there are build, test, check and fuzz" ;;
        esac
      done
      install_packages $list
      ;;
    help | --help | -h) usage ;;
    *)
      usage >&2
      exit 2
      ;;
  esac
}

main "$@"
