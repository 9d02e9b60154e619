import { expect, test } from 'vitest';
import { addPatient } from '../../../src/actions/addPatient.ts';
import { inOneTransaction } from '../../../src/store/oneTransaction.ts';
import { listPatients } from '../../../src/store/read/patients.ts';
import { verify } from '../../../src/store/verify.ts';
import type { Bench } from '../contract.ts';

/** Many actions as one: for what nobody has seen yet. */
export function oneTransactionContract({ store, practice }: Bench): void {
  const addTwo = async (db: ReturnType<typeof store>['db']) => {
    const context = { ...practice().as('lead'), db };
    await addPatient(context, { name: 'Una Tern', birthDate: '1980-03-01' });
    await addPatient(context, { name: 'Otto Teal', birthDate: '1990-04-02' });
  };

  test('actions inside one transaction are all written, in one chain', async () => {
    const before = (await listPatients(store().db, practice().scope)).length;
    await inOneTransaction(store().db, addTwo);
    expect(await listPatients(store().db, practice().scope)).toHaveLength(before + 2);
    expect((await verify(store().db)).problems).toEqual([]);
  });

  test('when the last of them fails, none is written, and the store goes on', async () => {
    const before = await listPatients(store().db, practice().scope);
    const failing = inOneTransaction(store().db, async (db) => {
      await addTwo(db);
      await addPatient({ ...practice().as('lead'), db }, { name: 'No Day', birthDate: '1990-02-31' });
    });
    await expect(failing).rejects.toThrow(/birth date/);
    expect(await listPatients(store().db, practice().scope)).toEqual(before);
    await addTwo(store().db);
    expect((await verify(store().db)).problems).toEqual([]);
  });
}
