"""
Packs development and test material for scoring on the lent machine into out/carry-c and out/carry-d: rendered phrases as 8 kHz int16,
long negative material as 8 kHz mu-law. Nothing here is read by train.py.
"""
import json
import subprocess
from glob import glob

import numpy as np
from scipy.signal import resample_poly

from phrase_list import WORK
from sound import read_any, trim

SOUNDS, MUSIC = "/usr/share/asterisk/sounds", "/usr/share/asterisk/moh"


def narrow(x: np.ndarray) -> np.ndarray:
    y = resample_poly(x, 1, 2) if len(x) > 200 else np.zeros(1)
    return (y / (np.abs(y).max() + 1e-6)).astype(np.float32)


def mu_law(x: np.ndarray) -> np.ndarray:
    return np.round((np.sign(x) * np.log1p(255 * np.abs(x)) / np.log(256) + 1) * 127.5).astype(np.uint8)


def expand(code: np.ndarray) -> np.ndarray:
    m = code.astype(np.float32) / 127.5 - 1
    return np.sign(m) * (np.power(256, np.abs(m)) - 1) / 255


def folder(files: list[str]) -> list[np.ndarray]:
    """All files of one speaker, decoded in one go (G.722), cut in pieces of 5 s, near-silent ones dropped."""
    joined = b"".join(open(f, "rb").read() for f in files)
    raw = subprocess.run(["ffmpeg", "-nostdin", "-loglevel", "error", "-f", "g722", "-i", "pipe:0", "-ar", "8000", "-ac", "1", "-f",
                          "s16le", "-"], input=joined, capture_output=True, check=True).stdout
    x = np.frombuffer(raw, "<i2").astype(np.float32)
    pieces = [x[k:k + 40000] for k in range(0, len(x) - 8000, 40000)]
    return [p / np.abs(p).max() for p in pieces if np.abs(p).max() > 1500]


def sounds(name: str) -> list[str]:
    return [f for f in sorted(glob(f"{SOUNDS}/{name}/**/*.g722", recursive=True)) if "/silence/" not in f]


def main() -> None:
    rows, bank = json.loads((WORK / "tts/clips.json").read_text()), {}
    base = "/usr/share/pocketsphinx/test/data"
    english = [narrow(read_any(p)) for k in ("wav", "raw") for p in sorted(glob(f"{base}/**/*.{k}", recursive=True))]
    people = {"test": folder(sounds("it_IT_m_Carlo")) + folder(sounds("ru_RU_f_IvrvoiceRU")) + [x for x in english if len(x) > 4000],
              "development": folder(sounds("fr_CA_f_June")[::4])}
    music = {"test": [narrow(read_any(p)) for n in ("manolo", "reno") for p in glob(f"{MUSIC}/{n}*.wav")],
             "development": [narrow(read_any(p)[-60 * 16000:]) for p in sorted(glob(f"{MUSIC}/macroform*.wav"))]}
    for split in ("development", "test"):
        mine = [r for r in rows if r["split"] == split]
        said = [r for r in mine if r["label"] != "none"]
        clips = [narrow(trim(read_any(r["path"]))) for r in said]
        none = [narrow(trim(read_any(r["path"]))) for r in mine if r["label"] == "none"]
        bank[f"{split}.said.data"] = np.concatenate([(c * 32000).astype(np.int16) for c in clips])
        bank[f"{split}.said.length"] = np.array([len(c) for c in clips])
        bank[f"{split}.label"], bank[f"{split}.speed"] = np.array([r["label"] for r in said]), np.array([r["speed"] for r in said])
        bank[f"{split}.voice"] = np.array([f"{r['engine']} {r['voice'].split('+')[-1]}" for r in said])
        for name, items in (("none", none), ("people", people[split]), ("music", music[split])):
            bank[f"{split}.{name}.data"] = np.concatenate([mu_law(x) for x in items])
            bank[f"{split}.{name}.length"] = np.array([len(x) for x in items])
        print(split, len(clips), len(none), len(people[split]), flush=True)
    phrases = {k: v for k, v in bank.items() if k.startswith("development") or k.split(".")[1] in ("said", "label", "speed", "voice")}
    for folder, part in (("carry-c", phrases), ("carry-d", {k: v for k, v in bank.items() if k not in phrases})):
        (WORK / folder).mkdir(parents=True, exist_ok=True)
        np.savez(WORK / folder / "test.npz", **part)
        print(folder, round((WORK / folder / "test.npz").stat().st_size / 1e6, 1), "MB")


if __name__ == "__main__":
    main()
