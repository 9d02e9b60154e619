import { findSpan } from '../../../core/checks/controlSpan.ts';
import { lotStanding } from '../../../core/checks/lotStanding.ts';
import { parseTakenAt, type TakenAt } from '../../../core/reading/parseTakenAt.ts';
import { evaluateConditions } from '../../../core/reading/readingConditions.ts';
import type { ConditionResult, Meter, SwabCondition, SwabLot, SwabReading } from '../../../core/reading/types.ts';
import { presetLot } from '../visit/swabLines.ts';
import { type SwabSetting, swabTimes } from './swabFlow.ts';

/**
 * Conditions that must be known and met before a number is taken, and are not: those whose failing makes a reading not counted.
 * They are judged as if the swab were taken now; a swab that was read keeps its own time.
 */
export function listOpenConditions(reading: SwabReading, meter: Meter | undefined, setting: SwabSetting, now: string): ConditionResult[] {
  const table = setting.conditions.filter((c) => c.failing === 'not-counted');
  const at = (iso: string) => parseTakenAt(iso, setting.timeZone);
  const results = evaluateConditions(
    {
      reading,
      meter,
      taken: at(reading.takenAt ?? now),
      lots: setting.lots,
      past: swabTimes(setting)
        .map(at)
        .filter((p): p is TakenAt => p !== undefined),
      onDate: setting.onDate,
      controls: setting.controls,
      timeZone: setting.timeZone,
    },
    table,
  );
  // The range of the meter is judged with the number, so before it only the meter itself may be missing.
  const waitsForNumber = (id: string) => id === 'meter-range' && meter !== undefined && reading.rlu === undefined;
  const isOpen = ({ state, effect }: ConditionResult, { unknown }: SwabCondition) =>
    state === 'failing' ? effect !== 'flag' : state === 'unknown' && unknown !== 'list';
  return results.filter((result, i) => table[i] && isOpen(result, table[i]) && !waitsForNumber(result.id));
}

/** The control that stops this meter with the pack in use, or with the one that would be taken first. */
export function findStoppedControl(
  reading: SwabReading,
  meter: Meter | undefined,
  setting: SwabSetting,
  now: string,
): ConditionResult | undefined {
  const lotId = reading.lotId ?? presetLot(setting.lots, setting.onDate);
  return listOpenConditions({ ...reading, lotId }, meter, setting, now).find(({ id }) => id === 'control-in-line');
}

/** Whether it is the meter's own check that stops it, so that no other pack would help. */
export function isMeterStopped(reading: SwabReading, meter: Meter | undefined, setting: SwabSetting, now: string): boolean {
  const lotId = reading.lotId ?? presetLot(setting.lots, setting.onDate) ?? '';
  const span = meter && findSpan(setting.controls ?? [], { meterId: meter.id, lotId }, Date.parse(reading.takenAt ?? now));
  return span?.state === 'out' && span.lotId === undefined;
}

/** The pack in use, or the one that would be taken first, where it was not compared with the lot before and nobody has said why. */
export function findUncomparedLot({ lotId }: SwabReading, { lots, onDate }: Pick<SwabSetting, 'lots' | 'onDate'>): SwabLot | undefined {
  const lot = lots.find(({ id }) => id === (lotId ?? presetLot(lots, onDate)));
  return lot && lotStanding(lot, lots) === 'not-compared' ? lot : undefined;
}
