import type { AnswerValue } from '../visit/answer.ts';
import type { Finding, MouthDecision } from '../visit/types.ts';

type Reason = MouthDecision['reasons'][number];

const SENTENCES: Readonly<Record<Reason, string>> = {
  'no-natural-teeth': 'No natural teeth: caries level does not apply.',
  'implants-only': 'Implants only: caries level does not apply.',
  'no-teeth-yet': 'No teeth yet: caries level does not apply before the first tooth.',
  'overdenture-roots': 'Roots under an overdenture: the level is for these roots.',
  'braces-or-retainer': 'Brace or bonded retainer: note whether the swab site was free. A covered site gives no reading to compare.',
  'lost-gland-function': 'Gland function lost or at risk: measure saliva before the level is settled.',
  'acid-wear': 'Acid wear is a finding with its own advice. It is on no list and adds no caries minutes.',
};
const TEETH_UNKNOWN = 'Natural teeth: not recorded. Look first; the level holds only where there are teeth or roots.';
const CONTRADICTION = 'Recorded as having no teeth, but teeth are charted today: check.';

/** Answers to `natural_teeth` after which no level applies, unless teeth are charted. */
const NO_LEVEL: Readonly<Record<string, Reason>> = {
  none: 'no-natural-teeth',
  'implants-only': 'implants-only',
  'none-yet': 'no-teeth-yet',
};
const GLAND_CONDITIONS = ['sjogren', 'head-neck-radiotherapy', 'salivary-glands-lost'];
const SITE_APPLIANCES = ['fixed-brace', 'bonded-retainer'];

/**
 * Whether a caries level can be given for this mouth, and what must be said first.
 * Unknown natural teeth are not taken as teeth: a level may be proposed, with the sentence that says what was not recorded. Teeth charted
 * today settle the question, and outweigh an answer that says there are none.
 * @param known  answers that count today, by question id: `natural_teeth`, `appliance`, `conditions`
 */
export function decideMouth({
  known,
  findings,
}: {
  readonly known: Readonly<Record<string, AnswerValue>>;
  readonly findings: readonly Finding[];
}): MouthDecision {
  const teeth = known.natural_teeth;
  const hasChartedTeeth = findings.length > 0;
  const noLevel = typeof teeth === 'string' ? NO_LEVEL[teeth] : undefined;
  const isContradiction = noLevel !== undefined && hasChartedTeeth;

  const reasons: Reason[] = [];
  if (noLevel && !isContradiction) reasons.push(noLevel);
  if (teeth === 'overdenture-roots') reasons.push('overdenture-roots');
  if (holdsAny(known.appliance, SITE_APPLIANCES)) reasons.push('braces-or-retainer');
  if (holdsAny(known.conditions, GLAND_CONDITIONS)) reasons.push('lost-gland-function');
  if (findings.some((finding) => finding.kind === 'acid-wear')) reasons.push('acid-wear');

  const sentences = [
    ...(teeth === undefined && !hasChartedTeeth ? [TEETH_UNKNOWN] : []),
    ...(isContradiction ? [CONTRADICTION] : []),
    ...reasons.map((reason) => SENTENCES[reason]),
  ];
  const applies = sentences.length === 0 ? 'level-applies' : 'level-with-note';
  return { kind: noLevel && !isContradiction ? 'level-does-not-apply' : applies, reasons, sentences };
}

function holdsAny(value: AnswerValue | undefined, ids: readonly string[]): boolean {
  return Array.isArray(value) && value.some((id) => ids.includes(id));
}
