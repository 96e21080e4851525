/**
 * Pictures of codes as a camera would take them, made of plain arrays: drawn by an independent writer (bwip-js), then
 * turned, seen at an angle of light, blurred and grainy.
 */
import bwipjs from "bwip-js/node";

export interface Spoilt {
  readonly turnDeg?: number;
  /** Radius of the blur, in widths of the code's narrowest part. */
  readonly blur?: number;
  /** 0: even light; 0.7: the far corner has three tenths of the light. */
  readonly shade?: number;
  /** Grain, in grey levels to either side. */
  readonly grain?: number;
  /** Pixels for the narrowest part of the code. */
  readonly modulePx?: number;
}

export interface GreyPicture {
  readonly width: number;
  readonly height: number;
  /** One byte a pixel, row by row. */
  readonly grey: Uint8Array;
}

export type CodeKind = "gs1datamatrix" | "gs1-128" | "ean13" | "qrcode" | "gs1qrcode" | "datamatrix";

type Drawn = { columns: number; rows: number; isDark: (column: number, row: number) => boolean };

function drawn(kind: CodeKind, text: string): Drawn {
  const parse = kind === "datamatrix" ? { parsefnc: true } : {};
  const [raw] = bwipjs.raw({ bcid: kind, text, ...parse }) as unknown as [
    { pixs?: number[]; pixx: number; pixy: number; sbs?: number[] },
  ];
  const { pixs, sbs } = raw;
  if (pixs) {
    return { columns: raw.pixx, rows: raw.pixy, isDark: (x, y) => pixs[y * raw.pixx + x] === 1 };
  }
  // A linear code is the widths of its bars and spaces, a bar first.
  const bars = (sbs ?? []).flatMap((width, i) => Array.from({ length: width }, () => i % 2 === 0));
  return { columns: bars.length, rows: Math.ceil(bars.length / 3), isDark: (x) => bars[x] === true };
}

/** As large as the camera is asked for. */
const [width, height] = [1280, 720];

/** @returns a picture with the code in its middle. */
export function codePicture(kind: CodeKind, text: string, spoilt: Spoilt = {}): GreyPicture {
  const code = drawn(kind, text);
  const fits = Math.floor(Math.min((width - 60) / code.columns, (height - 60) / code.rows));
  const modulePx = Math.min(spoilt.modulePx ?? 8, fits);
  const turn = ((spoilt.turnDeg ?? 0) * Math.PI) / 180;
  const [cos, sin] = [Math.cos(turn), Math.sin(turn)];
  const light = (x: number, y: number) => 1 - ((spoilt.shade ?? 0) * (x / width + y / height)) / 2;
  const paper = (x: number, y: number): number => {
    const [fromX, fromY] = [x - width / 2, y - height / 2];
    const column = Math.floor((fromX * cos + fromY * sin) / modulePx + code.columns / 2);
    const row = Math.floor((fromY * cos - fromX * sin) / modulePx + code.rows / 2);
    const inside = column >= 0 && column < code.columns && row >= 0 && row < code.rows;
    return inside && code.isDark(column, row) ? 25 : 230;
  };
  let seen = new Float64Array(width * height);
  for (let y = 0; y < height; y++)
    for (let x = 0; x < width; x++) seen[y * width + x] = paper(x + 0.5, y + 0.5) * light(x, y);
  for (let again = 0; again < 2; again++) seen = blurred(seen, width, height, (spoilt.blur ?? 0) * modulePx);
  const grain = grainOf(spoilt.grain ?? 0);
  return { width, height, grey: Uint8Array.from(seen, (value) => Math.max(0, Math.min(255, value + grain()))) };
}

/** A box blur; twice is close to a lens out of focus. */
function blurred(from: Float64Array, width: number, height: number, radius: number): Float64Array<ArrayBuffer> {
  const reach = Math.round(radius);
  const along = (source: Float64Array, dx: number, dy: number) => {
    const made = new Float64Array(source.length);
    for (let y = 0; y < height; y++)
      for (let x = 0; x < width; x++) {
        let sum = 0;
        for (let k = -reach; k <= reach; k++) {
          const atX = Math.max(0, Math.min(width - 1, x + k * dx));
          const atY = Math.max(0, Math.min(height - 1, y + k * dy));
          sum += source[atY * width + atX] ?? 0;
        }
        made[y * width + x] = sum / (2 * reach + 1);
      }
    return made;
  };
  return reach === 0 ? new Float64Array(from) : along(along(from, 1, 0), 0, 1);
}

/** The same grain each time (Park and Miller's generator). */
function grainOf(levels: number): () => number {
  let state = 20_261_125;
  return () => {
    state = (state * 48_271) % 2_147_483_647;
    return levels * (2 * (state / 2_147_483_647) - 1);
  };
}

export function asRgba({ width, height, grey }: GreyPicture) {
  const data = new Uint8ClampedArray(width * height * 4);
  for (let i = 0; i < grey.length; i++) {
    data.fill(grey[i] ?? 0, i * 4, i * 4 + 3);
    data[i * 4 + 3] = 255;
  }
  return { data, width, height };
}

const nothing = (width: number, height: number): GreyPicture => ({
  ...{ width, height, grey: new Uint8Array(width * height).fill(170) },
});

/**
 * A film for Chromium's fake camera, YUV4MPEG2 in grey, two pictures a second, played over and over.
 * @param scenes what is held up and for how long; null is an empty hand.
 */
export function film(scenes: readonly { readonly picture: GreyPicture | null; readonly seconds: number }[]): Buffer {
  const chroma = Buffer.alloc((width * height) / 2, 128);
  const frames = scenes.flatMap(({ picture, seconds }) => {
    const { grey } = picture ?? nothing(width, height);
    const frame = Buffer.concat([Buffer.from("FRAME\n"), grey, chroma]);
    return Array.from({ length: Math.round(seconds * 2) }, () => frame);
  });
  return Buffer.concat([Buffer.from(`YUV4MPEG2 W${width} H${height} F2:1 Ip A1:1 C420jpeg\n`), ...frames]);
}
