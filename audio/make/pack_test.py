"""
Packs development and test material for scoring on the lent machine into out/<language>/carry/check.npz (rendered phrases and what was
rendered to do nothing) and out/shared/check.npz (people and music). Nothing here is read by train.py. Phrases are kept as 8 kHz
mu-law at one of the three speeds each, negatives as 8 kHz adaptive differential code.
"""
import json
import subprocess
from concurrent.futures import ProcessPoolExecutor
from glob import glob

import numpy as np
from scipy.signal import resample_poly

from pack import coded, save
from phrase_list import MINE, WORK
from sound import read_any, trim

SOUNDS, MUSIC = "/usr/share/asterisk/sounds", "/usr/share/asterisk/moh"
LONGEST = 12 * 8000


def narrow(x: np.ndarray) -> np.ndarray:
    y = resample_poly(x, 1, 2) if len(x) > 200 else np.zeros(1)
    return (y / (np.abs(y).max() + 1e-6)).astype(np.float32)


def trimmed(path: str) -> np.ndarray:
    return narrow(trim(read_any(path)))


def mu_law(x: np.ndarray) -> np.ndarray:
    return np.round((np.sign(x) * np.log1p(255 * np.abs(x)) / np.log(256) + 1) * 127.5).astype(np.uint8)


def expand(code: np.ndarray) -> np.ndarray:
    m = code.astype(np.float32) / 127.5 - 1
    return np.sign(m) * (np.power(256, np.abs(m)) - 1) / 255


def folder(files: list[str], kind: str = "g722") -> list[np.ndarray]:
    """All files of one speaker, decoded in one go where the format allows it, cut in pieces of 5 s, near-silent ones dropped."""
    joined = b"".join(open(f, "rb").read() for f in files)
    raw = subprocess.run(["ffmpeg", "-nostdin", "-loglevel", "error", "-f", kind, "-i", "pipe:0", "-ar", "8000", "-ac", "1", "-f",
                          "s16le", "-"], input=joined, capture_output=True, check=True).stdout
    x = np.frombuffer(raw, "<i2").astype(np.float32)
    pieces = [x[k:k + 40000] for k in range(0, len(x) - 8000, 40000)]
    return [p / np.abs(p).max() for p in pieces if np.abs(p).max() > 1500]


def sounds(name: str, kind: str = "g722") -> list[str]:
    return [f for f in sorted(glob(f"{SOUNDS}/{name}/**/*.{kind}", recursive=True)) if "/silence/" not in f]


def people() -> dict[str, list[np.ndarray]]:
    base = "/usr/share/pocketsphinx/test/data"
    english = [narrow(read_any(p)) for k in ("wav", "raw") for p in sorted(glob(f"{base}/**/*.{k}", recursive=True))]
    return {"test": folder(sounds("it_IT_m_Carlo")) + folder(sounds("ru_RU_f_IvrvoiceRU")) + folder(sounds("es", "gsm"), "gsm")
            + folder(sounds("fr", "gsm"), "gsm") + [x[k:k + 40000] for x in english for k in range(0, len(x) - 4000, 40000)],
            "development": folder(sounds("fr_CA_f_June")[::4])}


def main() -> None:
    rows, bank, shared = json.loads((MINE / "tts/clips.json").read_text()), {}, {}
    music = {"test": [narrow(read_any(p)) for n in ("manolo", "reno") for p in glob(f"{MUSIC}/{n}*.wav")],
             "development": [narrow(read_any(p)[-60 * 16000:]) for p in sorted(glob(f"{MUSIC}/macroform*.wav"))]}
    spoken = people()
    with ProcessPoolExecutor(2) as pool:
        for split in ("development", "test"):
            mine = [r for r in rows if r["split"] == split]
            said = [r for r in mine if r["label"] != "none"]
            said = said if split == "development" else [r for i, r in enumerate(said) if i % 3 == (i // 3) % 3]
            clips = list(pool.map(trimmed, [r["path"] for r in said], chunksize=16))
            none = [x for x in pool.map(trimmed, [r["path"] for r in mine if r["label"] == "none"], chunksize=16) if 1600 < len(x) < LONGEST]
            bank[f"{split}.said.data"] = np.concatenate([mu_law(c) for c in clips])
            bank[f"{split}.said.length"] = np.array([len(c) for c in clips])
            bank[f"{split}.label"], bank[f"{split}.speed"] = np.array([r["label"] for r in said]), np.array([r["speed"] for r in said])
            bank[f"{split}.voice"] = np.array([f"{r['engine']} {r['voice'].split('+')[-1]}" for r in said])
            bank |= coded(f"{split}.none", [x * 28000 for x in none], pool)
            pieces = [x[k:k + 40000] for x in music[split] for k in range(0, len(x) - 8000, 40000)]
            shared |= coded(f"{split}.people", [x / np.abs(x).max() * 28000 for x in spoken[split]], pool)
            shared |= coded(f"{split}.music", [x * 28000 for x in pieces], pool)
            print(split, len(clips), len(none), len(spoken[split]), flush=True)
    save(MINE / "carry/check.npz", bank)
    save(WORK / "shared/check.npz", shared)


if __name__ == "__main__":
    main()
