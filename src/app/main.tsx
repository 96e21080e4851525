/** Where the real things are wired: log, voice, ear, keys, service worker, screens. Read it to see the whole. */
import "./jitless";
import "@fontsource-variable/atkinson-hyperlegible-next/wght.css";
import "../screen/tokens.css";
import { StrictMode } from "react";
import { createRoot } from "react-dom/client";
import { codeCamera } from "../barcode/codeCamera";
import { archive } from "../finding/archive";
import { microphone } from "../microphone";
import { folderFor } from "../recogniser/engine/modelFolder";
import { workerEar } from "../recogniser/engine/workerEar";
import { workerTeacher } from "../recogniser/ownVoice/teachPort";
import { Screen } from "../screen/Screen";
import { indexedDbStudio } from "../studio/studioStore";
import { createApp } from "./app";
import { checkInWorker } from "./checkInWorker";
import { saveFile } from "./device";
import { deviceMemory } from "./deviceMemory";
import { devicePack } from "./devicePack";
import { ownVoiceStore } from "./ownVoiceStore";
import { teachVoice } from "./teachVoice";
import { wireBeside } from "./wireBeside";
import { wireHandOver } from "./wireHandOver";
import { createHearing } from "./wireHearing";
import { wireKeeping } from "./wireKeeping";
import { wireKeys } from "./wireKeys";
import { deviceLog } from "./wireLog";
import { wireLook } from "./wireLook";
import { wireOffline } from "./wireOffline";
import { moveTexts, wireProtocols } from "./wireProtocols";
import { wireStudio } from "./wireStudio";
import { wireVoice } from "./wireVoice";

const base = new URL("./", document.baseURI).href;
const place = document.getElementById("app");
if (!place) throw new Error("the page has no place for the app");

const offline = wireOffline();
const memory = deviceMemory(localStorage, sessionStorage, navigator.languages);
const [log, { voice, played }] = await Promise.all([deviceLog(), wireVoice(base, memory.settings().language)]);
const camera = codeCamera();
const studioStore = indexedDbStudio();
const studio = log.ok ? wireStudio(studioStore, log.log.journal, voice) : null;
const protocols =
  studio &&
  wireProtocols({
    studio,
    check: checkInWorker,
    checkedBy: import.meta.env.CHECKER_DIGEST,
    nowMs: Date.now,
    saveFile,
    heardAs: voice.heardAs,
    language: () => memory.settings().language,
  });
if (protocols) void moveTexts(memory, protocols);
const hearing = createHearing((language) => workerEar(new URL(`voice/${folderFor(language)}`, base)));
const openMicrophone = () => microphone({ played });
const app = await createApp({
  camera,
  log,
  voice,
  protocols,
  hearing,
  openMicrophone,
  teaching: (settings) =>
    teachVoice({
      voice,
      hearing,
      openMicrophone,
      settings,
      base,
      saveFile,
      store: ownVoiceStore(),
      teacher: workerTeacher,
    }),
  memory,
  device: devicePack(base),
  base,
  update: offline.update,
});
offline.onState(app.setOffline);
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
      parts={{ studio, camera, protocols, archive: log.ok ? archive() : null, keeping, beside, handOver }}
    />
  </StrictMode>,
);
