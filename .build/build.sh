#!/usr/bin/env bash
# Builds the release into dist/.
. "$(dirname "${BASH_SOURCE[0]}")/common.sh"
.build/need-build.sh
. .build/common.sh

if [ -n "$WEB_TOOLCHAIN" ]; then
  export RUSTUP_TOOLCHAIN="$WEB_TOOLCHAIN"
fi
step "Fetching the crates of Cargo.lock" "20 s, nothing when they are there" cargo fetch --locked
# Some environments set NO_COLOR to a number, which Trunk refuses to read.
unset NO_COLOR
step "Release build" "3 min the first time, 1 min later" trunk build --release --offline
