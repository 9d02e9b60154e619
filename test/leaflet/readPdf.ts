import { inflateSync } from 'node:zlib';

export interface PdfContents {
  readonly pages: number;
  /** Width and height of the first page, points. */
  readonly sizePt: readonly [number, number];
  readonly fonts: readonly string[];
  /** Text in drawing order, without the spaces that a reader adds between pieces. */
  readonly text: string;
  /** Drawing operators of all pages. */
  readonly drawing: string;
  /** Sizes of type used, points, smallest first. */
  readonly typeSizesPt: readonly number[];
}

/** Reads what this project's own PDFs hold: uncompressed objects, deflated streams, fonts of two-byte glyph ids with a map to Unicode. */
export function readPdf(bytes: Uint8Array): PdfContents {
  const source = Buffer.from(bytes).toString('latin1');
  const objects = new Map([...source.matchAll(/(\d+) 0 obj\n([\s\S]*?)\nendobj/g)].map(([, id, body]) => [id ?? '', body ?? '']));
  const box = /\/MediaBox \[0 0 ([\d.]+) ([\d.]+)\]/.exec(source);
  const drawn = contentOf(objects);
  return {
    pages: source.match(/\/Type\s*\/Page\b/g)?.length ?? 0,
    sizePt: [Number(box?.[1]), Number(box?.[2])],
    fonts: [...new Set([...source.matchAll(/\/BaseFont \/[A-Z]+\+(\S+)/g)].map(([, name]) => name ?? ''))],
    drawing: drawn,
    text: readText(drawn, mapsOf(objects, source)),
    typeSizesPt: [...new Set([...drawn.matchAll(/\/F\d+ ([\d.]+) Tf/g)].map(([, size]) => Number(size)))].sort((a, b) => a - b),
  };
}

function streamOf(body: string): string {
  const start = body.indexOf('stream\n') + 'stream\n'.length;
  const bytes = Buffer.from(body.slice(start, body.lastIndexOf('\nendstream')), 'latin1');
  return (body.includes('/FlateDecode') ? inflateSync(bytes) : bytes).toString('latin1');
}

function contentOf(objects: ReadonlyMap<string, string>): string {
  const pages = [...objects.values()].filter((body) => /\/Type \/Page\b/.test(body));
  return pages.map((page) => streamOf(objects.get(/\/Contents (\d+) 0 R/.exec(page)?.[1] ?? '') ?? '')).join('\n');
}

/** Font name on the page to glyph id to letters. */
function mapsOf(objects: ReadonlyMap<string, string>, source: string): ReadonlyMap<string, ReadonlyMap<string, string>> {
  const fonts = [...source.matchAll(/\/(F\d+) (\d+) 0 R/g)];
  return new Map(
    fonts.map(([, name, id]) => {
      const toUnicode = /\/ToUnicode (\d+) 0 R/.exec(objects.get(id ?? '') ?? '')?.[1];
      return [name ?? '', readCMap(streamOf(objects.get(toUnicode ?? '') ?? ''))];
    }),
  );
}

function readCMap(cmap: string): ReadonlyMap<string, string> {
  const letters = new Map<string, string>();
  const fromHex = (hex: string) => String.fromCharCode(...(hex.match(/.{4}/g) ?? []).map((code) => Number.parseInt(code, 16)));
  for (const [, from, , list] of cmap.matchAll(/<([0-9a-f]{4})> <([0-9a-f]{4})> \[([^\]]*)\]/gi)) {
    const first = Number.parseInt(from ?? '', 16);
    [...(list ?? '').matchAll(/<([0-9a-f]*)>/gi)].forEach(([, hex], i) => {
      letters.set((first + i).toString(16).padStart(4, '0'), fromHex(hex ?? ''));
    });
  }
  return letters;
}

function readText(drawn: string, maps: ReadonlyMap<string, ReadonlyMap<string, string>>): string {
  let font = '';
  const pieces: string[] = [];
  for (const [, name, array] of drawn.matchAll(/\/(F\d+) [\d.]+ Tf|\[([^\]]*)\] TJ/g)) {
    if (name !== undefined) font = name;
    else {
      const glyphs = [...(array ?? '').matchAll(/<([0-9a-f]+)>/gi)].flatMap(([, hex]) => (hex ?? '').match(/.{4}/g) ?? []);
      pieces.push(glyphs.map((glyph) => maps.get(font)?.get(glyph.toLowerCase()) ?? '?').join(''));
    }
  }
  return pieces.join('');
}
