import { ASK_BEFORE_FOOD } from '../core/regimen/listAdvice.ts';
import type { Advice } from '../core/regimen/tables.ts';
import type { SourceRef } from '../core/visit/answer.ts';
import type { MouthReason } from '../core/visit/mouthReason.ts';

const read = (key: string, note?: string): SourceRef => ({ key, status: 'read', note });
const memory = (note: string): SourceRef => ({ key: 'handbook', status: 'memory', note });
const ours = (note: string): SourceRef => ({ key: 'project', status: 'proposal', note });

const RINSES_FROM_YEARS = 6;
const ACID: readonly MouthReason[] = ['acid-wear'];
const ROOTS: readonly MouthReason[] = ['overdenture-roots'];
const NONE_YET: readonly MouthReason[] = ['no-teeth-yet'];
const GLANDS: readonly MouthReason[] = ['lost-gland-function'];

/**
 * What is said to a person because of the kind of mouth, in the order in which it is printed. No line names a cause or a private matter:
 * with acid wear everybody is asked about acid from the stomach. No line claims a benefit, and none holds a figure for a patient.
 */
export const advice: readonly Advice[] = [
  {
    id: 'acid-rinse',
    mouths: ACID,
    family: 'afterwards',
    fromAgeYears: RINSES_FROM_YEARS,
    says: 'After acid food, drink or acid from the stomach: rinse with water or with soda in water, spit out.',
    onLeaflet: true,
    source: read('hong2020'),
  },
  {
    id: 'acid-water',
    mouths: ACID,
    family: 'afterwards',
    belowAgeYears: RINSES_FROM_YEARS,
    says: 'After acid food or drink, or acid from the stomach: a drink of water.',
    onLeaflet: true,
    source: ours('as for those who can rinse'),
  },
  {
    id: 'acid-brush-later',
    mouths: ACID,
    family: 'afterwards',
    says: 'Not brushing straight after acid is usual advice; waiting 30 to 60 minutes is optional, pooled results on human enamel show no clear benefit.',
    onLeaflet: true,
    source: read('hong2020'),
  },
  {
    id: 'acid-soft-brush',
    mouths: ACID,
    family: 'care',
    says: 'Soft brush, light hand, no gritty paste.',
    onLeaflet: true,
    source: memory('usual advice on wear; no study read'),
  },
  {
    id: 'acid-with-meals',
    mouths: ACID,
    family: 'food',
    says: 'Acid drinks with a meal rather than in between, and not held or swished in the mouth.',
    onLeaflet: true,
    source: memory('usual advice on wear; no study read'),
  },
  {
    id: 'acid-straw',
    mouths: ACID,
    family: 'food',
    fromAgeYears: 3,
    says: 'A straw placed well back keeps an acid drink off the front teeth.',
    onLeaflet: true,
    source: memory('usual advice on wear; no study read'),
  },
  {
    id: ASK_BEFORE_FOOD,
    mouths: ACID,
    family: 'care',
    says: 'Advice about food is held back by the safety check: changes of food only with the physician.',
    onLeaflet: true,
    source: ours('changes of food only with the physician'),
  },
  {
    id: 'acid-ask-doctor',
    mouths: ACID,
    family: 'care',
    says: 'Ask everybody with acid wear, alone, about reflux and vomiting; refer to the physician. The leaflet asks in the same words whatever the answer.',
    onLeaflet: true,
    source: ours('names no private matter'),
  },
  {
    id: 'acid-record',
    mouths: ACID,
    family: 'care',
    says: 'Note or photograph the surfaces, so that the next visit can see whether wear goes on.',
    onLeaflet: false,
    source: ours('to compare'),
  },
  {
    id: 'roots-brush',
    mouths: ROOTS,
    family: 'care',
    says: 'Denture out, then brush each root with the paste; clean the hollow of the denture over it.',
    onLeaflet: true,
    source: ours('the paste has to reach the root'),
  },
  {
    id: 'denture-night',
    mouths: [...ROOTS, 'no-natural-teeth'],
    onlyWith: ['full-denture', 'partial-denture'],
    family: 'care',
    says: 'Denture out at night, cleaned and dry or in water.',
    onLeaflet: true,
    source: memory('usual advice; no study read'),
  },
  {
    id: 'roots-no-bitewings',
    mouths: ROOTS,
    family: 'care',
    says: 'Bitewings do not show these roots: the dentist decides on a picture of each root.',
    onLeaflet: false,
    source: read('bitewings2012', 'none for an edentulous mouth; for roots alone our reading'),
  },
  {
    id: 'mouth-check',
    mouths: ['no-natural-teeth'],
    family: 'care',
    says: 'The soft parts of the mouth are looked at without teeth too.',
    onLeaflet: true,
    source: ours('reminder'),
  },
  {
    id: 'implants-ask',
    mouths: ['implants-only'],
    family: 'care',
    says: 'Home care of implants is outside this record: refer, and give nothing from this plan for them.',
    onLeaflet: true,
    source: ours('outside the scope'),
  },
  {
    id: 'first-tooth',
    mouths: NONE_YET,
    family: 'care',
    says: 'Come when the first tooth is there, by the first birthday; then a smear of fluoride paste twice a day, brushed by an adult.',
    onLeaflet: true,
    source: { key: 'adaPaste', status: 'mixed', note: 'amount from the first tooth read; the first birthday from memory, not printed' },
  },
  {
    id: 'bottle-plain',
    mouths: NONE_YET,
    family: 'bottle-or-cup',
    says: 'Nothing sweet in a bottle or cup: milk, formula or water.',
    onLeaflet: true,
    source: read('RG2010', 'items on bottles'),
  },
  {
    id: 'carer-teeth',
    mouths: NONE_YET,
    family: 'care',
    says: "Decay in mother, carer or brothers and sisters is on the child lists: offer the carer a visit for the carer's own teeth.",
    onLeaflet: true,
    source: read('RG2010', 'item on the carer'),
  },
  {
    id: 'late-first-tooth',
    mouths: NONE_YET,
    fromAgeYears: 1,
    family: 'care',
    says: 'First teeth usually come from 6 to 12 months: none after the first birthday is for the dentist to look at.',
    onLeaflet: false,
    source: read('eruptionChart', 'lower and upper first incisors of the milk teeth'),
  },
  {
    id: 'glands-measure',
    mouths: GLANDS,
    family: 'care',
    says: 'Measure saliva at each recall, same time of day, so that a change can be seen.',
    onLeaflet: false,
    source: { key: 'F2007', status: 'memory', note: 'rows of care: saliva at each recall at level high and extreme' },
  },
  {
    id: 'glands-sip-water',
    mouths: GLANDS,
    family: 'care',
    says: 'Plain water at hand, by day and at night.',
    onLeaflet: true,
    source: memory('usual advice for a dry mouth; no study read'),
  },
  {
    id: 'brace-brush',
    mouths: ['braces-or-retainer'],
    family: 'care',
    says: 'Brush round each bracket and under each wire; look for white spots there.',
    onLeaflet: true,
    source: ours('plaque holds there'),
  },
];
