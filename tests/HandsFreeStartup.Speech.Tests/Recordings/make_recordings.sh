#!/bin/sh
# Makes the recordings of this folder from synthetic voices: 16 kHz, mono, 16 bits, 50 ms of silence around the speech.
# Needs flite, espeak-ng and sox. The same versions of these give the same files: sox adds no dither (-D).
set -eu
cd "$(dirname "$0")"
work=$(mktemp -d)
trap 'rm -r "$work"' EXIT

finish() { # WAV, name: even level, silence trimmed to 50 ms at both ends
    sox -D "$1" -r 16000 -c 1 -b 16 "$2.wav" norm -6 \
        silence 1 0.02 -45d reverse silence 1 0.02 -45d reverse pad 0.05 0.05
}
flite_says() { flite -voice "$1" -t "$3" -o "$work/raw.wav"; finish "$work/raw.wav" "$2"; }
espeak_says() { espeak-ng -v "$1" -s 150 -w "$work/raw.wav" "$3"; finish "$work/raw.wav" "$2"; }

flite_says rms oxygen_seven_point_six "oxygen seven point six"
flite_says slt manifold_three_point_five_inches "manifold three point five inches"
flite_says awb next "next"
espeak_says en-us draft_minus_point_oh_two "draft minus point oh two"
espeak_says en-gb emergency_stop "emergency stop"
