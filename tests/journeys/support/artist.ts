/** What a person does at the station, in their verbs. Facts are read from the disk, never from the screen. */
import type { Page } from "playwright-core";
import type { SessionFact } from "../../../src/session/fact";
import type { Protocol } from "../../../src/session/protocol";

export const patienceMs = 60_000;

export interface Prepared {
  readonly client?: string;
  readonly artist?: string;
  readonly station?: string;
}

export async function openApp(page: Page, url: string): Promise<void> {
  await page.goto(url);
  await page.locator("h1").filter({ visible: true }).waitFor({ timeout: patienceMs });
}

export async function fillIn(
  page: Page,
  { client = "C-014", artist = "Artist A", station = "Station 1" }: Prepared = {},
) {
  await page.getByRole("textbox", { name: "Client reference" }).fill(client);
  await page.getByRole("textbox", { name: "Artist" }).fill(artist);
  await page.getByRole("textbox", { name: "Station" }).fill(station);
}

export async function start(page: Page): Promise<void> {
  await page.getByRole("button", { name: "Start the session" }).click();
  await page.getByTestId("session").waitFor({ timeout: patienceMs });
}

export async function addProtocol(page: Page, text: string): Promise<void> {
  await page
    .getByTestId("protocol-file")
    .setInputFiles({ name: "protocol.json", mimeType: "application/json", buffer: Buffer.from(text) });
}

/** Adds the protocol, unless the device keeps it already, and chooses it. */
export async function choose(page: Page, protocol: Protocol): Promise<void> {
  const offered = page.getByRole("radio", { name: protocol.name.en });
  if ((await offered.count()) === 0) await addProtocol(page, JSON.stringify(protocol));
  await offered.waitFor({ state: "attached", timeout: patienceMs });
  await offered.check({ force: true });
}

export const step = (page: Page): Promise<string | null> => page.getByTestId("now").getAttribute("data-step");

/** Waits until the step is the one named. */
export const atStep = (page: Page, id: string): Promise<void> =>
  page.locator(`[data-testid="now"][data-step="${id}"]`).waitFor({ timeout: patienceMs });

/** Says "done" by pedal and waits until it is kept: the next step stands there. */
export async function done(page: Page): Promise<void> {
  const before = await step(page);
  await page.keyboard.press("PageDown");
  await page.waitForFunction(
    (id) => document.querySelector('[data-testid="now"]')?.getAttribute("data-step") !== id,
    before,
    { timeout: patienceMs },
  );
}

export interface OnDisk {
  readonly session: string;
  readonly state: string;
  readonly facts: readonly SessionFact[];
}

/** What IndexedDB holds, read by hand and in order. */
export const onDisk = (page: Page): Promise<readonly OnDisk[]> =>
  page.evaluate(async () => {
    const asked = <T>(request: IDBRequest<T>) =>
      new Promise<T>((resolve, reject) => {
        request.onsuccess = () => resolve(request.result);
        request.onerror = () => reject(request.error);
      });
    const db = await asked(indexedDB.open("gloveside-log"));
    const tx = db.transaction(["sessions", "entries"], "readonly");
    const sessions = (await asked(tx.objectStore("sessions").getAll())) as { session: string; state: string }[];
    const entries = (await asked(tx.objectStore("entries").getAll())) as {
      session: string;
      entry: { fact: unknown };
    }[];
    db.close();
    return sessions.map(({ session, state }) => ({
      session,
      state,
      facts: entries.filter((entry) => entry.session === session).map(({ entry }) => entry.fact),
    }));
  }) as Promise<readonly OnDisk[]>;

/** Facts that came in by voice, of whatever session. */
export const kindsHeard = (page: Page): Promise<readonly string[]> =>
  page.evaluate(async () => {
    const asked = <T>(request: IDBRequest<T>) =>
      new Promise<T>((resolve, reject) => {
        request.onsuccess = () => resolve(request.result);
        request.onerror = () => reject(request.error);
      });
    const db = await asked(indexedDB.open("gloveside-log"));
    const entries = (await asked(db.transaction("entries").objectStore("entries").getAll())) as {
      entry: { fact: { type: string }; way: { by: string } };
    }[];
    db.close();
    return entries.filter(({ entry }) => entry.way.by === "voice").map(({ entry }) => entry.fact.type.slice(3));
  });

export const kindsOf = ({ facts }: OnDisk): string[] => facts.map((fact) => fact.type.slice(3));
