import { joinWords } from '../../format.ts';
import { SourceList, Why } from '../../parts/Sources.tsx';
import { type AddedFigures, addedFields, backgroundFields, liquidFields, sayEnamel, workOutAdded } from './addedCalcium.ts';
import { sayIndex } from './sayAmount.ts';
import { useWorkOut } from './useWorkOut.ts';
import { NumberLines, WorkOutForm } from './WorkOutForm.tsx';

const MINERALS = [
  ['enamel', 'Enamel'],
  ['hydroxyapatite', 'Hydroxyapatite'],
  ['fluorapatite', 'Fluorapatite'],
  ['brushite', 'Brushite'],
  ['fluorite', 'Calcium fluoride'],
] as const;

/** A drink or a remineralising product, as it is and with calcium, phosphate or fluoride added. */
export function AddedForm() {
  const work = useWorkOut({ needed: liquidFields, optional: { ...addedFields, ...backgroundFields }, workOut: workOutAdded });
  return (
    <section id="calcium" aria-label="Added calcium">
      <h2>Added calcium</h2>
      <p>Whether enamel can dissolve in a drink, rinse or remineralising product, as it is and with something added.</p>
      <WorkOutForm label="Added calcium" work={work} say={(figures) => <AddedSaid figures={figures} />}>
        <NumberLines fields={liquidFields} work={work} />
        <NumberLines fields={addedFields} work={work} />
        <details>
          <summary>Other salts in it</summary>
          <p className="hint">They change little. What stays empty counts as none, and the answer says so.</p>
          <NumberLines fields={backgroundFields} work={work} />
        </details>
      </WorkOutForm>
    </section>
  );
}

function AddedSaid({ figures }: { readonly figures: AddedFigures }) {
  const { before, after, isAnythingAdded, isFluorideKnown, takenAsNone } = figures;
  return (
    <>
      <p className="opening">
        As it is, {sayEnamel(before.saturationIndex.enamel)}.{' '}
        {isAnythingAdded && `With what is added, ${sayEnamel(after.saturationIndex.enamel)}.`}
      </p>
      <p>
        By the composition typed, at 37 °C. Citrate binds calcium and cannot be counted: in a drink with citric acid enamel dissolves more
        easily than this says.
        {takenAsNone.length > 0 && ` Counted as none: ${joinWords(takenAsNone)}.`}
        {!isFluorideKnown && ' Fluoride is not known.'}
        {(before.isStrong || after.isStrong) && ' It holds so much that the figures are less sure.'}
      </p>
      <table aria-label="Saturation">
        <thead>
          <tr>
            <th scope="col">Mineral</th>
            <th scope="col">As it is</th>
            {isAnythingAdded && <th scope="col">With what is added</th>}
          </tr>
        </thead>
        <tbody>
          {MINERALS.map(([mineral, name]) => (
            <tr key={mineral}>
              <th scope="row">{name}</th>
              <td>{sayOrNone(before.saturationIndex[mineral], isFluorideKnown)}</td>
              {isAnythingAdded && <td>{sayOrNone(after.saturationIndex[mineral], isFluorideKnown)}</td>}
            </tr>
          ))}
        </tbody>
      </table>
      <p className="hint">
        Saturation index, powers of ten: below 0 the mineral can dissolve, above 0 it can form.{' '}
        <Why about="saturation">
          <SourceList
            sources={[
              { key: 'phreeqc3', status: 'derived' },
              { key: 'shellis1993', status: 'read' },
              { key: 'larsenNyvad1999', status: 'read' },
            ]}
          />
        </Why>
      </p>
    </>
  );
}

/** Without one of its ions a mineral cannot form. */
function sayOrNone(index: number | null, isFluorideKnown: boolean): string {
  if (index !== null) return sayIndex(index);
  return isFluorideKnown ? 'an ion of it is absent' : 'fluoride not known';
}
