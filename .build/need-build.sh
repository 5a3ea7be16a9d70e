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

if [ "$(trunk --version 2>/dev/null || true)" != "trunk $TRUNK_VERSION" ]; then
  step "Installing Trunk $TRUNK_VERSION into .tools" "4 to 8 min" \
    env CARGO_PROFILE_DEV_DEBUG=0 cargo install --locked --debug --root "$TOOLS" trunk --version "$TRUNK_VERSION"
fi

if [ "$(wasm-bindgen --version 2>/dev/null || true)" != "wasm-bindgen $WASM_BINDGEN_VERSION" ]; then
  step "Installing wasm-bindgen $WASM_BINDGEN_VERSION into .tools" "2 to 5 min" \
    env CARGO_PROFILE_DEV_DEBUG=0 cargo install --debug --root "$TOOLS" wasm-bindgen-cli --version "$WASM_BINDGEN_VERSION"
fi

has_wasm_split() {
  has wasm-split-cli && {
    cargo install --list --root "$TOOLS" 2>/dev/null
    cargo install --list
  } | grep -q "^wasm_split_cli_support v$WASM_SPLIT_VERSION:"
}

if ! has_wasm_split; then
  step "Installing wasm-split-cli $WASM_SPLIT_VERSION into .tools" "1 to 3 min" \
    env CARGO_PROFILE_DEV_DEBUG=0 cargo install --locked --debug --force --root "$TOOLS" wasm_split_cli_support --version "$WASM_SPLIT_VERSION" \
    --features build-binary
fi

if ! wasm-opt --version 2>/dev/null | grep -q "version $WASM_OPT_VERSION\b"; then
  mkdir -p "$TOOLS/wasm-opt"
  cp .build/wasm-opt/package.json .build/wasm-opt/package-lock.json "$TOOLS/wasm-opt/"
  step "Installing wasm-opt $WASM_OPT_VERSION into .tools" "10 s" npm_ci "$TOOLS/wasm-opt"
fi
