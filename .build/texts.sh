#!/usr/bin/env bash
# Every text a person can meet, English and Spanish side by side, as one page to read and mark.
. "$(dirname "${BASH_SOURCE[0]}")/common.sh"
PAGE="$PWD/target/texts.html"
mkdir -p "$(dirname "$PAGE")"
step "Texts" "1 min the first time" cargo run --quiet --no-default-features --example texts -- "$PAGE"
printf '%s\n' "$PAGE"
