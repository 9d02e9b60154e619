import type { AgentFacts, Effect, EvidenceLine, Position } from '../core/regimen/agentFacts.ts';
import { sayEffect } from '../core/regimen/sayEffect.ts';
import type { SourceRef } from '../core/visit/answer.ts';

const read = (key: string, note?: string): SourceRef => ({ key, status: 'read', note });
const memory = (key: string, note?: string): SourceRef => ({ key, status: 'memory', note });
const mixed = (key: string, note?: string): SourceRef => ({ key, status: 'mixed', note });
const derived = (key: string, note?: string): SourceRef => ({ key, status: 'derived', note });
const says = (text: string, source: SourceRef): EvidenceLine => ({ says: text, source });

/** Figures of a trial or review; the sentence is made from them, so that both cannot part. */
const found = (effect: Effect, source: SourceRef): EvidenceLine => ({ says: sayEffect(effect), source, effect });
const position = (rating: Position['rating'], text: string, source: SourceRef): EvidenceLine => ({
  says: text,
  source,
  position: { rating },
});

const RINSE_ALONE: readonly EvidenceLine[] = [
  found(
    {
      id: 'EV_RINSE',
      what: 'supervised rinses of 230 ppm daily or 900 ppm weekly against placebo or none',
      outcome: 'surfaces of permanent teeth',
      measure: 'prevented-fraction',
      estimate: 0.27,
      interval: [0.23, 0.3],
      people: 'children at school',
      trials: 35,
      certainty: 'moderate',
    },
    memory('marinho2016', 'percentages from memory, number of trials read'),
  ),
  found(
    {
      id: 'EV_RINSE-teeth',
      what: 'the same rinses',
      outcome: 'permanent teeth',
      measure: 'prevented-fraction',
      estimate: 0.23,
      interval: [0.18, 0.29],
      people: 'children at school',
      trials: 13,
      certainty: 'moderate',
    },
    memory('marinho2016', 'percentages from memory, number of trials read'),
  ),
];

const PASTE_AGAINST_RINSE = found(
  {
    id: 'EV_COMPARE',
    what: 'paste against rinse',
    outcome: 'permanent teeth',
    measure: 'prevented-fraction',
    estimate: 0,
    interval: [-0.18, 0.19],
    people: 'children',
    trials: 15,
    certainty: 'not-rated',
  },
  read('marinho2004a'),
);

const BESIDE_PASTE = found(
  {
    id: 'EV_COMBO',
    what: 'a rinse, gel or varnish beside paste against paste alone',
    outcome: 'permanent teeth',
    measure: 'prevented-fraction',
    estimate: 0.1,
    interval: [0.02, 0.17],
    people: 'children',
    trials: 9,
    certainty: 'not-rated',
  },
  memory('marinho2004b'),
);

const CHLORHEXIDINE_REVIEW = found(
  {
    id: 'EV_CHX15',
    what: 'chlorhexidine gels and varnishes against placebo or none',
    outcome: 'decay',
    measure: 'prevented-fraction',
    estimate: null,
    people: 'children and adolescents',
    trials: 8,
    certainty: 'very-low',
    remark: 'no support',
  },
  mixed('walsh2015', 'number of trials read, certainty from memory'),
);

const NO_PREVENTION = {
  silver: says('Silver fluoride arrests a lesion. It is not given to prevent new ones.', read('oliveira2018')),
  xylitol: says('No prevention is promised: low certainty for paste, no firm evidence for gum and lozenges.', read('riley2015')),
  arginine: says(
    'No prevention is promised for arginine: trials contradict each other; the paste counts for its fluoride.',
    read('astvaldsdottir2016'),
  ),
  mineral: says('No prevention is promised: trials were built to show no more than "not much worse".', mixed('paszynska')),
  bleach: says('No prevention is promised: no trial on decay.', read('hypochloriteTrials')),
  alkaline: says('No prevention is promised: no trial on decay.', memory('handbook')),
} as const;

/**
 * What is known of each agent beyond how it is given: figures with interval, people, trials and certainty, positions of bodies, doses by
 * age as labels and guidelines have them, and harm. For clinicians; no figure and no claim from memory goes on a leaflet.
 */
export const agentFacts = {
  F_PASTE_LOW: {
    evidence: [
      found(
        {
          id: 'EV_TP10-550',
          what: 'paste of 550 ppm and less against placebo',
          outcome: 'permanent and mixed teeth',
          measure: 'prevented-fraction',
          estimate: null,
          people: 'children to 16',
          certainty: 'not-rated',
          remark: 'no effect seen',
        },
        read('walsh2010'),
      ),
      position('not-recommended', 'Not as the only paste.', read('walsh2010')),
    ],
    doses: [],
    harms: [],
  },
  F_PASTE_STD: {
    evidence: [
      found(
        {
          id: 'EV_TP10',
          what: 'paste of 1,000 to 1,250 ppm against placebo',
          outcome: 'permanent and mixed teeth',
          measure: 'prevented-fraction',
          estimate: 0.23,
          interval: [0.19, 0.27],
          people: 'children to 16',
          trials: 66,
          certainty: 'not-rated',
        },
        read('walsh2010'),
      ),
      found(
        {
          id: 'EV_TP03',
          what: 'fluoride paste against placebo',
          outcome: 'surfaces of permanent teeth',
          measure: 'prevented-fraction',
          estimate: 0.24,
          interval: [0.21, 0.28],
          people: '42,300 children',
          trials: 70,
          certainty: 'high',
        },
        read('marinho2003', 'certainty by a later grading'),
      ),
      found(
        {
          id: 'EV_TP19',
          what: 'paste of 1,000 to 1,250 ppm against none',
          outcome: 'permanent teeth',
          measure: 'standardised-mean-difference',
          estimate: -0.28,
          interval: [-0.32, -0.25],
          people: 'children and adolescents',
          trials: 55,
          certainty: 'high',
        },
        memory('walsh2019'),
      ),
      found(
        {
          id: 'EV_TP19-1450',
          what: '1,450 to 1,500 against 1,000 to 1,250 ppm',
          outcome: 'permanent teeth',
          measure: 'standardised-mean-difference',
          estimate: -0.08,
          interval: [-0.14, -0.01],
          people: 'children and adolescents',
          trials: 10,
          certainty: 'moderate',
        },
        memory('walsh2019'),
      ),
      found(
        {
          id: 'EV_BRUSH2',
          what: 'brushing twice against once a day with fluoride paste',
          outcome: 'new decay',
          measure: 'lower-risk',
          estimate: 0.14,
          people: 'children',
          certainty: 'not-rated',
        },
        read('preventionToolkit'),
      ),
      PASTE_AGAINST_RINSE,
      found(
        {
          id: 'EV_COMPARE-gel',
          what: 'paste against gel',
          outcome: 'permanent teeth',
          measure: 'prevented-fraction',
          estimate: 0,
          interval: [-0.21, 0.21],
          people: 'children',
          certainty: 'not-rated',
        },
        read('marinho2004a'),
      ),
      BESIDE_PASTE,
    ],
    doses: [
      {
        fromAgeYears: 2,
        timesPerDay: [2, 2],
        place: 'US',
        says: 'Label: twice a day from 2 years; under 6 a pea, supervised; under 2 ask.',
        source: read('fdaMonograph'),
      },
      { fromAgeYears: 0, timesPerDay: [2, 2], place: 'US', says: 'Council page: from the first tooth, a smear.', source: read('adaPaste') },
      {
        fromAgeYears: 0,
        belowAgeYears: 7,
        place: 'EU',
        says: 'Label of 0.1 to 0.15 % F: to 6 years a pea, supervised.',
        source: read('cosmeticsLabel'),
      },
      {
        fromAgeYears: 0,
        timesPerDay: [2, 2],
        place: 'UK',
        says: 'Twice a day; at raised risk 1,350 to 1,500 ppm at any age.',
        source: read('preventionToolkit', 'secondary'),
      },
    ],
    harms: [
      says('Parents usually put on well over 0.25 g.', read('creeth2013')),
      says('4 to 6 years: 0.67 g a time on average; 0.029 mg/kg a day swallowed, 1 of 61 above 0.1 mg/kg.', read('zohoori2012')),
      says('With 0.454 % stannous fluoride: labelled from 12 years in the US.', read('stannousLabel')),
    ],
  },
  F_PASTE_2800: {
    evidence: [
      found(
        {
          id: 'EV_TP10-2800',
          what: 'paste of 2,400 to 2,800 ppm against placebo',
          outcome: 'permanent and mixed teeth',
          measure: 'prevented-fraction',
          estimate: 0.36,
          interval: [0.27, 0.44],
          people: 'children to 16',
          certainty: 'not-rated',
        },
        read('walsh2010'),
      ),
    ],
    doses: [
      {
        fromAgeYears: 10,
        timesPerDay: [2, 2],
        minutes: 1,
        place: 'UK',
        says: '1 cm, morning and evening, in the place of ordinary paste; spit, nothing for 30 minutes.',
        source: read('smpcHighFluoride'),
      },
    ],
    harms: [says('A 75 mL tube holds 280 mg fluoride.', read('smpcHighFluoride'))],
  },
  F_PASTE_5000: {
    evidence: [
      found(
        {
          id: 'EV_ROOT16',
          what: '5,000 against 1,000 to 1,450 ppm paste',
          outcome: 'root caries',
          measure: 'risk-ratio',
          estimate: 0.5,
          people: 'older people',
          certainty: 'not-rated',
          remark: 'about half',
        },
        read('ekstrand2016'),
      ),
      found(
        {
          id: 'EV_ROOT14',
          what: '5,000 against 1,350 ppm paste, 6 months',
          outcome: 'hardness score of root lesions, lower is harder',
          measure: 'mean-difference',
          estimate: -0.4,
          people: '130 adults',
          trials: 1,
          certainty: 'not-rated',
        },
        read('srinivasan2014'),
      ),
      found(
        {
          id: 'EV_ROOT19',
          what: '5,000 against 1,450 ppm paste, 2 years',
          outcome: 'root caries',
          measure: 'risk-ratio',
          estimate: null,
          people: '345 older people at home',
          trials: 1,
          certainty: 'not-rated',
          remark: 'the abstract contradicts itself (35.2 % against 93.5 % is a ratio of 0.38, it prints 0.10): not used',
        },
        read('leon2019'),
      ),
      position(
        'in-favour',
        'Root lesions: at least once a day, preferred over varnish and over yearly silver fluoride.',
        read('slayton2018'),
      ),
      position('expert-opinion', 'Twice a day from 6 years at raised risk.', read('ada2013')),
      says('Best on roots of 22 treatments without drilling (44 trials, 7,378 people, certainty low to moderate).', read('urquhart2019')),
    ],
    doses: [
      {
        fromAgeYears: 16,
        timesPerDay: [3, 3],
        minutes: 3,
        place: 'UK',
        says: '2 cm, three times a day after meals.',
        source: read('highFluorideLabels'),
      },
      {
        fromAgeYears: 6,
        timesPerDay: [1, 1],
        place: 'US',
        says: 'Gel label: once a day after ordinary paste, brush or tray; under 6 only with special supervision.',
        source: read('highFluorideLabels'),
      },
      {
        fromAgeYears: 6,
        timesPerDay: [2, 2],
        place: 'US',
        says: 'Guideline of 2013: twice a day at raised risk.',
        source: read('ada2013'),
      },
      { fromAgeYears: 6, place: 'US', says: 'Paediatric report: at high risk, able to spit.', source: read('aap2014') },
    ],
    harms: [
      says('A 51 g tube holds 255 mg fluoride by arithmetic; one label prints less, the higher counts.', derived('highFluorideLabels')),
      says('In pregnancy only after a recorded decision.', read('smpcHighFluoride')),
    ],
  },
  F_RINSE_005: {
    evidence: [...RINSE_ALONE, PASTE_AGAINST_RINSE, BESIDE_PASTE],
    doses: [
      {
        fromAgeYears: 6,
        timesPerDay: [1, 1],
        amountMl: [10, 10],
        minutes: 1,
        place: 'US',
        says: '10 mL once a day after brushing, nothing for 30 minutes; watched under 12.',
        source: read('rinseLabels'),
      },
      {
        fromAgeYears: 6,
        timesPerDay: [1, 1],
        amountMl: [5, 10],
        minutes: 1,
        place: 'UK',
        says: '5 to 10 mL once a day, nothing for 15 minutes.',
        source: read('rinseLabels'),
      },
      {
        fromAgeYears: 8,
        timesPerDay: [1, 1],
        place: 'UK',
        says: 'Toolkit: from 8 at raised risk, at another time than brushing.',
        source: read('preventionToolkit', 'secondary'),
      },
    ],
    harms: [],
  },
  F_RINSE_02: {
    evidence: [
      ...RINSE_ALONE,
      position('in-favour', 'At least weekly from 6 to 18 years.', read('ada2013')),
      position('expert-opinion', 'Weekly in adults; daily for adult root caries.', read('ada2013')),
    ],
    doses: [
      {
        fromAgeYears: 6,
        timesPerDay: [1 / 7, 1 / 7],
        place: 'US',
        says: 'At least once a week; daily for adult root caries.',
        source: read('ada2013'),
      },
      {
        fromAgeYears: 6,
        timesPerDay: [1 / 7, 1 / 7],
        amountMl: [10, 10],
        minutes: 1,
        place: 'US',
        says: '10 mL for 1 minute once a week.',
        source: memory('rinseLabels'),
      },
    ],
    harms: [],
  },
  F_GEL_APF: {
    evidence: [
      found(
        {
          id: 'EV_GEL15',
          what: 'fluoride gel against placebo or none',
          outcome: 'permanent teeth',
          measure: 'prevented-fraction',
          estimate: 0.28,
          interval: [0.19, 0.36],
          people: 'children',
          trials: 25,
          certainty: 'moderate',
          remark: '21 % against placebo, 38 % against none',
        },
        mixed('marinho2015', 'interval from memory'),
      ),
      found(
        {
          id: 'EV_GEL15-primary',
          what: 'fluoride gel against placebo or none',
          outcome: 'primary teeth',
          measure: 'prevented-fraction',
          estimate: 0.2,
          interval: [0.01, 0.38],
          people: 'children',
          trials: 3,
          certainty: 'low',
        },
        mixed('marinho2015', 'interval and certainty from memory'),
      ),
      found(
        {
          id: 'EV_GEL02',
          what: 'fluoride gel against placebo or none',
          outcome: 'permanent teeth',
          measure: 'prevented-fraction',
          estimate: 0.28,
          interval: [0.19, 0.37],
          people: '7,747 children',
          trials: 23,
          certainty: 'not-rated',
        },
        read('marinho2002'),
      ),
      position(
        'in-favour',
        '6 to 18 years, 4 minutes every 3 to 6 months. Foam, weak varnish and cleaning paste are not recommended.',
        read('ada2013'),
      ),
    ],
    doses: [
      {
        fromAgeYears: 6,
        timesPerYear: [2, 4],
        amountG: [0, 4],
        minutes: 4,
        says: 'At most 2 g a tray, suction throughout, upright, never alone, then spit for 30 to 60 seconds.',
        source: read('lecompte1987', 'the 4 minutes and every 3 to 6 months from ada2013'),
      },
    ],
    harms: [says('10 to 31 mg F stay in the mouth without suction and spitting, 2 to 7.5 mg with both.', read('lecompte1987'))],
  },
  F_GEL_SNF2: {
    evidence: [says('No trial of this gel alone was read.', memory('fdaMonograph'))],
    doses: [
      {
        fromAgeYears: 6,
        timesPerDay: [1, 1],
        minutes: 1,
        place: 'US',
        says: 'Once a day, leave 1 minute, spit, nothing for 30 minutes.',
        source: memory('fdaMonograph'),
      },
    ],
    harms: [says('Stains from outside and tastes of metal.', memory('fdaMonograph'))],
  },
  F_VARNISH: {
    evidence: [
      found(
        {
          id: 'EV_FV13',
          what: 'fluoride varnish against placebo or none',
          outcome: 'permanent teeth',
          measure: 'prevented-fraction',
          estimate: 0.43,
          interval: [0.3, 0.57],
          people: 'children and adolescents',
          trials: 13,
          certainty: 'moderate',
        },
        mixed('marinho2013', 'estimates read in a summary, interval from memory'),
      ),
      found(
        {
          id: 'EV_FV13P',
          what: 'fluoride varnish against placebo or none',
          outcome: 'primary teeth',
          measure: 'prevented-fraction',
          estimate: 0.37,
          interval: [0.24, 0.51],
          people: 'children',
          trials: 10,
          certainty: 'moderate',
        },
        mixed('marinho2013', 'estimates read in a summary, interval from memory'),
      ),
      found(
        {
          id: 'EV_FVPRE',
          what: 'fluoride varnish against placebo, care as usual or none',
          outcome: 'children with new decay',
          measure: 'risk-ratio',
          estimate: 0.88,
          interval: [0.81, 0.95],
          people: 'children under 71 months',
          trials: 17,
          certainty: 'low',
          remark: 'the prediction interval reaches no difference',
        },
        read('desousa2019'),
      ),
      found(
        {
          id: 'EV_FVSCH',
          what: 'varnish three times a year at school against none, 3 years',
          outcome: 'surfaces, 0.65 against 0.67',
          measure: 'mean-difference',
          estimate: -0.02,
          people: '2,967 children of 7 to 8 years',
          trials: 1,
          certainty: 'not-rated',
          remark: 'no difference',
        },
        read('milsom2011'),
      ),
      BESIDE_PASTE,
      position('in-favour', 'Every 3 to 6 months at raised risk, the only professional fluoride under 6.', read('ada2013')),
      says(
        'Varnish with a sealant was best on chewing surfaces, varnish on smooth ones, of 22 treatments (44 trials, 7,378 people, certainty low to moderate).',
        read('urquhart2019'),
      ),
    ],
    doses: [
      {
        fromAgeYears: 0,
        timesPerYear: [2, 4],
        says: 'Every 6 months, may be every 3. Most a visit: see amounts by age.',
        source: read('varnishMonographs'),
      },
    ],
    harms: [
      says('No brushing or chewing for 4 hours; no strong gel that day; supplements pause for several days.', read('varnishMonographs')),
      says('Not on an empty stomach; holds alcohol, 0.2 g at most in a dose.', read('varnishMonographs')),
    ],
  },
  SDF38: {
    evidence: [
      found(
        {
          id: 'EV_SDF81',
          what: 'silver diamine fluoride 38 %',
          outcome: 'lesions arrested in primary teeth',
          measure: 'share-arrested',
          estimate: 0.81,
          interval: [0.68, 0.89],
          people: 'children',
          trials: 8,
          certainty: 'not-rated',
        },
        memory('gao2016'),
      ),
      found(
        {
          id: 'EV_SDFPREV',
          what: 'silver fluoride on other teeth against none or placebo, 2 years',
          outcome: 'new lesions in dentine of primary teeth',
          measure: 'prevented-fraction',
          estimate: 0.775,
          people: '1,118 children',
          trials: 4,
          certainty: 'insufficient',
          remark: '54 % against varnish; trials not made for this outcome, risk of bias high or unclear',
        },
        read('oliveira2018'),
      ),
      position(
        'in-favour',
        'Twice a year on advanced open lesions of crowns, preferred over weekly varnish (primary teeth: strong, moderate certainty; permanent: conditional, low).',
        read('slayton2018'),
      ),
      says('Root lesions: once a year, behind daily paste of about 5,000 ppm.', read('slayton2018')),
      position(
        'insufficient',
        'One national programme rates arrest as very low to low certainty, prevention as insufficient.',
        read('sdcepSilver'),
      ),
    ],
    doses: [
      {
        fromAgeYears: 0,
        timesPerYear: [2, 2],
        says: 'At most 25 µL for each 10 kg at a visit, at most weekly; 25 µL treat up to 5 teeth.',
        source: read('horst2016'),
      },
    ],
    harms: [
      says('Turns decay black for good.', read('sdfGuideline')),
      says(
        'In trials about 5 % abscess and 8 % dying nerve after twice a year, 3 % with fillings; rarely a burn of the gum.',
        read('silverConsent'),
      ),
      says('A measured drop was 32.6 µL, a third more than its nominal 25.', read('crystal2019')),
    ],
    noPrevention: NO_PREVENTION.silver,
  },
  XYLITOL: {
    evidence: [
      found(
        {
          id: 'EV_XYL',
          what: '10 % xylitol in fluoride paste against the paste alone, 2.5 to 3 years',
          outcome: 'surfaces of permanent teeth',
          measure: 'prevented-fraction',
          estimate: 0.13,
          interval: [0.08, 0.18],
          people: '4,216 children',
          trials: 2,
          certainty: 'low',
          remark: 'other forms: no firm evidence',
        },
        read('riley2015'),
      ),
      found(
        {
          id: 'EV_SFG-xylitol',
          what: 'xylitol gum against none',
          outcome: 'decay',
          measure: 'prevented-fraction',
          estimate: 0.33,
          interval: [0.04, 0.61],
          people: 'adults and children',
          trials: 8,
          certainty: 'low',
          remark: 'results widely spread; a maker of gum paid the sister review',
        },
        mixed('newton2020', 'certainty is our reading of the spread'),
      ),
      says('Mutans streptococci in plaque fell tenfold at 6.9 and 10.3 g a day in 4 portions, not at 3.4 g.', read('milgrom2006')),
      says('3 to 4 times a day works on them, twice does not.', read('ly2006')),
      says(
        '8 g of syrup a day in toddlers: a trial dose of 0.8 to 0.9 g/kg, above our limit. Evidence, never a dose.',
        memory('milgrom2009'),
      ),
      says('Adults, lozenges 5 g a day, 33 months: 10 % fewer lesions, not significant.', memory('bader2013')),
      position('expert-opinion', '5 to 8 g a day in 2 to 3 portions after meals, from 5 years.', read('ada2011')),
    ],
    doses: [
      {
        fromAgeYears: 5,
        timesPerDay: [2, 3],
        gramsPerDay: [5, 8],
        says: '5 to 8 g a day in 2 to 3 portions after meals.',
        source: read('ada2011', 'expert opinion'),
      },
    ],
    harms: [
      says('Gas and loose stools: 0.37 g/kg (men) and 0.42 g/kg (women) at once were borne in one study.', read('oku2007')),
      says('After getting used to it 20 to 70 g a day are borne; sorbitol and mannitol upset from 10 to 20 g.', read('makinen2016')),
      says('Dogs: low blood sugar above 0.1 g/kg, liver failure above 0.5 g/kg.', read('dogsXylitol')),
      says(
        'High xylitol in blood went with heart events in one cohort; a drink of 30 g, far more than these portions, made blood platelets more reactive. Observed only.',
        memory('witkowski2024'),
      ),
    ],
    noPrevention: NO_PREVENTION.xylitol,
  },
  POLYOL_GUM: {
    evidence: [
      found(
        {
          id: 'EV_SFG',
          what: 'sugar-free gum against none',
          outcome: 'decay',
          measure: 'prevented-fraction',
          estimate: 0.28,
          interval: [0.07, 0.48],
          people: 'adults and children',
          trials: 12,
          certainty: 'moderate',
          remark: 'results widely spread; a maker of gum paid the sister review',
        },
        read('newton2020'),
      ),
      position('in-favour', '10 to 20 minutes after meals, from 5 years (weak); adults by expert opinion.', read('ada2011')),
    ],
    doses: [{ fromAgeYears: 5, minutes: 10, says: '10 to 20 minutes after meals.', source: read('ada2011') }],
    harms: [says('Sugar alcohols: gas and loose stools.', read('makinen2016'))],
  },
  CHX_RINSE: {
    evidence: [
      CHLORHEXIDINE_REVIEW,
      found(
        {
          id: 'EV_RCT12',
          what: 'chlorhexidine and fluoride rinse by risk against care as usual, 2 years',
          outcome: 'new surfaces',
          measure: 'lower-risk',
          estimate: 0.24,
          people: '231 adults',
          trials: 1,
          certainty: 'not-rated',
          remark: 'p 0.10: the main result was not significant; an adjusted model had p 0.02',
        },
        read('featherstone2012'),
      ),
      position('against', 'For crowns and for roots, alone or with fluoride.', read('ada2011')),
    ],
    doses: [
      {
        fromAgeYears: 12,
        timesPerDay: [1, 2],
        amountMl: [10, 10],
        minutes: 1,
        courseDays: 30,
        place: 'UK',
        says: '0.2 %: 10 mL, up to twice a day, about a month for gums.',
        source: mixed('chlorhexidineLabels', 'age from memory'),
      },
      {
        fromAgeYears: 18,
        timesPerDay: [2, 2],
        amountMl: [15, 15],
        minutes: 0.5,
        place: 'US',
        says: '0.12 %: 15 mL for 30 seconds twice a day after brushing; seen again at 6 months at the latest.',
        source: read('chlorhexidineLabels'),
      },
      {
        fromAgeYears: 18,
        timesPerDay: [1, 1],
        amountMl: [10, 10],
        minutes: 1,
        courseDays: 7,
        says: 'Against decay in one published protocol, outside the label: 10 mL at bedtime for 7 days of each month.',
        source: mixed('chlorhexidineCaries', 'clinic sheets read, the tables of the paper not'),
      },
    ],
    harms: [
      says('Anaphylaxis; stain of teeth, tongue and fillings; taste; burning; peeling; swollen glands.', read('chlorhexidineLabels')),
      says(
        'US label: in pregnancy only if clearly needed. A child who swallows some can show signs of alcohol.',
        read('chlorhexidineLabels'),
      ),
      says('Some 0.2 % packs hold 7 % alcohol and aspartame; the US 0.12 % rinse holds 11.6 % alcohol.', read('chlorhexidineLabels')),
    ],
  },
  CHX_VARNISH: {
    evidence: [
      CHLORHEXIDINE_REVIEW,
      position('in-favour', 'Every 3 months for root caries in adults.', read('ada2011')),
      position(
        'not-recommended',
        'Not for crowns; stronger chlorhexidine varnish is advised against, weak gel not recommended.',
        read('ada2011'),
      ),
    ],
    doses: [{ fromAgeYears: 18, timesPerYear: [4, 4], says: 'Every 3 months on roots.', source: read('ada2011') }],
    harms: [says('Anaphylaxis is described for chlorhexidine.', read('chlorhexidineLabels'))],
  },
  NAOCL: {
    evidence: [
      says('0.25 % twice a week in gum disease, 12 people seen at 3 months; no decay outcome.', read('hypochloriteTrials')),
      says('0.2 % for 21 days, 60 adults with sore gums: like chlorhexidine; no decay outcome.', read('hypochloriteTrials')),
    ],
    doses: [
      {
        fromAgeYears: 18,
        timesPerDay: [2 / 7, 2 / 7],
        amountMl: [15, 15],
        minutes: 0.5,
        says: "Only by the practice's own protocol; a trial had 15 mL of at most 0.25 %, fresh, twice a week for 3 months.",
        source: read('hypochloriteTrials'),
      },
    ],
    harms: [says('0.05 % twice a day for 21 days: brown stain in every user.', read('hypochloriteTrials'))],
    noPrevention: NO_PREVENTION.bleach,
  },
  PVPI: {
    evidence: [
      found(
        {
          id: 'EV_PVPI_RCT',
          what: 'iodine with fluoride varnish against varnish, first year',
          outcome: 'new decay',
          measure: 'rate-ratio',
          estimate: 0.5,
          interval: [0.31, 0.81],
          people: '284 children of 49 to 84 months',
          trials: 1,
          certainty: 'not-rated',
        },
        read('milgrom2021'),
      ),
      found(
        {
          id: 'EV_PVPI_RCT-2',
          what: 'the same, second year',
          outcome: 'new decay',
          measure: 'rate-ratio',
          estimate: 0.74,
          interval: [0.52, 1.03],
          people: '284 children of 49 to 84 months',
          trials: 1,
          certainty: 'not-rated',
          remark: 'not significant',
        },
        read('milgrom2021'),
      ),
      found(
        {
          id: 'EV_PVPI_Q',
          what: 'iodine then varnish against varnish, not randomised',
          outcome: 'new decay',
          measure: 'risk-ratio',
          estimate: 0.69,
          interval: [0.51, 0.94],
          people: '172 children of 12 to 30 months',
          trials: 1,
          certainty: 'not-rated',
        },
        read('milgrom2011'),
      ),
      position('insufficient', 'Evidence on iodine insufficient.', memory('ada2011')),
    ],
    doses: [
      {
        fromAgeYears: 6,
        timesPerYear: [4, 4],
        says: 'Every 3 months with varnish for 2 years, in a trial in children of 49 to 84 months, under supervision.',
        source: read('milgrom2021', 'our own youngest age, of the labels for the mouth'),
      },
      {
        fromAgeYears: 6,
        amountMl: [0.2, 0.2],
        says: '0.2 mL wiped on and off at once, once, in a study in children of 2 to 5 years, under supervision.',
        source: read('iodineSession', 'our own youngest age, of the labels for the mouth'),
      },
    ],
    harms: [says('Not with thyroid disease, iodine allergy, pregnancy or feeding, lithium, weak kidneys.', read('povidoneIodineLabels'))],
  },
  ESSENTIAL_OILS: {
    evidence: [says('Sold for plaque and gums; no indication for decay.', memory('handbook'))],
    doses: [
      {
        fromAgeYears: 12,
        timesPerDay: [2, 2],
        amountMl: [20, 20],
        minutes: 0.5,
        place: 'US',
        says: '20 mL for 30 seconds twice a day.',
        source: memory('handbook'),
      },
    ],
    harms: [says('Classic forms hold 21 to 27 % alcohol.', memory('handbook'))],
  },
  ARGININE: {
    evidence: [
      found(
        {
          id: 'EV_ARG24',
          what: '8 % arginine against sodium fluoride 0.32 %, 2 years',
          outcome: 'surfaces',
          measure: 'mean-difference',
          estimate: -0.16,
          interval: [-0.22, -0.1],
          people: '6,000 children of 10 to 14 years',
          trials: 1,
          certainty: 'not-rated',
          remark: '26 % fewer; links of the sponsor were not checked',
        },
        read('arginineTrials'),
      ),
      found(
        {
          id: 'EV_ARG24-15',
          what: '1.5 % arginine against sodium fluoride 0.32 %, same trial',
          outcome: 'surfaces',
          measure: 'mean-difference',
          estimate: -0.01,
          interval: [-0.07, 0.05],
          people: '6,000 children of 10 to 14 years',
          trials: 1,
          certainty: 'not-rated',
          remark: 'no difference',
        },
        read('arginineTrials'),
      ),
      found(
        {
          id: 'EV_ARG15',
          what: '1.5 % arginine with 1,450 ppm against 1,450 ppm, 2 years',
          outcome: 'teeth',
          measure: 'lower-risk',
          estimate: 0.205,
          people: '5,500 children',
          trials: 1,
          certainty: 'not-rated',
          remark: 'surfaces 19.6 %; none after 1 year; links with the sponsor (from memory)',
        },
        mixed('arginineTrials', 'figures read, links from memory'),
      ),
      found(
        {
          id: 'EV_ARG13',
          what: '1.5 % arginine with 1,450 ppm against 1,450 ppm',
          outcome: 'teeth',
          measure: 'lower-risk',
          estimate: 0.21,
          people: 'children at low to moderate risk',
          trials: 1,
          certainty: 'not-rated',
          remark: '17.7 % in the second group, surfaces 16.5 %; links with the sponsor (from memory)',
        },
        mixed('arginineTrials', 'figures read, links from memory'),
      ),
      found(
        {
          id: 'EV_ARGSR',
          what: 'arginine pastes, review that weighed sponsors',
          outcome: 'decay',
          measure: 'lower-risk',
          estimate: null,
          people: 'children',
          certainty: 'insufficient',
          remark: 'evidence insufficient',
        },
        read('astvaldsdottir2016'),
      ),
    ],
    doses: [],
    harms: [],
    noPrevention: NO_PREVENTION.arginine,
  },
  CPP_ACP: {
    evidence: [
      position('against', 'Suggested not to use where fluoride, sealant or infiltration is at hand (low certainty).', read('slayton2018')),
      position('insufficient', 'Evidence insufficient.', read('azarpazhooh2008')),
    ],
    doses: [
      { fromAgeYears: 0, timesPerDay: [1, 2], minutes: 3, says: 'A pea after brushing, left about 3 minutes.', source: memory('handbook') },
    ],
    harms: [says('Milk protein: not with milk allergy. Benzoate in some packs.', read('caseinAllergy'))],
  },
  FTCP: {
    evidence: [says('Mostly laboratory studies; no pooled estimate of decay.', memory('handbook'))],
    doses: [],
    harms: [],
  },
  HAP: {
    evidence: [
      found(
        {
          id: 'EV_HA21',
          what: 'microcrystalline hydroxyapatite against fluoride paste, 336 days; 72.7 against 74.2 %',
          outcome: 'primary teeth with a step of decay',
          measure: 'risk-difference',
          estimate: -0.015,
          people: '207 children',
          trials: 1,
          certainty: 'not-rated',
          remark:
            'no worse within a margin of 20 points, upper limit 9.8; the control had 500 ppm, and links with the maker (both from memory)',
        },
        mixed('paszynska'),
      ),
      found(
        {
          id: 'EV_HA23',
          what: 'hydroxyapatite against 1,450 ppm, 18 months; 89.3 against 87.4 % without a step',
          outcome: 'adults without new decay',
          measure: 'risk-difference',
          estimate: 0.019,
          people: '189 adults',
          trials: 1,
          certainty: 'not-rated',
          remark: 'margin of 20 points; authors and money of the maker',
        },
        read('paszynska'),
      ),
      found(
        {
          id: 'EV_HA19',
          what: 'microcrystalline hydroxyapatite against 1,400 ppm, 168 days; 56.8 against 60.9 %',
          outcome: 'people with a step of decay',
          measure: 'risk-difference',
          estimate: -0.041,
          people: 'about 150 people with braces, 11 to 25 years',
          trials: 1,
          certainty: 'not-rated',
          remark: 'margin of 20 points',
        },
        memory('schlagenhauf2019'),
      ),
      says(
        'European safety opinion of 2025: to 29.5 % in paste and 10 % in rinse as uncoated rods; in 2023 it was 10 and 0.465 %.',
        read('sccs2025'),
      ),
    ],
    doses: [],
    harms: [says('Sprays, needle-shaped and coated particles are outside the opinion.', read('sccs2023'))],
    noPrevention: NO_PREVENTION.mineral,
  },
  BICARB: {
    evidence: [
      says('Part of mouth care after radiotherapy, 4 to 6 times a day with salt.', read('nciOral')),
      says('No trial on decay; it raises the pH.', memory('handbook')),
    ],
    doses: [
      {
        fromAgeYears: 6,
        timesPerDay: [4, 6],
        says: 'Half a teaspoon each of soda and salt in a cup of warm water; spit.',
        source: read('nciOral'),
      },
      {
        fromAgeYears: 6,
        timesPerDay: [1, 6],
        says: 'A level teaspoon (about 5 g) in 240 mL, 30 seconds; spit.',
        source: memory('handbook'),
      },
    ],
    harms: [says('A level teaspoon holds 1.3 g sodium: spit, never sip.', derived('handbook'))],
    noPrevention: NO_PREVENTION.alkaline,
  },
  SALIVA: {
    evidence: [says('For comfort; those below pH 5.5 are not for natural teeth.', memory('handbook'))],
    doses: [],
    harms: [
      says(
        'Medicines that make saliva are a physician’s: asthma, glaucoma, liver, heart and lung disease speak against them.',
        read('salivaMedicineLabels'),
      ),
    ],
  },
  SEALANT: {
    evidence: [
      found(
        {
          id: 'EV_SEAL13',
          what: 'resin sealant against none; about 6 against 40 %',
          outcome: 'molars with decay',
          measure: 'risk-difference',
          estimate: -0.34,
          people: 'children and adolescents',
          trials: 6,
          certainty: 'not-rated',
          remark: 'about 70 % still in place at 4 years',
        },
        read('sealants2013'),
      ),
      found(
        {
          id: 'EV_SEAL',
          what: 'resin sealant against none, 2 years',
          outcome: 'first molars with decay',
          measure: 'odds-ratio',
          estimate: 0.12,
          interval: [0.08, 0.19],
          people: 'children and adolescents',
          trials: 7,
          certainty: 'moderate',
        },
        memory('ahovuo2017'),
      ),
      found(
        {
          id: 'EV_SEALADA',
          what: 'sealant against none, 2 to 3 years',
          outcome: 'molars with decay',
          measure: 'odds-ratio',
          estimate: 0.24,
          interval: [0.19, 0.3],
          people: 'children and adolescents',
          trials: 9,
          certainty: 'moderate',
        },
        memory('wright2016'),
      ),
      says(
        'With varnish, best on chewing surfaces of 22 treatments (44 trials, 7,378 people, certainty low to moderate).',
        read('urquhart2019'),
      ),
      position(
        'in-favour',
        'Early lesions of chewing surfaces in primary teeth: sealant with varnish, or sealant alone.',
        read('slayton2018'),
      ),
    ],
    doses: [],
    harms: [says('Glass ionomer is for the time being only.', read('sealants2013'))],
  },
  CA_PRERINSE: {
    evidence: [
      says('150 mmol/L calcium lactate before a fluoride rinse: more fluoride stays in plaque; no trial on decay.', memory('vogel2008')),
    ],
    doses: [],
    harms: [],
  },
  F_SUPP: {
    evidence: [
      position('expert-opinion', 'High risk only, by water and age, in a table of 2010.', read('ada2010supplements')),
      position(
        'against',
        'In the US not under 3 years and only at high risk, since 31 October 2025; never approved.',
        read('fda2025supplements'),
      ),
    ],
    doses: [],
    harms: [
      says(
        'A US rule of old let 5 mL of a 0.02 % F rinse be swallowed from 3 years: 1 mg, twice the table of 2010. Never proposed.',
        derived('fdaMonograph'),
      ),
    ],
  },
} as const satisfies Readonly<Record<string, AgentFacts>>;
