import { checkScreens, openDisclosures } from './checkScreens.ts';
import { openVisitOf } from './pageSteps.ts';
import { answerQuestions, handsOn } from './visitKeys.ts';

checkScreens([
  {
    name: 'Visit, answered and confirmed',
    open: async (page) => {
      await openVisitOf(page, 'Maud');
      const hands = handsOn(page);
      await answerQuestions(page, hands, ['safety']);
      await hands.press('r');
      await hands.type('5150');
      await hands.press('Enter');
      await hands.press('u');
      await answerQuestions(page, hands, ['food', 'home', 'health', 'look']);
      await hands.press('c');
      await page.getByRole('heading', { name: 'Level, confirmed' }).waitFor();
      for (const why of await page.getByRole('button', { name: /^(why|compare):/ }).all()) await why.click();
      await openDisclosures(page);
    },
  },
  {
    name: 'Visit, a list being answered',
    open: async (page) => {
      await openVisitOf(page, 'Yusra');
      await page.keyboard.press('a');
      await page.keyboard.press('Enter');
      await page.keyboard.type('anti');
      await page.getByRole('option').first().waitFor();
    },
  },
  {
    name: 'Visit, shown to the patient',
    open: async (page) => {
      await openVisitOf(page, 'Yusra');
      await page.getByRole('button', { name: 'Show patient' }).click();
      await page.getByRole('button', { name: 'Back to work' }).waitFor();
    },
  },
  {
    name: 'Visit, keys',
    open: async (page) => {
      await openVisitOf(page, 'Yusra');
      await page.keyboard.press('?');
      await page.getByRole('dialog', { name: 'Keys' }).waitFor();
    },
  },
  {
    name: 'Leaflet',
    open: async (page) => {
      await openVisitOf(page, 'Soren');
      await page.keyboard.press('7');
      await page.keyboard.press('p');
      await page.getByRole('button', { name: 'Print' }).waitFor();
    },
  },
]);
