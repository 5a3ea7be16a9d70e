#!/usr/bin/env bash
# Counts what the jobs of an owner take, taps, characters, screens and scrolls; WRITE=1 puts the table into DEVELOPERS.md.
. "$(dirname "${BASH_SOURCE[0]}")/common.sh"
.build/build.sh
.build/need-browser.sh
CHROME_PATH="$(find_chromium)"
JOB_LINES="$(mktemp)"
trap 'rm -f "$JOB_LINES"' EXIT
export CHROME_PATH JOB_LINES
step "Counted jobs" "2 min" browser_tests jobs.test
node .build/jobs.mjs "$JOB_LINES" "${WRITE:-}"
