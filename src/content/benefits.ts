import type { BenefitRow, BenefitTables } from '../core/regimen/benefit/benefitTables.ts';
import type { SourceRef } from '../core/visit/answer.ts';
import { agentFacts } from './agentFacts.ts';

const read = (key: string, note?: string): SourceRef => ({ key, status: 'read', note });

const FOREVER = 200;
const CHILDREN = { fromAgeYears: 0, belowAgeYears: 17 };
const OF_SCHOOL_AGE = { fromAgeYears: 6, belowAgeYears: 17 };
const AGAINST_PLACEBO = 'the trials compared with no fluoride, and people of a level mostly use such a paste already.';
const COUNTED_OTHERWISE = 'no outcome of this level at this age counts what these trials counted.';

/**
 * A figure as the agent carries it, so that it stands once.
 * @throws RangeError when the agent has no such effect, or one that is no share of what was prevented
 */
function figureOf(agentId: keyof typeof agentFacts, effectId: string, of: string): BenefitRow['figure'] {
  const line = agentFacts[agentId].evidence.find(({ effect }) => effect?.id === effectId);
  const { measure, estimate, interval } = line?.effect ?? {};
  if (!line || estimate === undefined || estimate === null)
    throw new RangeError(`effectId of ${agentId} is not in the evidence: ${effectId}`);
  if (measure === 'prevented-fraction') return { of, says: line.says, prevented: { at: estimate, range: interval }, source: line.source };
  if (measure !== 'risk-ratio') throw new RangeError(`effectId of ${agentId} is no prevented share: ${effectId}`);
  const range = interval && ([1 - interval[1], 1 - interval[0]] as const);
  return { of, says: line.says, prevented: { at: 1 - estimate, range }, source: line.source };
}

const BESIDE_PASTE = figureOf('F_RINSE_005', 'EV_COMBO', 'added topical fluoride beside paste');

/** Outcomes of levels, and which pooled figure stands for which agent. For clinicians; nothing of it goes on a leaflet. */
export const benefits: BenefitTables = {
  outcomes: [
    {
      id: 'teaching-clinic-under-6',
      protocols: ['four_level_0_5_2010'],
      fromAgeYears: 0,
      belowAgeYears: 6,
      byLevel: { low: 0.204, moderate: 0.306, high: 0.687, extreme: 0.687 },
      unit: 'share-of-people',
      says: 'about # children of one teaching clinic had evident decay when they were seen again (1,315 of 3,810 were).',
      source: read('chaffee2016'),
    },
    {
      id: 'teaching-clinic-adults',
      protocols: ['four_level_6plus_2019'],
      fromAgeYears: 18,
      belowAgeYears: FOREVER,
      byLevel: { low: 0.94, moderate: 1.26, high: 1.79, extreme: 3.26 },
      unit: 'count-per-person',
      says: 'adults of one teaching clinic had # newly decayed or filled teeth in 18 months on average (4,468 of 18,004 were seen again).',
      source: read('chaffee2015', 'an earlier form of the list'),
    },
  ],
  rows: [
    {
      agentId: 'F_PASTE_STD',
      ...CHILDREN,
      figure: figureOf('F_PASTE_STD', 'EV_TP10', 'ordinary fluoride paste'),
      notCombined: AGAINST_PLACEBO,
    },
    {
      agentId: 'F_PASTE_2800',
      ...CHILDREN,
      figure: figureOf('F_PASTE_2800', 'EV_TP10-2800', 'paste of 2,800 ppm'),
      notCombined: AGAINST_PLACEBO,
    },
    {
      agentId: 'F_PASTE_5000',
      fromAgeYears: 60,
      belowAgeYears: FOREVER,
      figure: figureOf('F_PASTE_5000', 'EV_ROOT16', 'paste of about 5,000 ppm'),
      notCombined: 'no level has an outcome of roots alone, and what was read has no interval.',
    },
    ...['F_RINSE_005', 'F_RINSE_02'].map((agentId) => ({
      agentId,
      ...OF_SCHOOL_AGE,
      figure: BESIDE_PASTE,
      notCombined: COUNTED_OTHERWISE,
      published: [
        {
          number: 16,
          baseline: 0.25,
          says: 'As published for rinses alone: 16 children rinse for one surface saved in a year where 0.25 surfaces a year decay.',
          source: read('rinseNumbers'),
        },
        {
          number: 2,
          baseline: 2.14,
          says: 'As published for rinses alone: 2 children where 2.14 surfaces a year decay.',
          source: read('rinseNumbers'),
        },
      ],
    })),
    { agentId: 'F_GEL_SNF2', ...OF_SCHOOL_AGE, figure: BESIDE_PASTE, notCombined: COUNTED_OTHERWISE },
    {
      agentId: 'F_GEL_APF',
      ...OF_SCHOOL_AGE,
      figure: figureOf('F_GEL_APF', 'EV_GEL15', 'gel by the professional'),
      notCombined: COUNTED_OTHERWISE,
    },
    {
      agentId: 'F_VARNISH',
      fromAgeYears: 0,
      belowAgeYears: 6,
      figure: figureOf('F_VARNISH', 'EV_FVPRE', 'varnish in preschool children'),
      combine: {
        outcomeId: 'teaching-clinic-under-6',
        levels: ['low', 'moderate'],
        caveat:
          'One child treated over the time of these trials, beside usual care; the trials and the clinic were different people. The range in which a next trial would fall reaches no difference.',
      },
      notCombined: 'decay at the next examination is mostly decay that was there before, or this list has no followed outcome.',
      published: [
        {
          number: 17,
          baseline: 0.5,
          says: 'As published: 17 preschool children where 50 in 100 would have new decay.',
          source: read('desousa2019'),
        },
      ],
    },
    {
      agentId: 'F_VARNISH',
      ...OF_SCHOOL_AGE,
      figure: figureOf('F_VARNISH', 'EV_FV13', 'varnish in permanent teeth'),
      notCombined: COUNTED_OTHERWISE,
    },
    {
      agentId: 'POLYOL_GUM',
      fromAgeYears: 5,
      belowAgeYears: FOREVER,
      figure: figureOf('POLYOL_GUM', 'EV_SFG', 'sugar-free gum'),
      notCombined: COUNTED_OTHERWISE,
    },
    {
      agentId: 'SEALANT',
      ...OF_SCHOOL_AGE,
      figure: {
        of: 'sealants',
        says: 'About 6 in 100 sealed molars decayed against 40 in 100 without, children and adolescents, 6 trials: about 3 molars for one saved where that many decay.',
        source: read('sealants2013'),
      },
      notCombined: 'these are molars, and the outcome of a level is of people or of all their teeth.',
    },
  ],
};
