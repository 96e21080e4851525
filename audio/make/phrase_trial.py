"""
Which words are told apart best, before any training: each candidate is spoken by several training voices, and every rendering is
matched to the nearest rendering by ANOTHER voice (dynamic time warping over the pretrained embedding's mel frames and over its
embeddings). `python3 audio/make/phrase_trial.py address|commands` prints hits, nearest rivals and the whole matrix. Voices of
training only; numpy, and `onnx` to read the pretrained net (base_net.py).
"""
import subprocess
import sys
import tempfile
from concurrent.futures import ThreadPoolExecutor
from pathlib import Path

import numpy as np

import layout as L
from base_net import ACTIVATION_FLOOR, LEAKY_SLOPE, embedding_layers, mel_matrix
from phrase_candidates import ADDRESS, COMMANDS
from phrase_list import read_phrases
from reference import convolve, max_pool
from sound import RATE, read_any, trim

VOICES = [["flite", "-voice", "kal16"], ["flite", "-voice", "awb"], ["espeak-ng", "-v", "en-gb+f2"], ["espeak-ng", "-v", "en-us+m3"],
          ["espeak-ng", "-v", "en-gb-scotland+Andy"], ["espeak-ng", "-v", "en-us+Annie"]]


def render(job: tuple[str, list[str]]) -> np.ndarray:
    text, voice = job
    with tempfile.TemporaryDirectory() as folder:
        path = str(Path(folder) / "x.wav")
        subprocess.run(voice + (["-o", path, "-t", text] if voice[0] == "flite" else ["-w", path, text]), check=True, capture_output=True)
        return trim(read_any(path))


def embedded(x: np.ndarray, mel: np.ndarray, layers: list[dict]) -> np.ndarray:
    """int16-scale samples at 16 kHz to pretrained embeddings [count, 96], one every 80 ms, each of length 1."""
    index = np.arange((len(x) - L.FFT_SIZE) // L.FRAME_HOP + 1)[:, None] * L.FRAME_HOP + np.arange(L.FFT_SIZE)
    power = np.abs(np.fft.rfft(x[index] * L.hann(), axis=1)) ** 2
    y = (np.log10(np.maximum(power @ mel, L.POWER_FLOOR)) + L.LOG_OFFSET)[None]
    for layer in layers:
        if layer["kind"] == "maxPool":
            y = max_pool(y, layer["kernel"], layer["stride"])
        else:
            y = convolve(y, layer["weight"], layer["bias"], layer["padFrequency"])
            if layer["activation"]:
                y = np.maximum(np.where(y > 0, y, y * LEAKY_SLOPE), ACTIVATION_FLOOR)
    e = y[:, :, 0].T
    return e / np.linalg.norm(e, axis=1, keepdims=True)


def features(clips: list[np.ndarray]) -> list[np.ndarray]:
    """Embeddings of each clip in noise at 15 dB, so that what silence hides does not count."""
    mel, layers, rng, out = mel_matrix(), embedding_layers(), np.random.default_rng(3), []
    for x in clips:
        x = x / (np.sqrt(np.mean(x * x)) + 1e-6) * 1000
        x = np.concatenate([np.zeros(RATE * 6 // 10), x, np.zeros(RATE // 5)]) + rng.standard_normal(len(x) + RATE * 8 // 10) * 178
        out.append(embedded(x, mel, layers))
    return out


def warped(a: np.ndarray, b: np.ndarray) -> float:
    cost = 1 - a @ b.T
    total = np.full((len(a) + 1, len(b) + 1), np.inf)
    total[0, 0] = 0
    for i in range(len(a)):
        for j in range(len(b)):
            total[i + 1, j + 1] = cost[i, j] + min(total[i, j], total[i, j + 1] + .05, total[i + 1, j] + .05)
    return float(total[-1, -1]) / (len(a) + len(b))


def main() -> None:
    words, commands = read_phrases()
    texts = ADDRESS if sys.argv[1] == "address" else list(dict.fromkeys([*commands.values(), *COMMANDS]))
    jobs = [(t, v) for t in texts for v in VOICES]
    with ThreadPoolExecutor(2) as pool:
        e = features(list(pool.map(render, jobs)))
    n, k = len(texts), len(VOICES)
    d = np.full((n * k, n * k), np.inf)
    for i in range(n * k):
        for j in range(i):
            if i % k != j % k:
                d[i, j] = d[j, i] = warped(e[i], e[j])
    gaps = np.zeros((n, n))
    for t, text in enumerate(texts):
        nearest = [d[t * k + v].argmin() // k for v in range(k)]
        own = np.mean([np.sort(d[t * k + v, t * k:(t + 1) * k])[:k - 1].mean() for v in range(k)])
        rivals = d[t * k:(t + 1) * k].reshape(k, n, k).copy()
        rivals[np.isinf(rivals)] = np.nan
        gaps[t] = np.nanmean(rivals, axis=(0, 2)) / own
        others = gaps[t].copy()
        others[t] = np.inf
        wrong = [texts[m] for m in nearest if m != t]
        near = ", ".join(f"{texts[m]} {gaps[t, m]:.2f}" for m in others.argsort()[:3])
        print(f"| {t + 1} | {text} | {sum(m == t for m in nearest)} of {k} | {others.min():.2f} | {near} | {', '.join(wrong)} |", flush=True)
    print("\nMean distance of the phrase of the row to that of the column, in tenths of its own spread:\n")
    print("   " + "".join(f"{m + 1:3d}" for m in range(n)))
    for t in range(n):
        print(f"{t + 1:2d} " + "".join(f"{10 * gaps[t, m]:3.0f}" for m in range(n)))


if __name__ == "__main__":
    main()
