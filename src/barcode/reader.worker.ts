/** The reader in a thread of its own: a picture comes in, the codes in it go back. */
import wasmUrl from "zxing-wasm/reader/zxing_reader.wasm?url";
import { openReader } from "./reader";

declare const self: {
  postMessage(message: unknown): void;
  onmessage: ((event: MessageEvent<ImageBitmap>) => void) | null;
};

const reader = openReader({ url: new URL(wasmUrl, import.meta.url).href });
let canvas: OffscreenCanvas | null = null;

self.onmessage = async ({ data: picture }) => {
  try {
    const read = await reader;
    const { width, height } = picture;
    if (canvas?.width !== width || canvas.height !== height) canvas = new OffscreenCanvas(width, height);
    const brush = canvas.getContext("2d", { willReadFrequently: true });
    brush?.drawImage(picture, 0, 0);
    const pixels = brush?.getImageData(0, 0, width, height);
    self.postMessage({ ok: true, codes: pixels ? await read(pixels) : [] });
  } catch {
    self.postMessage({ ok: false });
  } finally {
    picture.close();
  }
};
