import { type ReactNode, useId } from 'react';

/** What every line of a form has: its words, what helps to fill it in, and what is wrong with it. */
interface LineProps {
  readonly label: string;
  readonly hint?: ReactNode;
  readonly problem?: string | undefined;
}

interface LineParts {
  readonly id: string;
  readonly describedBy: string | undefined;
  readonly isInvalid: boolean;
}

/** One line of a form: words, field, and below it the hint or the problem. */
function FormLine({ label, hint, problem, children }: LineProps & { readonly children: (parts: LineParts) => ReactNode }) {
  const id = useId();
  const describedBy = [hint ? `${id}-hint` : '', problem ? `${id}-problem` : ''].filter(Boolean).join(' ') || undefined;
  return (
    <div className="form-line">
      <label htmlFor={id}>{label}</label>
      <div className="form-field">
        {children({ id, describedBy, isInvalid: problem !== undefined })}
        <LineNotes id={id} hint={hint} problem={problem} />
      </div>
    </div>
  );
}

function LineNotes({ id, hint, problem }: Pick<LineProps, 'hint' | 'problem'> & { readonly id: string }) {
  return (
    <>
      {problem && (
        <p id={`${id}-problem`} className="problem">
          {problem}
        </p>
      )}
      {hint && (
        <div id={`${id}-hint`} className="hint">
          {hint}
        </div>
      )}
    </>
  );
}

interface TextLineProps extends LineProps {
  readonly value: string;
  readonly onChange: (value: string) => void;
  readonly kind?: 'text' | 'number' | 'password';
  readonly unit?: ReactNode;
  readonly lang?: string;
  readonly autoComplete?: string;
  /** Beside the field: a unit to choose, or another button. */
  readonly beside?: ReactNode;
}

const LONGEST_TEXT = 200;

export function TextLine({ value, onChange, kind = 'text', unit, lang, beside, autoComplete = 'off', ...line }: TextLineProps) {
  return (
    <FormLine {...line}>
      {({ id, describedBy, isInvalid }) => (
        <span className="field">
          <input
            id={id}
            className={kind === 'number' ? 'number' : 'text'}
            type={kind === 'number' ? 'text' : kind}
            inputMode={kind === 'number' ? 'decimal' : undefined}
            maxLength={LONGEST_TEXT}
            autoComplete={autoComplete}
            lang={lang}
            value={value}
            aria-describedby={describedBy}
            aria-invalid={isInvalid || undefined}
            onChange={(event) => onChange(event.target.value)}
          />
          {unit && <span className="unit">{unit}</span>}
          {beside}
        </span>
      )}
    </FormLine>
  );
}

export interface Option<T extends string> {
  readonly id: T;
  readonly label: string;
}

interface SelectLineProps<T extends string> extends LineProps {
  readonly value: T;
  readonly onChange: (value: T) => void;
  /** Options, or groups of them by name. */
  readonly options: readonly (Option<T> | { readonly group: string; readonly options: readonly Option<T>[] })[];
}

export function SelectLine<T extends string>({ value, onChange, options, ...line }: SelectLineProps<T>) {
  return (
    <FormLine {...line}>
      {({ id, describedBy, isInvalid }) => (
        <select
          id={id}
          value={value}
          aria-describedby={describedBy}
          aria-invalid={isInvalid || undefined}
          // The options are the values, so what comes back is one of them.
          onChange={(event) => onChange(event.target.value as T)}
        >
          {options.map((option) =>
            'group' in option ? (
              <optgroup key={option.group} label={option.group}>
                {option.options.map((o) => (
                  <option key={o.id} value={o.id}>
                    {o.label}
                  </option>
                ))}
              </optgroup>
            ) : (
              <option key={option.id} value={option.id}>
                {option.label}
              </option>
            ),
          )}
        </select>
      )}
    </FormLine>
  );
}

/** A small choice beside a field, with its words for a screen reader only. */
export function UnitChoice<T extends string>({
  label,
  value,
  onChange,
  options,
}: Omit<SelectLineProps<T>, 'options'> & { readonly options: readonly Option<T>[] }) {
  return (
    <select aria-label={label} className="unit-choice" value={value} onChange={(event) => onChange(event.target.value as T)}>
      {options.map((o) => (
        <option key={o.id} value={o.id}>
          {o.label}
        </option>
      ))}
    </select>
  );
}

interface ChoiceLineProps<T extends string> extends LineProps {
  readonly value: T;
  readonly onChange: (value: T) => void;
  readonly options: readonly (Option<T> & { readonly hint?: string })[];
}

/** One of a few, all of them in sight. */
export function ChoiceLine<T extends string>({ label, hint, problem, value, onChange, options }: ChoiceLineProps<T>) {
  const id = useId();
  return (
    <fieldset className="form-line" aria-describedby={hint || problem ? `${id}-problem ${id}-hint` : undefined}>
      <legend>{label}</legend>
      <div className="form-field">
        {options.map((option) => (
          <label key={option.id} className="check">
            <input type="radio" name={id} checked={value === option.id} onChange={() => onChange(option.id)} />
            <span>
              {option.label} {option.hint && <span className="hint">{option.hint}</span>}
            </span>
          </label>
        ))}
        <LineNotes id={id} hint={hint} problem={problem} />
      </div>
    </fieldset>
  );
}

interface TicksLineProps extends LineProps {
  readonly options: readonly Option<string>[];
  readonly ticked: readonly string[];
  readonly onChange: (ticked: readonly string[]) => void;
  readonly isLong?: boolean;
}

/** Several of a list. What is ticked comes back in the order of the list. */
export function TicksLine({ label, hint, problem, options, ticked, onChange, isLong = false }: TicksLineProps) {
  const id = useId();
  const tick = (option: string, isTicked: boolean) =>
    onChange(options.map((o) => o.id).filter((o) => (o === option ? isTicked : ticked.includes(o))));
  return (
    <fieldset className="form-line" aria-describedby={hint || problem ? `${id}-problem ${id}-hint` : undefined}>
      <legend>{label}</legend>
      <div className="form-field">
        <div className={isLong ? 'ticks long' : 'ticks'}>
          {options.map((option) => (
            <label key={option.id} className="check">
              <input type="checkbox" checked={ticked.includes(option.id)} onChange={(event) => tick(option.id, event.target.checked)} />
              {option.label}
            </label>
          ))}
        </div>
        <LineNotes id={id} hint={hint} problem={problem} />
      </div>
    </fieldset>
  );
}

/** Something that is so, or is not. */
export function TickLine({ label, says, hint, isTicked, onChange }: TickLineProps) {
  const id = useId();
  return (
    <div className="form-line">
      <span aria-hidden="true">{label}</span>
      <div className="form-field">
        <label className="check">
          <input
            type="checkbox"
            checked={isTicked}
            aria-describedby={hint ? `${id}-hint` : undefined}
            onChange={(event) => onChange(event.target.checked)}
          />
          {says}
        </label>
        <LineNotes id={id} hint={hint} />
      </div>
    </div>
  );
}

interface TickLineProps extends LineProps {
  /** The words beside the tick, whole in themselves. */
  readonly says: string;
  readonly isTicked: boolean;
  readonly onChange: (isTicked: boolean) => void;
}
