# shellcheck shell=bash disable=SC2034
# The one home of the Debian 12 packages the project needs, and of installing those that are missing.
# Sourced by the scripts beside it.

# To build and run the program. The xcb and offscreen platforms come with libqt6gui6 (by qt6-base-dev).
# qt6-tools-dev brings lrelease, for the plural forms.
# fonts-inter is the font of the window and of the paper; without a font at all nothing can be written.
BUILD_PACKAGES=(g++ cmake ninja-build qt6-base-dev qt6-svg-dev qt6-tools-dev nlohmann-json3-dev
                fontconfig fonts-inter fonts-dejavu-core)

# Worth having, never a reason to stop: a second build is quicker with ccache, and fonts-droid-fallback has letters
# for names in Chinese, Japanese and Korean (a small one; any other will do).
BUILD_NICETIES=(ccache fonts-droid-fallback)

# A desktop that speaks Wayland only, without an X server inside it.
WAYLAND_PACKAGES=(qt6-wayland)

# The test frame, and the independent libraries and tools that results are compared with.
TEST_PACKAGES=(git libgtest-dev liblcms2-dev libglpk-dev liblemon-dev poppler-utils qpdf units
               xvfb xauth python3 python3-jsonschema librsvg2-bin)
TEST_NICETIES=(clang-format-14 shellcheck)

BENCH_PACKAGES=(libbenchmark-dev libglpk-dev)

say() { printf '%s\n' "$*"; }
stop() { printf '%s\n' "$*" >&2; exit 2; }

# Prints those of the named packages that are not installed.
missing_packages() {
  local package status
  for package in "$@"; do
    status=$(dpkg-query --show --showformat='${db:Status-Status}' "$package" 2>/dev/null) || status=''
    [ "$status" = installed ] || printf '%s\n' "$package"
  done
}

# install_missing PACKAGE... [-- NICETY...]
# Installs what is missing. Niceties come along when something else is missing, and only if apt knows them.
install_missing() {
  local needed=() nice=() missing=() as_root=() package
  while [ $# -gt 0 ] && [ "$1" != -- ]; do needed+=("$1"); shift; done
  [ $# -eq 0 ] || { shift; nice=("$@"); }

  if ! command -v dpkg-query >/dev/null || ! command -v apt-get >/dev/null; then
    stop "This script installs with apt-get, which is not here: build with CMake as README.md shows, with the packages that packaging/packages.sh lists."
  fi
  mapfile -t missing < <(missing_packages "${needed[@]}")
  [ ${#missing[@]} -gt 0 ] || return 0

  if [ "$(id -u)" -ne 0 ]; then
    command -v sudo >/dev/null ||
      stop "These packages are missing, and only root can install them (there is no sudo): ${missing[*]}."
    as_root=(sudo)
  fi
  as_root+=(env DEBIAN_FRONTEND=noninteractive)

  say "Reading the lists of packages…"
  "${as_root[@]}" apt-get update -qq </dev/null ||
    say "The lists of packages could not be renewed; going on with those that are here."
  for package in "${nice[@]}"; do
    if [ -n "$(missing_packages "$package")" ] && apt-cache show "$package" >/dev/null 2>&1; then
      missing+=("$package")
    fi
  done

  say "Installing with apt-get: ${missing[*]}."
  local quiet=/dev/stdout  # a person sees how far it is; a log needs only the errors
  [ -t 1 ] || quiet=/dev/null
  "${as_root[@]}" apt-get install --yes -o DPkg::Lock::Timeout=300 --no-install-recommends "${missing[@]}" </dev/null >"$quiet" ||
    stop "apt-get could not install what is missing: ${missing[*]}."
}
