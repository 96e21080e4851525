/**
 * Serving on the studio's own network. A tablet gives microphone, offline work and signatures to https pages alone, so
 * this machine makes itself a certificate for its addresses, keeps it, and says in plain words how to trust it.
 */
import { X509Certificate } from "node:crypto";
import { existsSync, mkdirSync, readFileSync, writeFileSync } from "node:fs";
import { hostname, networkInterfaces } from "node:os";
import { generate } from "selfsigned";
import { renderUnicodeCompact } from "uqr";

/** Apple's devices take no certificate of a server for longer than 825 days; a year and a month is well inside. */
const validDays = 397;
const dayMs = 86_400_000;

/** Where the studio's devices may reach this machine: its own IPv4 addresses, and not the machine itself. */
export const lanAddresses = (interfaces = networkInterfaces()) =>
  Object.values(interfaces)
    .flatMap((each) => each ?? [])
    .filter(({ family, internal }) => family === "IPv4" && !internal)
    .map(({ address }) => address);

/** Names beside the addresses: many studios' routers know `name.local`. */
const namesHere = () => ["localhost", `${hostname().split(".")[0]}.local`];

/**
 * The kept certificate while it fits; a new one when it runs out within a month or this machine has moved.
 * @param {string} folder readable by this user alone
 * @param {readonly string[]} addresses
 */
export async function certificateFor(folder, addresses, nowMs = Date.now()) {
  const files = { cert: `${folder}/certificate.pem`, key: `${folder}/key.pem` };
  if (existsSync(files.cert) && existsSync(files.key)) {
    const kept = { cert: readFileSync(files.cert, "utf8"), key: readFileSync(files.key, "utf8") };
    if (fits(kept.cert, addresses, nowMs)) return { ...kept, isNew: false, fingerprint: fingerprintOf(kept.cert) };
  }
  const made = await generate([{ name: "commonName", value: "Gloveside in this studio" }], {
    keyType: "ec",
    curve: "P-256",
    algorithm: "sha256",
    notBeforeDate: new Date(nowMs - dayMs),
    notAfterDate: new Date(nowMs + validDays * dayMs),
    extensions: [
      // A tablet lets a certificate be trusted by hand only where it says that it is its own authority.
      { name: "basicConstraints", cA: true, critical: true },
      { name: "keyUsage", digitalSignature: true, keyCertSign: true, critical: true },
      { name: "extKeyUsage", serverAuth: true },
      {
        name: "subjectAltName",
        altNames: [
          ...addresses.map((ip) => ({ type: 7, ip })),
          { type: 7, ip: "127.0.0.1" },
          ...namesHere().map((value) => ({ type: 2, value })),
        ],
      },
    ],
  });
  mkdirSync(folder, { recursive: true, mode: 0o700 });
  writeFileSync(files.key, made.private, { mode: 0o600 });
  writeFileSync(files.cert, made.cert, { mode: 0o600 });
  return { cert: made.cert, key: made.private, isNew: true, fingerprint: fingerprintOf(made.cert) };
}

function fits(cert, addresses, nowMs) {
  try {
    const read = new X509Certificate(cert);
    return Date.parse(read.validTo) > nowMs + 30 * dayMs && addresses.every((ip) => read.checkIP(ip));
  } catch {
    return false;
  }
}

const fingerprintOf = (cert) => new X509Certificate(cert).fingerprint256;

/** Where a device fetches the certificate that it is to trust. */
export const certificatePath = "/gloveside-studio.crt";

/** What is printed: the code to scan, and what to do on the device. */
export function lanWords(addresses, port, fingerprint) {
  const [first, ...others] = addresses.map((ip) => `https://${ip}:${port}/`);
  return `Gloveside is on this network at ${first}
${others.length > 0 ? `also at ${others.join(" ")}\n` : ""}
${renderUnicodeCompact(first, { ecc: "M", border: 2 })}

Once on each tablet or phone, on the same network:
 1. Scan the code. The browser warns, since it does not know this machine. That is expected: go on to the page.
 2. Open ${first}${certificatePath.slice(1)} and install it.
    iPad, iPhone   Settings > Profile downloaded > Install; then General > About > Certificate Trust Settings > switch it on.
    Android        Settings > Security > Encryption and credentials > Install a certificate > CA certificate.
    Computer       import it into the browser's or the system's list of authorities.
 3. Before you trust it, compare. Its SHA-256 fingerprint must be
    ${fingerprint.replace(/(.{47}):/, "$1:\n    ")}
 4. Open ${first} again: no warning now. Then add it to the home screen, and prepare the device.

Whoever has this machine's key could pose as this address to a device that trusts it. The key stays in .cache/lan, for
your user alone. Do not do this on a network you do not trust; a convention's guest network is one.
Ctrl+C stops it.`;
}
