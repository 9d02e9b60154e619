import type { LeafletLanguage } from '../core/leaflet/types.ts';
import type { ShelfItem } from '../core/regimen/types.ts';

/** What a pack of this agent usually is, offered when an item is written down for the shelf. Words only: numbers are typed from the pack. */
export interface UsualPack {
  readonly form: ShelfItem['form'];
  /** Name of the active as it stands in an item's name; a noted compound names itself. */
  readonly active: string;
  readonly compound?: ShelfItem['compound'];
  readonly atVisit?: true;
  readonly leafletName: Readonly<Record<LeafletLanguage, string>>;
}

const fluoridePaste = { en: 'Fluoride paste', es: 'Pasta con flúor', fr: 'Dentifrice au fluor', ar: 'معجون أسنان بالفلورايد' } as const;

/** By agent id; every agent has one. */
export const usualPacks: Readonly<Record<string, UsualPack>> = {
  F_PASTE_LOW: {
    form: 'paste',
    active: 'fluoride',
    leafletName: { en: 'Mild fluoride paste', es: 'Pasta con poco flúor', fr: 'Dentifrice peu fluoré', ar: 'معجون أسنان قليل الفلورايد' },
  },
  F_PASTE_STD: { form: 'paste', active: 'fluoride', leafletName: fluoridePaste },
  F_PASTE_2800: {
    form: 'paste',
    active: 'fluoride',
    compound: 'NaF',
    leafletName: {
      en: 'Strong fluoride paste',
      es: 'Pasta fuerte con flúor',
      fr: 'Dentifrice fort au fluor',
      ar: 'معجون أسنان قوي بالفلورايد',
    },
  },
  F_PASTE_5000: {
    form: 'paste',
    active: 'fluoride',
    compound: 'NaF',
    leafletName: {
      en: 'Very strong fluoride paste',
      es: 'Pasta muy fuerte con flúor',
      fr: 'Dentifrice très fort au fluor',
      ar: 'معجون أسنان قوي جدًا بالفلورايد',
    },
  },
  F_RINSE_005: {
    form: 'rinse',
    active: 'fluoride',
    compound: 'NaF',
    leafletName: {
      en: 'Daily fluoride rinse',
      es: 'Enjuague diario con flúor',
      fr: 'Bain de bouche au fluor de chaque jour',
      ar: 'غسول الفم اليومي بالفلورايد',
    },
  },
  F_RINSE_02: {
    form: 'rinse',
    active: 'fluoride',
    compound: 'NaF',
    leafletName: {
      en: 'Weekly fluoride rinse',
      es: 'Enjuague semanal con flúor',
      fr: 'Bain de bouche au fluor de la semaine',
      ar: 'غسول الفم الأسبوعي بالفلورايد',
    },
  },
  F_GEL_APF: {
    form: 'gel',
    active: 'acidulated phosphate fluoride',
    atVisit: true,
    leafletName: {
      en: 'Fluoride gel at the practice',
      es: 'Gel de flúor en la consulta',
      fr: 'Gel au fluor au cabinet',
      ar: 'جل الفلورايد في العيادة',
    },
  },
  F_GEL_SNF2: {
    form: 'gel',
    active: 'fluoride',
    compound: 'SnF2',
    leafletName: { en: 'Fluoride gel', es: 'Gel con flúor', fr: 'Gel au fluor', ar: 'جل بالفلورايد' },
  },
  F_VARNISH: {
    form: 'varnish',
    active: 'fluoride',
    compound: 'NaF',
    atVisit: true,
    leafletName: { en: 'Fluoride varnish', es: 'Barniz de flúor', fr: 'Vernis au fluor', ar: 'ورنيش الفلورايد' },
  },
  SDF38: {
    form: 'drops',
    active: 'silver diamine fluoride',
    compound: 'AgF(NH3)2',
    atVisit: true,
    leafletName: { en: 'Silver fluoride', es: 'Flúor de plata', fr: 'Fluorure d’argent', ar: 'فلوريد الفضة' },
  },
  XYLITOL: {
    form: 'gum',
    active: 'xylitol',
    leafletName: { en: 'Xylitol gum', es: 'Chicle de xilitol', fr: 'Gomme au xylitol', ar: 'علكة بالزيليتول' },
  },
  POLYOL_GUM: {
    form: 'gum',
    active: 'sugar alcohols',
    leafletName: { en: 'Sugar-free gum', es: 'Chicle sin azúcar', fr: 'Gomme sans sucre', ar: 'علكة بلا سكر' },
  },
  CHX_RINSE: {
    form: 'rinse',
    active: 'chlorhexidine',
    leafletName: {
      en: 'Chlorhexidine rinse',
      es: 'Enjuague de clorhexidina',
      fr: 'Bain de bouche à la chlorhexidine',
      ar: 'غسول الفم بالكلورهيكسيدين',
    },
  },
  CHX_VARNISH: {
    form: 'varnish',
    active: 'chlorhexidine and thymol',
    atVisit: true,
    leafletName: { en: 'Chlorhexidine varnish', es: 'Barniz de clorhexidina', fr: 'Vernis à la chlorhexidine', ar: 'ورنيش الكلورهيكسيدين' },
  },
  NAOCL: {
    form: 'rinse',
    active: 'sodium hypochlorite',
    leafletName: {
      en: 'Rinse of your written plan',
      es: 'Enjuague de su plan escrito',
      fr: 'Bain de bouche de votre plan écrit',
      ar: 'غسول الفم في خطتك المكتوبة',
    },
  },
  PVPI: {
    form: 'drops',
    active: 'povidone-iodine',
    atVisit: true,
    leafletName: { en: 'Iodine at the practice', es: 'Yodo en la consulta', fr: 'Iode au cabinet', ar: 'اليود في العيادة' },
  },
  ESSENTIAL_OILS: {
    form: 'rinse',
    active: 'essential oils',
    leafletName: {
      en: 'Plant oil rinse',
      es: 'Enjuague con aceites de planta',
      fr: 'Bain de bouche aux huiles de plantes',
      ar: 'غسول الفم بزيوت النبات',
    },
  },
  ARGININE: { form: 'paste', active: 'arginine', leafletName: fluoridePaste },
  CPP_ACP: {
    form: 'paste',
    active: 'casein with calcium phosphate',
    leafletName: { en: 'Casein paste', es: 'Pasta de caseína', fr: 'Pâte à la caséine', ar: 'معجون الكازين' },
  },
  FTCP: { form: 'paste', active: 'tricalcium phosphate', leafletName: fluoridePaste },
  HAP: {
    form: 'paste',
    active: 'hydroxyapatite',
    leafletName: { en: 'Mineral paste', es: 'Pasta mineral', fr: 'Pâte minérale', ar: 'معجون معدني' },
  },
  BICARB: {
    form: 'powder',
    active: 'sodium bicarbonate',
    leafletName: { en: 'Baking soda', es: 'Bicarbonato', fr: 'Bicarbonate', ar: 'بيكربونات الصوديوم' },
  },
  SALIVA: {
    form: 'spray',
    active: 'saliva substitute',
    leafletName: { en: 'Mouth moisture spray', es: 'Aerosol para boca seca', fr: 'Spray pour bouche sèche', ar: 'بخاخ لترطيب الفم' },
  },
  SEALANT: {
    form: 'sealant',
    active: 'sealant',
    atVisit: true,
    leafletName: { en: 'Sealant', es: 'Sellador', fr: 'Scellant', ar: 'مادة سدّ الشقوق' },
  },
  CA_PRERINSE: {
    form: 'rinse',
    active: 'calcium',
    leafletName: { en: 'Calcium rinse', es: 'Enjuague de calcio', fr: 'Bain de bouche au calcium', ar: 'غسول الفم بالكالسيوم' },
  },
  F_SUPP: {
    form: 'drops',
    active: 'fluoride',
    leafletName: { en: 'Fluoride drops', es: 'Gotas de flúor', fr: 'Gouttes de fluor', ar: 'نقط الفلورايد' },
  },
};
