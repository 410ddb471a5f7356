"""Recordings and synthetic words for the hearer of single words, at 16 kHz.

    python3 single_sounds.py RECORDINGS OUT

OUT receives `sounds.bin` (16 bits, one recording after the other) and `sounds.tsv` (set, speaker, part, text, first sample,
samples). Needs `sox` and `espeak-ng`.
"""

import json
import subprocess
import sys
from math import gcd
from pathlib import Path
from random import Random

import numpy as np
from scipy.signal import resample_poly

from human import listing
from synthesise import ACCENTS, HELD_OUT, VARIANTS

RATE = 16_000
SEED = 7
WORDS = """zero oh one two three four five six seven eight nine ten eleven twelve thirteen fourteen fifteen sixteen seventeen eighteen
nineteen twenty thirty forty fifty sixty seventy eighty ninety hundred and point minus yes no stop go up down left right on off""".split()
OTHERS = """cat house tree bird happy learn forward backward follow dog wow marvin sheila open close light again ready later water number
over under lunch ladder window turn quarter half clockwise gain correct accept undo wait done nothing blinking steady screw beam signal
reading counts volts""".split()
TIMES, OTHER_TIMES = 48, 12


def recorded(file: Path) -> np.ndarray:
    raw = subprocess.run(["sox", str(file), "-t", "raw", "-e", "signed", "-b", "16", "-c", "1", "-r", str(RATE), "-"],
                         check=True, capture_output=True).stdout
    return np.frombuffer(raw, np.int16)


def spoken(word: str, variant: str, rng: Random) -> np.ndarray:
    command = ["espeak-ng", "-v", f"{rng.choice(ACCENTS)}+{variant}", "-s", str(int(rng.triangular(100, 230, 165))),
               "-p", str(rng.randrange(15, 85)), "--stdout", word]
    wav = subprocess.run(command, check=True, capture_output=True).stdout
    rate = int.from_bytes(wav[24:28], "little")
    step = gcd(rate, RATE)
    return resample_poly(np.frombuffer(wav[44:], np.int16).astype(np.float32), RATE // step, rate // step).astype(np.int16)


def main(recordings: Path, out: Path) -> None:
    held_out = json.loads((Path(__file__).parent / "split.json").read_text())["held_out"]
    rng, at = Random(SEED), 0
    out.mkdir(parents=True, exist_ok=True)
    with open(out / "sounds.bin", "wb") as sounds, open(out / "sounds.tsv", "w") as table:
        def add(name: str, speaker: str, is_held_out: bool, text: str, sound: np.ndarray) -> None:
            nonlocal at
            sounds.write(sound.tobytes())
            print(name, speaker, "test" if is_held_out else "train", text, at, len(sound), sep="\t", file=table)
            at += len(sound)

        for name, file, speaker, text in listing(recordings):
            add(name, speaker, speaker in held_out[name], text, recorded(file))
        for word in WORDS * TIMES + OTHERS * OTHER_TIMES:
            variant = rng.choice(VARIANTS)
            add("voices", variant, variant in HELD_OUT, word, spoken(word, variant, rng))


if __name__ == "__main__":
    main(Path(sys.argv[1]), Path(sys.argv[2]))
