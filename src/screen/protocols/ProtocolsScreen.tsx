/** The studio's procedures: the list of them, or the one that the address names. */
import type { Protocol } from "../../session/protocol";
import { bundledProtocols } from "../../session/protocols";
import { addressOf } from "../pages/page";
import type { PageProps } from "../pages/screens";
import { usePageRest } from "../pages/usePage";
import { useStudio, useStudioNow } from "../sums/useStudio";
import { useShared } from "../useModel";
import { Editor } from "./Editor";
import { ProtocolList } from "./ProtocolList";
import type { ProtocolsModel } from "./protocolsModel";
import { useProtocolWords } from "./useProtocolWords";

export function ProtocolsScreen({ view }: PageProps) {
  const { protocols, words } = useShared();
  const id = usePageRest();
  const { at } = useStudioNow();
  if (!protocols || at === "opening") return <p role="status">{words.pages.fetching}</p>;
  if (id === null) return <ProtocolList protocols={protocols} importing={view.importing} zone={view.zone} />;
  return <Opened key={id} id={id} protocols={protocols} />;
}

/** As it is when it is opened; what is kept while it is edited does not open it again. */
function Opened({ id, protocols }: { id: string; protocols: ProtocolsModel }) {
  const w = useProtocolWords().list;
  const studio = useStudio();
  const bundled = bundledProtocols.find((one) => one.id === id);
  const draft = studio.protocolDraft.get(id);
  const own = studio.protocol.get(id)?.protocol;
  const first: Protocol | undefined = bundled ?? draft?.protocol ?? own;
  if (!first) {
    return (
      <>
        <p role="alert">{w.gone}</p>
        <p>
          <a href={addressOf("protocols")}>{w.back}</a>
        </p>
      </>
    );
  }
  const saved = bundled ?? (draft ? draft.saved : (own ?? null));
  return <Editor first={first} saved={saved} isReadOnly={bundled !== undefined} protocols={protocols} />;
}
