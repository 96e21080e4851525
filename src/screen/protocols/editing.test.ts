/** The editor between the keys and the disk, with a check and a store that answer when they are told to. */
import { describe, expect, it } from "vitest";
import { smallProtocol } from "../../../tests/support/smallProtocol";
import type { Verdict } from "../../check/checkProtocol";
import type { Protocol } from "../../session/protocol";
import { type EditorPorts, editing } from "./editing";
import type { Saved } from "./protocolsModel";

const proved: Verdict = { verdict: "proved", states: 3, transitions: 2, ms: 1 };
const settled = () => new Promise((done) => setTimeout(done, 0));

/** A device on paper. Nothing happens by itself. */
function device(saveComesTo: Saved = { kind: "proved" }) {
  const waits = new Map<() => void, number>();
  const checks: { protocol: Protocol; end: (verdict: Verdict) => void; isStopped: boolean }[] = [];
  const drafts: { protocol: Protocol; saved: Protocol | null }[] = [];
  const savedOnes: Protocol[] = [];
  let trouble: string | null = null;
  const ports: EditorPorts = {
    later(ms, run) {
      waits.set(run, ms);
      return () => void waits.delete(run);
    },
    check(protocol) {
      let end: (verdict: Verdict) => void = () => undefined;
      const verdict = new Promise<Verdict>((answer) => {
        end = answer;
      });
      const one = { protocol, end, isStopped: false };
      checks.push(one);
      return {
        verdict,
        stop: () => {
          one.isStopped = true;
          end({ verdict: "notProved", why: { code: "stopped" }, states: 0, ms: 0 });
        },
      };
    },
    async keepDraft(protocol, saved) {
      if (trouble === null) drafts.push({ protocol, saved });
      return trouble;
    },
    async save(protocol) {
      savedOnes.push(protocol);
      return saveComesTo;
    },
  };
  return {
    ports,
    checks,
    drafts,
    savedOnes,
    fill: (words: string | null) => {
      trouble = words;
    },
    async pass() {
      const due = [...waits.keys()];
      waits.clear();
      for (const run of due) run();
      await settled();
    },
  };
}

const say = (en: string) => ({ do: "changeStep", step: "washHands", part: { say: { en } } }) as const;

describe("while somebody types", () => {
  it("the check follows the newest text, and an older one is stopped", async () => {
    const { ports, checks, pass } = device();
    const editor = editing(smallProtocol, null, ports);
    editor.edit(say("Wash"));
    await pass();
    editor.edit(say("Wash well"));
    expect(checks[0]?.isStopped).toBe(true);
    expect(editor.now.check.at).toBe("waiting");
    await pass();
    checks[1]?.end(proved);
    await settled();
    expect(checks.map(({ protocol }) => protocol.setUp[0]?.say.en)).toEqual(["Wash", "Wash well"]);
    expect(editor.now.check).toEqual({ at: "done", verdict: proved });
  });

  it("a check that was stopped says nothing any more", async () => {
    const { ports, checks, pass } = device();
    const editor = editing(smallProtocol, null, ports);
    editor.edit(say("Wash"));
    await pass();
    editor.edit(say("Rub"));
    checks[0]?.end(proved);
    await settled();
    expect(editor.now.check.at).toBe("waiting");
  });

  it("the draft is kept once the typing pauses, and at the latest when the page is left", async () => {
    const { ports, drafts, pass } = device();
    const editor = editing(smallProtocol, smallProtocol, ports);
    editor.edit(say("W"));
    editor.edit(say("Wa"));
    await pass();
    expect(drafts.map(({ protocol }) => protocol.setUp[0]?.say.en)).toEqual(["Wa"]);
    expect(drafts[0]?.saved).toBe(smallProtocol);
    editor.edit(say("Wash"));
    editor.stop();
    await settled();
    expect(drafts.at(-1)?.protocol.setUp[0]?.say.en).toBe("Wash");
  });

  it("nothing is written that nobody changed", async () => {
    const { ports, drafts, pass } = device();
    const editor = editing(smallProtocol, smallProtocol, ports);
    editor.start();
    await pass();
    editor.stop();
    await settled();
    expect(drafts).toEqual([]);
  });

  it("a store that is full is said, and the draft is written once there is room", async () => {
    const { ports, drafts, pass, fill } = device();
    const editor = editing(smallProtocol, null, ports);
    fill("The device has no room left.");
    editor.edit(say("Wash"));
    await pass();
    expect(editor.now.notKept).toBe("The device has no room left.");
    fill(null);
    editor.stop();
    await settled();
    expect(editor.now.notKept).toBeNull();
    expect(drafts).toHaveLength(1);
  });

  it("a field that does not fit is named and changes nothing", () => {
    const editor = editing(smallProtocol, null, device().ports);
    expect(editor.edit(say(""))).toMatchObject({ at: "$.setUp[0].say.en", code: "empty" });
    expect(editor.now.history.present).toBe(smallProtocol);
  });
});

describe("a save", () => {
  it("gives the next version, which stands in the draft and can be taken back", async () => {
    const { ports, savedOnes } = device();
    const editor = editing(smallProtocol, smallProtocol, ports);
    editor.edit(say("Wash"));
    expect(await editor.save(() => "saved")).toEqual({ kind: "proved" });
    expect(savedOnes[0]).toMatchObject({ version: "1.0.1" });
    expect(editor.now.saved).toBe(savedOnes[0]);
    expect(editor.now.history.present.version).toBe("1.0.1");
    editor.undo();
    expect(editor.now.history.present.version).toBe("1.0.0");
  });

  it("that is not proved shows what was found, and counts on from the draft's version", async () => {
    const verdict: Verdict = { verdict: "notProved", why: { code: "onlyAPart" }, states: 1, ms: 1 };
    const { ports } = device({ kind: "draft", verdict });
    const editor = editing(smallProtocol, smallProtocol, ports);
    editor.edit(say("Wash"));
    await editor.save(() => "saved");
    expect(editor.now.findings.why).toEqual({ code: "onlyAPart" });
    editor.edit({ do: "removeStep", step: "checkFloor" });
    await editor.save(() => "saved");
    expect(editor.now.history.present.version).toBe("1.1.0");
  });

  it("keeps what was typed while it was being proved, as a draft of the saved version", async () => {
    const { ports, drafts, savedOnes, pass } = device();
    const editor = editing(smallProtocol, smallProtocol, ports);
    editor.edit(say("Wash"));
    const saving = editor.save(() => "saved");
    editor.edit(say("Wash well"));
    await saving;
    await pass();
    expect(savedOnes[0]?.setUp[0]?.say.en).toBe("Wash");
    expect(drafts.at(-1)).toMatchObject({ saved: { version: "1.0.1" } });
    expect(editor.now.history.present.setUp[0]?.say.en).toBe("Wash well");
  });
});
