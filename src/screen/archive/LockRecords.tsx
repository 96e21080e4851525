/** On the page of keeping: a lock is set on the records, its passphrase changed, or the lock taken off. */
import { useState } from "react";
import type { Vault } from "../../log/vault";
import { addressOf } from "../pages/page";
import { Section } from "../prepare/Field";
import acts from "../sums/parts/Acts.module.css";
import { Verdict } from "../sums/parts/Verdict";
import { useShared } from "../useModel";
import { isLongEnough, Passphrase } from "./Passphrase";
import { useVault } from "./useVault";
import { archiveWords } from "./words";

type Said = { readonly tone: "yes" | "no"; readonly text: string };

export function LockRecords({ vault }: { vault: Vault }) {
  const { language } = useShared();
  const { lock: w } = archiveWords(language);
  const { state, ask } = useVault(vault);
  const [said, say] = useState<Said | null>(null);
  const [progress, setProgress] = useState<string | null>(null);
  const moved = (done: number, of: number) => setProgress(w.moved(done, of));

  const act = async (doing: () => Promise<Said | null>) => {
    say(null);
    try {
      say(await doing());
    } catch {
      say({ tone: "no", text: w.trouble });
    }
    setProgress(null);
    await ask();
  };
  const begin = (passphrase: string) =>
    act(async () => ((await vault.begin(passphrase, moved)).ok ? null : { tone: "no", text: w.trouble }));
  const change = (next: string, old: string) =>
    act(async () => {
      const done = await vault.change(old, next);
      if (done.ok) return { tone: "yes", text: w.changed };
      return { tone: "no", text: done.code === "wrong-passphrase" ? w.wrong : w.trouble };
    });
  const end = () =>
    act(async () => {
      await vault.end(moved);
      return { tone: "yes", text: w.ended };
    });
  if (!state) return null;
  return (
    <Section title={w.title} hint={w.hint}>
      <div role="status" data-testid="lock">
        <Verdict tone="plain">
          {state.at === "none" ? w.isNone : state.at === "locked" ? w.isLocked(state.away) : w.isOpen(state.away)}
        </Verdict>
        {said && <Verdict tone={said.tone}>{said.text}</Verdict>}
        {state.waiting > 0 && progress === null && <Verdict tone="no">{w.waiting(state.waiting)}</Verdict>}
        {progress !== null && <p>{progress}</p>}
      </div>
      {state.at === "none" && <NewPassphrase act={w.set} isBusy={progress !== null} set={begin} />}
      {state.at === "locked" && (
        <>
          <div className={acts.acts}>
            <a className={acts.act} href={addressOf("records")}>
              {w.toRecords}
            </a>
          </div>
          <details className={acts.more}>
            <summary>{w.forgotten}</summary>
            <p>{w.forgottenAbout}</p>
            <NewPassphrase act={w.anew} isBusy={progress !== null} set={begin} />
          </details>
        </>
      )}
      {state.at === "open" && (
        <>
          <details className={acts.more}>
            <summary>{w.change}</summary>
            <NewPassphrase act={w.change} isBusy={progress !== null} set={change} asksOld />
          </details>
          <div className={acts.acts}>
            <button type="button" disabled={progress !== null} onClick={() => void end()}>
              {w.end}
            </button>
            <p className={acts.note}>{w.endHint}</p>
          </div>
        </>
      )}
      <ul className={acts.note}>
        {w.about.map((note) => (
          <li key={note}>{note}</li>
        ))}
      </ul>
    </Section>
  );
}

interface NewProps {
  readonly act: string;
  readonly isBusy: boolean;
  readonly set: (next: string, old: string) => Promise<void>;
  readonly asksOld?: boolean;
}

/** Typed twice: one slip here would lock the records for good. */
function NewPassphrase({ act, isBusy, set, asksOld = false }: NewProps) {
  const { language } = useShared();
  const { lock: w } = archiveWords(language);
  const [typed, setTyped] = useState({ old: "", next: "", again: "" });
  const { old, next, again } = typed;
  const differs = again !== "" && again !== next;
  const isReady = isLongEnough(next) && again === next && (!asksOld || old !== "");
  const submit = async () => {
    await set(next, old);
    setTyped({ old: "", next: "", again: "" });
  };
  return (
    <>
      {asksOld && (
        <Passphrase label={w.old} value={old} isNew={false} onChange={(value) => setTyped({ ...typed, old: value })} />
      )}
      <Passphrase
        {...(asksOld ? { label: w.next } : {})}
        value={next}
        isNew
        onChange={(value) => setTyped({ ...typed, next: value })}
      />
      <Passphrase
        label={w.again}
        value={again}
        isNew={false}
        onChange={(value) => setTyped({ ...typed, again: value })}
      />
      {differs && <p role="alert">{w.differs}</p>}
      <div className={acts.acts}>
        <button type="button" className={acts.main} disabled={!isReady || isBusy} onClick={() => void submit()}>
          {act}
        </button>
      </div>
    </>
  );
}
