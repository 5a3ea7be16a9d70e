#!/usr/bin/env bash
# Builds the release and measures it against its budgets; WRITE=1 puts the table into DEVELOPERS.md.
. "$(dirname "${BASH_SOURCE[0]}")/common.sh"
.build/build.sh
.build/need-browser.sh
CHROME_PATH="$(find_chromium)"
export CHROME_PATH
mkdir -p "$TOOLS/lighthouse"
cp .build/lighthouse/package.json .build/lighthouse/package-lock.json "$TOOLS/lighthouse/"
step "Packages of Lighthouse" "40 s, nothing when they are there" npm_ci "$TOOLS/lighthouse"
step "Packages of the twin" "1 min, nothing when they are there" npm_ci tests/bench/twin
step "The twin" "5 s" node tests/bench/twin/build.mjs dist/perchlight-*.css
step "Sizes, Lighthouse, times and memory" "6 min, 3 more the first time" node .build/measure.mjs
