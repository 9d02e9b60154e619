import type { BenefitTables } from '../core/regimen/benefit/benefitTables.ts';
import type { SourceRef } from '../core/visit/answer.ts';

const read = (key: string, note?: string): SourceRef => ({ key, status: 'read', note });

const memory = (key: string): SourceRef => ({ key, status: 'memory' });
const mixed = (key: string, note: string): SourceRef => ({ key, status: 'mixed', note });

const FOREVER = 200;
const CHILDREN = { fromAgeYears: 0, belowAgeYears: 17 };
const OF_SCHOOL_AGE = { fromAgeYears: 6, belowAgeYears: 17 };
const AGAINST_PLACEBO = 'the trials compared with no fluoride, and people of a level mostly use such a paste already.';
const COUNTED_OTHERWISE = 'no outcome of this level at this age counts what these trials counted.';

const BESIDE_PASTE = {
  of: 'added topical fluoride beside paste',
  says: 'Prevented fraction 10 % (2 to 17) against paste alone.',
  prevented: { at: 0.1, range: [0.02, 0.17] as const },
  source: memory('marinho2004b'),
};

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
      figure: {
        of: 'ordinary fluoride paste',
        says: 'Prevented fraction 23 % (19 to 27) against placebo, 1,000 to 1,250 ppm, children to 16, 66 trials.',
        prevented: { at: 0.23, range: [0.19, 0.27] },
        source: read('walsh2010'),
      },
      notCombined: AGAINST_PLACEBO,
    },
    {
      agentId: 'F_PASTE_2800',
      ...CHILDREN,
      figure: {
        of: 'paste of 2,800 ppm',
        says: 'Prevented fraction 36 % (27 to 44) against placebo, 2,400 to 2,800 ppm, children to 16.',
        prevented: { at: 0.36, range: [0.27, 0.44] },
        source: read('walsh2010'),
      },
      notCombined: AGAINST_PLACEBO,
    },
    {
      agentId: 'F_PASTE_5000',
      fromAgeYears: 60,
      belowAgeYears: FOREVER,
      figure: {
        of: 'paste of about 5,000 ppm',
        says: 'Root caries of older people: about half the risk against 1,000 to 1,450 ppm; no interval was read.',
        prevented: { at: 0.5 },
        source: read('ekstrand2016'),
      },
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
      figure: {
        of: 'gel by the professional',
        says: 'Prevented fraction 28 % (19 to 36).',
        prevented: { at: 0.28, range: [0.19, 0.36] },
        source: mixed('marinho2015', 'interval from memory'),
      },
      notCombined: COUNTED_OTHERWISE,
    },
    {
      agentId: 'F_VARNISH',
      fromAgeYears: 0,
      belowAgeYears: 6,
      figure: {
        of: 'varnish in preschool children',
        says: 'Risk ratio 0.88 (0.81 to 0.95) for new decay, preschool children, 17 trials pooled; low certainty.',
        prevented: { at: 0.12, range: [0.05, 0.19] },
        source: read('desousa2019'),
      },
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
      figure: {
        of: 'varnish in permanent teeth',
        says: 'Prevented fraction 43 % (30 to 57).',
        prevented: { at: 0.43, range: [0.3, 0.57] },
        source: mixed('marinho2013', 'interval from memory'),
      },
      notCombined: COUNTED_OTHERWISE,
    },
    {
      agentId: 'POLYOL_GUM',
      fromAgeYears: 5,
      belowAgeYears: FOREVER,
      figure: {
        of: 'sugar-free gum',
        says: 'Prevented fraction 28 % (7 to 48) against no gum, adults and children, 8 trials pooled, results widely spread.',
        prevented: { at: 0.28, range: [0.07, 0.48] },
        source: read('newton2020'),
      },
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
