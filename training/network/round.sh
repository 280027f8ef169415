#!/bin/sh
# Goes the ways of the network that ships, and of that of the fourth round, again: `sh training/network/round.sh FOLDER`. Its steps took an hour together, half of it with 16
# cores and an H200 GPU, half with 32 cores and two, and take 5 GB of disk. As one script it has been run with small numbers only.
# Each step goes on where it was cut short. PYTHON names the Python that has torch.
# How many games were in d was not written down: with another number the network comes out a little otherwise.
set -eu
out=${1:?"a folder to work in is missing"}
python=${PYTHON:-python3}
cargo build --release --package lineproof-engine
engine=${CARGO_TARGET_DIR:-target}/release/lineproof-engine
mkdir -p "$out"

gather() {
    "$engine" gather --out "$out/$1" --seed "$2" --games "$3" --nodes 400 --leaves 8 --leaf-nodes 100 $4
}

learn() {
    name=$1 passes=$2
    shift 2
    if [ -e "$out/$name/done" ]; then return; fi
    if [ -e "$out/$name/state.pt" ]; then again=--resume; else again=; fi
    "$python" training/network/train.py "$@" --out "$out/$name" --width 512 --passes "$passes" \
        --output-buckets 8 --decay 1 --seed 1 $again
    touch "$out/$name/done"
}

gather a 31 44672 ""
learn first 12 "$out/a"
gather b 32 24704 ""
gather c 33 56128 "--network $out/first/network.bin"
learn second 22 "$out/a" "$out/b" "$out/c"
gather d 41 9152 "--network $out/second/network.bin"
gather e 42 34624 "--network $out/second/network.bin"
learn third 10 "$out/d" "$out/e" --begin "$out/second/network.bin" --king-buckets 4 --blend 0.2 --rate 5e-4
cmp "$out/third/network.bin" crates/engine/network/network.bin && echo "the network that ships"

# The fourth round: games of the third's network, then of each network that was learned from them so far.
network() {
    echo "--segment 16 --network $out/$1/network.bin"
}

again() {
    name=$1 passes=$2 begin=$3
    shift 3
    learn "$name" "$passes" "$@" --begin "$out/$begin/network.bin" --king-buckets 4 --blend 0.2 --rate 5e-4 --graph
}

gather f 51 47632 "$(network third)"
again fourth-1 10 third "$out/f"
gather f2 52 8176 "$(network third)"
gather g 53 52432 "$(network fourth-1)"
again fourth-2 9 fourth-1 "$out/f" "$out/f2" "$out/g"
gather h 54 7808 "$(network fourth-1)"
gather i 55 62848 "$(network fourth-2)"
again fourth-3 11 fourth-2 "$out/f" "$out/f2" "$out/g" "$out/h" "$out/i"
cmp "$out/fourth-3/network.bin" training/network/fourth/network.bin && echo "the network of the fourth round"
