import { useQueryClient } from '@tanstack/react-query';
import { useEffect, useState } from 'react';
import type { CheckedDay, ColumnUse, ReadList } from '../../../api/day.ts';
import type { DateOrder } from '../../../core/day/birthday.ts';
import type { DayRow, RowVerdict } from '../../../core/day/dayRow.ts';
import { ApiError } from '../../data/api.ts';
import { checkRows, importRows, readList } from '../../data/dayQueries.ts';
import { sayRefusal } from '../../data/useVersionedSave.ts';
import { plural } from '../../format.ts';

/** A list between pasting and taking. It lives on this page alone: nothing is written, and nothing is lost, before it is taken. */
export interface Filling extends Omit<ReadList, 'rows'>, CheckedDay {
  readonly text: string;
  readonly rows: readonly DayRow[];
  /** Chosen by somebody, rather than told by the list. */
  readonly chosenOrder?: DateOrder | undefined;
}

export interface JudgedRow {
  readonly row: DayRow;
  readonly verdict: RowVerdict;
}

export function useFillDay(onDate: string) {
  const client = useQueryClient();
  const key = ['fill-day', onDate];
  const [filling, setFilling] = useState<Filling | null>(() => client.getQueryData<Filling>(key) ?? null);
  const [said, setSaid] = useState('');
  const [problem, setProblem] = useState<string | null>(null);
  const [isBusy, setBusy] = useState(false);
  // Kept in the memory of the page, so that a look at the day and back loses nothing; signing out clears it.
  useEffect(() => client.setQueryDefaults(['fill-day'], { gcTime: Number.POSITIVE_INFINITY }), [client]);
  useEffect(() => {
    client.setQueryData(['fill-day', onDate], filling);
  }, [client, onDate, filling]);

  const attempt = async (action: () => Promise<string>) => {
    setBusy(true);
    setProblem(null);
    try {
      setSaid(await action());
    } catch (error) {
      if (!(error instanceof ApiError)) throw error;
      setProblem(sayRefusal(error));
    } finally {
      setBusy(false);
    }
  };
  const check = (next: Filling) =>
    attempt(async () => {
      // What was typed stands at once; what it means follows.
      setFilling(next);
      const checked = await checkRows(onDate, { rows: next.rows, dateOrder: next.chosenOrder });
      // What was mended meanwhile is checked by a request of its own.
      setFilling((now) => (now?.rows === next.rows ? { ...now, ...checked } : now));
      return '';
    });
  const read = (text: string, columns?: readonly ColumnUse[]) =>
    attempt(async () => {
      const list = await readList(onDate, text, columns);
      setFilling({ ...list, text });
      return `${plural(list.rows.length, 'row')} read. Nothing is written yet.`;
    });
  const change = (row: DayRow) => filling && check({ ...filling, rows: filling.rows.map((old) => (old.row === row.row ? row : old)) });
  const chooseOrder = (chosenOrder: DateOrder) => filling && check({ ...filling, chosenOrder });
  const take = () =>
    filling &&
    attempt(async () => {
      const dateOrder = filling.dateOrder ?? undefined;
      const { verdicts, taken, added } = await importRows(onDate, { rows: filling.rows, dateOrder });
      void client.invalidateQueries({ queryKey: ['day'] });
      void client.invalidateQueries({ queryKey: ['people'] });
      const left = filling.rows.flatMap((row, index) => {
        const verdict = verdicts[index];
        return verdict && verdict.kind !== 'known' && verdict.kind !== 'new' ? [{ row, verdict }] : [];
      });
      setFilling({ ...filling, rows: left.map(({ row }) => row), verdicts: left.map(({ verdict }) => verdict) });
      const people = added > 0 ? `, ${added} of them new on file` : '';
      return `${plural(taken, 'person', 'people')} put down${people}.${left.length > 0 ? ` ${plural(left.length, 'row')} stay here.` : ''}`;
    });
  return { filling, said, problem, isBusy, read, change, chooseOrder, take, forget: () => setFilling(null) };
}

/** The rows with their verdicts, by what is to be done with them. */
export function sortRows({ rows, verdicts }: Pick<Filling, 'rows' | 'verdicts'>) {
  const judged = rows.flatMap((row, index): JudgedRow[] => {
    const verdict = verdicts[index];
    return verdict ? [{ row, verdict }] : [];
  });
  const of = (...kinds: RowVerdict['kind'][]) => judged.filter(({ verdict }) => kinds.includes(verdict.kind));
  return { wrong: of('wrong'), ask: of('ask'), right: of('known', 'new'), nothing: of('nothing', 'left-out') };
}
