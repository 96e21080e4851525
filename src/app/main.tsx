/**
 * Where the real things are wired. First what the prepare screen needs: log, protocols, words; once it stands, the
 * companion with its ear and voice, and what a session needs. Read it, and `wakeCompanion.ts`, to see the whole.
 */
import "./jitless";
import "@fontsource-variable/atkinson-hyperlegible-next/wght.css";
import "../screen/tokens.css";
import { StrictMode } from "react";
import { createRoot } from "react-dom/client";
import { codeCamera } from "../barcode/codeCamera";
import { archive } from "../finding/archive";
import { fetchedOnce } from "../screen/fetchedOnce";
import { Screen } from "../screen/Screen";
import { fetchedWords } from "../screen/words/fetchedWords";
import { logTrouble } from "../screen/words/logTrouble";
import { indexedDbStudio } from "../studio/studioStore";
import { createApp } from "./app";
import { checkInWorker } from "./checkInWorker";
import { saveFile } from "./device";
import { deviceMemory } from "./deviceMemory";
import { devicePack } from "./devicePack";
import { onceShown } from "./onceShown";
import { wireBeside } from "./wireBeside";
import { wireHandOver } from "./wireHandOver";
import { wireKeeping } from "./wireKeeping";
import { wireKeys } from "./wireKeys";
import { deviceLog } from "./wireLog";
import { wireLook } from "./wireLook";
import { wireOffline } from "./wireOffline";
import { moveTexts, wireProtocols } from "./wireProtocols";
import { wireStudio } from "./wireStudio";

const base = new URL("./", document.baseURI).href;
const place = document.getElementById("app");
if (!place) throw new Error("the page has no place for the app");

const offline = wireOffline();
const memory = deviceMemory(localStorage, sessionStorage, navigator.languages);
const language = () => memory.settings().language;
const words = fetchedWords();
/** Said where not even the words of a language have arrived. */
const notWhole =
  "Gloveside did not arrive whole: load this page again. · Gloveside no llegó completo: vuelve a cargar.";
const wordsHere = words.fetch(language()).catch((error) => {
  place.textContent = notWhole;
  throw error;
});
const [log] = await Promise.all([deviceLog(memory.keepLoss), wordsHere]);
const camera = codeCamera();
const speech = fetchedOnce(async () => {
  const { announcementOf, wireVoice } = await import("./wireVoice");
  return { announcementOf, ...(await wireVoice(base, language())) };
});
const studioStore = indexedDbStudio();
const vault = log.ok ? log.log.vault : null;
const whyLocked = async () => {
  const unread = (await vault?.state())?.unread ?? 0;
  if (unread === 0) return null;
  const { archiveWords } = await import("../screen/archive/words");
  return archiveWords(language()).lock.notWhole(unread);
};
const studio = log.ok
  ? wireStudio(
      studioStore,
      log.log.journal,
      async () => (await speech.get()).voice,
      whyLocked,
      (code) => logTrouble(words.in(language()), code),
      language,
    )
  : null;
const protocols =
  studio &&
  wireProtocols({
    studio,
    check: checkInWorker,
    checkedBy: import.meta.env.CHECKER_DIGEST,
    nowMs: Date.now,
    saveFile,
    heardAs: (step) => speech.now?.voice.heardAs(speech.now.announcementOf(step, language())) ?? "nothing",
    preview: (step) => speech.now && studio.say(speech.now.announcementOf(step, language()).parts),
    language,
    words: () => words.in(language()),
  });
if (protocols) void moveTexts(memory, protocols);
const app = await createApp({
  log,
  protocols,
  async wake(told) {
    const [{ wakeCompanion }, voice] = await Promise.all([import("./wakeCompanion"), speech.get()]);
    return wakeCompanion({ ...told, memory, voice, camera, base, fetchWords: words.fetch });
  },
  words,
  memory,
  device: devicePack(base),
  base,
  update: offline.update,
});
offline.onState(app.setOffline);
offline.spare(app);
wireKeys(app);
wireLook(app);
const keeping =
  log.ok && studio && protocols
    ? wireKeeping({ log: log.log, store: studioStore, studio, memory, addProtocol: protocols.add })
    : null;
const beside = log.ok ? wireBeside(log.log.journal) : null;
const handOver = wireHandOver(base, log.ok ? log.log.signer.publicKey : null);
createRoot(place).render(
  <StrictMode>
    <Screen
      model={app}
      parts={{
        studio,
        camera,
        protocols,
        archive: log.ok ? archive(undefined, vault ?? undefined) : null,
        keeping,
        beside,
        handOver,
      }}
    />
  </StrictMode>,
);
onceShown(async () => {
  await app.wake();
  // Only now: what is kept for offline work comes over the same slow network.
  offline.keep();
  void keeping?.settleRestore();
});
