/** What a chosen file came to: offered, a draft with the first thing found, or no protocol, with the place in the file. */
import { troubleWords } from "../../session/troubleWords";
import { addressOf } from "../pages/page";
import styles from "../prepare/ProtocolChoice.module.css";
import { useShared } from "../useModel";
import type { Added } from "./protocolsModel";

export function AddedWords({ added }: { added: Added }) {
  const { language, words } = useShared();
  const w = words.addedFile;
  switch (added.kind) {
    case "proved":
      return (
        <p>
          {w.proved(added.name)} {added.id !== added.idInFile && w.renamed(added.id)}
        </p>
      );
    case "there":
      return <p>{w.there(added.name)}</p>;
    case "draft":
      return (
        <p className={styles.trouble} data-code="draft">
          {w.draft(added.name, added.why)} <a href={addressOf("protocols", added.id)}>{w.open}</a>
        </p>
      );
    case "trouble":
      return (
        <p className={styles.trouble} data-code={added.trouble.code}>
          <b>{w.not}</b> {added.trouble.says(troubleWords(language))} <code>{added.trouble.at}</code>
        </p>
      );
    case "notKept":
      return (
        <p className={styles.trouble} data-code="notKept">
          <b>{w.not}</b> {added.words}
        </p>
      );
  }
}
