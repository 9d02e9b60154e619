import type { PlanLine } from '../regimen/types.ts';
import { formatNumber } from './formatForLeaflet.ts';
import type { LeafletUse } from './leafletTable.ts';
import type { Say } from './sayMessage.ts';
import type { StepAmount } from './types.ts';

/** Drawn length where 1 to 2 cm is said. */
const RIBBON_MIDDLE_CM = 1.5;

/**
 * The amount of one use, in words and for drawing. Paste goes by the plan's size for the age (smear, pea, ribbon); the rest by
 * what the shelf states.
 * @returns undefined where neither states one; never a guessed amount
 */
export function findStepAmount(line: PlanLine, row: LeafletUse | undefined, say: Say, locale: string): StepAmount | undefined {
  switch (row?.measure) {
    case 'paste':
      return tellPaste(line.amountKind, row.ribbonCm, say, locale);
    case 'pea':
      return { kind: 'pea', text: say('amount.pea') };
    case 'pea-on-finger':
      return { kind: 'pea', isOnFinger: true, text: say('amount.pea') };
    case 'piece': {
      const pieces = /^\s*(\d+)\b/.exec(line.use.amount)?.[1];
      if (pieces === undefined) return undefined;
      return { kind: 'piece', value: Number(pieces), text: say('amount.pieces', { n: Number(pieces) }) };
    }
    case 'none':
      return undefined;
    default: {
      const { amountMl } = line.use;
      return amountMl === undefined
        ? undefined
        : { kind: 'mL', value: amountMl, text: say('amount.mL', { n: formatNumber(amountMl, locale) }) };
    }
  }
}

function tellPaste(kind: PlanLine['amountKind'], ribbonCm: number | undefined, say: Say, locale: string): StepAmount | undefined {
  if (kind === undefined) return undefined;
  if (kind !== 'ribbon') return { kind, text: say(`amount.${kind}`) };
  if (ribbonCm === undefined) return { kind, value: RIBBON_MIDDLE_CM, text: say('amount.ribbonOneToTwo') };
  return { kind, value: ribbonCm, text: say('amount.ribbon', { n: formatNumber(ribbonCm, locale) }) };
}
