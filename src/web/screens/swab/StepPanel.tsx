import { type ReactNode, useId, useState } from 'react';
import type { Meter } from '../../../core/reading/types.ts';
import { Key } from '../../parts/Key.tsx';
import { ReadingBlock } from '../visit/ReadingBlock.tsx';
import type { SwabChoice } from './listChoices.ts';
import { PathDrawing } from './PathDrawing.tsx';
import { type SwabStep, secondsLeft } from './swabFlow.ts';
import { sayChoice, sayStep } from './swabWords.ts';
import type { SwabWork } from './useSwabWork.ts';

const WITH_DRAWING: readonly SwabStep[] = ['site', 'other-site'];
/** Where what the mouth means for the site is still news. */
const WITH_MOUTH: readonly SwabStep[] = ['before-cleaning', 'since', 'taken-by', 'site'];
const ENDED: readonly SwabStep[] = [
  'read',
  'failed',
  'not-taken',
  'no-site',
  'too-soon',
  'no-meter',
  'control-out',
  'after-cleaning',
  'other-site',
  'stopped',
];
/** Off the way to a number; they stand below the answers. */
const BESIDES: readonly SwabChoice['does']['kind'][] = ['no-swab', 'failed', 'undo'];

interface StepPanelProps {
  readonly work: SwabWork;
  readonly meter: Meter | undefined;
  readonly onLeave: () => void;
}

/** The one step: its words, its answers with their keys, and the ways out of it. */
export function StepPanel({ work, meter, onLeave }: StepPanelProps) {
  const { step, flow, setting, moment, choices } = work;
  const { title, text } = sayStep(step, flow, setting, moment.now);
  const answers = choices.filter(({ does }) => !BESIDES.includes(does.kind));
  const supplies = answers.filter(({ does }) => does.kind === 'lot' || does.kind === 'meter');
  const others = choices.filter(({ does }) => BESIDES.includes(does.kind));
  return (
    <section className="swab-step" aria-label="Step">
      <div className="swab-columns">
        <div className="swab-words">
          <h2 tabIndex={-1} data-step={step}>
            {title}
          </h2>
          {setting.mouth && WITH_MOUTH.includes(step) && <p className="opening unknown">{setting.mouth.says}</p>}
          {text.map((sentence) => (
            <p key={sentence} className="opening">
              {sentence}
            </p>
          ))}
        </div>
        {WITH_DRAWING.includes(step) && <PathDrawing />}
        <div className="swab-answers">
          {step === 'count-down' && <SecondsLeft seconds={secondsLeft(meter?.countdownS ?? 0, moment)} />}
          <Choices choices={answers.filter((c) => !supplies.includes(c))} work={work} />
          {supplies.length > 0 && (
            <fieldset className="swab-supplies">
              <legend className="side-note">{work.setting.meters.length > 1 ? 'Pack and meter' : 'Pack'}</legend>
              <Choices choices={supplies} work={work} />
            </fieldset>
          )}
          <Entry work={work} />
          {flow.problem && (
            <p className="problem" role="alert">
              {flow.problem}
            </p>
          )}
        </div>
      </div>
      <Result work={work} meter={meter} />
      <div className="swab-besides">
        {(ENDED.includes(step) || work.isClosed) && (
          <button type="button" className="action primary" aria-keyshortcuts="v" onClick={onLeave}>
            <Key>v</Key>
            Back to the visit
          </button>
        )}
        <Choices choices={others} work={work} isPlain />
      </div>
    </section>
  );
}

interface ChoicesProps {
  readonly choices: readonly SwabChoice[];
  readonly work: SwabWork;
  readonly isPlain?: boolean;
}

function Choices({ choices, work, isPlain = false }: ChoicesProps) {
  if (choices.length === 0) return null;
  const buttons = choices.map(({ key, does, isChosen }) => (
    <button
      key={key}
      type="button"
      className={isPlain ? 'answer' : isChosen ? 'swab-choice chosen' : 'swab-choice'}
      aria-keyshortcuts={key}
      aria-pressed={isChosen}
      onClick={() => work.send({ key })}
    >
      <Key>{key}</Key>
      <span>{sayChoice(does, work.setting)}</span>
    </button>
  ));
  return isPlain ? buttons : <div className="swab-choices">{buttons}</div>;
}

/** The number alone changes; a screen reader hears start, ten seconds and done from the status line. */
function SecondsLeft({ seconds }: { readonly seconds: number }) {
  return (
    <p className="swab-seconds" aria-hidden="true">
      <span>{seconds}</span> s
    </p>
  );
}

function Entry({ work }: { readonly work: SwabWork }) {
  const { step, send, isClosed } = work;
  if (isClosed) return null;
  if (step === 'number')
    return (
      <TypedEntry
        label="Reading, RLU"
        className="number"
        inputMode="decimal"
        after={<span aria-hidden="true">RLU</span>}
        onSave={(typed) => send({ typed })}
      />
    );
  if (step === 'not-compared')
    return <TypedEntry label="Why it is used without a comparison" className="text" onSave={(typed) => send({ typed })} />;
  if (step === 'type-note') return <TypedEntry label="Why not, in a few words" className="text" onSave={(typed) => send({ typed })} />;
  return null;
}

interface TypedEntryProps {
  readonly label: string;
  readonly className: 'number' | 'text';
  readonly inputMode?: 'decimal';
  readonly after?: ReactNode;
  readonly onSave: (typed: string) => void;
}

function TypedEntry({ label, className, inputMode, after, onSave }: TypedEntryProps) {
  const [typed, setTyped] = useState('');
  const id = useId();
  return (
    <form
      className="field swab-field"
      noValidate
      onSubmit={(event) => {
        event.preventDefault();
        onSave(typed);
      }}
    >
      <label className="sr-only" htmlFor={id}>
        {label}
      </label>
      <input
        id={id}
        data-entry
        className={className}
        inputMode={inputMode}
        autoComplete="off"
        maxLength={120}
        value={typed}
        onChange={(event) => setTyped(event.target.value)}
      />
      {after}
      <button type="submit" className="swab-choice">
        <Key>Enter</Key>
        <span>Save</span>
      </button>
    </form>
  );
}

/** The verdict as the visit shows it. */
function Result({ work, meter }: { readonly work: SwabWork; readonly meter: Meter | undefined }) {
  const { assessment, flow, step } = work;
  if (step !== 'read') return null;
  return <ReadingBlock assessment={assessment.reading} reading={flow.reading} meter={meter} isShownToPatient={false} />;
}
