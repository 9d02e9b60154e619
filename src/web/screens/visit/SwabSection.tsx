import { findSpan } from '../../../core/checks/controlSpan.ts';
import { capitalise, formatDate } from '../../format.ts';
import { Key } from '../../parts/Key.tsx';
import { Link } from '../../parts/Link.tsx';
import { GoOnForm } from '../checks/GoOnForm.tsx';
import { findUncomparedLot } from '../swab/listOpenConditions.ts';
import { ReadingBlock } from './ReadingBlock.tsx';
import { ScopeLines, ScopeProblem } from './ScopeLines.tsx';
import { SectionHead } from './SectionHead.tsx';
import { presetLot, sayHowTaken } from './swabLines.ts';
import { useVisit } from './visitContext.ts';
import { withLot } from './withLot.ts';

export function SwabSection() {
  const { input, assessment, lines, place, isClosed, isShownToPatient, command } = useVisit();
  const { visit, practice } = input;
  const reading = visit.reading ?? {};
  const meter = practice.meters.find((m) => m.id === visit.meterId) ?? (practice.meters.length === 1 ? practice.meters[0] : undefined);
  const hasNumber = reading.rlu !== undefined;
  const hasMissing = lines.swab.some((l) => l.wanted);
  const showLines =
    !isClosed &&
    !isShownToPatient &&
    (place.scope === 'swab' || hasMissing || (!hasNumber && reading.notTaken === undefined && assessment.mouth.swab?.site !== 'none'));
  return (
    <section data-scope="swab" aria-label="Swab">
      <SectionHead title="Swab" number={2} note={sayHowTaken(reading, meter?.name, practice.lots)} />
      {assessment.mouth.swab && <p className="small">{assessment.mouth.swab.says}</p>}
      {(hasNumber || reading.notTaken !== undefined || reading.failed === true) && (
        <ReadingBlock assessment={assessment.reading} reading={reading} meter={meter} isShownToPatient={isShownToPatient} />
      )}
      {hasNumber && isClosed && !isShownToPatient && <SinceThen meterId={meter?.id} />}
      {!hasNumber && !isClosed && !isShownToPatient && <StoppedControl />}
      {!isClosed && !isShownToPatient && <UncomparedLot />}
      {showLines && (
        <>
          {hasNumber && hasMissing && (
            <button type="button" className="answer" aria-keyshortcuts="u" onClick={() => command('swab', 'u')}>
              <Key>u</Key>
              <span>as usual: before cleaning, lower front teeth, 60 minutes or more since eating, brushing and rinsing</span>
            </button>
          )}
          {!hasNumber && (
            <button type="button" className="answer" aria-keyshortcuts="t" onClick={() => command('swab', 't')}>
              <Key>t</Key>
              <span>take it step by step</span>
            </button>
          )}
          <ScopeLines scope="swab" />
        </>
      )}
      <ScopeProblem scope="swab" />
    </section>
  );
}

/** What was told when the visit was closed stays; that the reading counts no more since is said beside it. */
function SinceThen({ meterId }: { readonly meterId: string | undefined }) {
  const { input, assessment } = useVisit();
  const { lotId, takenAt } = input.visit.reading ?? {};
  if (meterId === undefined || lotId === undefined || !assessment.reading.counted) return null;
  const { question } = findSpan(input.visit.controls ?? [], { meterId, lotId }, takenAt ? Date.parse(takenAt) : undefined) ?? {};
  if (!question) return null;
  return (
    <p className="unknown" data-since-then>
      Since then not counted: a later control was out of limits, and {question.by} put this reading under question,{' '}
      {formatDate(question.at)}: {question.reason}. What was told at this visit stays on the record.
    </p>
  );
}

/** Asked as on the Swab page: a lot that nobody compared is used with a reason. */
function UncomparedLot() {
  const { input, correction, show, goTo } = useVisit();
  const { visit, practice } = input;
  const { reading = {} } = visit;
  // A correction sends nothing before all of it, and no swab is in hand.
  if (correction !== null || reading.notTaken !== undefined || reading.failed === true) return null;
  const lot = findUncomparedLot(reading, { lots: practice.lots, onDate: visit.onDate });
  if (!lot) return null;
  return (
    <div data-uncompared>
      <p className="unknown">
        Lot {lot.name} was not compared with the lot before it and may read higher or lower. Compare the two first, under{' '}
        <Link to="/checks">Swab checks</Link>, take another pack, or say why it is used all the same.
      </p>
      <GoOnForm
        key={lot.id}
        lot={lot}
        onKept={(now) => {
          show((before) => withLot(before, now));
          goTo('swab');
        }}
      />
    </div>
  );
}

/** Said before a swab is taken for nothing. */
function StoppedControl() {
  const { input } = useVisit();
  const { visit, practice } = input;
  const lotId = visit.reading?.lotId ?? presetLot(practice.lots, visit.onDate);
  const meterId = visit.meterId ?? practice.meters[0]?.id;
  const span = lotId && meterId ? findSpan(visit.controls ?? [], { meterId, lotId }, undefined) : undefined;
  if (span?.state !== 'out') return null;
  const lot = practice.lots.find(({ id }) => id === lotId)?.name;
  const { override } = span;
  const what = span.lotId === undefined ? `the check of the meter did not pass` : `the last control of lot ${lot} was out of limits`;
  if (override) {
    return (
      <p className="unknown">
        {capitalise(what)}; readings count today all the same, because {override.by} said: {override.reason}
      </p>
    );
  }
  return (
    <p className="unknown">
      Run today without swabs: {what} ({span.says}), and a number would not be counted.{' '}
      {span.lotId === undefined
        ? 'Another meter that passed may be used; the check'
        : 'Another lot whose control is in line may be used; the control'}{' '}
      is under <Link to="/checks">Swab checks</Link>.
    </p>
  );
}
