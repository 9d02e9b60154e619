import { describe, expect, test } from 'vitest';
import { retireLocalProtocol } from '../../../src/actions/retireLocalProtocol.ts';
import { type NewLocalProtocol, saveLocalProtocol } from '../../../src/actions/saveLocalProtocol.ts';
import { findPractice } from '../../../src/store/read/sites.ts';
import { verify } from '../../../src/store/verify.ts';
import type { Bench } from '../contract.ts';

export const OWN_RINSE: NewLocalProtocol = {
  name: 'Rinse of our own',
  date: '2026-01-15',
  agentId: 'NAOCL',
  percentAtMost: 0.2,
  timesPerWeekAtMost: 2,
  courseDaysAtMost: 84,
  levels: ['high', 'extreme'],
  needs: ['antimicrobial'],
  fromAgeYears: 18,
  exclusions: { conditions: ['reflux'], medicines: [], allergies: [] },
};

export function localProtocolsContract(bench: Bench): void {
  const write = (role: 'dentist' | 'hygienist' | 'lead' | 'assistant', protocol: Partial<NewLocalProtocol> = {}, id = 'own') =>
    saveLocalProtocol(bench.practice().as(role), { id, protocol: { ...OWN_RINSE, ...protocol } });
  const stored = async () => (await findPractice(bench.store().db, bench.practice().scope))?.practice.localProtocols;

  describe("the practice's own protocol", () => {
    test('is written by a dentist, signed by that, and on the record', async () => {
      expect(await stored()).toBeUndefined();
      await write('dentist');
      expect(await stored()).toEqual([{ ...OWN_RINSE, id: 'own', author: 'Member dentist' }]);
      await expect(write('dentist', { name: 'Another of the same id' })).rejects.toThrow();
      expect(await stored()).toMatchObject([{ name: OWN_RINSE.name }]);
      expect((await verify(bench.store().db)).problems).toEqual([]);
    });

    test.each(['hygienist', 'lead', 'assistant'] as const)('not by a %s', async (role) => {
      await expect(write(role)).rejects.toMatchObject({ code: 'NOT_ALLOWED' });
      expect(await stored()).toBeUndefined();
    });

    test.each([
      [{ percentAtMost: 0.250_1 }, 'percentAtMost'],
      [{ percentAtMost: undefined }, 'percentAtMost'],
      [{ fromAgeYears: 17 }, 'fromAgeYears'],
      [{ agentId: 'F_PASTE_STD' }, 'agentId'],
      [{ needs: ['fluoride-extra'] }, 'needs'],
      [{ levels: [] }, 'levels'],
      [{ courseDaysAtMost: 0 }, 'courseDaysAtMost'],
      [{ belowAgeYears: 18 }, 'belowAgeYears'],
      [{ exclusions: { ...OWN_RINSE.exclusions, conditions: ['no-such'] } }, 'exclusions'],
    ] as const)('is refused with %o, naming the field', async (protocol, field) => {
      await expect(write('dentist', protocol)).rejects.toMatchObject({
        code: 'INPUT_INVALID',
        message: expect.stringContaining(`${field}:`),
      });
      expect(await stored()).toBeUndefined();
    });

    test('is retired with a reason, once, and kept', async () => {
      const { as } = bench.practice();
      const { version } = await write('dentist');
      const retire = (reason: string, expectedVersion = version) =>
        retireLocalProtocol(as('dentist'), { id: 'own', reason, on: '2026-03-04', expectedVersion });
      await expect(retire(' ')).rejects.toMatchObject({ code: 'REASON_REQUIRED' });
      await retire('stains');
      expect(await stored()).toMatchObject([{ id: 'own', retired: { on: '2026-03-04', by: 'Member dentist', reason: 'stains' } }]);
      await expect(retire('again', version + 1)).rejects.toMatchObject({ code: 'CONFLICT' });
      expect((await verify(bench.store().db)).problems).toEqual([]);
    });
  });
}
