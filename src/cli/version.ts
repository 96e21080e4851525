/** The version of the app, as package.json says. */
import { readFileSync } from "node:fs";

export function appVersion(): string {
  const text = readFileSync(new URL("../../package.json", import.meta.url), "utf8");
  return (JSON.parse(text) as { version: string }).version;
}
