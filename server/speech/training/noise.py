"""Site noise made by code: fans, alarm sounders, forklifts, grinders, impacts, hum; and plain coloured noise.

`make(kind, seconds, rng)` gives a float32 array at 8 kHz of unit RMS.
"""

import numpy as np

RATE = 8000
KINDS = ["white", "pink", "brown", "fan", "sounder", "forklift", "grinder", "impacts", "hum"]


def coloured(n: int, slope: float, rng: np.random.Generator, low: float = 20, high: float = 4000) -> np.ndarray:
    """Noise between two corner frequencies. Its power falls with frequency raised to the given exponent."""
    freq = np.fft.rfftfreq(n, 1 / RATE)
    shape = np.maximum(freq, 20) ** (-slope / 2) / np.sqrt(1 + (freq / high) ** 8) / np.sqrt(1 + (low / np.maximum(freq, 1)) ** 8)
    return np.fft.irfft(shape * np.fft.rfft(rng.standard_normal(n)), n)


def unit(x: np.ndarray) -> np.ndarray:
    return (x / (np.sqrt(np.mean(x ** 2)) + 1e-9)).astype(np.float32)


def tone(freq: np.ndarray, partials: np.ndarray) -> np.ndarray:
    """Sum of harmonics of a frequency that may change from sample to sample; nothing above 3.9 kHz."""
    phase = 2 * np.pi * np.cumsum(freq) / RATE
    return sum(a * np.sin(k * phase) * (k * freq < 3900) for k, a in enumerate(partials, 1))


def wobble(n: int, rng: np.random.Generator, depth: float) -> np.ndarray:
    return 1 + depth * unit(coloured(n, 0, rng, 0.01, rng.uniform(0.5, 4)))


def sounder(n: int, rng: np.random.Generator) -> np.ndarray:
    t = np.arange(n) / RATE
    low = rng.choice([rng.uniform(500, 1000), rng.uniform(2300, 3100)])
    high = low * rng.uniform(1.1, 1.35)
    rate = rng.choice([0.5, 1, 2, 3, 7])
    pattern = rng.integers(4)
    saw = (t * rate) % 1
    freq = [np.where(saw < 0.5, low, high), low + (high - low) * saw, low + (high - low) * np.abs(2 * saw - 1), np.full(n, low)][pattern]
    sound = tone(freq, 1 / np.arange(1, 6) ** rng.uniform(0.7, 2.5))
    if pattern == 3:  # a steady tone comes in pulses, often in threes
        beat = (t / rng.choice([0.5, 1.0])) % 4
        sound *= (beat % 1 < 0.5) & (beat < 3)
    return sound


def forklift(n: int, rng: np.random.Generator) -> np.ndarray:
    t = np.arange(n) / RATE
    engine = unit(tone(rng.uniform(25, 70) * wobble(n, rng, 0.08), rng.uniform(0.2, 1, 30))) + rng.uniform(0.3, 1) * unit(coloured(n, 1.2, rng))
    beeper = tone(np.full(n, rng.uniform(900, 2800)), np.array([1, 0.3, 0.2])) * ((t * rng.uniform(0.8, 1.6)) % 1 < 0.5)
    return unit(engine) + rng.choice([0, rng.uniform(0.5, 3)]) * beeper


def fan(n: int, rng: np.random.Generator) -> np.ndarray:
    blades = unit(tone(rng.uniform(40, 240) * wobble(n, rng, 0.01), 1 / np.arange(1, 9)))
    return (unit(coloured(n, rng.uniform(0.5, 2), rng, 40, rng.uniform(800, 4000))) + rng.uniform(0, 0.8) * blades) * wobble(n, rng, 0.1)


def grinder(n: int, rng: np.random.Generator) -> np.ndarray:
    t = np.arange(n) / RATE
    motor = unit(tone(rng.uniform(120, 450) * wobble(n, rng, 0.03), rng.uniform(0.3, 1, 12))) + unit(coloured(n, -0.5, rng, 300, 3900))
    return motor * ((t * rng.uniform(0.2, 0.7) + rng.uniform()) % 1 < rng.uniform(0.5, 1.3))


def impacts(n: int, rng: np.random.Generator) -> np.ndarray:
    sound = 0.02 * unit(coloured(n, 1, rng))
    for _ in range(rng.poisson(1.2 * n / RATE) + 1):
        at, length = rng.integers(n), rng.integers(400, 6000)
        t = np.arange(min(length, n - at)) / RATE
        ring = sum(rng.uniform(0.2, 1) * np.sin(2 * np.pi * f * t + rng.uniform(0, 6.3)) for f in rng.uniform(150, 3600, 6))
        sound[at:at + len(t)] += rng.uniform(0.2, 1) * (ring + rng.standard_normal(len(t))) * np.exp(-t * rng.uniform(8, 80))
    return sound


def make(kind: str, seconds: float, rng: np.random.Generator) -> np.ndarray:
    n = int(seconds * RATE)
    if kind == "hum":
        return unit(tone(np.full(n, rng.choice([50.0, 60.0, 100.0])), rng.uniform(0.05, 1, 20)) + 0.1 * unit(coloured(n, 1, rng)))
    colours = {"white": 0.0, "pink": 1.0, "brown": 2.0}
    if kind in colours:
        return unit(coloured(n, colours[kind], rng))
    return unit({"fan": fan, "sounder": sounder, "forklift": forklift, "grinder": grinder, "impacts": impacts}[kind](n, rng))
