/** How the lock of the records stands, asked again after each act on it. */
import { useCallback, useEffect, useState } from "react";
import type { Vault, VaultState } from "../../log/vault";

export function useVault(vault: Vault | null): { state: VaultState | null; ask: () => Promise<void> } {
  const [state, setState] = useState<VaultState | null>(null);
  const ask = useCallback(async () => {
    if (vault) setState(await vault.state());
  }, [vault]);
  useEffect(() => {
    void ask().catch(() => undefined);
  }, [ask]);
  return { state, ask };
}
