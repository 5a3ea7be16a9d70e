#!/usr/bin/env bash
# Whole lives of made-up chicks, with the laws asked after every act. LIVES=3000 for more than 200, SEED=7 for others; LAWS=1,6 for some laws only.
. "$(dirname "${BASH_SOURCE[0]}")/common.sh"
LIVES="${LIVES:-200}"
export LIVES
step "$LIVES lives" "2 min, most of it building" cargo test --no-default-features --profile bench --test lives
