#!/usr/bin/env bash
# Installs what the browser tests need and is not there yet. Safe to run again.
. "$(dirname "${BASH_SOURCE[0]}")/common.sh"

if [ -z "$(find_chromium)" ]; then
  can_use_apt || give_up "Chromium is missing and there is no apt-get here: install Chromium or Chrome, or set CHROME_PATH."
  step "Installing Chromium" "1 to 2 min" apt_install chromium fonts-liberation
fi

step "Packages of the browser tests" "5 s, nothing when they are there" npm_ci tests/browser
