#!/bin/sh
# Makes the spoken sounds of the tests again, one WAV file for each line of phrases.txt, 16 kHz, 16 bit, mono.
# Needs Debian's flite. Its voice awb is one that the speech model was not trained on (HELD_OUT in
# server/speech/training/synthesise.py).
set -eu
cd "$(dirname "$0")"
while read -r phrase; do
  flite -voice awb -t "$phrase" -o "$(printf '%s' "$phrase" | tr ' ' '-').wav"
done <phrases.txt
