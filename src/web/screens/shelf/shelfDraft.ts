import { usualPacks } from '../../../content/usualPacks.ts';
import type { LeafletLanguage } from '../../../core/leaflet/types.ts';
import { COMPOUND_WORDS, checkLabel } from '../../../core/regimen/checkLabel.ts';
import type { Agent } from '../../../core/regimen/tables.ts';
import type { LabelStrength, NeedKind, ShelfItem } from '../../../core/regimen/types.ts';
import { fluorideInAmount, labelPpm } from '../../../core/shelf/labelSums.ts';
import { content } from '../../content.ts';
import { capitalise, formatCents, formatNumber } from '../../format.ts';
import { parseDecimal, sayNotANumber } from '../../parseDecimal.ts';
import { parsePrice } from '../../parsePrice.ts';

export type Compound = NonNullable<ShelfItem['compound']>;

/** From whom nobody waits to whom everybody does. */
export const RELEASES: readonly ShelfItem['release'][] = ['anyone', 'prescription', 'dentist'];

/** An item as it is typed. `null` = as suggested; the empty string = nothing typed. */
export interface ShelfDraft {
  readonly agentId: string;
  readonly form: ShelfItem['form'];
  readonly name: string | null;
  readonly leafletEn: string | null;
  readonly leafletEs: string | null;
  readonly leafletFr: string | null;
  readonly leafletAr: string | null;
  readonly compound: Compound | '';
  /** Of what the percentage is, as the label has it. */
  readonly percentOf: 'compound' | 'ion';
  /** '' = the label does not say. */
  readonly per: 'w/w' | 'w/v' | '';
  readonly percent: string;
  readonly ppm: string;
  readonly pH: string;
  readonly packValue: string;
  readonly packUnit: 'g' | 'mL' | 'piece';
  readonly price: string;
  readonly flavour: string;
  /** Packs at which to order. */
  readonly minimum: string;
  readonly inStock: boolean;
  /** null = as its kind asks. */
  readonly release: ShelfItem['release'] | null;
  readonly meets: readonly NeedKind[];
  readonly atVisit: boolean;
  readonly often: string;
  readonly oftenPer: 'day' | 'week';
  readonly amount: string;
  readonly amountValue: string;
  readonly amountUnit: 'g' | 'mL';
  readonly courseDays: string;
  readonly isPackChecked: boolean;
  readonly traits: readonly string[];
}

export type ShelfProblems = Readonly<Partial<Record<keyof ShelfDraft, string>>>;

export const emptyDraft: ShelfDraft = {
  agentId: '',
  form: 'paste',
  name: null,
  leafletEn: null,
  leafletEs: null,
  leafletFr: null,
  leafletAr: null,
  compound: '',
  percentOf: 'compound',
  per: '',
  percent: '',
  ppm: '',
  pH: '',
  packValue: '',
  packUnit: 'g',
  price: '',
  flavour: '',
  minimum: '',
  inStock: true,
  release: null,
  meets: [],
  atVisit: false,
  often: '',
  oftenPer: 'day',
  amount: '',
  amountValue: '',
  amountUnit: 'g',
  courseDays: '',
  isPackChecked: false,
  traits: [],
};

const DAYS_A_WEEK = 7;
const typed = (value: number | undefined): string => (value === undefined ? '' : String(value));

/** An item of the shelf, ready to be changed. */
export function draftOf(item: ShelfItem): ShelfDraft {
  const { use } = item;
  const aWeek = use.timesPerDay * DAYS_A_WEEK;
  const isWeekly = use.timesPerDay > 0 && use.timesPerDay < 1 && Math.abs(aWeek - Math.round(aWeek)) < 1e-9;
  return {
    agentId: item.agentId,
    form: item.form,
    name: item.name,
    leafletEn: item.leafletName.en,
    leafletEs: item.leafletName.es,
    leafletFr: item.leafletName.fr ?? null,
    leafletAr: item.leafletName.ar ?? null,
    compound: item.compound ?? '',
    percentOf: item.label?.of === 'ion' ? 'ion' : 'compound',
    per: item.label?.per ?? '',
    percent: item.label?.of === 'ion' ? typed(item.label.value) : typed(item.percent),
    ppm: item.label?.of === 'ion' ? '' : typed(item.fluoridePpm),
    pH: typed(item.pH),
    packValue: typed(item.packAmount?.value),
    packUnit: item.packAmount?.unit ?? 'g',
    price: item.priceCents === undefined ? '' : formatCents(item.priceCents),
    flavour: item.flavour ?? '',
    minimum: typed(item.minimumLevel),
    inStock: item.inStock,
    release: item.release,
    meets: item.meets,
    atVisit: use.atVisit === true,
    often: isWeekly ? String(Math.round(aWeek)) : typed(use.timesPerDay),
    oftenPer: isWeekly ? 'week' : 'day',
    amount: use.amount,
    amountValue: typed(use.amountG ?? use.amountMl),
    amountUnit: use.amountG === undefined && use.amountMl !== undefined ? 'mL' : 'g',
    courseDays: typed(use.courseDays),
    isPackChecked: item.traits !== undefined,
    traits: item.traits ?? [],
  };
}

export const findAgent = (id: string): Agent | undefined => content.regimen.agents.find((a) => a.id === id);

/** Another kind: what belongs to the kind follows it, what was read from the pack stays. */
export function chooseAgent(draft: ShelfDraft, agentId: string): ShelfDraft {
  const usual = usualPacks[agentId];
  return {
    ...draft,
    agentId,
    meets: findAgent(agentId)?.meets ?? [],
    ...(usual && { form: usual.form, compound: usual.compound ?? '', atVisit: usual.atVisit === true, ...unitsFor(usual.form, draft) }),
  };
}

const LIQUID: readonly ShelfItem['form'][] = ['rinse', 'spray', 'drops', 'varnish'];
const COUNTED: readonly ShelfItem['form'][] = ['gum', 'lozenge'];

/** What packs of this form are measured in, where no number stands there yet. */
function unitsFor(form: ShelfItem['form'], draft: ShelfDraft): Pick<ShelfDraft, 'packUnit' | 'amountUnit'> {
  const unit = LIQUID.includes(form) ? 'mL' : 'g';
  return {
    packUnit: draft.packValue.trim() !== '' ? draft.packUnit : COUNTED.includes(form) ? 'piece' : unit,
    amountUnit: draft.amountValue.trim() !== '' ? draft.amountUnit : unit,
  };
}

/** The stricter of what was chosen and what the kind asks. */
export function releaseOf({ release, agentId }: Pick<ShelfDraft, 'release' | 'agentId'>): ShelfItem['release'] {
  const atLeast = findAgent(agentId)?.release ?? 'anyone';
  return release !== null && RELEASES.indexOf(release) > RELEASES.indexOf(atLeast) ? release : atLeast;
}

/** ppm F as typed, else worked out from compound and percentage; undefined when neither tells. */
export function ppmOf({
  compound,
  percent,
  percentOf = 'compound',
  ppm,
}: Pick<ShelfDraft, 'compound' | 'percent' | 'ppm'> & Partial<Pick<ShelfDraft, 'percentOf'>>): number | undefined {
  const given = parseDecimal(ppm);
  if (given !== undefined) return given;
  const share = parseDecimal(percent);
  if (share === undefined || share > 100) return undefined;
  return labelPpm({ value: share, of: percentOf }, compound === '' ? undefined : compound);
}

/** The strength as the label has it, where it has one that holds fluoride; the number typed first is the label's. */
function labelOf({ agentId, percent, percentOf, ppm, per }: ShelfDraft): LabelStrength | undefined {
  if (!findAgent(agentId)?.ppmRange) return undefined;
  const [share, given] = [parseDecimal(percent), parseDecimal(ppm)];
  const side = per === '' ? {} : { per };
  if (share !== undefined && (percentOf === 'ion' || per !== '')) return { value: share, of: percentOf, ...side };
  return share === undefined && given !== undefined && given > 0 && per !== '' ? { value: given, of: 'ppm', ...side } : undefined;
}

/** What on the label cannot be right as it was typed. It asks and holds nothing back. */
export function listLabelDoubts(draft: ShelfDraft): readonly string[] {
  if (!findAgent(draft.agentId)?.ppmRange || Object.keys(findNumberProblems(draft)).length > 0) return [];
  const share = parseDecimal(draft.percent);
  const amount = parseDecimal(draft.amountValue);
  const label = {
    form: draft.form,
    compound: draft.compound === '' ? undefined : draft.compound,
    percent: draft.percentOf === 'compound' ? share : undefined,
    fluorideIonPercent: draft.percentOf === 'ion' ? share : undefined,
    fluoridePpm: parseDecimal(draft.ppm),
    useG: draft.amountUnit === 'g' ? amount : undefined,
    useMl: draft.amountUnit === 'mL' ? amount : undefined,
  };
  return checkLabel(label, content.regimen.agents).map(({ says }) => says);
}

/** "2.3 mg fluoride in one use, 113 mg in the pack", as far as it is known. */
export function sayFluorideSums(draft: ShelfDraft): string | undefined {
  const ppm = findAgent(draft.agentId)?.ppmRange ? ppmOf(draft) : undefined;
  if (ppm === undefined) return undefined;
  const per = draft.per === '' ? undefined : draft.per;
  const [use, pack] = [parseDecimal(draft.amountValue), parseDecimal(draft.packValue)];
  const { amountUnit, packUnit } = draft;
  const inUse = use === undefined ? undefined : fluorideInAmount(ppm, { value: use, unit: amountUnit }, per);
  const inPack = pack === undefined || packUnit === 'piece' ? undefined : fluorideInAmount(ppm, { value: pack, unit: packUnit }, per);
  const known = [inUse && `${sayMg(inUse.mg)} mg fluoride in one use`, inPack && `${sayMg(inPack.mg)} mg in the pack`].filter(Boolean);
  if (known.length === 0) return undefined;
  const aside = inUse?.isByWater || inPack?.isByWater ? ', if 1 mL weighs 1 g' : '';
  return `${known.join(', ')}${aside}.`;
}

const sayMg = (mg: number): string => formatNumber(Number(mg.toPrecision(3)));

/** By ingredient and strength, e.g. "Paste, sodium fluoride 0.32 % (1,448 ppm F)"; "" until a kind is chosen. */
export function suggestName(draft: ShelfDraft): string {
  const usual = usualPacks[draft.agentId];
  if (!usual) return '';
  const compound = draft.compound === '' ? undefined : COMPOUND_WORDS[draft.compound];
  const actives = usual.active === 'fluoride' ? [compound ?? usual.active] : [...new Set([usual.active, compound])];
  // A share of fluoride ion would read as one of the compound; the ppm say it.
  const percent = draft.percentOf === 'ion' ? undefined : parseDecimal(draft.percent);
  const ppm = findAgent(draft.agentId)?.ppmRange ? ppmOf(draft) : undefined;
  const words = [draft.form, ...actives].filter((word, i, all) => word !== undefined && all.indexOf(word) === i);
  const strength = [percent === undefined ? '' : ` ${percent} %`, ppm === undefined ? '' : ` (${formatNumber(Math.round(ppm))} ppm F)`];
  return `${capitalise(words.join(', '))}${strength.join('')}`;
}

/** The generic leaflet name of the kind, in its usual form only: another form is another word. */
export function suggestLeafletName({ agentId, form }: Pick<ShelfDraft, 'agentId' | 'form'>, language: LeafletLanguage): string {
  const usual = usualPacks[agentId];
  return usual?.form === form ? usual.leafletName[language] : '';
}

/** What follows from the strength as typed, and whether it keeps the item from being proposed. */
export function sayStrength(draft: ShelfDraft): { readonly isOpen: boolean; readonly text: string } | undefined {
  const range = findAgent(draft.agentId)?.ppmRange;
  if (!range) return undefined;
  const ppm = ppmOf(draft);
  if (ppm === undefined) return { isOpen: true, text: 'Fluoride not known yet: the item is not proposed until it is.' };
  const said = `${formatNumber(Math.round(ppm))} ppm fluoride`;
  if (ppm >= range[0] && ppm <= range[1]) return { isOpen: false, text: `${said}${draft.ppm.trim() === '' ? ', worked out' : ''}.` };
  return {
    isOpen: true,
    text: `${said} does not fit this kind (${formatNumber(range[0])} to ${formatNumber(range[1])} ppm): the item is not proposed.`,
  };
}

export type BuiltItem = { readonly ok: true; readonly item: ShelfItem } | { readonly ok: false; readonly problems: ShelfProblems };

/** The item as it will be saved, or what is left to say. What was not typed stays unknown. */
export function buildShelfItem(draft: ShelfDraft, makeItemId: (name: string) => string): BuiltItem {
  const name = (draft.name ?? suggestName(draft)).trim();
  const en = (draft.leafletEn ?? suggestLeafletName(draft, 'en')).trim();
  const es = (draft.leafletEs ?? suggestLeafletName(draft, 'es')).trim();
  // These may be left out: the leaflet then says which name is missing before it is printed.
  const fr = (draft.leafletFr ?? suggestLeafletName(draft, 'fr')).trim() || undefined;
  const ar = (draft.leafletAr ?? suggestLeafletName(draft, 'ar')).trim() || undefined;
  const problems = findProblems(draft, { name, en, es });
  if (Object.keys(problems).length > 0) return { ok: false, problems };
  const agent = findAgent(draft.agentId);
  const amount = parseDecimal(draft.amountValue);
  const pack = parseDecimal(draft.packValue);
  const item: ShelfItem = {
    id: makeItemId(name),
    name,
    leafletName: { en, es, fr, ar },
    agentId: draft.agentId,
    form: draft.form,
    traits: draft.isPackChecked ? draft.traits : undefined,
    compound: agent?.ppmRange && draft.compound !== '' ? draft.compound : undefined,
    percent: draft.percentOf === 'ion' ? undefined : parseDecimal(draft.percent),
    fluoridePpm: parseDecimal(draft.ppm) ?? (draft.percentOf === 'ion' ? ppmOf(draft) : undefined),
    label: labelOf(draft),
    pH: parseDecimal(draft.pH),
    packAmount: pack === undefined ? undefined : { value: pack, unit: draft.packUnit },
    priceCents: parsePrice(draft.price),
    flavour: draft.flavour.trim() || undefined,
    minimumLevel: parseDecimal(draft.minimum),
    inStock: draft.inStock,
    release: releaseOf(draft),
    meets: draft.meets.filter((need) => agent?.meets.includes(need)),
    use: {
      timesPerDay: draft.atVisit ? 0 : (parseDecimal(draft.often) ?? 0) / (draft.oftenPer === 'week' ? DAYS_A_WEEK : 1),
      amount: draft.amount.trim(),
      amountG: draft.amountUnit === 'g' ? amount : undefined,
      amountMl: draft.amountUnit === 'mL' ? amount : undefined,
      courseDays: parseDecimal(draft.courseDays),
      atVisit: draft.atVisit ? true : undefined,
    },
  };
  return { ok: true, item };
}

type Limits = { readonly atLeast?: number; readonly above?: number; readonly atMost: number; readonly whole?: true };

/** Undefined for nothing typed and for a number within the limits. */
function numberProblem(text: string, { atLeast, above, atMost, whole }: Limits): string | undefined {
  if (text.trim() === '') return undefined;
  const value = parseDecimal(text);
  if (value === undefined) return sayNotANumber(text);
  if (whole && !Number.isInteger(value)) return 'A whole number is needed.';
  if (above !== undefined && value <= above) return `It must be above ${above}.`;
  if (atLeast !== undefined && value < atLeast) return `It must be ${atLeast} or more.`;
  return value > atMost ? `It must be ${formatNumber(atMost)} or less.` : undefined;
}

function findProblems(draft: ShelfDraft, names: { readonly name: string; readonly en: string; readonly es: string }): ShelfProblems {
  // Names follow the kind, so they are asked for once there is one.
  const isKnown = findAgent(draft.agentId) !== undefined;
  const all: Partial<Record<keyof ShelfDraft, string | undefined>> = {
    agentId: isKnown ? undefined : 'Choose what kind of product it is.',
    name: isKnown && names.name === '' ? 'It needs a name.' : undefined,
    leafletEn: isKnown && names.en === '' ? 'It needs a name for the leaflet in English.' : undefined,
    leafletEs: isKnown && names.es === '' ? 'It needs a name for the leaflet in Spanish.' : undefined,
    ...findNumberProblems(draft),
    price: draft.price.trim() === '' || parsePrice(draft.price) !== undefined ? undefined : 'A price like 12.50 is needed.',
    often: oftenProblem(draft),
    amount: draft.amount.trim() === '' ? 'Say how much in one use, as on the pack.' : undefined,
    courseDays: numberProblem(draft.courseDays, { atLeast: 1, atMost: 10_000, whole: true }),
  };
  return Object.fromEntries(Object.entries(all).filter(([, problem]) => problem !== undefined)) as ShelfProblems;
}

function findNumberProblems(draft: ShelfDraft): ShelfProblems {
  const all = {
    percent: numberProblem(draft.percent, { above: 0, atMost: 100 }),
    ppm: numberProblem(draft.ppm, { atLeast: 0, atMost: 60_000 }),
    pH: numberProblem(draft.pH, { atLeast: 0, atMost: 14 }),
    packValue: numberProblem(draft.packValue, { above: 0, atMost: 1_000_000 }),
    amountValue: numberProblem(draft.amountValue, { above: 0, atMost: 10_000 }),
    minimum: numberProblem(draft.minimum, { atLeast: 0, atMost: 100_000, whole: true }),
  };
  return Object.fromEntries(Object.entries(all).filter(([, problem]) => problem !== undefined)) as ShelfProblems;
}

function oftenProblem({ atVisit, often }: ShelfDraft): string | undefined {
  if (atVisit) return undefined;
  return often.trim() === '' ? 'Say how often, as on the pack.' : numberProblem(often, { above: 0, atMost: 24 });
}
