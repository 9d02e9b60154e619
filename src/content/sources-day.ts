import type { Source } from './sources.ts';

/** Sources of the acid day: what foods hold, what drinks do, and how far the model of a day follows published figures. */
export const daySources: Readonly<Record<string, Source>> = {
  usdaSugars: {
    cite: 'US Department of Agriculture, Agricultural Research Service, National Nutrient Database for Standard Reference (public domain): sugars, carbohydrate, fibre and water by NDB number.',
    read: 'the table itself; each row of ours names its NDB number',
  },
  drinkGroups: {
    cite: 'Ehlen LA, Marshall TA, Qian F, Wefel JS, Warren JJ. Nutr Res 2008;28(5):299-303 (author manuscript PMC2516950), Table 1: pH, and mL of 1 M alkali for 50 mL of drink, by group of drinks.',
    read: 'Table 1; authors and title page from memory',
  },
  drinkPh: {
    cite: 'Reddy A, Norris DF, Momeni SS, Waldo B, Ruby JD. The pH of beverages in the United States. J Am Dent Assoc 2016;147(4):255-263.',
    read: 'abstract and counts; values of single drinks from memory',
  },
  luke1999: {
    cite: 'Luke GA, Hough H, Beeley JA, Geddes DA. Human salivary sugar clearance after sugar rinses and intake of foodstuffs. Caries Res 1999;33(2):123-129.',
    read: 'abstract',
  },
};
