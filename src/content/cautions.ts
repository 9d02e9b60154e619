import type { Caution } from '../core/regimen/tables.ts';
import type { SourceRef } from '../core/visit/answer.ts';

const read = (key: string): SourceRef => ({ key, status: 'read' });
const memory = (key: string): SourceRef => ({ key, status: 'memory' });
const ownRule = (note: string): SourceRef => ({ key: 'project', status: 'proposal', note });

const FLUORIDE_HOME = [
  'F_PASTE_LOW',
  'F_PASTE_STD',
  'F_PASTE_2800',
  'F_PASTE_5000',
  'F_RINSE_005',
  'F_RINSE_02',
  'F_GEL_SNF2',
  'F_SUPP',
  'ARGININE',
  'FTCP',
];
const PASTES = ['F_PASTE_LOW', 'F_PASTE_STD', 'F_PASTE_2800', 'F_PASTE_5000', 'ARGININE', 'FTCP'];

/**
 * What a leaflet must warn of, and when; printed whatever the status of the source. Most urgent first. The wording per language stands
 * with the leaflet texts under the same id.
 */
export const cautions: readonly Caution[] = [
  {
    id: 'swallowed-call-now',
    text: 'More swallowed than one use: poison centre or emergency number at once, pack in hand, no waiting; do not make the person vomit.',
    appliesTo: {},
    source: read('fdaMonograph'),
  },
  { id: 'lock-away', text: 'Keep all of it locked away from children.', appliesTo: {}, source: read('fdaMonograph') },
  {
    id: 'chlorhexidine-allergy',
    text: 'Chlorhexidine stains and changes taste; with swelling, rash or hard breathing stop and call for help.',
    appliesTo: { agentIds: ['CHX_RINSE', 'CHX_VARNISH'], traits: ['chlorhexidine'] },
    source: read('chlorhexidineLabels'),
  },
  {
    id: 'never-mix-bleach',
    text: 'Never mix bleach with acid or cleaners; none in the mouth without a written plan of the own dentist.',
    appliesTo: { agentIds: ['NAOCL'], traits: ['hypochlorite'] },
    source: memory('hypochloriteNotes'),
  },
  {
    id: 'xylitol-dogs',
    text: 'Xylitol is dangerous to dogs.',
    appliesTo: { agentIds: ['XYLITOL', 'POLYOL_GUM'], traits: ['xylitol'] },
    source: read('dogsXylitol'),
  },
  {
    id: 'xylitol-stomach',
    text: 'Xylitol and other sugar alcohols: gas or loose stools; build up slowly.',
    appliesTo: { agentIds: ['XYLITOL', 'POLYOL_GUM'], traits: ['xylitol'] },
    source: read('makinen2016'),
  },
  {
    id: 'varnish-after',
    text: 'After varnish soft food and no brushing for 4 hours.',
    appliesTo: { agentIds: ['F_VARNISH'] },
    source: read('varnishMonographs'),
  },
  {
    id: 'strong-after-varnish',
    text: 'Strong fluoride gel or paste from the day after the varnish on, not on the same day.',
    appliesTo: { agentIds: ['F_PASTE_5000', 'F_GEL_SNF2'], withAgentIds: ['F_VARNISH'] },
    source: read('varnishMonographs'),
  },
  {
    id: 'silver-black',
    text: 'Silver fluoride turns decay black for good.',
    appliesTo: { agentIds: ['SDF38'] },
    source: read('sdfGuideline'),
  },
  {
    id: 'strong-paste-one-person',
    text: 'High-fluoride paste is only for the person it was prescribed to.',
    appliesTo: { agentIds: ['F_PASTE_2800', 'F_PASTE_5000'] },
    source: read('smpcHighFluoride'),
  },
  {
    id: 'bicarbonate-spit',
    text: 'Soda in water: spit it out, never sip.',
    appliesTo: { agentIds: ['BICARB'] },
    source: memory('handbook'),
  },
  { id: 'spit-no-rinse', text: 'Spit the paste out, do not rinse.', appliesTo: { agentIds: PASTES }, source: read('adaPaste') },
  {
    id: 'adult-helps',
    text: 'An adult puts the paste on and helps until 7 at least.',
    appliesTo: { agentIds: FLUORIDE_HOME, belowAgeYears: 7 },
    source: read('adaPaste'),
  },
  {
    id: 'tell-team',
    text: 'Tell the team of new medicines, allergies, illness and pregnancy before starting.',
    appliesTo: {},
    source: ownRule('what the safety check asks'),
  },
];
