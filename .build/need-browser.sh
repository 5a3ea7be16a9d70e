#!/usr/bin/env bash
# Installs what the browser tests need and is not there yet. Safe to run again.
. "$(dirname "${BASH_SOURCE[0]}")/common.sh"

if [ -z "$(find_chromium)" ]; then
  can_use_apt || give_up "Chromium is missing and there is no apt-get here: install Chromium or Chrome, or set CHROME_PATH."
  step "Installing Chromium" "1 to 2 min" apt_install chromium fonts-liberation
fi

# need_engine NAME PROGRAM PACKAGE...: the tests of an engine that cannot be had say so and are left out.
need_engine() {
  local name="$1" program="$2"
  shift 2
  if ! has "$program" && ! { can_use_apt && step "Installing $name" "1 to 2 min" apt_install "$@"; }; then
    printf '\n%s\n' "NOT TESTED HERE: $name cannot be installed. By hand: the package $1 of Debian. The other browsers are tested."
  fi
}
need_engine Firefox firefox-esr firefox-esr
need_engine WebKitGTK WebKitWebDriver webkit2gtk-driver
need_engine "a screen for WebKitGTK" Xvfb xvfb

# Taken apart into .tools, since the installed package would start a server for everybody.
fetch_nginx() {
  mkdir -p "$TOOLS/nginx"
  as_root apt-get update -qq
  (cd "$TOOLS/nginx" && apt-get download nginx nginx-common libnginx-mod-http-brotli-static && for file in *.deb; do dpkg-deb -x "$file" .; done)
  # Its libraries are the system's: where one is missing, there is no nginx here.
  "$TOOLS/nginx/usr/sbin/nginx" -v || { rm -rf "$TOOLS/nginx"; return 1; }
}
if [ ! -x "$TOOLS/nginx/usr/sbin/nginx" ] && ! { can_use_apt && step "Fetching nginx into .tools" "10 s" fetch_nginx; }; then
  printf '\n%s\n' "NOT TESTED HERE: nginx cannot be fetched with apt, so .build/nginx.conf is not tried."
fi

step "Packages of the browser tests" "5 s, nothing when they are there" npm_ci tests/browser
