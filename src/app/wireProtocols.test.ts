/** From a file to an offer: what is proved is offered, what is not becomes a draft, and nothing is kept of a bad file. */
import "fake-indexeddb/auto";
import { describe, expect, it } from "vitest";
import { provedSmall } from "../../tests/journeys/support/provedSmall";
import { studioProtocol } from "../../tests/journeys/support/studioSession";
import { smallProtocol } from "../../tests/support/smallProtocol";
import { checkProtocol } from "../check/checkProtocol";
import { proofOf } from "../drafting/kept";
import type { StudioModel } from "../screen/sums/studioModel";
import { wordsFor } from "../screen/words";
import type { Protocol } from "../session/protocol";
import { bundledProtocols } from "../session/protocols";
import { cartridgeMachine } from "../session/protocols/cartridge";
import { emptyStudio, readRows } from "../studio/studio";
import { indexedDbStudio } from "../studio/studioStore";
import { watchedValue } from "./watchedValue";
import { moveTexts, wireProtocols } from "./wireProtocols";

const checkedBy = "code of today";
let made = 0;

/** The studio's store as it is, on a disk on paper, and the real checker in the same thread. */
function device(rows: Parameters<ReturnType<typeof indexedDbStudio>["keep"]>[0] = []) {
  made += 1;
  const store = indexedDbStudio(`protocols-${made}`);
  const now = watchedValue<StudioModel["now"]>({ at: "opening" });
  const files: { name: string; text: string }[] = [];
  const acts: string[] = [];
  const read = async () => {
    const found = await store.read();
    now.set(found.ok ? { at: "open", ...found.value, undo: null } : { at: "lost", words: found.words });
  };
  const keep: StudioModel["keepQuietly"] = async (changes) => {
    const kept = await store.keep(changes);
    await read();
    return kept.ok ? null : kept.words;
  };
  const studio = {
    get now() {
      return now.now;
    },
    subscribe: now.subscribe,
    keepQuietly: keep,
    keep: (act, changes) => {
      acts.push(act);
      return keep(changes);
    },
  } satisfies Partial<StudioModel> as unknown as StudioModel;
  const checked: string[] = [];
  const protocols = wireProtocols({
    studio,
    check: (protocol) => {
      checked.push(protocol.id);
      return { verdict: Promise.resolve(checkProtocol(protocol)), stop: () => undefined };
    },
    checkedBy,
    nowMs: () => 1_000,
    saveFile: (name, text) => files.push({ name, text }),
    heardAs: () => "clips",
    preview: () => undefined,
    language: () => "en",
    words: () => wordsFor("en"),
  });
  const opened = store.keep(rows).then(read);
  const kept = () => (now.now.at === "open" ? now.now.studio : emptyStudio());
  return { protocols, opened, kept, files, acts, checked };
}

const offeredIds = ({ protocols }: ReturnType<typeof device>) => protocols.offered.map(({ id }) => id);
const bundledIds = bundledProtocols.map(({ id }) => id);
const text = (protocol: Protocol) => JSON.stringify(protocol);

describe("a file", () => {
  it("that is proved is kept and offered, with the digest that was proved", async () => {
    const here = device();
    expect(await here.protocols.add(text(provedSmall))).toMatchObject({ kind: "proved", id: "small" });
    expect(offeredIds(here)).toEqual([...bundledIds, "small"]);
    expect(here.kept().protocol.get("small")?.proof).toMatchObject({ by: checkedBy, atMs: 1_000 });
    expect(here.protocols.standing("small")).toBe("proved");
  });

  it("that is not proved is kept as a draft with the first thing found, and not offered", async () => {
    const here = device();
    const added = await here.protocols.add(text(smallProtocol));
    expect(added).toMatchObject({ kind: "draft", id: "small", why: expect.stringMatching(/\w+/) });
    expect(offeredIds(here)).toEqual(bundledIds);
    expect(here.kept().protocolDraft.get("small")?.protocol).toEqual(smallProtocol);
  });

  it.each([
    ["no JSON", "{"],
    ["another thing", "[]"],
    ["a wrong name", text(smallProtocol).replace('"item":"lamp"', '"item":"ghost"')],
    ["ten megabytes", " ".repeat(10_000_000)],
  ])("that is no protocol leaves nothing behind: %s", async (_, bad) => {
    const here = device();
    await here.opened;
    expect(await here.protocols.add(bad)).toMatchObject({
      kind: "trouble",
      trouble: { at: expect.stringMatching(/^\$/), message: expect.stringMatching(/\w+/) },
    });
    expect(here.kept()).toEqual(emptyStudio());
    expect(here.checked).toEqual([]);
  });

  it("with the id of a bundled one stands beside it under an id of its own", async () => {
    const here = device();
    const changed = { ...provedSmall, id: cartridgeMachine.id };
    expect(await here.protocols.add(text(changed))).toMatchObject({
      kind: "proved",
      id: "cartridgeMachine2",
      idInFile: "cartridgeMachine",
    });
    expect(offeredIds(here)).toEqual([...bundledIds, "cartridgeMachine2"]);
    expect(here.protocols.offered[0]).toBe(cartridgeMachine);
  });

  it("of a protocol that is there already adds nothing", async () => {
    const here = device();
    expect(await here.protocols.add(text(cartridgeMachine))).toMatchObject({ kind: "there" });
    expect(here.kept()).toEqual(emptyStudio());
  });

  it("takes the place of the studio's own of the same id, and never of somebody's draft", async () => {
    const here = device();
    await here.protocols.add(text(provedSmall));
    await here.protocols.add(text({ ...provedSmall, version: "1.0.1" }));
    expect(here.kept().protocol.get("small")?.protocol.version).toBe("1.0.1");
    await here.protocols.keepDraft(smallProtocol, null);
    expect(await here.protocols.add(text({ ...provedSmall, version: "1.0.2" }))).toMatchObject({ id: "small2" });
    expect(here.kept().protocolDraft.get("small")?.protocol).toEqual(smallProtocol);
  });
});

describe("a save", () => {
  it("of a proved draft offers it in place of the draft", async () => {
    const here = device();
    await here.opened;
    await here.protocols.keepDraft(provedSmall, null);
    expect(await here.protocols.save(provedSmall, "Small 1.0.0, proved")).toEqual({ kind: "proved" });
    expect([...here.kept().protocolDraft.keys()]).toEqual([]);
    expect(offeredIds(here)).toContain("small");
    expect(here.acts).toEqual(["Small 1.0.0, proved"]);
  });

  it("of one that does not check keeps the proved version on offer and the new one as a draft", async () => {
    const here = device();
    await here.protocols.add(text(provedSmall));
    const broken = { ...smallProtocol, version: "1.1.0" };
    expect(await here.protocols.save(broken, "Small")).toMatchObject({ kind: "draft" });
    expect(here.protocols.offered.at(-1)?.version).toBe("1.0.0");
    expect(here.kept().protocolDraft.get("small")).toMatchObject({ protocol: broken, saved: broken });
  });
});

describe("after an update of the code that judges", () => {
  const provedBy = (by: string, protocol: Protocol) => ({
    kind: "protocol" as const,
    id: protocol.id,
    value: {
      protocol,
      proof: proofOf(protocol, { verdict: "proved", states: 1, transitions: 1, ms: 1 }, by, 0) ?? expect.fail("proved"),
    },
  });

  it("nothing is offered on an old proof, until it is proved again", async () => {
    const here = device([provedBy("code of yesterday", provedSmall)]);
    await here.opened;
    expect(offeredIds(here)).toEqual(bundledIds);
    await expect.poll(() => offeredIds(here)).toContain("small");
    expect(here.kept().protocol.get("small")?.proof.by).toBe(checkedBy);
  });

  it("what does not check any more is kept, said and not offered", async () => {
    const here = device([provedBy("code of yesterday", smallProtocol)]);
    await here.opened;
    await expect.poll(() => here.checked).toEqual(["small"]);
    await expect.poll(() => here.protocols.standing("small")).toBe("notProved");
    expect(offeredIds(here)).toEqual(bundledIds);
    expect(here.kept().protocol.has("small")).toBe(true);
  });

  it("what is proved by the code that is here is not proved again", async () => {
    const here = device([provedBy(checkedBy, provedSmall)]);
    await here.opened;
    await expect.poll(() => offeredIds(here)).toContain("small");
    expect(here.checked).toEqual([]);
  });
});

describe("a row on the disk", () => {
  it("that names what is not there is not believed", () => {
    const protocol = structuredClone(provedSmall);
    protocol.items.shift();
    const row = { kind: "protocolDraft", id: "small", value: { protocol, saved: null, changedAtMs: 0 } };
    expect(readRows([row])).toMatchObject({ unreadable: [{ kind: "protocolDraft", id: "small" }] });
  });

  it("whose protocol is not the one that was proved is not offered", async () => {
    const proof = proofOf(provedSmall, { verdict: "proved", states: 1, transitions: 1, ms: 1 }, checkedBy, 0);
    const value = { protocol: smallProtocol, proof: proof ?? expect.fail("proved") };
    const here = device([{ kind: "protocol", id: "small", value }]);
    await here.opened;
    expect(offeredIds(here)).toEqual(bundledIds);
  });
});

describe("besides", () => {
  it("protocols that an earlier version kept as text are moved, and only then forgotten there", async () => {
    const here = device();
    let texts: readonly string[] = [text(provedSmall), text(studioProtocol), "no protocol"];
    const forgetProtocolTexts = () => {
      texts = [];
    };
    const memory = { protocolTexts: () => texts, forgetProtocolTexts };
    await moveTexts(memory as never, here.protocols);
    expect(offeredIds(here)).toEqual([...bundledIds, "small", "studio"]);
    expect(texts).toEqual([]);
  });

  it("a file that is handed over reads back as the same protocol", () => {
    const { protocols, files } = device();
    protocols.exportFile(provedSmall);
    expect(files[0]?.name).toBe("small-1.0.0.json");
    expect(JSON.parse(files[0]?.text ?? "")).toEqual(provedSmall);
  });
});
