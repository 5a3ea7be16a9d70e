#!/usr/bin/env bash
# Takes the pictures of the README from the built app.
. "$(dirname "${BASH_SOURCE[0]}")/common.sh"
.build/build.sh
.build/need-browser.sh
CHROME_PATH="$(find_chromium)"
export CHROME_PATH
step "Pictures of the README" "20 s" node .build/readme.mjs
