import { useQueryClient } from '@tanstack/react-query';
import { type FormEvent, useRef, useState } from 'react';
import type { ChecksView } from '../../../api/swabChecks.ts';
import type { ControlTarget } from '../../../core/checks/control.ts';
import { cvOfLogVariance, sayPercent } from '../../../core/reading/sayNoise.ts';
import type { SwabLot } from '../../../core/reading/types.ts';
import { setTarget } from '../../data/checkQueries.ts';
import { useSend } from '../../data/useSend.ts';
import { formatDate, formatNumber } from '../../format.ts';
import { TextLine } from '../../parts/fields.tsx';
import { focusFirstProblem } from '../../parts/focusFirstProblem.ts';
import { OpenForm } from '../../parts/OpenForm.tsx';
import type { MeterToday } from './sayChecks.ts';

interface LotTargetProps {
  readonly lot: SwabLot;
  readonly meters: readonly MeterToday[];
  readonly plans: ChecksView['plans'];
  readonly mayChange: boolean;
}

/** What the controls of a lot are held against on each meter, the targets before it, and the form to set one by hand. */
export function LotTarget({ lot, meters, plans, mayChange }: LotTargetProps) {
  return meters.map((today) => {
    const { meter, plan, judged } = today;
    const found = judged.find(({ lotId }) => lotId === lot.id);
    const target = found?.target ?? plan?.targets.find(({ lotId }) => lotId === lot.id);
    const entry = plans.find((one) => one.plan.meterId === meter.id);
    const past = plan?.pastTargets?.filter(({ lotId }) => lotId === lot.id) ?? [];
    return (
      <div key={meter.id}>
        {meters.length > 1 && `${meter.name}: `}
        {target ? sayTarget(target) : found?.waitsFor ? `building up: ${found.waitsFor}` : 'none yet'}
        {past.map((one) => (
          <p key={one.until} className="hint">
            Until {formatDate(one.until)}: {sayTarget(one)}
          </p>
        ))}
        {mayChange && entry && (
          <div>
            <OpenForm
              label="Set by hand"
              about={`the target of lot ${lot.name} on ${meter.name}`}
              form={(close) => (
                <TargetForm of={{ meterId: meter.id, lotId: lot.id }} target={target} version={entry.version} close={close} />
              )}
            />
          </div>
        )}
      </div>
    );
  });
}

/** "3,050 RLU, spread 12 %, from the comparison" */
function sayTarget({ meanLn, sdLn, from, count, set, since }: ControlTarget): string {
  const size = `${formatNumber(Math.round(Math.exp(meanLn)))} RLU, spread ${sayPercent(cvOfLogVariance(sdLn ** 2))}`;
  if (from === 'hand') return `${size}, set by ${set?.by ?? 'hand'}${since ? `, ${formatDate(since)}` : ''}: ${set?.reason ?? 'no reason'}`;
  return `${size}, from ${from === 'comparison' ? 'the comparison' : `its first ${count} controls`}`;
}

interface TargetFormProps {
  readonly of: { readonly meterId: string; readonly lotId: string };
  readonly target: ControlTarget | undefined;
  readonly version: number;
  readonly close: (said?: string) => void;
}

const asNumber = (typed: string): number => Number(typed.replace(/[,\s](?=\d{3}\b)/g, '').replace(',', '.'));

function TargetForm({ of, target, version, close }: TargetFormProps) {
  const client = useQueryClient();
  const form = useRef<HTMLFormElement>(null);
  const { send, isSending, problem } = useSend();
  const [mean, setMean] = useState(target ? String(Math.round(Math.exp(target.meanLn))) : '');
  const [spread, setSpread] = useState(target ? String(Math.round(100 * cvOfLogVariance(target.sdLn ** 2))) : '');
  const [reason, setReason] = useState('');
  const [isTried, setTried] = useState(false);
  const isMeanWrong = !(mean.trim() !== '' && asNumber(mean) > 0 && Number.isFinite(asNumber(mean)));
  const isSpreadWrong = !(spread.trim() !== '' && asNumber(spread) > 0 && asNumber(spread) <= 100);
  const submit = (event: FormEvent) => {
    event.preventDefault();
    setTried(true);
    if (isMeanWrong || isSpreadWrong || reason.trim() === '') return focusFirstProblem(form.current);
    void send(async () => {
      await setTarget(of, { meanRlu: asNumber(mean), cv: asNumber(spread) / 100, reason: reason.trim(), version });
      close('The target is set.');
      await client.invalidateQueries({ queryKey: ['checks'] });
    });
  };
  return (
    <form ref={form} noValidate onSubmit={submit} aria-label="Target by hand">
      <TextLine
        label="Mean of the controls"
        kind="number"
        unit="RLU"
        value={mean}
        problem={isTried && isMeanWrong ? 'A number of RLU above 0 is needed.' : undefined}
        onChange={setMean}
      />
      <TextLine
        label="Spread"
        kind="number"
        unit="%"
        value={spread}
        problem={isTried && isSpreadWrong ? 'A percentage above 0, 100 at most.' : undefined}
        hint="How far controls scatter about the mean, as a coefficient of variation."
        onChange={setSpread}
      />
      <TextLine
        label="Because"
        value={reason}
        problem={isTried && reason.trim() === '' ? 'A reason is needed.' : undefined}
        hint="Kept with the target. It holds for controls from now on; earlier ones stay held against theirs."
        onChange={setReason}
      />
      {problem && (
        <p className="problem" role="alert">
          {problem}
        </p>
      )}
      <div className="actions">
        <button type="submit" className="action primary" disabled={isSending}>
          Set the target
        </button>
        <button type="button" className="action" onClick={() => close()}>
          Leave
        </button>
      </div>
    </form>
  );
}
