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


DIGITS = set("zero oh one two three four five six seven eight nine".split())


def tight(sound: np.ndarray, rng: Random) -> np.ndarray:
    """From where the word becomes audible to where it ends, with up to 40 ms at each side. Some are cut by loudness so late that they
    have lost a quiet consonant: the "s" of "six"."""
    size = np.convolve(np.abs(sound.astype(np.float32)), np.ones(80) / 80, "same")
    loud = np.flatnonzero(size > rng.choice([0.06, 0.06, rng.uniform(0.06, 0.3)]) * size.max())
    before, after = (int(rng.choice([0, rng.uniform(0, 0.04)]) * RATE) for _ in range(2))
    return sound[max(0, loud[0] - before):loud[-1] + 1 + after]


def string(words: list[np.ndarray], rng: Random) -> np.ndarray:
    """Digits one after the other: one tempo of 0 to 0.3 s between them, a quick overlap or a pause, each up to 9 dB quieter than the loudest may be."""
    kind = rng.random()
    gap = 0.0 if kind < 0.22 else rng.uniform(-0.04, 0) if kind < 0.36 else rng.uniform(0, 0.3) if kind < 0.9 else rng.uniform(0.3, 0.8)
    sound = np.zeros(0, np.float32)
    for word in words:
        word = tight(word, rng).astype(np.float32)
        word *= 200 / max(1.0, float(np.sqrt(np.mean(word ** 2)))) * 10 ** (rng.uniform(-9, 0) / 20)
        samples = int((gap + rng.uniform(-0.02, 0.02) * (gap > 0)) * RATE)
        if samples < 0 and len(sound) > -samples < len(word):
            sound[samples:] += word[:-samples]
            sound = np.concatenate([sound, word[-samples:]])
        else:
            sound = np.concatenate([sound, np.zeros(max(samples, 0) if len(sound) else 0, np.float32), word])
    return np.clip(sound, -32767, 32767).astype(np.int16)


def strings(recordings: list[tuple[str, str, np.ndarray]], count: int, seed: int) -> list[tuple[str, np.ndarray]]:
    """recordings: (speaker, word, samples). Strings of two to four digits, and now and then of other words that the speaker
    has. Returns (text, samples). A speaker is drawn by the root of how many words there are, a word by itself, so that none is rare."""
    rng, by_speaker = Random(seed + 1), {}
    for speaker, word, sound in recordings:
        by_speaker.setdefault(speaker, {}).setdefault(word, []).append(sound)
    speakers = sorted(s for s, words in by_speaker.items() if len(words.keys() & DIGITS) > 1)
    weights = [sum(len(by_speaker[s][w]) for w in sorted(by_speaker[s].keys() & DIGITS)) ** 0.5 for s in speakers]
    made = []
    for speaker in rng.choices(speakers, weights, k=count):
        words = by_speaker[speaker]
        known = sorted(words.keys() & DIGITS) if rng.random() < 0.9 else sorted(words)
        text = [rng.choice(known) for _ in range(rng.choice([2, 2, 2, 3, 3, 3, 4]))]
        made.append((" ".join(text), string([rng.choice(words[w]) for w in text], rng)))
    return made


def cut(recordings: list[tuple[str, str, np.ndarray]], count: int, seed: int) -> list[tuple[str, np.ndarray]]:
    """Single words cut tight; a word is drawn by the root of how often it was recorded, a speaker by itself. Returns (text, samples)."""
    rng, by_word = Random(seed + 2), {}
    for speaker, word, sound in recordings:
        by_word.setdefault(word, {}).setdefault(speaker, []).append(sound)
    words = [by_word[word] for word in sorted(by_word)]
    texts = sorted(by_word)
    made = []
    for i in rng.choices(range(len(words)), [sum(map(len, w.values())) ** 0.5 for w in words], k=count):
        made.append((texts[i], tight(rng.choice(words[i][rng.choice(sorted(words[i]))]), rng)))
    return made


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
