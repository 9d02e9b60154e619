import { COMPOUND_WORDS } from '../../regimen/checkLabel.ts';
import { FORMS } from '../../regimen/listPackTraits.ts';
import type { Agent } from '../../regimen/tables.ts';
import type { LabelStrength, NeedKind, ShelfItem } from '../../regimen/types.ts';
import { labelPpm } from '../labelSums.ts';
import { type ItemCells, type ItemColumn, NONE, PER_WEEK } from './columns.ts';
import { type NumberLimits, readNumber, readPrice } from './readNumber.ts';

/** What a table is read with. */
export interface ReadSetting {
  readonly agents: readonly Agent[];
  /** Ingredients that a rule looks for; no other is taken, a misspelt one would pass every rule. */
  readonly traits: readonly string[];
  /** Name for the leaflet where the table gives none. */
  readonly leafletNameOf: (agentId: string, form: ShelfItem['form']) => ShelfItem['leafletName'] | undefined;
  /** A dentist may let an item go that so far waited for a signature. */
  readonly mayFree: boolean;
}

export interface FieldProblem {
  readonly field: string;
  readonly says: string;
}

/** The name follows kind and form, so it is asked for once there are both. */
const NOT_ASKED = { en: '', es: '' } as const;
/** From whom nobody waits to whom everybody does. */
const RELEASES: readonly ShelfItem['release'][] = ['anyone', 'prescription', 'dentist'];
const COMPOUNDS = Object.keys(COMPOUND_WORDS) as readonly NonNullable<ShelfItem['compound']>[];
const LONGEST = { name: 200, flavour: 100, amount: 200 } as const;
const MOST = { ppm: 60_000, pack: 1_000_000, use: 10_000, packs: 100_000, times: 24 } as const;

/** Takes cells one by one and keeps what is wrong with each, so that a line names all of its faults at once. */
export class CellReader {
  readonly problems: FieldProblem[] = [];
  constructor(private readonly cells: Readonly<Record<string, string>>) {}

  /** Undefined for an empty cell. */
  text(field: string, longest: number = LONGEST.name): string | undefined {
    const text = this.cells[field]?.trim() ?? '';
    // biome-ignore lint/suspicious/noControlCharactersInRegex: these are the characters looked for
    if (/[\u0000-\u0008\u000b\u000c\u000e-\u001f]/.test(text)) return this.fail(field, 'holds a control character');
    if (text.length > longest) return this.fail(field, `is longer than ${longest} letters`);
    return text === '' ? undefined : text;
  }

  number(field: string, limits: NumberLimits): number | undefined {
    return this.take(field, (cell) => readNumber(cell, limits));
  }

  price(field: string): number | undefined {
    return this.take(field, readPrice);
  }

  /** One of these words, whatever the case; each may have a second name. */
  oneOf<T extends string>(field: string, words: readonly T[], other?: Readonly<Record<string, string>>): T | undefined {
    const cell = plain(this.cells[field] ?? '').toLowerCase();
    if (cell === '') return undefined;
    const found = words.find((word) => word.toLowerCase() === cell || other?.[word]?.toLowerCase() === cell);
    return found ?? this.fail(field, `"${plain(this.cells[field] ?? '')}" is not known here; it is one of: ${words.join(', ')}`);
  }

  /** Words between semicolons, or "none"; undefined for an empty cell. */
  listOf<T extends string>(field: string, words: readonly T[]): readonly T[] | undefined {
    const cell = plain(this.cells[field] ?? '');
    if (cell === '') return undefined;
    if (cell.toLowerCase() === NONE) return [];
    const typed = cell.split(';').flatMap((word) => word.trim() || []);
    const strange = typed.filter((word) => !words.some((known) => known.toLowerCase() === word.toLowerCase()));
    if (strange.length > 0) return this.fail(field, `"${strange.join('", "')}" is not known here; ${NONE}, or of: ${words.join(', ')}`);
    const known = typed.flatMap((word) => words.find((w) => w.toLowerCase() === word.toLowerCase()) ?? []);
    return [...new Set(known)];
  }

  private take(field: string, read: (cell: string) => number | string): number | undefined {
    const cell = plain(this.cells[field] ?? '');
    if (cell === '') return undefined;
    const value = read(cell);
    return typeof value === 'number' ? value : this.fail(field, value);
  }

  fail(field: string, says: string): undefined {
    this.problems.push({ field, says });
    return undefined;
  }
}

/** Spaces of fixed width come along from documents, between digits and around words. */
export const plain = (cell: string): string => cell.replaceAll(/[\u00a0\u2007\u202f]/g, ' ').trim();

export interface ReadItem {
  /** Undefined when something is wrong. */
  readonly item: ShelfItem | undefined;
  readonly problems: readonly FieldProblem[];
}

/**
 * The item that a line describes. What it leaves empty is not known; what follows from the kind (who releases it, the needs it meets, its
 * name for the leaflet) follows the kind.
 * @param before     the item as it stands on the shelf
 * @param isCounted  its packs say whether it is in stock, here or in the book
 */
export function readItem(
  cells: ItemCells,
  setting: ReadSetting,
  { before, isCounted }: { readonly before: ShelfItem | undefined; readonly isCounted: boolean },
): ReadItem {
  const read = new CellReader(cells);
  const id = read.text('id', 100) ?? '';
  const name = read.text('name') ?? read.fail('name', 'it needs a name') ?? '';
  const agent = readAgent(read, setting.agents);
  const form = readForm(read, agent, before);
  const release = readRelease(read, setting, agent, before);
  const item: ShelfItem = {
    id,
    name,
    leafletName: readLeafletName(read, agent && form ? setting.leafletNameOf(agent.id, form) : NOT_ASKED, before),
    agentId: agent?.id ?? '',
    form: form ?? 'paste',
    traits: read.listOf('in the pack', [...new Set([...(before?.traits ?? []), ...setting.traits])]),
    ...readStrength(read),
    pH: read.number('ph', { atLeast: 0, atMost: 14 }),
    packAmount: readPack(read),
    priceCents: read.price('price'),
    flavour: read.text('flavour', LONGEST.flavour),
    minimumLevel: read.number('order at', { atLeast: 0, atMost: MOST.packs, whole: true }),
    inStock: readInStock(read, before, isCounted),
    release,
    meets: readMeets(read, agent, before),
    use: readUse(read),
  };
  return { item: read.problems.length > 0 ? undefined : item, problems: read.problems };
}

function readAgent(read: CellReader, agents: readonly Agent[]): Agent | undefined {
  const before = read.problems.length;
  const id = read.oneOf(
    'kind',
    agents.map((agent) => agent.id),
    Object.fromEntries(agents.map((agent) => [agent.id, agent.name])),
  );
  if (id === undefined && read.problems.length === before) read.fail('kind', 'say what kind of product it is');
  return agents.find((agent) => agent.id === id);
}

function readForm(read: CellReader, agent: Agent | undefined, before: ShelfItem | undefined): ShelfItem['form'] | undefined {
  const count = read.problems.length;
  const form = read.oneOf('form', FORMS);
  if (form === undefined && agent?.forms.length === 1 && read.problems.length === count) return agent.forms[0];
  if (form === undefined)
    return read.problems.length > count ? undefined : read.fail('form', `one of: ${(agent?.forms ?? FORMS).join(', ')}`);
  const stood = before?.agentId === agent?.id && before?.form === form;
  if (agent && !agent.forms.includes(form) && !stood)
    return read.fail('form', `this kind is a ${agent.forms.join(' or a ')}, not a ${form}`);
  return form;
}

function readLeafletName(
  read: CellReader,
  usual: ShelfItem['leafletName'] | undefined,
  before: ShelfItem | undefined,
): ShelfItem['leafletName'] {
  const needed = 'it needs a name for the leaflet, this kind has no usual one in this form';
  const of = (field: ItemColumn, usualName: string | undefined) => read.text(field) ?? usualName ?? read.fail(field, needed) ?? '';
  const [en, es] = [of('leaflet en', usual?.en), of('leaflet es', usual?.es)];
  // An item on the shelf may have none in these two; reading its own table gives it none.
  const [fr, ar] = (['fr', 'ar'] as const).map((language) => read.text(`leaflet ${language}`) ?? (before ? undefined : usual?.[language]));
  return { en, es, ...(fr === undefined ? {} : { fr }), ...(ar === undefined ? {} : { ar }) };
}

function readStrength(read: CellReader): Pick<ShelfItem, 'compound' | 'percent' | 'fluoridePpm' | 'label'> {
  const compound = read.oneOf('compound', COMPOUNDS, COMPOUND_WORDS);
  const percent = read.number('percent of compound', { above: 0, atMost: 100 });
  const ion = read.number('percent of fluoride', { above: 0, atMost: 100 });
  const ppm = read.number('ppm fluoride', { atLeast: 0, atMost: MOST.ppm });
  const per = read.oneOf('per', ['w/w', 'w/v'] as const);
  const side = per === undefined ? {} : { per };
  const fromIon = ion === undefined ? undefined : labelPpm({ value: ion, of: 'ion' }, compound);
  if (ppm === undefined && fromIon !== undefined && fromIon > MOST.ppm)
    read.fail('percent of fluoride', `"${ion}" % of fluoride is more than any product holds`);
  let label: LabelStrength | undefined;
  if (ion !== undefined) label = { value: ion, of: 'ion', ...side };
  else if (per !== undefined && percent !== undefined) label = { value: percent, of: 'compound', per };
  else if (per !== undefined && ppm !== undefined && ppm > 0) label = { value: ppm, of: 'ppm', per };
  if (per !== undefined && !label && !read.problems.some(({ field }) => STRENGTHS.includes(field)))
    read.fail('per', 'there is no strength beside it');
  return { compound, percent, fluoridePpm: ppm ?? fromIon, label };
}
const STRENGTHS: readonly string[] = ['percent of compound', 'percent of fluoride', 'ppm fluoride'] satisfies ItemColumn[];

function readPack(read: CellReader): ShelfItem['packAmount'] {
  const count = read.problems.length;
  const value = read.number('pack size', { above: 0, atMost: MOST.pack });
  const unit = read.oneOf('pack unit', ['g', 'mL', 'piece'] as const);
  if (value !== undefined && unit !== undefined) return { value, unit };
  if (read.problems.length > count) return undefined;
  if (value !== undefined) return read.fail('pack unit', `${value} of what: g, mL or piece?`);
  return unit === undefined ? undefined : read.fail('pack size', `how many ${unit}?`);
}

function readInStock(read: CellReader, before: ShelfItem | undefined, isCounted: boolean): boolean {
  const count = read.problems.length;
  const said = read.oneOf('in stock', ['yes', 'no'] as const);
  if (isCounted) return before?.inStock ?? true;
  if (said === undefined && read.problems.length === count) read.fail('in stock', 'yes or no is needed where no packs are counted');
  return said === 'yes';
}

function readRelease(
  read: CellReader,
  { mayFree }: ReadSetting,
  agent: Agent | undefined,
  before: ShelfItem | undefined,
): ShelfItem['release'] {
  const atLeast = agent?.release ?? 'anyone';
  const said = read.oneOf('released by', RELEASES);
  if (said === undefined) return stricter(atLeast, before?.release);
  const stood = before?.release === said && before.agentId === agent?.id;
  if (RELEASES.indexOf(said) < RELEASES.indexOf(atLeast) && !stood) read.fail('released by', `this kind waits for a signature: ${atLeast}`);
  if (before && before.release !== 'anyone' && said === 'anyone' && !mayFree)
    read.fail('released by', 'only a dentist may release it from signature');
  return said;
}

/** Nothing said loosens nothing. */
const stricter = (a: ShelfItem['release'], b: ShelfItem['release'] = a): ShelfItem['release'] =>
  RELEASES.indexOf(a) > RELEASES.indexOf(b) ? a : b;

function readMeets(read: CellReader, agent: Agent | undefined, before: ShelfItem | undefined): readonly NeedKind[] {
  const ofKind = agent?.meets ?? [];
  const kept = before?.agentId === agent?.id ? (before?.meets ?? []) : [];
  return read.listOf('meets', [...new Set([...kept, ...ofKind])]) ?? ofKind;
}

function readUse(read: CellReader): ShelfItem['use'] {
  const atVisit = read.oneOf('used at', ['home', 'visit'] as const) === 'visit';
  const count = read.problems.length;
  const times = read.number('times', { atLeast: 0, atMost: MOST.times });
  const per = read.oneOf('times per', ['day', 'week'] as const);
  if (read.problems.length === count && !atVisit) {
    if (times === undefined) read.fail('times', 'say how often, as on the pack');
    else if (per === undefined) read.fail('times per', `${times} times a day or a week?`);
  }
  const amount = read.text('amount', LONGEST.amount) ?? read.fail('amount', 'say how much in one use, as on the pack') ?? '';
  return {
    timesPerDay: (times ?? 0) / (per === 'week' ? PER_WEEK : 1),
    amount,
    amountG: read.number('amount g', { above: 0, atMost: MOST.use }),
    amountMl: read.number('amount ml', { above: 0, atMost: MOST.use }),
    courseDays: read.number('course days', { atLeast: 1, atMost: MOST.use, whole: true }),
    atVisit: atVisit ? true : undefined,
  };
}
