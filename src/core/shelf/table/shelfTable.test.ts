import fc from 'fast-check';
import { describe, expect, it, test } from 'vitest';
import { withoutGuard } from '../../../actions/formulaGuard.ts';
import { parseTable } from '../../../actions/parseCsv.ts';
import { writeCsv } from '../../../actions/writeCsv.ts';
import { demoShelf } from '../../../content/demo/shelf.ts';
import { regimenTables } from '../../../content/regimenTables.ts';
import { listPackTraits } from '../../regimen/listPackTraits.ts';
import type { ShelfItem } from '../../regimen/types.ts';
import { formatShelf, type ShelfEntry } from './formatShelf.ts';
import { readNumber, readPrice } from './readNumber.ts';
import { readShelfTable } from './readShelfTable.ts';

const TODAY = '2026-11-26';
const SETTING = {
  agents: regimenTables.agents,
  traits: listPackTraits(regimenTables),
  leafletNameOf: () => ({ en: 'Paste', es: 'Pasta' }),
  mayFree: false,
  today: TODAY,
};
const [paste] = demoShelf;
if (!paste) throw new Error('the demo shelf is empty');

const read = (text: string, shelf: readonly ShelfEntry[] = [], setting = SETTING) => {
  const table = parseTable(text);
  if ('problem' in table) throw new Error(table.problem.message);
  const lines = table.lines.map(({ line, cells }) => ({ line, cells: cells.map(withoutGuard) }));
  return readShelfTable(lines, { ...setting, shelf });
};
const write = (shelf: readonly ShelfEntry[]) => writeCsv(formatShelf(shelf));
/** The cells of a new paste, any of them otherwise. */
const line = (cells: Readonly<Record<string, string>> = {}) => {
  const all = { name: 'Paste A', kind: 'F_PASTE_STD', form: 'paste', ...NUMBERS, 'in stock': 'yes', times: '2', ...CELLS, ...cells };
  return `${Object.keys(all).join(';')}\n${Object.values(all).join(';')}`;
};
const NUMBERS = { compound: 'NaF', 'percent of compound': '0.32', price: '2.90', 'pack size': '100', 'pack unit': 'g' };
const CELLS = { 'times per': 'day', amount: 'a ribbon', 'in the pack': 'none' };
const problemsOf = (text: string, shelf: readonly ShelfEntry[] = []) =>
  read(text, shelf).problems.map(({ line: at, field, says }) => `${at} ${field}: ${says}`);

describe('what is given out comes back', () => {
  const edge = <T>(edges: readonly T[], arbitrary: fc.Arbitrary<T>) => fc.oneof(fc.constantFrom(...edges), arbitrary);
  const words = (max: number) =>
    edge(
      ['=1+1', "'=x", "''-x", '@a', 'a;b', 'a,b', 'a "b" c', 'none', 'a\nb', '3', '00 12', 'ñ ü ى', '＝x', '1,450', 'a\tb'],
      fc.string({ minLength: 1, maxLength: max, unit: 'grapheme' }),
    ).filter((text) => text.trim() === text && text !== '' && text.length <= max && !/\p{Cc}/u.test(text.replaceAll(/[\n\t]/g, '')));
  const number = (most: number) =>
    edge(
      [most, 1.125, 0.1, 1e-7, 1 / 3, 100, 12.5].filter((n) => n <= most),
      fc.double({ min: 1e-9, max: most, noNaN: true }),
    );
  const maybe = <T>(arbitrary: fc.Arbitrary<T>) => fc.option(arbitrary, { nil: undefined });
  const item = fc.constantFrom(...demoShelf).chain((base) =>
    fc
      .record({
        name: words(60),
        priceCents: maybe(edge([0, 1, 50, 100, 100_000], fc.nat(99_999_999))),
        traits: maybe(fc.subarray([...SETTING.traits])),
        flavour: maybe(words(30)),
        minimumLevel: maybe(edge([0, 1000, 100_000], fc.nat(100_000))),
        pH: maybe(number(14)),
        packAmount: maybe(fc.record({ value: number(1_000_000), unit: fc.constantFrom('g', 'mL', 'piece') })),
        meets: fc.subarray([...base.meets]),
        inStock: fc.boolean(),
        percent: maybe(number(100)),
        fluoridePpm: maybe(edge([0, 1.45, 1450, 60_000, 50], number(60_000))),
        use: fc.record({
          timesPerDay: edge([1 / 7, 3 / 7, 1, 2, 0.5, 24], number(24)),
          amount: words(60),
          amountG: maybe(number(10_000)),
          courseDays: maybe(edge([1, 7, 1000], fc.integer({ min: 1, max: 10_000 }))),
        }),
      })
      .map((changed): ShelfItem => ({ ...base, ...changed })),
  );
  const lot = fc.record({
    expiry: fc.constantFrom(TODAY, '2026-11-25', '2027-02-28', null),
    quantity: edge([1, 10_000], fc.integer({ min: 1, max: 10_000 })),
  });
  const lots = maybe(
    fc.array(fc.tuple(fc.option(words(40), { nil: null }), lot), { maxLength: 4 }).map((all) => {
      const tidy = all.map(([name, rest]) => ({ lot: name?.replaceAll(/\s+/g, ' ') ?? null, ...rest }));
      return tidy.filter((l, at) => tidy.findIndex((o) => (o.lot ?? '').toUpperCase() === (l.lot ?? '').toUpperCase()) === at);
    }),
  );
  const shelf = fc
    .uniqueArray(fc.record({ item, lots }), { maxLength: 3, selector: ({ item: { name } }) => name.toLowerCase().replaceAll(/\s+/g, ' ') })
    .map((entries) => entries.map((entry, at) => ({ ...entry, item: { ...entry.item, id: `item-${at}` } })));

  it('onto the same shelf it changes nothing, onto an empty one it is the same shelf', () => {
    fc.assert(
      fc.property(shelf, (entries) => {
        fc.pre(entries.length > 0);
        const text = write(entries);
        const again = read(text, entries);
        expect(again.problems).toEqual([]);
        expect(again.items.map(({ kind }) => kind)).toEqual(entries.map(() => 'same'));
        expect(again.items.flatMap((i) => i.lots).every(({ there, packs }) => there === packs)).toBe(true);
        const fresh = read(text, []);
        expect(fresh.problems.filter(({ field }) => field !== 'in stock')).toEqual([]);
        const isCounted = ({ lots: all }: ShelfEntry) => (all?.length ?? 0) > 0;
        for (const [at, { item: stood }] of entries.filter((entry) => entry.lots === undefined || isCounted(entry)).entries()) {
          const found = fresh.items.find((i) => i.item.id === stood.id);
          const counted = entries.find((entry) => entry.item === stood);
          expect(found?.item, `${at}`).toEqual({
            ...stood,
            label: undefined,
            inStock: counted?.lots ? true : stood.inStock,
            use: expect.anything(),
          });
          expect(found?.item.use).toMatchObject({ ...stood.use });
          expect(found?.lots.map(({ lot: name, expiry, packs }) => ({ lot: name, expiry, quantity: packs }))).toEqual(counted?.lots ?? []);
        }
      }),
      { numRuns: 25 },
    );
  });

  test('strengths as the label has them, and everything of the demo shelf', () => {
    const labels = [
      { value: 0.0226, of: 'ion' },
      { value: 0.05, of: 'ion', per: 'w/v' },
      { value: 1.1, of: 'compound', per: 'w/w' },
      { value: 1450, of: 'ppm', per: 'w/v' },
    ] as const;
    const entries = labels.map((label, at) => ({
      item: {
        ...paste,
        id: `p${at}`,
        name: `p${at}`,
        label,
        percent: label.of === 'compound' ? label.value : undefined,
        fluoridePpm: label.of === 'compound' ? undefined : 1450,
      },
      lots: undefined,
    }));
    expect(read(write(entries)).items.map((i) => i.item.label)).toEqual(labels);
    const all = demoShelf.map((i) => ({ item: i, lots: undefined }));
    expect(read(write(all)).items.map(({ item: { id, ...i } }) => [id, JSON.parse(JSON.stringify(i))])).toEqual(
      demoShelf.map(({ id, ...i }) => [id, i]),
    );
  });
});

describe('numbers', () => {
  test.each([
    ['0.32', 0.32],
    ['0,32', 0.32],
    ['0.619', 0.619],
    ['22 600', 22_600],
    ['1.1250', 1.125],
    ['1e-7', 1e-7],
  ])('%s is %s', (cell, value) => expect(readNumber(cell, { atMost: 60_000 })).toBe(value));

  test.each([
    ['60,000', /60000 to some and 60 to others: write 60000, or 60$/],
    ['50.000', /write 50000, or 50$/],
    ['1.450', /write 1450, or 1\.45$/],
    ['1.125', /write 1125, or 1\.1250$/],
    ['1,450,000', /not a number/],
    ['1.1 %', /not a number/],
    ['-1', /not a number/],
    ['1e5', /not a number/],
    ['Infinity', /not a number/],
    ['70000', /60000 or less/],
  ])('%s is asked back', (cell, says) => expect(readNumber(cell, { atMost: 60_000 })).toEqual(expect.stringMatching(says)));

  test('where a thousand could not be meant the small one is taken; a whole number is whole', () => {
    expect(readNumber('1.125', { atMost: 100 })).toBe(1.125);
    expect(readNumber('1.000', { atMost: 10_000, whole: true })).toMatch(/write 1000, or 1$/);
    expect(readNumber('1.5', { atMost: 10_000, whole: true })).toMatch(/whole/);
    expect([readPrice('2,9'), readPrice('2.90'), readPrice('12')]).toEqual([290, 290, 1200]);
    expect(readPrice('1,450')).toMatch(/not a price/);
  });
});

describe('a line', () => {
  test('what it leaves out is not known, and said', () => {
    const { items, problems } = read(line({ price: '', 'percent of compound': '', 'in the pack': '', 'pack size': '', 'pack unit': '' }));
    expect(problems).toEqual([]);
    expect(items[0]).toMatchObject({
      kind: 'new',
      item: { priceCents: undefined, percent: undefined, traits: undefined, packAmount: undefined },
    });
    expect(items[0]?.open.join('; ')).toMatch(/strength not known.*pack not checked.*price not known.*pack size not known/);
    expect(read(line()).items[0]).toMatchObject({
      open: [],
      item: { id: '', priceCents: 290, traits: [], release: 'anyone', meets: ['fluoride-base'] },
    });
  });

  test.each([
    [{ kind: 'F_PASTE_X' }, /^2 kind: "F_PASTE_X" is not known here/],
    [{ kind: '' }, /^2 kind: say what kind/],
    [{ 'pack unit': 'oz' }, /^2 pack unit: "oz" is not known here/],
    [{ 'pack unit': '' }, /^2 pack unit: 100 of what/],
    [{ 'percent of compound': '1,1 %' }, /^2 percent of compound: "1,1 %" is not a number/],
    [{ 'percent of compound': '320' }, /^2 percent of compound: .*100 or less/],
    [{ compound: 'NaCl' }, /^2 compound: /],
    [{ price: '2.900' }, /^2 price: /],
    [{ 'in the pack': 'mlik protein' }, /^2 in the pack: "mlik protein" is not known here/],
    [{ kind: 'F_PASTE_5000', 'released by': 'anyone' }, /^2 released by: this kind waits for a signature/],
    [{ 'in stock': '' }, /^2 in stock: yes or no/],
    [{ form: 'rinse' }, /^2 form: this kind is a paste, not a rinse/],
    [{ times: '' }, /^2 times: /],
    [{ 'times per': '' }, /^2 times per: 2 times a day or a week/],
    [{ amount: '' }, /^2 amount: /],
    [{ name: '' }, /^2 name: which item/],
    [{ prcie: '1' }, /^1 prcie: no column/],
    [{ lot: 'A', packs: '' }, /^2 packs: how many/],
    [{ lot: 'A', packs: '1.000' }, /^2 packs: .*write 1000, or 1/],
    [{ lot: 'A', 'last day': '03/04/2027', packs: '1' }, /^2 last day: /],
  ])('%j is asked back by line and field', (cells, says) => expect(problemsOf(line(cells))).toEqual([expect.stringMatching(says)]));

  test('a number with a comma between commas moves no cell unseen', () => {
    expect(problemsOf('id,price,flavour\npaste,2,90,mint')).toEqual([
      expect.stringMatching(/^2 line: 4 cells where the first line names 3/),
    ]);
  });

  test('the same item twice and the same lot twice are asked back, in whatever letters', () => {
    const [head, body] = line({ lot: 'A 12', 'last day': '05/2027', packs: '3' }).split('\n');
    const of = (cells: Readonly<Record<string, string>>) =>
      head
        ?.split(';')
        .map((column) => cells[column] ?? '')
        .join(';');
    const lotLine = (cells: Readonly<Record<string, string>>) => `${head}\n${body}\n${of({ name: 'paste  a', ...cells })}`;
    expect(problemsOf(`${head}\n${body}\n${body?.replace('Paste A', 'PASTE  a')}`)).toEqual([
      expect.stringMatching(/^3 name: Paste A stands in line 2 already/),
    ]);
    expect(problemsOf(lotLine({ lot: 'a  12', 'last day': '2027-05-31', packs: '3' }))).toEqual([
      expect.stringMatching(/^3 lot: lot a 12 stands in line 2 already/),
    ]);
    expect(problemsOf(lotLine({ lot: 'a 12', 'last day': '2027-06-30', packs: '3' }))).toEqual([
      expect.stringMatching(/^3 last day: lot A 12 has 2027-05-31 above/),
    ]);
    expect(problemsOf(`${head}\n${of({ name: 'Other', lot: 'B', packs: '1' })}`)).toEqual([
      expect.stringMatching(/^2 name: "Other" is neither/),
    ]);
    expect(read(lotLine({ lot: 'B', packs: '2' })).items).toMatchObject([
      {
        lots: [
          { lot: 'A 12', expiry: '2027-05-31', packs: 3 },
          { lot: 'B', expiry: null, packs: 2 },
        ],
      },
    ]);
  });
});

describe('against the shelf', () => {
  const strict: ShelfEntry = {
    item: { ...paste, release: 'dentist', priceCents: 310 },
    lots: [{ lot: 'A', expiry: '2027-01-31', quantity: 5 }],
  };

  test('a column that is not there leaves it as it is, an empty cell makes it not known, a lot not named stays', () => {
    const { items, problems } = read(`id;price\n${paste.id};`, [strict]);
    expect(problems).toEqual([]);
    expect(items).toMatchObject([
      { kind: 'changed', changes: [{ field: 'price', from: '3.10', to: '' }], lots: [], item: { release: 'dentist', percent: 0.22 } },
    ]);
  });

  test('nothing said loosens no signature; only a dentist takes one away', () => {
    expect(read(`id;released by\n${paste.id};`, [strict]).items).toMatchObject([{ kind: 'same' }]);
    const freed = `id;released by\n${paste.id};anyone`;
    expect(problemsOf(freed, [strict])).toEqual([expect.stringMatching(/^2 released by: only a dentist/)]);
    expect(read(freed, [strict], { ...SETTING, mayFree: true })).toMatchObject({ problems: [], items: [{ item: { release: 'anyone' } }] });
  });

  test('packs are what is in the cupboard; a last day that differs from the book is asked back; an item with another id but the same name too', () => {
    const lots = (cells: string) => `id;lot;last day;packs\n${paste.id};${cells}`;
    expect(read(lots('a;2027-01;3'), [strict]).items).toMatchObject([{ kind: 'same', lots: [{ lot: 'A', packs: 3, there: 5 }] }]);
    expect(read(lots('B;;3'), [strict]).items).toMatchObject([{ lots: [{ lot: 'B', expiry: null, there: null }] }]);
    expect(problemsOf(lots('A;2027-02;3'), [strict])).toEqual([expect.stringMatching(/^2 last day: lot A has 2027-01-31 in the book/)]);
    expect(problemsOf(`id;name\nother;${paste.name}`, [strict])).toEqual([
      expect.stringMatching(/^2 id: .* is on the shelf as paste-naf-1000/),
    ]);
  });
});
