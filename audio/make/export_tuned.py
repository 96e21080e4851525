"""
Writes what fine_tune.py made as model.json and model.bin: `python3 audio/make/export_tuned.py weights.npz FOLDER [thresholds.json]`.
Without thresholds those of the shipped model stay.
"""
import json
import sys
from pathlib import Path

import numpy as np

from export import export
from reference import Model
from shipped import FOLDER, shipped_layers, shipped_mel

NOTE = "fine-tuned end to end on synthetic speech"

if __name__ == "__main__":
    z, layers, i = np.load(sys.argv[1]), shipped_layers(), 0
    for layer in layers:
        if layer["kind"] == "conv2d":
            layer["weight"], layer["bias"] = z[f"conv{i}.weight"], layer["bias"] if layer["bias"] is None else z[f"conv{i}.bias"]
            i += 1
    kept = Model(FOLDER).spec["decision"]
    thresholds = json.loads(Path(sys.argv[3]).read_text()) if len(sys.argv) > 3 else kept["thresholds"]
    head = {k: z[k] for k in z.files if not k.startswith("conv")}
    export(layers, head, True, thresholds, NOTE, Path(sys.argv[2]), shipped_mel())
