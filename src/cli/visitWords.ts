import { content } from '../content/allContent.ts';
import type { VisitWords } from './visitText.ts';

const itemLabels = new Map(content.protocols.flatMap(({ items }) => Object.values(items).map(({ id, label }) => [id, label] as const)));
const questionLabels = new Map(content.questions.map(({ id, label }) => [id, label]));

const needLabels: Readonly<Record<string, string>> = {
  'fluoride-base': 'Fluoride every day',
  'fluoride-extra': 'More fluoride at home',
  'professional-fluoride': 'Fluoride at the visit',
  antimicrobial: 'Antimicrobial',
  'acid-control': 'Acid control',
  sweetener: 'Sweetener that does not ferment',
  'calcium-phosphate': 'Calcium and phosphate',
  saliva: 'Saliva',
  sealing: 'Sealing',
  diet: 'Food and drink',
  'acid-wear-advice': 'Advice on acid wear',
  referral: 'Referral',
};

/** Labels from the edition in use; an id without a label stands for itself. */
export const visitWords: VisitWords = {
  itemLabel: (id) => itemLabels.get(id) ?? id,
  questionLabel: (id) => questionLabels.get(id) ?? id,
  needLabel: (kind) => needLabels[kind] ?? kind,
};
