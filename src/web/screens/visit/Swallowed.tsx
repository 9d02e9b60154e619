import { useState } from 'react';
import { flushSync } from 'react-dom';
import { emergencySource } from '../../../content/fluorideLimits.ts';
import { type AcuteTable, acuteTable, type HouseChild, type HouseProduct } from '../../../core/regimen/dose/acuteTable.ts';
import { houseProducts } from '../../../core/regimen/dose/houseProducts.ts';
import { content } from '../../content.ts';
import { formatNumber } from '../../format.ts';
import { TextLine } from '../../parts/fields.tsx';
import { SourceList, Why } from '../../parts/Sources.tsx';
import { parseNumber } from './swabLines.ts';
import { useVisit } from './visitContext.ts';

const CHILD_BELOW_YEARS = 18;
const MONTHS = 12;

interface Named extends HouseChild {
  readonly name: string;
}

/** For the professional who tells a family what to lock away: from how much of each product in the plan on it is an emergency. */
export function Swallowed() {
  const { assessment, input, isPrivateHidden, isShownToPatient } = useVisit();
  const [others, setOthers] = useState<readonly Named[]>([]);
  const [isAlone, setAlone] = useState(false);
  const { ageYears, ageMonths, facts, plan } = assessment;
  const { agents } = content.regimen;
  const products = houseProducts(plan.lines, input.practice.shelf, agents);
  if (isPrivateHidden || isShownToPatient || products.length === 0) return null;
  const self: readonly Named[] = ageYears < CHILD_BELOW_YEARS ? [{ name: input.person.name, ageMonths, weightKg: facts.weightKg }] : [];
  const children = [...self, ...others];
  const printAlone = () => {
    flushSync(() => setAlone(true));
    print();
    setAlone(false);
  };
  return (
    <details className={isAlone ? 'small swallowed prints-alone' : 'small swallowed'}>
      <summary>If swallowed: from how much on it is an emergency</summary>
      <p>{acuteTable({ ageMonths }, [], content.regimen.fluoride).sentence}</p>
      {children.map((child, i) => (
        // biome-ignore lint/suspicious/noArrayIndexKey: children are only added
        <ChildTable key={i} child={child} products={products} />
      ))}
      {children.length === 0 && <p>For each child in the home: age and weight.</p>}
      <p>Less than these amounts is not harmless. They are for locking things away, never for deciding after a swallowing.</p>
      <Why label="source" about="amounts that are an emergency">
        <SourceList sources={[emergencySource]} />
      </Why>
      <AnotherChild count={children.length} onAdd={(child) => setOthers([...others, child])} />
      <p className="off-paper">
        <button type="button" className="link" onClick={printAlone}>
          Print these amounts
        </button>
      </p>
    </details>
  );
}

function ChildTable({ child, products }: { readonly child: Named; readonly products: readonly HouseProduct[] }) {
  const table = acuteTable(child, products, content.regimen.fluoride);
  const who = [child.name, sayAge(child.ageMonths), table.weightKg === null ? undefined : `${formatNumber(table.weightKg)} kg`];
  if (table.ask !== null) {
    return (
      <p>
        {who.filter(Boolean).join(', ')}: <span className="unknown">{table.ask}</span>
      </p>
    );
  }
  return (
    <table className="rules">
      <caption>
        {who.filter(Boolean).join(', ')}: {formatNumber(table.emergencyMg ?? 0)} mg fluoride
      </caption>
      <thead>
        <tr>
          <th scope="col">Product</th>
          <th scope="col">Emergency from</th>
          <th scope="col">The whole pack</th>
        </tr>
      </thead>
      <tbody>
        {table.rows.map((row) => (
          <tr key={row.product}>
            <th scope="row">{row.product}</th>
            <td data-label="Emergency from">
              {row.fromAmount === null ? <span className="unknown">strength not known</span> : `${row.fromAmount.toFixed(1)} ${row.unit}`}
            </td>
            <td data-label="The whole pack">{sayPack(row)}</td>
          </tr>
        ))}
      </tbody>
    </table>
  );
}

function sayPack({ packReachesIt }: AcuteTable['rows'][number]) {
  if (packReachesIt === null) return <span className="unknown">size not known</span>;
  return packReachesIt ? 'reaches it' : 'holds less, still poison centre now';
}

const sayAge = (months: number): string => (months < 2 * MONTHS ? `${months} months` : `${Math.floor(months / MONTHS)} years`);

/** Another child in the home, for this page alone: nothing of it is kept. */
function AnotherChild({ count, onAdd }: { readonly count: number; readonly onAdd: (child: Named) => void }) {
  const [age, setAge] = useState('');
  const [weight, setWeight] = useState('');
  const [problems, setProblems] = useState<{ readonly age?: string; readonly weight?: string }>({});
  const add = () => {
    const years = parseNumber(age, { kind: 'number', min: 0, max: CHILD_BELOW_YEARS });
    const kg = parseNumber(weight, { kind: 'number', min: 2, max: 200 });
    const failed = { ...('problem' in years && { age: years.problem }), ...('problem' in kg && { weight: kg.problem }) };
    setProblems(failed);
    if (!('value' in years && 'value' in kg) || typeof years.value !== 'number' || typeof kg.value !== 'number') return;
    onAdd({ name: `Child ${count + 1}`, ageMonths: Math.floor(years.value * MONTHS), weightKg: kg.value });
    setAge('');
    setWeight('');
  };
  return (
    <fieldset className="off-paper">
      <legend>Another child in the home; not kept</legend>
      <TextLine label="Age" kind="number" unit="years" value={age} onChange={setAge} problem={problems.age} />
      <TextLine label="Weight" kind="number" unit="kg" value={weight} onChange={setWeight} problem={problems.weight} />
      <button type="button" className="action" onClick={add}>
        Add this child
      </button>
    </fieldset>
  );
}
