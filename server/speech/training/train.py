"""Trains the recogniser for a given time.

    torchrun --nproc-per-node GPUS train.py --human PACK --synthetic SHARDS --out OUT --seconds 1000

Reads the pack of human.py and all shards that synthesise.py has written so far (it may still be running). From time
to time and at the end it writes OUT/weights.pt: the moving average of the weights, as float16. Plain `python3 train.py`
trains on one GPU.
"""

import argparse
import os
import time
from pathlib import Path

import numpy as np
import torch
import torch.distributed as dist
from torch import Tensor
from torch.nn import functional as F

import augment
import human
import splice
from model import BLANK, RATE, Recogniser
from second import Second, Words
from single_sounds import WORDS

# Share of each source in a batch.
SHARES = {"an4": 0.15, "digits": 0.07, "commands": 0.15, "prompts": 0.01, "spliced": 0.16, "synthetic": 0.46}
# The same for a training on strings of digits: a quarter of all, and single words cut tight, the rest so that nothing is forgotten.
# "others": single words of people that are not ours.
STRING_SHARES = {"an4": 0.11, "digits": 0.07, "commands": 0.12, "words": 0.02, "prompts": 0.01, "spliced": 0.04, "strings": 0.25, "cut": 0.06,
                 "others": 0.03, "synthetic": 0.29}
SILENT = 0.06  # share of noise without speech
BATCH_SECONDS = 600  # of sound on each GPU
RANK, RANKS = int(os.environ.get("RANK", 0)), int(os.environ.get("WORLD_SIZE", 1))


class Corpus:
    """All recordings in one tensor on the GPU."""

    def __init__(self, device: torch.device, encode, shares: dict[str, float]) -> None:
        self.encode, self.shares = encode, shares
        self.device, self.sounds, self.starts, self.lengths, self.texts, self.sources = device, [], [], [], [], []
        self.samples, self.shards = torch.zeros(0, dtype=torch.int16, device=device), set()

    def add(self, source: str, items: list[tuple[str, np.ndarray]]) -> None:
        at = len(self.samples)
        for text, sound in items:
            self.starts.append(at)
            self.lengths.append(len(sound))
            self.texts.append(self.encode(text, source))
            self.sources.append(source)
            at += len(sound)
        new = torch.tensor(np.concatenate([sound for _, sound in items]), device=self.device)
        self.samples = torch.cat([self.samples, new])

    def add_shards(self, folder: Path) -> None:
        items = []
        for file in sorted(set(folder.glob("????.npz")) - self.shards):
            self.shards.add(file)
            items += [(text, sound) for text, sound, part in read_shard(file) if part == "train"]
        if items:
            self.add("synthetic", items)

    def weights(self) -> np.ndarray:
        sources = np.array(self.sources)
        weight = np.zeros(len(sources))
        for source in set(self.sources):
            weight[sources == source] = self.shares[source] / (sources == source).sum()
        return weight / weight.sum()

    def batch(self, rows: np.ndarray) -> tuple[Tensor, Tensor, list[list[int]]]:
        lengths = torch.tensor([self.lengths[r] for r in rows], device=self.device)
        starts = torch.tensor([self.starts[r] for r in rows], device=self.device)
        at = torch.arange(int(lengths.max()), device=self.device)[None]
        index = (starts[:, None] + at).clamp(max=len(self.samples) - 1)
        sound = self.samples[index].float() * (at < lengths[:, None])
        return sound, lengths, [self.texts[r] for r in rows]


def read_shard(file: Path):
    """Yields (text, samples, part) of a shard of synthesise.py."""
    data = dict(np.load(file))
    ends = np.cumsum(data["lengths"])
    for text, end, length, part in zip(data["texts"], ends, data["lengths"], data["parts"]):
        yield str(text), data["sounds"][end - length:end], str(part)


def batches(corpus: Corpus, rng: np.random.Generator, seconds: float):
    """A round of batches, each of utterances of similar length."""
    lengths, weights = np.array(corpus.lengths), corpus.weights()
    pool = rng.choice(len(weights), 12000, p=weights)
    pool = pool[np.argsort(lengths[pool], kind="stable")]
    cut, first = [], 0
    for i, row in enumerate(pool):
        if (i - first + 1) * (lengths[row] / RATE + 0.8) > seconds:
            cut.append(pool[first:i])
            first = i
    cut.append(pool[first:])
    rng.shuffle(cut)
    yield from (c for c in cut if len(c))


def losses(model: Recogniser | Second, mels: Tensor, mel_frames: Tensor, texts: list[list[int]], middle: float) -> Tensor:
    """`middle`: how much the output at half depth counts."""
    frames = model.steps(mel_frames)
    targets = torch.tensor([c for t in texts for c in t], dtype=torch.long, device=mels.device)
    sizes = torch.tensor([len(t) for t in texts], device=mels.device)
    with torch.autocast(mels.device.type, torch.bfloat16, enabled=mels.is_cuda):
        outputs = model.encode_mels(mels, frames)
    total = torch.zeros((), device=mels.device)
    for logits, share in zip(outputs, (1 - middle, middle)):
        loss = F.ctc_loss(F.log_softmax(logits.float(), -1).transpose(0, 1), targets, frames, sizes, BLANK, "none", zero_infinity=True)
        total = total + share * (loss / sizes.clamp(min=4)).mean()
    return total


def shared(parameters: list[Tensor], done: float) -> float:
    """Averages the gradients over all GPUs. `done`: share of the training done on this GPU; returns the average share."""
    if RANKS == 1:
        return done
    flat = torch.cat([p.grad.flatten() for p in parameters] + [torch.tensor([done], device=parameters[0].device)])
    dist.all_reduce(flat)
    flat /= RANKS
    torch._foreach_copy_([p.grad for p in parameters], [g.view_as(p) for p, g in zip(parameters, flat[:-1].split([p.numel() for p in parameters]))])
    return float(flat[-1])


def save(average: dict[str, Tensor], fixed: dict, out: Path) -> None:
    out.mkdir(parents=True, exist_ok=True)
    torch.save({k: v.half() for k, v in average.items()} | fixed, out / "weights.tmp")
    os.replace(out / "weights.tmp", out / "weights.pt")


def train(model: Recogniser | Second, corpus: Corpus, noises: augment.Noises, args: argparse.Namespace) -> None:
    rng, begin, step, done = np.random.default_rng(args.seed + 1000 * RANK), time.time(), 0, 0.0
    named = {k: v for k, v in model.named_parameters() if not k.startswith("embedding.") or args.embedding_rate > 0}
    parameters = list(named.values())
    def group(decays: bool, embedding: bool) -> dict:
        return {"params": [v for k, v in named.items() if (v.ndim > 1) == decays and k.startswith("embedding.") == embedding],
                "weight_decay": 0.02 if decays else 0, "of": args.embedding_rate if embedding else 1}
    groups = [group(decays, embedding) for decays in (True, False) for embedding in (True, False)]
    optimiser = torch.optim.AdamW([g for g in groups if g["params"]], lr=args.peak, betas=(0.9, 0.98))
    average = {k: v.detach().clone() for k, v in named.items()}
    fixed = {k: v for k, v in model.state_dict().items() if k not in named}
    if isinstance(model, Second):
        fixed["words"] = model.words.words
    recent, reported = [], begin
    while True:
        corpus.add_shards(args.synthetic)
        for rows in batches(corpus, rng, args.batch_seconds):
            for group in optimiser.param_groups:
                group["lr"] = group["of"] * args.peak * min(1, (step + 1) / args.warm_up) * (0.01 + 0.99 * (1 - done))
            with torch.no_grad():
                sound, lengths, texts = corpus.batch(rows)
                silent = torch.rand(len(rows), device=corpus.device) < SILENT
                texts = [[] if s else t for t, s in zip(texts, silent.tolist())]
                sound, lengths = augment.spoil(sound, lengths, noises, silent, 1 if args.weights else min(1, 0.1 + 3 * done))
                mels, frames = augment.other_speaker(model.front(sound), lengths // 80 + 1)
                mels = augment.mask_mels(mels, frames)
            loss = losses(model, mels, frames, texts, args.middle)
            optimiser.zero_grad(set_to_none=True)
            loss.backward()
            done = shared(parameters, (time.time() - begin) / args.seconds)
            torch.nn.utils.clip_grad_norm_(parameters, 1.0)
            optimiser.step()
            keep = min(args.keep, (step + 1) / (step + 20))
            with torch.no_grad():
                torch._foreach_mul_(list(average.values()), keep)
                torch._foreach_add_(list(average.values()), parameters, alpha=1 - keep)
            recent.append(loss.detach())
            step += 1
            if RANK == 0 and (time.time() - reported > args.report or done >= 1):
                reported = time.time()
                print(f"{reported - begin:5.0f} s  step {step}  loss {torch.stack(recent).mean():.4f}  synthetic {corpus.sources.count('synthetic')}", flush=True)
                recent = []
                save(average, fixed, args.out)
            if done >= 1:
                return


def build_corpus(args: argparse.Namespace, device: torch.device, encode) -> tuple[Corpus, augment.Noises]:
    corpus = Corpus(device, encode, STRING_SHARES if args.strings else SHARES)
    words, singles, everything = [], [], []
    by_set: dict[str, list[tuple[str, np.ndarray]]] = {}
    for name, speaker, part, text, sound in human.load(args.human, args.fold):
        if part == "train":
            by_set.setdefault(name, []).append((text, sound))
            everything.append(sound)
            if args.strings and name == "commands" and text not in WORDS:
                by_set.setdefault("others", []).append((text, sound))
            if name in ("digits", "commands", "words"):
                singles.append((f"{name}/{speaker}", text, sound))
            if name not in ("an4", "words"):
                words.append((f"{name}/{speaker}", text, splice.trimmed(sound)))
    for name, items in by_set.items():
        corpus.add(name, items)
    corpus.add("spliced", splice.spliced(words, args.spliced, args.seed))
    if args.strings:
        corpus.add("strings", splice.strings(singles, args.strings, args.seed))
        corpus.add("cut", splice.cut(singles, args.strings // 3, args.seed))
    noises = augment.Noises(device, args.seed, args.noises)
    noises.add_babble(everything, args.seed)
    return corpus, noises


def parse() -> argparse.Namespace:
    parser = argparse.ArgumentParser()
    for name in ("human", "synthetic", "out"):
        parser.add_argument(f"--{name}", type=Path, required=True)
    parser.add_argument("--fold", type=int, help="0 to 3: leaves out the speakers of this fold instead of those that the pack names")
    parser.add_argument("--weights", type=Path, help="weights to go on from")
    parser.add_argument("--second", type=Path, help="folder of the embedding's two ONNX files: trains the second hearer")
    parser.add_argument("--texts", type=Path, help="of texts.ts: the words of the second hearer")
    parser.add_argument("--embedding-rate", type=float, default=0.1, help="how fast the embedding learns, as a share of the rest; 0: not at all")
    parser.add_argument("--seconds", type=float, default=1000)
    parser.add_argument("--peak", type=float, default=1.5e-3)
    parser.add_argument("--batch-seconds", type=float, default=BATCH_SECONDS)
    parser.add_argument("--spliced", type=int, default=30000)
    parser.add_argument("--strings", type=int, default=0, help="so many strings of digits: what a model that is trained already learns last")
    parser.add_argument("--middle", type=float, default=0.25, help="share of the loss at half depth; 0 where the weights to go on from were shipped")
    parser.add_argument("--warm-up", type=int, default=500, help="steps")
    parser.add_argument("--keep", type=float, default=0.999, help="of the moving average of the weights, in each step")
    parser.add_argument("--noises", type=int, default=24)
    parser.add_argument("--report", type=float, default=20)
    parser.add_argument("--seed", type=int, default=1)
    return parser.parse_args()


def main() -> None:
    args = parse()
    device = torch.device("cuda", RANK) if torch.cuda.is_available() else torch.device("cpu")
    if device.type == "cuda":
        torch.cuda.set_device(device)
    if RANKS > 1:
        dist.init_process_group("nccl" if device.type == "cuda" else "gloo")
    torch.manual_seed(args.seed)
    torch.backends.cudnn.allow_tf32 = False  # the front end needs every bit; the rest runs in bfloat16
    held = torch.load(args.weights, map_location="cpu") if args.weights else {}
    known = held.pop("words", None)
    if known or args.second:
        model = Second(Words(known) if known else Words.of_grammar(args.texts))
    else:
        model = Recogniser()
    if held:
        model.load_state_dict({k: v.float() for k, v in held.items()})
    elif args.second:
        model.take(args.second)
    model = model.to(device).train()
    torch.manual_seed(args.seed + RANK)
    begin = time.time()
    corpus, noises = build_corpus(args, device, model.encode)
    print(f"{sum(p.numel() for p in model.parameters())} parameters; {len(corpus.texts)} recordings in {time.time() - begin:.0f} s on {device}", flush=True)
    train(model, corpus, noises, args)
    if RANKS > 1:
        dist.destroy_process_group()


if __name__ == "__main__":
    main()
