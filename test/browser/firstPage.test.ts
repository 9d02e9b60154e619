import { expect, test } from 'vitest';
import { startDemo } from './demoTemplate.ts';
import { expectNoBarriersInBothThemes } from './expectNoBarriers.ts';
import { browserTest, watchProblems } from './openBrowser.ts';

browserTest('the first page has its title and heading, and breaks no policy', async ({ page, server }) => {
  const response = await page.goto(server.url);
  expect(response?.headers()['content-security-policy']).toContain("script-src 'self'");
  expect(await page.title()).toBe('Ebbline');
  await page.getByRole('heading', { name: 'Ebbline' }).waitFor();
  await expect
    .poll(() => page.evaluate(() => document.fonts.check("16px 'Atkinson Hyperlegible Next Variable'")), { timeout: 20_000 })
    .toBe(true);
});

for (const contrast of ['no-preference', 'more'] as const) {
  browserTest(`axe finds nothing in light and dark, contrast ${contrast}`, async ({ page, server }) => {
    await page.emulateMedia({ contrast });
    await page.goto(server.url);
    await page.getByRole('heading', { name: 'Ebbline' }).waitFor();
    await expectNoBarriersInBothThemes(page);
  });
}

browserTest('the watch sees a policy violation', async ({ browser, server, skip }) => {
  if (!browser) return skip('Chromium is not installed');
  const page = await browser.newPage();
  const problems = await watchProblems(page);
  await page.goto(server.url);
  await page.evaluate(() => document.head.append(Object.assign(document.createElement('style'), { textContent: 'p { color: red }' })));
  await expect.poll(() => problems.join('\n')).toContain('style-src');
  await page.close();
});

test('Ctrl-C stops the server cleanly', async () => {
  const server = await startDemo();
  expect((await fetch(`${server.url}/patients/1`, { headers: { accept: 'text/html' } })).status).toBe(200);
  expect((await fetch(`${server.url}/api/nothing`)).status).toBe(404);
  expect((await server.stop()).code).toBe(0);
});
