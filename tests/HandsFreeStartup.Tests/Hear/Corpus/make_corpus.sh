#!/usr/bin/env bash
# Makes the recordings of corpus.tsv: synthetic speakers and noises of our own. The label of each is what the script lets the speaker say; nothing was recognized to make it.
# Columns: file, expected, context (these three as `hear` reads them), speaker, words, treatment.
# Speaker: flite:VOICE, espeak:VOICE, festival:VOICE, or noise:NAME for noise alone (words: its seconds).
# Treatment: clean, or a noise with its distance below the voice in dB (blower10). The noises are models:
#   blower  brown noise, a little hiss, tones at multiples of the mains frequency
#   burner  pink noise below 1 kHz that swells three times a second
#   saw     two beating sawtooth tones with hiss
#   hammer  a knock of coarse noise every 0.7 s
# Needs espeak-ng, flite, festival and sox. The same versions of these give the same files: -R seeds the noise, -D leaves out the dither.
#   ./make_corpus.sh [folder for the WAV files]
set -euo pipefail
cd "$(dirname "$0")"
out=${1:-.}
work=$(mktemp -d)
trap 'rm -rf "$work"' EXIT
mkdir -p "$out"

speak() { # voice text file
    case $1 in
        flite:*) flite -voice "${1#flite:}" -t "$2" -o "$3" ;;
        espeak:*) espeak-ng -v "${1#espeak:}" -s 150 -w "$3" "$2" ;;
        festival:*) echo "$2" | text2wave -eval "(voice_${1#festival:})" -o "$3" ;;
        *) echo "no such speaker: $1" >&2; exit 2 ;;
    esac
}

level() { sox -R -D "$1" -n stat 2>&1 | awk '/RMS.*amplitude/ {print $3}'; }

make() { sox -R -D -n -r 16000 -c 1 "$@"; }

noise() { # name seconds file
    case $1 in
        blower)
            make "$work/a.wav" synth "$2" brownnoise gain -6
            make "$work/b.wav" synth "$2" whitenoise gain -26
            make "$work/c.wav" synth "$2" sine 120 sine 240 sine 360 remix - gain -14
            sox -R -D -m "$work/a.wav" "$work/b.wav" "$work/c.wav" -b 16 "$3" highpass 40 ;;
        burner) make -b 16 "$3" synth "$2" pinknoise lowpass 1000 tremolo 3 40 gain -3 ;;
        saw)
            make "$work/a.wav" synth "$2" sawtooth 207 sawtooth 421 remix - gain -12
            make "$work/b.wav" synth "$2" whitenoise gain -20
            sox -R -D -m "$work/a.wav" "$work/b.wav" -b 16 "$3" ;;
        hammer) make -b 16 "$3" synth 0.06 pinknoise fade l 0.001 0.06 0.05 pad 0 0.64 repeat 9 trim 0 "$2" ;;
        *) echo "no such noise: $1" >&2; exit 2 ;;
    esac
}

while IFS=$'\t' read -r file expected context voice text treatment; do
    case $file in ''|\#*) continue ;; esac
    case $voice in
        noise:*) noise "${voice#noise:}" "$text" "$work/noise.wav"; sox -R -D "$work/noise.wav" -b 16 "$out/$file" gain -n -9; continue ;;
    esac
    speak "$voice" "$text" "$work/raw.wav"
    sox -R -D "$work/raw.wav" -r 16000 -c 1 -b 16 "$work/trimmed.wav" silence 1 0.02 0.5% reverse silence 1 0.02 0.5% reverse
    sox -R -D "$work/trimmed.wav" -b 16 "$work/voice.wav" norm -9 pad 0.25 0.35
    if [ "$treatment" = clean ]; then
        cp "$work/voice.wav" "$out/$file"
        continue
    fi
    noise "${treatment%%[0-9]*}" "$(soxi -D "$work/voice.wav")" "$work/noise.wav"
    # The voice counts over its active part only; the pauses at both ends do not.
    sox -R -D "$work/trimmed.wav" -b 16 "$work/active.wav" norm -9
    gain=$(awk -v v="$(level "$work/active.wav")" -v n="$(level "$work/noise.wav")" -v snr="${treatment##*[a-z]}" 'BEGIN {print v / n / 10 ^ (snr / 20)}')
    sox -R -D -m -v 1 "$work/voice.wav" -v "$gain" "$work/noise.wav" -b 16 "$out/$file" gain -3
done < corpus.tsv
