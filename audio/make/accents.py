"""
English or Spanish words spelled for synthesisers of other languages, so that their voices say them with a foreign accent:
espeak-ng gives the sounds, each sound becomes the letters that the other language would write. Heavily accented, and meant so.
"""
import functools
import re
import subprocess

# The first match wins; what is not named is left out. Order: affricates and diphthongs before single sounds.
SOUNDS = ("tʃ dʒ eɪ aɪ aʊ ɔɪ oʊ əʊ iə eə ʊə ɪə iː uː ɑː ɔː ɜː oːɹ ɑːɹ ɔːɹ ɛɹ ɪɹ ɚ i u ɑ ɒ ɔ ɜ ɛ e æ a ʌ ɐ ə ᵻ ɪ ʊ o p b t d k ɡ f v θ ð "
          "s z ʃ ʒ h x m n ŋ ɲ l ʎ ɫ ɹ r ɾ ɚɹ w j β ɣ ʝ").split()
ITALIAN = dict(zip(SOUNDS, ("c g ei ai au oi ou ou ia ea ua ia i u a o er or ar or er ir er i u a o o er e e e a a a e i i u o p b t d k g "
                            "f v t d s s sc g h h m n ng gn l gl l r r r r u i b g i").split()))
CZECH = dict(zip(SOUNDS, ("č dž ej aj au oj ou ou ía éa úa ía í ú á ó ér ór ár ór ér ír r i u a o o e e e e a a a e i i u o p b t d k g "
                          "f v t d s z š ž h ch m n ng ň l lj l r r r r v j b g j").split()))
FINNISH = dict(zip(SOUNDS, ("ts ts ei ai au oi ou ou ia ea ua ia ii uu aa oo öö oor aar oor er ir ör i u a o o ö e e ä a a a ö i i u o p b t d "
                            "k g f v t d s s s s h h m n ng nj l lj l r r r r v j b g j").split()))
CATALAN = dict(zip(SOUNDS, ("tx tj ei ai au oi ou ou ia ea ua ia i u à ó er or ar or er ir e i u a o o e è e a a a e e i i u o p b t d k g "
                            "f v t d ss z x j r r m n ng ny l ll l r r r r u i b g i").split()))
RUSSIAN = dict(zip(SOUNDS, ("ч дж эй ай ау ой оу оу иа эа уа иа и у а о эр ор ар ор эр ир эр и у а о о э э э э а а а э ы и у о п б т д к г "
                            "ф в т д с з ш ж х х м н нг нь л ль л р р р р у й б г й").split()))
LETTERS = {"italian": (ITALIAN, "latin-1"), "czech": (CZECH, "iso-8859-2"), "finnish": (FINNISH, "latin-1"),
           "catalan": (CATALAN, "latin-1"), "russian": (RUSSIAN, "utf-8")}


@functools.lru_cache(None)
def ipa(text: str, voice: str) -> str:
    made = subprocess.run(["espeak-ng", "-q", "--ipa", "-v", voice, text], capture_output=True, text=True, check=True).stdout
    return re.sub(r"[ˈˌ‿]", "", " ".join(made.split()))


def spelled(text: str, language: str, voice: str = "en-us") -> str:
    letters = LETTERS[language][0]
    out, at, sounds = "", 0, ipa(text, voice)
    while at < len(sounds):
        match = next((s for s in SOUNDS if sounds.startswith(s, at)), None)
        out += letters[match] if match else " " if sounds[at] == " " else ""
        at += len(match) if match else 1
    return out
