"""The second hearer: whole words every 40 ms, from a speech embedding that was learnt from very many people.

The embedding is the small convolutional network of Lin, Kilgour, Roblek and Sharifi ("Training keyword spotters with
limited and synthesized speech data", ICASSP 2020). It was made to give one vector every 80 ms. The last time pooling is
replaced by dilation here, which gives the same vectors every 40 ms. A small conformer names words from them (connectionist
temporal classification): the words of the grammar, and one token for any other word.
"""

from pathlib import Path

import numpy as np
import torch
from torch import Tensor, nn
from torch.nn import functional as F

from model import BLANK, Block, low_pass, rotations

LEVEL = 2000  # RMS that the embedding's front end is given; it expects samples of 16 bits
BANDS = 32
SEES = 76  # mel frames of 10 ms behind one vector
VECTOR = 96
OTHER = 1
SOUNDS_LIKE = {"won": "one", "to": "two", "too": "two", "for": "four", "fore": "four", "ate": "eight", "wun": "one", "ait": "eight"}


class Words:
    """Words and their tokens. Words that sound the same have the same token."""

    def __init__(self, words: list[str]) -> None:
        self.words = words
        self.tokens = {w: i for i, w in enumerate(words, 2)}

    @staticmethod
    def of_grammar(texts: Path) -> "Words":
        """Every word of the sentences of texts.ts."""
        return Words(sorted({SOUNDS_LIKE.get(w, w) for w in texts.read_text().split()}))

    def encode(self, text: str, source: str = "") -> list[int]:
        """Spelled letters of the human recordings are other words, but for "o", which is said as in numbers."""
        spelled = source in ("an4", "prompts")
        return [OTHER if spelled and len(w) == 1 and w != "o" else self.tokens.get("oh" if w == "o" else SOUNDS_LIKE.get(w, w), OTHER)
                for w in text.split()]

    def said(self, text: str, source: str = "") -> str:
        """The text as `greedy` would write it."""
        return self.read(self.encode(text, source))

    def read(self, tokens: list[int]) -> str:
        return " ".join("other" if i == OTHER else self.words[i - 2] for i in tokens)

    def greedy(self, frames: Tensor) -> str:
        best = torch.unique_consecutive(frames.argmax(-1)).tolist()
        return self.read([i for i in best if i != BLANK])


def initialisers(file: Path) -> dict[str, np.ndarray]:
    import onnx
    from onnx import numpy_helper
    return {t.name: numpy_helper.to_array(t) for t in onnx.load(file).graph.initializer}


class Mels(nn.Module):
    """(B, samples at 16 kHz, RMS 1) -> (B, frames of 10 ms, BANDS), as the embedding expects them."""

    def __init__(self) -> None:
        super().__init__()
        self.register_buffer("basis", torch.zeros(244, 1, 512))
        self.register_buffer("mel", torch.zeros(BANDS, 122, 1))

    def take(self, file: Path) -> None:
        held = initialisers(file)
        real, imag = (held[f"0.stft.conv_{part}.weight"] for part in ("real", "imag"))
        weights = held["1.melW"]
        used = 1 + int(np.flatnonzero(weights.any(1)).max())
        assert used <= 122, used
        self.basis.copy_(torch.tensor(np.concatenate([real[:122], imag[:122]])))
        self.mel.copy_(torch.tensor(weights[:122].T[:, :, None]))

    def forward(self, sound: Tensor) -> Tensor:
        parts = F.conv1d(F.pad(sound[:, None] * LEVEL, (256, 256)), self.basis, stride=160) ** 2
        power = F.conv1d(parts[:, :122] + parts[:, 122:], self.mel)
        # In decibels, then as the embedding was trained. Below 0 dB there is nothing in 16 bits.
        return (torch.log(power.clamp(min=1.0)) / np.log(10) + 2).transpose(1, 2)


class Embedding(nn.Module):
    """(B, 10 ms frames, BANDS) -> (B, 40 ms frames, VECTOR)."""

    KERNELS = [(3, 3), (1, 3), (3, 1), *[(1, 3), (3, 1)] * 8, (3, 1)]

    def __init__(self) -> None:
        super().__init__()
        channels = [1, 24, 24, 24, 48, 48, 48, 48, 72, 72, 72, 72, *[96] * 9]
        self.convolutions = nn.ModuleList(nn.Conv2d(a, b, k) for a, b, k in zip(channels, channels[1:], self.KERNELS))
        self.register_buffer("least", torch.zeros(()))

    def take(self, file: Path) -> None:
        held = initialisers(file)
        weights = {n: v for n, v in held.items() if v.ndim == 4 and v.size > 1}
        by_layer = {int(n.split("conv2d")[1].split("/")[0].lstrip("_") or 0): n for n in weights}
        for layer, convolution in enumerate(self.convolutions):
            name = by_layer[layer]
            convolution.weight.data.copy_(torch.tensor(weights[name]))
            bias = held.get(name.replace("weights_fused", "bias_fused"))
            convolution.bias.data.copy_(torch.tensor(bias) if bias is not None and name in weights and bias.ndim == 1 else torch.zeros_like(convolution.bias))
        (least,) = {float(v.reshape(())) for n, v in held.items() if v.ndim == 4 and v.size == 1}
        self.least.fill_(least)

    def forward(self, mels: Tensor) -> Tensor:
        # One vector sees 37 frames before its own and 38 after it: the edges go on as they are.
        x = torch.cat([mels[:, :1].expand(-1, 37, -1), mels, mels[:, -1:].expand(-1, 38, -1)], 1)[:, None]
        dilation = 1
        for layer, convolution in enumerate(self.convolutions):
            x = F.conv2d(x, convolution.weight, convolution.bias, padding=(0, 1 if convolution.kernel_size[1] == 3 else 0),
                         dilation=(dilation if convolution.kernel_size[0] == 3 else 1, 1))
            if layer == 19:
                break
            x = torch.maximum(F.leaky_relu(x, 0.2), self.least)
            if layer == 2:
                x = F.max_pool2d(x, 2)
            elif layer in (6, 14):
                x = F.max_pool2d(x, (1, 2))
            elif layer == 10:
                x = F.max_pool2d(x, 2)
            elif layer == 18:
                x = F.max_pool2d(x, 2, stride=(1, 2))
                dilation = 2
        return x[:, :, :, 0].transpose(1, 2)


class Second(nn.Module):
    """Has the shape of `Recogniser`, so that train.py trains either."""

    bands = BANDS

    def __init__(self, words: Words, width: int = 144, blocks: int = 3, heads: int = 4, kernel: int = 11, dropout: float = 0.1) -> None:
        super().__init__()
        self.words = words
        self.mels, self.embedding = Mels(), Embedding()
        self.register_buffer("smooth", 2 * low_pass()[None, None], persistent=False)
        self.enter = nn.Sequential(nn.LayerNorm(VECTOR), nn.Linear(VECTOR, width), nn.Dropout(dropout))
        self.blocks = nn.ModuleList([Block(width, heads, kernel, dropout) for _ in range(blocks)])
        self.middle, self.exit = (nn.Linear(width, len(words.words) + 2) for _ in range(2))

    def take(self, folder: Path) -> None:
        self.mels.take(folder / "melspectrogram.onnx")
        self.embedding.take(folder / "embedding_model.onnx")

    def encode(self, text: str, source: str = "") -> list[int]:
        return self.words.encode(text, source)

    def steps(self, frames: Tensor) -> Tensor:
        """How many frames come out for so many of 10 ms."""
        return (frames + 3) // 4

    def front(self, sound: Tensor) -> Tensor:
        """(B, samples at 8 kHz) -> (B, samples // 80 + 1, BANDS)."""
        doubled = torch.stack([sound, torch.zeros_like(sound)], 2).flatten(1)
        return self.mels(F.conv1d(F.pad(doubled[:, None], (31, 31)), self.smooth)[:, 0])

    def encode_mels(self, mels: Tensor, frames: Tensor | None = None) -> tuple[Tensor, Tensor]:
        """As `Recogniser.encode_mels`, from BANDS bands and in words."""
        x = self.enter(self.embedding(mels))
        keep = None if frames is None else (torch.arange(x.shape[1], device=x.device)[None] < frames[:, None]).to(x.dtype)
        turn = rotations(x.shape[1], self.blocks[0].attention.size, x)
        middle = x
        for i, block in enumerate(self.blocks):
            x = block(x, keep, turn)
            if i + 1 == len(self.blocks) // 2:
                middle = self.middle(x)
        return self.exit(x), middle


class DeployedSecond(nn.Module):
    """What is exported: (1, samples at 16 kHz) -> logits (1, frames of 40 ms, words + 2)."""

    def __init__(self, second: Second) -> None:
        super().__init__()
        self.second = second
        self.register_buffer("low_pass", low_pass()[None, None], persistent=False)

    def forward(self, sound: Tensor) -> Tensor:
        narrow = F.conv1d(F.pad(sound[:, None], (31, 31)), self.low_pass)[:, 0]
        narrow = narrow - narrow.mean(1, keepdim=True)
        narrow = narrow / (torch.sqrt((narrow ** 2).mean(1, keepdim=True)) + 1e-5)
        return self.second.encode_mels(self.second.mels(narrow))[0]
