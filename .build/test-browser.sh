#!/usr/bin/env bash
# The built app in a browser. Words after it choose tests whose file or name holds one of them.
. "$(dirname "${BASH_SOURCE[0]}")/common.sh"
.build/build.sh
.build/need-browser.sh
CHROME_PATH="$(find_chromium)"
export CHROME_PATH
# Without `step`: the last line is the count of tests.
printf '\n== Browser tests (usually 9 to 13 min)\n'
browser_tests "$@"
