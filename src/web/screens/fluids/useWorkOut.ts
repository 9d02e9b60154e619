import { type FormEvent, useRef, useState } from 'react';
import { focusFirstProblem } from '../../parts/focusFirstProblem.ts';
import { type FieldsOf, type Numbers, type Problems, readNumbers, type Typed } from './readNumbers.ts';

interface WorkOutOptions<N extends string, O extends string, R> {
  readonly needed: FieldsOf<N>;
  readonly optional: FieldsOf<O>;
  /** What is chosen or written beside the numbers. */
  readonly choices?: Readonly<Record<string, string>>;
  /** What is wrong with these. */
  readonly choiceProblems?: Problems;
  /** May throw a RangeError that begins with the name of a field. */
  readonly workOut: (numbers: Numbers<N, O>) => R;
  readonly begin?: Typed;
}

export interface WorkOut<R> {
  readonly form: React.RefObject<HTMLFormElement | null>;
  readonly typed: Typed;
  readonly set: (name: string, value: string) => void;
  readonly problems: Problems;
  /** What no single field is to blame for. */
  readonly problem: string | undefined;
  /** Of what stands in the fields now; gone as soon as one of them changes. */
  readonly result: R | undefined;
  readonly submit: (event: FormEvent) => void;
}

type Done<R> = { readonly of: string } & ({ readonly result: R } | { readonly refused: RangeError });

/** A form that works something out: nothing is stored, nothing typed is lost, and a result never stands beside other figures than its own. */
export function useWorkOut<N extends string, O extends string, R>(options: WorkOutOptions<N, O, R>): WorkOut<R> {
  const { needed, optional, choices = {}, choiceProblems = {}, workOut, begin = {} } = options;
  const form = useRef<HTMLFormElement>(null);
  const [typed, setTyped] = useState<Typed>(begin);
  const [isTried, setTried] = useState(false);
  const [done, setDone] = useState<Done<R> | undefined>();
  const read = readNumbers(typed, needed, optional);
  const now = JSON.stringify([typed, choices]);
  const current = done?.of === now ? done : undefined;
  const refused = current && 'refused' in current ? sayRefusal(current.refused, { ...needed, ...optional }) : {};
  const submit = (event: FormEvent) => {
    event.preventDefault();
    setTried(true);
    if (!read.isComplete || Object.keys(choiceProblems).length > 0) return focusFirstProblem(form.current);
    setDone({ of: now, ...attempt(() => workOut(read.numbers)) });
  };
  return {
    form,
    typed,
    set: (name, value) => setTyped((before) => ({ ...before, [name]: value })),
    problems: isTried ? { ...read.problems, ...choiceProblems, ...refused } : {},
    problem: refused[''],
    result: current && 'result' in current ? current.result : undefined,
    submit,
  };
}

function attempt<R>(workOut: () => R): { readonly result: R } | { readonly refused: RangeError } {
  try {
    return { result: workOut() };
  } catch (error) {
    if (error instanceof RangeError) return { refused: error };
    throw error;
  }
}

/** The computing core begins with the name of the field, which is said by its label; the empty name where it is none of the form. */
export function sayRefusal({ message }: RangeError, fields: FieldsOf<string>): Problems {
  const [name = '', rest = ''] = splitAtSpace(message);
  const field = name.split('.').findLast((part) => fields[part] !== undefined);
  const words = name.startsWith('totalsMmolPerKg') ? 'The amounts together' : name;
  return field === undefined ? { '': `${words} ${rest}.` } : { [field]: `${fields[field]?.label} ${rest}.` };
}

function splitAtSpace(text: string): readonly string[] {
  const at = text.indexOf(' ');
  return [text.slice(0, at), text.slice(at + 1)];
}
