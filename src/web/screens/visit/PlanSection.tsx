import { sayAmount } from '../../../core/regimen/sayDirections.ts';
import type { Exclusion, Plan, PlanLine } from '../../../core/regimen/types.ts';
import { turnedDownWord } from '../../../core/visit/turnedDown.ts';
import type { VisitAssessment } from '../../../core/visit/types.ts';
import { findQuestion, shelfName } from '../../content.ts';
import { capitalise, formatMonths, plural } from '../../format.ts';
import { Key } from '../../parts/Key.tsx';
import { SourceLine, SourceList, Why } from '../../parts/Sources.tsx';
import { BenefitLines } from './BenefitLines.tsx';
import { ByProtocol, sayProtocolName } from './ByProtocol.tsx';
import { PathwayCompare } from './PathwayCompare.tsx';
import { PlanAlternatives, PlanPast } from './PlanAlternatives.tsx';
import { PlanConflict, PlanHistory } from './PlanConflict.tsx';
import { PlanDay } from './PlanDay.tsx';
import { PlanFluoride } from './PlanFluoride.tsx';
import { PlanRegimens } from './PlanRegimens.tsx';
import { ScopeProblem } from './ScopeLines.tsx';
import { SectionHead } from './SectionHead.tsx';
import { NotReleased, Overrides, PrescriptionLink, ReleaseState, SignActions } from './SignActions.tsx';
import { Swallowed } from './Swallowed.tsx';
import { saySchedule } from './saySchedule.ts';
import { useVisit } from './visitContext.ts';

export function PlanSection() {
  const { assessment, isPlanSlow, isPrivateHidden } = useVisit();
  const isEarly = assessment.plan.lines.length === 0 && (assessment.safetyUnknown.length > 0 || assessment.confirmed === null);
  return (
    <section data-scope="plan" aria-label="Plan">
      <SectionHead title="Plan" number={6} />
      {isPlanSlow && (
        <p className="small">Being worked out again with the latest answer. Until then the plan of the answers before stands here.</p>
      )}
      {isEarly ? <p className="small">{noPlanSentence(assessment, isPrivateHidden)}</p> : <PlanBody assessment={assessment} />}
      <PathwayCompare />
      <MouthAdvice assessment={assessment} />
      {isEarly && <Bitewings plan={assessment.plan} />}
      <ScopeProblem scope="plan" />
    </section>
  );
}

function PlanBody({ assessment }: { readonly assessment: VisitAssessment }) {
  const { isPrivateHidden } = useVisit();
  const { plan, needs } = assessment;
  const undecided = needs.filter((n) => n.state === 'undecided');
  return (
    <>
      {plan.lines.length === 0 && <p className="small">{noPlanSentence(assessment, isPrivateHidden)}</p>}
      <ul className="plan">
        {plan.lines.map((line) => (
          <PlanRow key={line.shelfItemId} line={line} />
        ))}
        <NotReleased refused={plan.refused} />
        {undecided.map((need) => (
          <li key={need.kind}>
            {needName(need.kind)}: <span className="unknown">undecided</span>
            {!isPrivateHidden && <span className="small block">{need.because}</span>}
          </li>
        ))}
      </ul>
      {!isPrivateHidden && (
        <>
          <ByProtocol byProtocol={plan.byProtocol} />
          <NotOffered notOffered={plan.notOffered} />
          <Unmet unmet={plan.unmet.filter((u) => !undecided.some((n) => n.kind === u.need))} />
          {plan.conflict && <PlanConflict conflict={plan.conflict} />}
          <PlanHistory plan={plan} />
          <PlanFluoride plan={plan} />
          <Swallowed />
          <PrescriptionLink lines={plan.lines} />
        </>
      )}
      <PlanDay />
      <PlanRegimens plan={plan} undecided={undecided.map((need) => need.kind)} />
      <Intervals plan={plan} />
    </>
  );
}

/** What the mouth itself asks for, at every level: whom to refer to, and advice. Not for the patient's eye: it names what to ask about. */
function MouthAdvice({ assessment }: { readonly assessment: VisitAssessment }) {
  const { isPrivateHidden } = useVisit();
  const referrals = assessment.needs.filter(({ kind, state }) => kind === 'referral' && state === 'needed');
  const { advice } = assessment.plan;
  if (isPrivateHidden || referrals.length + advice.length === 0) return null;
  const sources = [...referrals.flatMap((need) => need.sources), ...advice.map((line) => line.source)];
  return (
    <div className="small">
      {referrals.length > 0 && <p>Refer: {referrals.map(({ because }) => because).join(' ')}</p>}
      {advice.length > 0 && (
        <>
          <p>Advice for this mouth:</p>
          <ul className="plain-list">
            {advice.map(({ id, says }) => (
              <li key={id}>{says}</li>
            ))}
          </ul>
        </>
      )}
      <Why about="advice for this mouth">
        <SourceList sources={sources} />
      </Why>
    </div>
  );
}

const needName = (need: string) => capitalise(need.replaceAll('-', ' '));

function Unmet({ unmet }: Pick<Plan, 'unmet'>) {
  if (unmet.length === 0) return null;
  return (
    <div className="small">
      Needed and not met: {unmet.map((u) => u.need.replaceAll('-', ' ')).join(', ')}.{' '}
      <Why about="what is not met">
        <ul className="plain-list">
          {unmet.map((u) => (
            <li key={u.need}>
              {needName(u.need)}: {u.because}
            </li>
          ))}
        </ul>
      </Why>
    </div>
  );
}

function noPlanSentence({ confirmed, mouth, safetyUnknown }: VisitAssessment, isPrivateHidden: boolean): string {
  if (mouth.kind === 'level-does-not-apply') return 'Nothing for teeth is offered in this mouth.';
  // Counted without the private ones, the number would tell of them.
  if (safetyUnknown.length > 0 && isPrivateHidden) return 'No plan yet: the safety check is not complete.';
  if (safetyUnknown.length > 0) return `No plan yet: ${plural(safetyUnknown.length, 'answer')} of the safety check not known.`;
  return confirmed ? 'Nothing on the shelf fits these needs.' : 'No plan yet: the level is not confirmed.';
}

function PlanRow({ line }: { readonly line: PlanLine }) {
  const { place, lines, goTo, bundle, input, isShownToPatient } = useVisit();
  const isOpen = place.scope === 'plan' && place.line === line.shelfItemId;
  const turnedDown = turnedDownWord(input.visit.agreed, line.shelfItemId);
  // What nobody takes waits for no signature.
  const isReleaseSaid = !(turnedDown && line.state === 'waiting-for-signature');
  const letter = lines.plan.find((l) => l.id === line.shelfItemId)?.letter;
  return (
    <li data-line={line.shelfItemId}>
      <button
        type="button"
        className="plan-row"
        data-row
        aria-expanded={isOpen}
        aria-keyshortcuts={letter}
        onClick={() => goTo('plan', isOpen ? null : line.shelfItemId)}
      >
        <Key>{letter}</Key>
        <span>
          {line.name}
          {saySchedule(line)}
          {line.byProtocol && !isShownToPatient && <span className="aside block">{sayProtocolName(line.byProtocol)}</span>}
          <PlanPast shelfItemId={line.shelfItemId} />
          {turnedDown && <span className="aside block">{turnedDown.replaceAll('-', ' ')}</span>}
          {isReleaseSaid && <ReleaseState line={line} signers={bundle.members.filter((m) => m.maySign).map((m) => m.name)} />}
        </span>
      </button>
      {isReleaseSaid && <SignActions line={line} />}
      {isOpen && <PlanDetails line={line} />}
      {isOpen && <PlanAlternatives shelfItemId={line.shelfItemId} />}
    </li>
  );
}

/** Reasons and warnings may name what is private, so the patient's view has the amount alone. */
function PlanDetails({ line }: { readonly line: PlanLine }) {
  const { isPrivateHidden } = useVisit();
  const amount = <p>{capitalise(sayAmount(line))}.</p>;
  if (isPrivateHidden) return <div className="why-text">{amount}</div>;
  return (
    <div className="why-text">
      {amount}
      <ul className="plain-list">
        {line.because.map((because) => (
          <li key={because}>{because}</li>
        ))}
        {line.dose?.map((says) => (
          <li key={says}>{says}</li>
        ))}
        {line.warnings.map((w) => (
          <li key={w.ruleId}>
            {w.text} <span className="aside">({w.ruleId})</span>
          </li>
        ))}
        {line.remarks?.map((r) => (
          <li key={r.ruleId}>
            {r.text} <span className="aside">({r.ruleId})</span>
          </li>
        ))}
      </ul>
      <SourceList sources={[...line.sources, ...[...line.warnings, ...(line.remarks ?? [])].map((w) => w.source)]} />
      <BenefitLines shelfItemId={line.shelfItemId} />
    </div>
  );
}

/** "Not offered, because" and "ask first", each once, with the rule one press away. */
function NotOffered({ notOffered }: { readonly notOffered: readonly Exclusion[] }) {
  const { input, goTo } = useVisit();
  const name = (id: string) => shelfName(input.practice.shelf, id);
  const stopped = groupByItem(notOffered.filter((e) => e.level === 'stop'));
  const askFirst = notOffered.filter((e) => e.level === 'ask-first');
  const waiting = groupByItem(askFirst).length;
  const questions = [...new Set(askFirst.flatMap((e) => e.ask ?? []))];
  if (stopped.length + waiting === 0) return null;
  return (
    <div className="small">
      {stopped.length > 0 && (
        <p>Not offered, because: {stopped.map(([id, list]) => `${name(id)} (${list[0]?.because ?? ''})`).join('; ')}.</p>
      )}
      {waiting > 0 && (
        <p>
          <span className="unknown">Ask first:</span>{' '}
          {questions.map((id, i) => (
            <span key={id}>
              {i > 0 && ', '}
              <AskLink id={id} onPress={goTo} />
            </span>
          ))}
          . Until then {plural(waiting, 'item')} of the shelf {waiting === 1 ? 'is' : 'are'} not offered.
        </p>
      )}
      <Overrides stopped={notOffered.filter((e) => e.level === 'stop')} nameOf={name} />
      <Why about="what is not offered">
        <ul className="sources">
          {notOffered.map((e) => (
            <li key={`${e.shelfItemId} ${e.ruleId}`}>
              {name(e.shelfItemId)}: {e.because} ({e.ruleId}). {e.instead && `${e.instead} `}
              <SourceLine source={e.source} />
            </li>
          ))}
        </ul>
      </Why>
    </div>
  );
}

function AskLink({ id, onPress }: { readonly id: string; readonly onPress: ReturnType<typeof useVisit>['goTo'] }) {
  const question = findQuestion(id);
  if (!question) return <>{id}</>;
  return (
    <button type="button" className="link says" onClick={() => onPress(question.group, id)}>
      {question.label.toLowerCase()}
    </button>
  );
}

function groupByItem(list: readonly Exclusion[]): readonly (readonly [string, readonly Exclusion[]])[] {
  const ids = [...new Set(list.map((e) => e.shelfItemId))];
  return ids.map((id) => [id, list.filter((e) => e.shelfItemId === id)] as const);
}

/** When bitewings are next due, with what is not known; the superseded table stands one press away. */
function Bitewings({ plan: { bitewingsSentence, bitewingsOldTable } }: { readonly plan: Plan }) {
  const { isShownToPatient } = useVisit();
  if (isShownToPatient || bitewingsSentence === '') return null;
  return (
    <div className="small">
      {bitewingsSentence}{' '}
      {bitewingsOldTable && (
        <Why about="bitewings">
          <p>
            {bitewingsOldTable.label}: {formatMonths(bitewingsOldTable.fromMonths, bitewingsOldTable.toMonths)}.
          </p>
          <SourceList sources={[bitewingsOldTable.source]} />
        </Why>
      )}
    </div>
  );
}

function Intervals({ plan }: { readonly plan: Plan }) {
  return (
    <>
      {plan.recall && (
        <div className="small">
          Next visit in {formatMonths(plan.recall.fromMonths, plan.recall.toMonths)}.{' '}
          <Why about="time to the next visit">
            <SourceList sources={[plan.recall.source]} />
          </Why>
        </div>
      )}
      <Bitewings plan={plan} />
    </>
  );
}
