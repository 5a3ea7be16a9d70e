#!/usr/bin/env bash
# Installs what a release build needs and is not there yet. Safe to run again.
. "$(dirname "${BASH_SOURCE[0]}")/common.sh"

has cargo || give_up "Rust is missing: install it with rustup (https://rustup.rs), then run this again."
has node && has npm || give_up "Node.js 20 or newer with npm is missing: install it (https://nodejs.org), then run this again."
[ "$(node -p 'Number(process.versions.node.split(".")[0]) >= 20')" = true ] ||
  give_up "Node.js $(node --version) is too old: 20 or newer is needed."

if has rustup && ! rustup toolchain list | grep -q "^$RUST_VERSION"; then
  step "Installing Rust $RUST_VERSION" "1 min" rustup toolchain install "$RUST_VERSION" --profile minimal -c clippy -c rustfmt
fi

can_build_for_browser() {
  [ -n "$(find "$(rustc --print sysroot)/lib/rustlib/$WASM_TARGET/lib" -name 'libstd-*.rlib' 2>/dev/null)" ]
}

# The way without the target's download: the system's own Rust for the web, and its standard library built once.
use_system_rust() {
  can_use_apt || give_up "Rust's browser target cannot be downloaded and there is no apt-get here." \
    "By hand: rustup target add $WASM_TARGET --toolchain $RUST_VERSION"
  has rustup || give_up "rustup is missing: install it (https://rustup.rs), then run this again."
  apt_install rustc-web cargo-web rust-web-src lld-22
  rustup toolchain link web /usr
  mkdir -p "$TOOLS/std/src" "$TOOLS/linker"
  printf '[package]\nname = "std-only"\nversion = "0.0.0"\nedition = "2021"\n[workspace]\n' >"$TOOLS/std/Cargo.toml"
  : >"$TOOLS/std/src/lib.rs"
  (
    cd "$TOOLS/std"
    RUSTUP_TOOLCHAIN=web RUSTC=/usr/bin/rustc RUSTC_BOOTSTRAP=1 RUSTFLAGS=-Cembed-bitcode=yes CARGO_TARGET_DIR="$TOOLS/std/target" \
      /usr/bin/cargo build --release -Zbuild-std=std,panic_abort --target "$WASM_TARGET"
  )
  as_root mkdir -p "/usr/lib/rustlib/$WASM_TARGET/lib" /usr/lib/rustlib/x86_64-unknown-linux-gnu/bin
  as_root cp "$TOOLS/std/target/$WASM_TARGET/release/deps/"*.rlib "/usr/lib/rustlib/$WASM_TARGET/lib/"
  as_root ln -sf /usr/bin/lld-22 /usr/lib/rustlib/x86_64-unknown-linux-gnu/bin/rust-lld
  printf 'web' >"$TOOLS/toolchain"
}

if [ -z "$WEB_TOOLCHAIN" ] && ! can_build_for_browser; then
  if has rustup && step "Adding Rust's browser target" "20 s" rustup target add "$WASM_TARGET" --toolchain "$RUST_VERSION"; then
    can_build_for_browser || give_up "The browser target is installed, but its standard library is not where it should be."
  else
    step "Building the browser target with the system's Rust" "5 min" use_system_rust
  fi
fi

# install CRATE VERSION [OPTION...]: a tool of Rust, not optimised, since that takes longer than it saves.
install() {
  local crate="$1" version="$2"
  shift 2
  env CARGO_PROFILE_DEV_DEBUG=0 cargo install --debug --root "$TOOLS" "$crate" --version "$version" "$@"
}

has_trunk() {
  [ "$(trunk --version 2>/dev/null || true)" = "trunk $TRUNK_VERSION" ]
}

has_wasm_bindgen() {
  [ "$(wasm-bindgen --version 2>/dev/null || true)" = "wasm-bindgen $WASM_BINDGEN_VERSION" ]
}

has_wasm_split() {
  has wasm-split-cli && {
    cargo install --list --root "$TOOLS" 2>/dev/null
    cargo install --list
  } | grep -q "^wasm_split_cli_support v$WASM_SPLIT_VERSION:"
}

install_small_tools() {
  has_wasm_bindgen || install wasm-bindgen-cli "$WASM_BINDGEN_VERSION"
  has_wasm_split || install wasm_split_cli_support "$WASM_SPLIT_VERSION" --locked --force --features build-binary
}

# The program as Trunk asks for it, which then finds it done.
build_program() {
  . .build/common.sh
  env ${WEB_TOOLCHAIN:+"RUSTUP_TOOLCHAIN=$WEB_TOOLCHAIN"} cargo build --locked --release --target "$WASM_TARGET" --bin perchlight
}

# Side by side, since each of them keeps only one core busy at its end.
install_tools() {
  local log="$TOOLS/beside.log" beside is_built=true
  mkdir -p "$TOOLS"
  (
    set -e
    install_small_tools
    build_program
  ) >"$log" 2>&1 &
  beside="$!"
  has_trunk || install trunk "$TRUNK_VERSION" --locked || is_built=false
  wait "$beside" || is_built=false
  if [ "$is_built" = false ]; then
    cat "$log"
    give_up "A tool or the program could not be built."
  fi
}

if ! { has_trunk && has_wasm_bindgen && has_wasm_split; }; then
  step "Building Trunk, wasm-bindgen and wasm-split into .tools, and the program beside them" "5 to 10 min" install_tools
fi

if ! wasm-opt --version 2>/dev/null | grep -q "version $WASM_OPT_VERSION\b"; then
  mkdir -p "$TOOLS/wasm-opt"
  cp .build/wasm-opt/package.json .build/wasm-opt/package-lock.json "$TOOLS/wasm-opt/"
  step "Installing wasm-opt $WASM_OPT_VERSION into .tools" "10 s" npm_ci "$TOOLS/wasm-opt"
fi
