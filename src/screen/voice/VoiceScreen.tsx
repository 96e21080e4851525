/** Teach it your voice: consent first, then a lesson that needs no hands, then what was learnt and how to be rid of it. */
import { useState, useSyncExternalStore } from "react";
import { addressWords, type CommandId, commandIds } from "../../intent/phrases";
import type { PageProps } from "../pages/screens";
import { Choice, Section, Tick } from "../prepare/Field";
import { useShared } from "../useModel";
import { Lesson } from "./Lesson";
import { TaughtPart } from "./TaughtPart";
import { useVoiceWords } from "./useVoiceWords";
import styles from "./Voice.module.css";

/** What is said most in a session, and the one that must never be missed. */
export const usedMost: readonly CommandId[] = [
  "done",
  "again",
  "back",
  "applied",
  "wiped",
  "yes",
  "no",
  "confirm",
  "freshGloves",
  "howLong",
  "undo",
  "accident",
];
const lessons = ["used", "all", "own"] as const;

export function VoiceScreen({ view }: PageProps) {
  const { teaching, phrases } = useShared();
  const w = useVoiceWords();
  const now = useSyncExternalStore(teaching.subscribe, () => teaching.now);
  const [agrees, setAgrees] = useState(false);
  const [lesson, setLesson] = useState<(typeof lessons)[number]>("used");
  const [address, setAddress] = useState(view.draft.address);
  const [own, setOwn] = useState<CommandId>("done");
  const asked = lesson === "own" ? [own] : lesson === "all" ? commandIds : usedMost;
  if (now.state !== "idle") return <Lesson now={now} address={address} />;
  return (
    <>
      {now.trouble && (
        <p role="alert" className={styles.trouble}>
          {w.troubles[now.trouble]}
        </p>
      )}
      <TaughtPart now={now} />
      <Section title={w.consentTitle}>
        <ul className={styles.points}>
          {w.consent.map((point) => (
            <li key={point}>{point}</li>
          ))}
        </ul>
        <Tick label={w.agree} checked={agrees} onChange={setAgrees} />
      </Section>
      <Section title={w.what} hint={w.whatHint}>
        <Choice
          label={w.what}
          hint={w.lessonAbout[lesson]}
          value={lesson}
          options={lessons.map((each) => [each, w.lessons[each]] as const)}
          onChange={setLesson}
        />
        {lesson === "own" && (
          <label className={styles.own}>
            <span>{w.ownFor}</span>
            <select value={own} onChange={(changed) => setOwn(changed.target.value as CommandId)}>
              {commandIds.map((id) => (
                <option key={id} value={id}>
                  {phrases.commands[id]}
                </option>
              ))}
            </select>
          </label>
        )}
        <Choice
          label={w.address}
          value={address}
          options={addressWords.map((word) => [word, phrases.addresses[word]] as const)}
          onChange={setAddress}
        />
        <button
          type="button"
          className={styles.begin}
          disabled={!agrees}
          onClick={() => teaching.begin(address, asked, lesson === "own")}
        >
          {w.begin}
        </button>
      </Section>
    </>
  );
}
