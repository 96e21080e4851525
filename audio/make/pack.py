"""
Packs what training needs into out/carry-a (phrases and the two files of the base net, 42 MB) and out/carry-b (everything else,
25 MB): rendered clips, human recordings and music as 8 kHz adaptive differential code. `python3 audio/make/pack.py` after render.py.
"""
import json
import shutil
import sys
from concurrent.futures import ProcessPoolExecutor
from glob import glob

import numpy as np
from scipy.signal import resample_poly

import adpcm
import base_net
from phrase_list import WORK
from sound import read_any, trim

SOUNDS, MUSIC = "/usr/share/asterisk/sounds", "/usr/share/asterisk/moh"
LONGEST = 12 * 8000
PIECE = 4 * 8000


def narrow(path: str) -> np.ndarray:
    """Trimmed, 8 kHz, peak 28,000."""
    x = trim(read_any(path))
    x = resample_poly(x, 1, 2) if len(x) > 200 else np.zeros(0)
    return (x / (np.abs(x).max() + 1e-6) * 28000).astype(np.float32) if len(x) else x


def human(folder: str) -> list[str]:
    return [f for f in sorted(glob(f"{SOUNDS}/{folder}/**/*.g722", recursive=True)) if "/silence/" not in f]


if __name__ == "__main__":
    rows = json.loads((WORK / "tts/clips.json").read_text())
    june = human("fr_CA_f_June")
    sets = {
        "positive": [r for r in rows if r["split"] == "train" and r["label"] != "none"],
        "negative": [r for r in rows if r["split"] == "train" and r["label"] == "none"],
        "human": [{"path": p, "label": "none", "voice": "human"} for p in human("en_US_f_Allison") + human("es_MX_f_Allison")[::3]
                  + [p for i, p in enumerate(june) if i % 4][::2]],
    }
    bank: dict[str, np.ndarray] = {}
    with ProcessPoolExecutor(2) as pool:
        for name, items in sets.items():
            items = items[:120] if "--small" in sys.argv else items
            clips = list(pool.map(narrow, [r["path"] for r in items], chunksize=32))
            if "uman" in name:
                clips = [c[k:k + PIECE] for c in clips for k in range(0, len(c), PIECE)]
                items = [items[0]] * len(clips)
            keep = [i for i, c in enumerate(clips) if 1600 < len(c) < LONGEST]
            bank[f"{name}.data"], bank[f"{name}.length"], bank[f"{name}.taps"] = adpcm.encode([clips[i] for i in keep])
            bank[f"{name}.label"] = np.array([items[i]["label"] for i in keep])
            bank[f"{name}.voice"] = np.array([items[i].get("engine", "") + " " + items[i]["voice"] for i in keep])
            print(name, len(keep), "clips", round(len(bank[f"{name}.data"]) / 1e6, 1), "MB", flush=True)
    parts = [narrow(p)[s * 16000:(s + 2) * 16000] for p in sorted(glob(f"{MUSIC}/macroform*.wav")) for s in range(4, 120, 2)]
    bank["music.data"], bank["music.length"], bank["music.taps"] = adpcm.encode([p for p in parts if len(p) == 32000])
    for folder, mine in (("carry-a", ("positive",)), ("carry-b", ("negative", "human", "music"))):
        (WORK / folder).mkdir(parents=True, exist_ok=True)
        np.savez(WORK / folder / "bank.npz", **{k: v for k, v in bank.items() if k.startswith(mine)})
        print(folder, round((WORK / folder / "bank.npz").stat().st_size / 1e6, 1), "MB")
    for name in base_net.DIGESTS:
        shutil.copy(base_net.FOLDER / name, WORK / "carry-a" / name)
