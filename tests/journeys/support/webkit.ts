/** Debian's WebKit driven by the W3C WebDriver protocol: its small browser on a screen of its own that nobody sees. */
import { type ChildProcess, spawn } from "node:child_process";
import { existsSync } from "node:fs";

const driver = "/usr/bin/WebKitWebDriver";
const screen = "/usr/bin/Xvfb";
const browserAt = ["x86_64-linux-gnu", "aarch64-linux-gnu"].map((cpu) => `/usr/lib/${cpu}/webkit2gtk-4.1/MiniBrowser`);
const browser = browserAt.find((path) => existsSync(path));

/** Null where WebKit can be driven here; else what is missing, and how to get it. */
export const missingForWebkit: string | null =
  existsSync(driver) && existsSync(screen) && browser
    ? null
    : "needs WebKit's driver: apt-get install webkit2gtk-driver xvfb";

export interface WebkitPage {
  goto(url: string): Promise<void>;
  /** Runs a function body in the page; `arguments` holds what was given. */
  run<T>(body: string, ...given: unknown[]): Promise<T>;
  /** Asks again until the body answers something true. */
  until<T>(body: string, ...given: unknown[]): Promise<T>;
  /** Types with the real keyboard into the control that has the focus; special keys as WebDriver codes them. */
  press(keys: string): Promise<void>;
  click(selector: string): Promise<void>;
  type(selector: string, text: string): Promise<void>;
  close(): Promise<void>;
}

const elementKey = "element-6066-11e4-a52e-4f735466cecf";
const patienceMs = 60_000;
const pause = (ms: number) => new Promise<void>((done) => setTimeout(done, ms));

export async function openWebkit(): Promise<WebkitPage> {
  const children: ChildProcess[] = [];
  const stop = () => {
    for (const child of children) child.kill();
  };
  try {
    const display = await screenOf(children);
    const env = { ...process.env, DISPLAY: display, GDK_BACKEND: "x11", WEBKIT_DISABLE_DMABUF_RENDERER: "1" };
    const port = 20_000 + (process.pid % 20_000);
    // Debian's sandbox for web content needs rights that a test machine in a container does not have.
    const inContainer = { ...env, WEBKIT_DISABLE_SANDBOX_THIS_IS_DANGEROUS: "1" };
    children.push(spawn(driver, [`--port=${port}`, "--host=127.0.0.1"], { env: inContainer, stdio: "ignore" }));
    return await session(`http://127.0.0.1:${port}`, stop);
  } catch (error) {
    stop();
    throw error;
  }
}

/** @returns the name of a screen that is there, once it is there. */
async function screenOf(children: ChildProcess[]): Promise<string> {
  const server = spawn(screen, ["-displayfd", "3", "-screen", "0", "1280x900x24", "-nolisten", "tcp"], {
    stdio: ["ignore", "ignore", "ignore", "pipe"],
  });
  children.push(server);
  const told = server.stdio[3];
  if (!told) throw new Error("the screen has no line to say its number on");
  return new Promise((resolve, reject) => {
    told.on("data", (number: Buffer) => resolve(`:${number.toString().trim()}`));
    server.on("exit", (code) => reject(new Error(`the screen ended with ${code}`)));
  });
}

async function session(address: string, stop: () => void): Promise<WebkitPage> {
  const call = async <T>(method: string, path: string, body?: unknown): Promise<T> => {
    const sent = body === undefined ? {} : { body: JSON.stringify(body) };
    const answer = await fetch(address + path, { method, ...sent });
    const { value } = (await answer.json()) as { value: T };
    if (!answer.ok) throw new Error(`${method} ${path}: ${JSON.stringify(value).slice(0, 400)}`);
    return value;
  };
  const endMs = Date.now() + patienceMs;
  for (;;) {
    const isUp = await fetch(`${address}/status`).then(
      () => true,
      () => false,
    );
    if (isUp) break;
    if (Date.now() > endMs) throw new Error("WebKit's driver does not answer");
    await pause(100);
  }
  const options = { binary: browser, args: ["--automation"] };
  const wanted = { browserName: "MiniBrowser", "webkitgtk:browserOptions": options };
  const { sessionId } = await call<{ sessionId: string }>("POST", "/session", {
    capabilities: { alwaysMatch: wanted },
  });
  const at = `/session/${sessionId}`;
  const run = <T>(body: string, ...given: unknown[]) =>
    call<T>("POST", `${at}/execute/sync`, { script: body, args: given });
  const find = async (selector: string): Promise<string> => {
    const found = await call<Record<string, string>>("POST", `${at}/element`, {
      using: "css selector",
      value: selector,
    });
    return found[elementKey] ?? "";
  };
  return {
    goto: (url) => call("POST", `${at}/url`, { url }),
    run,
    async until<T>(body: string, ...given: unknown[]) {
      const untilMs = Date.now() + patienceMs;
      for (;;) {
        const answer = await run<T>(body, ...given);
        if (answer) return answer;
        if (Date.now() > untilMs) throw new Error(`never came true in WebKit: ${body}`);
        await pause(150);
      }
    },
    async press(keys) {
      const strokes = [...keys].flatMap((value) => [
        { type: "keyDown", value },
        { type: "keyUp", value },
      ]);
      await call("POST", `${at}/actions`, { actions: [{ type: "key", id: "keyboard", actions: strokes }] });
    },
    click: async (selector) => call("POST", `${at}/element/${await find(selector)}/click`, {}),
    type: async (selector, text) => call("POST", `${at}/element/${await find(selector)}/value`, { text }),
    async close() {
      await call("DELETE", at).catch(() => undefined);
      stop();
    },
  };
}
