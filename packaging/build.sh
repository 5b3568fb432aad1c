# shellcheck shell=bash
# How the scripts beside it configure and build, each in a folder of its own. Sourced after packages.sh.

# The built-in plan that is shown first.
export EXAMPLE=spray
root=$(cd "$(dirname "${BASH_SOURCE[0]}")/.." && pwd)

# With these, ccache answers for a fresh clone elsewhere and for precompiled headers.
export CCACHE_BASEDIR=$root CCACHE_NOHASHDIR=1
export CCACHE_SLOPPINESS=pch_defines,time_macros,include_file_mtime,include_file_ctime

# A machine without a locale would make Qt and the compilers fall back to ASCII.
[ "$(locale charmap 2>/dev/null)" = UTF-8 ] || export LC_ALL=C.UTF-8

# build FOLDER CMAKE-OPTION...
# Configures and builds what has changed. ccache is looked for each time, as it may come and go.
# A folder that was moved with its checkout is begun anew.
build() {
  local folder=$root/$1 fresh=() home
  shift
  if [ -f "$folder/CMakeCache.txt" ]; then
    home=$(sed -n 's/^CMAKE_HOME_DIRECTORY:INTERNAL=//p' "$folder/CMakeCache.txt")
    [ "$home" = "$root" ] || fresh=(--fresh)
  fi
  cmake "${fresh[@]}" -G Ninja -S "$root" -B "$folder" -U CCACHE --no-warn-unused-cli "$@" >/dev/null &&
    cmake --build "$folder"
}

# The program as it is used, in build/.
build_program() {
  if [ -x "$root/build/stemwright" ]; then
    say "Building what has changed…"
  else
    say "Building the program; the first time this takes some minutes…"
  fi
  build build -DCMAKE_BUILD_TYPE=Release -DBUILD_APP=ON ||
    stop "The program could not be built; the compiler's message stands above."
  # Outside a session Qt has no folder for its sockets and would warn about it.
  if [ -z "${XDG_RUNTIME_DIR:-}" ]; then
    export XDG_RUNTIME_DIR=$root/build/run
    mkdir -p "$XDG_RUNTIME_DIR" && chmod 700 "$XDG_RUNTIME_DIR"
  fi
}
