import { useState } from 'react';
import { drinkAcids } from '../../../content/foods.ts';
import { joinWords } from '../../format.ts';
import { ChoiceLine } from '../../parts/fields.tsx';
import { SourceList, Why } from '../../parts/Sources.tsx';
import {
  type AcidLoad,
  compositionNeeded,
  compositionOptional,
  type KnownBy,
  loadByComposition,
  loadByTitration,
  titrationNeeded,
  titrationOptional,
} from './acidLoad.ts';
import { sayAmount } from './sayAmount.ts';
import { useWorkOut } from './useWorkOut.ts';
import { NumberLines, WorkOutForm } from './WorkOutForm.tsx';

const WAYS: readonly { readonly id: KnownBy; readonly label: string }[] = [
  { id: 'titration', label: 'from a titration' },
  { id: 'composition', label: 'from its pH and what is in it' },
];

/** pH and acid load of a drink or a rinse. What was typed for one way stays while the other is looked at. */
export function AcidForm() {
  const [knownBy, setKnownBy] = useState<KnownBy>('titration');
  const ways = <ChoiceLine label="How it is known" value={knownBy} options={WAYS} onChange={setKnownBy} />;
  return (
    <section id="acid" aria-label="Acid of a drink or rinse">
      <h2>Acid of a drink or rinse</h2>
      <div hidden={knownBy !== 'titration'}>
        <TitrationForm>{ways}</TitrationForm>
      </div>
      <div hidden={knownBy !== 'composition'}>
        <CompositionForm>{ways}</CompositionForm>
      </div>
    </section>
  );
}

function TitrationForm({ children }: { readonly children: React.ReactNode }) {
  const work = useWorkOut({ needed: titrationNeeded, optional: titrationOptional, workOut: loadByTitration });
  return (
    <WorkOutForm label="Acid from a titration" work={work} say={(load) => <LoadSaid load={load} />}>
      {children}
      <NumberLines fields={titrationNeeded} work={work} />
      <NumberLines fields={titrationOptional} work={work} />
    </WorkOutForm>
  );
}

function CompositionForm({ children }: { readonly children: React.ReactNode }) {
  const work = useWorkOut({ needed: compositionNeeded, optional: compositionOptional, workOut: loadByComposition });
  return (
    <WorkOutForm label="Acid from pH and composition" work={work} say={(load) => <LoadSaid load={load} />}>
      {children}
      <NumberLines fields={compositionNeeded} work={work} />
      <NumberLines fields={compositionOptional} work={work} />
    </WorkOutForm>
  );
}

function LoadSaid({ load: { mmolPerL, mmolPerPortion, pH, takenAsNone } }: { readonly load: AcidLoad }) {
  const base = mmolPerL < 0 ? 'acid' : 'base';
  return (
    <>
      <p className="opening">
        A litre takes {sayAmount(Math.abs(mmolPerL))} mmol of {base} to neutral
        {mmolPerPortion !== undefined && `, a portion ${sayAmount(Math.abs(mmolPerPortion))} mmol`}.{' '}
        {pH === undefined ? 'Its pH is not known.' : `Its pH is ${sayAmount(pH)}.`}
      </p>
      {takenAsNone && (
        <p>
          Citric, malic and other acids cannot be counted here, so the true load may be larger.
          {takenAsNone.length > 0 && ` Counted as none: ${joinWords(takenAsNone)}.`}
        </p>
      )}
      <p className="hint">
        Measured in groups of drinks, mmol/L: {drinkAcids.map(({ name, acid }) => `${name} ${acid.titratableMmolPerL}`).join(', ')}. Whether
        enamel dissolves in it depends on its pH, calcium and phosphate together: see the next form.{' '}
        <Why about="acid of drinks">
          <SourceList sources={[...drinkAcids.map(({ acid }) => acid.source), { key: 'phreeqc3', status: 'derived' }]} />
        </Why>
      </p>
    </>
  );
}
