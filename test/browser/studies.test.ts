import type { Page } from 'playwright-core';
import { expect } from 'vitest';
import type { PersonRecord, StoredReading } from '../../src/api/bundles.ts';
import type { StudyRun } from '../../src/core/checks/study.ts';
import { demoTest } from './demo.ts';
import { expectNoBarriers } from './expectNoBarriers.ts';
import { signIn } from './pageSteps.ts';
import type { RunningServer } from './startServer.ts';

const readJson = async <T>(page: Page, url: string): Promise<T> => (await (await page.request.get(url)).json()) as T;

/** The oldest reading of the invented practice that was told as a little above the cut-off. */
async function findReading(page: Page, server: RunningServer) {
  const people = await readJson<{ id: string }[] | { people: { id: string }[] }>(page, `${server.url}/api/people`);
  const isNear = ({ told, rlu, cutoffRlu }: StoredReading) => told?.verdict === 'above' && rlu !== null && rlu < 2 * cutoffRlu;
  for (const { id } of Array.isArray(people) ? people : people.people) {
    const [reading] = (await readJson<PersonRecord>(page, `${server.url}/api/people/${id}`)).readings.filter(isNear);
    if (reading?.onDate) return { personId: id, reading, said: (reading.rlu ?? 0).toLocaleString('en-GB') };
  }
  throw new Error('nobody was told of a reading a little above the cut-off');
}

/** Two solutions, and swabs that scatter widely, so that what was sure of an old reading no longer is. */
const numberOf = ({ part, replicate }: StudyRun): number =>
  Math.round((part === 'Solution A' ? 1000 : 6000) * (replicate % 2 === 0 ? 2.6 : 0.4) * (1 + replicate / 100));

demoTest(
  'a study of three pairs of hands: planned, typed, reported, and an old verdict told anew beside the one on record',
  async ({ page, server }) => {
    await signIn(page, server);
    const { personId, reading, said } = await findReading(page, server);
    await page.goto(`${server.url}/over-time/${personId}`);
    await page.getByRole('heading', { name: 'Readings' }).waitFor();
    const again = page.getByRole('listitem').filter({ hasText: `${said} RLU. Then: above the cut-off.` });
    expect(await again.count()).toBe(0);

    await page.goto(`${server.url}/checks/studies`);
    await page.getByText('People from day to day').waitFor();
    await expectNoBarriers(page, 'studies');
    await page.getByRole('link', { name: 'Plan a study' }).click();
    expect(await page.getByRole('group', { name: 'Members' }).getByRole('checkbox', { checked: true }).count()).toBe(3);
    await page.getByLabel('Swabs at most').fill('11');
    await page.getByText('The smallest study of this kind takes 12 swabs.').waitFor();
    expect(await page.getByRole('button', { name: 'Plan this study' }).isDisabled()).toBe(true);
    await page.getByLabel('Swabs at most').fill('12');
    await page.getByLabel('The figure that matters').selectOption('hands');
    await page.getByText('3 members, 2 solutions, 2 swabs of each by everybody: 12 swabs.').waitFor();
    await page.getByText(/is out of reach with 12 swabs.*The best is about \d+/).waitFor();
    await page.getByText(/Only more hands would narrow it, more swabs would not/).waitFor();
    await expectNoBarriers(page, 'plan');
    await page.getByLabel('Swabs at most').press('Enter');

    await page.getByRole('heading', { name: 'Numbers' }).waitFor();
    const studyUrl = page.url();
    const studyId = studyUrl.slice(studyUrl.lastIndexOf('/') + 1);
    const { study } = await readJson<{ study: { runs: StudyRun[] } }>(page, `${server.url}/api/studies/${studyId}`);
    const numbers = study.runs.map(numberOf);
    await expectNoBarriers(page, 'numbers, nothing typed');

    // The keyboard stands in the first field, and goes on by itself.
    const typed = (swab: number) => page.getByLabel(`Swab ${swab}`, { exact: true });
    await page.keyboard.type('12.5');
    await page.keyboard.press('Enter');
    await page.getByText(/A whole number is needed/).waitFor();
    await typed(1).fill('');
    for (const number of [numbers[0], 777, numbers[2]]) {
      await page.keyboard.type(String(number));
      await page.keyboard.press('Enter');
    }
    expect(await typed(4).evaluate((field) => field === document.activeElement)).toBe(true);
    await page.getByText('Swabs 4 to 12: not read yet.').first().waitFor();

    await page.getByRole('button', { name: 'Wrong number of swab 2' }).click();
    await page.keyboard.type('read off the wrong line');
    await page.keyboard.press('Enter');
    await page.getByText('777 RLU, not counted: read off the wrong line').waitFor();

    const rows = numbers.map((number, i) => `${i + 1};${number}`).filter((_, i) => i !== 0 && i !== 2);
    await page.getByText('Paste a table, or choose a file').click();
    await page.getByLabel('Rows', { exact: true }).fill(['run;rlu', ...rows, '13;5000'].join('\n'));
    await page.getByRole('button', { name: 'Take these numbers' }).click();
    await page.getByText(/Row 12: run: the run sheet has swabs 1 to 12, and not 13/).waitFor();
    await expectNoBarriers(page, 'numbers, a row to mend');
    await page.getByLabel('Rows', { exact: true }).fill(['run;rlu', ...rows].join('\n'));
    await page.getByRole('button', { name: 'Take these numbers' }).click();
    await page.getByText('10 numbers taken.').waitFor();

    await page.getByText(/^Hands add \d+ %, swabs \d+ %/).waitFor();
    await page.getByRole('button', { name: 'Report this study' }).click();
    await page.getByText(/^Repeatability: \d+ % until now, \d+ % from now on/).waitFor();
    await page.getByText(/uses it from now on: whether a reading is above the cut-off, and whether it has changed/).waitFor();
    await page.getByRole('button', { name: 'Report and use from now on' }).click();
    await page.getByRole('heading', { name: 'Report' }).waitFor();
    expect(await page.getByRole('button', { name: /Report|Wrong number/ }).count()).toBe(0);
    await expectNoBarriers(page, 'report');
    await page.getByRole('link', { name: 'Run sheet to print' }).click();
    expect(await page.getByRole('article').locator('li').count()).toBe(12);
    await expectNoBarriers(page, 'run sheet');

    await page.goto(`${server.url}/over-time/${personId}`);
    await again.filter({ hasText: "With this practice's own noise, measured since: too close to call." }).waitFor();
    const after = await readJson<PersonRecord>(page, `${server.url}/api/people/${personId}`);
    expect(after.readings.find(({ id }) => id === reading.id)?.told).toEqual(reading.told);
  },
);

demoTest(
  'a person of a study is linked to a chart and unlinked by keys; whose 24 hours nobody checks is said, on paper too',
  async ({ page, server }) => {
    await signIn(page, server);
    await page.goto(`${server.url}/checks/studies`);
    await page.getByRole('link', { name: /^People from day to day/ }).click();
    const people = page.getByRole('region', { name: 'People' });
    await people.getByText(/cannot check the 24 hours .* for these people, because no chart is linked/).waitFor();
    await people.getByRole('button', { name: 'link a chart to Person 1', exact: true }).press('Enter');
    const [first] = (await readJson<{ people: { name: string }[] }>(page, `${server.url}/api/people`)).people;
    await page.keyboard.type(first?.name ?? '');
    const found = page.getByRole('list', { name: 'Charts found' }).getByRole('button').first();
    await found.waitFor();
    await expectNoBarriers(page, 'choose a chart');
    await found.press('Enter');
    await people.getByText(`Person 1: ${first?.name}`).waitFor();
    await people.getByText(/cannot check the 24 hours .* for Person 2/).waitFor();
    await expectNoBarriers(page, 'people of a study');

    await page.getByRole('link', { name: 'Run sheet to print' }).click();
    const sheet = page.getByRole('article', { name: 'Run sheet' });
    await sheet.getByText(/cannot check the 24 hours .* for Person 2/).waitFor();
    expect(await sheet.textContent()).not.toContain(first?.name);
    await page.getByRole('link', { name: 'Back to the study' }).press('Enter');
    await people.getByRole('button', { name: 'unlink Person 1', exact: true }).press('Enter');
    await people.getByText(/for these people, because no chart is linked/).waitFor();
    expect(await people.getByText('Person 1: no chart is linked.').count()).toBe(1);
  },
);

// Last: the invented practice has no other study that is still running.
demoTest('a study is given up with a reason, and its numbers stay', async ({ page, server }) => {
  await signIn(page, server);
  await page.goto(`${server.url}/checks/studies`);
  await page.getByRole('link', { name: /^People from day to day/ }).click();
  await page.getByRole('button', { name: 'Give this study up' }).click();
  await page.keyboard.press('Enter');
  await page.getByText('A reason is needed.').waitFor();
  await page.keyboard.type('too few people agreed');
  await page.keyboard.press('Enter');
  await page.getByText(/^Given up by Ines Marrow on .*: too few people agreed$/).waitFor();
  expect(await page.getByLabel('Swab 24', { exact: true }).count()).toBe(0);
  const download = page.waitForEvent('download');
  await page.getByRole('link', { name: 'Numbers as a CSV file' }).click();
  const stream = await (await download).createReadStream();
  const chunks = await stream.toArray();
  expect(Buffer.concat(chunks).toString('utf8').trimEnd().split('\r\n').length).toBe(12);
});
