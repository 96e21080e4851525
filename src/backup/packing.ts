/** Lines of text, packed (gzip) and unpacked as streams. What is unpacked may claim to be endless: it is bounded. */
import { BackupTrouble } from "./container";

/** A session of a whole day is about 3 MB. */
export const longestLine = 64_000_000;
/** Records repeat themselves and pack well, twenty to sixty times here; a bomb packs a thousand times. */
export const mostTimes = 200;
const graceBytes = 16_000_000;

export async function* packed(lines: AsyncIterable<string>): AsyncGenerator<Uint8Array> {
  const utf8 = new TextEncoder();
  const text = new ReadableStream<Uint8Array<ArrayBuffer>>({
    async pull(into) {
      const { value, done } = await iterator.next();
      if (done) into.close();
      else into.enqueue(utf8.encode(`${value}\n`));
    },
  });
  const iterator = lines[Symbol.asyncIterator]();
  yield* bytesIn(text.pipeThrough(new CompressionStream("gzip")));
}

export async function* unpacked(bytes: AsyncIterable<Uint8Array<ArrayBuffer>>): AsyncGenerator<string> {
  let packedBytes = 0;
  const iterator = bytes[Symbol.asyncIterator]();
  const source = new ReadableStream<Uint8Array<ArrayBuffer>>(
    {
      async pull(into) {
        const { value, done } = await iterator.next();
        if (done) return into.close();
        packedBytes += value.length;
        into.enqueue(value);
      },
    },
    { highWaterMark: 0 },
  );
  const reader = new TextDecoder("utf-8", { fatal: true });
  let plainBytes = 0;
  let open: string[] = [];
  let openLength = 0;
  for await (const some of unzipped(source)) {
    plainBytes += some.length;
    if (plainBytes > graceBytes + mostTimes * packedBytes)
      throw new BackupTrouble("too-large", "It unpacks to far more than a backup does. Nothing was taken from it.");
    const parts = reader.decode(some, { stream: true }).split("\n");
    const last = parts.pop() ?? "";
    for (const part of parts) {
      yield open.length > 0 ? open.join("") + part : part;
      open = [];
      openLength = 0;
    }
    open.push(last);
    openLength += last.length;
    if (openLength > longestLine)
      throw new BackupTrouble(
        "too-large",
        "One of its records is larger than any record is. Nothing was taken from it.",
      );
  }
}

/** Streams tell in many ways that what was packed is not. */
async function* unzipped(source: ReadableStream<Uint8Array<ArrayBuffer>>): AsyncGenerator<Uint8Array> {
  try {
    yield* bytesIn(source.pipeThrough(new DecompressionStream("gzip")));
  } catch (error) {
    if (error instanceof BackupTrouble) throw error;
    throw new BackupTrouble("not-a-backup", "What it holds cannot be unpacked. Nothing was taken from it.");
  }
}

async function* bytesIn<T extends Uint8Array>(stream: ReadableStream<T>): AsyncGenerator<T> {
  const reader = stream.getReader();
  try {
    for (;;) {
      const { value, done } = await reader.read();
      if (done) return;
      yield value;
    }
  } finally {
    void reader.cancel().catch(() => undefined);
  }
}
