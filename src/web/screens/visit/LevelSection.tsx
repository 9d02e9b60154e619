import type { Driver, Level, LevelChange, MissingItem, RiskResult } from '../../../core/risk/types.ts';
import type { VisitAssessment } from '../../../core/visit/types.ts';
import { flagText, itemLabel, protocolName, questionsOfItem } from '../../content.ts';
import { capitalise, formatDate, formatShortClock, joinWords, plural, uncapitalise } from '../../format.ts';
import { Key } from '../../parts/Key.tsx';
import { LevelLine } from '../../parts/LevelLine.tsx';
import { SourceLine, SourceList, Why } from '../../parts/Sources.tsx';
import { ScopeLines, ScopeProblem } from './ScopeLines.tsx';
import { SectionHead } from './SectionHead.tsx';
import { sayChange } from './sayChange.ts';
import { useVisit } from './visitContext.ts';

export function LevelSection() {
  const { assessment } = useVisit();
  const { proposed, confirmed, mouth } = assessment;
  const doesNotApply = mouth.kind === 'level-does-not-apply';
  return (
    <>
      <section data-scope="level" aria-label="Level" className="level">
        <SectionHead title={confirmed ? 'Level, confirmed' : proposed ? 'Level, proposed' : 'Level'} number={5} />
        {mouth.sentences.map((sentence, i) => (
          <p key={sentence} className={doesNotApply && i === 0 ? 'opening' : 'small'}>
            {sentence}
          </p>
        ))}
        {proposed && <Proposed result={proposed} assessment={assessment} />}
        {!proposed && !doesNotApply && <p className="opening">{assessment.proposedSentence}</p>}
      </section>
      {proposed && <Because result={proposed} />}
      {proposed && <CouldChange assessment={assessment} result={proposed} />}
    </>
  );
}

function Proposed({ result, assessment }: { readonly result: RiskResult; readonly assessment: VisitAssessment }) {
  const { isClosed, isChangingLevel, isShownToPatient, isPrivateHidden, command } = useVisit();
  const { confirmed } = assessment;
  const level = confirmed?.level ?? result.level;
  const isSettled =
    confirmed !== null && (result.level === null || confirmed.level === result.level || confirmed.changedFrom === result.level);
  return (
    <>
      <p className="small">{confirmed ? protocolName(confirmed.protocol) : result.screenName}, your practice's method</p>
      <LevelLine levels={result.levels} level={level} note={confirmed ? 'confirmed' : 'proposed'} />
      {confirmed && (
        <p className="small">
          {capitalise(confirmed.level)}, confirmed by {confirmed.by}, {formatDate(confirmed.at)} at {formatShortClock(confirmed.at)}
          {confirmed.changedFrom && `; changed from ${confirmed.changedFrom}`}
          {confirmed.reason && !isPrivateHidden && `, because ${confirmed.reason}`}.
        </p>
      )}
      {confirmed && !isSettled && result.level && <p className="unknown">The answers now propose {result.level}.</p>}
      {!confirmed && result.notYet && <NotYet result={result} {...result.notYet} />}
      {!confirmed && !result.notYet && <ToConfirm result={result} />}
      {!isClosed && !isShownToPatient && (
        <p className="actions">
          {result.level && !isSettled && (
            <button type="button" className="action primary" aria-keyshortcuts="c" onClick={() => command('level', 'c')}>
              <Key>c</Key> Confirm {result.level}
            </button>
          )}
          <button
            type="button"
            className="action"
            aria-keyshortcuts="g"
            aria-expanded={isChangingLevel}
            onClick={() => command('level', 'g')}
          >
            <Key>g</Key> Change
          </button>
        </p>
      )}
      <ScopeLines scope="level" />
      <ScopeProblem scope="level" />
      {!isShownToPatient && <Compare result={result} compare={assessment.compare} />}
    </>
  );
}

/** No level is said while it would read low only because disease was not looked for. */
function NotYet({
  result,
  missing,
  atLeast,
}: {
  readonly result: RiskResult;
  readonly missing: readonly string[];
  readonly atLeast: Level;
}) {
  const { isPrivateHidden, privateItems } = useVisit();
  const open = missing.filter((item) => !isPrivateHidden || !privateItems.has(item));
  return (
    <>
      <p className="unknown">
        Not yet: {open.length > 0 ? `${plural(open.length, 'thing')} not asked or seen.` : 'not everything is asked or seen.'}
        {atLeast !== result.levels[0] && ` At least ${atLeast}.`}
      </p>
      <ul>
        {open.map((item) => (
          <li key={item}>
            <ItemLink item={item} />
          </li>
        ))}
      </ul>
    </>
  );
}

/** A way to the question that fills an item, where there is one. */
function ItemLink({ item }: { readonly item: string }) {
  const { isShownToPatient, goTo } = useVisit();
  const question = questionsOfItem(item)[0];
  if (!question || isShownToPatient) return <>{itemLabel(item)}</>;
  return (
    <button type="button" className="link says" onClick={() => goTo(question.group, question.id)}>
      {itemLabel(item)}
    </button>
  );
}

function Compare({ result, compare }: { readonly result: RiskResult; readonly compare: readonly RiskResult[] }) {
  const others = compare.filter((r) => r.protocol !== result.protocol);
  if (others.length === 0) return null;
  return (
    <div className="small">
      Lists differ and none is the truth. Your practice records: {result.screenName}.{' '}
      <Why label="compare" about="other lists">
        <table>
          <thead>
            <tr>
              <th scope="col">List</th>
              <th scope="col">Level</th>
              <th scope="col">With what is not known</th>
            </tr>
          </thead>
          <tbody>
            {[result, ...others].map((r) => (
              <tr key={r.protocol}>
                <th scope="row">{r.screenName}</th>
                <td>{r.level ?? 'not yet'}</td>
                <td>{r.possibleLevels.length > 1 ? r.possibleLevels.join(' or ') : 'no other'}</td>
              </tr>
            ))}
          </tbody>
        </table>
      </Why>
    </div>
  );
}

function Because({ result }: { readonly result: RiskResult }) {
  const { isPrivateHidden, privateItems } = useVisit();
  const isOpen = (driver: Driver) => !isPrivateHidden || !privateItems.has(driver.item);
  const drivers = result.drivers.filter(isOpen);
  const protections = result.protections.filter(isOpen);
  return (
    <section aria-label="Because">
      <SectionHead title="Because" />
      {drivers.length === 0 ? <p className="small">Nothing known pushes the level up.</p> : <DriverList drivers={drivers} />}
      {protections.length > 0 && <p className="small">Protective: {protections.map((d) => uncapitalise(itemLabel(d.item))).join('; ')}.</p>}
      {result.flags.map((flag) => (
        <p key={flag} className="small">
          {flagText(flag)}
        </p>
      ))}
      {drivers.length + protections.length > 0 && (
        <div className="small">
          <Why about="these drivers">
            <ul className="sources">
              {[...drivers, ...protections].map((d) => (
                <li key={d.item}>
                  {itemLabel(d.item)}: <SourceLine source={d.source} />
                </li>
              ))}
            </ul>
            {!isPrivateHidden && <SourceList sources={result.sources} />}
          </Why>
        </div>
      )}
    </section>
  );
}

function DriverList({ drivers }: { readonly drivers: readonly Driver[] }) {
  return (
    <ul>
      {drivers.map((driver) => (
        <li key={driver.item}>
          {itemLabel(driver.item)}
          {driver.decisive && <span className="aside">, decides alone</span>}
          {driver.changeable && <span className="aside">, can change</span>}
        </li>
      ))}
    </ul>
  );
}

/** Which other levels what is not known could still make of it. */
function ToConfirm({ result }: { readonly result: RiskResult }) {
  const { isPrivateHidden } = useVisit();
  const others = result.possibleLevels.filter((level) => level !== result.level);
  if (!result.needsConfirmation) return null;
  // What is not known may be a private matter, and be counted here.
  if (isPrivateHidden) return <p className="small">To be confirmed.</p>;
  return (
    <p className="small">
      To be confirmed
      {others.length > 0 &&
        `: ${joinWords(others)} not excluded while ${plural(result.missing.length, 'thing')} on this list ${result.missing.length === 1 ? 'is' : 'are'} not known`}
      .
    </p>
  );
}

const MOST_MISSING = 4;

function CouldChange({ assessment, result }: { readonly assessment: VisitAssessment; readonly result: RiskResult }) {
  const { isPrivateHidden, privateItems } = useVisit();
  const missing = (result.notYet ? [] : result.missing).filter((m) => m.couldChangeLevel && !(isPrivateHidden && privateItems.has(m.item)));
  const rank = (level: Level) => result.levels.indexOf(level);
  const changes = assessment.couldChange.filter((c) => !isPrivateHidden || !c.changes.some((part) => privateItems.has(part.item)));
  const lower = changes.filter((c) => rank(c.to) < rank(result.level ?? result.levelUnknownNotTicked));
  const higher = changes.filter((c) => !lower.includes(c));
  if (missing.length === 0 && changes.length === 0) return null;
  return (
    <section aria-label="Could change it">
      <SectionHead title="Could change it" />
      {missing.length > 0 && <Missing missing={missing} level={result.level} />}
      {lower.length > 0 && (
        <>
          <ChangeList changes={lower} />
          <p className="small">What would change the level on this list. It has not been shown that it changes decay by the same step.</p>
        </>
      )}
      {higher.length > 0 && (
        <div className="small">
          <Why label="what would raise it" about="on this list">
            <ChangeList changes={higher} />
          </Why>
        </div>
      )}
    </section>
  );
}

function ChangeList({ changes }: { readonly changes: readonly LevelChange[] }) {
  return (
    <ul>
      {changes.map((change) => (
        <li key={`${change.to} ${change.changes.map((c) => c.item).join(' ')}`}>{sayChange(change)}</li>
      ))}
    </ul>
  );
}

/** What is not known and could alone make it another level, each a way to its question. */
function Missing({ missing, level }: { readonly missing: readonly MissingItem[]; readonly level: Level | null }) {
  return (
    <>
      <p className="small">
        Not known yet; each alone could make it another level. <span className="unknown">Ask or look.</span>
      </p>
      <ul>
        {missing.slice(0, MOST_MISSING).map((m) => (
          <li key={m.item}>
            {m.levelsIfFilled.filter((l) => l !== level).join(' or ')}: <ItemLink item={m.item} />
          </li>
        ))}
      </ul>
      {missing.length > MOST_MISSING && <p className="small">and {missing.length - MOST_MISSING} more.</p>}
    </>
  );
}
