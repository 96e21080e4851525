"""
Writes golden/utterance.wav's expected mel frames, embeddings and probabilities from the numpy reference:
`python3 audio/make/golden.py [FOLDER FILE]`, by default of public/voice into golden/expected.json.
"""
import json
import sys
from pathlib import Path

import numpy as np

from reference import FOLDER, Model, read_wav, stream

HERE = Path(__file__).resolve().parent / "golden"


def rounded(x: np.ndarray, digits: int = 6) -> list:
    return np.round(x, digits).tolist()


if __name__ == "__main__":
    folder, file = (Path(a) for a in sys.argv[1:]) if len(sys.argv) > 1 else (FOLDER, HERE / "expected.json")
    model = Model(folder)
    frames, e, p = stream(model, read_wav(str(HERE / "utterance.wav")))
    file.write_text(json.dumps({
        "model": model.spec["binary"]["sha256"], "frames": len(frames), "embeddings": len(e), "decisions": len(p),
        "melFrames": {str(i): rounded(frames[i]) for i in range(0, len(frames), 16)},
        "embedding": {str(i): rounded(e[i], 5) for i in range(0, len(e), 4)},
        "firstDecisionHop": 34,
        "probabilities": [rounded(x, 7) for x in p],
    }) + "\n", encoding="utf-8")
    print(frames.shape, e.shape, p.shape, "largest", p.max())
