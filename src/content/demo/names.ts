/** What is special about an invented person; the rest is drawn. */
export type DemoTrait =
  | 'no-teeth'
  | 'implants-only'
  | 'overdenture-roots'
  | 'dry-mouth'
  | 'lost-glands'
  | 'brace'
  | 'retainer'
  | 'pregnant'
  | 'milk-allergy'
  | 'insulin'
  | 'acid-wear'
  | 'eating-disorder'
  | 'declines-swab'
  | 'spanish'
  | 'never-seen';

export interface DemoGuardian {
  readonly name: string;
  readonly relation: string;
  /** Absent = nobody has asked. */
  readonly mayConsent?: boolean;
}

/** Only where there is more than one. */
export interface DemoHome {
  readonly name: string;
  readonly language: 'en' | 'es';
}

export interface DemoName {
  readonly name: string;
  /** Completed years on the day of the demonstration. */
  readonly ageYears: number;
  readonly traits: readonly DemoTrait[];
  readonly guardians?: readonly DemoGuardian[];
  readonly homes?: readonly DemoHome[];
  /** Language of the interpreter who comes along. */
  readonly interpreter?: string;
  /** Local time of the appointment on the day of the demonstration. */
  readonly todayAt?: string;
  readonly todayNote?: string;
}

const plain = (name: string, ageYears: number, ...traits: readonly DemoTrait[]): DemoName => ({ name, ageYears, traits });
const by = (relation: string, name: string): DemoGuardian => ({ relation, name, mayConsent: true });
const alsoBy = (relation: string, name: string): DemoGuardian => ({ relation, name });
const at = (name: string, language: DemoHome['language'] = 'en'): DemoHome => ({ name, language });

/** Eighty people who do not exist, by age. First and family names were put together at random from many languages. */
export const demoNames: readonly DemoName[] = [
  { ...plain('Milo Arbuthnot-Sy', 2), guardians: [by('mother', 'Perpetua Arbuthnot-Sy')] },
  { ...plain('Wilder Ngata-Broome', 2), guardians: [by('father', 'Casimir Ngata-Broome')] },
  { ...plain('Ayla Fernsby', 3), guardians: [by('mother', 'Thirza Fernsby'), alsoBy('grandmother', 'Enid Fernsby')] },
  { ...plain('Theo Quillon', 4, 'never-seen'), guardians: [by('father', 'Ambrose Quillon')] },
  { ...plain('Noemi Abelard-Quispe', 4, 'spanish'), guardians: [by('mother', 'Itziar Quispe')], interpreter: 'Spanish' },
  { ...plain('Suri Halvorsen', 5), guardians: [by('mother', 'Dagny Halvorsen')] },
  {
    ...plain('Oisin Brightwater', 6),
    guardians: [by('mother', 'Fenna Brightwater'), by('father', 'Lorcan Maddern')],
    homes: [at('with the mother'), at('with the father')],
  },
  { ...plain('Leocadia Umber', 6), guardians: [by('foster mother', 'Hester Umber')] },
  { ...plain('Bastian Oyelowo-Pike', 7), guardians: [by('father', 'Barnaby Oyelowo-Pike')] },
  {
    ...plain('Kezia Dunmorrow', 8),
    guardians: [by('mother', 'Sunniva Dunmorrow'), by('father', 'Idris Castellane')],
    homes: [at('weekdays, with the mother'), at('weekends, with the father', 'es')],
    todayAt: '10:20',
    todayNote: 'the father brings her',
  },
  { ...plain('Ximena Rooke', 9, 'spanish'), guardians: [by('mother', 'Araceli Rooke')], interpreter: 'Spanish', todayAt: '08:40' },
  { ...plain('Emrys Fairweather-Obi', 10, 'milk-allergy'), guardians: [by('mother', 'Ngozi Fairweather-Obi')] },
  { ...plain('Jasper Nakatomi-Lund', 11), guardians: [by('father', 'Torvald Nakatomi-Lund')] },
  { ...plain('Tamsin Orrell', 12, 'brace'), guardians: [by('mother', 'Morwenna Orrell')] },
  { ...plain('Halima Brackwater', 13, 'brace'), guardians: [by('mother', 'Safiya Brackwater')] },
  { ...plain('Caspian Lomax-Reyes', 14, 'insulin'), guardians: [by('father', 'Evaristo Lomax-Reyes')] },
  {
    ...plain('Finn Castaneda', 15, 'brace'),
    guardians: [by('mother', 'Leonor Castaneda')],
    todayAt: '15:40',
    todayNote: 'comes with the mother',
  },
  { ...plain('Isolde Varnakova', 16, 'eating-disorder', 'acid-wear'), guardians: [alsoBy('aunt', 'Ludmila Varnakova')] },
  plain('Odalys Winterbourne', 17),
  plain('Piers Achterberg', 18, 'retainer'),
  plain('Rafi Tolland', 19, 'acid-wear'),
  plain('Saskia Umarov-Finch', 20),
  plain('Lorenz Pettigrew-Ali', 21, 'declines-swab'),
  plain('Grete Amankwah', 22),
  plain('Zephyrine Holm', 23),
  plain('Dara Stonebridge-Wu', 24),
  { ...plain('Lucan Petrossian', 25, 'never-seen'), todayAt: '11:00', todayNote: 'first visit' },
  plain("Niamh O'Tarrant", 26),
  plain('Abelone Kurosu', 27),
  plain('Inaya Holloway-Rask', 28, 'pregnant'),
  plain('Ulric Mbeki-Stroud', 29),
  plain('Paloma Ravenhill', 30, 'spanish'),
  plain('Soren Beltrami', 31),
  plain('Thandeka Loxley', 32, 'pregnant'),
  plain('Evander Siddle', 33),
  plain('Yusra Peverell', 34),
  { ...plain('ليان الوراق', 35), interpreter: 'Arabic', todayAt: '11:40', todayNote: 'the interpreter comes along' },
  plain('Fergus Nakuru', 36),
  plain('Marisol Thackeray-Ng', 37, 'spanish'),
  plain('Tobias Nkemelu', 38, 'milk-allergy'),
  plain('Ottilie Serrano-Webb', 39),
  plain('Bram Oduya', 40, 'declines-swab'),
  plain('Carmen Aldous', 41, 'spanish'),
  plain('Sabine Ferreday', 42),
  plain('Anselm Koroma', 43),
  plain('Henrik Varghese', 44),
  { ...plain('Delphine Marchbanks', 45), todayAt: '09:20' },
  plain('Ravindra Stonehouse', 46),
  plain('Maud Szymborski', 47),
  plain('Cosmo Ytterberg', 48, 'never-seen'),
  { ...plain('Leonie Achebe-Hart', 49, 'declines-swab'), todayAt: '12:00' },
  plain('Ignatius Fell', 50),
  plain('Desmond Iwu-Larsen', 51, 'insulin'),
  plain('Rosalba Winstanley', 52),
  plain('Gideon Marsh-Tanaka', 53),
  plain('Verity Okonski', 54),
  { ...plain('Petra Kowhai', 55), todayAt: '14:00' },
  plain('Lambert Zaragosa', 56),
  plain('Honora Pilkvist', 57, 'acid-wear'),
  plain('Alonso Greatorex', 58),
  plain('Imelda Trawick', 59),
  plain('Casper Ndiaye-Holt', 60),
  plain('Wanda Lightfoot-Sato', 61),
  { ...plain('Birgit Ramanujan', 62, 'dry-mouth'), todayAt: '14:40' },
  plain('Osric Delacroix-Bode', 63, 'lost-glands'),
  plain('Philippa Nyqvist', 64),
  plain('Efraim Colquitt', 65, 'never-seen'),
  plain('Winston Echeverry', 66),
  plain('Agnethe Boateng', 67),
  plain('Horatio Lindqvist-Rao', 68, 'implants-only'),
  plain('Ottoline Bakare', 70),
  plain('Mirabel Hathersage', 71, 'overdenture-roots'),
  plain('Clement Vashti-Moor', 73),
  plain('Emil Tashiro', 74, 'dry-mouth'),
  plain('Sidonie Abernethy-Cruz', 76, 'insulin'),
  plain('Valdemar Inch', 77),
  plain('Rosamund Adeyemi', 79),
  plain('Thorvald Penhallow', 81),
  plain('Gwilym Sandoval', 83),
  { ...plain('Hedda Marlowe-Ito', 88, 'no-teeth'), todayAt: '16:20' },
];
