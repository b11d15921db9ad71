#!/usr/bin/env bash
# Makes the recordings of the demonstration from recordings.tsv: synthetic speakers, some in the noise of a blower.
# Needs espeak-ng, flite and sox. The blower is a model: brown noise, a little hiss, and tones at multiples of the mains frequency;
# its level is set against the root mean square of the voice (blower10 = 10 dB below it).
# The same versions of these give the same files: -R seeds the noise, -D leaves out the dither.
#   ./make_recordings.sh [recordings.tsv] [folder for the WAV files]
set -euo pipefail
cd "$(dirname "$0")"
list=${1:-recordings.tsv}
out=${2:-Recordings}
work=$(mktemp -d)
trap 'rm -rf "$work"' EXIT
mkdir -p "$out"

speak() { # voice text file
    case $1 in
        flite:*) flite -voice "${1#flite:}" -t "$2" -o "$3" ;;
        espeak:*) espeak-ng -v "${1#espeak:}" -s 150 -w "$3" "$2" ;;
        *) echo "no such speaker: $1" >&2; exit 2 ;;
    esac
}

level() { sox -R -D "$1" -n stat 2>&1 | awk '/RMS.*amplitude/ {print $3}'; }

blower() { # seconds file
    sox -R -D -n -r 16000 -c 1 "$work/brown.wav" synth "$1" brownnoise gain -6
    sox -R -D -n -r 16000 -c 1 "$work/hiss.wav" synth "$1" whitenoise gain -26
    sox -R -D -n -r 16000 -c 1 "$work/tone.wav" synth "$1" sine 120 sine 240 sine 360 remix - gain -14
    sox -R -D -m "$work/brown.wav" "$work/hiss.wav" "$work/tone.wav" -b 16 "$2" highpass 40
}

while IFS=$'\t' read -r file voice text treatment _; do
    case $file in ''|\#*) continue ;; esac
    speak "$voice" "$text" "$work/raw.wav"
    sox -R -D "$work/raw.wav" -r 16000 -c 1 -b 16 "$work/voice.wav" norm -9 pad 0.3 0.5
    case $treatment in
        clean) sox -R -D "$work/voice.wav" -b 16 "$out/$file" ;;
        blower*)
            blower "$(soxi -D "$work/voice.wav")" "$work/noise.wav"
            # RMS of the voice over its active part; the pauses at both ends do not count.
            sox -R -D "$work/voice.wav" "$work/active.wav" silence 1 0.02 1% reverse silence 1 0.02 1% reverse
            gain=$(awk -v v="$(level "$work/active.wav")" -v n="$(level "$work/noise.wav")" -v snr="${treatment#blower}" 'BEGIN {print v / n / 10 ^ (snr / 20)}')
            sox -R -D -m -v 1 "$work/voice.wav" -v "$gain" "$work/noise.wav" -b 16 "$out/$file" gain -3 ;;
        *) echo "no such treatment: $treatment" >&2; exit 2 ;;
    esac
done < "$list"
