import { withoutTurnedDown } from '../../../core/regimen/choice/withoutTurnedDown.ts';
import type { NeedKind, Plan, Regimen } from '../../../core/regimen/types.ts';
import { turnedDownWord } from '../../../core/visit/turnedDown.ts';
import { Key } from '../../parts/Key.tsx';
import { Why } from '../../parts/Sources.tsx';
import { digitOfChoice } from './line.ts';
import { PlanFold } from './PlanFold.tsx';
import { MORE_REGIMENS, TASKS_ACCEPTED } from './planLines.ts';
import { waysOf } from './regimenWays.ts';
import { ScopeLines } from './ScopeLines.tsx';
import { sayDifference, sayLeftOut, sayRegimen, saySupply } from './sayRegimen.ts';
import { useVisit } from './visitContext.ts';

interface PlanRegimensProps {
  readonly plan: Plan;
  readonly undecided: readonly NeedKind[];
}

/** The regimen that is the plan beside the best other one, each as sentences; the rest, and how many tasks are accepted, one key away. */
export function PlanRegimens({ plan, undecided }: PlanRegimensProps) {
  const { lines, input, isShownToPatient } = useVisit();
  const chosen = plan.regimens?.find(({ id }) => id === plan.chosenRegimen);
  if (isShownToPatient || !chosen) return null;
  const { agreed } = input.visit;
  const left = withoutTurnedDown(chosen, (id) => turnedDownWord(agreed, id) !== undefined, input.practice.shelf);
  const ways = waysOf(plan);
  const tasks = lines.plan.filter(({ id }) => id === TASKS_ACCEPTED);
  return (
    <div className="regimens">
      {chosen.lines.length > 0 && (
        <div className="ways">
          <div className="way">
            <h3>{ways ? 'This plan' : 'The plan in sum'}</h3>
            {left !== chosen && <p className="uses">Without what was turned down.</p>}
            <Sentences regimen={left} undecided={undecided} />
            <SupplyOf regimen={left} />
          </div>
          {ways && (
            <div className="way">
              <h3>Another regimen</h3>
              <p className="uses">{sayDifference(ways.other, chosen)}</p>
              <Sentences regimen={ways.other} undecided={undecided} />
              <Take regimen={ways.other} than={chosen} letter="o" />
            </div>
          )}
        </div>
      )}
      {ways && ways.rest.length > 0 && <More rest={ways.rest} chosen={chosen} undecided={undecided} />}
      <ScopeLines scope="plan" lines={tasks} />
    </div>
  );
}

function Sentences({ regimen, undecided }: { readonly regimen: Regimen; readonly undecided: readonly NeedKind[] }) {
  const { session } = useVisit();
  const place = session.practice.jurisdiction;
  return (
    <p>
      {sayRegimen(regimen, { place, undecided }).map(({ says, isUnknown }) => (
        <span key={says} className={isUnknown ? 'unknown' : undefined}>
          {says}{' '}
        </span>
      ))}
    </p>
  );
}

function SupplyOf({ regimen: { supply, lines } }: { readonly regimen: Regimen }) {
  if (supply.length === 0) return null;
  return (
    <Why label="packs" about="how long each pack lasts">
      <ul className="plain-list">
        {supply.map((pack) => (
          <li key={pack.shelfItemId}>
            {lines.find((line) => line.shelfItemId === pack.shelfItemId)?.name ?? pack.shelfItemId}: {saySupply(pack)}
          </li>
        ))}
      </ul>
    </Why>
  );
}

/** One press, and this regimen is the plan; what it would leave out is said beside it. */
function Take({ regimen, than, letter }: { readonly regimen: Regimen; readonly than: Regimen; readonly letter: string | undefined }) {
  const { input, reply, isClosed } = useVisit();
  if (isClosed) return null;
  const leftOut = sayLeftOut(than.lines, regimen.lines, input.visit.agreed);
  return (
    <>
      {leftOut && <p className="unknown">{leftOut}</p>}
      <button
        type="button"
        className="answer"
        aria-keyshortcuts={letter}
        onClick={() => reply('plan', MORE_REGIMENS, { how: 'asked', value: regimen.id })}
      >
        <Key>{letter}</Key>
        <span>Take this instead</span>
      </button>
    </>
  );
}

interface MoreProps {
  readonly rest: readonly Regimen[];
  readonly chosen: Regimen;
  readonly undecided: readonly NeedKind[];
}

function More({ rest, chosen, undecided }: MoreProps) {
  return (
    <PlanFold id={MORE_REGIMENS}>
      <div className="ways">
        {rest.map((regimen, i) => (
          <div key={regimen.id} className="way">
            <p className="uses">{sayDifference(regimen, chosen)}</p>
            <Sentences regimen={regimen} undecided={undecided} />
            <Take regimen={regimen} than={chosen} letter={digitOfChoice(i)} />
          </div>
        ))}
      </div>
    </PlanFold>
  );
}
