"""
Renders every training, development and test clip of one language into out/<language>/tts (never committed).
`VOICE_LANGUAGE=en|es python3 audio/make/render.py [--small]`; seed and plan in manifest.json. Needs the packages of manifest.json (GnuSpeech: see gnuspeech.mjs).
"""
import json
import os
import random
import subprocess
import sys
from concurrent.futures import ProcessPoolExecutor
from multiprocessing import get_context
from pathlib import Path

import accents
from phrase_list import LANGUAGE, MINE, ROOT, read_phrases
from texts import ANNOUNCE_A, ANNOUNCE_B, AROUND, SOUND_ALIKE, TALK_A, TALK_B, holds_phrase, near_misses, near_words

HERE, OUT = Path(__file__).resolve().parent, MINE / "tts"
HELD, VOICES = (json.loads((HERE / f).read_text()) for f in ("held-out.json", "manifest.json"))
RNG = random.Random(VOICES["train"]["seed"])
ENGLISH = LANGUAGE == "en"
SPEEDS = {"slow": 1.18, "natural": 1., "quick": .85}
PLAN = VOICES["train"]
"""How many training clips of each phrase behind each address word, and the share of what is no phrase, by voice."""
SPANISH_COUNTS = {"espeak": 16, **{v: n for v, n in PLAN["phraseClips"].items() if v in VOICES["accents"]}}
FOREIGN = [v for v in PLAN["phraseClips"] if v in VOICES["accents"]]
SPLITS = os.environ.get("RENDER_SPLITS", "train,development,test").split(",")
TRAINING_ENGINES = os.environ.get("RENDER_TRAINING", "espeak-ng,flite,festival,gnuspeech,accent,rhvoice,pico").split(",")
"""What is not named here is planned all the same, so that all draws stay as they are, and left for another machine to render."""
rows: list[dict] = []
commands: list[list[str]] = []
festival: dict[tuple[str, float], list[tuple[str, str]]] = {}
gnuspeech: list[dict] = []
read_in: dict[str, str] = {}
"""What a synthesiser reads from its standard input, by the file it writes."""


def add(split: str, text: str, label: str, engine: str, voice: str, speed: float) -> str:
    path = str(OUT / f"{len(rows):06d}.wav")
    rows.append({"path": path, "split": split, "text": text, "label": label, "engine": engine, "voice": voice, "speed": round(speed, 2)})
    return path


def is_mine(split: str, engine: str) -> bool:
    return split in SPLITS and (split != "train" or engine in TRAINING_ENGINES)


def american(text: str) -> str:
    return text.replace("colour", "color").replace('"', "")


def espeak(split: str, text: str, label: str, variant: str, wpm: int | None = None) -> None:
    voice = f"{RNG.choice(VOICES['espeak-ng']['accents'][LANGUAGE])}+{variant}"
    wpm = wpm or max(120, min(235, round(RNG.gauss(168, 26))))
    path = add(split, text, label, "espeak-ng", voice, wpm / 170)
    pitch = str(RNG.randint(22, 78))
    if is_mine(split, "espeak-ng"):
        commands.append(["espeak-ng", "-v", voice, "-s", str(wpm), "-p", pitch, "-w", path, text])


def flite(split: str, text: str, label: str, voice: str, stretch: float, pitch: float = 1.0) -> None:
    path = add(split, text, label, "flite", voice, 1 / stretch)
    hertz = VOICES["flite"]["pitchHz"][voice] * pitch
    if is_mine(split, "flite"):
        commands.append(["flite", "-voice", voice, "--setf", f"duration_stretch={stretch}", "--setf",
                         f"int_f0_target_mean={hertz:.0f}", "-t", american(text), "-o", path])


def rhvoice(split: str, text: str, label: str, voice: str, stretch: float, pitch: float = 1.0) -> None:
    path = add(split, text, label, "rhvoice", voice, 1 / stretch)
    if is_mine(split, "rhvoice"):
        read_in[path] = american(text)
        commands.append(["RHVoice-test", "-p", voice, "-q", "min", "-r", f"{100 / stretch:.0f}", "-t", f"{100 * pitch:.0f}", "-o", path])


def pico(split: str, text: str, label: str, voice: str, stretch: float, pitch: float = 1.0) -> None:
    path = add(split, text, label, "pico", voice, 1 / stretch)
    marked = f"<speed level='{100 / stretch:.0f}'><pitch level='{100 * pitch:.0f}'>{american(text)}</pitch></speed>"
    if is_mine(split, "pico"):
        commands.append(["pico2wave", "-l", voice, "-w", path, marked])


def fest(split: str, text: str, label: str, voice: str, stretch: float) -> None:
    path = add(split, text, label, "festival", voice, 1 / stretch)
    if is_mine(split, "festival"):
        festival.setdefault((voice, stretch), []).append((path, american(text)))


def foreign(split: str, text: str, label: str, voice: str, stretch: float) -> None:
    path = add(split, text, label, "accent", voice, 1 / stretch)
    if is_mine(split, "accent"):
        said = accents.spelled(text, VOICES["accents"][voice]["language"], "en-us" if ENGLISH else "es")
        festival.setdefault((voice, stretch), []).append((path, said))


def gnu(split: str, text: str, label: str, voice: str, stretch: float) -> None:
    path = add(split, text, label, "gnuspeech", voice, 1 / stretch)
    if is_mine(split, "gnuspeech"):
        gnuspeech.append({"path": path, "text": american(text), "voice": voice, "tempo": round(1.1 / stretch, 2)})


def say(split: str, text: str, label: str, engine: str, voice: str, stretch: float) -> None:
    """One clip by a named voice; espeak-ng speaks 170 words a minute at stretch 1."""
    if engine == "espeak-ng":
        espeak(split, text, label, voice, round(170 / stretch))
    else:
        {"flite": flite, "festival": fest, "gnuspeech": gnu, "accents": foreign}[engine](split, text, label, voice, stretch)


def spoken(address: str, words: str) -> str:
    return RNG.choice([f"{address} {words}", f"{address} {words}", f"{address}, {words}", f"{address}, {words}.", f"{address} {words}!"])


def training_variants() -> list[str]:
    held = set(HELD["test"]["espeak-ng"]) | set(HELD["development"]["espeak-ng"])
    return [v for v in VOICES["espeak-ng"]["variants"] if v not in held]


def set_aside(split: str) -> list[tuple[str, str]]:
    engines = [e for e in ("flite", "festival", "gnuspeech", "espeak-ng", "accents") if ENGLISH or e in ("espeak-ng", "accents")]
    return [(e, v) for e in engines for v in HELD[split].get(e, [])]


def train(voice: str, text: str, label: str) -> None:
    """One training clip by a voice of the plan, its speed and pitch drawn at random."""
    stretch, pitch = RNG.choice([.82, .9, 1., 1., 1.1, 1.2]), RNG.choice([.78, .88, 1., 1., 1.12, 1.28])
    if voice == "espeak":
        espeak("train", text, label, RNG.choice(training_variants()))
    elif voice in VOICES["rhvoice"]["voices"]:
        rhvoice("train", text, label, voice, stretch, pitch)
    elif voice in VOICES["pico"]["voices"]:
        pico("train", text, label, voice, stretch, pitch)
    elif voice in ("awb", "kal16"):
        flite("train", text, label, voice, stretch, pitch)
    elif voice == "kal_diphone":
        fest("train", text, label, voice, stretch)
    elif voice in ("male", "large_child"):
        gnu("train", text, label, voice, stretch)
    else:
        foreign("train", text, label, voice, stretch)


def positives(small: bool) -> None:
    words, phrases = read_phrases()
    counts = {"espeak": 2} if small else PLAN["phraseClips"] if ENGLISH else SPANISH_COUNTS
    for address in words:
        for command, phrase in phrases.items():
            for voice, count in counts.items():
                for _ in range(count):
                    train(voice, spoken(address, phrase), f"{address}|{command}")
    for split in ("development", "test"):
        for n, (engine, voice) in enumerate(set_aside(split)):
            for k, (command, phrase) in enumerate(phrases.items()):
                for s, stretch in enumerate(list(SPEEDS.values())[(n + k) % 3:][:1] if split == "development" or small else SPEEDS.values()):
                    address = words[(n + k + s) % 3]
                    say(split, f"{address} {phrase}", f"{address}|{command}", engine, voice, stretch)


def anyone(split: str, text: str, small: bool) -> None:
    if split != "train":
        return say(split, text, "none", *RNG.choice(set_aside(split)), RNG.choice([.85, 1., 1.15]))
    shares = {"espeak": 1} if small else PLAN["share"] if ENGLISH else {"espeak": 72, **dict.fromkeys(FOREIGN, 4)}
    train(RNG.choices(list(shares), list(shares.values()))[0], text, "none")


def negatives(small: bool) -> None:
    """What holds a whole phrase on its way is no near miss, and is left out of training."""
    words, phrases = read_phrases()
    many = 1 if ENGLISH else .25
    training = (AROUND * 6 + TALK_A * 6 + ANNOUNCE_A * 6 + words * 40 + SOUND_ALIKE * 6 + list(phrases.values()) * 10
                + near_misses(random.Random(PLAN["seed"]), round(PLAN["nearMisses"] * many))
                + (near_words(random.Random(PLAN["seed"]), PLAN["nearWords"]) if ENGLISH else []))
    training = [t for t in training if not holds_phrase(t)]
    dev = AROUND + TALK_A + ANNOUNCE_A + list(phrases.values()) + near_misses(random.Random(2), 300)
    test = TALK_B * 6 + ANNOUNCE_B * 4 + words * 10 + list(phrases.values()) * 3 + SOUND_ALIKE * 2 + near_misses(random.Random(3), 600)
    for split, texts in (("train", training), ("development", dev), ("test", test)):
        for text in RNG.sample(texts, 40) if small else texts:
            anyone(split, text, small)


def festival_scripts() -> None:
    for (voice, stretch), items in festival.items():
        coding = accents.LETTERS[VOICES["accents"][voice]["language"]][1] if voice in VOICES["accents"] else "utf-8"
        for first in range(0, len(items), 80):
            script = OUT / f"{voice}_{stretch}_{first}.scm"
            lines = [f"(voice_{voice})", f"(Parameter.set 'Duration_Stretch {stretch})"]
            lines += [f'(set! u (Utterance Text "{t}"))(utt.synth u)(utt.save.wave u "{p}" \'riff)' for p, t in items[first:first + 80]]
            script.write_bytes(("\n".join(lines) + "\n").encode(coding, "replace"))
            commands.append(["festival", "-b", str(script)])


def gnuspeech_jobs() -> None:
    for first in range(0, len(gnuspeech), 60):
        path = OUT / f"gnuspeech_{first}.json"
        path.write_text(json.dumps(gnuspeech[first:first + 60]))
        commands.append(["node", str(HERE / "gnuspeech.mjs"), str(path)])


def run(command: list[str]) -> None:
    made = next((word for word in command if word.startswith(str(OUT)) and word.endswith(".wav")), None)
    if made and Path(made).exists() and Path(made).stat().st_size > 2000:
        return
    subprocess.run(command, input=read_in.get(made, ""), text=True, stdout=subprocess.DEVNULL, stderr=subprocess.DEVNULL, timeout=600, check=False)


if __name__ == "__main__":
    small = "--small" in sys.argv
    os.environ.setdefault("GNUSPEECH", str(ROOT / "out/gnuspeech/node_modules/@echogarden/gnuspeech-wasm"))
    OUT.mkdir(parents=True, exist_ok=True)
    positives(small)
    negatives(small)
    festival_scripts()
    gnuspeech_jobs()
    RNG.shuffle(commands)
    first = {r["path"]: r["split"] != "train" for r in rows}
    commands.sort(key=lambda command: next((first[word] for word in command if word in first), False))
    print(len(rows), "clips", flush=True)
    with ProcessPoolExecutor(int(os.environ.get("RENDER_JOBS", "2")), get_context("fork")) as pool:
        list(pool.map(run, commands, chunksize=8))
    kept = [r for r in rows if Path(r["path"]).exists() and Path(r["path"]).stat().st_size > 2000]
    (OUT / "clips.json").write_text(json.dumps(kept))
    print(len(kept), "rendered,", len(rows) - len(kept), "failed")
