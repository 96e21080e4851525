"""
Writes what fine_tune.py or train.py made as model.json and model.bin, whatever its sizes:
`python3 audio/make/export_tuned.py [--half] weights.npz FOLDER [thresholds.json]`; in place of weights.npz the folder of another model.
Without thresholds those of the shipped model stay. With --half weight matrices are kept as float16.
"""
import argparse
import json
from pathlib import Path

import numpy as np

from export import export
from reference import Model
from shipped import FOLDER, layers_with, shipped_arrays, shipped_mel

NOTE = "fine-tuned end to end on synthetic speech"

if __name__ == "__main__":
    p = argparse.ArgumentParser()
    p.add_argument("weights", type=Path)
    p.add_argument("folder", type=Path)
    p.add_argument("thresholds", type=Path, nargs="?")
    p.add_argument("--half", action="store_true")
    a = p.parse_args()
    z = shipped_arrays(a.weights) if a.weights.is_dir() else dict(np.load(a.weights))
    thresholds = json.loads(a.thresholds.read_text()) if a.thresholds else Model(FOLDER).spec["decision"]["thresholds"]
    head = {k: v for k, v in z.items() if not k.startswith("conv")}
    export(layers_with(z), head, True, thresholds, NOTE, a.folder, shipped_mel(), a.half)
