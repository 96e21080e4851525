"""
Which words are told apart best, before any training: each candidate is spoken by several training voices, and every rendering is
matched to the nearest rendering by ANOTHER voice (dynamic time warping over the pretrained embedding's mel frames and over its
embeddings). `python3 audio/make/phrase_trial.py address|commands` prints hits and the confusions. Voices of training only.
"""
import subprocess
import sys
import tempfile
from concurrent.futures import ThreadPoolExecutor
from pathlib import Path

import numpy as np
import torch

from phrase_list import read_phrases
from phrase_candidates import ADDRESS, COMMANDS
from sound import RATE, read_any, trim
from torch_net import Embedding, Mel

VOICES = [["flite", "-voice", "kal16"], ["flite", "-voice", "awb"], ["espeak-ng", "-v", "en-gb+f2"], ["espeak-ng", "-v", "en-us+m3"],
          ["espeak-ng", "-v", "en-gb-scotland+Andy"], ["espeak-ng", "-v", "en-us+Annie"]]


def render(job: tuple[str, list[str]]) -> np.ndarray:
    text, voice = job
    with tempfile.TemporaryDirectory() as folder:
        path = str(Path(folder) / "x.wav")
        subprocess.run(voice + (["-o", path, "-t", text] if voice[0] == "flite" else ["-w", path, text]), check=True, capture_output=True)
        return trim(read_any(path))


@torch.no_grad()
def features(clips: list[np.ndarray]) -> list[np.ndarray]:
    """Embeddings every 80 ms of each clip in noise at 15 dB, so that what silence hides does not count."""
    mel, embedding, rng = Mel(), Embedding(), np.random.default_rng(3)
    out = []
    for x in clips:
        x = x / (np.sqrt(np.mean(x * x)) + 1e-6) * 1000
        x = np.concatenate([np.zeros(RATE * 6 // 10), x, np.zeros(RATE // 5)]) + rng.standard_normal(len(x) + RATE * 8 // 10) * 178
        e = embedding(mel(torch.tensor(x[None], dtype=torch.float32)))[0].numpy()
        out.append(e / np.linalg.norm(e, axis=1, keepdims=True))
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
    texts = ADDRESS if sys.argv[1] == "address" else [*commands.values(), *COMMANDS]
    jobs = [(t, v) for t in texts for v in VOICES]
    with ThreadPoolExecutor(2) as pool:
        e = features(list(pool.map(render, jobs)))
    n, k = len(texts), len(VOICES)
    d = np.full((n * k, n * k), np.inf)
    for i in range(n * k):
        for j in range(i):
            if i % k != j % k:
                d[i, j] = d[j, i] = warped(e[i], e[j])
    for t, text in enumerate(texts):
        nearest = [d[t * k + v].argmin() // k for v in range(k)]
        own = np.mean([np.sort(d[t * k + v, t * k:(t + 1) * k])[:k - 1].mean() for v in range(k)])
        rivals = d[t * k:(t + 1) * k].reshape(k, n, k).copy()
        rivals[np.isinf(rivals)] = np.nan
        gap = np.nanmean(rivals, axis=(0, 2))
        gap[t] = np.inf
        wrong = [texts[m] for m in nearest if m != t]
        print(f"| {text} | {sum(m == t for m in nearest)} of {k} | {gap.min() / own:.2f} | {texts[int(gap.argmin())]} | {', '.join(wrong)} |", flush=True)


if __name__ == "__main__":
    main()
