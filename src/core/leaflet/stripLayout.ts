import type { StepAmount } from './types.ts';

/** A shape in mm from the top left of its own drawing, in true size: paste on the outline of a brush head, or liquid in a straight cup. */
export type AmountShape =
  | {
      readonly kind: 'brush';
      readonly widthMm: number;
      readonly heightMm: number;
      readonly head: RoundedBox;
      readonly handle: RoundedBox;
      readonly paste: RoundedBox;
    }
  | { readonly kind: 'cup'; readonly widthMm: number; readonly heightMm: number; readonly levelMm: number };

export interface RoundedBox {
  readonly xMm: number;
  readonly yMm: number;
  readonly widthMm: number;
  readonly heightMm: number;
  readonly radiusMm: number;
}

/** A brush head as most are, mm; paste lies along it. */
const HEAD_MM = { width: 27, height: 11, handle: 9, handleHeight: 4.5 };
/** A grain of rice, a pea, and the bead that comes out of a tube, mm. */
const RICE_MM = { width: 6, height: 2 };
const PEA_MM = 7;
const BEAD_MM = 6;
/** The cup is drawn this wide inside; taller fills than this are told in words only. */
const CUP_MM = 30;
const TALLEST_FILL_MM = 25;
const CUP_RIM_MM = 4;

/**
 * The amount in true size.
 * @returns undefined for pieces, whose size is the pack's, for what goes on a finger, for liquids too much for the page, and for a ribbon
 *   or liquid without a value
 */
export function shapeOfAmount(amount: StepAmount): AmountShape | undefined {
  if (amount.kind === 'piece' || amount.isOnFinger === true) return undefined;
  if (amount.kind === 'mL') return cupOf(amount.value);
  const paste = pasteBox(amount);
  if (paste === undefined) return undefined;
  const headMm = Math.max(HEAD_MM.width, paste.width + 3);
  return {
    kind: 'brush',
    widthMm: headMm + HEAD_MM.handle,
    heightMm: HEAD_MM.height,
    head: centred(0, headMm, HEAD_MM.height, HEAD_MM.height / 2.6),
    handle: centred(headMm, HEAD_MM.handle, HEAD_MM.handleHeight, 0),
    paste: centred((headMm - paste.width) / 2, paste.width, paste.height, paste.height / 2),
  };
}

function pasteBox({ kind, value }: StepAmount): { readonly width: number; readonly height: number } | undefined {
  if (kind === 'smear') return RICE_MM;
  if (kind === 'pea') return { width: PEA_MM, height: PEA_MM };
  return value === undefined ? undefined : { width: value * 10, height: BEAD_MM };
}

function centred(xMm: number, widthMm: number, heightMm: number, radiusMm: number): RoundedBox {
  return { xMm, yMm: (HEAD_MM.height - heightMm) / 2, widthMm, heightMm, radiusMm };
}

function cupOf(mL: number | undefined): AmountShape | undefined {
  if (mL === undefined) return undefined;
  const levelMm = (mL * 1000) / (Math.PI * (CUP_MM / 2) ** 2);
  return levelMm > TALLEST_FILL_MM ? undefined : { kind: 'cup', widthMm: CUP_MM, heightMm: levelMm + CUP_RIM_MM, levelMm };
}

/** One stroke of a hatched part, mm. */
export interface HatchStroke {
  readonly x1: number;
  readonly y1: number;
  readonly x2: number;
  readonly y2: number;
}

/** A box as both renderers draw it. */
export const rectOf = ({ xMm, yMm, widthMm, heightMm, radiusMm }: RoundedBox) => ({
  x: xMm,
  y: yMm,
  width: widthMm,
  height: heightMm,
  rx: radiusMm,
  ry: radiusMm,
});

/**
 * Strokes rising at 45 degrees that fill a box, cut off at its edges.
 * @param stepMm  mm between strokes along the base, above 0
 */
export function hatchBox(
  box: { readonly xMm: number; readonly yMm: number; readonly widthMm: number; readonly heightMm: number },
  stepMm: number,
): readonly HatchStroke[] {
  if (!(stepMm > 0)) throw new RangeError(`stepMm must be above 0: ${stepMm}`);
  const { xMm, yMm, widthMm, heightMm } = box;
  const count = Math.ceil((widthMm + heightMm) / stepMm);
  return Array.from({ length: count }, (_, i) => i * stepMm - heightMm + stepMm / 2)
    .map((start) => {
      const from = Math.max(0, start);
      const to = Math.min(widthMm, start + heightMm);
      return { x1: xMm + from, y1: yMm + heightMm - (from - start), x2: xMm + to, y2: yMm + heightMm - (to - start) };
    })
    .filter(({ x1, x2 }) => x2 > x1);
}
