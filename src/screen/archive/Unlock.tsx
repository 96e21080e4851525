/** On the page of records: the passphrase that opens what lies under the lock, and locking again. */
import { useState } from "react";
import type { Vault } from "../../log/vault";
import { Section } from "../prepare/Field";
import acts from "../sums/parts/Acts.module.css";
import { Verdict } from "../sums/parts/Verdict";
import { useShared } from "../useModel";
import { Passphrase } from "./Passphrase";
import { useVault } from "./useVault";
import { archiveWords } from "./words";

export function Unlock({ vault, changed }: { vault: Vault; changed: () => void }) {
  const { language } = useShared();
  const { lock: w } = archiveWords(language);
  const { state, ask } = useVault(vault);
  const [passphrase, setPassphrase] = useState("");
  const [isBusy, setBusy] = useState(false);
  const [trouble, setTrouble] = useState<string | null>(null);
  if (!state || (state.at === "none" && state.away === 0)) return null;

  const after = async () => {
    setPassphrase("");
    await ask();
    changed();
  };
  const unlock = async () => {
    setBusy(true);
    const done = await vault.unlock(passphrase);
    setTrouble(done.ok ? null : done.code === "wrong-passphrase" ? w.wrong : w.trouble);
    setBusy(false);
    if (done.ok) await after();
  };
  const close = () => {
    vault.close();
    void after();
  };
  return (
    <Section title={w.title} hint={w.hint}>
      <div role="status" data-testid="vault">
        <Verdict tone="plain">
          {state.unread > 0 || state.at === "locked" ? w.isLocked(state.unread) : w.isOpen(state.away)}
        </Verdict>
        {trouble && <Verdict tone="no">{trouble}</Verdict>}
        {state.waiting > 0 && <Verdict tone="no">{w.waiting(state.waiting)}</Verdict>}
      </div>
      {state.unread > 0 || state.at === "locked" ? (
        <form
          onSubmit={(event) => {
            event.preventDefault();
            void unlock();
          }}
        >
          <Passphrase value={passphrase} isNew={false} onChange={setPassphrase} />
          <div className={acts.acts}>
            <button type="submit" className={acts.main} disabled={isBusy || passphrase === ""}>
              {w.unlock}
            </button>
          </div>
        </form>
      ) : (
        <div className={acts.acts}>
          <button type="button" onClick={close}>
            {w.lockNow}
          </button>
        </div>
      )}
    </Section>
  );
}
