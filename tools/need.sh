#!/bin/sh
# Names what this machine lacks, each with the command that brings it.
#
#   sh tools/need.sh python         prints the first Python >= 3.11 that can make a venv
#   sh tools/need.sh build          asks for what a build needs: python, cargo, a linker
#   sh tools/need.sh page           asks for what the desk's page is built with: node, npm
#   sh tools/need.sh test           asks for what the tests need besides: git, chromium, ffmpeg, fonts, node,
#                                   poppler;
#                                   as root on Debian it installs what is missing of these
#
# Exit status: 0 all there; 1 something is missing (said on standard error).
# PYTHON=/path/to/python chooses the Python.
set -u

rust_minor=95 # Cargo.toml: rust-version = "1.95"
here=$(CDPATH='' cd -- "$(dirname -- "$0")" && pwd)
missing=0

say() {
    printf '%s\n' "$*" >&2
}

lacks() { # what, how to get it
    say "missing: $1"
    say "    get it with: $2"
    missing=1
}

has() {
    command -v "$1" >/dev/null 2>&1
}

# A name on the PATH may be a shim that does not run, so each candidate is asked, not trusted.
is_new_enough() {
    "$1" -c 'import sys; sys.exit(sys.version_info < (3, 11))' >/dev/null 2>&1
}

makes_venvs() {
    "$1" -c 'import ensurepip, venv' >/dev/null 2>&1
}

find_python() {
    without_venv=
    for candidate in ${PYTHON:+"$PYTHON"} python3 python3.14 python3.13 python3.12 python3.11; do
        is_new_enough "$candidate" || continue
        if makes_venvs "$candidate"; then
            command -v "$candidate"
            return 0
        fi
        without_venv=${without_venv:-$candidate}
    done
    if [ -n "$without_venv" ]; then
        lacks "the venv module of $without_venv" "apt-get install python3-venv"
    else
        lacks "Python 3.11 or newer" "apt-get install python3 python3-venv"
    fi
    return 1
}

need_rust() {
    if ! has cargo; then
        if [ -x "$HOME/.cargo/bin/cargo" ]; then
            lacks "cargo on the PATH (it is in ~/.cargo/bin)" ". \"\$HOME/.cargo/env\""
        else
            lacks "cargo (Rust 1.$rust_minor or newer)" "the installer at https://rustup.rs (on Debian 13 also: apt-get install rustup)"
        fi
        return
    fi
    # Asked inside the repository, so that rustup reads rust-toolchain.toml.
    version=$(CDPATH='' cd -- "$here/.." && cargo --version 2>/dev/null | awk '{print $2}')
    major=${version%%.*}
    rest=${version#*.}
    minor=${rest%%.*}
    case "$major$minor" in
    '' | *[!0-9]*)
        lacks "a Rust toolchain that runs" "rustup toolchain install 1.$rust_minor.0 --component clippy,rustfmt"
        return
        ;;
    esac
    if [ "$major" -eq 1 ] && [ "$minor" -lt "$rust_minor" ]; then
        lacks "Rust 1.$rust_minor or newer (here is $version)" "rustup toolchain install 1.$rust_minor.0 --component clippy,rustfmt"
    fi
}

need_build() {
    find_python >/dev/null
    need_rust
    has cc || lacks "a C linker (cc)" "apt-get install gcc libc6-dev"
}

has_chromium() {
    has chromium || has chromium-browser
}

# web/package-lock.json: Vite asks for Node 20.19 or 22.12 and newer.
has_node() {
    has npm && node -e 'const [a, b] = process.versions.node.split(".").map(Number); process.exit(a > 22 || (a === 22 && b >= 12) || (a === 20 && b >= 19) ? 0 : 1)' >/dev/null 2>&1
}

has_ffmpeg() {
    has ffmpeg && has ffprobe
}

has_serif() {
    has fc-list && [ -n "$(fc-list 'DejaVu Serif' 2>/dev/null)" ]
}

has_poppler() {
    has pdftotext && has pdftoppm
}

# What only the tests need, a line each: Debian's packages, what it is, the check.
test_tools='git|git|has git
chromium|chromium (the tests look at pages in it)|has_chromium
nodejs npm|Node.js 20.19 or newer with npm (on Debian from 13 on)|has_node
ffmpeg|ffmpeg and ffprobe (the tests look into videos with them)|has_ffmpeg
fontconfig fonts-dejavu-core|fonts (DejaVu, for pictures of the report)|has_serif
poppler-utils|pdftotext and pdftoppm (the tests read the handout with them)|has_poppler'

each_missing_tool() { # calls "$1 packages what" for each tool whose check fails
    while IFS='|' read -r packages what check; do
        $check || "$1" "$packages" "$what"
    done <<EOF
$test_tools
EOF
}

want() {
    wanted="$wanted $1"
}

name_package() {
    lacks "$2" "apt-get install $1"
}

need_test() {
    wanted=
    each_missing_tool want
    [ -n "$wanted" ] || return 0
    if [ "$(id -u)" -eq 0 ] && has apt-get; then
        say "installing for the tests:$wanted"
        # shellcheck disable=SC2086 # a list of package names
        { apt-get update -q && DEBIAN_FRONTEND=noninteractive apt-get install -y -q --no-install-recommends $wanted; } </dev/null >&2
    fi
    each_missing_tool name_package
}

case "${1:-}" in
python) find_python || exit 1 ;;
build) need_build ;;
page) has_node || lacks "Node.js 20.19 or newer with npm (on Debian from 13 on)" "apt-get install nodejs npm" ;;
test)
    need_build
    need_test
    ;;
*)
    say "usage: sh tools/need.sh python|build|page|test"
    exit 2
    ;;
esac
[ "$missing" -eq 0 ]
