/**
 * A WebAssembly module of three small functions, written out byte by byte so that nothing needs fetching: the sum of
 * `product` for 4, 2 or 1 positions. 128-bit vectors, no fused or relaxed operations: the same bits on every machine.
 * @see WebAssembly Core Specification 2.0, §5 (binary format), §6.5 (vector instructions)
 */

type Block = (
  x: number,
  xStride: number,
  weights: number,
  bias: number,
  inputs: number,
  outputs: number,
  out: number,
  outStride: number,
) => void;
/** By number of positions. Addresses and strides in bytes; outputs a multiple of 8, inputs at least 1. */
export interface Kernel {
  readonly 1: Block;
  readonly 2: Block;
  readonly 4: Block;
}

type Bytes = readonly number[];
const unsigned = (n: number): Bytes => (n < 128 ? [n] : [(n & 127) | 128, ...unsigned(n >>> 7)]);
const counted = (bytes: Bytes): Bytes => [...unsigned(bytes.length), ...bytes];
const list = (items: readonly Bytes[]): Bytes => [...unsigned(items.length), ...items.flat()];
const name = (text: string): Bytes => counted([...new TextEncoder().encode(text)]);
const section = (id: number, body: Bytes): Bytes => [id, ...counted(body)];

const [i32, v128, functionKind, memoryKind] = [0x7f, 0x7b, 0x00, 0x02];
const get = (local: number): Bytes => [0x20, ...unsigned(local)];
const set = (local: number): Bytes => [0x21, ...unsigned(local)];
const small = (n: number): Bytes => [0x41, n];
const [plus, minus, end, branchBackIf]: readonly Bytes[] = [[0x6a], [0x6b], [0x0b], [0x0d, 0]];
const loop = (...body: readonly Bytes[]): Bytes => [0x03, 0x40, ...body.flat(), ...(end as Bytes)];
const step = (local: number, by: number): Bytes => [...get(local), ...small(by), ...(plus as Bytes), ...set(local)];
const vectorAt = (local: number, offset: number): Bytes => [...get(local), 0xfd, 0x00, 2, offset];
const splatAt = (local: number): Bytes => [...get(local), 0xfd, 0x09, 2, 0];
const storeVector: Bytes = [0xfd, 0x0b, 2];
const [multiply, add]: readonly Bytes[] = [
  [0xfd, 0xe6, 0x01],
  [0xfd, 0xe4, 0x01],
];

/** The eight parameters, then the locals. */
const [x, xStride, weights, bias, inputs, outputs, out, outStride, left, row] = [0, 1, 2, 3, 4, 5, 6, 7, 8, 9] as const;

function block(positions: number): Bytes {
  const all = Array.from({ length: positions }, (_, p) => p);
  const pointer = (p: number) => 10 + p;
  const [low, high, splat] = [0, 1, 2].map((n) => 10 + positions + n) as [number, number, number];
  const sum = (p: number, half: number) => 13 + positions + 2 * p + half;
  const accumulate = (p: number, half: number, weight: number): Bytes =>
    [get(sum(p, half)), get(splat), get(weight), multiply as Bytes, add as Bytes, set(sum(p, half))].flat();

  const begin = all.flatMap((p) => [
    ...[...vectorAt(bias, 0), ...set(sum(p, 0)), ...vectorAt(bias, 16), ...set(sum(p, 1))],
    ...(p === 0 ? get(x) : [...get(pointer(p - 1)), ...get(xStride), ...(plus as Bytes)]),
    ...set(pointer(p)),
  ]);
  const oneInput = all.flatMap((p) => [
    ...[...splatAt(pointer(p)), ...set(splat)],
    ...[...accumulate(p, 0, low), ...accumulate(p, 1, high)],
    ...step(pointer(p), 4),
  ]);
  const allInputs = [...get(inputs), ...set(left)].concat(
    loop([...vectorAt(weights, 0), ...set(low), ...vectorAt(weights, 16), ...set(high)], oneInput, step(weights, 32), [
      ...get(left),
      ...small(1),
      ...(minus as Bytes),
      0x22,
      left,
      ...(branchBackIf as Bytes),
    ]),
  );
  const finish = all.flatMap((p) => [
    ...(p === 0 ? get(out) : [...get(row), ...get(outStride), ...(plus as Bytes)]),
    ...set(row),
    ...[...get(row), ...get(sum(p, 0)), ...storeVector, 0],
    ...[...get(row), ...get(sum(p, 1)), ...storeVector, 16],
  ]);
  const eightOutputs = loop(begin, allInputs, finish, step(bias, 32), step(out, 32), [
    ...[...get(outputs), ...small(8), ...(minus as Bytes), 0x22, outputs],
    ...(branchBackIf as Bytes),
  ]);
  const locals = list([
    [2 + positions, i32],
    [3 + 2 * positions, v128],
  ]);
  return counted([...locals, ...eightOutputs, ...(end as Bytes)]);
}

const pageBytes = 65_536;
const sizes = [1, 2, 4] as const;

function moduleBytes(pages: number): Uint8Array<ArrayBuffer> {
  const signature = [0x60, ...list(Array(8).fill([i32])), 0];
  return Uint8Array.of(
    ...[0x00, 0x61, 0x73, 0x6d, 1, 0, 0, 0],
    ...section(1, list([signature])),
    ...section(3, list(sizes.map(() => [0]))),
    ...section(5, list([[1, ...unsigned(pages), ...unsigned(pages)]])),
    ...section(
      7,
      list([...sizes.map((size, n) => [...name(String(size)), functionKind, n]), [...name("memory"), memoryKind, 0]]),
    ),
    ...section(10, list(sizes.map(block))),
  );
}

/** The kernel and its memory, or null where WebAssembly or its vectors may not be used (old devices, strict pages). */
export function compileKernel(bytes: number): { readonly kernel: Kernel; readonly memory: ArrayBuffer } | null {
  try {
    const module = new WebAssembly.Module(moduleBytes(Math.ceil(bytes / pageBytes)));
    const { exports } = new WebAssembly.Instance(module);
    return {
      kernel: exports as unknown as Kernel,
      memory: (exports.memory as WebAssembly.Memory).buffer as ArrayBuffer,
    };
  } catch {
    return null;
  }
}
