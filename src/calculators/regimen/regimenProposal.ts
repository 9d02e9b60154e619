import { z } from 'zod';
import { PersonFactsSchema } from '../../api/acidDayFileSchema.ts';
import { LocalProtocolSchema } from '../../api/localProtocols.ts';
import { JurisdictionSchema } from '../../api/placeSchema.ts';
import { NeedKindSchema, PracticeSettingsSchema, ShelfItemSchema, SignedItemSchema } from '../../api/visitSchema.ts';
import { usualRhythms } from '../../content/dayRhythms.ts';
import { protocolTables } from '../../content/protocols/protocolTables.ts';
import { regimenTables } from '../../content/regimenTables.ts';
import { usualRhythm } from '../../core/regimen/dayStrip/rhythmOfDay.ts';
import type { DayRhythm } from '../../core/regimen/dayStrip/types.ts';
import { settleTables } from '../../core/regimen/disagreement/settleTables.ts';
import { weightDoubt } from '../../core/regimen/dose/weightDoubt.ts';
import { findNeeds } from '../../core/regimen/findNeeds.ts';
import { checkLocalProtocol } from '../../core/regimen/local/checkLocalProtocol.ts';
import { protocolsOn } from '../../core/regimen/local/localProtocol.ts';
import { proposePlan } from '../../core/regimen/proposePlan.ts';
import type { RegimenTables } from '../../core/regimen/tables.ts';
import type { ConfirmedLevel, Need, PersonFacts, ShelfItem } from '../../core/regimen/types.ts';
import type { Calculator } from '../calculator.ts';
import { answers, itemsOf } from '../risk/riskFields.ts';
import { type Proposal, proposalOutput, toProposal } from './proposalOutput.ts';

const MONTHS_PER_YEAR = 12;
const id = z.string().trim().min(1).max(100);
const clockMinute = z.int().min(0).max(1439).describe('minutes after midnight');

const input = z
  .strictObject({
    person: PersonFactsSchema.extend({
      waterFluorideMgPerL: z.number().min(0).max(100).optional(),
      waterLitresPerDay: z.number().min(0).max(20).optional(),
      waterFluoridated: z.boolean().optional(),
      otherFluoride: z
        .array(z.enum(['fluoridated-salt', 'fluoride-tablets-or-drops', 'naf-rinse-daily', 'professional-gel', 'other']))
        .max(5)
        .optional()
        .describe('empty = asked, none'),
      saltFluorideMgPerKg: z.number().min(0).max(10_000).optional(),
      saltGPerDay: z.number().min(0).max(1_000).optional(),
      supplementFluorideMgPerDay: z.number().min(0).max(100).optional(),
      varnishDaysPerYear: z.number().min(0).max(366).optional().describe('0 = asked, none'),
      strongPasteInUse: z.boolean().optional().describe('a paste of 5,000 ppm'),
    }).describe('absent = not known: what depends on it is not offered before it is asked'),
    needs: z
      .array(
        z.strictObject({
          kind: NeedKindSchema,
          state: z.enum(['needed', 'undecided']).optional().describe('default needed'),
          agentIds: z
            .array(z.array(id).min(1))
            .min(1)
            .optional()
            .describe('agents in tiers, first choice first; absent = any that meets it'),
        }),
      )
      .min(1)
      .optional()
      .describe('instead of risk'),
    risk: z
      .strictObject({
        protocol: z.enum(protocolTables.map((table) => table.id)),
        level: z.enum(['low', 'moderate', 'high', 'extreme']).describe('as a professional confirmed it'),
        answers: answers.optional().describe('those of risk-assessment, for needs that come from one of them'),
      })
      .optional()
      .describe('a confirmed result, instead of needs'),
    shelf: z.array(ShelfItemSchema).max(500),
    jurisdiction: JurisdictionSchema,
    legal: PracticeSettingsSchema.shape.legal,
    regimenOrder: PracticeSettingsSchema.shape.regimenOrder.describe('default tasks, cost, items'),
    disagreements: PracticeSettingsSchema.shape.disagreements.describe(
      'position by id; absent = what holds unset, the stricter where safety is concerned',
    ),
    mostTasksPerDay: z.number().min(0).max(24).optional(),
    droppedBefore: z
      .array(z.strictObject({ shelfItemId: id, why: z.enum(['taste', 'price', 'stain', 'time']).optional() }))
      .max(100)
      .optional(),
    signed: z
      .array(SignedItemSchema)
      .max(100)
      .optional()
      .describe('signatures, each relied on as given by a member with that right; absent = none'),
    localProtocols: z
      .array(LocalProtocolSchema)
      .max(200)
      .optional()
      .describe("the practice's own protocols; those that hold on onDate count; absent = none"),
    onDate: z.iso.date().optional().describe('absent = no refill dates'),
    day: z
      .strictObject({
        upMinute: clockMinute,
        bedMinute: clockMinute,
        eating: z
          .array(z.strictObject({ name: z.string().trim().min(1).max(80), startMinute: clockMinute, minutes: z.number().min(0).max(1440) }))
          .max(20),
        away: z.strictObject({ fromMinute: clockMinute, toMinute: clockMinute }).optional().describe('only what can be taken along'),
      })
      .optional()
      .describe('absent = a usual day of the age'),
  })
  .refine((p) => (p.needs === undefined) !== (p.risk === undefined), { error: 'give needs or risk, one of them', path: ['needs'] })
  .refine((p) => p.localProtocols === undefined || p.onDate !== undefined, {
    error: 'is needed with localProtocols, which hold from a day on',
    path: ['onDate'],
  });
type ProposalFile = z.infer<typeof input>;

export const regimenProposal: Calculator<ProposalFile, Proposal> = {
  name: 'regimen-proposal',
  summary: 'The best regimens from a shelf for one person, with cost, tasks, a day, reasons, and what is left out and why',
  input,
  output: proposalOutput,
  run(file) {
    const { person: facts, jurisdiction, legal, regimenOrder, mostTasksPerDay } = file;
    const tables = settleTables(regimenTables, file.disagreements);
    checkFile(file, tables);
    const localProtocols = file.onDate === undefined ? [] : protocolsOn(file.localProtocols ?? [], file.onDate);
    const settings = { jurisdiction, legal, regimenOrder, mostTasksPerDay, localProtocols };
    // A pack whose ingredients nobody has looked at says so outright: rules about ingredients then ask first.
    const shelf: readonly ShelfItem[] = file.shelf.map((item) => ({ ...item, traits: item.traits }));
    const confirmed = confirmedOf(file);
    const needs = needsOf(file, facts, confirmed);
    const plan = proposePlan({
      facts,
      needs,
      shelf,
      signed: file.signed ?? [],
      confirmed,
      onDate: file.onDate,
      settings,
      tables,
      history: file.droppedBefore,
    });
    return toProposal({ plan, needs, shelf, settings, tables, rhythm: rhythmFor(file) });
  },
};

function checkFile({ person, shelf, signed = [], localProtocols = [] }: ProposalFile, tables: RegimenTables): void {
  const { ageYears, ageMonths, weightKg } = person;
  if (Math.floor(ageMonths / MONTHS_PER_YEAR) !== ageYears) {
    throw new RangeError(`person.ageMonths must be ${ageYears} completed years: ${ageMonths}`);
  }
  const doubt = weightKg === undefined ? undefined : weightDoubt(weightKg, ageMonths, regimenTables.fluoride.weights);
  if (doubt !== undefined) throw new RangeError(`person.weightKg ${doubt}`);
  const again = shelf.findIndex(({ id: mine }, i) => shelf.findIndex((item) => item.id === mine) < i);
  if (again >= 0) throw new RangeError(`shelf.${again}.id stands on the shelf twice: ${shelf[again]?.id}`);
  const gone = signed.findIndex(({ shelfItemId }) => !shelf.some((item) => item.id === shelfItemId));
  if (gone >= 0) throw new RangeError(`signed.${gone}.shelfItemId is not on the shelf: ${signed[gone]?.shelfItemId}`);
  for (const [i, protocol] of localProtocols.entries()) {
    const [problem] = checkLocalProtocol(protocol, tables);
    if (problem) throw new RangeError(`localProtocols.${i}.${problem.field}: ${problem.says}`);
  }
}

/** Nobody's name and no time are needed to go by a level; who confirmed it stands elsewhere. */
function confirmedOf({ risk }: ProposalFile): ConfirmedLevel | undefined {
  if (!risk) return undefined;
  const edition = protocolTables.find((table) => table.id === risk.protocol)?.edition ?? '';
  return { level: risk.level, protocol: risk.protocol, edition, by: '', at: '' };
}

function needsOf(file: ProposalFile, facts: PersonFacts, confirmed: ConfirmedLevel | undefined): readonly Need[] {
  const { needs, risk, jurisdiction } = file;
  if (needs) return needs.map(({ kind, state = 'needed', agentIds }) => ({ kind, state, because: 'Given.', agentIds, sources: [] }));
  const items = risk?.answers && itemsOf(risk.answers);
  return findNeeds({ facts, confirmed, result: null, items, findings: [], jurisdiction, tables: regimenTables });
}

const rhythmFor = ({ day, person }: ProposalFile): DayRhythm =>
  day ? { ...day, basis: 'told' } : usualRhythm(person.ageYears, usualRhythms);
