import { readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import type { Proposal } from '../../src/calculators/regimen/proposalOutput.ts';
import { runCli } from '../../src/cli/runCli.ts';
import { cliIoOf } from '../cliIo.ts';

const example = JSON.parse(readFileSync('examples/plans/dry-mouth.json', 'utf8')) as { person: object };
const run = async (args: readonly string[], input: unknown = '') => {
  const io = cliIoOf(typeof input === 'string' ? input : JSON.stringify(input));
  return { code: await runCli(['plan', ...args], io), out: io.out.join('\n'), err: io.err.join('\n') };
};

describe('ebbline plan', () => {
  test('prints the regimens of a visit file with their day, and what is not offered with the reason', async () => {
    const { code, out, err } = await run(['examples/09-milk-allergy.json']);
    expect({ code, err }).toEqual({ code: 0, err: '' });
    expect(out).toMatch(/^NEEDS\n- Fluoride every day: /);
    expect(out).toMatch(/\nREGIMEN 1.*: \d+ tasks a day, /);
    expect(out).toMatch(/\nToday \(a usual day of this age; how the days run is not known\):\n {2}\d\d:\d\d {2}Paste/);
    expect(out).toMatch(/\nNOT OFFERED\n[\s\S]*milk/);
    expect(out).not.toMatch(/NaN|undefined|null/);
  });

  test('takes the input of the calculator too, and gives its output with --json', async () => {
    const { code, out } = await run(['examples/plans/dry-mouth.json', '--json']);
    const proposal = JSON.parse(out) as Proposal;
    expect(code).toBe(0);
    expect(proposal.chosen).toBe(proposal.regimens[0]?.id);
    expect(proposal.regimens[0]?.dayClock.basis).toBe('told');
    expect((await run(['-'], example)).out).toMatch(/\nToday \(the day that was told\):\n/);
  });

  test('of several described days it goes by the one on the leaflet, else the first, and says which', async () => {
    const visit = JSON.parse(readFileSync('examples/01-returning-adult.json', 'utf8')) as { visit: object };
    const day = (label: string, wakeMinute: number) => ({ label, wakeMinute, sleepMinute: 1380, events: [] });
    const withDays = (acidDay: object) => ({ ...visit, visit: { ...visit.visit, acidDay } });
    const days = [day('Monday', 390), day('Saturday', 540)];
    const first = (await run(['-'], withDays({ days }))).out;
    expect(first).toContain('Today (Monday, of the days that were told)');
    const chosen = (await run(['-'], withDays({ days, onLeaflet: 1 }))).out;
    expect(chosen).toContain('Today (Saturday, of the days that were told)');
    expect(chosen).not.toBe(first.replaceAll('Monday', 'Saturday'));
    expect((await run(['-'], withDays({ days: days.slice(0, 1) }))).out).toContain('Today (the day that was told)');
  });

  test.each([
    [{ ...example, person: { ...example.person, weightKg: 4 } }, 'person.weightKg'],
    [{ ...example, teeth: 32 }, 'teeth: is not a known field'],
    [{ visit: {} }, 'ebbline: is missing'],
  ])('names the field that is wrong', async (value, message) => {
    const { code, err } = await run(['-'], value);
    expect(code).toBe(2);
    expect(err).toContain(message);
  });
});
