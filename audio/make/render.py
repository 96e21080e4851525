"""
Renders every training, development and test clip with espeak-ng, flite and festival into out/tts (never committed).
`python3 audio/make/render.py [--small]`; seed 11. Needs Debian's espeak-ng, flite, festival and the voices in manifest.json.
"""
import json
import random
import subprocess
import sys
from concurrent.futures import ThreadPoolExecutor
from pathlib import Path

from phrase_list import WORK, read_phrases
from texts import ANNOUNCE_A, ANNOUNCE_B, AROUND, SOUND_ALIKE, TALK_A, TALK_B, near_misses

HERE, OUT = Path(__file__).resolve().parent, WORK / "tts"
HELD, VOICES = (json.loads((HERE / f).read_text()) for f in ("held-out.json", "manifest.json"))
RNG = random.Random(11)
rows: list[dict] = []
commands: list[list[str]] = []
festival: dict[tuple[str, float], list[tuple[str, str]]] = {}


def add(split: str, text: str, label: str, engine: str, voice: str, speed: float) -> str:
    path = str(OUT / f"{len(rows):06d}.wav")
    rows.append({"path": path, "split": split, "text": text, "label": label, "engine": engine, "voice": voice, "speed": speed})
    return path


def espeak(split: str, text: str, label: str, variants: list[str], wpm: int | None = None) -> None:
    voice = f"{RNG.choice(VOICES['espeak-ng']['accents'])}+{RNG.choice(variants)}"
    wpm = wpm or max(120, min(235, round(RNG.gauss(168, 26))))
    path = add(split, text, label, "espeak-ng", voice, round(wpm / 170, 2))
    commands.append(["espeak-ng", "-v", voice, "-s", str(wpm), "-p", str(RNG.randint(22, 78)), "-w", path, text])


def flite(split: str, text: str, label: str, voice: str, stretch: float, pitch: float = 1.0) -> None:
    path = add(split, text, label, "flite", voice, round(1 / stretch, 2))
    hertz = VOICES["flite"]["pitchHz"][voice] * pitch
    commands.append(["flite", "-voice", voice, "--setf", f"duration_stretch={stretch}", "--setf",
                     f"int_f0_target_mean={hertz:.0f}", "-t", text.replace("colour", "color"), "-o", path])


def fest(split: str, text: str, label: str, voice: str, stretch: float) -> None:
    path = add(split, text, label, "festival", voice, round(1 / stretch, 2))
    festival.setdefault((voice, stretch), []).append((path, text.replace("colour", "color").replace('"', "")))


def spoken(address: str, words: str) -> str:
    return RNG.choice([f"{address} {words}", f"{address} {words}", f"{address}, {words}", f"{address}, {words}.", f"{address} {words}!"])


def training_variants() -> list[str]:
    held = set(HELD["test"]["espeak-ng"]) | set(HELD["development"]["espeak-ng"])
    return [v for v in VOICES["espeak-ng"]["variants"] if v not in held]


def positives(small: bool) -> None:
    variants, words = training_variants(), read_phrases()
    for address in words[0]:
        for command, phrase in words[1].items():
            label = f"{address}|{command}"
            for _ in range(2 if small else 58):
                espeak("train", spoken(address, phrase), label, variants)
            for voice, count in (("awb", 1 if small else 9), ("kal16", 0 if small else 4)):
                for _ in range(count):
                    flite("train", spoken(address, phrase), label, voice, RNG.choice([.85, .92, 1., 1.1, 1.2]), RNG.choice([.8, 1., 1., 1.25]))
            for stretch in () if small else (.85, 1., 1.18):
                fest("train", spoken(address, phrase), label, "kal_diphone", stretch)
    for command, phrase in words[1].items():
        address = words[0][len(command) % 2]
        for voice in HELD["development"]["espeak-ng"]:
            espeak("development", f"{address} {phrase}", f"{address}|{command}", [voice])
        for stretch in () if small else (.87, 1., 1.15):
            fest("development", f"{address} {phrase}", f"{address}|{command}", "ked_diphone", stretch)
        for stretch in (1.,) if small else (.85, 1., 1.18):
            for voice in HELD["test"]["flite"]:
                flite("test", f"station {phrase}", f"station|{command}", voice, stretch)
            if not small:
                fest("test", f"station {phrase}", f"station|{command}", "cmu_us_slt_arctic_hts", stretch)
        for voice in HELD["test"]["flite"]:
            flite("test", f"workbench {phrase}", f"workbench|{command}", voice, 1.)
        for voice in HELD["test"]["espeak-ng"]:
            espeak("test", f"station {phrase}", f"station|{command}", [voice], RNG.choice([150, 170, 195]))


def anyone(split: str, text: str, voices: list[str], small: bool) -> None:
    draw, stretch = RNG.random(), RNG.choice([.85, 1., 1.15])
    if split == "train":
        if draw < .62 or small:
            espeak(split, text, "none", voices)
        elif draw < .84:
            flite(split, text, "none", RNG.choice(["awb", "awb", "kal16"]), stretch, RNG.choice([.8, 1., 1.25]))
        else:
            fest(split, text, "none", "kal_diphone", stretch)
    elif split == "development":
        fest(split, text, "none", "ked_diphone", stretch) if draw < .5 and not small else espeak(split, text, "none", voices)
    elif draw < .7 or small:
        flite(split, text, "none", RNG.choice(HELD["test"]["flite"]), stretch)
    else:
        espeak(split, text, "none", voices)


def negatives(small: bool) -> None:
    words, phrases = read_phrases()
    train = (AROUND * 4 + TALK_A * 4 + ANNOUNCE_A * 6 + words * 25 + SOUND_ALIKE * 4 + list(phrases.values()) * 6
             + near_misses(random.Random(1), 1100))
    dev = AROUND + TALK_A + ANNOUNCE_A + list(phrases.values()) + near_misses(random.Random(2), 260)
    test = TALK_B * 5 + ANNOUNCE_B * 4 + words * 10 + list(phrases.values()) * 3 + SOUND_ALIKE * 2 + near_misses(random.Random(3), 420)
    for split, texts in (("train", train), ("development", dev), ("test", test)):
        voices = training_variants() if split == "train" else HELD[split]["espeak-ng"]
        for text in RNG.sample(texts, 40) if small else texts:
            anyone(split, text, voices, small)


def festival_scripts() -> None:
    for (voice, stretch), items in festival.items():
        for first in range(0, len(items), 80):
            script = OUT / f"{voice}_{stretch}_{first}.scm"
            lines = [f"(voice_{voice})", f"(Parameter.set 'Duration_Stretch {stretch})"]
            lines += [f'(set! u (Utterance Text "{t}"))(utt.synth u)(utt.save.wave u "{p}" \'riff)' for p, t in items[first:first + 80]]
            script.write_text("\n".join(lines) + "\n")
            commands.append(["festival", "-b", str(script)])


def run(command: list[str]) -> None:
    subprocess.run(command, stdout=subprocess.DEVNULL, stderr=subprocess.DEVNULL, timeout=600, check=False)


if __name__ == "__main__":
    small = "--small" in sys.argv
    OUT.mkdir(parents=True, exist_ok=True)
    positives(small)
    negatives(small)
    festival_scripts()
    RNG.shuffle(commands)
    print(len(rows), "clips", flush=True)
    with ThreadPoolExecutor(2) as pool:
        list(pool.map(run, commands))
    kept = [r for r in rows if Path(r["path"]).exists() and Path(r["path"]).stat().st_size > 2000]
    (OUT / "clips.json").write_text(json.dumps(kept))
    print(len(kept), "rendered,", len(rows) - len(kept), "failed")
