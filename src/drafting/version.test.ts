/** Versions that grow with what changed, and a digest that any other tool would compute. */
import { createHash } from "node:crypto";
import { describe, expect, it } from "vitest";
import { smallProtocol } from "../../tests/support/smallProtocol";
import { bundledProtocols } from "../session/protocols";
import { applyEdit, type Edit } from "./edit";
import { copyOf } from "./fresh";
import { nextVersion, protocolDigest } from "./version";

const changed = (edit: Edit) => {
  const found = applyEdit(smallProtocol, edit);
  return found.ok ? found.protocol : expect.fail(found.trouble.at);
};
const next = (edit: Edit): string => nextVersion(smallProtocol, changed(edit));

describe("the version", () => {
  it("grows by its last number where only words changed", () => {
    expect(next({ do: "changeStep", step: "washHands", part: { say: { en: "Wash. Dry." } } })).toBe("1.0.1");
    expect(next({ do: "changeProtocol", part: { name: { en: "Small station" } } })).toBe("1.0.1");
  });

  it("grows by its middle number where something is done otherwise, a caution among it", () => {
    expect(next({ do: "removeStep", step: "checkFloor" })).toBe("1.1.0");
    expect(next({ do: "changeLabel", product: "spray", part: { contactSec: 240 } })).toBe("1.1.0");
    expect(next({ do: "changeStep", step: "washHands", part: { caution: { en: "Not too hot." } } })).toBe("1.1.0");
  });

  it("stays where nothing changed, and where nothing was saved before", () => {
    expect(nextVersion(smallProtocol, structuredClone(smallProtocol))).toBe("1.0.0");
    expect(nextVersion(null, changed({ do: "removeStep", step: "checkFloor" }))).toBe("1.0.0");
  });

  it("begins anew in a copy, under an id of its own", () => {
    const copy = copyOf({ ...smallProtocol, version: "3.4.5" }, { en: "Mine" }, new Set(["small", "small2"]));
    expect(copy).toMatchObject({ id: "small3", version: "1.0.0", name: { en: "Mine" } });
  });
});

/** RFC 8785 for what a protocol holds (objects, arrays, strings, integers), written again apart from the app's own. */
function canonical(value: unknown): string {
  if (Array.isArray(value)) return `[${value.map(canonical).join(",")}]`;
  if (typeof value !== "object" || value === null) return JSON.stringify(value);
  const names = Object.keys(value).sort();
  return `{${names.map((name) => `${JSON.stringify(name)}:${canonical((value as Record<string, unknown>)[name])}`).join(",")}}`;
}

describe("the digest", () => {
  it.each([smallProtocol, ...bundledProtocols])("of $id is SHA-256 over its canonical JSON", (protocol) => {
    expect(protocolDigest(protocol)).toBe(createHash("sha256").update(canonical(protocol)).digest("hex"));
  });

  it("is the same for a file with its names in another order, and another for one changed letter", () => {
    const turned = Object.fromEntries(Object.entries(smallProtocol).reverse()) as typeof smallProtocol;
    expect(protocolDigest(turned)).toBe(protocolDigest(smallProtocol));
    expect(protocolDigest({ ...smallProtocol, name: { en: "small" } })).not.toBe(protocolDigest(smallProtocol));
  });
});
