/**
 * A web address that carries GS1 elements in its path, as plain QR codes on newer packs do: .../01/09521234543213/10/ABC123
 * ?17=251231 (GS1 Digital Link URI syntax, from memory). Only read; no address is ever opened.
 */
import type { Element } from "./elementStrings";
import { mostCharacters } from "./elementStrings";

/** @returns null where the text is no such address. */
export function uriElements(text: string): readonly Element[] | null {
  if (text.length > mostCharacters || !/^https?:\/\//i.test(text)) return null;
  let address: URL;
  try {
    address = new URL(text);
  } catch {
    return null;
  }
  const path = address.pathname.split("/").map(decoded);
  const start = path.indexOf("01");
  const number = path[start + 1];
  if (start < 0 || number === undefined || !/^\d{8,14}$/.test(number)) return null;
  const elements: Element[] = [element("01", number.padStart(14, "0"))];
  for (let at = start + 2; at + 1 < path.length; at += 2) add(elements, path[at] ?? "", path[at + 1] ?? "");
  for (const [ai, value] of address.searchParams) add(elements, ai, value);
  return elements;
}

/** A value here ends where the address says so: nothing can run into the next. */
const element = (ai: string, value: string): Element => ({ ai, value, isLast: false });

const isReadable = /^[!"%&'()*+,\-./0-9:;<=>?A-Z_a-z]{1,20}$/;

function add(elements: Element[], ai: string, value: string): void {
  if (/^(10|11|17|21)$/.test(ai) && isReadable.test(value)) elements.push(element(ai, value));
}

function decoded(part: string): string {
  try {
    return decodeURIComponent(part);
  } catch {
    return part;
  }
}
