"""
Runs weights over the development and test material of pack_test.py and stores the probabilities for evaluate.py:
`python3 audio/make/score.py weights.npz DIR [--passes N] [development|test]` writes DIR/scores-<split>.npz. Each pass over the
negatives mixes them anew: 16 passes make some 30 hours. PyTorch; CPU is enough for one pass, but slow.
"""
import argparse
import os
from concurrent.futures import ProcessPoolExecutor
from multiprocessing import get_context
from pathlib import Path

import numpy as np
import torch
from scipy.signal import resample_poly

import adpcm
import layout as L
from noise_test import babble, buzz, music
from pack_test import expand
from phrase_list import MINE, WORK, read_phrases
from shipped import ENGLISH, layers_with, shipped_mel
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
        z = dict(np.load(weights))
        self.mel, self.embedding, self.head = Mel(shipped_mel(ENGLISH)), Embedding(layers_with(z)), Head.like(z, 1 + len(WORDS) + len(COMMANDS))
        from_arrays(z, self.embedding, self.head)
        for part in (self.mel, self.embedding, self.head):
            part.to(DEVICE).eval()

    @torch.no_grad()
    def hear(self, x: np.ndarray) -> np.ndarray:
        e = self.embedding(self.mel(torch.tensor(x.astype(np.float32), device=DEVICE))[:, L.SKIP_FRAMES:])
        w = e.unfold(1, L.WINDOW_EMBEDDINGS, 1).permute(0, 1, 3, 2)
        p = log_probabilities(self.head(w.flatten(0, 1)), len(WORDS))[1].exp()
        return p.reshape(w.shape[0], w.shape[1], len(WORDS), len(COMMANDS)).cpu().numpy().astype(np.float16)


def mixed(speech: np.ndarray, noise: np.ndarray | None, snr_db: float, rng: np.random.Generator) -> np.ndarray:
    """Speech of rms 1000 plus noise at snr_db, peak -25 to -3 dBFS, microphone hiss, whole numbers."""
    x = speech if noise is None else speech + noise / (rms(noise) + 1e-6) * 1000 * 10 ** (-snr_db / 20)
    x = x / (np.abs(x).max() + 1e-6) * 32767 * 10 ** (rng.uniform(-25, -3) / 20) + rng.standard_normal(len(x)) * 4
    return np.clip(np.round(x), -32768, 32767)


def unpack(z: dict, name: str) -> list[np.ndarray]:
    """Clips of pack_test.py as float32 at 16 kHz, peak 1."""
    data, length = z[f"{name}.data"], z[f"{name}.length"]
    if f"{name}.taps" in z:
        order, parts = np.argsort(length, kind="stable"), [np.zeros(0, np.float32)] * len(length)
        size = (length + 1) // 2
        first = np.cumsum(size) - size
        for group in np.array_split(order, max(1, len(order) // 400)):
            made = adpcm.decode(np.concatenate([data[first[i]:first[i] + size[i]] for i in group]), length[group], z[f"{name}.taps"][group])
            for i, x in zip(group, made):
                parts[i] = x
        return [resample_poly(x, 2, 1).astype(np.float32) for x in parts]
    first = np.cumsum(length) - length
    return [resample_poly(expand(data[a:a + n]), 2, 1).astype(np.float32) for a, n in zip(first, length)]


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
             "music": lambda: song(CLIP, rng)}[kind]()
    return mixed(speech, noise, float(snr or 0), rng).astype(np.int16)


def song(n: int, rng: np.random.Generator) -> np.ndarray:
    """Pieces of music are 5 s: enough of them one after another."""
    at = rng.integers(len(SHARED["music"]))
    return music([np.concatenate([SHARED["music"][(at + k) % len(SHARED["music"])] for k in range(n // 70000 + 2)])], n, rng)


def joined(job: tuple) -> np.ndarray:
    """All clips in random order with 0.15-0.7 s between them, some in a room; noisy: buzz, music or babble at 0-20 dB, 20 s each."""
    name, seed, noisy = job
    clips, rng, parts = SHARED[name], np.random.default_rng(seed), []
    for i in rng.permutation(len(clips)):
        x = clips[i] / (rms(clips[i]) + 1e-6) * 1000 * 10 ** (rng.uniform(-8, 4) / 20)
        parts += [room(x, rng) if rng.random() < .4 else x, np.zeros(int(rng.uniform(.15, .7) * RATE), np.float32)]
    x = np.concatenate(parts)
    for at in range(0, len(x) - 20 * RATE, 20 * RATE) if noisy else ():
        kind = rng.random()
        noise = buzz(20 * RATE, rng) if kind < .5 else song(20 * RATE, rng) if kind < .8 else babble(SHARED["crowd"], 20 * RATE, rng)
        x[at:at + 20 * RATE] += noise / rms(noise) * 1000 * 10 ** (-rng.uniform(0, 20) / 20)
    return np.clip(np.round(x * rng.uniform(1, 3) + rng.standard_normal(len(x)) * 4), -32768, 32767).astype(np.int16)


def machine(seed: int) -> np.ndarray:
    return np.clip(buzz(20 * RATE, np.random.default_rng([9, seed])) * 3000, -32768, 32767).astype(np.int16)


def stream(listener: Listener, x: np.ndarray) -> dict[str, np.ndarray]:
    """Probabilities of a long sound; only hops at which something reaches 0.05 are kept, with their numbers."""
    step, tail = 60 * RATE // L.HOP_SAMPLES * L.HOP_SAMPLES, 34 * L.HOP_SAMPLES + L.SAMPLES_FOR_FIRST_HOP
    at, kept, hops = [], [], 0
    for k in range(0, len(x) - tail, step):
        p = listener.hear(x[None, k:k + step + tail - L.HOP_SAMPLES])[0]
        some = np.where(p.max((1, 2)) >= .05)[0]
        at.append(some + hops)
        kept.append(p[some])
        hops += len(p)
    return {"hops": np.array(hops), "at": np.concatenate(at), "p": np.concatenate(kept)}


def main() -> None:
    parser = argparse.ArgumentParser()
    parser.add_argument("weights")
    parser.add_argument("folder", type=Path)
    parser.add_argument("splits", nargs="*", default=["development", "test"])
    parser.add_argument("--passes", type=int, default=1)
    parser.add_argument("--limit", type=int, help="so many clips of each kind, to try the pipeline")
    a = parser.parse_args()
    bank = {k: v for f in (MINE / "carry/check.npz", WORK / "shared/check.npz") for k, v in np.load(f).items()}
    listener = Listener(a.weights)
    for split in a.splits:
        SHARED.update({k: unpack(bank, f"{split}.{k}") for k in ("said", "none", "people", "music")})
        for k in ("said", "none", "people"):
            SHARED[k] = SHARED[k][:a.limit]
        SHARED["crowd"] = SHARED["people"][::3]
        out: dict[str, np.ndarray] = {k: bank[f"{split}.{k}"][:a.limit] for k in ("label", "speed", "voice")}
        passes = a.passes if split == "test" else max(1, a.passes // 2)
        with ProcessPoolExecutor(os.cpu_count(), get_context("fork")) as pool:
            for condition in CONDITIONS:
                x = np.stack(list(pool.map(one_clip, [(i, condition) for i in range(len(SHARED["said"]))], chunksize=8)))
                p = np.concatenate([listener.hear(x[k:k + 64]) for k in range(0, len(x), 64)])
                out[f"clips {condition}"] = np.where(p < .02, 0, p).astype(np.float16)
            jobs = {f"{name}, pass {n}": (clips, 10 * n + k, n > 0) for n in range(passes)
                    for k, (name, clips) in enumerate((("people", "people"), ("near misses and talk", "none")))}
            for name, x in zip(jobs, pool.map(joined, jobs.values())):
                out |= {f"stream {name}|{k}": v for k, v in stream(listener, x).items()}
                print(split, name, round(len(x) / RATE / 60, 1), "min", flush=True)
            x = np.concatenate(list(pool.map(machine, range(90 if split == "test" else 15))))
            out |= {f"stream machine|{k}": v for k, v in stream(listener, x).items()}
        x = (np.concatenate(SHARED["music"]) * 20000).astype(np.int16)
        out |= {f"stream music|{k}": v for k, v in stream(listener, x).items()}
        np.savez_compressed(a.folder / f"scores-{split}.npz", **out)


if __name__ == "__main__":
    main()
