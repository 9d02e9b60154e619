import type { PlanLine } from '../regimen/types.ts';
import { fillIn, formatNumber } from './formatForLeaflet.ts';
import type { LeafletUse, LeafletWords } from './leafletTable.ts';
import type { StepAmount } from './types.ts';

/** Drawn length where 1 to 2 cm is said. */
const RIBBON_MIDDLE_CM = 1.5;

/**
 * The amount of one use, in words and for drawing. Paste goes by the plan's size for the age (smear, pea, ribbon); the rest by
 * what the shelf states.
 * @returns undefined where neither states one; never a guessed amount
 */
export function findStepAmount(line: PlanLine, row: LeafletUse | undefined, words: LeafletWords, locale: string): StepAmount | undefined {
  switch (row?.measure) {
    case 'paste':
      return tellPaste(line.amountKind, row.ribbonCm, words, locale);
    case 'pea':
      return { kind: 'pea', text: words.amounts.pea };
    case 'pea-on-finger':
      return { kind: 'pea', isOnFinger: true, text: words.amounts.pea };
    case 'piece': {
      const pieces = /^\s*(\d+)\b/.exec(line.use.amount)?.[1];
      if (pieces === undefined) return undefined;
      return {
        kind: 'piece',
        value: Number(pieces),
        text: fillIn(pieces === '1' ? words.amounts.piece : words.amounts.pieces, { n: pieces }),
      };
    }
    case 'none':
      return undefined;
    default: {
      const { amountMl } = line.use;
      return amountMl === undefined
        ? undefined
        : { kind: 'mL', value: amountMl, text: fillIn(words.amounts.mL, { n: formatNumber(amountMl, locale) }) };
    }
  }
}

function tellPaste(
  kind: PlanLine['amountKind'],
  ribbonCm: number | undefined,
  words: LeafletWords,
  locale: string,
): StepAmount | undefined {
  if (kind === undefined) return undefined;
  if (kind !== 'ribbon') return { kind, text: words.amounts[kind] };
  if (ribbonCm === undefined) return { kind, value: RIBBON_MIDDLE_CM, text: words.amounts.ribbonOneToTwo };
  return { kind, value: ribbonCm, text: fillIn(words.amounts.ribbon, { n: formatNumber(ribbonCm, locale) }) };
}
