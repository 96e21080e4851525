/**
 * What this device remembers between sessions, apart from the log: the form's fields that stay the same, protocols that
 * were added, and which session this tab had open. Read as hostile, like any file.
 */
import { z } from "zod";
import { spokenLanguages } from "../announcements/phrasebooks";
import { addressWords } from "../intent/phrases";
import { type Draft, emptyDraft } from "../screen/prepare/draft";
import { firstSettings, type Settings, themes } from "../screen/settings/settings";
import { Id, type Protocol } from "../session/protocol";
import { bundledProtocols } from "../session/protocols";
import { readProtocol } from "../session/readProtocol";

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

const ProtocolTexts = z.array(z.string()).max(50);

const keys = {
  settings: "gloveside-settings",
  draft: "gloveside-draft",
  protocols: "gloveside-protocols",
  open: "gloveside-open-session",
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
  const texts = () => read(local, keys.protocols, ProtocolTexts, []);
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
    /** The bundled ones, then those that were added; an added one replaces another of the same id. */
    protocols(): readonly Protocol[] {
      const added = texts().flatMap((text) => {
        const known = readProtocol(text);
        return known.ok ? [known.protocol] : [];
      });
      return [...new Map([...bundledProtocols, ...added].map((p) => [p.id, p])).values()];
    },
    addProtocol(text: string, protocol: Protocol): void {
      const others = texts().filter((other) => {
        const known = readProtocol(other);
        return known.ok && known.protocol.id !== protocol.id;
      });
      write(local, keys.protocols, [...others, text]);
    },
    /** Survives a reload and a restored tab, not a new one: gloved hands need touch nothing after a reload. */
    openSession: (): string | null => read(tab, keys.open, z.string().nullable(), null),
    keepOpenSession: (session: string | null): void => write(tab, keys.open, session),
  };
}

export type DeviceMemory = ReturnType<typeof deviceMemory>;
