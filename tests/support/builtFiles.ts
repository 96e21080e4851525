/** The built app by weight: which files a first visit, a session and everything are made of. Sizes are of gzip -6. */
import { readdirSync, readFileSync, statSync } from "node:fs";
import { gzipSync } from "node:zlib";

interface Chunk {
  readonly file: string;
  readonly imports?: readonly string[];
  readonly dynamicImports?: readonly string[];
}

export interface BuiltFiles {
  /** Programs that a page of this language has fetched when its first screen stands. */
  firstLoad(language: string): readonly string[];
  /** Those and what is fetched next, before any session. */
  beforeSession(language: string): readonly string[];
  /** Every program, those of workers too. */
  readonly all: readonly string[];
  gzipBytes(files: readonly string[]): number;
  bytes(files: readonly string[]): number;
  /** Files of `dist` whose path matches. */
  matching(pattern: RegExp): readonly string[];
}

/** @param dist the built folder, with its slash. */
export function builtFiles(dist: string): BuiltFiles {
  const manifest = JSON.parse(readFileSync(`${dist}.vite/manifest.json`, "utf8")) as Record<string, Chunk>;
  const files = readdirSync(dist, { recursive: true, encoding: "utf8" }).filter((path) =>
    statSync(dist + path).isFile(),
  );
  const withImports = (...names: string[]): readonly string[] => {
    const seen = new Set<string>();
    const add = (name: string): void => {
      const chunk = manifest[name];
      if (!chunk) throw new Error(`${name} is no part of the build`);
      if (seen.has(name)) return;
      seen.add(name);
      for (const one of chunk.imports ?? []) add(one);
    };
    for (const name of names) add(name);
    return [...new Set([...seen].map((name) => manifest[name]?.file ?? ""))];
  };
  const first = (language: string) => ["index.html", `src/screen/words/${language}.ts`];
  const companion = [
    "src/app/wakeCompanion.ts",
    "src/app/wireVoice.ts",
    "src/screen/session/Session.tsx",
    "src/screen/record/Record.tsx",
  ];
  const sum = (list: readonly string[], weigh: (content: Buffer) => number) =>
    list.reduce((total, file) => total + weigh(readFileSync(dist + file)), 0);
  return {
    firstLoad: (language) => withImports(...first(language)),
    beforeSession: (language) => withImports(...first(language), ...companion),
    all: files.filter((file) => file.startsWith("assets/") && file.endsWith(".js")),
    gzipBytes: (list) => sum(list, (content) => gzipSync(content).length),
    bytes: (list) => sum(list, (content) => content.length),
    matching: (pattern) => files.filter((file) => pattern.test(file) && !file.startsWith(".vite")),
  };
}
