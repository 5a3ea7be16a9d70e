# Read by the other scripts: versions, paths and how steps are told. Not run by itself.
set -euo pipefail
cd "$(dirname "${BASH_SOURCE[0]}")/.."

RUST_VERSION="$(sed -n 's/^channel = "\(.*\)"/\1/p' rust-toolchain.toml)"
TRUNK_VERSION=0.21.14
# Older ones accept the file and write an app that dies at its start.
WASM_OPT_VERSION=132
WASM_SPLIT_VERSION=0.2.4
CARGO_MUTANTS_VERSION=27.1.0
CARGO_DENY_VERSION=0.20.2
RUSTFILT_VERSION=0.2.2
# The tool and the crate must have the very same version.
WASM_BINDGEN_VERSION="$(grep -A1 '^name = "wasm-bindgen"$' Cargo.lock | sed -n 's/^version = "\(.*\)"/\1/p')"
WASM_TARGET=wasm32-unknown-unknown
TOOLS="$PWD/.tools"
export PATH="$TOOLS/bin:$TOOLS/wasm-opt/node_modules/.bin:$HOME/.cargo/bin:$PATH"

# Written by need-build.sh when only the system's own Rust can build for the browser.
if [ -f "$TOOLS/toolchain" ]; then
  WEB_TOOLCHAIN="$(cat "$TOOLS/toolchain")"
else
  WEB_TOOLCHAIN=""
fi

# step WHAT HOW_LONG COMMAND...: says what is done and how long it usually takes, does it, says how long it took.
step() {
  local what="$1" usual="$2" start="$SECONDS"
  shift 2
  printf '\n== %s (usually %s)\n' "$what" "$usual"
  "$@"
  printf -- '-- %s: %s s\n' "$what" "$((SECONDS - start))"
}

give_up() {
  printf '\n%s\n' "$@" >&2
  exit 1
}

has() {
  command -v "$1" >/dev/null 2>&1
}

# Runs a command as root: directly, or through sudo.
as_root() {
  if [ "$(id -u)" = 0 ]; then
    "$@"
  else
    sudo "$@"
  fi
}

can_use_apt() {
  has apt-get && { [ "$(id -u)" = 0 ] || has sudo; }
}

apt_install() {
  as_root apt-get update -qq
  as_root env DEBIAN_FRONTEND=noninteractive apt-get install -y --no-install-recommends "$@"
}

# Installs the packages of a lock file into FOLDER, unless that very lock file is installed there already.
# npm_ci FOLDER [OPTION...]
npm_ci() {
  local folder="$1" sum
  shift
  sum="$(cat "$folder/package-lock.json" | cksum) $*"
  if [ ! -f "$folder/node_modules/.installed" ] || [ "$(cat "$folder/node_modules/.installed")" != "$sum" ]; then
    # The system's Chromium is used, so none is downloaded.
    (cd "$folder" && PLAYWRIGHT_SKIP_BROWSER_DOWNLOAD=1 npm ci --no-audit --no-fund "$@")
    printf '%s' "$sum" >"$folder/node_modules/.installed"
  fi
}

find_chromium() {
  local name
  for name in "${CHROME_PATH:-}" chromium chromium-browser google-chrome; do
    if [ -n "$name" ] && has "$name"; then
      command -v "$name"
      return
    fi
  done
}

# Runs the browser tests whose file or name holds one of the words, all without words; capitals do not matter.
browser_tests() {
  local words
  words="$(printf '%s\n' "$@" | sed 's/[][\.*^$+?(){}|/]/\\&/g' | paste -sd '|')"
  tests/browser/node_modules/.bin/playwright test --config tests/browser/playwright.config.mjs --grep "$words"
}
