/**
 * A record in one HTML file that opens anywhere and checks itself: a page made at build time, with the record's text in
 * base64 in the middle. Base64 holds no character that HTML knows, so nothing a record says can become markup.
 */
import { mostBytes } from "../export/readRecord";

/** Stands in the template where the record goes. */
export const marker = "<!--the record goes here-->";
export const blockId = "gloveside-record";
const opening = `<script type="text/plain" id="${blockId}">`;
const closing = "</script>";

/** @param template the built page. @returns null where it is not one. Never throws for the text of a record. */
export function packed(template: string, recordText: string): string | null {
  const at = template.indexOf(marker);
  if (at < 0) return null;
  const block = opening + toBase64(new TextEncoder().encode(recordText)) + closing;
  return template.slice(0, at) + block + template.slice(at + marker.length);
}

/** Takes the record out of such a page, as bytes that nobody has checked yet. @returns null where none is in it. */
export function unpacked(page: string): Uint8Array<ArrayBuffer> | null {
  const from = page.indexOf(opening);
  if (from < 0) return null;
  const start = from + opening.length;
  const end = page.indexOf(closing, start);
  return end < 0 ? null : bytesOfBlock(page.slice(start, end));
}

/** @returns null for what is no base64, or larger than any record. */
export function bytesOfBlock(block: string): Uint8Array<ArrayBuffer> | null {
  if (block.length > (mostBytes * 4) / 3 + 4) return null;
  try {
    return Uint8Array.from(atob(block), (char) => char.charCodeAt(0));
  } catch {
    return null;
  }
}

const chunk = 0x8000;
function toBase64(bytes: Uint8Array): string {
  let binary = "";
  for (let at = 0; at < bytes.length; at += chunk) binary += String.fromCharCode(...bytes.subarray(at, at + chunk));
  return btoa(binary);
}
