#!/usr/bin/env node
/** Builds the app if its sources are newer than the last build, serves it on this machine and prints the address. */
import { spawnSync } from "node:child_process";
import { existsSync, readdirSync, statSync } from "node:fs";
import { fileURLToPath } from "node:url";
import { certificateFor, lanAddresses, lanWords } from "./lan.mjs";
import { secureServer, staticServer } from "./staticServer.mjs";

const usage = `Usage: npm start [-- --port NUMBER] [--lan]
Builds Gloveside if needed and serves it on http://localhost:4173 (or PORT).
  --lan          serve https to the studio's own network, with a code to scan and how to trust it
  --build-only   build if needed, serve nothing`;

const root = fileURLToPath(new URL("..", import.meta.url));
const built = `${root}dist/index.html`;
const sources = ["src", "machines", "public", "index.html", "vite.config.ts", "package-lock.json", "bin/headers.mjs"];

function newestMs(path) {
  const found = statSync(path);
  if (!found.isDirectory()) return found.mtimeMs;
  return Math.max(found.mtimeMs, ...readdirSync(path).map((name) => newestMs(`${path}/${name}`)));
}

function portFrom(args) {
  if (args.length === 0) return Number(process.env.PORT ?? 4173);
  if (args.length === 2 && args[0] === "--port") return Number(args[1]);
  return Number.NaN;
}

const given = process.argv.slice(2);
const buildOnly = given.includes("--build-only");
const isForLan = given.includes("--lan");
const args = given.filter((arg) => arg !== "--build-only" && arg !== "--lan");
if (args.includes("--help")) {
  console.log(usage);
  process.exit(0);
}
const port = portFrom(args);
if (!Number.isInteger(port) || port < 0 || port > 65535) {
  console.error(`A port is a whole number from 0 to 65535.\n${usage}`);
  process.exit(2);
}

const isStale = !existsSync(built) || sources.some((path) => newestMs(root + path) > statSync(built).mtimeMs);
if (isStale) {
  console.log("Building.");
  const vite = fileURLToPath(new URL("../node_modules/vite/bin/vite.js", import.meta.url));
  if (!existsSync(vite)) {
    console.error("The parts are not installed yet: run `npm ci` first.");
    process.exit(1);
  }
  // Whoever asks, a test too, gets what is served to people.
  const env = { ...process.env, NODE_ENV: "production" };
  const build = spawnSync(process.execPath, [vite, "build", "--logLevel", "warn"], {
    cwd: root,
    stdio: "inherit",
    env,
  });
  if (build.status !== 0) process.exit(build.status ?? 1);
}

if (buildOnly) process.exit(0);

const addresses = isForLan ? lanAddresses() : [];
if (isForLan && addresses.length === 0) {
  console.error("This machine is on no network. Join the studio's network, and try again.");
  process.exit(1);
}
const certificate = isForLan ? await certificateFor(`${root}.cache/lan`, addresses) : null;
const server = certificate ? secureServer(`${root}dist`, certificate) : staticServer(`${root}dist`);
server.on("error", (error) => {
  const taken = error.code === "EADDRINUSE";
  console.error(taken ? `Port ${port} is taken. Choose another: npm start -- --port 4200` : String(error.message));
  process.exit(1);
});
server.listen(port, certificate ? "0.0.0.0" : "localhost", () => {
  const address = server.address();
  const at = typeof address === "object" && address ? address.port : port;
  const local = `Gloveside is at http://localhost:${at}  (Ctrl+C stops it)`;
  console.log(certificate ? lanWords(addresses, at, certificate.fingerprint) : local);
});
