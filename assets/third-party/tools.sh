# Sourced by web/run and tests/run: the packages that a fresh machine lacks, and builds by preset that say what they do.
# Expects the working folder to be the project's root.

say() { printf '== %s\n' "$*"; }
complain() { printf '%s\n' "$*" >&2; }

packages_for() {  # native, web, comparisons, fuzz or browsers: the Debian packages
  case $1 in
    native) echo cmake ninja-build ccache g++ ca-certificates xz-utils doctest-dev libeigen3-dev libstb-dev rapidjson-dev fonts-b612 python3-fonttools ;;
    web) echo emscripten node-acorn esbuild ;;
    comparisons) echo geographiclib-tools ;;
    fuzz) echo clang llvm libclang-rt-dev ;;
    browsers) echo chromium firefox-esr xvfb webkit2gtk-driver poppler-utils fonts-dejavu-core fonts-lohit-deva fonts-wqy-microhei ;;
  esac
}

# Installs what is missing as root; otherwise prints the one line that would, and fails. Elsewhere than on Debian the
# tools are the user's own business (DEVELOPERS.md).
need() {  # purpose...
  command -v dpkg-query >/dev/null || return 0
  local missing=() package purpose
  for purpose in "$@"; do
    for package in $(packages_for "$purpose"); do
      dpkg-query --show --showformat '${db:Status-Status}\n' "$package" 2>/dev/null | grep -q '^installed$' || missing+=("$package")
    done
  done
  command -v node >/dev/null || missing+=(nodejs)
  command -v npm >/dev/null || missing+=(npm)
  [ ${#missing[@]} -gt 0 ] || return 0
  if [ "$(id -u)" -ne 0 ]; then
    complain "These packages are missing. Install them, then run this again:"
    complain "  sudo apt-get install -y --no-install-recommends ${missing[*]}"
    return 1
  fi
  say "installing ${missing[*]}"
  local log=build/log/packages.txt
  mkdir -p build/log
  { apt-get -q update && DEBIAN_FRONTEND=noninteractive apt-get -q install -y --no-install-recommends "${missing[@]}"; } >"$log" 2>&1 ||
    { tail -n 20 "$log" >&2; return 1; }
}

# Configures (quick when nothing has changed) and builds; the compiler's words are in build/log and shown when it fails.
build() {  # preset target...
  local preset=$1 log=build/log/$1.txt
  shift
  mkdir -p build/log
  say "building $preset: $*"
  { cmake --preset "$preset" -DFOGSHEET_WERROR="${FOGSHEET_WERROR:-OFF}" ${CI:+-DCMAKE_CXX_FLAGS_DEBUG=-g1} &&
    cmake --build --preset "$preset" --parallel "$(nproc 2>/dev/null || echo 2)" --target "$@"; } >"$log" 2>&1 ||
    { sed -n '/^FAILED\|[Ee]rror/,$p' "$log" | cut -c 1-300 | grep -v '^\[[0-9/]*\]' | head -n 60 >&2; complain "building $preset failed; all of it is in $log"; return 1; }
}
