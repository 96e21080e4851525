/** The reader of pictures: zxing compiled to WebAssembly, served by us. Its default would fetch it from a stranger. */
import { prepareZXingModule, type ReaderOptions, readBarcodes } from "zxing-wasm/reader";
import type { Seen } from "./packCode";

const options: ReaderOptions = {
  formats: ["DataMatrix", "Code128", "EAN13", "EAN8", "UPCA", "QRCode"],
  // Untouched content: the separator stays what it is, 0x1D.
  textMode: "Plain",
  tryHarder: true,
  tryRotate: true,
  tryInvert: true,
  maxNumberOfSymbols: 4,
};

export type Picture = { readonly data: Uint8ClampedArray; readonly width: number; readonly height: number };

/** Where the reader's machine code comes from: an address of our own origin, or the bytes. */
export type ReaderCode = { readonly url: string } | { readonly bytes: ArrayBuffer };

/** Rejects where the machine code cannot be had or run. */
export async function openReader(code: ReaderCode): Promise<(picture: Picture) => Promise<readonly Seen[]>> {
  const overrides = "url" in code ? { locateFile: () => code.url } : { wasmBinary: code.bytes };
  await prepareZXingModule({ overrides, fireImmediately: true });
  return async (picture) => {
    const found = await readBarcodes(picture as ImageData, options);
    return found
      .filter(({ isValid }) => isValid)
      .map(({ symbologyIdentifier, text }) => ({ symbology: symbologyIdentifier, text }));
  };
}
