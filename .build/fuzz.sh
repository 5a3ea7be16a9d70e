#!/usr/bin/env bash
# Hostile input: every reader of foreign text, each for SECONDS (60). Names after it choose targets.
. "$(dirname "${BASH_SOURCE[0]}")/common.sh"
SECONDS_EACH="${SECONDS_EACH:-60}"
FUZZ_VERSION=0.13.2

has cargo || give_up "Rust is missing: install it with rustup (https://rustup.rs), then run this again."
if [ "$(cargo fuzz --version 2>/dev/null || true)" != "cargo-fuzz $FUZZ_VERSION" ]; then
  step "Installing cargo-fuzz $FUZZ_VERSION into .tools" "2 min" \
    env CARGO_PROFILE_DEV_DEBUG=0 cargo install --locked --debug --root "$TOOLS" cargo-fuzz --version "$FUZZ_VERSION"
fi
# Without a sanitizer: it would want an unreleased compiler, and this crate forbids unsafe code.
FOLDER=tests/fuzz
step "Seeds" "1 min the first time" cargo run --quiet --manifest-path "$FOLDER/Cargo.toml" --example seeds
TARGETS=("$@")
if [ "${#TARGETS[@]}" = 0 ]; then
  TARGETS=(link_text file_text pasted_text record_line)
fi
for target in "${TARGETS[@]}"; do
  step "$target" "$SECONDS_EACH s after 2 min of building" \
    cargo fuzz run --sanitizer none --fuzz-dir "$FOLDER" "$target" -- -max_total_time="$SECONDS_EACH" -max_len=16384 -timeout=10 -rss_limit_mb=2048 -print_final_stats=1
done
