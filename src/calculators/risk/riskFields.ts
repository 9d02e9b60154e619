import { z } from 'zod';
import { riskItems } from '../../content/protocols/items.ts';
import { sources } from '../../content/sources.ts';
import type { Items, RiskResult } from '../../core/risk/types.ts';

/** Completed years; a fraction counts as the years completed. */
export const ageYears = z.number().min(0).max(130).describe('age in completed years');

/** Answers by item id; absent or null = unknown. */
export const answers = z
  .strictObject(
    Object.fromEntries(
      Object.values(riskItems).map((item) => [
        item.id,
        (item.valueType === 'boolean' ? z.boolean() : z.int().min(0).max(1000)).nullish().describe(item.label),
      ]),
    ),
  )
  .describe('item id to value; absent or null = unknown');
export type RiskAnswers = z.infer<typeof answers>;

export const lowSalivaMeansExtreme = z.boolean().optional().describe('the setting of a practice; default false');

const level = z.enum(['low', 'moderate', 'high', 'extreme']);
const role = z.enum(['disease', 'risk', 'protective']);
const status = z.enum(['read', 'memory', 'mixed', 'common-practice', 'derived', 'proposal']);
const source = z.strictObject({ key: z.string(), status, note: z.string().optional() });
const driver = z.strictObject({ item: z.string(), role, decisive: z.boolean(), changeable: z.boolean(), source });

export const riskOutput = z.strictObject({
  protocol: z.string(),
  edition: z.string(),
  screenName: z.string(),
  level: level.describe('unknown items not ticked; where notYet is not null it must not be shown as a result'),
  notYet: z
    .strictObject({ atLeast: level, missing: z.array(z.string()) })
    .nullable()
    .describe('set where the level reads low while a disease item is unknown'),
  possibleLevels: z.array(level).describe('every level that filling the unknown items can give, lowest first'),
  needsConfirmation: z.boolean(),
  counts: z.record(z.string(), z.number()),
  usesProposalDefaults: z.boolean(),
  flags: z.array(z.string()),
  drivers: z.array(driver),
  protections: z.array(driver),
  missing: z.array(z.strictObject({ item: z.string(), role, couldChangeLevel: z.boolean(), levelsIfFilled: z.array(level) })),
  sources: z.array(source.extend({ cite: z.string() })),
});
export type RiskOutput = z.infer<typeof riskOutput>;

export function itemsOf(given: RiskAnswers): Items {
  return Object.fromEntries(Object.entries(given).map(([id, value]) => [id, value ?? undefined]));
}

/** The result as the calculators give it: the raw level, with the reason to withhold it beside it. */
export function toRiskOutput(result: RiskResult): RiskOutput {
  const { protocol, edition, screenName, levelUnknownNotTicked, notYet, possibleLevels, needsConfirmation } = result;
  const { counts, usesProposalDefaults, flags, drivers, protections, missing } = result;
  return {
    protocol,
    edition,
    screenName,
    level: levelUnknownNotTicked,
    notYet: notYet ? { atLeast: notYet.atLeast, missing: [...notYet.missing] } : null,
    possibleLevels: [...possibleLevels],
    needsConfirmation,
    counts: { ...counts },
    usesProposalDefaults,
    flags: [...flags],
    drivers: drivers.map((d) => ({ ...d, source: { ...d.source } })),
    protections: protections.map((d) => ({ ...d, source: { ...d.source } })),
    missing: missing.map((m) => ({ ...m, levelsIfFilled: [...m.levelsIfFilled] })),
    sources: result.sources.map((s) => ({ ...s, cite: sources[s.key]?.cite ?? s.key })),
  };
}
