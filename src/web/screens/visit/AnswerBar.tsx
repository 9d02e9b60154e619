import { Key } from '../../parts/Key.tsx';
import { SourceList, Why } from '../../parts/Sources.tsx';
import { DateEntry, NumberEntry, PastDateEntry, TextEntry, ToothEntry } from './entries.tsx';
import { ListPicker } from './ListPicker.tsx';
import { digitOfChoice, type Line, type Reply } from './line.ts';

interface AnswerBarProps {
  readonly line: Line;
  readonly onReply: (reply: Reply) => void;
  /** Goes on without an answer of its own: the list was saved tick by tick. */
  readonly onDone: () => void;
}

/** The answers to an open line: each is a button, and each has its key. */
export function AnswerBar({ line, onReply, onDone }: AnswerBarProps) {
  return (
    <fieldset className="answers">
      <legend className="sr-only">Answer: {line.label}</legend>
      {line.prompt && <p className="prompt">{line.prompt}</p>}
      <div className="answer-keys">
        <Answers line={line} onReply={onReply} onDone={onDone} />
        {line.mayBeUnknown && (
          <>
            <AnswerButton
              letter="d"
              label="does not know"
              isChosen={line.text === 'does not know'}
              onPress={() => onReply({ how: 'does-not-know' })}
            />
            <AnswerButton letter="x" label="declined" isChosen={line.text === 'declined'} onPress={() => onReply({ how: 'declined' })} />
          </>
        )}
      </div>
      {line.sources.length > 0 && (
        <Why about={line.label}>
          <SourceList sources={line.sources} />
        </Why>
      )}
    </fieldset>
  );
}

function Answers({ line, onReply, onDone }: AnswerBarProps) {
  const { entry } = line;
  const known = line.tone === 'unknown' ? undefined : line.value;
  const asked = (value: string | number | boolean | readonly string[]) => onReply({ how: 'asked', value });
  switch (entry.kind) {
    case 'yes-no':
      return (
        <>
          <AnswerButton letter="y" label="yes" isChosen={known === true} onPress={() => asked(true)} />
          <AnswerButton letter="n" label="no" isChosen={known === false} onPress={() => asked(false)} />
        </>
      );
    case 'digit':
      return Array.from({ length: entry.max + 1 }, (_, n) => n).map((n) => (
        <AnswerButton
          key={n}
          letter={String(n)}
          label={n === known && entry.unit ? entry.unit : ''}
          isChosen={n === known}
          onPress={() => asked(n)}
        />
      ));
    case 'choice':
      return entry.choices.map((choice, i) => (
        <AnswerButton
          key={choice.id}
          letter={digitOfChoice(i)}
          label={choice.label}
          isChosen={choice.id === known}
          onPress={() => asked(choice.id)}
        />
      ));
    case 'number':
      return <NumberEntry entry={entry} line={line} onReply={onReply} />;
    case 'list':
      return (
        <ListPicker
          choices={entry.choices}
          chosen={Array.isArray(known) ? known : undefined}
          label={line.label}
          onChoose={(value) => onReply({ how: 'asked', value, stay: true })}
          onDone={onDone}
        />
      );
    case 'text':
      return <TextEntry line={line} hint={entry.hint} onReply={onReply} />;
    case 'date':
      return <DateEntry line={line} onReply={onReply} />;
    case 'tooth':
      return <ToothEntry key={line.id} line={line} onReply={onReply} />;
    case 'past-date':
      return (
        <>
          <PastDateEntry line={line} entry={entry} onReply={onReply} />
          <AnswerButton letter="t" label="today" isChosen={known === entry.onDate} onPress={() => asked(entry.onDate)} />
          {entry.choices.slice(0, 1).map((choice) => (
            <AnswerButton key={choice.id} letter="n" label={choice.label} isChosen={choice.id === known} onPress={() => asked(choice.id)} />
          ))}
        </>
      );
    case 'none':
      return null;
  }
}

interface AnswerButtonProps {
  readonly letter: string | undefined;
  readonly label: string;
  readonly isChosen?: boolean;
  readonly onPress: () => void;
}

export function AnswerButton({ letter, label, isChosen = false, onPress }: AnswerButtonProps) {
  return (
    <button
      type="button"
      className={isChosen ? 'answer chosen' : 'answer'}
      aria-pressed={isChosen}
      aria-keyshortcuts={letter}
      onClick={onPress}
    >
      {letter && (label === '' ? <span className="key">{letter}</span> : <Key>{letter}</Key>)}
      {label && <span>{label}</span>}
    </button>
  );
}
