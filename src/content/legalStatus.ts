import type { LegalRow, LegalStatus, StatedStatus } from '../core/regimen/legalStatus.ts';
import type { SourceRef } from '../core/visit/answer.ts';

const stated = (status: LegalStatus, source: SourceRef): StatedStatus => ({ status, source });
const read = (key: string, note?: string): SourceRef => ({ key, status: 'read', note });
const memory = (key: string, note?: string): SourceRef => ({ key, status: 'memory', note });
const mixed = (key: string, note?: string): SourceRef => ({ key, status: 'mixed', note });
const derived = (key: string, note?: string): SourceRef => ({ key, status: 'derived', note });
const ownRule = (note: string): SourceRef => ({ key: 'project', status: 'proposal', note });

const everywhere = (agentId: string, status: LegalStatus, source: SourceRef): LegalRow => ({ agentId, everywhere: stated(status, source) });

/**
 * How each kind of product may be given, by place, as far as the sources tell. What no source tells stays out: there the practice looks it
 * up and sets it, and until then whatever depends on it asks first. A status never loosens the release that the agent itself asks.
 */
export const legalStatuses: readonly LegalRow[] = [
  everywhere('F_PASTE_LOW', 'over-the-counter', read('fdaMonograph', 'and European cosmetics rules')),
  everywhere('F_PASTE_STD', 'over-the-counter', read('fdaMonograph', 'and European cosmetics rules')),
  {
    agentId: 'F_PASTE_2800',
    at: {
      US: stated('prescription', derived('fdaMonograph', 'above the strengths that may be sold without one')),
      UK: stated('prescription', read('smpcHighFluoride')),
    },
  },
  {
    agentId: 'F_PASTE_5000',
    at: { US: stated('prescription', read('highFluorideLabels')), UK: stated('prescription', read('smpcHighFluoride')) },
  },
  everywhere('F_RINSE_005', 'over-the-counter', read('rinseLabels')),
  { agentId: 'F_RINSE_02', at: { US: stated('prescription', read('ada2013')) } },
  everywhere('F_GEL_APF', 'professional', read('ada2013')),
  { agentId: 'F_GEL_SNF2', at: { US: stated('over-the-counter', memory('fdaMonograph')) } },
  everywhere('F_VARNISH', 'professional', read('varnishMonographs')),
  {
    agentId: 'SDF38',
    at: {
      US: stated('dentist', memory('horst2016', 'sold for sensitive teeth; arresting decay is outside its label')),
      UK: stated('dentist', mixed('sdfGuideline', 'a national guideline has the dentist use it; outside its label')),
    },
  },
  everywhere('XYLITOL', 'over-the-counter', read('ada2011', 'a food')),
  everywhere('POLYOL_GUM', 'over-the-counter', read('ada2011', 'a food')),
  {
    agentId: 'CHX_RINSE',
    at: {
      US: stated('prescription', read('chlorhexidineLabels', '0.12 %')),
      UK: stated('pharmacy', read('chlorhexidineLabels', '0.2 %')),
      EU: stated('pharmacy', mixed('chlorhexidineLabels', '0.2 %; member states differ')),
    },
  },
  // Prescription-only or not sold in several places: none was read, so none stands here.
  { agentId: 'CHX_VARNISH' },
  everywhere('NAOCL', 'dentist', ownRule('no licensed product for decay is known: a protocol of the practice has to stand behind it')),
  {
    agentId: 'PVPI',
    at: { EU: stated('professional', mixed('povidoneIodineLabels', 'Irish product summary; wiping it on teeth is outside it')) },
  },
  everywhere('ESSENTIAL_OILS', 'over-the-counter', memory('handbook')),
  everywhere('ARGININE', 'over-the-counter', memory('handbook')),
  everywhere('CPP_ACP', 'over-the-counter', memory('handbook')),
  everywhere('FTCP', 'over-the-counter', memory('handbook')),
  everywhere('HAP', 'over-the-counter', mixed('sccs2025', 'opinion read; whether the European annex follows it was not checked')),
  everywhere('BICARB', 'over-the-counter', memory('handbook')),
  everywhere('SALIVA', 'over-the-counter', memory('handbook', 'the substitute; medicines that make saliva are a physician’s')),
  everywhere('SEALANT', 'professional', read('slayton2018')),
  everywhere('CA_PRERINSE', 'dentist', memory('vogel2008', 'still under study')),
  { agentId: 'F_SUPP', at: { US: stated('prescription', read('fda2025supplements')) } },
];

/** Agents whose status differs by place, or is not known at some. */
export const placeDependentAgentIds: readonly string[] = legalStatuses.filter((r) => r.everywhere === undefined).map((r) => r.agentId);
