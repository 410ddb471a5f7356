"""Makes clean recordings sound as if a phone heard them in a hall, one batch at a time on the GPU."""

import math

import numpy as np
import torch
from torch import Tensor
from torch.nn import functional as F

import noise
from model import mel, mel_edges

RATE = 8000


def uniform(batch: int, low: float, high: float, like: Tensor) -> Tensor:
    return torch.rand(batch, 1, device=like.device) * (high - low) + low


def chance(batch: int, p: float, like: Tensor) -> Tensor:
    return torch.rand(batch, 1, device=like.device) < p


def rms(x: Tensor) -> Tensor:
    return torch.sqrt((x ** 2).mean(1, keepdim=True) + 1e-9)


class Noises:
    """A bank of noise, and of babble mixed from the training speech."""

    def __init__(self, device: torch.device, seed: int, each: int = 24, seconds: float = 12) -> None:
        rng = np.random.default_rng(seed)
        self.bank = torch.tensor(np.stack([noise.make(k, seconds, rng) for k in noise.KINDS for _ in range(each)]), device=device)

    def add_babble(self, sounds: list[np.ndarray], seed: int, clips: int = 48) -> None:
        rng, length = np.random.default_rng(seed), self.bank.shape[1]
        babble = np.zeros((clips, length), np.float32)
        for clip in babble:
            for _ in range(rng.integers(4, 10)):
                at, gain = -int(rng.integers(RATE)), rng.uniform(0.4, 1)
                while at < length:
                    sound = noise.unit(sounds[rng.integers(len(sounds))].astype(np.float32))
                    part = sound[max(0, -at):length - at]
                    clip[max(at, 0):max(at, 0) + len(part)] += gain * part
                    at += len(sound) + int(rng.integers(RATE // 2))
            clip[:] = noise.unit(clip)
        self.bank = torch.cat([self.bank, torch.tensor(babble, device=self.bank.device)])

    def draw(self, batch: int, length: int) -> Tensor:
        rows = torch.randint(len(self.bank), (batch, 1), device=self.bank.device)
        at = torch.randint(self.bank.shape[1], (batch, 1), device=self.bank.device)
        return self.bank[rows, (at + torch.arange(length, device=self.bank.device)) % self.bank.shape[1]]


def change_speed(sound: Tensor, lengths: Tensor, low: float = 0.85, high: float = 1.18) -> tuple[Tensor, Tensor]:
    """Tempo and pitch together, by cubic interpolation."""
    batch, n = sound.shape
    factor = torch.where(chance(batch, 0.7, sound), uniform(batch, low, high, sound), torch.ones((), device=sound.device))
    lengths = (lengths / factor[:, 0]).long()
    at = torch.arange(int(lengths.max()), device=sound.device)[None] * factor
    base = at.floor()
    u = at - base
    base = base.long()
    p0, p1, p2, p3 = (torch.gather(sound, 1, (base + k).clamp(0, n - 1)) for k in (-1, 0, 1, 2))
    moved = p1 + 0.5 * u * (p2 - p0 + u * (2 * p0 - 5 * p1 + 4 * p2 - p3 + u * (3 * (p1 - p2) + p3 - p0)))
    return moved * (torch.arange(moved.shape[1], device=sound.device)[None] < lengths[:, None]), lengths


def impulse_responses(batch: int, like: Tensor, share: float, length: int = 10000) -> Tensor:
    """Direct sound, then noise that fades in 0.15 to 4 s. Some get no room at all."""
    t = torch.arange(length, device=like.device)[None] / RATE
    decay = torch.exp(uniform(batch, math.log(0.15), math.log(4.0), like))
    tail = torch.randn(batch, length, device=like.device) * torch.exp(-6.9 * t / decay) * (t > uniform(batch, 0.002, 0.03, like))
    ratio = 10 ** (-uniform(batch, -2, 22, like) / 20)
    tail = tail / torch.sqrt((tail ** 2).sum(1, keepdim=True) + 1e-9) * ratio * chance(batch, share, like)
    tail[:, 0] = 1
    return tail


def tone_controls(batch: int, bins: int, like: Tensor) -> Tensor:
    """Smooth random colouring. One in five gets the band of a telephone."""
    freq = torch.linspace(0, RATE / 2, bins, device=like.device)[None]
    db = sum(uniform(batch, -5, 5, like) * torch.cos(math.pi * k * freq / (RATE / 2) + uniform(batch, 0, 6.3, like)) for k in (1, 2, 3))
    gain = 10 ** (db * chance(batch, 0.6, like) / 20)
    phone = chance(batch, 0.2, like)
    low, high = uniform(batch, 150, 400, like) * phone, torch.where(phone, uniform(batch, 2600, 3600, like), 9000 * torch.ones_like(phone))
    return gain / torch.sqrt(1 + (low / freq.clamp(min=1)) ** 8) / torch.sqrt(1 + (freq / high) ** 16)


def room_and_microphone(sound: Tensor, strength: float) -> Tensor:
    batch, n = sound.shape
    size = 1 << (n + 10000 - 1).bit_length()
    spectrum = torch.fft.rfft(sound, size) * torch.fft.rfft(impulse_responses(batch, sound, 0.55 * strength), size)
    return torch.fft.irfft(spectrum * tone_controls(batch, size // 2 + 1, sound), size)[:, :n]


def telephone(sound: Tensor) -> Tensor:
    """Sometimes clipping, sometimes 8-bit companding, sometimes short drop-outs."""
    batch, n = sound.shape
    peak = sound.abs().amax(1, keepdim=True) + 1e-9
    limit = torch.where(chance(batch, 0.12, sound), peak * uniform(batch, 0.15, 0.8, sound), peak)
    sound = torch.maximum(torch.minimum(sound, limit), -limit)
    scaled = sound / limit
    companded = torch.sign(scaled) * torch.log1p(255 * scaled.abs()) / math.log(256)
    steps = torch.round(companded * 127) / 127
    coarse = torch.sign(steps) * ((256 ** steps.abs()) - 1) / 255 * limit
    sound = torch.where(chance(batch, 0.15, sound), coarse, sound)
    at = torch.arange(n, device=sound.device)[None]
    for _ in range(2):
        start, length = uniform(batch, 0, n, sound), uniform(batch, 0.01, 0.04, sound) * RATE
        sound = sound * ~((at >= start) & (at < start + length) & chance(batch, 0.06, sound))
    return sound


def cut_tight(sound: Tensor, lengths: Tensor, share: float = 0.2, most: float = 0.025) -> tuple[Tensor, Tensor]:
    """Takes up to `most` seconds off both ends of some, like a recording that was cut too tight."""
    batch = len(sound)
    room = lengths[:, None] / 10  # of a short word at most a tenth at each end
    front, back = (torch.minimum(uniform(batch, 0, most * RATE, sound), room) * chance(batch, share, sound) for _ in range(2))
    at = torch.arange(sound.shape[1], device=sound.device)[None] + front.long()
    lengths = lengths - (front.long() + back.long())[:, 0]
    kept = torch.gather(sound, 1, at.clamp(max=sound.shape[1] - 1))
    return kept * (torch.arange(sound.shape[1], device=sound.device)[None] < lengths[:, None]), lengths


EDGE, PIECE = 2000, 200  # samples at 8 kHz, as long as the edges that src/speech/edges.ts makes at 16 kHz


def with_edges(sound: Tensor, lengths: Tensor, share: float) -> tuple[Tensor, Tensor]:
    """Puts a quarter of a second before and after some: their own quietest 25 ms, forwards and backwards, as
    src/speech/edges.ts does to every sound."""
    batch, n = sound.shape
    power = F.avg_pool1d(F.pad(sound ** 2, (0, PIECE))[:, None], PIECE, PIECE // 4)[:, 0]
    begins = torch.arange(power.shape[1], device=sound.device)[None] * (PIECE // 4)
    quiet = power.masked_fill(begins + PIECE > lengths[:, None], math.inf).argmin(1, keepdim=True) * (PIECE // 4)
    edge = EDGE * chance(batch, share, sound).long() * (lengths[:, None] >= PIECE)
    total = lengths + 2 * edge[:, 0]
    at = torch.arange(int(total.max()), device=sound.device)[None] - edge
    beyond = torch.where(at < 0, -1 - at, at - lengths[:, None])
    fro = beyond % (2 * PIECE)
    copied = quiet + torch.where(fro < PIECE, fro, 2 * PIECE - 1 - fro)
    inside = (at >= 0) & (at < lengths[:, None])
    padded = torch.gather(sound, 1, torch.where(inside, at, copied).clamp(0, n - 1))
    return padded * (torch.arange(padded.shape[1], device=sound.device)[None] < total[:, None]), total


def normalise(sound: Tensor, lengths: Tensor) -> Tensor:
    """Zero mean and unit variance over the real part of each row, zero beyond it."""
    real = torch.arange(sound.shape[1], device=sound.device)[None] < lengths[:, None]
    sound = (sound - (sound * real).sum(1, keepdim=True) / lengths[:, None]) * real
    return sound / (torch.sqrt((sound ** 2).sum(1, keepdim=True) / lengths[:, None]) + 1e-5)


def spoil(sound: Tensor, lengths: Tensor, noises: Noises, silent: Tensor, strength: float) -> tuple[Tensor, Tensor]:
    """sound (B, samples), lengths (B); `silent` rows (B) become only noise. Returns normalised sound and its lengths.

    `strength` 0 to 1: how often there is an echo or noise, and how loud the noise gets."""
    batch = len(sound)
    sound, lengths = cut_tight(*change_speed(sound, lengths))
    level = torch.sqrt((sound ** 2).sum(1, keepdim=True) / lengths[:, None] + 1e-9)
    lead, tail = (uniform(batch, 0, 0.7, sound) * RATE * chance(batch, 0.65, sound) for _ in range(2))
    total = lengths + (lead + tail)[:, 0].long()
    canvas = torch.arange(int(total.max()), device=sound.device)[None] - lead.long()
    placed = torch.gather(sound, 1, canvas.clamp(0, sound.shape[1] - 1)) * ((canvas >= 0) & (canvas < lengths[:, None]))
    placed = room_and_microphone(placed, strength) * ~silent[:, None]
    for p, low, high in [(0.75, 20 - 22 * strength, 35), (0.2, 20 - 15 * strength, 35)]:
        added = noises.draw(batch, placed.shape[1])
        gain = level / rms(added) * 10 ** (-uniform(batch, low, high, sound) / 20)
        placed = placed + added * gain * (chance(batch, p * strength, sound) | silent[:, None])
    hiss = torch.randn_like(placed) * level * 10 ** (-uniform(batch, 35, 70, sound) / 20)
    placed, total = with_edges(telephone(placed + hiss), total, 0.7)
    return normalise(placed, total), total


def between(values: Tensor, at: Tensor, dim: int) -> Tensor:
    """Linear interpolation of `values` (B, n, bands) at fractional positions `at` (B, m) along one of its axes."""
    low = at.floor().clamp(0, values.shape[dim] - 1)
    part = (at - low).clamp(0, 1)
    shape = (-1, at.shape[1], 1) if dim == 1 else (-1, 1, at.shape[1])
    size = (-1, -1, values.shape[2]) if dim == 1 else (-1, values.shape[1], -1)
    left, right = (values.gather(dim, i.long().clamp(max=values.shape[dim] - 1).view(shape).expand(size)) for i in (low, low + 1))
    return left + (right - left) * part.view(shape)


def other_speaker(mels: Tensor, frames: Tensor) -> tuple[Tensor, Tensor]:
    """Tempo without pitch, and the length of the vocal tract (VTLP: frequencies scaled), each in half of the rows.

    mels (B, 10 ms frames, MELS), frames (B) -> the same of other lengths."""
    batch, n, bands = mels.shape
    tempo = torch.where(chance(batch, 0.5, mels), uniform(batch, 0.75, 1.45, mels), 1.0)
    frames = (frames / tempo[:, 0]).long().clamp(min=4)
    mels = between(mels, (torch.arange(int(frames.max()), device=mels.device)[None] * tempo).clamp(max=n - 1), 1)
    tract = torch.where(chance(batch, 0.5, mels), uniform(batch, 0.88, 1.13, mels), 1.0)
    scaled = 2595 * torch.log10(1 + mel_edges(bands).to(mels.device)[None, 1:-1] * tract / 700)
    band = (scaled - mel(60)) / (mel(3800) - mel(60)) * (bands + 1) - 1
    return between(mels, band.clamp(0, bands - 1), 2), frames


def mask_mels(mels: Tensor, frames: Tensor) -> Tensor:
    """SpecAugment: two bands of frequency and two short stretches of time are blanked."""
    batch, n, bands = mels.shape
    mean = mels.mean((1, 2), keepdim=True)
    band, time = torch.arange(bands, device=mels.device)[None], torch.arange(n, device=mels.device)[None]
    hidden = torch.zeros(batch, n, bands, dtype=torch.bool, device=mels.device)
    for _ in range(2):
        start, width = uniform(batch, 0, bands, mels), uniform(batch, 0, 0.19 * bands, mels)
        hidden |= ((band >= start) & (band < start + width))[:, None, :]
        start, width = uniform(batch, 0, 1, mels) * frames[:, None], torch.minimum(uniform(batch, 0, 16, mels), 0.08 * frames[:, None])
        hidden |= ((time >= start) & (time < start + width))[:, :, None]
    return torch.where(hidden, mean, mels)
