/**
 * Just enough of WebAssembly's binary format to write small functions over vectors of four float32, as lists of bytes.
 * No fused or relaxed operations: the same bits on every machine.
 * @see WebAssembly Core Specification 2.0, §5 (binary format), §6.5 (vector instructions)
 */
export type Bytes = readonly number[];

export const unsigned = (n: number): Bytes => (n < 128 ? [n] : [(n & 127) | 128, ...unsigned(n >>> 7)]);
const counted = (bytes: Bytes): Bytes => [...unsigned(bytes.length), ...bytes];
const list = (items: readonly Bytes[]): Bytes => [...unsigned(items.length), ...items.flat()];
const name = (text: string): Bytes => counted([...new TextEncoder().encode(text)]);
const section = (id: number, body: Bytes): Bytes => [id, ...counted(body)];

const [i32, v128, functionKind, memoryKind] = [0x7f, 0x7b, 0x00, 0x02];
const end = 0x0b;
export const get = (local: number): Bytes => [0x20, ...unsigned(local)];
export const set = (local: number): Bytes => [0x21, ...unsigned(local)];
/** A whole number from 0 to 63. */
const small = (n: number): Bytes => [0x41, n];
export const plus: Bytes = [0x6a];
const [minus, tee, branchBackIf] = [0x6b, 0x22, [0x0d, 0]];

/** local += by */
export const step = (local: number, by: number): Bytes => [...get(local), ...small(by), ...plus, ...set(local)];
/** Does `body`, takes `by` from the local, and again until nothing is left of it. */
export const untilNone = (local: number, by: number, ...body: readonly Bytes[]): Bytes => [
  ...[0x03, 0x40, ...body.flat()],
  ...[...get(local), ...small(by), minus, tee, ...unsigned(local), ...branchBackIf, end],
];

/** Four numbers from an address in a local, or one of them four times. */
export const vectorAt = (local: number, offset: number): Bytes => [...get(local), 0xfd, 0x00, 2, offset];
export const splatAt = (local: number): Bytes => [...get(local), 0xfd, 0x09, 2, 0];
/** Address and vector are on the stack. */
export const storeVector = (offset: number): Bytes => [0xfd, 0x0b, 2, offset];
export const constant = (x: number): Bytes => {
  const four = new Uint8Array(Float32Array.of(x, x, x, x).buffer);
  return [0xfd, 0x0c, ...four];
};
const vector = (code: number): Bytes => [0xfd, code, 0x01];
export const [add, subtract, multiply, divide] = [vector(0xe4), vector(0xe5), vector(0xe6), vector(0xe7)];
/** `b` where it is smaller (larger) than `a`, else `a`, in order of the stack. */
export const [lesser, larger] = [vector(0xea), vector(0xeb)];

export interface WasmFunction {
  readonly name: string;
  /** Whole numbers; nothing is given back. */
  readonly parameters: number;
  /** Further locals: whole numbers, then vectors. */
  readonly locals: readonly [number, number];
  readonly body: Bytes;
}

const pageBytes = 65_536;

/** A module of these functions, by name, and of `memory` for so many bytes. */
export function moduleOf(functions: readonly WasmFunction[], bytes: number): Uint8Array<ArrayBuffer> {
  const pages = unsigned(Math.ceil(bytes / pageBytes));
  const signatures = functions.map(({ parameters }) => [0x60, ...list(Array(parameters).fill([i32])), 0]);
  const exported = functions.map((one, n) => [...name(one.name), functionKind, n]);
  const codes = functions.map(({ locals: [numbers, vectors], body }) =>
    counted([
      ...list([
        [...unsigned(numbers), i32],
        [...unsigned(vectors), v128],
      ]),
      ...body,
      end,
    ]),
  );
  return Uint8Array.of(
    ...[0x00, 0x61, 0x73, 0x6d, 1, 0, 0, 0],
    ...section(1, list(signatures)),
    ...section(3, list(functions.map((_, n) => [n]))),
    ...section(5, list([[1, ...pages, ...pages]])),
    ...section(7, list([...exported, [...name("memory"), memoryKind, 0]])),
    ...section(10, list(codes)),
  );
}
