/** Microphone and speaker tried on the prepare screen, before any session: the app speaks for itself, without a queue. */
import { bookFor, type SpokenLanguage } from "../announcements/phrasebooks";
import { sayCheck, sayEarTrouble, saySoundCheck } from "../announcements/sayNotice";
import { textOf, type Utterance } from "../announcements/utterance";
import type { Voice } from "../announcements/voice";
import { type AddressWord, type CommandId, commandIds } from "../intent/phrases";
import { LevelMeter, type SoundSource } from "../microphone";
import {
  artistDb,
  beginSoundCheck,
  type SoundCheck,
  type SoundCircumstances,
  tookLevel,
  triedPhrases,
  understood,
} from "../microphone/soundCheck";
import { doesListen, type PrepareView, type SoundCheckView } from "../screen/model";
import type { Hearing } from "./wireHearing";

/** Turns of a session count from one; these stand far above them. */
const firstTurn = 1_000_000;
/** What the companion said still rings in the room. */
const ringsOnMs = 400;

export interface SoundTrialParts {
  readonly voice: Voice;
  readonly hearing: Hearing;
  readonly openMicrophone: () => SoundSource;
  readonly change: (part: Partial<PrepareView>) => void;
  readonly language: () => SpokenLanguage;
}

export function soundTrial({ voice, hearing, openMicrophone, change, language }: SoundTrialParts) {
  const book = () => bookFor(language());
  let turn = firstTurn;
  let isSpeaking = false;
  let quietFromMs = 0;
  let check: SoundCheck | null = null;
  let meter: LevelMeter | null = null;

  const say = (utterance: Utterance): void => {
    turn += 1;
    isSpeaking = true;
    change({ speaking: textOf(utterance) });
    voice.speak(turn, utterance);
  };
  voice.onEnded((ended) => {
    if (ended !== turn) return;
    isSpeaking = false;
    quietFromMs = performance.now() + ringsOnMs;
    change({ speaking: null });
  });
  hearing.condition.subscribe(() => change({ ear: hearing.condition.now }));

  const around = (): SoundCircumstances => ({
    noiseSuppression: hearing.processing()?.noiseSuppression === true,
    isBusy: hearing.condition.now === "slow" || hearing.quality.now.droppedMs > 0,
  });

  const goOn = (next: SoundCheck): void => {
    const before = check;
    if (before === null || next === before) return;
    check = next;
    if (next.stage === "phrase" && before.stage === "machine") say(sayCheck(book(), "phrases"));
    if (next.verdict) {
      check = null;
      hearing.hearArtistAt(artistDb(next.verdict, hearing.processing()?.autoGainControl === true));
      say(sayCheck(book(), next.verdict.grade));
    }
    if (next.stage !== before.stage || next.phrase !== before.phrase) change({ soundCheck: shown(next) });
  };

  /** The companion's own words are no part of what is measured. */
  hearing.tap((samples, rateHz) => {
    if (check === null || isSpeaking || performance.now() < quietFromMs || !doesListen(hearing.condition.now)) return;
    meter ??= new LevelMeter(rateHz);
    for (const level of meter.take(samples)) if (check) goOn(tookLevel(check, level, around()));
  });

  const listen = (address: AddressWord): void => {
    hearing.allow(new Set<CommandId>(commandIds));
    hearing.listen(
      openMicrophone(),
      address,
      {
        heard: (heard) => {
          if (heard.kind !== "understood") return;
          change({ lastHeard: heard.command });
          if (check && !isSpeaking) goOn(understood(check, heard.command, around()));
        },
        talk: () => undefined,
        lost: (because) =>
          say(sayEarTrouble(book(), because === "denied" ? "denied" : because === "no-device" ? "none" : "lost")),
        back: () => undefined,
      },
      language(),
    );
  };

  return {
    speaker: () => say(saySoundCheck(book())),
    microphone(isOn: boolean, address: AddressWord): void {
      check = null;
      change({ soundCheck: null, lastHeard: null });
      if (isOn) listen(address);
      else hearing.stop();
    },
    check(address: AddressWord): void {
      if (!doesListen(hearing.condition.now)) listen(address);
      meter = null;
      check = beginSoundCheck;
      // Whoever is checked now may sit farther away than the last.
      hearing.hearArtistAt(null);
      change({ soundCheck: shown(check) });
      say(sayCheck(book(), "machine"));
    },
  };
}

const shown = ({ stage, phrase, heard, verdict }: SoundCheck): SoundCheckView => ({
  stage,
  ask: stage === "phrase" ? (triedPhrases[phrase] ?? null) : null,
  heard,
  verdict,
});
