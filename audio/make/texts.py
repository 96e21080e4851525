"""
Sentences that are no command: near-misses made from the phrases themselves, sound-alikes of the address words, talk as it
goes on around a tattoo, and announcements in the companion's own style. Lists A train, lists B only test.
"""
import json
import random
import re
from pathlib import Path

import texts_es
from phrase_list import LANGUAGE, read_phrases

NEAR = json.loads((Path(__file__).resolve().parent / "near-words.json").read_text())["near"]
"""English: for each word of the phrases others that are said nearly alike, the nearest first; none that a listener would let pass."""

SOUND_ALIKE = ("nation;patience;relation;location;vacation;stationary;stationery;stages;staging;statement;stay shy;stay in;"
               "statue;state of it;state;occasion;formation;sensation;situation;starting;station wagon;gas station;"
               "radio station;police station;workbook;work band;workman;workshop;work;bench;workpiece;workplace;"
               "work mention;what bench;park bench;wooden bench;work ends;were benched;champion;company;companions;compassion;canyon;opinion;"
               "campaign;onion;travel companion;company man;come on in;the pinion;complain;compare one;companionship").split(";")
AROUND = ("we went to the station and then we came back;the station is next to the bank;the next station is closed;"
          "is your workstation clean;my workbench at home is a mess;put it on the workbench over there;"
          "which station is free today;she works at the station by the window;the workbench needs a new lamp;"
          "the radio station plays this all day;station to station;my own workbench;clean the station please;"
          "I am done with the station;he completed the course;it's completed now;can you say it again;say that again;"
          "the previous one was better;leave this one here;there's a problem with my car;no problem at all;"
          "hold everything in place;resume the music;how many minutes is that;where are we going now;where were we;"
          "what is remaining on the card;that's affirmative;definitely;definitely maybe;I can vouch for him;"
          "undo the strap;it was a mistake;it doesn't matter here;nothing in there;in stock again;my own idea;"
          "that was my decision;sprayed it twice;all over again;wipe it dry;wait until dry;a pair of gloves;fresh air;"
          "poke through it;the finger hurts;the barrier is there;split it in half;open the door;another one;"
          "a new needle;park it over there;save it for later;extra large;more colour here;it fell down;off the floor;"
          "I touched it;something else please;take a picture;take your time;swap places;the machine is loud;"
          "time for lunch;we need a break;my client is here;walk outside;welcome back everyone;come back in;"
          "I feel dizzy;not feeling well;the ending was great;that is all for today;write a memo;dictate a letter;"
          "the tattoo looks great;is it finished;seal it with film;for the record;what an accident;the alarm went off;"
          "fire alarm;speak up please;just a little;a little softer;like before").split(";")
TALK_A = ("I was thinking we could go a bit bigger on the shoulder;how was your weekend;that one took about four hours;"
          "does it hurt more on the ribs;yeah a little but you get used to it;my sister wants one on her ankle;"
          "could you turn the music up a bit;I love this song;do you want a glass of water;just breathe and keep still;"
          "we can take a rest whenever you need;the lines look really clean;I will do the shading after lunch;"
          "what time does the bus leave;he said he would come by around three;this ink is a bit thinner;"
          "let me stretch the skin here;keep it out of the sun for two weeks;wash it with plain soap and warm water;"
          "don't scratch it even if it itches;my dog ate the whole sandwich;we watched that show about the bakers;"
          "the weather is supposed to be terrible;did you see the game last night;can you lean forward a little;"
          "turn your wrist towards me please;is that position comfortable;pick the one you like best;"
          "it looks like an old engraving;could we make the leaf smaller;right above the elbow;honestly it looks amazing;"
          "do you take cards or only cash;I'll send you the photo when it heals;my phone is dying;"
          "the machine sounds different today;let me check the voltage;give me a moment;we are almost there;"
          "I can't feel my leg anymore;that tickles;sorry I moved;your turn to choose the music;it's been raining;"
          "my brother is a carpenter;we need more paper towels;someone is at the door;tell her I'll call back;"
          "put a thin layer of cream on it;hand me that bottle;the blue one not the green one;where did I put my glasses;"
          "I have no idea;we should go to the beach;my back is killing me").split(";")
TALK_B = ("so how did you two meet anyway;we were neighbours for ten years;she plays the drums in a jazz group;"
          "the kids are finally asleep;I made soup from the leftovers;this chair is older than me;he broke his arm;"
          "I'd like a small swallow behind the ear;you can see the outline already;it feels like a warm scratch;"
          "we close at seven on saturdays;there is a new place across the street;their cakes are too sweet;"
          "did the parcel arrive yet;it should be here by friday;I'm fine just a bit thirsty;could you open the window;"
          "my grandmother had the same ring;the concert was sold out;I need to renew my passport;the train was late again;"
          "he drives a yellow van;the tomatoes are ripe;I have been learning spanish;she works nights at the hospital;"
          "what would you do in my place;the colours settle in a few weeks;keep the wrap on until tonight;"
          "does the lamp bother you;we can cover that with a flower;roses are always popular;it's a very old tradition;"
          "my uncle had an anchor;the shop smells of paint;anything but country;I'll have the same;that was funny;"
          "you are joking;wait until you hear this;I couldn't believe it;the central station was crowded;"
          "he built the workbench himself;a station for every artist;the workbench is next to the sink;"
          "it was completed in two years;we had to hold everything together;there's a problem in the kitchen;"
          "I dropped my keys on the floor;she sealed the envelope;we were on a break;the alarm clock").split(";")
ANNOUNCE_A = ("Spray the tray with surface disinfectant A.;Keep it wet for three minutes.;Two minutes left.;One minute.;"
              "The time is up. Wipe the surface.;Change your gloves.;Step four of nine.;Next, cover the lamp handle.;"
              "I did not hear that.;Shall I skip this step?;Paused.;Going on.;Tell me when the surface is wet.;"
              "The clip cord sleeve comes next.;Noted at ten fifteen.;Please look at the screen.;The record is open.").split(";")
ANNOUNCE_B = ("Spray the armrest.;It has been wet for ninety seconds.;Ten seconds left.;Put on clean gloves.;Step two of six.;"
              "Cover the bottle.;Nothing was recorded.;The needle is not in its packet any more.;Your break has begun.").split(";")

if LANGUAGE == "es":
    SOUND_ALIKE, AROUND, TALK_A, TALK_B = texts_es.SOUND_ALIKE, texts_es.AROUND, texts_es.TALK_A, texts_es.TALK_B
    ANNOUNCE_A, ANNOUNCE_B = texts_es.ANNOUNCE_A, texts_es.ANNOUNCE_B


def holds_phrase(text: str) -> bool:
    """True if somebody who says this says an address word and a whole command on the way, as in "station completed minutes"."""
    words, commands = read_phrases()
    plain = f" {' '.join(re.findall(r'[^ ,.!?;]+', text.lower()))} "
    return any(f" {address} {command.lower()} " in plain for address in words for command in commands.values())


def near_misses(rng: random.Random, count: int) -> list[str]:
    """Address word with a wrong, halved or mixed command, or a command after a sound-alike: no two phrases alike."""
    words, commands = read_phrases()
    phrases = [c.split() for c in commands.values()]
    known = {" ".join(p) for p in phrases}
    out: list[str] = []
    while len(out) < count:
        a, b, kind = rng.choice(phrases), rng.choice(phrases), rng.randrange(8)
        i, j = rng.randint(1, max(1, len(a) - 1)), rng.randint(0, max(0, len(b) - 1))
        if kind == 0:
            text = f"{rng.choice(words)} {' '.join(a[:i])}" if len(a) > 1 else rng.choice(words)
        elif kind == 1:
            text = f"{rng.choice(words)} {' '.join(a[i:])}"
        elif kind in (2, 3):
            mixed = " ".join(a[:i] + b[j:])
            text = f"{rng.choice(words)} {mixed}" if mixed not in known else rng.choice(words)
        elif kind == 4:
            text = f"{rng.choice(SOUND_ALIKE)} {' '.join(a)}"
        elif kind == 5:
            text = " ".join(a)
        elif kind == 6:
            text = f"{rng.choice(words)} {rng.choice(TALK_A + AROUND)}"
        else:
            text = f"{'the' if LANGUAGE == 'en' else 'y'} {' '.join(a)} {' '.join(b)}"
        out.append(text.strip())
    return out


def near_words(rng: random.Random, count: int) -> list[str]:
    """English: phrases with one word that is said nearly alike, another word, a word too few or too many, or another address."""
    words, commands = read_phrases()
    any_word = sorted({w for of in NEAR.values() for w in of if len(w) > 3})
    out: list[str] = []
    while len(out) < count:
        address, said, kind = rng.choice(words), rng.choice(list(commands.values())).lower().split(), rng.randrange(8)
        at = rng.choice([i for i, w in enumerate(said) if w in NEAR])
        if kind in (0, 1):
            said[at] = rng.choice(NEAR[said[at]][:12 if kind else 24])
        elif kind == 2:
            said[at] = rng.choice(any_word)
        elif kind == 3 and len(said) > 2:
            del said[at]
        elif kind == 4:
            said[at:at] = [rng.choice(any_word)] * (at > 0) or [rng.choice(any_word), rng.choice(any_word)]
        elif kind == 5:
            address = rng.choice(NEAR[address])
        elif kind == 6:
            address = " ".join(rng.choices(any_word, k=rng.randint(1, 2)))
        else:
            said = rng.choices(any_word, k=rng.randint(1, 3))
        text = f"{address} {' '.join(said)}"
        if not holds_phrase(text) and all(a != b for a, b in zip(said, said[1:])):
            out.append(text)
    return out
