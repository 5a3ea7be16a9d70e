#!/usr/bin/env bash
# Builds the release and tells its size and its Lighthouse numbers.
. "$(dirname "${BASH_SOURCE[0]}")/common.sh"
.build/build.sh
.build/need-browser.sh
CHROME_PATH="$(find_chromium)"
export CHROME_PATH
mkdir -p "$TOOLS/lighthouse"
cp .build/lighthouse/package.json .build/lighthouse/package-lock.json "$TOOLS/lighthouse/"
step "Packages of Lighthouse" "40 s, nothing when they are there" npm_ci "$TOOLS/lighthouse"
step "Sizes and Lighthouse, five runs" "2 min" node .build/measure.mjs
