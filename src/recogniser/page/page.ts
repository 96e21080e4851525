/** The ear alone: microphone, worker, SpeechRecognition, and a list of what was heard. For trying and for measuring. */
import { type AddressWord, addressWords, type CommandId, commandIds } from "../../intent/phrases";
import type { PhraseLanguage } from "../../intent/wording";
import { microphone, observed } from "../../microphone";
import { LocalEngine } from "../engine/localEngine";
import { folderFor } from "../engine/modelFolder";
import { workerEar } from "../engine/workerEar";
import { polyfillSpeechRecognition, speechRecognitionOn } from "../webSpeech";

const wishes = new URLSearchParams(location.search);
const address: AddressWord = addressWords.find((word) => word === wishes.get("address")) ?? "station";
const allowed = (wishes.get("allowed")?.split(",") ?? commandIds) as readonly CommandId[];
const isOn = wishes.get("processing") === "on";

const part = <T extends HTMLElement>(id: string) => document.getElementById(id) as T;
const show = (state: string) => {
  part("state").textContent = state;
};
const list = (entry: object) => {
  const line = document.createElement("li");
  line.textContent = JSON.stringify(entry);
  part("heard").append(line);
};

const mic = microphone({ processing: { echoCancellation: isOn, noiseSuppression: isOn, autoGainControl: isOn } });
const source = observed(mic, (event) => {
  if (event.type === "level") part<HTMLMeterElement>("level").value = 20 * Math.log10(Math.max(event.rms, 1e-4));
  else if (event.type !== "sound") list({ microphone: event });
});

const openEar = (language: PhraseLanguage) => {
  const ear = workerEar(new URL(`./voice/${folderFor(language)}`, document.baseURI));
  ear.onReport((report) => {
    if (report.type !== "heard") list({ ear: report });
    else list({ heard: report.heard });
  });
  return ear;
};

const engine = new LocalEngine({ source, ear: openEar, address });
const Recognition = speechRecognitionOn(engine);
// Where the browser has none, it is there under its own name; beside a native one, under a name of ours.
polyfillSpeechRecognition(globalThis, engine);
Object.assign(globalThis, { OwnSpeechRecognition: Recognition });
const recognition = new Recognition();
recognition.lang = "en-GB";
recognition.continuous = true;
recognition.processLocally = true;
recognition.maxAlternatives = 2;
recognition.allow(allowed);
for (const type of [
  "audiostart",
  "soundstart",
  "speechstart",
  "speechend",
  "soundend",
  "audioend",
  "start",
  "end",
] as const) {
  recognition.addEventListener(type, () => show(type));
}
recognition.onresult = ({ results, resultIndex }) => list({ transcript: results[resultIndex]?.[0]?.transcript });
recognition.onerror = ({ error, message }) => list({ error, message });

part("listen").onclick = async () => {
  if (await Recognition.install({ langs: ["en-GB"] })) recognition.start();
};
part("stop").onclick = () => recognition.stop();
