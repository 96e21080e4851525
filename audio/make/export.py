"""
Writes public/voice/model.json and model.bin (MODEL.md says how to read them) from weights given as numpy arrays, for another
language than English into a folder of its name. `python3 audio/make/export.py weights.npz thresholds.json` exports a trained net;
with --untrained the head is random (seed 1). With --half at the end weight matrices are kept as float16.
"""
import hashlib
import json
import sys
from pathlib import Path

import numpy as np

import layout as L
from base_net import ACTIVATION_FLOOR, LEAKY_SLOPE, embedding_layers, mel_matrix
from phrase_list import LANGUAGE, ROOT, read_phrases


class Binary:
    """Collects little-endian tensors and remembers where each begins; with `half` those of `matrix` are float16, all others float32."""

    def __init__(self, half: bool = False) -> None:
        self.parts: list[bytes] = []
        self.size, self.half = 0, half

    def put(self, array: np.ndarray) -> dict:
        return self._put(array, np.ascontiguousarray(array, dtype="<f4"))

    def matrix(self, array: np.ndarray) -> dict:
        """Rounds to nearest, ties to even (numpy's own); ValueError for what float16 cannot hold: 65,520 and more, or no number at all."""
        if not self.half:
            return self.put(array)
        with np.errstate(over="ignore"):
            halves = np.ascontiguousarray(array, dtype="<f2")
        if not np.isfinite(halves).all():
            raise ValueError(f"a weight of {np.asarray(array)[~np.isfinite(halves)][0]} does not fit into float16: export without --half")
        return self._put(array, halves)

    def _put(self, array: np.ndarray, numbers: np.ndarray) -> dict:
        place = {"byteOffset": self.size, "shape": list(array.shape), "dtype": numbers.dtype.name}
        raw = numbers.tobytes()
        self.parts.append(raw + bytes(-len(raw) % 4))
        self.size += len(self.parts[-1])
        return place


def random_head(outputs: int, e: int, rng: np.random.Generator) -> dict:
    h = L.HIDDEN
    def u(*shape):
        return rng.uniform(-1, 1, shape) / np.sqrt(h)
    head = {"affine.scale": np.full(e, 0.1), "affine.shift": np.zeros(e), "dense.weight": u(outputs, h),
            "dense.bias": u(outputs)}
    for n, width in ((0, e), (1, h)):
        head |= {f"gru{n}.wi": u(3 * h, width), f"gru{n}.wh": u(3 * h, h), f"gru{n}.bi": u(3 * h), f"gru{n}.bh": u(3 * h)}
    return head


def describe_layers(out: Binary, base: list[dict], head: dict) -> list[dict]:
    layers: list[dict] = []
    for layer in base:
        if layer["kind"] == "maxPool":
            layers.append(layer)
            continue
        weight, bias = layer["weight"], layer["bias"]
        layers.append({
            "kind": "conv2d", "kernel": list(weight.shape[2:]), "stride": [1, 1], "padFrequency": layer["padFrequency"],
            "inChannels": weight.shape[1], "outChannels": weight.shape[0],
            "activation": {"kind": "leakyThenFloor", "slope": LEAKY_SLOPE, "floor": ACTIVATION_FLOOR}
            if layer["activation"] else None,
            "weight": out.matrix(weight), "bias": None if bias is None else out.put(bias)})
    layers.append({"kind": "affine", "scale": out.put(head["affine.scale"]), "shift": out.put(head["affine.shift"])})
    for n in (0, 1):
        wi, wh = head[f"gru{n}.wi"], head[f"gru{n}.wh"]
        layers.append({"kind": "gru", "inputs": wi.shape[1], "hidden": wh.shape[1], "gates": ["reset", "update", "new"],
                       "weightInput": out.matrix(wi), "weightHidden": out.matrix(wh),
                       "biasInput": out.put(head[f"gru{n}.bi"]), "biasHidden": out.put(head[f"gru{n}.bh"])})
    w = head["dense.weight"]
    layers.append({"kind": "dense", "inputs": w.shape[1], "outputs": w.shape[0], "weight": out.matrix(w),
                   "bias": out.put(head["dense.bias"])})
    return layers


def export(base: list[dict], head: dict, trained: bool, thresholds: dict, note: str,
           folder: Path = ROOT / "public/voice" / ("" if LANGUAGE == "en" else LANGUAGE), matrix: np.ndarray | None = None,
           half: bool = False) -> None:
    words, commands = read_phrases()
    out = Binary(half)
    mel = out.put(mel_matrix() if matrix is None else matrix)
    layers = describe_layers(out, base, head)
    raw = b"".join(out.parts)
    model = {
        "format": "phrase-model/1", "trained": trained, "note": note,
        "binary": {"file": "model.bin", "bytes": len(raw), "sha256": hashlib.sha256(raw).hexdigest()},
        "audio": {"sampleRateHz": L.SAMPLE_RATE_HZ, "channels": 1, "sampleScale": "int16"},
        "frontEnd": {"fftSize": L.FFT_SIZE, "window": "hannPeriodic", "windowLength": L.WINDOW_LENGTH,
                     "windowOffset": L.WINDOW_OFFSET, "frameHopSamples": L.FRAME_HOP, "melBands": L.MEL_BANDS,
                     "powerFloor": L.POWER_FLOOR, "logOffset": L.LOG_OFFSET, "melMatrix": mel},
        "stream": {"hopSamples": L.HOP_SAMPLES, "framesPerHop": L.FRAMES_PER_HOP,
                   "samplesForFirstHop": L.SAMPLES_FOR_FIRST_HOP, "skipFrames": L.SKIP_FRAMES,
                   "receptiveFrames": L.RECEPTIVE_FRAMES, "embeddingSize": len(head["affine.scale"]),
                   "windowEmbeddings": L.WINDOW_EMBEDDINGS},
        "layers": layers,
        "outputs": {"none": 0, "firstAddress": 1, "firstCommand": 1 + len(words), "addressWords": words,
                    "commandIds": list(commands), "commandWords": commands, "language": LANGUAGE},
        "decision": {"smoothingHops": L.SMOOTHING_HOPS, "refractoryHops": L.REFRACTORY_HOPS,
                     "thresholds": {c: thresholds.get(c, 0.8) for c in commands}},
    }
    folder.mkdir(parents=True, exist_ok=True)
    (folder / "model.bin").write_bytes(raw)
    (folder / "model.json").write_text(json.dumps(model, indent=1) + "\n", encoding="utf-8")
    print("model.bin", len(raw), "bytes", model["binary"]["sha256"])


def from_npz(path: str) -> tuple[list[dict], dict]:
    z = np.load(path)
    base, i = embedding_layers(), 0
    for layer in base:
        if layer["kind"] == "conv2d":
            layer["weight"] = z[f"conv{i}.weight"]
            layer["bias"] = z[f"conv{i}.bias"] if layer["bias"] is not None else None
            i += 1
    return base, {k: z[k] for k in z.files if not k.startswith("conv")}


if __name__ == "__main__":
    a, c = read_phrases()
    given = [x for x in sys.argv[1:] if x != "--half"]
    half = len(given) < len(sys.argv) - 1
    if given[0] == "--untrained":
        base = embedding_layers()
        export(base, random_head(1 + len(a) + len(c), len(base[-1]["weight"]), np.random.default_rng(1)), False, {},
               "front end and embedding pretrained, head random: for checking a port only", half=half)
    else:
        base, head = from_npz(given[0])
        export(base, head, True, json.loads(Path(given[1]).read_text()), "fine-tuned end to end on synthetic speech", half=half)
