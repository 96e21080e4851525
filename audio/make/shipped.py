"""The shipped model's weights as arrays under export.py's names, so that training can go on from what is in public/voice."""
from pathlib import Path

import numpy as np

from phrase_list import LANGUAGE, read_phrases
from reference import FOLDER as ENGLISH
from reference import Model

FOLDER = ENGLISH if LANGUAGE == "en" else ENGLISH / LANGUAGE


def shipped_arrays(folder: Path = FOLDER) -> dict[str, np.ndarray]:
    """{name: float32 array} of all layers; raises ValueError if model.bin is not what model.json describes, or for other phrases."""
    model, out, conv, gru = Model(folder), {}, 0, 0
    if model.spec["outputs"]["commandIds"] != list(read_phrases()[1]):
        raise ValueError(f"{folder}/model.json has other phrases, or another order, than src/intent/phrases.ts: train.py makes a new model")
    read = lambda place: model.tensor(place).astype(np.float32)
    for layer in model.spec["layers"]:
        if layer["kind"] == "conv2d":
            out[f"conv{conv}.weight"] = read(layer["weight"])
            out[f"conv{conv}.bias"] = read(layer["bias"]) if layer["bias"] else np.zeros(0, np.float32)
            conv += 1
        elif layer["kind"] == "affine":
            out |= {"affine.scale": read(layer["scale"]), "affine.shift": read(layer["shift"])}
        elif layer["kind"] == "gru":
            for short, long in (("wi", "weightInput"), ("wh", "weightHidden"), ("bi", "biasInput"), ("bh", "biasHidden")):
                out[f"gru{gru}.{short}"] = read(layer[long])
            gru += 1
        elif layer["kind"] == "dense":
            out |= {"dense.weight": read(layer["weight"]), "dense.bias": read(layer["bias"])}
    return out


def shipped_layers(folder: Path = FOLDER) -> list[dict]:
    """The convolutions and pools as base_net.embedding_layers gives them, with the shipped weights."""
    model, out = Model(folder), []
    for layer in model.spec["layers"]:
        if layer["kind"] == "maxPool":
            out.append({key: layer[key] for key in ("kind", "kernel", "stride")})
        elif layer["kind"] == "conv2d":
            bias = layer["bias"] and model.tensor(layer["bias"]).astype(np.float32)
            out.append({"kind": "conv2d", "weight": model.tensor(layer["weight"]).astype(np.float32), "bias": bias,
                        "padFrequency": layer["padFrequency"], "activation": layer["activation"] is not None})
    return out


def layers_with(z: dict[str, np.ndarray]) -> list[dict]:
    """The convolutions and pools in their order, which is the English model's in every language, with these weights of whatever sizes."""
    layers, i = shipped_layers(ENGLISH), 0
    for layer in layers:
        if layer["kind"] == "conv2d":
            layer["weight"], layer["bias"] = z[f"conv{i}.weight"], None if layer["bias"] is None else z[f"conv{i}.bias"]
            i += 1
    return layers


def shipped_mel(folder: Path = FOLDER) -> np.ndarray:
    """float32 [257, 32]."""
    model = Model(folder)
    return model.tensor(model.spec["frontEnd"]["melMatrix"]).astype(np.float32)
