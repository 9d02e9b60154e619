import type { Agent, AllergenMatch, EvidenceLine } from '../core/regimen/tables.ts';
import type { SourceRef } from '../core/visit/answer.ts';

const read = (key: string, note?: string): SourceRef => ({ key, status: 'read', note });
const memory = (key: string, note?: string): SourceRef => ({ key, status: 'memory', note });
const mixed = (key: string, note?: string): SourceRef => ({ key, status: 'mixed', note });
const ownRule = (note: string): SourceRef => ({ key: 'project', status: 'proposal', note });
const says = (text: string, source: SourceRef): EvidenceLine => ({ says: text, source });

const HIGH_PASTE_WAIT = { US: 30, UK: 30, unknown: 30 } as const;

/**
 * What the shelf can hold, by active, form and strength, with the needs each can meet and the evidence for clinicians: figures with their
 * status, for and against. None of the figures goes on a leaflet.
 */
export const agents: readonly Agent[] = [
  {
    id: 'F_PASTE_LOW',
    name: 'Fluoride paste, 250 to 550 ppm',
    forms: ['paste'],
    meets: [],
    release: 'anyone',
    ppmRange: [200, 700],
    evidence: [says('No effect seen against placebo at 550 ppm and below; not as the only paste.', read('walsh2010'))],
  },
  {
    id: 'F_PASTE_STD',
    name: 'Fluoride paste, 1,000 to 1,500 ppm',
    forms: ['paste'],
    meets: ['fluoride-base'],
    release: 'anyone',
    ppmRange: [850, 1_600],
    evidence: [
      says('Prevented fraction 23 % (19 to 27) against placebo at 1,000 to 1,250 ppm, children to 16.', read('walsh2010')),
      says('Prevented fraction 24 % (21 to 28), 70 trials in children.', read('marinho2003')),
      says('Twice instead of once a day: 14 % lower risk.', read('preventionToolkit')),
      says('1,450 to 1,500 against 1,000 to 1,250 ppm: small further difference.', memory('walsh2019')),
    ],
  },
  {
    id: 'F_PASTE_2800',
    name: 'Sodium fluoride paste 0.619 % (2,800 ppm)',
    forms: ['paste'],
    meets: ['fluoride-base', 'fluoride-extra'],
    release: 'prescription',
    ppmRange: [2_300, 3_000],
    waitMinutes: { ...HIGH_PASTE_WAIT, source: read('smpcHighFluoride') },
    evidence: [says('2,400 to 2,800 ppm: prevented fraction 36 % (27 to 44) against placebo, children to 16.', read('walsh2010'))],
  },
  {
    id: 'F_PASTE_5000',
    name: 'Sodium fluoride paste or gel 1.1 % (about 5,000 ppm)',
    forms: ['paste', 'gel'],
    meets: ['fluoride-base', 'fluoride-extra'],
    release: 'prescription',
    ppmRange: [4_500, 5_100],
    waitMinutes: { ...HIGH_PASTE_WAIT, source: memory('smpcHighFluoride', 'minutes from memory for this strength') },
    evidence: [
      says('Twice a day from 6 years at raised risk, in a guideline of 2013.', read('ada2013')),
      says('For root lesions preferred over varnish and over yearly silver fluoride.', read('slayton2018')),
      says('Root caries in older people: about half the risk against 1,000 to 1,450 ppm.', read('ekstrand2016')),
      says('Harder root lesions after 6 months against 1,350 ppm, 130 adults.', read('srinivasan2014')),
    ],
  },
  {
    id: 'F_RINSE_005',
    name: 'Sodium fluoride rinse 0.05 % (226 ppm), daily',
    forms: ['rinse'],
    meets: ['fluoride-extra'],
    release: 'anyone',
    ppmRange: [200, 250],
    waitMinutes: { US: 30, UK: 15, unknown: 30, source: read('rinseLabels') },
    evidence: [
      says('Rinses in supervised school programmes: prevented fraction 27 % (23 to 30).', memory('marinho2016', 'number of trials read')),
      says('A rinse beside a paste: about 10 % (2 to 17) more than the paste alone.', memory('marinho2004b')),
      says('Paste against rinse: no difference (-18 to 19 %).', read('marinho2004a')),
    ],
  },
  {
    id: 'F_RINSE_02',
    name: 'Sodium fluoride rinse 0.2 % (905 ppm), weekly',
    forms: ['rinse'],
    meets: ['fluoride-extra'],
    release: 'prescription',
    ppmRange: [850, 950],
    waitMinutes: { US: 30, UK: 15, unknown: 30, source: read('rinseLabels') },
    evidence: [says('At least weekly from 6 years; daily for adult root caries.', read('ada2013'))],
  },
  {
    id: 'F_GEL_APF',
    name: 'Acidulated fluoride gel 1.23 % F (12,300 ppm), by the professional',
    forms: ['gel'],
    meets: ['professional-fluoride'],
    release: 'anyone',
    ppmRange: [11_000, 13_000],
    waitMinutes: { US: 30, UK: 30, unknown: 30, source: memory('lecompte1987', 'minutes from memory') },
    evidence: [
      says('Prevented fraction 28 % in permanent teeth.', read('marinho2015', 'interval from memory')),
      says('10 to 31 mg F stay in the mouth without suction and spitting, 2 to 7.5 mg with both.', read('lecompte1987')),
    ],
  },
  {
    id: 'F_GEL_SNF2',
    name: 'Stannous fluoride gel 0.4 % (970 ppm)',
    forms: ['gel'],
    meets: ['fluoride-extra'],
    release: 'anyone',
    ppmRange: [900, 1_050],
    waitMinutes: { US: 30, UK: 30, unknown: 30, source: memory('fdaMonograph') },
    evidence: [says('Once a day, leave 1 minute, spit; from 6 years.', memory('fdaMonograph'))],
  },
  {
    id: 'F_VARNISH',
    name: 'Sodium fluoride varnish 5 % (22,600 ppm), by the professional',
    forms: ['varnish'],
    meets: ['professional-fluoride'],
    release: 'anyone',
    ppmRange: [22_000, 23_500],
    waitMinutes: { US: 240, UK: 240, unknown: 240, source: read('varnishMonographs') },
    evidence: [
      says(
        'Prevented fraction 43 % (30 to 57) in permanent, 37 % (24 to 51) in primary teeth.',
        mixed('marinho2013', 'estimates read in a summary'),
      ),
      says('Preschool children: risk ratio 0.88 (0.81 to 0.95); the prediction interval reaches no difference.', read('desousa2019')),
      says('Three times a year in schools, 7 to 8 years: no difference after 3 years.', read('milsom2011')),
      says('The only professional fluoride recommended under 6.', read('ada2013')),
    ],
  },
  {
    id: 'SDF38',
    name: 'Silver diamine fluoride 38 % (44,800 ppm), by the dentist',
    forms: ['drops'],
    meets: ['professional-fluoride'],
    release: 'dentist',
    ppmRange: [40_000, 50_000],
    byChoiceOnly: says(
      'silver fluoride treats a lesion and turns it black for good: only with consent, by the dentist',
      read('slayton2018'),
    ),
    evidence: [
      says('Twice a year on advanced open lesions of crowns, preferred over varnish.', read('slayton2018')),
      says('Arrest in primary teeth 81 % (68 to 89).', memory('gao2016')),
    ],
  },
  {
    id: 'XYLITOL',
    name: 'Xylitol gum or lozenge',
    forms: ['gum', 'lozenge', 'powder'],
    meets: ['sweetener'],
    release: 'anyone',
    evidence: [
      says('5 to 8 g a day in 2 to 3 portions after meals, from 5 years, by expert opinion.', read('ada2011')),
      says('Mutans streptococci in plaque fell tenfold at 6.9 and 10.3 g a day, not at 3.4 g.', read('milgrom2006')),
      says('Xylitol in paste: prevented fraction 13 % (8 to 18), low certainty; other forms: no firm evidence.', read('riley2015')),
      says('Adults, lozenges 5 g a day, 33 months: no significant difference.', memory('bader2013')),
      says('High xylitol in blood went with heart events in one cohort, after larger drinks than these portions.', memory('witkowski2024')),
    ],
  },
  {
    id: 'POLYOL_GUM',
    name: 'Sugar-free chewing gum (polyols)',
    forms: ['gum'],
    meets: ['sweetener'],
    release: 'anyone',
    evidence: [
      says('Prevented fraction 28 % (7 to 48) against no gum; widely spread results.', read('newton2020')),
      says('10 to 20 minutes after meals, from 5 years, weak.', read('ada2011')),
    ],
  },
  {
    id: 'CHX_RINSE',
    name: 'Chlorhexidine 0.12 or 0.2 %, rinse',
    forms: ['rinse', 'spray'],
    meets: ['antimicrobial'],
    release: 'prescription',
    byChoiceOnly: says('never by default: a council guideline of 2011 advises against chlorhexidine for decay', read('ada2011')),
    evidence: [
      says('Rated against, for crowns and for roots, alone or with fluoride.', read('ada2011')),
      says('No support in 8 trials of gels and varnishes in children.', mixed('walsh2015', 'number of trials read, certainty from memory')),
      says(
        'With fluoride in 231 adults, 2 years: 24 % fewer new surfaces, p 0.10; the main result was not significant.',
        read('featherstone2012'),
      ),
    ],
  },
  {
    id: 'CHX_VARNISH',
    name: 'Chlorhexidine and thymol varnish, 1 % each, by the professional',
    forms: ['varnish'],
    meets: ['antimicrobial'],
    release: 'dentist',
    byChoiceOnly: says('only by choice of the dentist, for root caries of adults; not for crowns', read('ada2011')),
    evidence: [says('Every 3 months for root caries in adults: in favour. Crowns: not recommended.', read('ada2011'))],
  },
  {
    id: 'NAOCL',
    name: 'Sodium hypochlorite rinse, up to 0.25 %',
    forms: ['rinse'],
    meets: ['antimicrobial'],
    release: 'dentist',
    byChoiceOnly: says('off by default: no trial on decay and no licensed product', read('hypochloriteTrials')),
    evidence: [
      says('0.25 % twice a week in gum disease, 12 people seen at 3 months; no decay outcome.', read('hypochloriteTrials')),
      says('0.05 % twice a day for 21 days: brown stain in every user.', read('hypochloriteTrials')),
    ],
  },
  {
    id: 'PVPI',
    name: 'Povidone-iodine 10 %, wiped on by the professional',
    forms: ['drops', 'rinse'],
    meets: ['antimicrobial'],
    release: 'dentist',
    byChoiceOnly: says('only by choice of the dentist: evidence of a few trials in small children', read('milgrom2021')),
    evidence: [
      says(
        'With varnish against varnish alone: rate ratio 0.50 in year 1 (0.31 to 0.81), 0.74 in year 2 (0.52 to 1.03).',
        read('milgrom2021'),
      ),
    ],
  },
  {
    id: 'ESSENTIAL_OILS',
    name: 'Essential-oil rinse',
    forms: ['rinse'],
    meets: ['antimicrobial'],
    release: 'anyone',
    evidence: [says('Sold for plaque and gums; no indication for decay.', memory('handbook'))],
  },
  {
    id: 'ARGININE',
    name: 'Arginine paste with fluoride',
    forms: ['paste'],
    meets: ['fluoride-base'],
    release: 'anyone',
    ppmRange: [850, 1_600],
    evidence: [
      says('1.5 %: about 20 % fewer new surfaces in a sponsored trial of 5,500 children; none in one of 6,000.', read('arginineTrials')),
      says('Insufficient evidence, by a review that weighed sponsors.', read('astvaldsdottir2016')),
    ],
  },
  {
    id: 'CPP_ACP',
    name: 'Casein with calcium phosphate, paste',
    forms: ['paste'],
    meets: ['calcium-phosphate'],
    release: 'anyone',
    evidence: [
      says('Suggested not to use where fluoride, sealant or infiltration is at hand.', read('slayton2018')),
      says('Insufficient evidence.', read('azarpazhooh2008')),
    ],
  },
  {
    id: 'FTCP',
    name: 'Tricalcium phosphate paste with fluoride',
    forms: ['paste'],
    meets: ['fluoride-base'],
    release: 'anyone',
    ppmRange: [850, 1_600],
    evidence: [says('Mostly laboratory studies.', memory('handbook'))],
  },
  {
    id: 'HAP',
    name: 'Hydroxyapatite paste without fluoride',
    forms: ['paste', 'rinse', 'gel'],
    meets: ['calcium-phosphate'],
    release: 'anyone',
    evidence: [
      says(
        'No worse than fluoride paste within a margin of 20 points, in adults (189) and in children (207); makers took part.',
        mixed('paszynska'),
      ),
      says('European safety opinion: up to 29.5 % in paste as uncoated rods; not for sprays.', read('sccs2025')),
    ],
  },
  {
    id: 'BICARB',
    name: 'Sodium bicarbonate for rinsing',
    forms: ['powder', 'rinse'],
    meets: ['acid-control'],
    release: 'anyone',
    evidence: [
      says('Part of mouth care after radiotherapy, 4 to 6 times a day with salt.', read('nciOral')),
      says('No trial on decay; it raises the pH.', memory('handbook')),
    ],
  },
  {
    id: 'SALIVA',
    name: 'Saliva substitute',
    forms: ['spray', 'gel', 'rinse', 'lozenge'],
    meets: ['saliva'],
    release: 'anyone',
    evidence: [says('For comfort; those below pH 5.5 are not for natural teeth.', memory('handbook'))],
  },
  {
    id: 'SEALANT',
    name: 'Fissure sealant, by the professional',
    forms: ['sealant'],
    meets: ['sealing'],
    release: 'anyone',
    evidence: [
      says('About 6 % of molars decayed with, 40 % without, in 6 trials.', read('sealants2013')),
      says('Odds ratio 0.12 (0.08 to 0.19) at 2 years.', memory('ahovuo2017')),
      says('With varnish or alone preferred on early lesions of chewing surfaces in primary teeth.', read('slayton2018')),
    ],
  },
  {
    id: 'CA_PRERINSE',
    name: 'Calcium rinse before a fluoride rinse',
    forms: ['rinse'],
    meets: [],
    release: 'dentist',
    byChoiceOnly: says('still under study', memory('vogel2008')),
    evidence: [says('More fluoride stays in plaque; no trial on decay.', memory('vogel2008'))],
  },
  {
    id: 'F_SUPP',
    name: 'Fluoride drops or tablets to swallow',
    forms: ['drops', 'lozenge'],
    meets: ['fluoride-extra'],
    release: 'prescription',
    ppmRange: [1, 1_000_000],
    byChoiceOnly: says('off by default: a physician or dentist decides, at high risk only', read('fda2025supplements')),
    evidence: [says('High risk only, by water and age; in the US not under 3 years since 31 October 2025.', read('fda2025supplements'))],
  },
];

const FLUORIDE_AGENTS = agents.filter((a) => a.ppmRange !== undefined).map((a) => a.id);

/** What in a pack answers to each allergy. "Another allergy" answers to nothing by itself: rules C34b and C34c say so. */
export const allergenMatches: Readonly<Record<string, AllergenMatch>> = {
  'milk-protein': { agentIds: ['CPP_ACP'], traits: ['milk protein'] },
  benzoate: { agentIds: [], traits: ['benzoate'] },
  colophony: { agentIds: [], traits: ['colophony'] },
  chlorhexidine: { agentIds: ['CHX_RINSE', 'CHX_VARNISH'], traits: ['chlorhexidine'] },
  silver: { agentIds: ['SDF38'], traits: ['silver'] },
  iodine: { agentIds: ['PVPI'], traits: ['iodine'] },
  chlorine: { agentIds: ['NAOCL'], traits: ['hypochlorite'] },
  acrylate: { agentIds: [], traits: ['resin', 'acrylate'] },
  fluoride: { agentIds: FLUORIDE_AGENTS, traits: ['contains fluoride'] },
  ammonia: { agentIds: ['SDF38'], traits: ['ammonia'] },
  peppermint: { agentIds: [], traits: ['flavour'] },
  'essential-oils': { agentIds: ['ESSENTIAL_OILS'], traits: ['essential oils', 'flavour'] },
  'sodium-lauryl-sulfate': { agentIds: [], traits: ['sodium lauryl sulfate'] },
  'propylene-glycol': { agentIds: [], traits: ['propylene glycol'] },
  other: { agentIds: [], traits: [] },
};

/** An allergy as it stands in "not offered, because". */
export const allergyWords: Readonly<Record<keyof typeof allergenMatches, string>> = {
  'milk-protein': 'milk allergy',
  benzoate: 'benzoate allergy',
  colophony: 'colophony allergy',
  chlorhexidine: 'chlorhexidine allergy',
  silver: 'silver allergy',
  iodine: 'iodine allergy',
  chlorine: 'chlorine allergy',
  acrylate: 'acrylate allergy',
  fluoride: 'fluoride allergy',
  ammonia: 'ammonia allergy',
  peppermint: 'allergy to mint or a flavour',
  'essential-oils': 'allergy to essential oils',
  'sodium-lauryl-sulfate': 'allergy to sodium lauryl sulfate',
  'propylene-glycol': 'allergy to propylene glycol',
  other: 'another allergy',
};

/** Where xylitol's limit per kg of a child comes from. */
export const xylitolLimit = {
  belowAgeYears: 18,
  perUseGPerKg: 0.15,
  perDayGPerKg: 0.5,
  source: ownRule('below the single amounts that upset adults in Oku and Nakamura 2007 (0.37 and 0.42 g/kg, read)'),
} as const;
