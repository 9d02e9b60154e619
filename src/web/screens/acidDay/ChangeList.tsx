import { foodsById } from '../../../content/foods.ts';
import { listAllowedGoals } from '../../../core/leaflet/chooseGoals.ts';
import { applyMoves, type DayMove, moveKey } from '../../../core/plaque/day/dayMoves.ts';
import { findDayProblems } from '../../../core/plaque/day/findDayProblems.ts';
import { sayGain, sayMove } from '../../../core/plaque/day/sayDay.ts';
import type { AcidDay } from '../../../core/plaque/day/types.ts';
import { ageOn } from '../../../core/visit/ageOn.ts';
import { content, findQuestion } from '../../content.ts';
import { joinWords, uncapitalise } from '../../format.ts';
import { Key } from '../../parts/Key.tsx';
import type { DayWork } from './useDayWork.ts';

const MOST_LISTED = 6;

/** The moves that may be tried, best first, each by one key. */
export function listTryable({ study, day, changed }: Pick<DayWork, 'study' | 'day' | 'changed'>) {
  if (!day || study.of?.told !== day) return [];
  return (study.study.gains ?? [])
    .slice(0, MOST_LISTED)
    .flatMap((gain) => gain.moves.map((move) => ({ gain, move, next: tryMove(changed ?? day, move) })));
}

/** The day after the move; undefined where what it is about is no longer there, or there is no room. */
function tryMove(day: AcidDay, move: DayMove): AcidDay | undefined {
  const ids = [move.eventId, ...('mealId' in move ? [move.mealId] : [])];
  const areThere = ids.every((id) => day.events.some((event) => event.id === id && event.kind === 'eating'));
  if (!areThere || day.events.some(({ id }) => id === `${move.eventId}-gum` && move.kind === 'gum')) return undefined;
  const next = applyMoves(day, [move]);
  return findDayProblems(next, foodsById).length === 0 ? next : undefined;
}

/** What would shorten the day's acid side, as far as it may be suggested to this person at all. */
export function ChangeList({ work }: { readonly work: DayWork }) {
  const { day, changed, study, isClosed, limits, tryChange, leaveChange } = work;
  if (!day) return null;
  const moves = listTryable(work);
  return (
    <section aria-label="What would shorten it">
      <h2>What would shorten it</h2>
      <Limits work={work} />
      {moves.length > 0 && (
        <ol className="day-moves">
          {moves.map(({ gain, move, next }, i) => (
            <li key={moveKey(move)}>
              {isClosed ? (
                <span>{sayMove(move, day, foodsById)}</span>
              ) : (
                <button
                  type="button"
                  className="answer"
                  aria-keyshortcuts={String(i + 1)}
                  disabled={!next}
                  onClick={() => next && tryChange(next)}
                >
                  <Key>{i + 1}</Key>
                  <span>{sayMove(move, day, foodsById)}</span>
                </button>
              )}{' '}
              <span className="side-note">{sayGain(gain)}</span>
            </li>
          ))}
        </ol>
      )}
      {moves.length === 0 && study.isDone && limits.food.allowed === 'any' && (
        <p className="side-note">Of the changes that were tried, none shortens this day in the model.</p>
      )}
      {moves.some(({ move }) => move.kind === 'gum') && <p className="side-note">{limits.gum.warnings.join(' ')}</p>}
      {!isClosed && (
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
      )}
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
    words: content.leaflet.words.en,
    everyLanguage: Object.values(content.leaflet.words),
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
