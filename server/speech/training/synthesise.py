"""Synthetic voices saying the crew's sentences.

    python3 synthesise.py OUT TEXTS WORDS COUNT [SEED] [WORKERS]

TEXTS: sentences of the grammar, one per line, from texts.ts. WORDS: English words, one per line, for other speech.

Writes OUT/NNNN.npz shards (sounds: int16 at 8 kHz, one after the other; lengths; texts; voices; parts). Voices of
Debian's espeak-ng, and of flite and festival where these are installed, at every rate and pitch a crew might have; the voices in `HELD_OUT`
only say test sentences. A quarter of espeak-ng's are numbers in the sounds of other languages (accents.json), but for the two held out there.
"""

import io
import json
import os
import shutil
import subprocess
import sys
import tempfile
import wave
from concurrent.futures import ProcessPoolExecutor, as_completed
from math import gcd
from pathlib import Path
from random import Random

import numpy as np
from scipy.signal import resample_poly

import sentences

RATE = 8000
SHARD = 250
LONGEST = 12  # words
ACCENTS = ["en-us", "en-us", "en-us", "en-gb", "en-gb", "en-gb-x-rp", "en-gb-scotland", "en-gb-x-gbclan", "en-gb-x-gbcwmd", "en-029", "en-us-nyc"]
VARIANTS = """Adam Alex Alicia Andrea Andy Annie Antonio Auntie Belinda Benjamin Boris Caleb David Denis Diogo Ed Edward Edward2 Gene Gene2 Gustave
Henrique Hugo Iven Iven2 Iven3 Iven4 Jacky John Kaukovalta Lee Linda Marcelo Marco Mario Max Michael Michel Miguel Mike Mr_Serious Nguyen Pablo
Paul Pedro Quincy RicishayMax RicishayMax2 RicishayMax3 Rob Robert Steph Steph2 Steph3 Storm Tweaky Zac anika f1 f2 f3 f4 f5 grandma grandpa klatt
klatt2 klatt3 klatt4 klatt6 m1 m2 m3 m4 m5 m6 m7 m8 norbert sandro shelby travis victor""".split()
FLITE = ["slt", "rms", "awb", "kal16", "kal"]
FESTIVAL = ["voice_kal_diphone", "voice_ked_diphone", "voice_cmu_us_slt_arctic_hts"]
HELD_OUT = {"Alex", "Annie", "Denis", "Henrique", "Linda", "Steph2", "Zac", "f4", "m3", "m7", "klatt2", "awb"}
ACCENTED = 1 / 4
SOUNDS = json.loads((Path(__file__).parent / "accents.json").read_text())
EXPECTED_F0 = {"slt": 180, "rms": 100, "awb": 115, "kal16": 100, "kal": 100}


def to_8k(data: bytes) -> np.ndarray:
    """Mono 16-bit samples of a WAV file at 8 kHz. The streamed header of espeak-ng has no length: take all there is."""
    with wave.open(io.BytesIO(data)) as file:
        rate = file.getframerate()
    raw = data[44:]
    sound = np.frombuffer(raw[:len(raw) // 2 * 2], np.int16).astype(np.float32)
    step = gcd(rate, RATE)
    return np.clip(resample_poly(sound, RATE // step, rate // step), -32767, 32767).astype(np.int16)


def espeak(text: str, variant: str, rng: Random, accent: str | None = None) -> bytes:
    command = ["espeak-ng", "-v", f"{accent or rng.choice(ACCENTS)}+{variant}", "-s", str(int(rng.triangular(95, 260, 155))),
               "-p", str(rng.randrange(15, 85)), "-g", str(rng.choice([0, 0, 0, 1, 3, 6, 12])), "--stdout", text]
    return subprocess.run(command, check=True, capture_output=True).stdout


def accented_text(rng: Random) -> str:
    """Mostly strings of digits; else a number or a word, of the words whose sounds are known."""
    kind = rng.random()
    if kind < 0.6:
        digits = [*sentences.UNITS, "oh"]
        return " ".join(rng.choice(digits) for _ in range(rng.choice([1, 2, 2, 2, 3, 3, 3, 4])))
    if kind < 0.8:
        return rng.choice(list(SOUNDS["words"]))
    while not set((text := sentences.number(rng)).split()) <= SOUNDS["words"].keys():
        pass
    return text


def in_sounds(text: str, accent: str, rng: Random) -> str:
    """What espeak-ng takes for sounds, not letters: the first vowel of each word is stressed. As tests/bench/speech/accents.ts."""
    table, said = SOUNDS["plain"] | SOUNDS["accents"][accent], []
    for word in text.split():
        sounds = SOUNDS["words"][word].split()
        stressed = next((i for i, sound in enumerate(sounds) if sound in SOUNDS["vowels"]), -1)
        said.append("".join("'" * (i == stressed) + rng.choice(table[sound]).replace(" ", "") for i, sound in enumerate(sounds)))
    return f"[[{' '.join(said)}]]"


def with_accent(variant: str, rng: Random) -> tuple[str, np.ndarray]:
    accent, text = rng.choice(sorted(SOUNDS["accents"].keys() - set(SOUNDS["held_out"]))), accented_text(rng)
    return text, to_8k(espeak(in_sounds(text, accent, rng), variant, rng, accent))


def flite(text: str, voice: str, rng: Random) -> bytes:
    with tempfile.NamedTemporaryFile(suffix=".wav") as file:
        subprocess.run(["flite", "-voice", voice, "--setf", f"duration_stretch={rng.uniform(0.7, 1.5):.2f}",
                        "--setf", f"int_f0_target_mean={EXPECTED_F0[voice] * rng.uniform(0.8, 1.35):.0f}",
                        "--setf", f"int_f0_target_stddev={rng.uniform(8, 30):.0f}", "-t", text, "-o", file.name], check=True, capture_output=True)
        return Path(file.name).read_bytes()


def festival(lines: list[tuple[str, str]], rng: Random) -> list[bytes]:
    """One process for many lines, because festival is slow to start."""
    with tempfile.TemporaryDirectory() as folder:
        script = []
        for i, (voice, text) in enumerate(lines):
            script.append(f"({voice}) (Parameter.set 'Duration_Stretch {rng.uniform(0.75, 1.4):.2f})")
            script.append(f'(utt.save.wave (utt.synth (Utterance Text "{text}")) "{folder}/{i}.wav" \'riff)')
        (Path(folder) / "all.scm").write_text("\n".join(script))
        subprocess.run(["festival", "-b", f"{folder}/all.scm"], check=True, capture_output=True)
        return [(Path(folder) / f"{i}.wav").read_bytes() for i in range(len(lines))]


def spoken_form(text: str) -> str:
    """The text, spelled so that the voices say our words as crews do."""
    return text.replace("fower", "fo wer").replace(" d b", " D B")


def shard(out: Path, grammar: list[str], words: list[str], number: int, seed: int) -> str:
    rng = Random(f"{seed}/{number}")
    kept: list[tuple[str, str, np.ndarray]] = []
    batch: list[tuple[str, str]] = []
    for _ in range(SHARD):
        text = sentences.training_text(rng, grammar, words)
        kind = rng.random()
        if kind < 0.66 or not shutil.which("flite" if kind < 0.88 else "festival"):
            variant = rng.choice(VARIANTS)
            said = with_accent(variant, rng) if rng.random() < ACCENTED else (text, to_8k(espeak(spoken_form(text), variant, rng)))
            kept.append((said[0], variant, said[1]))
        elif kind < 0.88:
            voice = rng.choices(FLITE, [4, 4, 2, 2, 2])[0]
            kept.append((text, voice, to_8k(flite(spoken_form(text), voice, rng))))
        else:
            batch.append((rng.choice(FESTIVAL), text))
    for (voice, text), data in zip(batch, batch and festival([(v, spoken_form(t)) for v, t in batch], rng)):
        kept.append((text, voice, to_8k(data)))
    kept = [k for k in kept if RATE // 10 < len(k[2]) < 12 * RATE]
    done = out / f"{number:04d}.tmp.npz"
    np.savez(done, sounds=np.concatenate([k[2] for k in kept]), lengths=np.array([len(k[2]) for k in kept]), texts=np.array([k[0] for k in kept]),
             voices=np.array([k[1] for k in kept]), parts=np.array(["test" if k[1] in HELD_OUT else "train" for k in kept]))
    os.rename(done, out / f"{number:04d}.npz")
    return f"{number}: {len(kept)} sentences"


def main(out: Path, texts: Path, dictionary: Path, count: int, seed: int = 1, workers: int = os.cpu_count() or 1) -> None:
    out.mkdir(parents=True, exist_ok=True)
    grammar = [line for line in texts.read_text().splitlines() if len(line.split()) <= LONGEST]
    words = [w for w in dictionary.read_text().split() if w.isascii() and w.isalpha() and w.islower() and 3 <= len(w) <= 10]
    with ProcessPoolExecutor(workers) as pool:
        for job in as_completed([pool.submit(shard, out, grammar, words, n, seed) for n in range(-(-count // SHARD))]):
            job.result()


if __name__ == "__main__":
    main(*map(Path, sys.argv[1:4]), *map(int, sys.argv[4:]))
