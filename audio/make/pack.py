"""
Packs what training needs as 8 kHz adaptive differential code, in files small enough to travel: out/<language>/carry/positive.npz and
negative.npz (rendered clips), out/shared/people.npz (human recordings and music of the training side) and the base net beside it.
`python3 audio/make/pack.py [--small]` after render.py.
"""
import json
import shutil
import sys
from concurrent.futures import ProcessPoolExecutor
from glob import glob
from pathlib import Path

import numpy as np
from scipy.signal import resample_poly

import adpcm
import base_net
from phrase_list import MINE, WORK
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
    return [f for k in ("g722", "wav") for f in sorted(glob(f"{SOUNDS}/{folder}/**/*.{k}", recursive=True)) if "/silence/" not in f]


def coded(name: str, clips: list[np.ndarray], pool: ProcessPoolExecutor) -> dict[str, np.ndarray]:
    """One set of clips under `name`, encoded in groups of similar length; the order of the clips is kept."""
    order = np.argsort([len(c) for c in clips], kind="stable")
    groups = [order[k:k + 700] for k in range(0, len(order), 700)]
    done = list(pool.map(adpcm.encode, [[clips[i] for i in g] for g in groups]))
    parts: list[np.ndarray] = [np.zeros(0, np.uint8)] * len(clips)
    taps = np.zeros((len(clips), adpcm.ORDER), np.float32)
    for group, (data, lengths, a) in zip(groups, done):
        first = np.cumsum((lengths + 1) // 2) - (lengths + 1) // 2
        for k, i in enumerate(group):
            parts[i], taps[i] = data[first[k]:first[k] + (lengths[k] + 1) // 2], a[k]
    return {f"{name}.data": np.concatenate(parts), f"{name}.length": np.array([len(c) for c in clips], np.int32), f"{name}.taps": taps}


def rendered(name: str, rows: list[dict], pool: ProcessPoolExecutor, path: Path) -> None:
    clips = list(pool.map(narrow, [r["path"] for r in rows], chunksize=32))
    keep = [i for i, c in enumerate(clips) if 1600 < len(c) < LONGEST]
    bank = coded(name, [clips[i] for i in keep], pool)
    bank[f"{name}.label"] = np.array([rows[i]["label"] for i in keep])
    bank[f"{name}.voice"] = np.array([f"{rows[i]['engine']} {rows[i]['voice']}" for i in keep])
    save(path, bank)


def save(path: Path, bank: dict[str, np.ndarray]) -> None:
    path.parent.mkdir(parents=True, exist_ok=True)
    np.savez(path, **bank)
    print(path.relative_to(WORK), round(path.stat().st_size / 1e6, 1), "MB", flush=True)


def people(pool: ProcessPoolExecutor, small: bool) -> None:
    files = (human("en_US_f_Allison") + human("es_MX_f_Allison")[::3] + [p for i, p in enumerate(human("fr_CA_f_June")) if i % 4][::2]
             + human("it_IT_f_Menardi")[::4])
    clips = list(pool.map(narrow, files[:60] if small else files, chunksize=32))
    clips = [c[k:k + PIECE] for c in clips for k in range(0, len(c), PIECE)]
    parts = [narrow(p)[s * 16000:(s + 2) * 16000] for p in sorted(glob(f"{MUSIC}/macroform*.wav")) for s in range(4, 30 if small else 120, 2)]
    save(WORK / "shared/people.npz", coded("human", [c for c in clips if len(c) > 1600], pool)
         | coded("music", [p for p in parts if len(p) == 32000], pool))
    for name in base_net.DIGESTS:
        shutil.copy(base_net.FOLDER / name, WORK / "shared" / name)


if __name__ == "__main__":
    rows = [r for r in json.loads((MINE / "tts/clips.json").read_text()) if r["split"] == "train"]
    with ProcessPoolExecutor(2) as pool:
        rendered("positive", [r for r in rows if r["label"] != "none"], pool, MINE / "carry/positive.npz")
        rendered("negative", [r for r in rows if r["label"] == "none"], pool, MINE / "carry/negative.npz")
        if not (WORK / "shared/people.npz").exists():
            people(pool, "--small" in sys.argv)
