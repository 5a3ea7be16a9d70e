#!/usr/bin/env bash
# Builds the release and tells which part of each piece of the program takes how many bytes.
. "$(dirname "${BASH_SOURCE[0]}")/common.sh"
.build/build.sh
node .build/sizes.mjs
