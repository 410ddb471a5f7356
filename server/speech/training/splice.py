"""Longer utterances made from single recorded words of one speaker: numbers, digit strings, short phrases."""

from random import Random

import numpy as np

import sentences

RATE = 8000


def join(words: list[np.ndarray], rng: Random) -> np.ndarray:
    """Words one after the other, with short gaps or a slight overlap, up to 9 dB apart."""
    sound = np.zeros(0, np.float32)
    for word in words:
        word = word.astype(np.float32) * 10 ** (rng.uniform(-9, 0) / 20)
        gap = int(rng.triangular(-0.03, 0.35, 0.03) * RATE)
        if gap < 0 and len(sound) > -gap < len(word):
            sound[gap:] += word[:-gap]
            sound = np.concatenate([sound, word[-gap:]])
        else:
            sound = np.concatenate([sound, np.zeros(max(gap, 0), np.float32), word])
    return np.clip(sound, -32767, 32767).astype(np.int16)


def trimmed(sound: np.ndarray) -> np.ndarray:
    """Without the quiet edges."""
    size = np.convolve(np.abs(sound.astype(np.float32)), np.ones(160) / 160, "same")
    loud = np.flatnonzero(size > 0.12 * size.max())
    return sound[max(0, loud[0] - 400):loud[-1] + 400]


def phrase(words: list[str], rng: Random) -> list[str]:
    """Words to say, chosen from those a speaker has: a number of ours if they suffice, else any few."""
    have = set(words)
    for _ in range(30):
        text = sentences.number(rng).split()
        if set(text) <= have and len(text) <= 6:
            return text
    return [rng.choice(words) for _ in range(rng.randrange(1, 5))]


def spliced(recordings: list[tuple[str, str, np.ndarray]], count: int, seed: int) -> list[tuple[str, np.ndarray]]:
    """recordings: (speaker, word, samples). Returns (text, samples)."""
    rng, by_speaker = Random(seed), {}
    for speaker, word, sound in recordings:
        by_speaker.setdefault(speaker, {}).setdefault(word, []).append(sound)
    speakers = sorted(s for s, words in by_speaker.items() if len(words) > 1)
    made = []
    for _ in range(count):
        words = by_speaker[rng.choice(speakers)]
        text = phrase(sorted(words), rng)
        made.append((" ".join(text), join([rng.choice(words[w]) for w in text], rng)))
    return made
