#!/usr/bin/env bash
# Every check: native ones first, then the built app in a browser.
. "$(dirname "${BASH_SOURCE[0]}")/common.sh"
.build/need-build.sh
. .build/common.sh

no_screen_code_in_the_pure_part() {
  if cargo tree --no-default-features -i leptos >/dev/null 2>&1; then
    give_up "Leptos has come into the build without the ui feature."
  fi
  echo "no Leptos without the ui feature"
}

FUZZ=tests/fuzz/Cargo.toml

step "Formatting" "2 s" cargo fmt --check
step "Formatting of the fuzz targets" "1 s" cargo fmt --check --manifest-path "$FUZZ"
step "Native tests and examples" "3 min the first time, 1 min later" cargo test --no-default-features
# In the same target folder, so that the crates of both are built once. The fuzzer itself: make fuzz.
step "Fuzz targets and their damaged seeds" "1 min the first time" \
  cargo test --locked --manifest-path "$FUZZ" --target-dir "${CARGO_TARGET_DIR:-target}"
.build/test-calendar.sh
step "Lints of the pure part" "1 min" cargo clippy --all-targets --no-default-features -- -D warnings
step "Lints with the screens" "2 min the first time" cargo clippy --all-targets -- -D warnings
step "Documentation" "20 s" env RUSTDOCFLAGS="-D warnings" cargo doc --no-deps --no-default-features
step "The pure part stays apart" "1 s" no_screen_code_in_the_pure_part
.build/deny.sh
.build/test-browser.sh
