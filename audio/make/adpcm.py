"""
Adaptive differential coding, four bits a sample at 8 kHz, for many clips at once: the training material must fit in a small
folder. Each clip has its own linear predictor of order 6 (its average spectrum); the step adapts as in IMA ADPCM.
"""
import numpy as np

ORDER = 6
STEPS = np.minimum(np.round([7 * 1.1 ** i for i in range(89)]), 32767).astype(np.float32)
TURN = np.array([-1, -1, -1, -1, 2, 4, 6, 8] * 2, np.int64)


def predictor(x: np.ndarray) -> np.ndarray:
    """Linear prediction coefficients by the autocorrelation method, widened a little so that errors die out."""
    r = np.array([np.dot(x[:len(x) - k], x[k:]) for k in range(ORDER + 1)], np.float64)
    r[0] = r[0] * 1.001 + 1
    matrix = r[np.abs(np.subtract.outer(np.arange(ORDER), np.arange(ORDER)))]
    return (np.linalg.solve(matrix, r[1:]) * 0.985 ** np.arange(1, ORDER + 1)).astype(np.float32)


def _next(code, index, past, guess):
    value = guess + np.where(code & 8, -1, 1) * ((code & 7) + np.float32(0.5)) * STEPS[index] / 4
    value = np.clip(value, -32768, 32767).astype(np.float32)
    past[1:] = past[:-1].copy()
    past[0] = value
    return value, np.clip(index + TURN[code], 0, 88)


def encode(clips: list[np.ndarray], group: int = 1500) -> tuple[np.ndarray, np.ndarray, np.ndarray]:
    """Clips (peak at most 32767) to (bytes, lengths in samples, predictors [clips, 6])."""
    packed: list[np.ndarray] = [np.zeros(0, np.uint8)] * len(clips)
    taps = np.array([predictor(c) for c in clips])
    order = np.argsort([len(c) for c in clips])
    for first in range(0, len(clips), group):
        some = order[first:first + group]
        width = max(len(clips[i]) for i in some) + 1
        x = np.zeros((width, len(some)), np.float32)
        for k, i in enumerate(some):
            x[:len(clips[i]), k] = clips[i]
        a, past, index = taps[some].T.copy(), np.zeros((ORDER, len(some)), np.float32), np.zeros(len(some), np.int64)
        codes = np.zeros((width, len(some)), np.uint8)
        for t in range(width):
            guess = (a * past).sum(0)
            d = x[t] - guess
            code = np.minimum(np.abs(d) * 4 / STEPS[index], 7).astype(np.int64) | np.where(d < 0, 8, 0)
            _, index = _next(code, index, past, guess)
            codes[t] = code
        for k, i in enumerate(some):
            c = codes[:len(clips[i]) + len(clips[i]) % 2, k]
            packed[i] = c[0::2] | (c[1::2] << 4)
    return np.concatenate(packed), np.array([len(c) for c in clips], np.int32), taps


def decode(data: np.ndarray, lengths: np.ndarray, taps: np.ndarray) -> list[np.ndarray]:
    """The inverse of encode, as float32 in -1..1. Clips of one call should be of similar length: sort before splitting."""
    size = (lengths + 1) // 2
    start = np.cumsum(size) - size
    block = np.zeros((int(size.max()), len(size)), np.uint8)
    for k in range(len(size)):
        block[:size[k], k] = data[start[k]:start[k] + size[k]]
    a, past, index = taps.T.copy(), np.zeros((ORDER, len(size)), np.float32), np.zeros(len(size), np.int64)
    x = np.zeros((len(block) * 2, len(size)), np.float32)
    for t in range(len(x)):
        code = ((block[t // 2] >> (4 * (t % 2))) & 15).astype(np.int64)
        x[t], index = _next(code, index, past, (a * past).sum(0))
    return [x[:n, k] / 32768 for k, n in enumerate(lengths)]
