"""
The model in plain numpy, read back from its two files, of whatever sizes: slow, obvious, the yardstick for every other implementation.
`python3 audio/make/reference.py file.wav` prints what it hears; golden.py stores its intermediate values.
"""
import hashlib
import json
import sys
import wave
from pathlib import Path

import numpy as np

import layout as L

FOLDER = Path(__file__).resolve().parents[2] / "public/voice"


class Model:
    """Weights by layer, checked against the digest in model.json."""

    def __init__(self, folder: Path = FOLDER) -> None:
        self.spec = json.loads((folder / "model.json").read_text(encoding="utf-8"))
        raw = (folder / self.spec["binary"]["file"]).read_bytes()
        if hashlib.sha256(raw).hexdigest() != self.spec["binary"]["sha256"]:
            raise ValueError("model.bin does not match model.json")
        self.raw = raw

    def tensor(self, place: dict) -> np.ndarray:
        kind, n = {"float32": "<f4", "float16": "<f2"}[place["dtype"]], int(np.prod(place["shape"]))
        return np.frombuffer(self.raw, kind, n, place["byteOffset"]).reshape(place["shape"]).astype(np.float64)


def read_wav(path: str) -> np.ndarray:
    """16 kHz mono int16 WAV to float64 samples, -32768..32767."""
    with wave.open(str(path)) as w:
        if (w.getframerate(), w.getnchannels(), w.getsampwidth()) != (16000, 1, 2):
            raise ValueError("need 16 kHz mono 16-bit")
        return np.frombuffer(w.readframes(w.getnframes()), "<i2").astype(np.float64)


def mel_frames(model: Model, samples: np.ndarray) -> np.ndarray:
    """Features [frames, 32]: log10(max(mel power, 1)) + 2, one frame every 160 samples."""
    count = (len(samples) - L.FFT_SIZE) // L.FRAME_HOP + 1
    index = np.arange(count)[:, None] * L.FRAME_HOP + np.arange(L.FFT_SIZE)
    power = np.abs(np.fft.rfft(samples[index] * L.hann(), axis=1)) ** 2
    return np.log10(np.maximum(power @ model.tensor(model.spec["frontEnd"]["melMatrix"]), L.POWER_FLOOR)) + L.LOG_OFFSET


def convolve(x: np.ndarray, weight: np.ndarray, bias: np.ndarray | None, pad: int) -> np.ndarray:
    """x [channels, time, bands] by weight [out, in, kt, kf]; no padding in time, `pad` zeros either side in frequency."""
    kt, kf = weight.shape[2:]
    x = np.pad(x, ((0, 0), (0, 0), (pad, pad)))
    t, f = x.shape[1] - kt + 1, x.shape[2] - kf + 1
    y = sum(np.einsum("oi,itf->otf", weight[:, :, a, b], x[:, a:a + t, b:b + f]) for a in range(kt) for b in range(kf))
    return y if bias is None else y + bias[:, None, None]


def max_pool(x: np.ndarray, kernel: list[int], stride: list[int]) -> np.ndarray:
    t, f = (x.shape[1] - kernel[0]) // stride[0] + 1, (x.shape[2] - kernel[1]) // stride[1] + 1
    parts = [x[:, a:a + stride[0] * t:stride[0], b:b + stride[1] * f:stride[1]]
             for a in range(kernel[0]) for b in range(kernel[1])]
    return np.maximum.reduce(parts)


def embeddings(model: Model, frames: np.ndarray) -> np.ndarray:
    """[count, channels of the last convolution]; embedding j covers stream frames 4 + 8 j .. 79 + 8 j."""
    x = frames[None, L.SKIP_FRAMES:]
    for layer in model.spec["layers"]:
        if layer["kind"] == "maxPool":
            x = max_pool(x, layer["kernel"], layer["stride"])
        elif layer["kind"] == "conv2d":
            x = convolve(x, model.tensor(layer["weight"]), layer["bias"] and model.tensor(layer["bias"]), layer["padFrequency"])
            if layer["activation"]:
                x = np.maximum(np.where(x > 0, x, x * layer["activation"]["slope"]), layer["activation"]["floor"])
    return x[:, :, 0].T


def gru(model: Model, layer: dict, x: np.ndarray) -> np.ndarray:
    """x [time, inputs] to hidden states [time, hidden], from a zero state."""
    wi, wh, bi, bh = (model.tensor(layer[k]) for k in ("weightInput", "weightHidden", "biasInput", "biasHidden"))
    h, n, out = np.zeros(layer["hidden"]), layer["hidden"], []
    for row in x:
        a, b = wi @ row + bi, wh @ h + bh
        r, z = 1 / (1 + np.exp(-(a[:n] + b[:n]))), 1 / (1 + np.exp(-(a[n:2 * n] + b[n:2 * n])))
        h = (1 - z) * np.tanh(a[2 * n:] + r * b[2 * n:]) + z * h
        out.append(h)
    return np.array(out)


def logits(model: Model, window: np.ndarray) -> np.ndarray:
    """26 embeddings [26, size] to outputs [1 none, addresses, commands]."""
    x = window
    for layer in model.spec["layers"]:
        if layer["kind"] == "affine":
            x = x * model.tensor(layer["scale"]) + model.tensor(layer["shift"])
        elif layer["kind"] == "gru":
            x = gru(model, layer, x)
        elif layer["kind"] == "dense":
            x = model.tensor(layer["weight"]) @ x[-1] + model.tensor(layer["bias"])
    return x


def probabilities(model: Model, z: np.ndarray) -> np.ndarray:
    """P(address a and command c) [addresses, commands]; what is missing to 1 is 'none of these'."""
    out = model.spec["outputs"]
    a, c = z[out["firstAddress"]:out["firstCommand"]], z[out["firstCommand"]:]
    joint = a[:, None] + c[None, :]
    top = max(joint.max(), z[0])
    e = np.exp(joint - top)
    return e / (e.sum() + np.exp(z[0] - top))


def stream(model: Model, samples: np.ndarray) -> tuple[np.ndarray, np.ndarray, np.ndarray]:
    """(mel frames, embeddings, probabilities [decisions, addresses, commands]); decision d belongs to hop d + 34."""
    frames = mel_frames(model, samples)
    e = embeddings(model, frames)
    p = [probabilities(model, logits(model, e[d:d + L.WINDOW_EMBEDDINGS])) for d in range(len(e) - L.WINDOW_EMBEDDINGS + 1)]
    return frames, e, np.array(p)


if __name__ == "__main__":
    m = Model()
    p = stream(m, np.concatenate([np.zeros(48000), read_wav(sys.argv[1]), np.zeros(16000)]))[2]
    s = (p[1:] + p[:-1]) / 2
    d, a, c = np.unravel_index(s.argmax(), s.shape)
    o = m.spec["outputs"]
    print(f"{o['addressWords'][a]} {o['commandIds'][c]} {s.max():.3f} at hop {d + 35}")
