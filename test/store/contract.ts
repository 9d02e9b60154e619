import { afterAll, afterEach, beforeAll, beforeEach, describe } from 'vitest';
import type { Store } from '../../src/store/openStore.ts';
import { accountsContract } from './contract/accounts.ts';
import { actionsContract } from './contract/actions.ts';
import { chainContract } from './contract/chain.ts';
import { chairsideContract } from './contract/chairside.ts';
import { checksContract } from './contract/checks.ts';
import { closingContract } from './contract/closing.ts';
import { correctionContract } from './contract/correction.ts';
import { dayContract } from './contract/day.ts';
import { localProtocolsContract } from './contract/localProtocols.ts';
import { meterChecksContract } from './contract/meterChecks.ts';
import { migrationsContract } from './contract/migrations.ts';
import { oneTransactionContract } from './contract/oneTransaction.ts';
import { peopleContract } from './contract/people.ts';
import { planRecordContract } from './contract/planRecord.ts';
import { readsContract } from './contract/reads.ts';
import { rightsContract } from './contract/rights.ts';
import { signaturesContract } from './contract/signatures.ts';
import { stockContract } from './contract/stock.ts';
import { stopsContract } from './contract/stops.ts';
import { studyPeopleContract } from './contract/studyPeople.ts';
import { tamperContract } from './contract/tamper.ts';
import type { Engine, Place } from './engine.ts';
import { type TestPractice, testPractice } from './practice.ts';

/** What each test of the contract is given. */
export interface Bench {
  readonly engine: Engine;
  /** Open, migrated, with one practice; closed after the test. */
  store(): Store;
  place(): Place;
  practice(): TestPractice;
}

/** Everything that must hold on both engines alike. A missing engine is skipped test by test, with the reason. */
export function storeContract(engine: Engine): void {
  describe(engine.name, () => {
    let place: Place | undefined;
    let store: Store | undefined;
    let practice: TestPractice | undefined;
    beforeAll(() => engine.start());
    afterAll(() => engine.stop());
    beforeEach(async ({ skip }) => {
      if (engine.unavailable !== undefined) skip(engine.unavailable);
      place = await engine.newPlace();
      store = await place.open();
      practice = await testPractice(store);
    });
    afterEach(async () => {
      await store?.close();
      store = undefined;
    });
    const bench: Bench = { engine, store: () => given(store), place: () => given(place), practice: () => given(practice) };
    migrationsContract(bench);
    readsContract(bench);
    actionsContract(bench);
    chairsideContract(bench);
    dayContract(bench);
    closingContract(bench);
    checksContract(bench);
    meterChecksContract(bench);
    correctionContract(bench);
    oneTransactionContract(bench);
    planRecordContract(bench);
    peopleContract(bench);
    signaturesContract(bench);
    localProtocolsContract(bench);
    stockContract(bench);
    stopsContract(bench);
    studyPeopleContract(bench);
    rightsContract(bench);
    accountsContract(bench);
    chainContract(bench);
    tamperContract(bench);
  });
}

function given<T>(value: T | undefined): T {
  if (value === undefined) throw new Error('used outside a test');
  return value;
}
