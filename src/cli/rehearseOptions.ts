/** What `rehearse` was asked for, read and checked before any listening: the sound, the model, the protocol, the clocks. */
import { readFile, stat } from "node:fs/promises";
import { dirname, resolve } from "node:path";
import { pathToFileURL } from "node:url";
import type { ClipManifest } from "../announcements/clips";
import { isZone } from "../due/zone";
import { type AddressWord, addressWords } from "../intent/phrases";
import { readWallTime, wallTime } from "../log";
import { type PhraseModel, readWav, type Sound } from "../recogniser";
import { shippedModel } from "../recogniser/network/shippedModel";
import { shippedClips } from "../rehearsal/clipManifest";
import { type Opened, open } from "../rehearsal/opening";
import type { Protocol } from "../session/protocol";
import { bundledProtocols, protocolById } from "../session/protocols";
import { readProtocol } from "../session/readProtocol";
import { type Answer, answer, quoted, refuse } from "../sums/answer";
import type { Options } from "../sums/commandLine";
import { appVersion } from "./version";
import { codeOf } from "./writeWhole";

const text = { type: "string" } as const;
export const rehearsalOptions = {
  ...{ protocol: text, out: text, address: text, at: text, zone: text, seed: text, model: text },
  brisk: { type: "boolean" },
} as const;

export interface RehearsalWishes {
  readonly sound: Sound;
  readonly model: PhraseModel;
  readonly opened: Opened;
  readonly manifest: ClipManifest;
  readonly folder: string;
}

const usage = (words: string) => refuse("usage", `${words} (see gloveside rehearse --help)`);

export async function readRehearsalOptions(given: Options, nowMs: number): Promise<Answer<RehearsalWishes, string>> {
  const [file, stray] = given.positionals;
  if (file === undefined) return usage("no recording was named");
  if (stray !== undefined) return usage(`${quoted(stray)} is one word too many`);
  const [id, folder] = [given.text("protocol"), given.text("out")];
  if (id === undefined || folder === undefined) return usage(`--${id === undefined ? "protocol" : "out"} is needed`);
  const address = addressWords.find((word) => word === (given.text("address") ?? "station"));
  if (!address)
    return usage(`${quoted(given.text("address") ?? "")} is not an address word: ${addressWords.join(", ")}`);
  const zone = given.text("zone") ?? Intl.DateTimeFormat().resolvedOptions().timeZone;
  if (!isZone(zone)) return usage(`${quoted(zone)} is not an IANA time zone such as Europe/Berlin`);
  const start = readWallTime(given.text("at") ?? wallTime(nowMs));
  if (!start) return usage(`${quoted(given.text("at") ?? "")} is not a time such as 2026-11-25T10:00:00+00:00`);
  const protocol = await findProtocol(id);
  if (!protocol.ok) return protocol;
  const sound = await readSound(file);
  if (!sound.ok) return sound;
  if (!(await canHold(folder))) return refuse("not-written", `${folder}: a folder cannot be made there`);
  const model = await readModel(given.text("model"));
  if (!model.ok) return model;
  const manifest = await shippedClips().catch(() => null);
  if (!manifest)
    return refuse(
      "no-clips",
      "public/clips/en.json cannot be read: without it nobody knows how long an announcement takes",
    );
  const opened = await open({
    protocol: protocol.value,
    brisk: given.on("brisk"),
    address: address satisfies AddressWord,
    startMs: start.epochMs,
    offsetMin: start.offsetMin,
    zone,
    seed: given.text("seed") ?? null,
    phraseModel: model.value.file.binary.sha256,
    appVersion: appVersion(),
  });
  return answer({ sound: sound.value, model: model.value, opened, manifest, folder });
}

async function findProtocol(id: string): Promise<Answer<Protocol, string>> {
  const bundled = protocolById(id);
  if (bundled) return answer(bundled);
  const ids = bundledProtocols.map((protocol) => protocol.id).join(", ");
  if (!id.endsWith(".json")) return usage(`${quoted(id)} is not a protocol: ${ids}, or a file PATH.json`);
  try {
    const read = readProtocol(await readFile(id, "utf8"));
    return read.ok
      ? answer(read.protocol)
      : refuse("protocol", `${id}: at ${read.trouble.at}: ${read.trouble.message}`);
  } catch (problem) {
    return refuse("protocol", `${id}: cannot be read (${codeOf(problem)})`);
  }
}

async function readSound(file: string): Promise<Answer<Sound, string>> {
  try {
    const read = readWav(await readFile(file));
    return read.ok ? answer(read.sound) : refuse("sound", `${file}: ${read.message}`);
  } catch (problem) {
    return refuse("sound", `${file}: cannot be read (${codeOf(problem)})`);
  }
}

async function readModel(folder: string | undefined): Promise<Answer<PhraseModel, string>> {
  const loaded = await shippedModel(folder === undefined ? undefined : pathToFileURL(`${resolve(folder)}/`)).catch(
    () => null,
  );
  if (!loaded) return refuse("model", "the phrase model cannot be read");
  return loaded.ok ? answer(loaded.model) : refuse("model", loaded.message);
}

/** Whether a folder is there or can be made; said before minutes are spent on listening. */
async function canHold(folder: string): Promise<boolean> {
  for (let path = resolve(folder); ; path = dirname(path)) {
    const found = await stat(path).catch((problem: NodeJS.ErrnoException) => problem.code ?? "unknown");
    if (typeof found !== "string") return found.isDirectory();
    if (found !== "ENOENT" || dirname(path) === path) return false;
  }
}
