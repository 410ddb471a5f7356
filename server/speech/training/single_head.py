"""Fits the head of the hearer of single words: one hidden layer on the vectors of the speech embedding, which stays as it is.

    python3 single_head.py VECTORS OUT [WITHOUT]

VECTORS is what single-vectors.ts wrote. OUT receives `head.bin` and `words.json` for single-graph.ts. WITHOUT: a speaker of the
digits who is left out, too, and on whom the head is judged. Needs NumPy only; about a minute on one core.
"""

import json
import sys
from pathlib import Path

import numpy as np

from single_sounds import WORDS

SIZE = 768  # eight vectors of 96 numbers
HIDDEN = 256
NO_WORD = 0
TOKENS = {word: i for i, word in enumerate(WORDS, 1)} | {"o": 1 + WORDS.index("oh")}
BATCH, RATE, KEEP, BLUR, DECAY = 256, 2e-3, 0.8, 0.1, 1e-2
UNEXPLAINED = 0.4  # for each 10 ms, as in src/speech/single-words.ts
CLEAR, POOR = -4.0, -6.0  # log probability, a word: the alignment is believed; the word is not learnt from
NEVER = -1e9


def fit(x: np.ndarray, y: np.ndarray, weight: np.ndarray, epochs: int, seed: int = 1) -> list[np.ndarray]:
    """Softmax over one hidden layer, by Adam with a cosine rate."""
    rng = np.random.default_rng(seed)
    mean, spread = x.mean(0), x.std(0) + 1e-3
    z, tokens = ((x - mean) / spread).astype(np.float32), len(WORDS) + 1
    held = [rng.standard_normal((SIZE, HIDDEN), np.float32) * np.float32(np.sqrt(2 / SIZE)), np.zeros(HIDDEN, np.float32),
            rng.standard_normal((HIDDEN, tokens), np.float32) * np.float32(np.sqrt(1 / HIDDEN)), np.zeros(tokens, np.float32)]
    first, second = ([np.zeros_like(p) for p in held] for _ in range(2))
    step, steps = 0, epochs * (len(z) // BATCH)
    for _ in range(epochs):
        order = rng.permutation(len(z))
        for at in range(0, len(z) - BATCH + 1, BATCH):
            some = order[at:at + BATCH]
            into = z[some] + rng.standard_normal((BATCH, SIZE), np.float32) * BLUR
            raw = into @ held[0] + held[1]
            kept = (rng.random(raw.shape, np.float32) < KEEP) / KEEP
            hidden = np.maximum(raw, 0) * kept
            error = softmax(hidden @ held[2] + held[3])
            error[np.arange(BATCH), y[some]] -= 1
            error *= (weight[some] / BATCH)[:, None]
            back = (error @ held[2].T) * kept * (raw > 0)
            step += 1
            rate = RATE * min(1, step / 200) * (0.5 + 0.5 * np.cos(np.pi * step / steps))
            for i, slope in enumerate([into.T @ back, back.sum(0), hidden.T @ error, error.sum(0)]):
                first[i] = 0.9 * first[i] + 0.1 * slope
                second[i] = 0.999 * second[i] + 0.001 * slope ** 2
                held[i] -= rate * (first[i] / (1 - 0.9 ** step) / (np.sqrt(second[i] / (1 - 0.999 ** step)) + 1e-8) + DECAY * held[i] * (i % 2 == 0))
    enter = held[0] / spread[:, None]
    return [enter, held[1] - mean @ enter, held[2], held[3]]


def softmax(x: np.ndarray) -> np.ndarray:
    e = np.exp(x - x.max(1, keepdims=True))
    return e / e.sum(1, keepdims=True)


def named(head: list[np.ndarray], x: np.ndarray) -> np.ndarray:
    return softmax(np.maximum(x @ head[0] + head[1], 0) @ head[2] + head[3])


def aligned(text: list[int], arcs: list[list[int]], scores: np.ndarray, gaps: list[list[float]]):
    """The likeliest arcs of a text, [(number of the arc, log probability)], and their sum; as `score` in src/speech/single-words.ts."""
    places = len(gaps)
    best = [(gaps[0][to], []) for to in range(places)]
    for token in text:
        after = [(NEVER, [])] * places
        for i, (begin, end) in enumerate(arcs):
            value = best[begin][0] + scores[i, token]
            if value > after[end][0]:
                after[end] = (value, best[begin][1] + [(i, scores[i, token])])
        best = [max([after[to]] + [(after[at][0] + gaps[at][to], after[at][1]) for at in range(to)], key=lambda one: one[0]) for to in range(places)]
    return best[-1]


def from_sentences(vectors: Path, head: list[np.ndarray], rng: np.random.Generator):
    """Words cut out of whole utterances of AN4, where a first head says they are: people saying numbers without a pause."""
    x = np.fromfile(vectors / "arcs.bin", np.float32).reshape(-1, SIZE)
    # What is no word is less likely here than among the cuttings that the head was fitted on.
    p = named(head, x)
    p[:, NO_WORD] *= np.exp(-3)
    scores, rows, labels, at = np.log(p / p.sum(1, keepdims=True) + 1e-6), [], [], 0
    for line in (vectors / "arcs.jsonl").read_text().splitlines():
        one = json.loads(line)
        arcs, places, here = one["arcs"], one["places"], at
        at += len(arcs)
        gaps = [[-UNEXPLAINED * n for n in row] for row in one["speech"]]
        text = [TOKENS[word] for word in one["text"].split()]
        total, path = aligned(text, arcs, scores[here:at], gaps)
        if one["part"] == "test" or total / len(text) < CLEAR:
            continue
        said = {i: token for (i, _), token in zip(path, text)}
        poor = {i for i, score in path if score <= POOR}
        words = [(places[arcs[i][0]], places[arcs[i][1]]) for i, _ in path]
        for i, (begin, end) in enumerate(arcs):
            if i in poor:
                continue
            if i not in said:
                covered = sorted(max(0, min(places[end], q) - max(places[begin], p)) / (q - p) for p, q in words)[::-1]
                whole = sum(share > 0.85 for share in covered)
                several = whole >= 2 or (whole == 1 and len(covered) > 1 and covered[1] > 0.45)
                if not (several or (whole == 0 and covered[0] < 0.65)) or rng.random() > 0.35:
                    continue
            rows.append(here + i)
            labels.append(said.get(i, NO_WORD))
    return x[rows], np.array(labels)


def main(vectors: Path, out: Path, without: str | None) -> None:
    table = [line.split("\t") for line in (vectors / "vectors.tsv").read_text().splitlines()]
    x = np.fromfile(vectors / "vectors.bin", np.float32).reshape(-1, SIZE)
    y = np.array([TOKENS.get(word, NO_WORD) for _, _, _, word, _ in table])
    weight = np.array([0.5 if name == "voices" else 1 for name, *_ in table], np.float32)
    train = np.array([part == "train" for _, _, part, _, _ in table])
    more, labels = from_sentences(vectors, fit(x[train], y[train], weight[train], 8), np.random.default_rng(1))
    train &= np.array([speaker != without for _, speaker, *_ in table])
    head = fit(np.concatenate([x[train], more]), np.concatenate([y[train], labels]),
               np.concatenate([weight[train], np.ones(len(labels), np.float32)]), 14)
    judged = np.array([kind == "whole" and (speaker == without if without else part == "test") for _, speaker, part, _, kind in table])
    print(f"{judged.sum()} words left out, {(named(head, x[judged]).argmax(1) == y[judged]).mean():.1%} named")
    out.mkdir(parents=True, exist_ok=True)
    np.concatenate([p.astype(np.float32).ravel() for p in head]).tofile(out / "head.bin")
    (out / "words.json").write_text(json.dumps(WORDS, indent=1))


if __name__ == "__main__":
    main(Path(sys.argv[1]), Path(sys.argv[2]), sys.argv[3] if len(sys.argv) > 3 else None)
