import { findUseRow } from '../regimen/dayStrip/findUseRow.ts';
import { atPlace } from '../regimen/places.ts';
import type { Jurisdiction, ShelfItem } from '../regimen/types.ts';
import { findStepAmount } from './findStepAmount.ts';
import { capitaliseFirst } from './formatForLeaflet.ts';
import { catalogOf, type LeafletTable, type LeafletUse, type Rhythm, type UseId } from './leafletTable.ts';
import type { PrintableLine } from './listPrintableLines.ts';
import { nameOnLeaflet } from './nameOnLeaflet.ts';
import { type Say, sayIn } from './sayMessage.ts';
import type { TimeOfUse } from './timesOfUses.ts';
import type { DaySlot, DayStep, LeafletLanguage } from './types.ts';

/** Whom the steps are for, as far as amounts and wording depend on it. */
export interface StepReader {
  readonly ageYears: number;
  readonly canSpit: boolean | undefined;
  readonly jurisdiction: Jurisdiction;
  readonly language: LeafletLanguage;
  readonly locale: string;
}

export const SLOT_ORDER: readonly DaySlot[] = ['morning', 'after-meals', 'evening', 'bedtime', 'any-time', 'weekly', 'at-visit'];

/** Places on the strip for once, twice, and three or more times a day. */
const PLACES: Readonly<Record<Rhythm, readonly [readonly DaySlot[], readonly DaySlot[], readonly DaySlot[]]>> = {
  brushing: [['bedtime'], ['morning', 'bedtime'], ['morning', 'after-meals', 'bedtime']],
  'apart-from-brushing': [['evening'], ['after-meals', 'evening'], ['after-meals', 'evening']],
  'after-meals': [['after-meals'], ['after-meals'], ['after-meals']],
  'when-dry': [['any-time'], ['any-time'], ['any-time']],
};

const VISIT_USES: ReadonlySet<UseId> = new Set(['varnish', 'silver', 'sealant', 'at-visit']);
/** Below this age nobody is told to spit unless it is known that they can; below the next an adult watches a rinse (US label). */
const SPITS_FROM_YEARS = 6;
const RINSES_ALONE_FROM_YEARS = 12;

/**
 * The printed lines as steps of the day, in the order of the day and, within one time, of the plan. An item with times has a step for each
 * of them; one without, or that found none, for each time of the day by how often it is used.
 * @returns one step per item and time of day
 * @throws RangeError when an item of home use has no positive number of times a day
 */
export function buildDaySteps(
  lines: readonly PrintableLine[],
  table: LeafletTable,
  reader: StepReader,
  times: readonly TimeOfUse[] = [],
): readonly DayStep[] {
  const steps = lines.flatMap((printable) => {
    const own = times.filter(({ shelfItemId }) => shelfItemId === printable.item.id);
    return stepsOfItem(printable, findUseRow(printable.item, reader.jurisdiction, table.uses), table, reader, own);
  });
  const timed = steps.filter(({ order }) => order !== undefined).sort((a, b) => (a.order ?? 0) - (b.order ?? 0));
  const others = steps.filter(({ order }) => order === undefined);
  return [...timed, ...SLOT_ORDER.flatMap((slot) => others.filter(({ when }) => when === slot))].map(({ order: _, ...step }) => step);
}

type OrderedStep = DayStep & { readonly order?: number | undefined };

function stepsOfItem(
  { line, item }: PrintableLine,
  row: LeafletUse | undefined,
  table: LeafletTable,
  reader: StepReader,
  times: readonly TimeOfUse[],
): readonly OrderedStep[] {
  const say = sayIn(catalogOf(table, reader.language), reader.locale);
  const name = capitaliseFirst(nameOnLeaflet(item, reader.language).text, reader.locale);
  if (line.use.atVisit === true || (row && VISIT_USES.has(row.use))) {
    const useId = row && VISIT_USES.has(row.use) ? row.use : 'at-visit';
    return [{ when: 'at-visit', text: say(`use.${useId}`, { item: name }) }];
  }
  const rhythm = row?.rhythm ?? 'after-meals';
  const slots = findSlots(line.use.timesPerDay, rhythm);
  const places: readonly Omit<OrderedStep, 'text'>[] =
    times.length > 0
      ? times.map(({ says, order }) => ({ when: slots[0] ?? 'any-time', time: says, order }))
      : slots.map((when) => ({ when }));
  const parts = [
    say(`use.${fitToReader(row?.use ?? 'as-shown', reader)}`, { item: name }),
    ...extraSentences(line.use, item, rhythm === 'when-dry' ? Number.POSITIVE_INFINITY : places.length, say, reader),
    ...waitSentence(item, table, say, reader),
  ];
  const amount = findStepAmount(line, row, say, reader.locale);
  const again = say('extra.again', { item: name });
  return places.map((place, i) => ({ ...place, text: i === 0 ? parts.join(' ') : again, ...(amount && { amount }) }));
}

function findSlots(timesPerDay: number, rhythm: Rhythm): readonly DaySlot[] {
  if (!(timesPerDay > 0)) throw new RangeError(`timesPerDay must be above 0 for home use: ${timesPerDay}`);
  if (timesPerDay < 1) return ['weekly'];
  const [once, twice, more] = PLACES[rhythm];
  return timesPerDay < 2 ? once : timesPerDay < 3 ? twice : more;
}

/** Whether a person is told to spit: what is known, else by age. */
export function spitsOut({ ageYears, canSpit }: StepReader): boolean {
  return canSpit ?? ageYears >= SPITS_FROM_YEARS;
}

function fitToReader(use: UseId, reader: StepReader): UseId {
  return use === 'brush' && !spitsOut(reader) ? 'brush-no-spit' : use;
}

function extraSentences(use: ShelfItem['use'], item: ShelfItem, slotCount: number, say: Say, { ageYears }: StepReader): readonly string[] {
  const seconds = findSeconds(use);
  return [
    ...(seconds === undefined ? [] : [seconds === SECONDS_PER_MINUTE ? say('extra.oneMinute') : say('extra.seconds', { n: seconds })]),
    ...(Number.isInteger(use.timesPerDay) && use.timesPerDay > slotCount ? [say('extra.timesADay', { n: use.timesPerDay })] : []),
    ...(item.form === 'rinse' && ageYears < RINSES_ALONE_FROM_YEARS ? [say('extra.adultWatches')] : []),
    ...(use.courseDays === undefined ? [] : [say('extra.courseDays', { n: use.courseDays })]),
  ];
}

/** How long to swish, where the practice's own words for the amount say it ("10 mL for 1 minute"); never a guessed time. */
function findSeconds({ amount }: ShelfItem['use']): number | undefined {
  const [, number, unit] = /\bfor (\d+) (second|minute)s?\b/.exec(amount) ?? [];
  return number === undefined ? undefined : Number(number) * (unit === 'minute' ? SECONDS_PER_MINUTE : 1);
}

const SECONDS_PER_MINUTE = 60;

/** A waiting time that is only remembered is not printed: a figure for patients must have been read. */
function waitSentence(item: ShelfItem, table: LeafletTable, say: Say, { jurisdiction }: StepReader): readonly string[] {
  const minutes = printableWait(item, table, jurisdiction);
  return minutes === undefined ? [] : [say('extra.wait', { n: minutes })];
}

/** Minutes to wait after a use, where a page may print them; undefined = none, or only remembered. */
export function printableWait(item: ShelfItem, { agents }: Pick<LeafletTable, 'agents'>, place: Jurisdiction): number | undefined {
  const wait = agents.find(({ id }) => id === item.agentId)?.waitMinutes;
  if (wait === undefined || wait.source.status === 'memory') return undefined;
  return atPlace(wait, place) > 0 ? atPlace(wait, place) : undefined;
}
