/** Free text by the system's own voice, and only by one that works on the device. */
import type { LocalVoice } from "./speaker";

/** @param language BCP 47, "en". Where there is no speech synthesis at all, it is simply not there. */
export function createLocalVoice(language: string): LocalVoice {
  const synthesis = "speechSynthesis" in globalThis ? globalThis.speechSynthesis : null;
  // Asked each time: browsers find their voices late.
  const voice = (): SpeechSynthesisVoice | undefined =>
    synthesis?.getVoices().find(({ localService, lang }) => localService && lang.toLowerCase().startsWith(language));

  return {
    isThere: () => voice() !== undefined,
    say(text, volume) {
      const own = voice();
      if (!synthesis || !own) return Promise.resolve({ ok: false });
      const words = new SpeechSynthesisUtterance(text);
      words.voice = own;
      words.lang = own.lang;
      words.volume = volume;
      return new Promise((resolve) => {
        words.onend = () => resolve({ ok: true });
        words.onerror = () => resolve({ ok: false });
        synthesis.speak(words);
      });
    },
    stop: () => synthesis?.cancel(),
  };
}
