"""
How good a head is on the development voices: `python3 audio/make/measure.py [weights.npz ...]` (none: the shipped model). Uses the
embeddings that gather.py made, so a head takes a minute. Recall per condition and false actions at several thresholds.
"""
import sys
from pathlib import Path

import numpy as np
import torch

import layout as L
from evaluate import ALLOWED, IDS, WORDS, events, sets_with
from phrase_list import MINE
from reference import Model
from shipped import FOLDER, layers_with, shipped_arrays
from torch_net import Embedding, Head, from_arrays, log_probabilities

GATHERED = MINE / "gathered/development.npz"


def head_of(arrays: dict[str, np.ndarray]) -> Head:
    head = Head.like(arrays, 1 + len(WORDS) + len(IDS))
    from_arrays(arrays, Embedding(layers_with(arrays)), head)
    return head.eval()


@torch.no_grad()
def hear(head: Head, embeddings: np.ndarray) -> np.ndarray:
    """Embeddings [n, size] to probabilities [n - 25, address, command], float16."""
    windows = torch.tensor(embeddings.astype(np.float32)).unfold(0, L.WINDOW_EMBEDDINGS, 1).permute(0, 2, 1)
    parts = [log_probabilities(head(windows[k:k + 1024]), len(WORDS))[1].exp() for k in range(0, len(windows), 1024)]
    return torch.cat(parts).numpy().astype(np.float16)


def probabilities(arrays: dict[str, np.ndarray], every: int = 1, gathered: Path = GATHERED) -> dict[str, np.ndarray]:
    """Every so many-th clip: {label, voice, "clips CONDITION" [clips, hops, address, command], "stream NAME" [hops, address, command]}."""
    head, out = head_of(arrays), {}
    for key, value in np.load(gathered).items():
        if key.startswith("stream "):
            out[key] = hear(head, value)
        else:
            out[key] = hear_many(head, value[::every]) if key.startswith("clips ") else value[::every]
    return out


@torch.no_grad()
def hear_many(head: Head, clips: np.ndarray) -> np.ndarray:
    windows = torch.tensor(clips.astype(np.float32)).unfold(1, L.WINDOW_EMBEDDINGS, 1).permute(0, 1, 3, 2)
    flat = windows.flatten(0, 1)
    parts = [log_probabilities(head(flat[k:k + 1024]), len(WORDS))[1].exp() for k in range(0, len(flat), 1024)]
    return torch.cat(parts).numpy().astype(np.float16).reshape(len(clips), -1, len(WORDS), len(IDS))


def smoothed(p: np.ndarray, hops: int) -> np.ndarray:
    """Mean of the last `hops` hops."""
    total = np.cumsum(np.concatenate([np.zeros_like(p[:1], dtype=np.float32), p.astype(np.float32)]), 0, dtype=np.float64)
    return ((total[hops:] - total[:-hops]) / hops).astype(np.float32)


def outcomes(p: dict, condition: str, thresholds: np.ndarray, hops: int) -> np.ndarray:
    """Per clip: 1 right and nothing else, -1 anything wrong, 0 missed; listens for what a session listens for."""
    rng, out = np.random.default_rng(17), []
    for i, label in enumerate(p["label"]):
        address, command = label.split("|")
        target = IDS.index(command)
        open_now = sets_with(target, rng)
        heard = events(smoothed(p[f"clips {condition}"][i][:, WORDS.index(address)], hops)[:, open_now], thresholds[open_now])
        out.append(-1 if any(open_now[c] != target for _, c in heard) else int(bool(heard)))
    return np.array(out)


def false_actions(p: dict, thresholds: np.ndarray, hops: int) -> dict[str, tuple[float, float]]:
    """{stream: (false actions of the three stations together, hours of sound)}, sets as in a session."""
    sets = [(a["share"], np.array([IDS.index(c) for c in a["commands"]])) for a in ALLOWED]
    out = {}
    for name in (k for k in p if k.startswith("stream ")):
        s = smoothed(p[name], hops)
        count = sum(share * len(events(s[:, a][:, d], thresholds[d])) for a in range(len(WORDS)) for share, d in sets)
        out[name[7:]] = (count, len(s) * L.HOP_SAMPLES / L.SAMPLE_RATE_HZ / 3600)
    return out


def line(p: dict, thresholds: np.ndarray, hops: int) -> str:
    conditions = [k[6:] for k in p if k.startswith("clips ")]
    got = {c: outcomes(p, c, thresholds, hops) for c in conditions}
    recall = "  ".join(f"{c} {np.mean(o == 1) * 100:.1f}/{int(np.sum(o < 0))}" for c, o in got.items())
    found = false_actions(p, thresholds, hops)
    near = sum(v for k, (v, _) in found.items() if k.startswith("near"))
    hours = sum(h for k, (_, h) in found.items() if k.startswith("near"))
    people = sum(v for k, (v, _) in found.items() if k.startswith("people"))
    mean = np.mean([np.mean(o == 1) for o in got.values()]) * 100
    natural = np.concatenate([got[c][np.char.startswith(p["voice"], "festival")] for c in conditions])
    return f"mean {mean:.2f} ked {np.mean(natural == 1) * 100:.1f}  {recall}  near misses {near / 3:.1f} in {hours:.2f} h = {near / 3 / hours:.2f}/h  people {people / 3:.2f}"


def shipped_thresholds() -> np.ndarray:
    given = Model(FOLDER).spec["decision"]["thresholds"]
    return np.array([given[id] for id in IDS])


if __name__ == "__main__":
    torch.set_num_threads(1)
    for path in sys.argv[1:] or ["shipped"]:
        p = probabilities(shipped_arrays() if path == "shipped" else dict(np.load(path)), 2)
        print(path, flush=True)
        np.savez_compressed(GATHERED.with_name(f"heard-{Path(path).parent.name or path}.npz"), **p)
        print("  its thresholds, 2 hops:", line(p, shipped_thresholds(), 2), flush=True)
        for hops in (2, 3):
            for t in (.5, .65, .8):
                print(f"  {t}, {hops} hops:", line(p, np.full(len(IDS), t), hops), flush=True)
