"""The network: waveform in, character log-probabilities out, every 20 ms.

The front end (decimation to 8 kHz, log-mel 60-3800 Hz) is made of fixed convolutions, so that the exported graph takes
the waveform itself and telephone and wide-band sound look alike to it. Then a conformer with rotary positions.
"""

import math

import torch
from torch import Tensor, nn
from torch.nn import functional as F

RATE = 8000
HOP, WINDOW, FFT, MELS = 80, 200, 256, 64
STRIDE = 160  # samples at 8 kHz for one output frame
ALPHABET = ["<pad>", "<s>", "</s>", "<unk>", "|"] + list("abcdefghijklmnopqrstuvwxyz") + ["'"]
BLANK = 0


def encode(text: str) -> list[int]:
    return [ALPHABET.index("|" if c == " " else c) for c in text]


def decode(ids: list[int]) -> str:
    return "".join(ALPHABET[i] for i in ids if i > 3).replace("|", " ").strip()


def greedy(frames: Tensor) -> str:
    best = torch.unique_consecutive(frames.argmax(-1)).tolist()
    return decode([i for i in best if i != BLANK])


def mel(f: float) -> float:
    return 2595 * math.log10(1 + f / 700)


def mel_edges(bands: int = MELS) -> Tensor:
    """(bands+2) frequencies, Hz: where each triangle starts, peaks and ends, equally spaced in mel from 60 to 3800 Hz."""
    return 700 * (10 ** (torch.linspace(mel(60), mel(3800), bands + 2) / 2595) - 1)


def mel_bank() -> Tensor:
    """(MELS, FFT/2+1) triangles."""
    edges = mel_edges()
    freq = torch.arange(FFT // 2 + 1) * RATE / FFT
    up = (freq - edges[:-2, None]) / (edges[1:-1] - edges[:-2])[:, None]
    down = (edges[2:, None] - freq) / (edges[2:] - edges[1:-1])[:, None]
    return torch.clamp(torch.minimum(up, down), min=0)


def low_pass() -> Tensor:
    """63 taps for 16 kHz that keep what 8 kHz can hold."""
    at = torch.arange(63) - 31
    taps = torch.sinc(at * 3900 / 8000) * torch.hamming_window(63, periodic=False)
    return taps / taps.sum()


class LogMel(nn.Module):
    """(B, samples at 8 kHz, zero mean and unit variance) -> (B, frames of 10 ms, MELS)."""

    def __init__(self) -> None:
        super().__init__()
        at = torch.arange(FFT) - (FFT - WINDOW) / 2
        window = torch.where((at >= 0) & (at < WINDOW), torch.sin(math.pi * (at + 0.5) / WINDOW) ** 2, torch.zeros(()))
        angle = 2 * math.pi * torch.arange(FFT // 2 + 1)[:, None] * torch.arange(FFT) / FFT
        self.register_buffer("basis", (torch.cat([torch.cos(angle), torch.sin(angle)]) * window)[:, None], persistent=False)
        self.register_buffer("mel", mel_bank()[:, :, None] / WINDOW, persistent=False)

    def forward(self, sound: Tensor) -> Tensor:
        padded = F.pad(sound[:, None], (FFT // 2, FFT // 2))
        if self.training:  # the same sums as a matrix product, which GPUs do faster
            parts = torch.matmul(padded[:, 0].unfold(1, FFT, HOP), self.basis[:, 0].t()).transpose(1, 2) ** 2
        else:
            parts = F.conv1d(padded, self.basis, stride=HOP) ** 2
        power = parts[:, : FFT // 2 + 1] + parts[:, FFT // 2 + 1:]
        return (torch.log(F.conv1d(power, self.mel) + 1e-3) / 4).transpose(1, 2)


def mask_time(x: Tensor, keep: Tensor | None) -> Tensor:
    return x if keep is None else x * keep[:, :, None]


def rotations(frames: int, size: int, like: Tensor) -> tuple[Tensor, Tensor]:
    """Cosines and sines (frames, size) of rotary positions; computed, not stored, to keep the exported file small."""
    rate = torch.exp(torch.arange(0, size, 2, device=like.device) * (-math.log(10000.0) / size))
    turn = torch.cumsum(torch.ones_like(like[0, :, :1]).float(), 0) * rate[None]
    turn = torch.cat([turn, turn], -1)
    return torch.cos(turn).to(like.dtype), torch.sin(turn).to(like.dtype)


class Attention(nn.Module):
    def __init__(self, width: int, heads: int) -> None:
        super().__init__()
        self.heads, self.size = heads, width // heads
        self.inward, self.outward = nn.Linear(width, 3 * width), nn.Linear(width, width)

    def forward(self, x: Tensor, keep: Tensor | None, turn: tuple[Tensor, Tensor]) -> Tensor:
        batch, frames, width = x.shape

        def rotate(t: Tensor) -> Tensor:
            left, right = t.chunk(2, -1)
            return t * turn[0] + torch.cat([-right, left], -1) * turn[1]

        q, k, v = (t.reshape(batch, frames, self.heads, self.size).transpose(1, 2) for t in self.inward(x).chunk(3, -1))
        score = torch.matmul(rotate(q), rotate(k).transpose(2, 3)).float() / math.sqrt(self.size)
        if keep is not None:
            score = score.masked_fill(keep[:, None, None, :] == 0, -1e4)
        mixed = torch.matmul(torch.softmax(score, -1).to(v.dtype), v)
        return self.outward(mixed.transpose(1, 2).reshape(batch, frames, width))


class Convolution(nn.Module):
    def __init__(self, width: int, kernel: int) -> None:
        super().__init__()
        self.inward, self.outward = nn.Linear(width, 2 * width), nn.Linear(width, width)
        self.depth = nn.Conv1d(width, width, kernel, padding=kernel // 2, groups=width)
        self.norm = nn.LayerNorm(width)

    def forward(self, x: Tensor, keep: Tensor | None) -> Tensor:
        a, b = self.inward(x).chunk(2, -1)
        x = mask_time(a * torch.sigmoid(b), keep)
        x = self.depth(x.transpose(1, 2)).transpose(1, 2)
        return self.outward(F.silu(self.norm(x)))


class Block(nn.Module):
    def __init__(self, width: int, heads: int, kernel: int, dropout: float) -> None:
        super().__init__()
        def feed() -> nn.Module:
            return nn.Sequential(nn.LayerNorm(width), nn.Linear(width, 4 * width), nn.SiLU(), nn.Dropout(dropout), nn.Linear(4 * width, width), nn.Dropout(dropout))
        self.first, self.second = feed(), feed()
        self.before_attention, self.attention = nn.LayerNorm(width), Attention(width, heads)
        self.before_convolution, self.convolution = nn.LayerNorm(width), Convolution(width, kernel)
        self.dropout, self.last = nn.Dropout(dropout), nn.LayerNorm(width)

    def forward(self, x: Tensor, keep: Tensor | None, turn: tuple[Tensor, Tensor]) -> Tensor:
        x = x + 0.5 * self.first(x)
        x = x + self.dropout(self.attention(self.before_attention(x), keep, turn))
        x = x + self.dropout(self.convolution(self.before_convolution(x), keep))
        return self.last(x + 0.5 * self.second(x))


class Recogniser(nn.Module):
    """`middle` is a second output at half depth, used only in training."""

    bands = MELS

    def __init__(self, width: int = 192, blocks: int = 9, heads: int = 4, kernel: int = 15, channels: int = 48, dropout: float = 0.1) -> None:
        super().__init__()
        self.front = LogMel()
        self.narrow = nn.Sequential(nn.Conv2d(1, channels, 3, stride=2, padding=1), nn.SiLU(),
                                    nn.Conv2d(channels, channels, 3, stride=(1, 2), padding=1), nn.SiLU())
        self.enter = nn.Sequential(nn.Linear(channels * MELS // 4, width), nn.Dropout(dropout))
        self.blocks = nn.ModuleList([Block(width, heads, kernel, dropout) for _ in range(blocks)])
        self.middle, self.exit = nn.Linear(width, len(ALPHABET)), nn.Linear(width, len(ALPHABET))

    def encode(self, text: str, source: str = "") -> list[int]:
        return encode(text)

    def steps(self, frames: Tensor) -> Tensor:
        """How many frames come out for so many of 10 ms."""
        return (frames + 1) // 2

    def encode_mels(self, mels: Tensor, frames: Tensor | None = None) -> tuple[Tensor, Tensor]:
        """(B, 10 ms frames, MELS), and how many 20 ms frames of each are real -> two logits (B, 20 ms frames, alphabet)."""
        x = self.narrow(mels[:, None])
        x = self.enter(x.transpose(1, 2).flatten(2))
        keep = None if frames is None else (torch.arange(x.shape[1], device=x.device)[None] < frames[:, None]).to(x.dtype)
        turn = rotations(x.shape[1], self.blocks[0].attention.size, x)
        middle = x
        for i, block in enumerate(self.blocks):
            x = block(x, keep, turn)
            if i + 1 == len(self.blocks) // 2:
                middle = self.middle(x)
        return self.exit(x), middle


class Deployed(nn.Module):
    """What is exported: (1, samples at 16 kHz) -> logits (1, frames, alphabet)."""

    def __init__(self, recogniser: Recogniser) -> None:
        super().__init__()
        self.recogniser = recogniser
        self.register_buffer("low_pass", low_pass()[None, None], persistent=False)

    def forward(self, sound: Tensor) -> Tensor:
        halved = F.conv1d(F.pad(sound[:, None], (31, 31)), self.low_pass, stride=2)[:, 0]
        halved = halved - halved.mean(1, keepdim=True)
        halved = halved / (torch.sqrt((halved ** 2).mean(1, keepdim=True)) + 1e-5)
        return self.recogniser.encode_mels(self.recogniser.front(halved))[0]
