#!/usr/bin/env bash
# Tries every fault with its full number of trials, lives 3,000 lives, and writes the table of both; fails when anything is lost.
. "$(dirname "${BASH_SOURCE[0]}")/common.sh"
.build/build.sh
.build/need-browser.sh
CHROME_PATH="$(find_chromium)"
FAULT_LINES="$(mktemp)"
trap 'rm -f "$FAULT_LINES"' EXIT
export CHROME_PATH FAULT_LINES
export KILLS="${KILLS:-50}" TAB_SECONDS="${TAB_SECONDS:-60}"
step "Faults of a place, natively" "2 min" cargo test --no-default-features --test store_faults
step "Faults in the browsers" "30 min" browser_tests faults_ 'every fault of the storage' 'an entry damaged' 'half typed'
LIVES=3000 .build/lives.sh
node .build/prove.mjs "$FAULT_LINES"
