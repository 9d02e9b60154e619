import { z } from 'zod';
import { type AcidDayFile, AcidDayFileSchema } from '../../api/acidDayFileSchema.ts';
import { dayTables } from '../../content/plaque/dayTables.ts';
import { mouthPresets } from '../../content/plaque/presets.ts';
import { regimenTables } from '../../content/regimenTables.ts';
import { type AcidDayInput, type AcidDayResult, assessAcidDay } from '../../core/plaque/day/assessAcidDay.ts';
import type { ChangeGain } from '../../core/plaque/day/changeGains.ts';
import type { DayMove } from '../../core/plaque/day/dayMoves.ts';
import { sayGain, sayMove } from '../../core/plaque/day/sayDay.ts';
import type { AcidDay } from '../../core/plaque/day/types.ts';
import type { Calculator } from '../calculator.ts';
import { interval } from '../fields.ts';

const SAMPLES = 40;
const SEED = 1;
const MOST_GAIN_SAMPLES = 24;

/** A server answers others meanwhile: the search over pairs and many draws are left to the command line. */
const input = AcidDayFileSchema.extend({
  samples: z.int().min(2).max(200).optional().describe('draws for the band; 40 when absent'),
  mostMoves: z.int().min(0).max(1).optional().describe('1, or absent: single changes; 0: none'),
});

const source = z.strictObject({ key: z.string(), status: z.string(), note: z.string().optional() });
const index = z.strictObject({ loss: z.number(), gain: z.number() });
const change = z.strictObject({
  moves: z.array(z.strictObject({ kind: z.enum(['drop', 'join', 'water', 'gum']), eventId: z.string(), mealId: z.string().optional() })),
  says: z.string(),
  rank: z.int(),
  fewerMinutes: interval.nullable().describe('null where the band of the difference does not exclude zero, or was not worked out'),
  gain: z.string(),
});

const output = z.strictObject({
  headline: z.string(),
  change: z.string().nullable().describe('null where nothing may be suggested, or nothing clearly helps'),
  caution: z.string(),
  pH: z.array(z.number()).describe('at the tooth, minute 0 to 1440'),
  band: z.strictObject({ samples: z.int(), lowPh: z.array(z.number()), highPh: z.array(z.number()) }),
  minutesBelow: z.array(
    z.strictObject({
      line: z.enum(['ph-5.7', 'ph-5.5', 'ph-5.0', 'saliva', 'plaque-fluid']),
      pH: z.number(),
      says: z.string(),
      measured: z.boolean().nullable().describe('null for the three fixed lines'),
      range: interval.nullable().describe('of the line as people vary; null where fixed or measured'),
      minutes: z.number(),
      low: z.number(),
      high: z.number(),
      source,
    }),
  ),
  acidSide: z.string().describe('the line that the headline counts under'),
  acidAreaUmolMinPerL: z.number(),
  mineralIndex: index.describe('without unit, 1 = the reference day; no amount of mineral'),
  mineralIndexWithFluoride: index,
  events: z.array(
    z.strictObject({
      id: z.string(),
      lowestPh: z.number(),
      lowestAtMinute: z.number(),
      backAtMinute: z.number().nullable(),
      costMinutes: z.number().describe('fewer minutes on the acid side without it, all else the same'),
    }),
  ),
  changes: z.array(change),
  together: z.array(change.extend({ found: z.string() })),
  heldBack: z
    .strictObject({ food: z.string().nullable(), gum: z.string().nullable() })
    .describe('why nothing is suggested; null = allowed'),
  notCounted: z.array(z.string()),
});

/** Also what `ebbline day` prints from. */
export function assessDayFile(file: AcidDayFile): { readonly day: AcidDay; readonly result: AcidDayResult } {
  const { label, wakeMinute, sleepMinute, events, preset, saliva, plaque, measured, person, jurisdiction, unwanted } = file;
  const base = mouthPresets[preset];
  const day: AcidDay = { label, wakeMinute, sleepMinute, events };
  const samples = file.samples ?? SAMPLES;
  const input: AcidDayInput = {
    day,
    mouth: { saliva: { ...base.saliva, ...given(saliva) }, plaque: { ...base.plaque, ...given(plaque) } },
    measured,
    person,
    jurisdiction,
    unwanted,
    samples,
    gainSamples: Math.min(samples, MOST_GAIN_SAMPLES),
    seed: file.seed ?? SEED,
    mostMoves: (file.mostMoves ?? 1) as AcidDayInput['mostMoves'],
  };
  return { day, result: assessAcidDay(input, { day: dayTables, regimen: regimenTables }) };
}

/** Only what was given: an absent number is not an overwritten one. */
function given<T extends object>(values: T | undefined): { [K in keyof T]?: Exclude<T[K], undefined> } {
  return Object.fromEntries(Object.entries(values ?? {}).filter(([, value]) => value !== undefined)) as {
    [K in keyof T]?: Exclude<T[K], undefined>;
  };
}

export const acidDay: Calculator<AcidDayFile, z.infer<typeof output>> = {
  name: 'acid-day',
  summary: 'pH of plaque through a described day, minutes under each line with a band, and what each event costs',
  input,
  output,
  run(file) {
    const { day, result } = assessDayFile(file);
    const { curve, band, sentences, limits } = result;
    return {
      headline: sentences.headline,
      change: sentences.change ?? null,
      caution: sentences.caution,
      pH: [...curve.ph],
      band: { samples: band.samples, lowPh: [...band.lowPh], highPh: [...band.highPh] },
      minutesBelow: result.minutesBelow.map(({ line, minutes, low, high }) => ({
        line: line.id,
        pH: line.ph,
        says: line.says,
        measured: line.measured ?? null,
        range: line.range ?? null,
        minutes,
        low,
        high,
        source: plainSource(line.source),
      })),
      acidSide: result.acidSide.id,
      acidAreaUmolMinPerL: result.acidArea,
      mineralIndex: result.mineral,
      mineralIndexWithFluoride: result.mineralWithFluoride,
      events: result.events.map(({ eventId, ...trace }) => ({
        id: eventId,
        ...trace,
        costMinutes: result.costs.find((cost) => cost.eventId === eventId)?.minutes ?? 0,
      })),
      changes: result.gains.map((gain) => sayChange(gain, day)),
      together: result.together.map((gain) => ({ ...sayChange(gain, day), found: gain.found })),
      heldBack: {
        food: limits.food.allowed === 'any' ? null : limits.food.because,
        gum: limits.gum.allowed ? null : limits.gum.because,
      },
      notCounted: [...result.notCounted],
    };
  },
};

function sayChange(gain: ChangeGain, day: AcidDay): z.infer<typeof change> {
  const { moves, rank, fewerMinutes } = gain;
  return {
    moves: moves.map((move: DayMove) => ({ ...move })),
    says: moves.map((move) => sayMove(move, day, dayTables.foods)).join('; '),
    rank,
    fewerMinutes: fewerMinutes ?? null,
    gain: sayGain(gain),
  };
}

const plainSource = ({ key, status, note }: { key: string; status: string; note?: string | undefined }): z.infer<typeof source> => ({
  key,
  status,
  ...(note !== undefined && { note }),
});
