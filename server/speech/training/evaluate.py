"""Greedy results on speakers and voices that the network never heard.

    python3 evaluate.py --human PACK --synthetic SHARDS --weights WEIGHTS [--model MODEL]

With --model, the 8-bit export is measured too; with --strings N, so many strings of digits cut together from the single digits
of each set's held-out speakers, and nothing in noise. Without lexicon and grammar: `npm run bench:speech` measures those.
"""

import argparse
from pathlib import Path

import numpy as np
import torch

import augment
import human
import noise
import splice
from distance import distance
from model import greedy
from export import load
from second import Second
from train import read_shard

NUMBERS = set("""zero oh one two three four five six seven eight nine ten eleven twelve thirteen fourteen fifteen sixteen seventeen eighteen
nineteen twenty thirty forty fifty sixty seventy eighty ninety hundred thousand and enter repeat stop yes no go start help erase rubout""".split())


class Network:
    def __init__(self, weights: Path, device: torch.device) -> None:
        self.device, self.model = device, load(weights).to(device).eval()
        words = self.model.words if isinstance(self.model, Second) else None
        self.greedy = words.greedy if words else greedy
        self.said = words.said if words else lambda text, source: text

    @torch.no_grad()
    def __call__(self, sounds: list[np.ndarray]) -> list[str]:
        texts: dict[int, str] = {}
        order = sorted(range(len(sounds)), key=lambda i: len(sounds[i]))
        for at in range(0, len(order), 64):
            rows = order[at:at + 64]
            lengths = torch.tensor([len(sounds[r]) for r in rows], device=self.device)
            batch = torch.zeros(len(rows), int(lengths.max()), device=self.device)
            for b, r in zip(batch, rows):
                b[:len(sounds[r])] = torch.tensor(sounds[r], device=self.device)
            frames = self.model.steps(lengths // 80 + 1)
            logits, _ = self.model.encode_mels(self.model.front(augment.normalise(batch, lengths)), frames)
            texts |= {r: self.greedy(one[:n]) for r, one, n in zip(rows, logits.cpu(), frames.tolist())}
        return [texts[i] for i in range(len(sounds))]


class Exported:
    def __init__(self, folder: Path, like: Network) -> None:
        import onnxruntime
        self.greedy, self.said = like.greedy, like.said
        self.session = onnxruntime.InferenceSession(str(folder / "onnx" / "model_quantized.onnx"), providers=["CPUExecutionProvider"])

    def __call__(self, sounds: list[np.ndarray]) -> list[str]:
        from scipy.signal import resample_poly
        wide = (resample_poly(s, 2, 1).astype(np.float32) for s in sounds)
        return [self.greedy(torch.tensor(self.session.run(None, {"input_values": ((w - w.mean()) / (w.std() + 1e-7))[None]})[0][0])) for w in wide]


def padded(sound: np.ndarray, seconds: float = 0.25) -> np.ndarray:
    edge = np.zeros(int(seconds * human.RATE), np.float32)
    return np.concatenate([edge, sound.astype(np.float32), edge])


def noisy(sound: np.ndarray, kind: str, snr: float, rng: np.random.Generator) -> np.ndarray:
    """Scales the noise by the mean power of the speech."""
    sound = padded(sound)
    added = noise.make(kind, len(sound) / human.RATE + 0.01, rng)[:len(sound)]
    power = np.sqrt(np.mean(sound[2000:-2000] ** 2))
    return sound + added * power * 10 ** (-snr / 20)


def row(name: str, recogniser, sounds: list[np.ndarray], texts: list[str], show: int = 0) -> None:
    heard, texts = recogniser(sounds), [recogniser.said(t, name.split()[0]) for t in texts]
    errors = sum(distance(t.split(), h.split()) for t, h in zip(texts, heard))
    exact = sum(t == h for t, h in zip(texts, heard))
    print(f"{name:34} n {len(texts):4}  exact {exact / len(texts):6.1%}  word errors {errors / max(1, sum(len(t.split()) for t in texts)):6.1%}", flush=True)
    wrong = [(t, h) for t, h in zip(texts, heard) if t != h]
    for t, h in wrong[:show]:
        print(f"      {t!r} heard {h!r}")


def test_sets(pack: Path, shards: Path | None, fold: int | None = None) -> dict[str, tuple[list[np.ndarray], list[str]]]:
    sets: dict[str, tuple[list[np.ndarray], list[str]]] = {}
    def put(name: str, text: str, sound: np.ndarray) -> None:
        sounds, texts = sets.setdefault(name, ([], []))
        sounds.append(sound)
        texts.append(text)
    for name, _, part, text, sound in human.load(pack, fold):
        if part == "test":
            put(name, text, sound)
            if name == "an4" and set(text.split()) <= NUMBERS:
                put("an4 numbers and commands", text, sound)
    for file in sorted(shards.glob("????.npz"))[:24] if shards else []:
        for text, sound, part in read_shard(file):
            if part == "test":
                put("synthetic", text, sound)
    return sets


def string_sets(pack: Path, count: int, fold: int | None = None) -> dict[str, tuple[list[np.ndarray], list[str]]]:
    """Strings of the held-out people of AN4 and Speech Commands, to choose by, and of the held-out speaker of the digits, to measure."""
    singles = [(f"{name}/{speaker}", text, sound) for name, speaker, part, text, sound in human.load(pack, fold)
               if part == "test" and name in ("digits", "commands", "words")]
    made = {}
    for name, of in (("strings, AN4 and Speech Commands", ("words", "commands")), ("strings, digits", ("digits",))):
        some = [one for one in singles if one[0].split("/")[0] in of]
        drawn = splice.strings(some, count, 99)
        made[name] = [sound for _, sound in drawn], [text for text, _ in drawn]
    return made


def report(recogniser, sets, show: int) -> None:
    rng = np.random.default_rng(7)
    for name, (sounds, texts) in sets.items():
        row(name, recogniser, [padded(s) for s in sounds], texts, show)
    sounds = [s for name in ("an4 numbers and commands", "digits", "commands") for s in sets[name][0][:60]]
    texts = [t for name in ("an4 numbers and commands", "digits", "commands") for t in sets[name][1][:60]]
    for snr in (20, 10, 5, 0):
        for kind in ("white", "pink", "fan", "sounder", "forklift", "grinder", "impacts"):
            row(f"people, {kind} at {snr} dB", recogniser, [noisy(s, kind, snr, rng) for s in sounds], texts)
    alone = [noise.make(k, rng.uniform(0.5, 4), rng) for k in noise.KINDS for _ in range(30)]
    row("noise alone", recogniser, alone, [""] * len(alone), show)


def main() -> None:
    parser = argparse.ArgumentParser()
    parser.add_argument("--human", type=Path, required=True)
    parser.add_argument("--synthetic", type=Path)
    parser.add_argument("--weights", type=Path, required=True)
    parser.add_argument("--model", type=Path)
    parser.add_argument("--strings", type=int, default=0)
    parser.add_argument("--fold", type=int, help="as for train.py")
    parser.add_argument("--show", type=int, default=0)
    args = parser.parse_args()
    torch.backends.cudnn.allow_tf32 = False
    sets = test_sets(args.human, args.synthetic, args.fold)
    network = Network(args.weights, torch.device("cuda" if torch.cuda.is_available() else "cpu"))
    if args.strings:
        for name, (sounds, texts) in (sets | string_sets(args.human, args.strings, args.fold)).items():
            row(name, network, [padded(s) for s in sounds], texts, args.show)
    else:
        report(network, sets, args.show)
    if args.model:
        print("8-bit export:")
        exported = Exported(args.model, network)
        for name, (sounds, texts) in sets.items():
            row(name, exported, [padded(s) for s in sounds[:300]], texts[:300])


if __name__ == "__main__":
    main()
