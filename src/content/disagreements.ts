import type { Disagreement, TableChange } from '../core/regimen/disagreement/types.ts';
import type { SafetyRule, Trigger } from '../core/regimen/tables.ts';
import type { SourceRef } from '../core/visit/answer.ts';
import { safetyRules } from './safetyRules.ts';

const read = (key: string, note?: string): SourceRef => ({ key, status: 'read', note });
const memory = (key: string, note?: string): SourceRef => ({ key, status: 'memory', note });

const everywhere = (years: number) => ({ US: years, UK: years, unknown: years });
const AS_IT_STANDS: TableChange = {};

/** The trigger of a rule with another age, everything else as it stands. */
function atAge(ruleId: string, years: number): Trigger {
  const rule = safetyRules.find(({ id }) => id === ruleId);
  if (!rule) throw new RangeError(`ruleId must name a safety rule: ${ruleId}`);
  return { ...rule.trigger, ageBelowYears: everywhere(years) };
}

const chlorhexidineFrom = (years: number, says: string): SafetyRule => ({
  id: 'C42',
  agentIds: ['CHX_RINSE', 'CHX_VARNISH'],
  trigger: { ageBelowYears: everywhere(years) },
  level: 'stop',
  because: says,
  action: 'Another way; a dentist may decide otherwise with a reason.',
  source: read('chlorhexidineLabels', 'age of 12 from memory'),
});

const toddlerPaste: SafetyRule = {
  id: 'C43',
  agentIds: ['F_PASTE_STD', 'ARGININE', 'FTCP'],
  trigger: { ageBelowYears: everywhere(2) },
  level: 'caution',
  because: 'the label asks a dentist or physician under 2',
  action: 'A smear, put on by an adult, once the dentist has said so.',
  source: read('fdaMonograph'),
};

const waitAfterAcid: SafetyRule = {
  id: 'C44',
  agentIds: ['F_PASTE_STD', 'F_PASTE_LOW', 'F_PASTE_2800', 'F_PASTE_5000', 'ARGININE', 'FTCP', 'HAP'],
  trigger: { always: true },
  level: 'warn',
  because: 'brushing after acid',
  action: 'After something acid rinse with water, and wait 30 minutes before brushing.',
  source: memory('handbook'),
};

const onlyByChoice = (says: string, source: SourceRef, ...agentIds: readonly string[]): TableChange => ({
  byChoiceOnly: { agentIds, because: { says, source } },
});

const BY_CHOICE = 'never proposed by itself, only by a dentist’s own choice';

/**
 * Where the sources of this edition disagree: the positions, which of them holds until the practice chooses, and what the choice changes.
 * A disagreement from which nothing follows is told as well, and says so.
 */
export const disagreements: readonly Disagreement[] = [
  {
    id: 'fluoride-upper-level',
    question: 'Above which fluoride a day is nothing more proposed?',
    kind: 'setting',
    positions: [
      { id: 'lowest', says: 'the lowest of all that are named', sources: [read('iom1997'), read('efsa2025')], change: AS_IT_STANDS },
      {
        id: 'us-1997',
        says: 'the US levels of 1997: 1.3 mg under 4 years, 2.2 mg under 9, then 10 mg',
        sources: [read('iom1997')],
        change: { upperLevelsOf: ['iom1997'] },
      },
      {
        id: 'european-2025',
        says: 'the European levels of 2025: 1.6 mg under 4 years, 2.0 mg under 9, then 3.3 mg as a safe level',
        sources: [read('efsa2025')],
        change: { upperLevelsOf: ['efsa2025'] },
      },
    ],
    unset: 'lowest',
    unsetBecause: 'stricter',
    changes: 'A product that would take the day above the level is not proposed. The other levels are still shown beside the sum.',
  },
  {
    id: 'rinse-age',
    question: 'From which age may a fluoride rinse be used at home?',
    kind: 'setting',
    positions: [
      {
        id: 'from-8',
        says: 'from 8 years, as the national toolkit of 2021 offers it',
        sources: [memory('preventionToolkit', 'age from study notes')],
        change: {
          rules: {
            C07: {
              trigger: atAge('C07', 8),
              because: 'a rinse is for those of 8 years and over who can spit it out',
              source: memory('preventionToolkit', 'age from study notes; able to spit is our own rule'),
            },
          },
          without: ['P07'],
        },
      },
      {
        id: 'from-6',
        says: 'from 6 years, as the labels print it',
        sources: [read('rinseLabels')],
        change: { rules: { C07: { trigger: atAge('C07', 6), because: 'a rinse is for those of 6 years and over who can spit it out' } } },
      },
    ],
    unset: 'from-8',
    unsetBecause: 'stricter',
    changes: 'Below this age no fluoride rinse is proposed. At any age nobody rinses who cannot spit.',
  },
  {
    id: 'high-paste-age',
    question: 'From which age may a paste of about 5,000 ppm be used?',
    kind: 'elsewhere',
    positions: [
      { id: 'from-6', says: 'from 6 years (US label)', sources: [read('highFluorideLabels')] },
      { id: 'from-16', says: 'from 16 years (UK label)', sources: [read('highFluorideLabels')] },
    ],
    says: 'Goes by "Law and labels of" under Settings; where the place is not said, the higher age holds.',
  },
  {
    id: 'paste-under-2',
    question: 'Fluoride paste before the second birthday?',
    kind: 'setting',
    positions: [
      {
        id: 'first-tooth',
        says: 'a smear from the first tooth, as guidelines say',
        sources: [read('adaPaste'), read('preventionToolkit', 'secondary')],
        change: AS_IT_STANDS,
      },
      {
        id: 'from-2',
        says: 'under 2 years only once a dentist has signed, as the US label has it',
        sources: [read('fdaMonograph')],
        change: { moreRules: [toddlerPaste] },
      },
    ],
    unset: 'first-tooth',
    unsetBecause: 'proposal',
    changes: 'With the second, paste for a child under 2 waits for a signature.',
  },
  {
    id: 'high-paste-frequency',
    question: 'How often a day is a paste of about 5,000 ppm used?',
    kind: 'elsewhere',
    positions: [
      { id: 'once', says: 'once (US gel label)', sources: [read('highFluorideLabels')] },
      { id: 'twice', says: 'twice (guideline of 2013)', sources: [read('ada2013')] },
      { id: 'three-times', says: 'three times, after meals (UK label)', sources: [read('highFluorideLabels')] },
    ],
    says: 'Set with each product on the Shelf, as its own label has it.',
  },
  {
    id: 'beside-high-paste',
    question: 'Other fluoride beside a paste of about 5,000 ppm?',
    kind: 'setting',
    positions: [
      {
        id: 'with-the-sum',
        says: 'together, as guidelines combine them, with the sum of the day looked at first',
        sources: [read('ada2013')],
        change: AS_IT_STANDS,
      },
      {
        id: 'never',
        says: 'no varnish, gel, rinse or supplement beside it, as its UK label has it',
        sources: [read('smpcHighFluoride')],
        change: {
          interactions: { I07: { level: 'stop', action: 'One or the other: the UK label of the paste has no other fluoride beside it.' } },
        },
      },
    ],
    unset: 'with-the-sum',
    unsetBecause: 'proposal',
    changes: 'With the second, such products never stand in one plan with the paste. With the first, the plan names the label.',
  },
  {
    id: 'chlorhexidine-for-decay',
    question: 'Chlorhexidine against decay?',
    kind: 'elsewhere',
    positions: [
      { id: 'in-protocols', says: 'in lists of care by level', sources: [memory('chlorhexidineCaries')] },
      { id: 'against', says: 'a guideline of 2011 advises against the rinse', sources: [read('ada2011')] },
      { id: 'no-support', says: 'a review of trials finds no support', sources: [memory('walsh2015')] },
    ],
    says: 'Never proposed by itself. A dentist chooses it for one person, or writes a protocol under "Protocols of our own".',
  },
  {
    id: 'chlorhexidine-age',
    question: 'From which age may chlorhexidine be used?',
    kind: 'setting',
    positions: [
      {
        id: 'from-18',
        says: 'from 18 years: the US label knows no use below',
        sources: [read('chlorhexidineLabels')],
        change: { moreRules: [chlorhexidineFrom(18, 'below 18, where the US label knows no use')] },
      },
      {
        id: 'from-12',
        says: 'from 12 years on a professional’s advice (UK label)',
        sources: [memory('chlorhexidineLabels', 'age from memory')],
        change: { moreRules: [chlorhexidineFrom(12, 'below 12, the age on its label')] },
      },
    ],
    unset: 'from-18',
    unsetBecause: 'stricter',
    changes: 'Below this age it is stopped; a dentist may lift that with a reason.',
  },
  {
    id: 'chlorhexidine-and-paste',
    question: 'How long between chlorhexidine and a paste with sodium lauryl sulfate?',
    kind: 'setting',
    positions: [
      { id: 'half-an-hour', says: '30 minutes or more', sources: [read('kolahi2006')], change: AS_IT_STANDS },
      {
        id: 'two-hours',
        says: '2 hours',
        sources: [read('kolahi2006')],
        change: { interactions: { I01: { apartMinutes: 120, action: 'Keep chlorhexidine and paste 2 hours apart.' } } },
      },
      { id: 'no-time', says: 'no time: a later review saw no loss', sources: [read('elkerbout2016')], change: { without: ['I01'] } },
    ],
    unset: 'half-an-hour',
    unsetBecause: 'proposal',
    changes: 'What stands on the line of the plan, and how far apart the two are in the day. Its order with fluoride paste stays.',
  },
  {
    id: 'chlorhexidine-and-hypochlorite',
    question: 'Do chlorhexidine and hypochlorite form a harmful substance?',
    kind: 'nothing-to-set',
    positions: [
      { id: 'found', says: 'older analyses found one', sources: [memory('khatib2020')] },
      { id: 'not-found', says: 'a later review of better methods did not', sources: [read('khatib2020')] },
    ],
    says: 'Nothing to set: the two never stand in one plan, whoever is right.',
  },
  {
    id: 'varnish-effect',
    question: 'How much does varnish prevent?',
    kind: 'nothing-to-set',
    positions: [
      { id: 'large', says: 'reviews of 2013: about four tenths of new decay', sources: [read('marinho2013')] },
      {
        id: 'small',
        says: 'preschool children, 2019: about one tenth, and one trial in schools without effect',
        sources: [read('desousa2019'), read('milsom2011')],
      },
    ],
    says: 'Nothing to set: both stand with the product, for clinicians. No rule hangs on the figure.',
  },
  {
    id: 'xylitol',
    question: 'Xylitol as a sweetener that is not fermented?',
    kind: 'setting',
    positions: [
      {
        id: 'as-listed',
        says: 'proposed where the list of care names it; no prevention is promised',
        sources: [read('milgrom2006'), read('riley2015', 'low certainty')],
        change: AS_IT_STANDS,
      },
      {
        id: 'by-choice',
        says: `${BY_CHOICE}: high levels in blood went with heart events in one cohort`,
        sources: [memory('witkowski2024')],
        change: onlyByChoice('low certainty, and an open question about the heart', memory('witkowski2024'), 'XYLITOL'),
      },
    ],
    unset: 'as-listed',
    unsetBecause: 'proposal',
    changes: 'With the second, gum without xylitol is proposed instead, where the list allows it and the shelf holds it.',
  },
  {
    id: 'arginine',
    question: 'Arginine paste with fluoride?',
    kind: 'setting',
    positions: [
      {
        id: 'as-fluoride-paste',
        says: 'taken like any fluoride paste of its strength; nothing more is promised',
        sources: [read('arginineTrials')],
        change: AS_IT_STANDS,
      },
      {
        id: 'by-choice',
        says: `${BY_CHOICE}: the largest trial saw none of 1.5 %, though 26 % fewer new surfaces with 8 %`,
        sources: [read('arginineTrials')],
        change: onlyByChoice('trials disagree', read('arginineTrials'), 'ARGININE'),
      },
    ],
    unset: 'as-fluoride-paste',
    unsetBecause: 'proposal',
    changes: 'Whether it may come as the daily fluoride paste.',
  },
  {
    id: 'hydroxyapatite',
    question: 'Hydroxyapatite paste without fluoride?',
    kind: 'setting',
    positions: [
      {
        id: 'beside-fluoride',
        says: 'as calcium and phosphate beside a fluoride paste, never in its place',
        sources: [read('paszynska'), read('sccs2025')],
        change: AS_IT_STANDS,
      },
      {
        id: 'by-choice',
        says: `${BY_CHOICE}: shown not worse only within a wide margin, with authors of a maker`,
        sources: [read('paszynska')],
        change: onlyByChoice('shown not worse only within a wide margin', read('paszynska'), 'HAP'),
      },
    ],
    unset: 'beside-fluoride',
    unsetBecause: 'proposal',
    changes: 'Whether it may come where the list of care asks for calcium and phosphate.',
  },
  {
    id: 'casein',
    question: 'Casein paste with calcium phosphate?',
    kind: 'setting',
    positions: [
      {
        id: 'as-listed',
        says: 'proposed where the list of care names it',
        sources: [memory('F2007')],
        change: AS_IT_STANDS,
      },
      {
        id: 'by-choice',
        says: `${BY_CHOICE}: a guideline of 2018 suggests not to use it where fluoride, sealant or infiltration is at hand (low certainty)`,
        sources: [read('slayton2018'), read('azarpazhooh2008')],
        change: onlyByChoice('suggested against where fluoride is at hand', read('slayton2018'), 'CPP_ACP'),
      },
    ],
    unset: 'as-listed',
    unsetBecause: 'proposal',
    changes: 'Whether it may come where the list of care asks for calcium and phosphate.',
  },
  {
    id: 'brushing-after-acid',
    question: 'Wait with brushing after something acid?',
    kind: 'setting',
    positions: [
      {
        id: 'no-wait',
        says: 'no time is asked: pooled results on human enamel show no clear benefit',
        sources: [read('hong2020')],
        change: AS_IT_STANDS,
      },
      {
        id: 'half-an-hour',
        says: '30 minutes, as is common advice',
        sources: [memory('handbook')],
        change: { moreRules: [waitAfterAcid] },
      },
    ],
    unset: 'no-wait',
    unsetBecause: 'proposal',
    changes: 'With the second, the line of each paste says to wait.',
  },
  {
    id: 'alkaline-rinse',
    question: 'Bicarbonate for acid control, without a trial on decay?',
    kind: 'setting',
    positions: [
      {
        id: 'as-listed',
        says: 'proposed where the list of care names it',
        sources: [memory('F2007'), read('nciOral')],
        change: AS_IT_STANDS,
      },
      {
        id: 'by-choice',
        says: `${BY_CHOICE}: no trial looked at decay`,
        sources: [memory('handbook')],
        change: onlyByChoice('no trial looked at decay', memory('handbook'), 'BICARB'),
      },
    ],
    unset: 'as-listed',
    unsetBecause: 'proposal',
    changes: 'Whether it may come for acid control. Hypochlorite is off either way without a protocol of your own.',
  },
  {
    id: 'povidone-iodine',
    question: 'Povidone-iodine in small children?',
    kind: 'nothing-to-set',
    positions: [
      { id: 'first-year', says: 'fewer new lesions in the first year', sources: [read('milgrom2021')] },
      { id: 'second-year', says: 'no clear difference in the second', sources: [read('milgrom2021')] },
    ],
    says: 'Nothing to set: it is never proposed by itself, only a dentist chooses it.',
  },
  {
    id: 'after-swallowing',
    question: 'What to do when too much fluoride was swallowed?',
    kind: 'nothing-to-set',
    positions: [
      { id: 'older', says: 'older monographs and tables advise to empty the stomach', sources: [read('swallowedReview')] },
      { id: 'current', says: 'the current UK label says that this is not to be done', sources: [read('smpcHighFluoride')] },
    ],
    says: 'Nothing to set: never vomiting. Poison centre now, and emergency care now from 5 mg per kg.',
  },
  {
    id: 'roots',
    question: 'Daily 5,000 ppm paste or silver fluoride once a year for roots?',
    kind: 'nothing-to-set',
    positions: [
      { id: 'paste', says: 'the guideline of 2018 puts the paste first', sources: [read('slayton2018')] },
      { id: 'silver', says: 'silver fluoride once a year stands behind it', sources: [read('slayton2018')] },
    ],
    says: 'Nothing to set: the paste comes first, and silver fluoride only by a dentist’s choice with consent.',
  },
  {
    id: 'supplement-age',
    question: 'From which age may fluoride drops or tablets be thought of?',
    kind: 'setting',
    positions: [
      {
        id: 'from-3',
        says: 'from 3 years and at high risk only (US authority, 31 October 2025)',
        sources: [read('fda2025supplements')],
        change: AS_IT_STANDS,
      },
      {
        id: 'from-half-a-year',
        says: 'from 6 months and at high risk only (guideline of 2010)',
        sources: [read('ada2010supplements')],
        change: {
          rules: {
            C40: {
              trigger: { ageBelowYears: { US: 3, UK: 0, EU: 0, unknown: 3 }, levelBelow: 'high' },
              because: 'only where risk is high, and in the US not under 3 years',
              source: read('ada2010supplements', 'and the US authority since 31 October 2025'),
            },
          },
        },
      },
    ],
    unset: 'from-3',
    unsetBecause: 'stricter',
    changes:
      'Below this age they are stopped; in the US, and where the place is not known, under 3 years either way. They are off by default at every age: only a dentist chooses them.',
  },
  {
    id: 'bitewing-months',
    question: 'How many months between bitewings?',
    kind: 'elsewhere',
    positions: [
      { id: 'table-2012', says: 'the table of 2012', sources: [read('bitewings2012')] },
      {
        id: 'guideline-2026',
        says: 'a guideline of 2026 that replaces it and was not read',
        sources: [memory('bitewings2012', 'that it is replaced')],
      },
    ],
    says: 'Set under "Months between bitewings"; until then no time is named.',
  },
];
