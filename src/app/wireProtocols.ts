/**
 * The studio's protocols on this device: what a file holds is read, proved in a thread of its own and only then offered
 * to a session; what is not proved is kept as a draft. After an update of the judging code all are proved again.
 */
import type { HeardAs } from "../announcements/heardAs";
import type { SpokenLanguage } from "../announcements/languages";
import type { Verdict } from "../check/checkProtocol";
import { freeId } from "../drafting/fresh";
import { isProved, proofOf } from "../drafting/kept";
import { protocolDigest } from "../drafting/version";
import type { Added, ProtocolsModel, RunningCheck, Saved } from "../screen/protocols/protocolsModel";
import type { StudioModel } from "../screen/sums/studioModel";
import type { ScreenWords } from "../screen/words/words";
import type { Protocol, Step } from "../session/protocol";
import { bundledProtocols } from "../session/protocols";
import { readProtocol } from "../session/readProtocol";
import { emptyStudio, type Studio } from "../studio/studio";
import type { DeviceMemory } from "./deviceMemory";
import { watchedValue } from "./watchedValue";

export interface ProtocolParts {
  readonly studio: StudioModel;
  readonly check: ProtocolsModel["check"];
  /** Digest of the code that judges. */
  readonly checkedBy: string;
  readonly nowMs: () => number;
  readonly saveFile: (name: string, text: string) => void;
  readonly heardAs: (step: Step) => HeardAs;
  readonly preview: (step: Step) => void;
  /** Of the screens and the voice, as it is chosen now. */
  readonly language: () => SpokenLanguage;
  readonly words: () => ScreenWords;
}

const bundled: ReadonlyMap<string, Protocol> = new Map(bundledProtocols.map((p) => [p.id, p]));
const none = emptyStudio();

export function wireProtocols(parts: ProtocolParts): ProtocolsModel {
  const { studio, checkedBy, nowMs } = parts;
  const checking = watchedValue<ReadonlySet<string>>(new Set());
  let seen: Studio | null = null;
  let offered: readonly Protocol[] = bundledProtocols;

  const rows = (): Studio => (studio.now.at === "open" ? studio.now.studio : none);
  const own = (): readonly Protocol[] =>
    [...rows().protocol.values()].filter((row) => isProved(row, checkedBy)).map(({ protocol }) => protocol);
  /** The same list while nothing was kept: digests are not computed at every look. */
  const nowOffered = (): readonly Protocol[] => {
    const now = rows();
    if (now !== seen) {
      seen = now;
      offered = [...bundledProtocols, ...own()];
    }
    return offered;
  };

  const opened = (): Promise<void> =>
    new Promise((done) => {
      if (studio.now.at !== "opening") return done();
      const stop = studio.subscribe(() => {
        if (studio.now.at === "opening") return;
        stop();
        done();
      });
    });
  const check = (protocol: Protocol): RunningCheck => parts.check(protocol, () => undefined);

  const keepProved = (protocol: Protocol, verdict: Verdict, act: string | null): Promise<string | null> | null => {
    const proof = proofOf(protocol, verdict, checkedBy, nowMs());
    if (!proof) return null;
    const { id } = protocol;
    const row = { kind: "protocol" as const, id, value: { protocol, proof } };
    return act === null
      ? studio.keepQuietly([row])
      : studio.keep(act, [row, { kind: "protocolDraft", id, value: null }]);
  };

  const keepDraft: ProtocolsModel["keepDraft"] = (protocol, saved) =>
    studio.keepQuietly([{ kind: "protocolDraft", id: protocol.id, value: { protocol, saved, changedAtMs: nowMs() } }]);

  const add = async (text: string): Promise<Added> => {
    const read = readProtocol(text);
    if (!read.ok) return { kind: "trouble", trouble: read.trouble };
    await opened();
    const inFile = read.protocol;
    const name = inFile.name[parts.language()] ?? inFile.name.en;
    const digest = protocolDigest(inFile);
    const isSame = (other: Protocol | undefined) => other !== undefined && protocolDigest(other) === digest;
    if (nowOffered().some(isSame)) return { kind: "there", id: inFile.id, name };
    const verdict = await check(inFile).verdict;
    // A bundled protocol stays as it is, and nobody's unfinished draft is written over.
    const isTaken = bundled.has(inFile.id) || rows().protocolDraft.has(inFile.id);
    const taken = new Set([...bundled.keys(), ...rows().protocol.keys(), ...rows().protocolDraft.keys()]);
    const id = isTaken ? freeId(inFile.id, taken, "protocol") : inFile.id;
    const protocol = { ...inFile, id };
    const kept = keepProved(protocol, verdict, parts.words().prepare.added(name));
    const words = await (kept ?? keepDraft(protocol, null));
    if (words !== null) return { kind: "notKept", words };
    return kept
      ? { kind: "proved", id, name, idInFile: inFile.id }
      : { kind: "draft", id, name, why: await faultIn(verdict, inFile, parts.language()) };
  };

  const save = async (protocol: Protocol, act: string): Promise<Saved> => {
    const verdict = await check(protocol).verdict;
    const kept = keepProved(protocol, verdict, act);
    const words = await (kept ?? keepDraft(protocol, protocol));
    if (words !== null) return { kind: "notKept", words };
    return kept ? { kind: "proved" } : { kind: "draft", verdict };
  };

  /** One after another: nobody waits for them, and a session may be running. */
  const proveAgain = async (): Promise<void> => {
    await opened();
    const old = [...rows().protocol.values()].filter((row) => !isProved(row, checkedBy));
    checking.set(new Set(old.map(({ protocol }) => protocol.id)));
    for (const { protocol } of old) {
      const verdict = await check(protocol).verdict;
      await keepProved(protocol, verdict, null);
      checking.set(new Set([...checking.now].filter((id) => id !== protocol.id)));
    }
  };
  void proveAgain();

  return {
    get offered() {
      return nowOffered();
    },
    standing(id) {
      const row = rows().protocol.get(id);
      if (row && isProved(row, checkedBy)) return "proved";
      return checking.now.has(id) ? "checking" : "notProved";
    },
    subscribe(listen) {
      const stops = [studio.subscribe(listen), checking.subscribe(listen)];
      return () => {
        for (const stop of stops) stop();
      };
    },
    check: parts.check,
    add,
    keepDraft,
    save,
    exportFile: (protocol) =>
      parts.saveFile(`${protocol.id}-${protocol.version}.json`, `${JSON.stringify(protocol, null, 2)}\n`),
    preview: parts.preview,
    heardAs: parts.heardAs,
  };
}

/** Protocols that an earlier version kept as text elsewhere: each is proved or becomes a draft, and then is forgotten there. */
export async function moveTexts(memory: DeviceMemory, protocols: ProtocolsModel): Promise<void> {
  for (const text of memory.protocolTexts()) {
    const added = await protocols.add(text);
    if (added.kind === "notKept") return;
  }
  memory.forgetProtocolTexts();
}

/** Its words are fetched when there is something to say; without them the rule is told by its id. */
async function faultIn(verdict: Verdict, protocol: Protocol, language: SpokenLanguage): Promise<string> {
  try {
    return (await import("../drafting/firstFault")).firstFault(language, verdict, protocol);
  } catch {
    return verdict.verdict === "breach" ? (verdict.breaches[0]?.rule ?? "") : "";
  }
}
