/** The ear's own page, built and served under the app's policy, with the phrase models of every language. */
import { cp } from "node:fs/promises";
import type { AddressInfo } from "node:net";
import { join } from "node:path";
import { fileURLToPath } from "node:url";
import { build } from "vite";
import { staticServer } from "../../../bin/staticServer.mjs";

const root = fileURLToPath(new URL("../../../", import.meta.url));

/** @param folder where the built page goes. */
export async function serveEarPage(folder: string): Promise<{ origin: string; close: () => Promise<void> }> {
  const site = join(folder, "site");
  await build({
    configFile: join(root, "src/recogniser/page/vite.config.ts"),
    logLevel: "warn",
    build: { outDir: site, emptyOutDir: true },
  });
  await cp(join(root, "public/voice"), join(site, "voice"), { recursive: true });
  const server = staticServer(site);
  await new Promise<void>((listening) => server.listen(0, "localhost", listening));
  const { port } = server.address() as AddressInfo;
  return {
    origin: `http://localhost:${port}`,
    close: () =>
      new Promise((closed) => {
        server.closeAllConnections();
        server.close(() => closed());
      }),
  };
}
