import type { NeedKind } from '../core/regimen/types.ts';
import { capitalise } from './format.ts';

/** An item that meets several needs stands under the first of these. */
export const NEED_ORDER: readonly NeedKind[] = [
  'fluoride-base',
  'fluoride-extra',
  'professional-fluoride',
  'antimicrobial',
  'acid-control',
  'sweetener',
  'calcium-phosphate',
  'saliva',
  'sealing',
  'diet',
  'acid-wear-advice',
  'referral',
];

export const needWords = (need: string): string => capitalise(need.replaceAll('-', ' '));

/** The need that a product is listed under; undefined when it meets none by itself. */
export const firstNeed = (meets: readonly NeedKind[]): NeedKind | undefined => NEED_ORDER.find((need) => meets.includes(need));
