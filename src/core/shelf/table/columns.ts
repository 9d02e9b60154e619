import type { ShelfItem } from '../../regimen/types.ts';

/** What a table says of an item, in the order in which the columns stand. Of `id` and `name` one is enough to tell it. */
export const ITEM_COLUMNS = [
  ...(['id', 'name', 'leaflet en', 'leaflet es', 'leaflet fr', 'leaflet ar', 'kind', 'form'] as const),
  ...(['compound', 'percent of compound', 'percent of fluoride', 'ppm fluoride', 'per', 'ph', 'in the pack'] as const),
  ...(['pack size', 'pack unit', 'price', 'flavour', 'order at', 'in stock', 'released by', 'meets'] as const),
  ...(['used at', 'times', 'times per', 'amount', 'amount g', 'amount ml', 'course days'] as const),
] as const;
export type ItemColumn = (typeof ITEM_COLUMNS)[number];

/** What it says of one lot of the item; more lots stand in lines of their own, with the id or the name before them and nothing else. */
export const LOT_COLUMNS = ['lot', 'last day', 'packs'] as const;
export type LotColumn = (typeof LOT_COLUMNS)[number];

export type Column = ItemColumn | LotColumn;
export const COLUMNS: readonly Column[] = [...ITEM_COLUMNS, ...LOT_COLUMNS];

export type ItemCells = Readonly<Record<ItemColumn, string>>;

/** Words of a cell for "looked at, and there is none"; an empty one is not known. */
export const NONE = 'none';
export const PER_WEEK = 7;

const typed = (value: number | undefined): string => (value === undefined ? '' : sayExactly(value));
const list = (values: readonly string[]): string => (values.length === 0 ? NONE : values.join('; '));

/** "1.125" would be over a thousand to some, so one more digit stands behind it. */
export function sayExactly(value: number): string {
  const text = String(value);
  return /^[1-9]\d{0,2}\.\d{3}$/.test(text) ? `${text}0` : text;
}

/**
 * The cells of one item. What is not known is an empty cell.
 * @param isCounted  then its packs say whether it is in stock, and the yes or no is left empty
 */
export function cellsOf(item: ShelfItem, isCounted: boolean): ItemCells {
  const { use, label } = item;
  const aWeek = Math.round(use.timesPerDay * PER_WEEK);
  const isWeekly = use.timesPerDay > 0 && use.timesPerDay < 1 && aWeek / PER_WEEK === use.timesPerDay;
  return {
    id: item.id,
    name: item.name,
    'leaflet en': item.leafletName.en,
    'leaflet es': item.leafletName.es,
    'leaflet fr': item.leafletName.fr ?? '',
    'leaflet ar': item.leafletName.ar ?? '',
    kind: item.agentId,
    form: item.form,
    compound: item.compound ?? '',
    'percent of compound': typed(item.percent ?? (label?.of === 'compound' ? label.value : undefined)),
    'percent of fluoride': typed(label?.of === 'ion' ? label.value : undefined),
    'ppm fluoride': typed(item.fluoridePpm ?? (label?.of === 'ppm' ? label.value : undefined)),
    per: label?.per ?? '',
    ph: typed(item.pH),
    'in the pack': item.traits === undefined ? '' : list(item.traits),
    'pack size': typed(item.packAmount?.value),
    'pack unit': item.packAmount?.unit ?? '',
    price: item.priceCents === undefined ? '' : (item.priceCents / 100).toFixed(2),
    flavour: item.flavour ?? '',
    'order at': typed(item.minimumLevel),
    'in stock': isCounted ? '' : item.inStock ? 'yes' : 'no',
    'released by': item.release,
    meets: list(item.meets),
    'used at': use.atVisit ? 'visit' : 'home',
    times: use.atVisit && use.timesPerDay === 0 ? '' : isWeekly ? String(aWeek) : typed(use.timesPerDay),
    'times per': use.atVisit && use.timesPerDay === 0 ? '' : isWeekly ? 'week' : 'day',
    amount: use.amount,
    'amount g': typed(use.amountG),
    'amount ml': typed(use.amountMl),
    'course days': typed(use.courseDays),
  };
}
