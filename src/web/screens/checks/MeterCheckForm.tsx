import { useQueryClient } from '@tanstack/react-query';
import { type FormEvent, useRef, useState } from 'react';
import { CHECKED_BY_WORDS, isWithinLimits, type MeterCheckBy } from '../../../core/checks/meterCheck.ts';
import { recordMeterCheck } from '../../data/checkQueries.ts';
import { useSend } from '../../data/useSend.ts';
import { ChoiceLine, type Option, TextLine } from '../../parts/fields.tsx';
import { focusFirstProblem } from '../../parts/focusFirstProblem.ts';
import { SaveBar } from '../../parts/SaveBar.tsx';
import { parseNumber, readingProblem } from '../visit/swabLines.ts';
import { type CheckedMeter, sayLimits } from './sayMeterChecks.ts';

const BY: readonly Option<MeterCheckBy>[] = (['device', 'solution'] as const).map((id) => ({ id, label: CHECKED_BY_WORDS[id] }));

type Outcome = 'not-said' | 'passed' | 'not-passed';

interface MeterCheckFormProps {
  readonly checked: CheckedMeter;
  readonly close: (said?: string) => void;
}

/** What the meter was checked by, what it showed, and whether that is a pass: by the limits of its device, or as a member says. */
export function MeterCheckForm({ checked: { meter, entry }, close }: MeterCheckFormProps) {
  const client = useQueryClient();
  const form = useRef<HTMLFormElement>(null);
  const sending = useSend();
  const [checkedBy, setCheckedBy] = useState<MeterCheckBy>('device');
  const [typed, setTyped] = useState('');
  const [outcome, setOutcome] = useState<Outcome>('not-said');
  const [temperature, setTemperature] = useState('');
  const [words, setWords] = useState('');
  const [isTried, setTried] = useState(false);

  const number = readNumber(typed);
  const rlu = typeof number === 'string' ? undefined : number?.rlu;
  const limits = entry?.plan.limits;
  const within = isWithinLimits(rlu, checkedBy, limits);
  const degrees = temperature.trim() === '' ? undefined : Number(temperature.replace(',', '.'));
  const found = {
    number: typeof number === 'string' ? number : number && readingProblem(number, meter, []),
    outcome: within === undefined && outcome === 'not-said' ? 'Say whether it passed.' : undefined,
    temperature: degrees !== undefined && !Number.isFinite(degrees) ? 'A number of degrees Celsius, or nothing.' : undefined,
  };
  const problems: Partial<typeof found> = isTried ? found : {};
  const submit = (event: FormEvent) => {
    event.preventDefault();
    setTried(true);
    if (Object.values(found).some(Boolean) || typeof number === 'string') return focusFirstProblem(form.current);
    void sending.send(async () => {
      const { passed } = await recordMeterCheck({
        ...{ meterId: meter.id, checkedBy },
        ...number,
        ...(within === undefined && { passed: outcome === 'passed' }),
        ...(degrees !== undefined && { temperatureDegC: degrees }),
        ...(words.trim() && { words: words.trim() }),
      });
      await client.invalidateQueries({ queryKey: ['checks'] });
      close(passed ? 'Noted: passed.' : 'Noted: did not pass.');
    });
  };
  return (
    <form ref={form} noValidate onSubmit={submit} aria-label={`A check of ${meter.name}`}>
      <ChoiceLine label="Checked by" value={checkedBy} options={BY} onChange={setCheckedBy} />
      <TextLine
        label="The meter showed"
        kind="number"
        unit="RLU"
        value={typed}
        problem={problems.number}
        hint={
          limits && checkedBy === 'device'
            ? `The limits on the device are ${sayLimits(limits)}. Left empty: no number.`
            : 'Left empty where the check gives no number.'
        }
        onChange={setTyped}
      />
      {within === undefined ? (
        <ChoiceLine
          label="Outcome"
          value={outcome}
          options={[
            { id: 'passed', label: 'passed' },
            { id: 'not-passed', label: 'did not pass', hint: 'readings of this meter are not counted until a check passes' },
          ]}
          problem={problems.outcome}
          onChange={setOutcome}
        />
      ) : (
        <p aria-live="polite">{within ? 'Within the limits of the device: passed.' : 'Outside the limits of the device: did not pass.'}</p>
      )}
      <TextLine
        label="Temperature of the room"
        kind="number"
        unit="°C"
        value={temperature}
        problem={problems.temperature}
        onChange={setTemperature}
      />
      <TextLine label="Note" value={words} onChange={setWords} />
      <SaveBar saving={sending} problemCount={Object.values(problems).filter(Boolean).length} onLeave={() => close()} />
    </form>
  );
}

/** What was typed as a number of the meter; its problem in words; undefined where nothing was typed. */
function readNumber(typed: string) {
  if (typed.trim() === '') return undefined;
  const reply = parseNumber(typed, { kind: 'number', min: 0, bounds: true });
  if ('problem' in reply) return reply.problem;
  return reply.how === 'asked' ? { rlu: Number(reply.value), bound: reply.bound ?? ('exact' as const) } : 'A number is needed here.';
}
