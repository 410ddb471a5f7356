"""Trains the reader of displays: python3 train.py "SHARDS*.bin" reader.onnx --minutes 18

Needs Python 3.11 with PyTorch 1.13 or later and NumPy; one core is enough. `dataset.ts` makes the shards. Shards that come
while it trains are taken in, so both can be started together. Of the first shard, 1500 patches are kept to see how it goes.
"""
import argparse
import glob
import time

import numpy as np
import torch
from torch import nn

WIDTH, HEIGHT, LABEL = 128, 32, 12
# The first class is the gap of connectionist temporal classification (CTC). As in `src/sight/characters.ts`.
CHARACTERS = "0123456789.-?"


class Reader(nn.Module):
    """1 x 32 x 128 -> 32 places from left to right, each with a score for the gap and every character."""

    def __init__(self):
        super().__init__()

        def layer(inside, out, size, stride=1, padding=None):
            padding = tuple(k // 2 for k in size) if padding is None else padding
            return nn.Sequential(
                nn.Conv2d(inside, out, size, stride, padding, bias=False), nn.BatchNorm2d(out), nn.ReLU(inplace=True)
            )

        self.net = nn.Sequential(
            layer(1, 16, (5, 5), 2),
            layer(16, 32, (3, 3)),
            nn.MaxPool2d(2),
            layer(32, 64, (3, 3)),
            nn.MaxPool2d((2, 1)),
            layer(64, 64, (3, 3)),
            layer(64, 128, (4, 3), 1, (0, 1)),
            nn.Dropout(0.1),
            layer(128, 128, (1, 3)),
            nn.Conv2d(128, len(CHARACTERS) + 1, 1),
        )

    def forward(self, patch):
        return self.net(patch).squeeze(2).permute(0, 2, 1)


def read(file):
    rows = np.fromfile(file, dtype=np.uint8).reshape(-1, WIDTH * HEIGHT + LABEL)
    labels = [bytes(row[WIDTH * HEIGHT :]).split(b"\0")[0].decode() for row in rows]
    return torch.from_numpy(rows[:, : WIDTH * HEIGHT].copy().view(np.int8)).view(-1, 1, HEIGHT, WIDTH), labels


def spoiled(patches, generator):
    """A little more contrast or less, noise, and a place that is not quite the same."""
    x = patches.float() / 32
    n = x.shape[0]
    x = x * (0.8 + 0.4 * torch.rand(n, 1, 1, 1, generator=generator))
    x = x + torch.randn(x.shape, generator=generator) * 0.12 * torch.rand(n, 1, 1, 1, generator=generator)
    dx, dy = (int(v) for v in torch.randint(-3, 4, (2,), generator=generator))
    return torch.roll(x, (dy // 2, dx), (2, 3))


def main():
    parser = argparse.ArgumentParser()
    parser.add_argument("shards")
    parser.add_argument("out")
    parser.add_argument("--minutes", type=float, default=18)
    parser.add_argument("--batch", type=int, default=64)
    parser.add_argument("--weights", help="go on from these")
    parser.add_argument("--peak", type=float, default=3e-3)
    options = parser.parse_args()
    torch.manual_seed(1)
    torch.set_num_threads(1)
    generator = torch.Generator().manual_seed(1)
    kept, kept_labels = None, None
    shards = {}
    model = Reader().to(memory_format=torch.channels_last)
    if options.weights:
        model.load_state_dict(torch.load(options.weights))
    optimiser = torch.optim.AdamW(model.parameters(), lr=options.peak, weight_decay=0.02)
    loss_of = nn.CTCLoss(zero_infinity=True)
    start, step, shown = time.time(), 0, time.time()
    total = options.minutes * 60
    while (done := (time.time() - start) / total) < 1:
        if step % 500 == 0:
            for file in sorted(glob.glob(options.shards)):
                if kept is None:
                    kept, kept_labels = (part[:1500] for part in read(file))
                    shards[file] = None
                elif file not in shards:
                    shards[file] = read(file)
            parts = [shard for shard in shards.values() if shard]
        rate = options.peak * min(1, step / 300 + 0.02) * (0.5 + 0.5 * np.cos(np.pi * done))
        for group in optimiser.param_groups:
            group["lr"] = rate
        patches, labels = parts[int(torch.randint(len(parts), (1,), generator=generator))]
        chosen = torch.randint(len(labels), (options.batch,), generator=generator)
        x = spoiled(patches[chosen], generator).contiguous(memory_format=torch.channels_last)
        texts = [labels[int(i)] for i in chosen]
        model.train()
        scores = model(x).log_softmax(2).permute(1, 0, 2)
        targets = torch.tensor([CHARACTERS.index(c) + 1 for text in texts for c in text], dtype=torch.long)
        loss = loss_of(
            scores,
            targets,
            torch.full((len(texts),), scores.shape[0], dtype=torch.long),
            torch.tensor([len(text) for text in texts], dtype=torch.long),
        )
        optimiser.zero_grad()
        loss.backward()
        nn.utils.clip_grad_norm_(model.parameters(), 2.0)
        optimiser.step()
        step += 1
        if time.time() - shown > 45:
            shown = time.time()
            model.eval()
            with torch.no_grad():
                best = torch.cat([model(kept[i : i + 250].float() / 32) for i in range(0, len(kept), 250)]).argmax(2)
            right = sum(collapsed(row) == text for row, text in zip(best.tolist(), kept_labels))
            print(f"{done:.2f} step {step} shards {len(parts)} loss {loss.item():.3f} right {right / len(kept_labels):.4f}", flush=True)
            torch.save(model.state_dict(), options.out.replace(".onnx", ".pt"))
    torch.save(model.state_dict(), options.out.replace(".onnx", ".pt"))
    export(model, options.out)


def collapsed(row):
    out, before = "", 0
    for k in row:
        if k != before and k:
            out += CHARACTERS[k - 1]
        before = k
    return out


def export(model, file):
    model.eval()
    torch.onnx.export(
        model.to(memory_format=torch.contiguous_format),
        torch.zeros(1, 1, HEIGHT, WIDTH),
        file,
        opset_version=13,
        input_names=["patch"],
        output_names=["scores"],
        dynamic_axes={"patch": {0: "patches"}, "scores": {0: "patches"}},
    )


if __name__ == "__main__":
    main()
