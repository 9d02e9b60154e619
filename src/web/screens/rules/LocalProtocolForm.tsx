import { useQueryClient } from '@tanstack/react-query';
import { type FormEvent, useRef, useState } from 'react';
import { checkLocalProtocol } from '../../../core/regimen/local/checkLocalProtocol.ts';
import type { LocalProtocol } from '../../../core/regimen/local/localProtocol.ts';
import type { RegimenTables } from '../../../core/regimen/tables.ts';
import type { Level } from '../../../core/risk/types.ts';
import { content } from '../../content.ts';
import { writeLocalProtocol } from '../../data/localProtocolQueries.ts';
import { useSend } from '../../data/useSend.ts';
import { parseDecimal } from '../../parseDecimal.ts';
import { SelectLine, TextLine, TickLine, TicksLine } from '../../parts/fields.tsx';
import { focusFirstProblem } from '../../parts/focusFirstProblem.ts';
import { SaveBar } from '../../parts/SaveBar.tsx';
import { parseBirthday as parseDay } from '../findPeople.ts';

const LEVELS: readonly Level[] = ['low', 'moderate', 'high', 'extreme'];
const listed = (list: Readonly<Record<string, { readonly label: string }>>) =>
  Object.entries(list).map(([id, { label }]) => ({ id, label }));
const EMPTY = { name: '', from: '', agentId: 'NAOCL', percent: '', timesPerWeek: '', days: '', fromAge: '18', belowAge: '' };

/** As typed; what is not a number stays not a number, so that the check names the field. */
function toProtocol(typed: typeof EMPTY, ticked: Ticked, { agents }: RegimenTables): LocalProtocol {
  const number = (text: string) => parseDecimal(text) ?? Number.NaN;
  const agent = agents.find((a) => a.id === typed.agentId);
  return {
    id: 'new',
    author: '',
    name: typed.name.trim(),
    date: parseDay(typed.from) ?? '',
    agentId: typed.agentId,
    ...(typed.percent.trim() !== '' && { percentAtMost: number(typed.percent) }),
    timesPerWeekAtMost: number(typed.timesPerWeek),
    courseDaysAtMost: number(typed.days),
    levels: ticked.levels,
    needs: agent?.meets ?? [],
    fromAgeYears: number(typed.fromAge),
    ...(typed.belowAge.trim() !== '' && { belowAgeYears: number(typed.belowAge) }),
    exclusions: {
      conditions: ticked.conditions,
      medicines: ticked.medicines,
      allergies: ticked.allergies,
      ...(ticked.pregnant && { pregnant: true }),
    },
  };
}

interface Ticked {
  readonly levels: readonly Level[];
  readonly conditions: readonly string[];
  readonly medicines: readonly string[];
  readonly allergies: readonly string[];
  readonly pregnant: boolean;
}

interface LocalProtocolFormProps {
  readonly today: string;
  /** As they hold in this practice. */
  readonly tables: RegimenTables;
  readonly close: (said?: string) => void;
}

export function LocalProtocolForm({ today, tables, close }: LocalProtocolFormProps) {
  const client = useQueryClient();
  const form = useRef<HTMLFormElement>(null);
  const sending = useSend();
  const [typed, setTyped] = useState({ ...EMPTY, from: today.replaceAll('-', '') });
  const [ticked, setTicked] = useState<Ticked>({ levels: [], conditions: [], medicines: [], allergies: [], pregnant: true });
  const [isTried, setTried] = useState(false);
  const put = (field: keyof typeof EMPTY) => (value: string) => setTyped({ ...typed, [field]: value });
  const tick = (list: 'conditions' | 'medicines' | 'allergies') => (ids: readonly string[]) => setTicked({ ...ticked, [list]: ids });
  const protocol = toProtocol(typed, ticked, tables);
  const problems = checkLocalProtocol(protocol, tables);
  const chosenOnly = tables.agents.filter((agent) => agent.byChoiceOnly && agent.meets.length > 0);
  const problem = (field: keyof LocalProtocol) => (isTried ? problems.find((p) => p.field === field)?.says : undefined);
  const submit = (event: FormEvent) => {
    event.preventDefault();
    setTried(true);
    if (problems.length > 0) return focusFirstProblem(form.current);
    void sending.send(async () => {
      const { id: _, author: __, ...written } = protocol;
      await writeLocalProtocol(written);
      await client.invalidateQueries({ queryKey: ['local-protocols'] });
      close(`${protocol.name} is written and signed.`);
    });
  };
  return (
    <form ref={form} noValidate onSubmit={submit} aria-label="New protocol">
      <TextLine label="Name" value={typed.name} problem={problem('name')} onChange={put('name')} />
      <TextLine
        label="First day"
        kind="number"
        value={typed.from}
        problem={problem('date')}
        hint="Year, month and day, like 20270307."
        onChange={put('from')}
      />
      <SelectLine
        label="Of what"
        value={typed.agentId}
        problem={problem('agentId') ?? problem('needs')}
        options={chosenOnly.map(({ id, name }) => ({ id, label: name }))}
        onChange={put('agentId')}
      />
      <TextLine
        label="Strength at most"
        kind="number"
        unit="%"
        value={typed.percent}
        problem={problem('percentAtMost')}
        onChange={put('percent')}
      />
      <TextLine
        label="How often at most"
        kind="number"
        unit="times a week"
        value={typed.timesPerWeek}
        problem={problem('timesPerWeekAtMost')}
        onChange={put('timesPerWeek')}
      />
      <TextLine
        label="How long at most"
        kind="number"
        unit="days"
        value={typed.days}
        problem={problem('courseDaysAtMost')}
        onChange={put('days')}
      />
      <TicksLine
        label="At confirmed level"
        options={LEVELS.map((level) => ({ id: level, label: level }))}
        ticked={ticked.levels}
        problem={problem('levels')}
        onChange={(ids) => setTicked({ ...ticked, levels: LEVELS.filter((level) => ids.includes(level)) })}
      />
      <TextLine
        label="From age"
        kind="number"
        unit="years"
        value={typed.fromAge}
        problem={problem('fromAgeYears')}
        onChange={put('fromAge')}
      />
      <TextLine
        label="Under age"
        kind="number"
        unit="years"
        value={typed.belowAge}
        problem={problem('belowAgeYears')}
        hint="Empty: no end."
        onChange={put('belowAge')}
      />
      <TickLine
        label="Not in pregnancy"
        says="nor when breast-feeding"
        isTicked={ticked.pregnant}
        onChange={(pregnant) => setTicked({ ...ticked, pregnant })}
      />
      <TicksLine
        label="Not with"
        isLong
        options={listed(content.regimen.conditions)}
        ticked={ticked.conditions}
        onChange={tick('conditions')}
      />
      <TicksLine
        label="Not with medicines"
        isLong
        options={listed(content.regimen.medicines)}
        ticked={ticked.medicines}
        onChange={tick('medicines')}
      />
      <TicksLine
        label="Not with an allergy to"
        isLong
        options={listed(content.regimen.allergies)}
        ticked={ticked.allergies}
        onChange={tick('allergies')}
      />
      <SaveBar
        saving={sending}
        problemCount={isTried ? problems.length : 0}
        saveWords="Write and sign the protocol"
        onLeave={() => close()}
      />
    </form>
  );
}
