#!/usr/bin/env bash
# Builds the release and tells which part of each piece of the program takes how many bytes.
. "$(dirname "${BASH_SOURCE[0]}")/common.sh"
.build/build.sh
if ! rustfilt --version 2>/dev/null | grep -q " $RUSTFILT_VERSION\$"; then
  step "Installing rustfilt $RUSTFILT_VERSION into .tools" "15 s" \
    env CARGO_PROFILE_DEV_DEBUG=0 cargo install --locked --debug --root "$TOOLS" rustfilt --version "$RUSTFILT_VERSION"
fi
node .build/sizes.mjs
