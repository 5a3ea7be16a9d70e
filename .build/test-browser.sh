#!/usr/bin/env bash
# The built app in a browser. Words after it choose tests whose file or name holds one of them.
. "$(dirname "${BASH_SOURCE[0]}")/common.sh"
.build/build.sh
.build/need-browser.sh
CHROME_PATH="$(find_chromium)"
export CHROME_PATH
step "Browser tests" "1 to 3 min" node tests/browser/run.mjs "$@"
