/** `npm run schema`: writes the published JSON Schemas under public/. */
import { mkdir, writeFile } from "node:fs/promises";
import { publishedSchemas } from "./schemas";

const folder = new URL("../../public/", import.meta.url);
await mkdir(folder, { recursive: true });
for (const [name, text] of Object.entries(publishedSchemas())) await writeFile(new URL(name, folder), text);
