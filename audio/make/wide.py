"""
A wider net that computes what a narrower one does, to go on training from: new channels take from all others what chance gives
them, and nothing that was there listens to them yet. After "Net2Net" (Chen, Goodfellow, Shlens 2016), with silent new channels.
`python3 audio/make/wide.py FOLDER OUT A B C D HIDDEN` writes the model in FOLDER with these sizes into OUT; train.py does it with --wide.
"""
import sys
from pathlib import Path

import numpy as np

from export import export
from reference import Model
from shipped import layers_with, shipped_arrays, shipped_mel

BLOCKS = (3, 7, 11, 19)
"""Convolutions below these numbers have the channels of the first, second, third and fourth block; the last gives the embedding."""


def _grown(w: np.ndarray, outputs: int, inputs: int, rng: np.random.Generator) -> np.ndarray:
    """w [out, in, ...] to [outputs, inputs, ...]: old outputs hear old inputs only, new outputs hear all, at the scale of the old."""
    made = rng.standard_normal((outputs, inputs, *w.shape[2:])) * w.std() * np.sqrt(w.shape[1] / inputs)
    made[:w.shape[0]] = 0
    made[:w.shape[0], :w.shape[1]] = w
    return made.astype(np.float32)


def _padded(b: np.ndarray, n: int, value: float = 0) -> np.ndarray:
    return np.concatenate([b, np.full(n - len(b), value, np.float32)]).astype(np.float32)


def _gates(w: np.ndarray, hidden: int, grow) -> np.ndarray:
    """The three gates of w [3 old, ...], each grown from old to `hidden` rows."""
    return np.concatenate([grow(part) for part in np.split(w, 3)])


def widened(z: dict[str, np.ndarray], channels: tuple[int, int, int, int], hidden: int, seed: int = 7) -> dict[str, np.ndarray]:
    """Arrays under export.py's names with `channels` in the four blocks (the last also the embedding's) and `hidden` units in each GRU."""
    rng, out, inputs = np.random.default_rng(seed), dict(z), 1
    count = sum(k.startswith("conv") and k.endswith("weight") for k in z)
    for i in range(count):
        width = channels[next((n for n, end in enumerate(BLOCKS) if i < end), 3)]
        out[f"conv{i}.weight"] = _grown(z[f"conv{i}.weight"], width, inputs, rng)
        if len(z[f"conv{i}.bias"]):
            out[f"conv{i}.bias"] = _padded(z[f"conv{i}.bias"], width)
        inputs = width
    out["affine.scale"] = _padded(z["affine.scale"], inputs, float(np.abs(z["affine.scale"]).mean()))
    out["affine.shift"] = _padded(z["affine.shift"], inputs)
    for n in (0, 1):
        out[f"gru{n}.wi"] = _gates(z[f"gru{n}.wi"], hidden, lambda p: _grown(p, hidden, inputs, rng))
        out[f"gru{n}.wh"] = _gates(z[f"gru{n}.wh"], hidden, lambda p: _grown(p, hidden, hidden, rng))
        for k in ("bi", "bh"):
            out[f"gru{n}.{k}"] = _gates(z[f"gru{n}.{k}"], hidden, lambda p: _padded(p, hidden))
        inputs = hidden
    out["dense.weight"] = _grown(z["dense.weight"], len(z["dense.weight"]), hidden, rng)
    return out


if __name__ == "__main__":
    folder, out, *sizes = sys.argv[1:]
    z = widened(shipped_arrays(Path(folder)), tuple(map(int, sizes[:4])), int(sizes[4]))
    spec = Model(Path(folder)).spec
    export(layers_with(z), {k: v for k, v in z.items() if not k.startswith("conv")}, spec["trained"], spec["decision"]["thresholds"],
           spec["note"], Path(out), shipped_mel(Path(folder)))
