import type { FindingFill, ItemExclusion } from '../core/risk/findingFill.ts';
import type { MouthFill } from '../core/risk/mouthFill.ts';
import type { SourceRef } from '../core/visit/answer.ts';

const ours: SourceRef = { key: 'project', status: 'proposal', note: 'which finding ticks which line is our reading of the lists' };

/**
 * How findings fill the items. "Everything examined" includes the radiographs that were due; it makes absence mean absent, except
 * where looking cannot tell (an old filling, a tooth that is gone). Acid wear fills nothing.
 */
export const findingFills: readonly FindingFill[] = [
  {
    item: 'lesion_cavity_or_dentin_new',
    kinds: ['cavity', 'dentine-radiograph', 'root-lesion'],
    onlyNew: true,
    absence: 'false',
    source: { ...ours, note: 'a root lesion is in dentine' },
  },
  { item: 'lesion_white_spot_smooth_new', kinds: ['white-spot'], onlyNew: true, notSurfaces: ['occlusal'], absence: 'false', source: ours },
  { item: 'lesion_enamel_radiographic_new', kinds: ['enamel-radiograph'], onlyNew: true, absence: 'false', source: ours },
  { item: 'restoration_for_decay_recent', kinds: ['restoration'], onlyNew: true, absence: 'nothing', source: ours },
  {
    item: 'decay_or_white_spot_evident_child',
    kinds: ['white-spot', 'cavity', 'dentine-radiograph', 'root-lesion'],
    absence: 'false',
    source: ours,
  },
  {
    item: 'lesion_noncavitated_new_24m',
    kinds: ['white-spot', 'enamel-radiograph'],
    onlyNew: true,
    oldLeavesUnknown: true,
    absence: 'false',
    source: ours,
  },
  { item: 'cavitated_or_restored_24m', kinds: ['cavity', 'dentine-radiograph', 'root-lesion'], absence: 'false', source: ours },
  { item: 'cavitated_or_restored_24m', kinds: ['restoration'], onlyNew: true, absence: 'nothing', source: ours },
  {
    item: 'lesion_interproximal_count',
    kinds: ['white-spot', 'cavity', 'dentine-radiograph'],
    onlySurfaces: ['mesial', 'distal'],
    absence: 'false',
    count: { of: 'findings', enough: 1 },
    source: ours,
  },
  {
    item: 'lesion_interproximal_count',
    kinds: ['enamel-radiograph'],
    absence: 'false',
    count: { of: 'findings', enough: 1 },
    source: { ...ours, note: 'a lesion seen in enamel on a bitewing lies between teeth, whether or not the surface is noted' },
  },
  {
    item: 'dmft_total',
    kinds: ['cavity', 'dentine-radiograph', 'restoration', 'restoration-defective'],
    onlyMilkTeeth: true,
    absence: 'nothing',
    count: { of: 'teeth', enough: 2 },
    source: ours,
  },
  {
    item: 'lesions_or_restorations_count_36m',
    kinds: ['white-spot', 'cavity', 'dentine-radiograph', 'enamel-radiograph', 'root-lesion', 'restoration'],
    onlyNew: true,
    absence: 'nothing',
    count: { of: 'findings', enough: 3 },
    source: ours,
  },
  { item: 'roots_exposed', kinds: ['root-exposed', 'root-lesion'], absence: 'false', source: ours },
  { item: 'restoration_defective', kinds: ['restoration-defective'], absence: 'false', source: ours },
  {
    item: 'restoration_interproximal',
    kinds: ['restoration', 'restoration-defective'],
    onlySurfaces: ['mesial', 'distal'],
    absence: 'nothing',
    source: ours,
  },
];

/** Low flow, seen or measured, rules out "saliva normal". */
export const itemExclusions: readonly ItemExclusion[] = [{ item: 'saliva_normal', when: 'saliva_flow_reduced_measured' }];

const overdenture: SourceRef = { ...ours, note: 'a root under an overdenture shows its surface, and has neither pits nor contacts' };

/** What a mouth settles where the question makes no sense in it. */
export const mouthFills: readonly MouthFill[] = [
  { mouth: 'overdenture-roots', item: 'roots_exposed', value: true, source: overdenture },
  { mouth: 'overdenture-roots', item: 'pits_fissures_deep', value: false, source: overdenture },
  { mouth: 'overdenture-roots', item: 'restoration_interproximal', value: false, source: overdenture },
];
