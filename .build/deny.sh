#!/usr/bin/env bash
# Licences, crates and sources of everything in Cargo.lock against .deny.toml, and known faults where
# their list can be had. Installs cargo-deny when it is not there yet.
. "$(dirname "${BASH_SOURCE[0]}")/common.sh"

has cargo || give_up "Rust is missing: install it with rustup (https://rustup.rs), then run this again."
if [ "$(cargo-deny --version 2>/dev/null || true)" != "cargo-deny $CARGO_DENY_VERSION" ]; then
  step "Installing cargo-deny $CARGO_DENY_VERSION into .tools" "2 to 4 min" \
    env CARGO_PROFILE_DEV_DEBUG=0 cargo install --locked --debug --root "$TOOLS" cargo-deny --version "$CARGO_DENY_VERSION"
fi

# The list of known faults lies at another host. Without it the other checks still count.
known_faults() {
  if cargo deny --locked fetch db >/dev/null 2>&1; then
    cargo deny --locked --offline check advisories
  else
    echo "not checked: the list of known faults cannot be fetched here"
  fi
}

step "Fetching the crates of Cargo.lock" "20 s, nothing when they are there" cargo fetch --locked
step "Licences, crates and sources" "5 s" cargo deny --locked --offline check licenses bans sources
step "Known faults of the crates" "5 s" known_faults
