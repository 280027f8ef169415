#!/bin/sh
# Looks for inputs that break the readers, so many seconds for each of them, with libFuzzer on the stable compiler.
#
#   sh fuzz/run.sh SECONDS [TARGET...]
#
# Exit status: 0 nothing found; otherwise that of libFuzzer, whose last lines name the input, in fuzz/artifacts/.
set -eu

cd "$(dirname "$0")"
seconds=$1
shift
[ $# -gt 0 ] || set -- fen uci pgn bulk segment

# What cargo-fuzz sets, without the address sanitizer, which only the nightly compiler has.
coverage="-Cpasses=sancov-module -Cllvm-args=-sanitizer-coverage-level=4"
coverage="$coverage -Cllvm-args=-sanitizer-coverage-inline-8bit-counters -Cllvm-args=-sanitizer-coverage-pc-table"
coverage="$coverage -Cllvm-args=-sanitizer-coverage-trace-compares -Ccodegen-units=1"
# With --target the flags are not used for build scripts, which could not be linked with them.
host=$(rustc -vV | sed -n 's/^host: //p')

for target in "$@"; do
    RUSTFLAGS="--cfg fuzzing $coverage" CARGO_TARGET_DIR=target \
        cargo build --quiet --release --locked --target "$host" --bin "$target"
    mkdir -p "corpus/$target" "artifacts/$target"
    echo "== $target, $seconds s"
    "target/$host/release/$target" "corpus/$target" "seeds/$target" \
        -dict="dictionaries/$target.dict" -artifact_prefix="artifacts/$target/" \
        -max_total_time="$seconds" -timeout=20 -malloc_limit_mb=0 -max_len=2000 -verbosity=0 \
        -print_final_stats=1
done
