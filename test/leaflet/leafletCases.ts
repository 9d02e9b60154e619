import type { LeafletInput } from '../../src/core/leaflet/buildLeaflet.ts';
import type { PlanLine, ShelfItem } from '../../src/core/regimen/types.ts';

const CASE_NAMES: Readonly<Record<string, { readonly fr: string; readonly ar: string }>> = {
  paste: { fr: 'dentifrice au fluor', ar: 'معجون أسنان بالفلورايد' },
  strong: { fr: 'dentifrice fort au fluor', ar: 'معجون أسنان قوي بالفلورايد' },
  rinse: { fr: 'bain de bouche au fluor', ar: 'غسول الفم بالفلورايد' },
  germs: { fr: 'bain de bouche contre les germes (chlorhexidine)', ar: 'غسول ضد الجراثيم (كلورهيكسيدين)' },
  gum: { fr: 'gomme au xylitol', ar: 'علكة بالزيليتول' },
  soda: { fr: 'bicarbonate', ar: 'بيكربونات الصوديوم' },
  cream: { fr: 'pâte à la caséine', ar: 'معجون الكازين' },
  spray: { fr: 'spray pour bouche sèche', ar: 'بخاخ لترطيب الفم' },
  varnish: { fr: 'vernis au fluor', ar: 'ورنيش الفلورايد' },
};

/** Invented items and people, made to fill the page in different ways. No item resembles a maker's. */
const item = (
  id: string,
  agentId: string,
  form: ShelfItem['form'],
  en: string,
  es: string,
  rest: Partial<ShelfItem> & Pick<ShelfItem, 'use'>,
): ShelfItem => ({
  id,
  agentId,
  form,
  name: en,
  leafletName: { en, es, ...CASE_NAMES[id] },
  inStock: true,
  release: 'anyone',
  meets: [],
  ...rest,
  traits: rest.traits ?? [],
});

export const caseShelf: readonly ShelfItem[] = [
  item('paste', 'F_PASTE_STD', 'paste', 'fluoride toothpaste', 'pasta dental con flúor', {
    use: { timesPerDay: 2, amount: 'paste', amountG: 1 },
    meets: ['fluoride-base'],
    packAmount: { value: 100, unit: 'g' },
    priceCents: 450,
  }),
  item('strong', 'F_PASTE_5000', 'paste', 'strong fluoride toothpaste', 'pasta dental fuerte con flúor', {
    use: { timesPerDay: 2, amount: 'paste', amountG: 1 },
    meets: ['fluoride-base', 'fluoride-extra'],
    release: 'prescription',
    packAmount: { value: 51, unit: 'g' },
    priceCents: 1500,
  }),
  item('rinse', 'F_RINSE_005', 'rinse', 'fluoride mouth rinse', 'enjuague con flúor', {
    use: { timesPerDay: 1, amount: '10 mL for 1 minute', amountMl: 10 },
    meets: ['fluoride-extra'],
    packAmount: { value: 500, unit: 'mL' },
    priceCents: 700,
  }),
  item('germs', 'CHX_RINSE', 'rinse', 'germ rinse (chlorhexidine)', 'enjuague contra gérmenes (clorhexidina)', {
    use: { timesPerDay: 1, amount: '15 mL for 30 seconds', amountMl: 15, courseDays: 7 },
    meets: ['antimicrobial'],
    release: 'prescription',
    percent: 0.12,
    packAmount: { value: 473, unit: 'mL' },
    priceCents: 1200,
  }),
  item('gum', 'XYLITOL', 'gum', 'xylitol gum', 'chicle con xilitol', {
    use: { timesPerDay: 3, amount: '2 pieces' },
    meets: ['sweetener'],
    traits: ['xylitol'],
  }),
  item('soda', 'BICARB', 'powder', 'baking soda', 'bicarbonato', {
    use: { timesPerDay: 4, amount: 'half a teaspoon', amountG: 2.5 },
    meets: ['acid-control'],
    packAmount: { value: 500, unit: 'g' },
    priceCents: 200,
  }),
  item('cream', 'CPP_ACP', 'paste', 'milk mineral cream', 'crema con minerales de leche', {
    use: { timesPerDay: 1, amount: 'pea' },
    meets: ['calcium-phosphate'],
    traits: ['milk protein'],
  }),
  item('spray', 'SALIVA', 'spray', 'mouth spray', 'espray para la boca', {
    use: { timesPerDay: 3, amount: '2 sprays' },
    meets: ['saliva'],
  }),
  item('varnish', 'F_VARNISH', 'varnish', 'fluoride varnish', 'barniz con flúor', {
    use: { timesPerDay: 0, amount: '0.4 mL', amountMl: 0.4, atVisit: true },
    meets: ['professional-fluoride'],
  }),
];

export interface LeafletCase {
  readonly name: string;
  readonly person: LeafletInput['person'];
  readonly items: readonly string[];
  readonly signed: readonly string[];
  readonly canSpit?: boolean;
  readonly diet?: 'any' | 'sweet-bottle-only' | 'after-only';
  readonly agreed?: LeafletInput['agreed'];
  readonly stopUsing?: readonly string[];
  readonly nextOn?: string;
}

export const leafletCases: readonly LeafletCase[] = [
  {
    name: 'adult, signed paste, food agreed',
    person: { name: 'Odile Brandt', ageYears: 46 },
    items: ['strong', 'varnish'],
    signed: ['strong'],
    agreed: { tryThis: 'sweet-drink-with-meal' },
    stopUsing: ['Lemon drops between meals'],
    nextOn: '2027-03-25',
  },
  {
    name: 'toddler',
    person: { name: 'Ana Sofía Núñez', ageYears: 1 },
    items: ['paste', 'varnish'],
    signed: [],
    canSpit: false,
    diet: 'sweet-bottle-only',
  },
  {
    name: 'child of 5, nothing to stop',
    person: { name: 'Teo Lindqvist', ageYears: 5 },
    items: ['paste', 'varnish'],
    signed: [],
    canSpit: true,
  },
  { name: 'child of 9 with rinse', person: { name: 'Mira Okafor', ageYears: 9 }, items: ['paste', 'rinse', 'varnish'], signed: [] },
  {
    name: 'adult, no food advice, everything at once',
    person: { name: 'María de los Ángeles Etxeberria-Castellanos', ageYears: 71 },
    items: ['strong', 'rinse', 'germs', 'gum', 'soda', 'varnish'],
    signed: ['strong', 'germs'],
    diet: 'after-only',
    agreed: { tryThis: 'sweet-food-with-meal' },
    stopUsing: ['paste', 'Whitening powder'],
    nextOn: '2027-02-25',
  },
  { name: 'nothing to print', person: { name: 'Kim Hale', ageYears: 33 }, items: ['strong'], signed: [] },
];

/** People with the items of the demo shelf. */
export const demoCases: readonly LeafletCase[] = [
  {
    name: 'demo: adult with dry mouth',
    person: { name: 'Odile Brandt', ageYears: 46 },
    items: ['paste-naf-5000', 'rinse-naf-005', 'gum-xylitol', 'powder-bicarbonate', 'spray-saliva', 'varnish-naf-plain'],
    signed: ['paste-naf-5000'],
    stopUsing: ['rinse-essential-oils'],
    nextOn: '2027-02-24',
  },
  {
    name: 'demo: adult after a course was signed',
    person: { name: 'Ruben Achterberg', ageYears: 58 },
    items: ['paste-naf-2800', 'rinse-chlorhexidine-plain', 'rinse-naf-02', 'lozenge-xylitol', 'varnish-naf-resin'],
    signed: ['paste-naf-2800', 'rinse-chlorhexidine-plain', 'rinse-naf-02'],
    diet: 'after-only',
  },
  {
    name: 'demo: child of 8',
    person: { name: 'Mira Okafor', ageYears: 8 },
    items: ['paste-naf-1450', 'rinse-naf-005', 'gum-polyol', 'sealant-resin', 'varnish-naf-plain'],
    signed: [],
    canSpit: true,
  },
  {
    name: 'demo: toddler',
    person: { name: 'Ana Sofía Núñez', ageYears: 2 },
    items: ['paste-naf-1000', 'varnish-naf-plain'],
    signed: [],
    diet: 'sweet-bottle-only',
    canSpit: false,
  },
  {
    name: 'demo: adult with gels and creams',
    person: { name: 'Solveig Aalto', ageYears: 30 },
    items: [
      'paste-naf-1450',
      'gel-snf2',
      'paste-casein',
      'paste-hydroxyapatite',
      'rinse-essential-oils',
      'gel-apf',
      'sealant-glass-ionomer',
    ],
    signed: ['gel-apf'],
  },
];

export function planLine(shelfItem: ShelfItem, ageYears: number, signed: boolean): PlanLine {
  const needsSignature = shelfItem.release !== 'anyone';
  const [amountKind, amountG] =
    ageYears < 3 ? (['smear', 0.1] as const) : ageYears < 7 ? (['pea', 0.25] as const) : (['ribbon', 1] as const);
  const isPaste = shelfItem.form === 'paste';
  return {
    shelfItemId: shelfItem.id,
    name: shelfItem.name,
    meets: shelfItem.meets,
    state: signed ? 'signed' : needsSignature ? 'waiting-for-signature' : 'proposed',
    ...(signed && { signedBy: { name: 'Dr. Ahlgren', at: '2026-11-25T10:50:00Z' } }),
    use: isPaste ? { ...shelfItem.use, amountG } : shelfItem.use,
    ...(isPaste && { amountKind }),
    because: ['private words that no leaflet prints'],
    warnings: [{ ruleId: 'C00', text: 'private words that no leaflet prints', source: { key: 'none', status: 'memory' } }],
    sources: [],
  };
}
