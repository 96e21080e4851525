/** The app as it is built, but that Spanish is the language nobody speaks: each of its books made from the English one. */
import { fileURLToPath } from "node:url";
import { defineConfig, mergeConfig, type Plugin } from "vite";
import base from "../../vite.config";

const books: Readonly<Record<string, readonly [from: string, english: string, name: string]>> = {
  "src/screen/words/es.ts": ["./en", "en", "es"],
  "src/screen/archive/words/es.ts": ["./en", "archiveEn", "archiveEs"],
  "src/screen/sums/words/es.ts": ["./en", "sumsEn", "sumsEs"],
  "src/screen/protocols/words/es.ts": ["./en", "protocolsEn", "protocolsEs"],
  "src/screen/voice/words/es.ts": ["./en", "voiceEn", "voiceEs"],
  "src/sums/phrases/es.ts": ["./en", "sumsEn", "sumsEs"],
  "src/screen/papers/words/es.ts": ["./en", "papersEn", "papersEs"],
};
const pseudo = fileURLToPath(new URL("./pseudo.ts", import.meta.url));

const insteadOfSpanish: Plugin = {
  name: "pseudo-locale",
  enforce: "pre",
  load(id) {
    const path = Object.keys(books).find((one) => id.endsWith(one));
    const [from, english, name] = (path && books[path]) || [];
    return (
      from &&
      `import { ${english} } from "${from}"; import { pseudo } from ${JSON.stringify(pseudo)};
export const ${name} = pseudo(${english});`
    );
  },
};

export default mergeConfig(base, defineConfig({ plugins: [insteadOfSpanish], build: { outDir: "out/pseudo" } }));
