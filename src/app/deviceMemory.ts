/**
 * What this device remembers between sessions, apart from the log and the studio's store: the form's fields that stay the
 * same, and which session this tab had open. Read as hostile, like any file.
 */
import { z } from "zod";
import { spokenLanguages } from "../announcements/languages";
import { addressWords } from "../intent/phrases";
import { type Draft, emptyDraft } from "../screen/prepare/draft";
import { firstSettings, type Settings, themes } from "../screen/settings/settings";
import { Id } from "../session/protocol";
import { bundledProtocols } from "../session/protocols";

const Remembered = z.strictObject({
  protocol: z.string(),
  artist: z.string(),
  station: z.string(),
  address: z.enum(addressWords),
  language: z.enum(["en", "es"]),
  brisk: z.boolean(),
  letterKeys: z.boolean(),
  readsCodes: z.boolean().default(false),
  labels: z.record(
    Id,
    z.strictObject({
      name: z.string(),
      contactMin: z.string(),
      contactSec: z.string(),
      reapplyMin: z.string(),
      reapplySec: z.string(),
      oneStep: z.boolean(),
      afterwards: z.enum(["wipe", "rinse", "airDry"]),
      expiry: z.string(),
    }),
  ),
});

const KeptSettings = z.strictObject({ language: z.enum(spokenLanguages), theme: z.enum(themes) });

const Loss = z.strictObject({ day: z.iso.date(), why: z.string() });
export type Loss = z.infer<typeof Loss>;

const ProtocolTexts = z.array(z.string()).max(50);

const keys = {
  settings: "gloveside-settings",
  draft: "gloveside-draft",
  protocols: "gloveside-protocols",
  open: "gloveside-open-session",
  loss: "gloveside-store-lost",
} as const;

function read<T>(storage: Storage, key: string, schema: z.ZodType<T>, otherwise: T): T {
  try {
    const parsed = schema.safeParse(JSON.parse(storage.getItem(key) ?? "null"));
    return parsed.success ? parsed.data : otherwise;
  } catch {
    return otherwise;
  }
}

/** A full or forbidden store only costs comfort: nothing of a session is kept here. */
function write(storage: Storage, key: string, value: unknown): void {
  try {
    storage.setItem(key, JSON.stringify(value));
  } catch {
    // The form will be empty next time.
  }
}

/** @param preferred the device's languages, for as long as nobody chose one. */
export function deviceMemory(local: Storage, tab: Storage, preferred: readonly string[]) {
  return {
    settings: (): Settings => read(local, keys.settings, KeptSettings, firstSettings(preferred)),
    keepSettings: (settings: Settings): void => write(local, keys.settings, settings),
    draft(): Draft {
      const first = emptyDraft(bundledProtocols[0]?.id ?? "");
      const kept = read<z.infer<typeof Remembered> | null>(local, keys.draft, Remembered.nullable(), null);
      return kept ? { ...first, ...kept } : first;
    },
    /** Neither client nor lots: those are of one session. */
    keepDraft({ protocol, artist, station, address, language, brisk, letterKeys, readsCodes, labels }: Draft): void {
      write(local, keys.draft, { protocol, artist, station, address, language, brisk, letterKeys, readsCodes, labels });
    },
    /** Protocols that an earlier version kept here, as text. They are moved to the studio's store, and then forgotten. */
    protocolTexts: (): readonly string[] => read(local, keys.protocols, ProtocolTexts, []),
    forgetProtocolTexts: (): void => local.removeItem(keys.protocols),
    /** That the browser deleted its store, and when that was found: until someone has read it. */
    loss: (): Loss | null => read(local, keys.loss, Loss.nullable(), null),
    keepLoss: (why: string): void => write(local, keys.loss, { day: new Date().toISOString().slice(0, 10), why }),
    forgetLoss: (): void => local.removeItem(keys.loss),
    /** Survives a reload and a restored tab, not a new one: gloved hands need touch nothing after a reload. */
    openSession: (): string | null => read(tab, keys.open, z.string().nullable(), null),
    keepOpenSession: (session: string | null): void => write(tab, keys.open, session),
  };
}

export type DeviceMemory = ReturnType<typeof deviceMemory>;
