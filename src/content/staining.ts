import type { StainRow } from '../core/regimen/tables.ts';

/** What discolours teeth, fillings or decay, by agent or by what a pack holds. A swap "because it stains" goes by these. */
export const staining: readonly StainRow[] = [
  { agentIds: ['CHX_RINSE'], traits: [], source: { key: 'chlorhexidineLabels', status: 'read' } },
  {
    agentIds: ['CHX_VARNISH'],
    traits: [],
    source: { key: 'chlorhexidineLabels', status: 'derived', note: 'from the labels of the rinse' },
  },
  { agentIds: ['SDF38'], traits: [], source: { key: 'sdfGuideline', status: 'read', note: 'turns decay black for good' } },
  { agentIds: ['NAOCL'], traits: [], source: { key: 'hypochloriteTrials', status: 'read', note: 'brown stain in every user of 0.05 %' } },
  {
    agentIds: ['F_GEL_SNF2'],
    traits: ['stannous fluoride'],
    source: { key: 'fdaMonograph', status: 'memory', note: 'stain from outside' },
  },
];
