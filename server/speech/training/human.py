"""Packs the human recordings at 8 kHz and splits them by speaker.

    python3 human.py RECORDINGS PACK [--prompts ASTERISK] [--words WORDS]

RECORDINGS holds `an4/`, `digits/` and `commands/` (see README.md), ASTERISK the unpacked
`asterisk-core-sounds-en-wav`, WORDS what said-words.ts cut out of `an4/`; PACK receives NAME.npz (all recordings of a set,
one after the other), NAME.tsv (samples, speaker, part, text) and `split.json`. Each recording is scaled to the same level and
rounded to about 50 dB of signal to noise, so that the whole pack fits in 60 MB. Needs `sox`; to load it, only NumPy.
"""

import argparse
import json
import subprocess
from pathlib import Path
from random import Random

import numpy as np

RATE = 8000
LEVEL = 120  # RMS of the loud half of each recording, in rounding steps
SEED = 20261125
DIGITS = "zero one two three four five six seven eight nine".split()
HELD_OUT = {"an4": 12, "digits": 1, "commands": 32}  # speakers that only the tests hear
FOLDS = 4  # as many as there are speakers of the digits


def decode(path: Path) -> np.ndarray:
    raw = subprocess.run(["sox", str(path), "-t", "raw", "-e", "signed", "-b", "16", "-c", "1", "-r", str(RATE), "-"],
                         check=True, capture_output=True).stdout
    sound = np.frombuffer(raw, np.int16).astype(np.float32)
    size = np.abs(sound)
    loud = np.sqrt(np.mean(sound[size >= np.median(size)] ** 2)) if len(sound) else 1
    return np.clip(np.round(sound * (LEVEL / max(loud, 1))), -32767, 32767).astype(np.int16)


def listing(recordings: Path):
    """Yields (set, file, speaker, text)."""
    for name, table in [("an4", "transcripts.tsv"), ("commands", "labels.tsv")]:
        for line in (recordings / name / table).read_text().splitlines()[1:]:
            file, speaker, text = line.split("\t")
            found = next(p for p in [recordings / name / file, recordings / name / "audio" / file] if p.exists())
            yield name, found, speaker, text.lower()
    for file in sorted((recordings / "digits").rglob("*.flac")):
        digit, speaker, _ = file.stem.split("_")
        yield "digits", file, speaker, DIGITS[int(digit)]


def words_of(folder: Path):
    """Words cut out of AN4, by the same speakers."""
    for line in (folder / "labels.tsv").read_text().splitlines()[1:]:
        file, speaker, word = line.split("\t")
        yield "words", folder / "audio" / file, speaker, word


def prompts(asterisk: Path):
    """The numbers and letters of the telephone prompts (one professional speaker); used for training only."""
    root = next(asterisk.rglob("en_US_f_Allison"))
    tens = "ten twenty thirty forty fifty sixty seventy eighty ninety".split()
    teens = "eleven twelve thirteen fourteen fifteen sixteen seventeen eighteen nineteen".split()
    words = {str(n): w for n, w in enumerate(DIGITS)} | {str(10 * n): w for n, w in enumerate(tens, 1)} | {str(n): w for n, w in enumerate(teens, 11)}
    words |= {w: w for w in ["hundred", "thousand", "million", "minus", "oh", "pound", "star", "today", "yesterday", "tomorrow"]}
    for file in sorted((root / "digits").glob("*.wav")):
        if file.stem in words:
            yield "prompts", file, "allison", words[file.stem]
    for file in sorted((root / "letters").glob("?.wav")):
        yield "prompts", file, "allison", file.stem
    for word in "activated added cancelled disabled enabled extension goodbye hello hours invalid is location minute minutes number removed second seconds sorry time with your".split():
        yield "prompts", root / f"{word}.wav", "allison", word


def main(recordings: Path, pack: Path, asterisk: Path | None, words: Path | None) -> None:
    pack.mkdir(parents=True, exist_ok=True)
    items = list(listing(recordings)) + (list(prompts(asterisk)) if asterisk else []) + (list(words_of(words)) if words else [])
    rng, held_out = Random(SEED), {}
    for name, count in HELD_OUT.items():
        held_out[name] = sorted(rng.sample(sorted({s for n, _, s, _ in items if n == name}), count))
    (pack / "split.json").write_text(json.dumps({"seed": SEED, "held_out": held_out}, indent=1) + "\n")
    for name in dict.fromkeys(n for n, *_ in items):
        rows, sounds = [], []
        for _, file, speaker, text in (i for i in items if i[0] == name):
            sounds.append(decode(file))
            part = "test" if speaker in held_out.get("an4" if name == "words" else name, []) else "train"
            rows.append(f"{len(sounds[-1])}\t{speaker}\t{part}\t{text}")
        (pack / f"{name}.tsv").write_text("\n".join(rows) + "\n")
        np.savez_compressed(pack / f"{name}.npz", planes(np.concatenate(sounds)))
        print(name, len(rows), "recordings", (pack / f"{name}.npz").stat().st_size, "bytes")


def planes(sound: np.ndarray) -> np.ndarray:
    """(2, samples) bytes of the steps from sample to sample, low and high apart: half as large when they are compressed."""
    steps = np.diff(sound, prepend=np.int16(0)).astype("<u2")
    return np.stack([steps & 255, steps >> 8]).astype(np.uint8)


def held_out_of(pack: Path, fold: int) -> dict[str, list[str]]:
    """The speakers whom a fold leaves out: one of the digits, and a quarter of the others."""
    speakers = {name: {line.split("\t")[1] for line in (pack / f"{name}.tsv").read_text().splitlines()} for name in HELD_OUT}
    return {name: sorted(all_of)[fold::FOLDS] for name, all_of in speakers.items()}


def load(pack: Path, fold: int | None = None):
    """Yields (set, speaker, part, text, samples) of a pack, parted as it was packed or by a fold."""
    held_out = None if fold is None else held_out_of(pack, fold)
    for table in sorted(pack.glob("*.tsv")):
        (low, high), at = np.load(table.with_suffix(".npz"))["arr_0"].astype("<u2"), 0
        sound = np.cumsum(low | high << 8, dtype="<u2").astype("<i2")
        for line in table.read_text().splitlines():
            length, speaker, part, text = line.split("\t")
            if held_out is not None:
                part = "test" if speaker in held_out.get("an4" if table.stem == "words" else table.stem, []) else "train"
            yield table.stem, speaker, part, text, sound[at:at + int(length)]
            at += int(length)


if __name__ == "__main__":
    parser = argparse.ArgumentParser()
    parser.add_argument("recordings", type=Path)
    parser.add_argument("pack", type=Path)
    parser.add_argument("--prompts", type=Path)
    parser.add_argument("--words", type=Path)
    args = parser.parse_args()
    main(args.recordings, args.pack, args.prompts, args.words)
