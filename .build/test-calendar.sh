#!/usr/bin/env bash
# The calendar files read by Python's icalendar; installs it into .tools when it is not there.
. "$(dirname "${BASH_SOURCE[0]}")/common.sh"
if ! python3 -c 'import ensurepip, venv' 2>/dev/null; then
  can_use_apt || give_up "Python 3.10 or newer with venv is missing: install it, then run this again."
  step "Installing Python" "30 s" apt_install python3 python3-venv
fi
READER="$TOOLS/calendar-reader"
if ! cmp -s tests/calendars/requirements.txt "$READER/installed"; then
  step "Installing the calendar reader into .tools" "20 s" python3 -m venv "$READER"
  "$READER/bin/pip" install --quiet --disable-pip-version-check -r tests/calendars/requirements.txt
  cp tests/calendars/requirements.txt "$READER/installed"
fi
FILES="$(mktemp -d)"
trap 'rm -rf "$FILES"' EXIT
step "Calendar files" "1 min the first time" cargo run --quiet --no-default-features --example calendars -- "$FILES"
"$READER/bin/python" tests/calendars/check.py "$FILES"
