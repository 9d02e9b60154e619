import type { Page } from 'playwright-core';
import { describe, expect } from 'vitest';
import type { PersonPage, VisitBundle } from '../../src/api/bundles.ts';
import { content } from '../../src/content/allContent.ts';
import { privateConditions } from '../../src/content/conditions.ts';
import { assessVisit } from '../../src/core/visit/assessVisit.ts';
import { demoTest } from './demo.ts';
import { signIn } from './pageSteps.ts';

const { questions } = content;
const privateQuestions = questions.filter((q) => q.private);
/** Typed where somebody may type freely; found nowhere else. */
const OWN_WORDS = 'Zq-own-words-4711';

/** Whatever tells of a private answer: its question, its choices, and the reasons in somebody's own words. */
const MARKERS: readonly string[] = [
  OWN_WORDS,
  ...privateQuestions.map(({ label }) => label),
  ...privateConditions.map(({ label }) => label),
  ...privateQuestions.flatMap(({ choices = [] }) => choices.map(({ label }) => label)).filter((label) => label !== 'neither'),
  'recreational',
  'misuse',
  'Disulfiram',
];
/** Said to everybody alike. */
const FOR_EVERYBODY = Object.values(content.leaflet.catalogs).flatMap((catalog) =>
  Object.entries(catalog).flatMap(([id, text]) => (id.startsWith('caution.') ? [text] : [])),
);

async function ask<T>(page: Page, method: string, path: string, body?: unknown): Promise<T> {
  return page.evaluate(
    async ([m, p, b]) => {
      const init = m === 'GET' ? {} : { headers: { 'content-type': 'application/json' }, body: b };
      const response = await fetch(p, { method: m, ...init });
      if (!response.ok) throw new Error(`${m} ${p}: ${response.status} ${await response.text()}`);
      return response.json();
    },
    [method, path, JSON.stringify(body ?? {})] as const,
  );
}

/** An answer of its kind with nothing to tell; of a private question, everything there is. */
function answerTo({ id, kind, choices = [], min = 0, private: isPrivate, optional }: (typeof questions)[number]): unknown {
  if (id === 'medicines') return ['disulfiram-or-metronidazole'];
  if (id === 'weight_kg') return 50;
  if (kind === 'list') return isPrivate ? choices.map((c) => c.id) : [];
  if (kind === 'choice') return (isPrivate ? choices[1] : choices[0])?.id;
  if (kind === 'yes-no') return id === 'can_spit';
  return optional || kind === 'measure' || kind === 'date' ? undefined : min;
}

interface Someone {
  readonly name: string;
  readonly birthDate: string;
  readonly guardians?: PersonPage['details']['guardians'];
}

/** Somebody with a closed visit and an open one, everything private said in both, and own words wherever they may be typed. */
async function begin(page: Page, { name, birthDate, guardians }: Someone): Promise<{ id: string; visits: readonly string[] }> {
  const { id } = await ask<{ id: string }>(page, 'POST', '/api/people', { name, birthDate });
  const { version } = await ask<PersonPage>(page, 'GET', `/api/people/${id}/details`);
  const homes = [
    { name: 'con su padre', language: 'es' },
    { name: 'with her mother', language: 'en' },
  ];
  await ask(page, 'PUT', `/api/people/${id}/details`, { details: { name, birthDate, homes, ...(guardians && { guardians }) }, version });
  const visits: string[] = [];
  for (const isClosed of [true, false]) {
    const { visitId } = await ask<{ visitId: string }>(page, 'POST', `/api/people/${id}/visits`, {});
    visits.push(visitId);
    const bundle = await ask<VisitBundle>(page, 'GET', `/api/visits/${visitId}`);
    const { onDate } = bundle.input.visit;
    const versions = new Map(Object.entries(bundle.fieldVersions));
    const put = async (path: string, value: unknown) => {
      const saved = await ask<{ version: number }>(page, 'PUT', `/api/visits/${visitId}/fields`, {
        path,
        value,
        version: versions.get(path),
      });
      versions.set(path, saved.version);
    };
    await put('speaker', { who: 'patient' });
    const { ageYears } = assessVisit(bundle.input, content);
    for (const question of questions) {
      const isForAge = ageYears >= (question.fromAgeYears ?? 0) && ageYears < (question.belowAgeYears ?? 200);
      const value = isForAge ? answerTo(question) : undefined;
      if (value === undefined) continue;
      await put(`answers.${question.id}`, { how: 'asked', value, askedOn: onDate, ...(question.private && { alone: true }) });
    }
    await put('findings', [{ tooth: ageYears < 6 ? '54' : '13', surface: 'facial', kind: 'white-spot', activity: 'active', isNew: true }]);
    await put('allExamined', true);
    const { proposed } = assessVisit((await ask<VisitBundle>(page, 'GET', `/api/visits/${visitId}`)).input, content);
    const level = proposed?.level === 'high' ? 'moderate' : 'high';
    await ask(page, 'POST', `/api/visits/${visitId}/level`, { level, reason: OWN_WORDS });
    const { plan } = assessVisit((await ask<VisitBundle>(page, 'GET', `/api/visits/${visitId}`)).input, content);
    const first = plan.lines[0]?.shelfItemId;
    if (first) await put('agreed', { items: { [first]: 'declined' }, declinedWhy: { [first]: OWN_WORDS } });
    await put('goals', [OWN_WORDS]);
    if (isClosed) await ask(page, 'POST', `/api/visits/${visitId}/close`, {});
  }
  return { id, visits };
}

/** Everything on the page that a reader, an ear or a printer could get: folded text, attributes and the title too. */
async function everythingOn(page: Page): Promise<string> {
  const text = await page.evaluate(() => {
    const attributes = [...document.querySelectorAll('*')].flatMap((e) => [...e.attributes].map((a) => a.value));
    const values = [...document.querySelectorAll('input, textarea, select')].map((e) => (e as HTMLInputElement).value);
    return [document.title, document.body.textContent, ...attributes, ...values].join('\n');
  });
  return FOR_EVERYBODY.reduce((rest, said) => rest.replaceAll(said, ''), text).toLowerCase();
}

const markersIn = (text: string) =>
  MARKERS.filter((marker) => new RegExp(`(?<![\\p{L}])${marker.toLowerCase()}(?![\\p{L}])`, 'u').test(text));

async function settled(page: Page): Promise<void> {
  await page.locator('h1').first().waitFor();
  await page.waitForLoadState('networkidle');
  await page.evaluate(() => {
    for (const details of document.querySelectorAll('details')) details.open = true;
  });
}

async function pressEveryWhy(page: Page): Promise<void> {
  for (const why of await page.locator('button.why, button[aria-expanded="false"].plan-row').all())
    if (await why.isVisible()) await why.click();
}

const show = async (page: Page) => {
  await page.getByRole('button', { name: 'Show patient' }).click();
  await page.getByText('Shown to the patient.').waitFor();
};

const routesOf = ({ id, visits }: { id: string; visits: readonly string[] }, today: string) => [
  '/',
  '/people',
  `/people/${id}`,
  ...visits.flatMap((v) => [`/visits/${v}`, `/visits/${v}/leaflet`, `/visits/${v}/swab`]),
  `/over-time/${id}`,
  '/over-time',
  `/day/${today}`,
  `/day/${today}/fill`,
  `/day/${today}/sheets`,
  '/shelf',
  '/shelf/new',
  '/practice',
  '/rules',
  '/nowhere',
];

/** Those that tell of this person. The others are the same for everybody: with EBBLINE_LONG=1 they are walked again for each. */
const ownRoutesOf = (made: { id: string; visits: readonly string[] }, today: string) =>
  routesOf(made, today).filter((route) => [made.id, ...made.visits].some((id) => route.includes(id)));

const SET: readonly Someone[] = [
  { name: 'Private Adult', birthDate: '1990-04-05' },
  { name: 'Private Teen', birthDate: '2011-04-05', guardians: [{ name: 'Mai Tran', relation: 'mother', mayConsent: true }] },
  { name: 'Private Child', birthDate: '2022-04-05' },
];

describe('everything private is said, and the page is turned to the patient', () => {
  for (const someone of SET) {
    demoTest(`${someone.name}: no screen, no leaflet and no print of one tells of it`, { timeout: 300_000 }, async ({ page, server }) => {
      await signIn(page, server);
      const made = await begin(page, someone);
      const [closed, open] = made.visits;
      const today = (await ask<{ today: string }>(page, 'GET', '/api/session')).today;

      // The markers are there to be found: at work the page shows them.
      await page.goto(`${server.url}/visits/${closed}`);
      await settled(page);
      const atWork = markersIn(await everythingOn(page));
      await page.goto(`${server.url}/over-time/${made.id}`);
      await settled(page);
      expect(markersIn(await everythingOn(page))).toContain(OWN_WORDS);
      expect(atWork.length).toBeGreaterThan(1);

      await page.goto(`${server.url}/visits/${open}`);
      await settled(page);
      await show(page);
      const isWhole = process.env.EBBLINE_LONG === '1' || someone === SET[0];
      for (const route of isWhole ? routesOf(made, today) : ownRoutesOf(made, today)) {
        await page.goto(`${server.url}${route}`);
        await settled(page);
        await pressEveryWhy(page);
        expect([route, await page.getByText('Shown to the patient.').count()]).toEqual([route, 1]);
        expect([route, markersIn(await everythingOn(page))]).toEqual([route, []]);
        await page.emulateMedia({ media: 'print' });
        expect([route, 'print', markersIn(await everythingOn(page))]).toEqual([route, 'print', []]);
        await page.emulateMedia({ media: null });
      }
      // Keys of the work page reach nothing either.
      await page.goto(`${server.url}/visits/${open}`);
      await settled(page);
      for (const key of ['1', 'c', 'd', 'e', 'ArrowDown', '3', '3', '3', 'h', 'm', '7', 'ArrowUp', 'Escape']) {
        await page.keyboard.press(key);
        expect([key, markersIn(await everythingOn(page))]).toEqual([key, []]);
      }
    });
  }
});

demoTest('the mode holds over links, keys and a reload, shows no other person, and two keys end it', async ({ page, server }) => {
  await signIn(page, server);
  const made = await begin(page, { name: 'Held Adult', birthDate: '1990-04-05' });
  const people = await ask<{ people: { id: string }[] }>(page, 'GET', '/api/people');
  const other = people.people.find(({ id }) => id !== made.id)?.id;
  await page.goto(`${server.url}/visits/${made.visits[1]}`);
  await settled(page);
  await page.keyboard.press('Control+Enter');
  const strip = page.getByText('Shown to the patient.');
  await strip.waitFor();
  await page.getByRole('link', { name: 'Over time' }).first().click();
  await page.getByRole('heading', { name: 'Readings' }).waitFor();
  await page.goBack();
  await page.getByRole('heading', { level: 1, name: /Held Adult/ }).waitFor();
  await page.keyboard.press('Escape');
  await page.keyboard.press('Enter');
  await page.reload();
  await strip.waitFor();

  // A link with Ctrl would open a page that is turned to nobody.
  const context = page.context();
  await page
    .getByRole('link', { name: 'Over time' })
    .first()
    .click({ modifiers: ['Control'] });
  await page.getByRole('heading', { name: 'Readings' }).waitFor();
  expect(context.pages()).toHaveLength(1);

  // Another person is reached by no link; by address within the page not either.
  await page.evaluate((id) => {
    history.pushState(null, '', `/over-time/${id}`);
    dispatchEvent(new PopStateEvent('popstate'));
  }, other);
  await page.getByRole('heading', { name: 'Not shown to the patient' }).waitFor();
  expect(await page.locator('main').innerText()).not.toMatch(/Readings/);

  await page.keyboard.press('Control+Enter');
  await strip.waitFor({ state: 'detached' });
  await page.getByRole('heading', { name: 'Readings' }).waitFor();
});

async function openSpeaker(page: Page): Promise<void> {
  await page.keyboard.press('Escape');
  await page.keyboard.press('1');
  await page.keyboard.press('z');
  await page.locator('[data-line="speaker"] .answers').waitFor();
}

demoTest(
  'what a girl of fifteen says alone is out of sight when her mother speaks, on the page and on the leaflet',
  { timeout: 180_000 },
  async ({ page, server }) => {
    await signIn(page, server);
    const made = await begin(page, { ...SET[1], name: 'Noor Castellane', birthDate: '2011-04-05' } as Someone);
    const visit = `${server.url}/visits/${made.visits[1]}`;
    await page.goto(visit);
    await settled(page);
    const line = page.locator('[data-line="speaker"]');
    await openSpeaker(page);
    const isThere = () => page.locator('[data-line="private_conditions"]').count();
    expect(await isThere()).toBe(1);

    // A single answer is released to her leaflet by one key, with her name to nobody else.
    await page.keyboard.press('Escape');
    await page.locator('[data-line="pregnant"] [data-row]').click();
    await page.keyboard.press('*');
    await page.getByText(/Put on the leaflet by .*, \d+ \w+ \d{4} at/).waitFor();
    await page.goto(`${visit}/leaflet`);
    await settled(page);
    expect(await page.getByRole('article').count()).toBe(2);
    expect(await page.getByRole('article').nth(0).innerText()).toContain('Para la casa con su padre');
    expect(await page.getByRole('article').nth(0).innerText()).toMatch(/Sobre usted\s+embarazo\./);
    expect(await page.getByRole('article').nth(1).innerText()).toMatch(/About you\s+pregnant\./);

    await page.goto(visit);
    await settled(page);
    await openSpeaker(page);
    await page.keyboard.press('1');
    await page.keyboard.press('1');
    await expect.poll(() => line.locator('.line-text').innerText()).toBe('Mai Tran, guardian');
    await page.getByText(/Private matters were told by the patient alone.*decided by\s+local law/).waitFor();
    expect(await isThere()).toBe(0);
    await pressEveryWhy(page);
    expect(markersIn(await everythingOn(page)).filter((m) => m !== OWN_WORDS)).toEqual([]);
    await expect.poll(() => page.locator('[data-saved]').textContent()).toMatch(/^saved/);
    await page.goto(`${visit}/leaflet`);
    await settled(page);
    expect(markersIn(await everythingOn(page))).toEqual([]);
    expect(await page.locator('main').innerText()).not.toMatch(/About you|Sobre usted/);

    // The mother may say yes, so nothing is said of it; alone again, her words are back.
    await page.goto(visit);
    await settled(page);
    expect(await page.getByText('Nobody here who may say yes to care is recorded').count()).toBe(0);
    await openSpeaker(page);
    await page.keyboard.press('2');
    await page.keyboard.press('1');
    await expect.poll(isThere).toBe(1);
    await page.getByText('Nobody here who may say yes to care is recorded: local law decides.').waitFor();
  },
);
