import { foodsById } from '../../../content/foods.ts';
import { listAllowedGoals } from '../../../core/leaflet/chooseGoals.ts';
import { applyMoves, type DayMove, moveKey } from '../../../core/plaque/day/dayMoves.ts';
import { findDayProblems } from '../../../core/plaque/day/findDayProblems.ts';
import { sayGain } from '../../../core/plaque/day/sayDay.ts';
import type { AcidDay } from '../../../core/plaque/day/types.ts';
import { ageOn } from '../../../core/visit/ageOn.ts';
import { content, findQuestion, sayEnglish } from '../../content.ts';
import { joinWords, uncapitalise } from '../../format.ts';
import { Key } from '../../parts/Key.tsx';
import type { DayWork } from './dayWork.ts';
import { sayMoves, sayTogether } from './sayStudy.ts';
import { GAINS_WITH_BAND } from './studyDay.ts';

const MOST_LISTED = 6;

/** One line of the list: what to do, and what may be said of what it gains. */
interface Tryable {
  readonly moves: readonly DayMove[];
  readonly gains: string;
  /** Undefined where it cannot be tried on the day as it is changed by now. */
  readonly next: AcidDay | undefined;
}

/** The moves that may be tried, best first, then two and three together, each by one key. */
export function listTryable({ study, day, changed }: Pick<DayWork, 'study' | 'day' | 'changed'>): readonly Tryable[] {
  if (!day || study.of?.told !== day) return [];
  const { gains = [], together = [] } = study.study;
  const ones = gains.slice(0, MOST_LISTED).map((gain, i) => {
    const isWaitedFor = !gain.isAsked && i < GAINS_WITH_BAND && !study.isDone;
    return { moves: gain.moves, gains: isWaitedFor ? 'being worked out …' : sayGain(gain) };
  });
  const several = together.map((found) => ({ moves: found.gain.moves, gains: sayTogether(found) }));
  return [...ones, ...several].map((line) => ({ ...line, next: tryMoves(changed ?? day, line.moves) }));
}

/** The day after the moves; undefined where what they are about is no longer there, or there is no room. */
function tryMoves(day: AcidDay, moves: readonly DayMove[]): AcidDay | undefined {
  const ids = moves.flatMap((move) => [move.eventId, ...('mealId' in move ? [move.mealId] : [])]);
  const areThere = ids.every((id) => day.events.some((event) => event.id === id && event.kind === 'eating'));
  const isGumThere = moves.some(({ kind, eventId }) => kind === 'gum' && day.events.some(({ id }) => id === `${eventId}-gum`));
  if (!areThere || isGumThere) return undefined;
  const next = applyMoves(day, moves);
  return findDayProblems(next, foodsById).length === 0 ? next : undefined;
}

/** What would shorten the day's acid side, as far as it may be suggested to this person at all. */
export function ChangeList({ work }: { readonly work: DayWork }) {
  const { day, changed, study, isClosed, seen, limits, tryChange, leaveChange } = work;
  // What a closed visit says stands on its record; nothing new is suggested under it.
  if (!day || isClosed) return null;
  const lines = listTryable(work);
  const named = seen(day);
  const isLooking = lines.length > 1 && !study.isDone && study.study.together === undefined;
  return (
    <section aria-label="What would shorten it">
      <h2>What would shorten it</h2>
      <Limits work={work} />
      {lines.length > 0 && (
        <ol className="day-moves">
          {lines.map(({ moves, gains, next }, i) => (
            <li key={moves.map(moveKey).join()}>
              <button
                type="button"
                className="answer"
                aria-keyshortcuts={String(i + 1)}
                disabled={!next}
                onClick={() => next && tryChange(next)}
              >
                <Key>{i + 1}</Key>
                <span>{sayMoves(moves, named)}</span>
              </button>{' '}
              <span className="side-note">{gains}</span>
            </li>
          ))}
        </ol>
      )}
      {isLooking && <p className="side-note">Looking for two and three changes together …</p>}
      {lines.length === 0 && study.isDone && limits.food.allowed === 'any' && (
        <p className="side-note">Of the changes that were tried, none shortens this day in the model.</p>
      )}
      {lines.some(({ moves }) => moves.some(({ kind }) => kind === 'gum')) && <p className="side-note">{limits.gum.warnings.join(' ')}</p>}
      <p className="actions">
        {changed ? (
          <button type="button" className="action" aria-keyshortcuts="b" onClick={leaveChange}>
            <Key>b</Key> Back to the day as told
          </button>
        ) : (
          <button type="button" className="action" aria-keyshortcuts="c" onClick={() => tryChange(day)}>
            <Key>c</Key> Try a change of my own
          </button>
        )}
      </p>
    </section>
  );
}

/** Why some suggestions are not made; a private reason only where private matters may be seen. And what may always be said. */
function Limits({ work: { limits, isPrivateHidden, input } }: { readonly work: DayWork }) {
  const { food, gum } = limits;
  const afterwards = listAllowedGoals({
    ageYears: ageOn(input.person.birthDate, input.visit.onDate).ageYears,
    diet: food,
    goals: content.leaflet.goals,
    say: sayEnglish,
    catalogs: Object.values(content.leaflet.catalogs),
  }).filter(({ family }) => family === 'afterwards');
  const why = (limit: { readonly because: string; readonly private: boolean; readonly ask: readonly string[] }) => {
    if (limit.private && isPrivateHidden) return 'because of the safety check';
    const ask = limit.ask.map((id) => uncapitalise(findQuestion(id)?.label ?? id));
    return `because: ${limit.because}${ask.length > 0 && !isPrivateHidden ? ` (to ask: ${joinWords(ask)})` : ''}`;
  };
  return (
    <>
      {food.allowed !== 'any' && (
        <p>
          No change of {food.allowed === 'sweet-bottle-only' ? 'meals or snacks' : 'food'} is suggested, {why(food)}.{' '}
          {food.allowed === 'after-only' && 'What to do afterwards may be said:'}
        </p>
      )}
      {food.allowed === 'after-only' && (
        <ul>
          {afterwards.map(({ id, text }) => (
            <li key={id}>{text}</li>
          ))}
        </ul>
      )}
      {!gum.allowed && (
        <p className="side-note">Gum is not suggested, {gum.ask.length > 0 ? 'while the safety check is not answered' : why(gum)}.</p>
      )}
    </>
  );
}
