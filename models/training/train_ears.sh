#!/usr/bin/env bash
# Makes both ears anew: speech, training, averaging, conversion. See README.md beside this file.
#   train_ears.sh WORK ORIGINALS [recorded.ulaw [human]]
# SMOKE=1 runs a few steps of tiny.en on the CPU with little speech.
set -euo pipefail
here=$(cd "$(dirname "$0")" && pwd)
work=$1 originals=$2
mkdir -p "$work"
cp "$here"/*.py "$here/../../src/HandsFreeStartup.Procedure/Hearing/safety-words.tsv" "$work/"
noise=() people=()
[ $# -ge 3 ] && noise=(--noise "$(realpath "$3")")
[ $# -ge 4 ] && people=(--human "$(realpath "$4")")
originals=$(realpath "$originals")
cd "$work"
python3 words.py
if [ "${SMOKE:-0}" = 1 ]; then
    python3 speech.py speech 48 101 2
    python3 train.py tiny.en "$originals/ggml-tiny.en-readings-q8_0.bin" tiny.out.bin --speech speech --steps 2 --batch 8 --device cpu
    exit
fi
python3 speech.py speech 64000 101 "$(nproc)"
python3 train.py tiny.en "$originals/ggml-tiny.en-q8_0.bin" ggml-tiny.en-readings-q8_0.bin --speech speech --seconds 560 --share 0.62 "${noise[@]}" "${people[@]}"
python3 train.py base "$originals/ggml-base-q8_0.bin" ggml-base-readings-q8_0.bin --speech speech --seconds 620 --share 0.65 "${noise[@]}" "${people[@]}"
