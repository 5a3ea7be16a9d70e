#!/usr/bin/env bash
# Builds the release and serves it on this machine; PORT chooses another port than 8080.
. "$(dirname "${BASH_SOURCE[0]}")/common.sh"
.build/build.sh
exec node .build/serve.mjs dist
