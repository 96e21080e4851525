"""
Runs weights over the development and test material of pack_test.py and stores the probabilities for evaluate.py:
`python3 audio/make/score.py weights.npz DIR [development|test]` writes DIR/scores-<split>.npz. PyTorch; CPU is enough, but slow.
"""
import os
import sys
from concurrent.futures import ProcessPoolExecutor
from multiprocessing import get_context
from pathlib import Path

import numpy as np
import torch
from scipy.signal import resample_poly

import layout as L
from noise_test import babble, buzz, music
from pack_test import expand
from phrase_list import WORK, read_phrases
from sound import RATE, rms, room
from torch_net import Embedding, Head, Mel, from_arrays, log_probabilities

CONDITIONS = ["clean", "buzz 20", "buzz 15", "buzz 10", "buzz 5", "babble 10", "music 10"]
CLIP, BEGIN = int(5.4 * RATE), 2 * RATE
WORDS, COMMANDS = read_phrases()
DEVICE = "cuda" if torch.cuda.is_available() else "cpu"
SHARED: dict[str, list[np.ndarray]] = {}


class Listener:
    """The exported weights in PyTorch; samples [clips, n] in int16 scale to P(address, command) per hop from hop 34 on."""

    def __init__(self, weights: str) -> None:
        self.mel, self.embedding, self.head = Mel(), Embedding(), Head(1 + len(WORDS) + len(COMMANDS))
        from_arrays(dict(np.load(weights)), self.embedding, self.head)
        for part in (self.mel, self.embedding, self.head):
            part.to(DEVICE).eval()

    @torch.no_grad()
    def hear(self, x: np.ndarray) -> np.ndarray:
        e = self.embedding(self.mel(torch.tensor(x.astype(np.float32), device=DEVICE))[:, L.SKIP_FRAMES:])
        w = e.unfold(1, L.WINDOW_EMBEDDINGS, 1).permute(0, 1, 3, 2)
        p = log_probabilities(self.head(w.reshape(-1, L.WINDOW_EMBEDDINGS, L.EMBEDDING_SIZE)), len(WORDS))[1].exp()
        return p.reshape(w.shape[0], w.shape[1], len(WORDS), len(COMMANDS)).cpu().numpy().astype(np.float16)


def mixed(speech: np.ndarray, noise: np.ndarray | None, snr_db: float, rng: np.random.Generator) -> np.ndarray:
    """Speech of rms 1000 plus noise at snr_db, peak -25 to -3 dBFS, microphone hiss, whole numbers."""
    x = speech if noise is None else speech + noise / (rms(noise) + 1e-6) * 1000 * 10 ** (-snr_db / 20)
    x = x / (np.abs(x).max() + 1e-6) * 32767 * 10 ** (rng.uniform(-25, -3) / 20) + rng.standard_normal(len(x)) * 4
    return np.clip(np.round(x), -32768, 32767)


def unpack(z: dict, name: str) -> list[np.ndarray]:
    """Clips of pack_test.py as float32 at 16 kHz, peak 1."""
    data, length = z[f"{name}.data"], z[f"{name}.length"]
    first = np.cumsum(length) - length
    wide = (lambda x: x.astype(np.float32) / 32000) if data.dtype == np.int16 else expand
    return [resample_poly(wide(data[a:a + n]), 2, 1).astype(np.float32) for a, n in zip(first, length)]


def one_clip(job: tuple) -> np.ndarray:
    number, condition = job
    rng = np.random.default_rng([number, CONDITIONS.index(condition)])
    x = SHARED["said"][number]
    x = x / rms(x) * 1000
    x = room(x, rng)[:len(x) + 3200] if rng.random() < .5 else x
    speech = np.zeros(CLIP, np.float32)
    part = x[:CLIP - BEGIN]
    speech[BEGIN:BEGIN + len(part)] = part
    kind, _, snr = condition.partition(" ")
    noise = {"clean": lambda: None, "buzz": lambda: buzz(CLIP, rng), "babble": lambda: babble(SHARED["crowd"], CLIP, rng),
             "music": lambda: music(SHARED["music"], CLIP, rng)}[kind]()
    return mixed(speech, noise, float(snr or 0), rng).astype(np.int16)


def joined(job: tuple) -> np.ndarray:
    """All clips in random order with 0.15-0.7 s between them, some in a room; noisy: buzz or music at 3-15 dB, 20 s each."""
    name, seed, noisy = job
    clips, rng, parts = SHARED[name], np.random.default_rng(seed), []
    for i in rng.permutation(len(clips)):
        x = clips[i] / (rms(clips[i]) + 1e-6) * 1000 * 10 ** (rng.uniform(-8, 4) / 20)
        parts += [room(x, rng) if rng.random() < .4 else x, np.zeros(int(rng.uniform(.15, .7) * RATE), np.float32)]
    x = np.concatenate(parts)
    for at in range(0, len(x) - 20 * RATE, 20 * RATE) if noisy else ():
        noise = buzz(20 * RATE, rng) if rng.random() < .6 else music(SHARED["music"], 20 * RATE, rng)
        x[at:at + 20 * RATE] += noise / rms(noise) * 1000 * 10 ** (-rng.uniform(3, 15) / 20)
    return np.clip(np.round(x * rng.uniform(1, 3) + rng.standard_normal(len(x)) * 4), -32768, 32767).astype(np.int16)


def machine(seed: int) -> np.ndarray:
    return np.clip(buzz(20 * RATE, np.random.default_rng([9, seed])) * 3000, -32768, 32767).astype(np.int16)


def main() -> None:
    weights, out_folder = sys.argv[1], Path(sys.argv[2])
    splits = sys.argv[3:] or ["development", "test"]
    bank = {k: v for f in ("carry-c", "carry-d") for k, v in np.load(WORK / f / "test.npz").items()}
    listener = Listener(weights)
    for split in splits:
        SHARED.update({k: unpack(bank, f"{split}.{k}") for k in ("said", "none", "people", "music")})
        SHARED["crowd"] = SHARED["people"][::3]
        out: dict[str, np.ndarray] = {k: bank[f"{split}.{k}"] for k in ("label", "speed", "voice")}
        with ProcessPoolExecutor(os.cpu_count(), get_context("fork")) as pool:
            jobs = {"people": ("people", 1, False), "people in noise": ("people", 2, True), "synthetic near-misses and talk": ("none", 3, False)}
            sounds = {k: pool.submit(joined, j) for k, j in jobs.items()}
            for condition in CONDITIONS:
                x = np.stack(list(pool.map(one_clip, [(i, condition) for i in range(len(SHARED["said"]))], chunksize=8)))
                out[f"clips {condition}"] = np.concatenate([listener.hear(x[k:k + 64]) for k in range(0, len(x), 64)])
            sounds = {k: f.result() for k, f in sounds.items()}
            sounds["machine"] = np.concatenate(list(pool.map(machine, range(45 if split == "test" else 15))))
        sounds["music"] = (np.concatenate(SHARED["music"]) * 20000).astype(np.int16)
        for name, x in sounds.items():
            step, tail = 60 * RATE // L.HOP_SAMPLES * L.HOP_SAMPLES, 34 * L.HOP_SAMPLES + L.SAMPLES_FOR_FIRST_HOP
            pieces = [listener.hear(x[None, k:k + step + tail - L.HOP_SAMPLES])[0] for k in range(0, len(x) - tail, step)]
            out[f"stream {name}"] = np.concatenate(pieces)
            print(split, name, round(len(x) / RATE / 60, 1), "min", flush=True)
        for k in (k for k in out if k.startswith(("clips", "stream"))):
            out[k] = np.where(out[k] < .02, 0, out[k]).astype(np.float16)
        np.savez_compressed(out_folder / f"scores-{split}.npz", **out)


if __name__ == "__main__":
    main()
