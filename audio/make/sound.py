"""Small numpy helpers for sound at 16 kHz: reading, trimming, tempo, rooms."""
import subprocess
import wave
from math import gcd

import numpy as np
from scipy.signal import fftconvolve, lfilter, resample_poly

RATE = 16000


def read_any(path: str) -> np.ndarray:
    """Any WAV (or G.722 / raw 16 kHz by extension) to float32 at 16 kHz in int16 scale."""
    if path.endswith(".g722"):
        raw = subprocess.run(["ffmpeg", "-nostdin", "-loglevel", "error", "-f", "g722", "-i", path, "-ar", "16000", "-ac", "1",
                              "-f", "s16le", "-"], capture_output=True, check=True).stdout
        return np.frombuffer(raw, "<i2").astype(np.float32)
    if path.endswith(".raw"):
        return np.fromfile(path, "<i2").astype(np.float32)
    with wave.open(path) as w:
        x = np.frombuffer(w.readframes(w.getnframes()), "<i2").astype(np.float32)
        x = x.reshape(-1, w.getnchannels()).mean(1)
        rate = w.getframerate()
    g = gcd(rate, RATE)
    return x if rate == RATE else resample_poly(x, RATE // g, rate // g).astype(np.float32)


def trim(x: np.ndarray, drop_db: float = -38) -> np.ndarray:
    """Cuts silence at both ends: what stays is louder than the peak by drop_db, plus 10-20 ms."""
    if len(x) < 800:
        return x
    level = np.sqrt(np.convolve(x * x, np.ones(320) / 320, "same") + 1e-9)
    loud = np.where(level > level.max() * 10 ** (drop_db / 20))[0]
    return x[max(0, loud[0] - 160):loud[-1] + 320]


def rms(x: np.ndarray) -> float:
    return float(np.sqrt(np.mean(x * x) + 1e-9))


def change_tempo(x: np.ndarray, rate: float, frame: int = 320, uneven: np.ndarray | None = None) -> np.ndarray:
    """
    Waveform-similarity overlap-add: `rate` times as fast, same pitch. `frame` samples is twice the hop; `uneven`: factors on
    the rate, evenly spaced over the clip.
    """
    half, search = frame // 2, frame // 5
    if len(x) < frame * 3:
        return x
    slowest = rate * (1 if uneven is None else uneven.min())
    out, window = np.zeros(int(len(x) / slowest) + frame * 2, np.float32), np.hanning(frame).astype(np.float32)
    position, at, previous = 0.0, 0, None
    while position + frame + search < len(x) and at + frame < len(out):
        a = int(position)
        if previous is not None:
            low, high = max(0, a - search), min(len(x) - frame, a + search)
            a = low + int(np.argmax(np.correlate(x[low:high + half], previous[:half], "valid")[:high - low + 1]))
        out[at:at + frame] += x[a:a + frame] * window
        if a + half + frame > len(x):
            break
        previous = x[a + half:a + half + frame]
        factor = 1 if uneven is None else np.interp(position / len(x) * (len(uneven) - 1), np.arange(len(uneven)), uneven)
        at, position = at + half, position + half * rate * factor
    return out[:at + frame]


def room(x: np.ndarray, rng: np.random.Generator, low: float = 0.12, high: float = 0.6) -> np.ndarray:
    """Direct sound plus an exponentially decaying noise tail, reverberation time low..high seconds."""
    n = int(rng.uniform(low, high) * RATE)
    h = rng.standard_normal(n) * 10 ** (-3 * np.arange(n) / n)
    h = lfilter([1, -0.3], [1], h) * rng.uniform(0.02, 0.12)
    h[:rng.integers(10, 120)] = 0
    h[0] = 1
    return fftconvolve(x, h).astype(np.float32)
