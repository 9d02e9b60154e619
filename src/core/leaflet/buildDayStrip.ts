import type { DayStrip } from '../regimen/dayStrip/types.ts';
import { printableWait, type StepReader } from './buildDaySteps.ts';
import type { LeafletInput } from './buildLeaflet.ts';
import { formatClock } from './formatForLeaflet.ts';
import type { PrintableLine } from './listPrintableLines.ts';
import type { Say } from './sayMessage.ts';
import type { Leaflet } from './types.ts';
import { sayWhoseDay, usesRow } from './usesRow.ts';
import { wordsOfUses } from './wordsOfUses.ts';

interface DayStripInput {
  readonly input: Pick<LeafletInput, 'texts' | 'strip'>;
  readonly say: Say;
  readonly printed: readonly PrintableLine[];
  readonly reader: StepReader;
  readonly strip: DayStrip;
}

/** The strip of a leaflet; the acid side only where a professional chose it. */
export function buildDayStrip({ input, say, printed, reader, strip }: DayStripInput): Pick<Leaflet, 'dayStrip'> {
  const { texts } = input;
  const items = printed.map(({ item }) => item).filter(({ id }) => strip.placed.some(({ shelfItemId }) => shelfItemId === id));
  if (items.length === 0) return {};
  const words = wordsOfUses(items, say, reader);
  const shown = { ...strip, placed: strip.placed.filter(({ shelfItemId }) => words.has(shelfItemId)) };
  const hasWait = (id: string) => items.some((item) => item.id === id && printableWait(item, texts, reader.jurisdiction) !== undefined);
  const isTold = strip.rhythm.basis === 'told';
  const row = usesRow({
    strip: shown,
    say,
    wordOf: (id) => words.get(id) ?? '',
    comma: reader.language === 'ar' ? '، ' : ', ',
    sayTime: isTold ? (minute) => formatClock(minute, reader.locale) : undefined,
    acid: isTold ? input.strip?.rows.find(({ of }) => of === 'told')?.acid : undefined,
    showsWait: hasWait,
  });
  const says = [sayWhoseDay(strip.rhythm, say), ...((row.waits ?? []).length > 0 ? [say('uses.waits')] : [])];
  return { dayStrip: { row, says: says.join(' ') } };
}
