#!/usr/bin/env bash
# Builds the release and tells which part of the program takes how many bytes.
. "$(dirname "${BASH_SOURCE[0]}")/common.sh"
.build/build.sh
# Trunk's own last step, with the names kept. The features are those that Rust's target has switched on.
wasm-opt -Oz -g --enable-bulk-memory --enable-nontrapping-float-to-int --enable-sign-ext --enable-mutable-globals \
  --enable-reference-types --enable-multivalue target/wasm-bindgen/release/perchlight_bg.wasm -o target/perchlight-names.wasm
node .build/sizes.mjs target/perchlight-names.wasm
