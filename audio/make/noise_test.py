"""
Noise for tests and demonstrations only (numpy). The machine buzz is made by filtering pulse trains (subtractive synthesis), unlike
the training noise, which adds sine waves, so that a test does not hear what training heard.
`python3 audio/make/noise_test.py seconds seed out.wav` writes buzz alone.
"""
import sys
import wave

import numpy as np
from scipy.signal import lfilter

from sound import RATE, rms, room


def peak_filter(x: np.ndarray, hertz: float, q: float, gain_db: float) -> np.ndarray:
    w, g = 2 * np.pi * hertz / RATE, 10 ** (gain_db / 40)
    a = np.sin(w) / (2 * q)
    return lfilter([1 + a * g, -2 * np.cos(w), 1 - a * g], [1 + a / g, -2 * np.cos(w), 1 - a / g], x)


def buzz(n: int, rng: np.random.Generator, switching: bool = True) -> np.ndarray:
    """A tattoo machine for n samples: 60-140 Hz sawtooth, pulse or decaying blows, hiss, 1-3 resonances, level wander."""
    wander = 1 + 0.001 * np.cumsum(rng.standard_normal(n // 160 + 2))
    hertz = np.interp(np.arange(n) / 160, np.arange(len(wander)), rng.uniform(60, 140) * wander)
    phase = np.cumsum(hertz / RATE) % 1
    kind = rng.integers(0, 3)
    if kind == 0:
        s = 2 * phase - 1
    elif kind == 1:
        s = (phase < rng.uniform(.05, .4)).astype(float) - .2
    else:
        s = np.exp(-phase * rng.uniform(4, 25)) - .1
    s = s + rng.uniform(.02, .3) * rng.standard_normal(n)
    for _ in range(rng.integers(1, 4)):
        s = peak_filter(s, rng.uniform(150, 5000), rng.uniform(1, 8), rng.uniform(3, 15))
    knots = np.arange(0, n + 4000, 2000)
    level = 1 + rng.uniform(0, .5) * np.interp(np.arange(n), knots, rng.standard_normal(len(knots)))
    if switching and rng.random() < .3:
        at = np.arange(n) < rng.integers(0, n)
        level = level * np.where(at if rng.random() < .5 else ~at, .02, 1)
    return (s * level).astype(np.float32)


def babble(pool: list[np.ndarray], n: int, rng: np.random.Generator, voices: int = 4) -> np.ndarray:
    total = np.zeros(n, np.float32)
    for _ in range(voices):
        track, at = np.zeros(n, np.float32), 0
        while at < n:
            clip = pool[rng.integers(len(pool))]
            clip = clip[rng.integers(0, max(1, len(clip) - 4000)):] / (rms(clip) + 1)
            m = min(len(clip), n - at)
            track[at:at + m] += clip[:m]
            at += m + int(rng.uniform(0, .3) * RATE)
        total += track * 10 ** (rng.uniform(-6, 0) / 20)
    return room(total, rng, .2, .7)[:n]


def music(songs: list[np.ndarray], n: int, rng: np.random.Generator) -> np.ndarray:
    song = songs[rng.integers(len(songs))]
    at = rng.integers(0, len(song) - n)
    return song[at:at + n].copy()


if __name__ == "__main__":
    x = buzz(int(float(sys.argv[1]) * RATE), np.random.default_rng(int(sys.argv[2])), switching=False)
    with wave.open(sys.argv[3], "wb") as w:
        w.setparams((1, 2, RATE, 0, "NONE", ""))
        w.writeframes((x / np.abs(x).max() * 20000).astype("<i2").tobytes())
