"""
Turns the clips of render_more.py into what the frozen convolutions make of them, so that fine_tune.py need only train the GRU head:
`python3 audio/make/gather.py development` once, `python3 audio/make/gather.py train CLIPS` (more may be added later, another --seed).
Training: embeddings [clips, 40, size] and what was said in 8 windows of each, mixed anew as train.py does. Writes out/<language>/gathered.
"""
import argparse
import json
import random
from concurrent.futures import ProcessPoolExecutor
from glob import glob
from multiprocessing import get_context
from pathlib import Path

import numpy as np
import torch
from scipy.signal import resample_poly

import layout as L
import score
from noise_train import Clips, equalise, rooms, uniform
from pack import LONGEST, human
from pack_test import folder
from phrase_list import MINE, read_phrases
from score import joined, one_clip
from shipped import shipped_layers, shipped_mel
from sound import RATE, read_any, trim
from texts import SOUND_ALIKE
from torch_net import Embedding, Mel
from train import SAMPLES, WINDOWS, Batches, warp
from voice_change import other_voice

FOLDER, MUSIC = MINE / "gathered", "/usr/share/asterisk/moh"
CONDITIONS = ["clean", "buzz 15", "babble 10"]
WORDS, COMMANDS = read_phrases()


def read(path: str) -> np.ndarray:
    """Trimmed, 16 kHz, peak 1."""
    x = trim(read_any(path))
    return (x / (np.abs(x).max() + 1e-6)).astype(np.float32)


def clips(split: str, share: float = 1., seed: int = 0) -> list[tuple[dict, np.ndarray]]:
    rows = [r for r in json.loads((MINE / "more/clips.json").read_text()) if r["split"] == split]
    if split == "train" and share < 1:
        alike = [r for r in rows if r["label"] == "none" and sounds_addressed(r["text"])]
        rows = random.Random(seed).sample(rows, int(share * len(rows))) + random.Random(seed).sample(alike, len(alike) // 2)
    made = [(r, read(r["path"])) for r in rows]
    return [(r, x) for r, x in made if 3200 < len(x) < 2 * LONGEST]


def pieces(x: np.ndarray, n: int) -> list[np.ndarray]:
    return [x[k:k + n] for k in range(0, len(x) - n // 4, n)]


def speech(files: list[str]) -> list[np.ndarray]:
    """Recordings of people in pieces of 5 s at 16 kHz, decoded in one go."""
    return [resample_poly(p, 2, 1).astype(np.float32) for p in folder(files)] if files else []


class Frozen:
    """The shipped front end and convolutions: samples [clips, n] in int16 scale to embeddings."""

    def __init__(self) -> None:
        self.mel, self.embedding = Mel(shipped_mel()).eval(), Embedding(shipped_layers()).eval()

    @torch.no_grad()
    def __call__(self, x: np.ndarray | torch.Tensor) -> np.ndarray:
        features = self.mel(torch.as_tensor(x, dtype=torch.float32))
        return self.embedding(features[:, L.SKIP_FRAMES:]).numpy().astype(np.float16)

    @torch.no_grad()
    def warped(self, x: torch.Tensor) -> np.ndarray:
        return self.embedding(warp(self.mel(x))).numpy().astype(np.float16)


def sounds_addressed(text: str) -> bool:
    """A whole command behind what only sounds like an address word: most false actions of the shipped model."""
    return any(text.startswith(f"{alike} ") and text[len(alike) + 1:] in COMMANDS.values() for alike in SOUND_ALIKE)


class Material:
    """What train.py's Batches draws from, straight from the rendered files."""

    def __init__(self, share: float, seed: int) -> None:
        rows = clips("train", share, seed)
        said, none = [(r, x) for r, x in rows if r["label"] != "none"], [x for r, x in rows if r["label"] == "none"]
        self.positive = Clips([x for _, x in said], "cpu")
        labels = [r["label"].split("|") for r, _ in said]
        self.address = torch.tensor([WORDS.index(a) for a, _ in labels])
        self.command = torch.tensor([list(COMMANDS).index(c) for _, c in labels])
        kind = np.array([r["voice"] if r["engine"] != "espeak-ng" else "espeak" for r, _ in said])
        part = {"awb": .3, "espeak": .36, "kal16": .08, "kal_diphone": .08}
        others = len(set(kind) - set(part)) or 1
        self.weight = torch.tensor([part.get(k, .18 / others) / (kind == k).sum() for k in kind]).double()
        self.weight *= torch.tensor([2. if c == "accident" else 1. for _, c in labels]).double()
        self.negative = Clips(none, "cpu")
        alike = torch.tensor([sounds_addressed(r["text"]) for r, _ in rows if r["label"] == "none"])
        self.near = torch.where(alike, .5 / max(1, int(alike.sum())), .5 / max(1, int((~alike).sum())))
        files = human("en_US_f_Allison")[::2] + human("es_MX_f_Allison")[::6] + [p for i, p in enumerate(human("fr_CA_f_June")) if i % 4][::4]
        people = speech(files)
        songs = [read_any(p)[4 * RATE:120 * RATE] for p in sorted(glob(f"{MUSIC}/macroform*.wav"))]
        if not people or not songs:
            print("no recordings of people or music here: rendered speech stands in for them", flush=True)
        self.human = Clips(people or none, "cpu")
        self.music = Clips([p for x in songs for p in pieces(x, 4 * RATE)] or none, "cpu")
        print("material", self.positive.count, self.negative.count, self.human.count, self.music.count, flush=True)


class NearBatches(Batches):
    """As train.py mixes them, but half of all clips are no phrase, and most of those are near misses."""

    def others(self, b: int) -> torch.Tensor:
        m = self.m
        which, rate = torch.multinomial(m.near, b, replacement=True), uniform(b, .84, 1.22, "cpu")
        end = SAMPLES - uniform(b, -.1, 1.3, "cpu") * RATE
        x = m.negative.once(which, end - m.negative.length[which] / rate, rate, SAMPLES)
        people = m.human.loop(torch.randint(0, m.human.count, (b,)), uniform(b, 0, 90000, "cpu"), uniform(b, .8, 1.27, "cpu"), SAMPLES)
        return torch.where((torch.rand(b) < .85)[:, None], x, people)

    def draw(self, b: int) -> tuple[torch.Tensor, torch.Tensor]:
        n = b // 2
        x, said = self.phrases(n)
        x = torch.cat([x, self.others(b - n)])
        said = torch.cat([said, torch.zeros(b - n, WINDOWS, dtype=said.dtype)])
        changed = torch.randperm(b)[:int(b * .25)]
        x[changed] = other_voice(x[changed])
        x = rooms(equalise(x, 4, 8), .5)
        snr = torch.tensor([40, 30, 25, 20, 17, 15, 12, 10, 7, 5, 2.])[torch.multinomial(torch.tensor([.14, .1, .1, .12, .12, .13, .1, .1, .05, .03, .01]), b, True)]
        x = x + self.noise.take(b, 8) * .05 * 10 ** (-snr / 20)[:, None] * (torch.rand(b, 1) < .85)
        x = x / (x.abs().amax(1, keepdim=True) + 1e-6) * 32767 * 10 ** (uniform(b, -30, -1, "cpu") / 20)[:, None]
        return (x + torch.randn(b, SAMPLES) * 10 ** uniform(b, -1, 1.2, "cpu")[:, None]).round().clamp(-32768, 32767), said


def train(count: int, seed: int, pool: int, share: float) -> None:
    torch.manual_seed(seed)
    batches, frozen = NearBatches(Material(share, seed), "cpu", pool), Frozen()
    for part in range(max(1, count // 480)):
        e, said = [], []
        for _ in range(min(count, 480) // 48):
            with torch.no_grad():
                x, s = batches.draw(48)
            e.append(frozen.warped(x))
            said.append(s.numpy())
        path = FOLDER / f"train-{seed}-{part:03d}"
        np.savez(path.with_suffix(".part.npz"), embeddings=np.concatenate(e), said=np.concatenate(said))
        path.with_suffix(".part.npz").replace(path.with_suffix(".npz"))
        print(part, flush=True)


def development(passes: int, workers: int, conditions: list[str]) -> None:
    rows, frozen, out = clips("development"), Frozen(), {}
    said, none = [(r, x) for r, x in rows if r["label"] != "none"], [x for r, x in rows if r["label"] == "none"]
    people = speech(human("fr_CA_f_June")[::4])
    music = [p / np.abs(p).max() for f in sorted(glob(f"{MUSIC}/macroform*.wav")) for p in pieces(read_any(f)[-60 * RATE:], 5 * RATE) if len(p) == 5 * RATE]
    score.SHARED |= {"said": [x for _, x in said], "none": none, "people": people, "crowd": people[::3], "music": music}
    out |= {"label": np.array([r["label"] for r, _ in said]), "voice": np.array([f"{r['engine']} {r['voice'].split('+')[-1]}" for r, _ in said])}
    with ProcessPoolExecutor(workers, get_context("fork")) as pool:
        for condition in conditions:
            x = list(pool.map(one_clip, [(i, condition) for i in range(len(said))], chunksize=16))
            out[f"clips {condition}"] = np.concatenate([frozen(np.stack(x[k:k + 32])) for k in range(0, len(x), 32)])
            print(condition, flush=True)
        for name, kind, n in [("near misses", "none", k) for k in range(passes)] + [("people", "people", 1)]:
            x = joined((kind, 100 + n, n > 0))
            step, tail = 60 * L.HOP_SAMPLES * 12, 75 * L.FRAME_HOP + L.FFT_SIZE + L.SKIP_FRAMES * L.FRAME_HOP
            parts = [frozen(x[None, k:k + step + tail - L.HOP_SAMPLES])[0] for k in range(0, len(x) - tail, step)]
            out[f"stream {name}, pass {n}"] = np.concatenate(parts)
            print(name, len(x) / RATE / 60, "min", flush=True)
    np.savez(FOLDER / "development.npz", **out)


if __name__ == "__main__":
    p = argparse.ArgumentParser()
    p.add_argument("split", choices=["train", "development"])
    p.add_argument("count", nargs="?", type=int, default=480)
    p.add_argument("--seed", type=int, default=0)
    p.add_argument("--pool", type=int, default=512, help="ready noises to begin with")
    p.add_argument("--share", type=float, default=1, help="of the rendered clips: reading them all takes minutes")
    p.add_argument("--passes", type=int, default=2)
    p.add_argument("--workers", type=int, default=1)
    p.add_argument("--conditions", nargs="*", default=CONDITIONS)
    a = p.parse_args()
    torch.set_num_threads(1)
    FOLDER.mkdir(parents=True, exist_ok=True)
    train(a.count, a.seed, a.pool, a.share) if a.split == "train" else development(a.passes, a.workers, a.conditions)
