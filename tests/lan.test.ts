/** `npm start -- --lan`: a real https request to a machine that made its own certificate, and what is printed about it. */
import { spawn } from "node:child_process";
import { X509Certificate } from "node:crypto";
import { existsSync, mkdirSync, mkdtempSync, rmSync, statSync, writeFileSync } from "node:fs";
import { request } from "node:https";
import type { AddressInfo } from "node:net";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { certificateFor, certificatePath, lanAddresses, lanWords } from "../bin/lan.mjs";
import { secureServer } from "../bin/staticServer.mjs";

const folder = mkdtempSync(join(tmpdir(), "lan-"));
const address = "127.0.0.1";
const studioAddress = "192.168.7.20";
let certificate: Awaited<ReturnType<typeof certificateFor>>;
let server: ReturnType<typeof secureServer>;

beforeAll(async () => {
  mkdirSync(`${folder}/site`);
  writeFileSync(`${folder}/site/index.html`, "<h1>Gloveside</h1>");
  certificate = await certificateFor(`${folder}/keys`, [address, studioAddress]);
  server = secureServer(`${folder}/site`, certificate);
  await new Promise<void>((ready) => server.listen(0, address, ready));
});
afterAll(() => {
  server.close();
  rmSync(folder, { recursive: true });
});

/** @param trusted the authorities that the asking device knows. */
const ask = (path: string, trusted: string | undefined) =>
  new Promise<{ status: number | undefined; type: string | undefined; body: string }>((done, fail) => {
    const { port } = server.address() as AddressInfo;
    const asked = request({ host: address, port, path, ca: trusted, agent: false }, (answer) => {
      let body = "";
      answer.on("data", (part) => {
        body += String(part);
      });
      answer.on("end", () => done({ status: answer.statusCode, type: answer.headers["content-type"], body }));
    });
    asked.on("error", fail);
    asked.end();
  });

describe("serving on the studio's network", () => {
  it("answers over https to a device that trusts its certificate, with no check switched off", async () => {
    expect(await ask("/", certificate.cert)).toMatchObject({ status: 200, body: "<h1>Gloveside</h1>" });
  });

  it("is not believed by a device that does not", async () => {
    await expect(ask("/", undefined)).rejects.toMatchObject({ code: "DEPTH_ZERO_SELF_SIGNED_CERT" });
  });

  it("hands out its certificate, of the fingerprint that is printed", async () => {
    const { body, type } = await ask(certificatePath, certificate.cert);
    expect(type).toBe("application/x-x509-ca-cert");
    expect(new X509Certificate(body).fingerprint256).toBe(certificate.fingerprint);
    const printed = lanWords([studioAddress], 4173, certificate.fingerprint).replace(/\s/g, "");
    expect(printed).toContain(certificate.fingerprint);
    expect(printed).toContain(`https://${studioAddress}:4173/`);
  });

  it("hands out neither the key nor anything beside the site", async () => {
    expect((await ask("/../keys/key.pem", certificate.cert)).status).toBe(404);
    expect((await ask("/%2e%2e/keys/key.pem", certificate.cert)).status).toBe(404);
  });
});

describe("the certificate", () => {
  it("names every address, and keeps inside the 825 days that Apple's devices allow (support.apple.com/103214)", () => {
    const read = new X509Certificate(certificate.cert);
    expect(read.checkIP(studioAddress)).toBe(studioAddress);
    expect(read.ca).toBe(true);
    expect(Date.parse(read.validTo) - Date.parse(read.validFrom)).toBeLessThanOrEqual(825 * 86_400_000);
  });

  it("is kept for the next start, its key readable by its owner alone", async () => {
    const again = await certificateFor(`${folder}/keys`, [studioAddress]);
    expect(again).toMatchObject({ isNew: false, fingerprint: certificate.fingerprint });
    expect(statSync(`${folder}/keys/key.pem`).mode & 0o077).toBe(0);
  });

  it("is made anew when this machine has another address, or the old one runs out", async () => {
    const moved = await certificateFor(`${folder}/moved`, [address]);
    expect((await certificateFor(`${folder}/moved`, ["10.0.0.9"])).fingerprint).not.toBe(moved.fingerprint);
    const inAYear = Date.now() + 380 * 86_400_000;
    expect((await certificateFor(`${folder}/moved`, ["10.0.0.9"], inAYear)).isNew).toBe(true);
  });
});

describe("the addresses", () => {
  it("are those of the network, not the machine's own loop", () => {
    const common = { netmask: "255.255.255.0", mac: "00:00:00:00:00:00", cidr: null };
    const found = lanAddresses({
      lo: [{ ...common, address: "127.0.0.1", family: "IPv4", internal: true }],
      wifi: [
        { ...common, address: studioAddress, family: "IPv4", internal: false },
        { ...common, address: "fe80::1", family: "IPv6", internal: false, scopeid: 1 },
      ],
    });
    expect(found).toEqual([studioAddress]);
  });
});

describe.skipIf(lanAddresses().length === 0 || !existsSync("dist/index.html"))("npm start -- --lan", () => {
  it("prints the address, a code to scan and what to do, and answers there", async () => {
    const child = spawn(process.execPath, ["bin/serve.mjs", "--lan", "--port", "0"]);
    const printed = await new Promise<string>((done) => {
      let text = "";
      child.stdout.on("data", (part) => {
        text += String(part);
        if (text.includes("Ctrl+C")) done(text);
      });
    });
    child.kill();
    expect(printed).toMatch(/https:\/\/\d+\.\d+\.\d+\.\d+:\d+\//);
    expect(printed).toMatch(/[▀▄█]{5}/);
    expect(printed).toContain("Certificate Trust Settings");
  });
});
