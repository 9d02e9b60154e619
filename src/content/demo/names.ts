/** What is special about an invented person; the rest is drawn. */
export type DemoTrait =
  | 'no-teeth'
  | 'dry-mouth'
  | 'brace'
  | 'pregnant'
  | 'milk-allergy'
  | 'insulin'
  | 'acid-wear'
  | 'spanish'
  | 'never-seen';

export interface DemoName {
  readonly name: string;
  /** Completed years on the day of the demonstration. */
  readonly ageYears: number;
  readonly traits: readonly DemoTrait[];
}

/** Thirty people who do not exist, by age. First and family names were put together at random from many languages. */
export const demoNames: readonly DemoName[] = [
  { name: 'Milo Arbuthnot-Sy', ageYears: 2, traits: [] },
  { name: 'Ayla Fernsby', ageYears: 3, traits: [] },
  { name: 'Theo Quillon', ageYears: 4, traits: ['never-seen'] },
  { name: 'Suri Halvorsen', ageYears: 5, traits: [] },
  { name: 'Bastian Oyelowo-Pike', ageYears: 7, traits: [] },
  { name: 'Ximena Rooke', ageYears: 9, traits: ['spanish'] },
  { name: 'Jasper Nakatomi-Lund', ageYears: 11, traits: [] },
  { name: 'Halima Brackwater', ageYears: 13, traits: ['brace'] },
  { name: 'Finn Castaneda', ageYears: 15, traits: ['brace'] },
  { name: 'Odalys Winterbourne', ageYears: 17, traits: [] },
  { name: 'Rafi Tolland', ageYears: 19, traits: ['acid-wear'] },
  { name: 'Grete Amankwah', ageYears: 22, traits: [] },
  { name: 'Lucan Petrossian', ageYears: 25, traits: ['never-seen'] },
  { name: 'Inaya Holloway-Rask', ageYears: 28, traits: ['pregnant'] },
  { name: 'Soren Beltrami', ageYears: 31, traits: [] },
  { name: 'Yusra Peverell', ageYears: 34, traits: [] },
  { name: 'Tobias Nkemelu', ageYears: 38, traits: ['milk-allergy'] },
  { name: 'Carmen Aldous', ageYears: 41, traits: ['spanish'] },
  { name: 'Henrik Varghese', ageYears: 44, traits: [] },
  { name: 'Maud Szymborski', ageYears: 47, traits: [] },
  { name: 'Desmond Iwu-Larsen', ageYears: 51, traits: ['insulin'] },
  { name: 'Petra Kowhai', ageYears: 55, traits: [] },
  { name: 'Alonso Greatorex', ageYears: 58, traits: [] },
  { name: 'Birgit Ramanujan', ageYears: 62, traits: ['dry-mouth'] },
  { name: 'Winston Echeverry', ageYears: 66, traits: [] },
  { name: 'Ottoline Bakare', ageYears: 70, traits: [] },
  { name: 'Emil Tashiro', ageYears: 74, traits: ['dry-mouth'] },
  { name: 'Rosamund Adeyemi', ageYears: 79, traits: [] },
  { name: 'Gwilym Sandoval', ageYears: 83, traits: [] },
  { name: 'Hedda Marlowe-Ito', ageYears: 88, traits: ['no-teeth'] },
];
