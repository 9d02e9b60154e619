import type { AnswerValue } from '../visit/answer.ts';
import type { MouthReason } from '../visit/mouthReason.ts';
import type { Question } from '../visit/question.ts';
import type { Finding, MouthDecision } from '../visit/types.ts';

/** What is measured and what is not yet settled takes its place once the level is proposed (`sayGlands`). */
export const GLANDS_FIRST = 'Gland function lost or at risk: saliva is measured before the level is settled.';

const GLANDS_WITHOUT_TEETH = 'Gland function lost or at risk: care for a dry mouth applies without teeth too.';

const SENTENCES: Readonly<Record<MouthReason, string>> = {
  'no-natural-teeth': 'No natural teeth: caries level does not apply.',
  'implants-only': 'Implants only: caries level does not apply.',
  'no-teeth-yet': 'No teeth yet: caries level does not apply before the first tooth.',
  'overdenture-roots': 'Roots under an overdenture: the level is for these roots.',
  'braces-or-retainer': 'Brace or bonded retainer: note whether the swab site was free. A covered site gives no reading to compare.',
  'lost-gland-function': GLANDS_FIRST,
  'acid-wear': 'Acid wear is a finding with its own advice. It is on no list and adds no caries minutes.',
};
const TEETH_UNKNOWN = 'Natural teeth: not recorded. Look first; the level holds only where there are teeth or roots.';
const CONTRADICTION = 'Recorded as having no teeth, but teeth are charted today: check.';

/** Answers to `natural_teeth` after which no level applies, unless teeth are charted. */
const NO_LEVEL: Readonly<Record<string, MouthReason>> = {
  none: 'no-natural-teeth',
  'implants-only': 'implants-only',
  'none-yet': 'no-teeth-yet',
};
const GLAND_CONDITIONS = ['sjogren', 'head-neck-radiotherapy', 'salivary-glands-lost'];
const SITE_APPLIANCES = ['fixed-brace', 'bonded-retainer'];
const ACID_WEAR_ANSWERS = ['acid', 'acid-and-other'];
/** All milk teeth are usually through by now, so "none yet" is more likely a slip of the key. */
const NONE_YET_BELOW_YEARS = 3;

/** The questions that decide the mouth. They are asked in every mouth. */
export const MOUTH_QUESTIONS: readonly string[] = ['natural_teeth', 'appliance', 'conditions', 'tooth_wear'];

/**
 * Whether a caries level can be given for this mouth, and what must be said first.
 * Unknown natural teeth are not taken as teeth: a level may be proposed, with the sentence that says what was not recorded. Teeth charted
 * today settle the question, and outweigh an answer that says there are none.
 * @param known      answers that count today, by question id: those of `MOUTH_QUESTIONS`
 * @param ageYears   completed years
 * @param questions  every question; those that make no sense in this mouth are named in `notAsked`
 */
export function decideMouth({
  known,
  findings,
  ageYears,
  questions = [],
}: {
  readonly known: Readonly<Record<string, AnswerValue>>;
  readonly findings: readonly Finding[];
  readonly ageYears: number;
  readonly questions?: readonly Question[] | undefined;
}): MouthDecision {
  const teeth = known.natural_teeth;
  const hasChartedTeeth = findings.length > 0;
  const noLevel = typeof teeth === 'string' ? NO_LEVEL[teeth] : undefined;
  const isContradiction = noLevel !== undefined && hasChartedTeeth;

  const reasons: MouthReason[] = [];
  if (noLevel && !isContradiction) reasons.push(noLevel);
  if (teeth === 'overdenture-roots') reasons.push('overdenture-roots');
  if (holdsAny(known.appliance, SITE_APPLIANCES) && reasons.length === 0) reasons.push('braces-or-retainer');
  if (holdsAny(known.conditions, GLAND_CONDITIONS)) reasons.push('lost-gland-function');
  if (hasAcidWear(known.tooth_wear, findings) && (!noLevel || isContradiction)) reasons.push('acid-wear');

  const isLate = teeth === 'none-yet' && ageYears >= NONE_YET_BELOW_YEARS && !isContradiction;
  const sentences = [
    ...(teeth === undefined && !hasChartedTeeth ? [TEETH_UNKNOWN] : []),
    ...(isContradiction ? [CONTRADICTION] : []),
    ...reasons.map((reason) =>
      noLevel && !isContradiction && reason === 'lost-gland-function' ? GLANDS_WITHOUT_TEETH : SENTENCES[reason],
    ),
    ...(isLate ? [`Recorded as no teeth yet at ${ageYears} years: check.`] : []),
  ];
  const applies = sentences.length === 0 ? 'level-applies' : 'level-with-note';
  return {
    kind: noLevel && !isContradiction ? 'level-does-not-apply' : applies,
    reasons,
    sentences,
    swab: sayOfSwab(reasons, known.appliance),
    notAsked: questions.filter(({ notIn }) => notIn?.some((reason) => reasons.includes(reason))).map(({ id }) => id),
  };
}

/** The usual site is the tongue side of the lower front teeth. */
function sayOfSwab(reasons: readonly MouthReason[], appliance: AnswerValue | undefined): MouthDecision['swab'] {
  const [first] = reasons;
  if (first === 'no-natural-teeth' || first === 'implants-only' || first === 'no-teeth-yet') {
    const why = { 'no-natural-teeth': 'no natural teeth', 'implants-only': 'implants only', 'no-teeth-yet': 'no teeth yet' }[first];
    return { site: 'none', says: `Nowhere to swab: ${why}. The visit is complete without a reading.` };
  }
  if (first === 'overdenture-roots') {
    return {
      site: 'may-be-missing',
      says: 'Roots under an overdenture: the usual site is there only where lower front roots stand free. Elsewhere note another site: it is not counted.',
    };
  }
  if (holdsAny(appliance, ['bonded-retainer'])) {
    return {
      site: 'may-be-covered',
      says: 'A bonded retainer often lies on the site: swab only where the tongue side of the lower front teeth is free, else note the appliance.',
    };
  }
  return null;
}

const hasAcidWear = (told: AnswerValue | undefined, findings: readonly Finding[]): boolean =>
  findings.some(({ kind }) => kind === 'acid-wear') || (typeof told === 'string' && ACID_WEAR_ANSWERS.includes(told));

function holdsAny(value: AnswerValue | undefined, ids: readonly string[]): boolean {
  return Array.isArray(value) && value.some((id) => ids.includes(id));
}
