#!/usr/bin/env bash
# Changes the code that judges, weans, schedules and codes, one place at a time, and tells which changes no test notices.
# First against the unit tests, which takes seconds a change; what they miss then against every test.
. "$(dirname "${BASH_SOURCE[0]}")/common.sh"
if [ "$(cargo mutants --version 2>/dev/null || true)" != "cargo-mutants $CARGO_MUTANTS_VERSION" ]; then
  step "Installing cargo-mutants $CARGO_MUTANTS_VERSION into .tools" "4 to 8 min" \
    env CARGO_PROFILE_DEV_DEBUG=0 cargo install --locked --debug --root "$TOOLS" cargo-mutants --version "$CARGO_MUTANTS_VERSION"
fi
if [ "$#" -eq 0 ]; then
  set -- 'src/domain/warnings/rules/**' 'src/domain/weaning/**' src/domain/feeding/schedule.rs \
    src/share/{varint,base64url,envelope,entry_bytes,plan_bytes,link,icalendar,csv}.rs src/store/{record,line,json}.rs 'src/store/saved/**'
fi
files=()
for file in "$@"; do
  files+=(-f "$file")
done
export CARGO_PROFILE_DEV_DEBUG=0
mutants() {
  # 2 when something is missed and 3 when something runs for ever: that is an answer and no fault of the run.
  cargo mutants --no-default-features -o target "${files[@]}" "$@" || [[ "$?" == [23] ]]
}
step "With the unit tests" "5 s a change" mutants -C=--lib
step "With every test, what they missed" "25 s a change" mutants --iterate
cat target/mutants.out/missed.txt
