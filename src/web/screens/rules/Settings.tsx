import { useQueryClient } from '@tanstack/react-query';
import { type FormEvent, useState } from 'react';
import type { Level } from '../../../core/risk/types.ts';
import type { PracticeSettings } from '../../../core/visit/types.ts';
import { protocolName } from '../../content.ts';
import { ApiError } from '../../data/api.ts';
import { type RulesView, saveSettings } from '../../data/queries.ts';
import { capitalise, formatMonths } from '../../format.ts';
import { OpenForm } from '../../parts/OpenForm.tsx';
import { sayAges } from './ageBands.ts';
import { NOT_SET, sayLegal } from './LegalLines.tsx';
import { NoteOrder } from './NoteOrder.tsx';
import { RegimenOrder } from './RegimenOrder.tsx';
import { PLACES, SettingsForm } from './SettingsForm.tsx';

const LEVELS: readonly Level[] = ['low', 'moderate', 'high', 'extreme'];

/** What the practice decided itself. */
export function Settings({ rules, mayChange }: { readonly rules: RulesView; readonly mayChange: boolean }) {
  const view = <SettingsView settings={rules.settings} />;
  return (
    <section id="settings" aria-label="Settings">
      <h2>Settings</h2>
      {mayChange ? (
        <OpenForm label="Change these settings" form={(close) => <SettingsForm rules={rules} close={close} />}>
          {view}
        </OpenForm>
      ) : (
        <>
          {view}
          <p className="hint">A lead of the practice can change these.</p>
        </>
      )}
      <Bitewings key={rules.version} rules={rules} mayChange={mayChange} />
      <RegimenOrder rules={rules} mayChange={mayChange} />
      <NoteOrder rules={rules} mayChange={mayChange} />
    </section>
  );
}

function SettingsView({ settings }: { readonly settings: PracticeSettings }) {
  return (
    <dl className="settings">
      <div>
        <dt>Law and labels of</dt>
        <dd className={settings.jurisdiction === 'unknown' ? 'unknown' : undefined}>{PLACES[settings.jurisdiction]}</dd>
      </div>
      {sayLegal(settings).map(([name, status]) => (
        <div key={name}>
          <dt>{name}</dt>
          <dd className={status === NOT_SET ? 'unknown' : undefined}>{status}</dd>
        </div>
      ))}
      {settings.methodByAge.map((m) => (
        <div key={m.fromAgeYears}>
          <dt>Method, {sayAges(m)}</dt>
          <dd>{protocolName(m.protocol)}</dd>
        </div>
      ))}
      <div>
        <dt>Low saliva alone</dt>
        <dd>{settings.lowSalivaMeansExtreme ? 'means extreme, as one teaching clinic reads the list' : 'does not mean extreme'}</dd>
      </div>
      <div>
        <dt>Chewing saliva is low</dt>
        <dd>at {settings.stimulatedFlowLowAtMostMlPerMin} mL/min or less; 0.5 and 0.7 are both in use</dd>
      </div>
      <div>
        <dt>Fluoride drops or tablets</dt>
        <dd>{settings.considersSupplements ? 'considered: the plan shows the schedule, and adds none' : 'not considered'}</dd>
      </div>
    </dl>
  );
}

type Months = Readonly<Record<Level, readonly [string, string]>>;

function Bitewings({ rules, mayChange }: { readonly rules: RulesView; readonly mayChange: boolean }) {
  const { settings, version } = rules;
  const client = useQueryClient();
  const [isChanging, setChanging] = useState(false);
  const [months, setMonths] = useState<Months>(() => typedMonths(settings.bitewingMonths));
  const [problem, setProblem] = useState<string | null>(null);
  const save = async (event: FormEvent) => {
    event.preventDefault();
    const bitewingMonths = parseMonths(months);
    if (!bitewingMonths) return setProblem('Whole months, the shorter time first.');
    try {
      await saveSettings({ ...settings, bitewingMonths }, version);
      setChanging(false);
      await client.invalidateQueries({ queryKey: ['rules'] });
    } catch (error) {
      if (!(error instanceof ApiError)) throw error;
      setProblem(error.status === 409 ? 'Changed elsewhere. Open this page again, then change it.' : error.message);
    }
  };
  return (
    <>
      <h3>Months between bitewings</h3>
      <p>
        The practice's own setting. The table of 2012 is superseded: it stands under Intervals for comparison and decides nothing.
        {settings.bitewingMonths === null && <span className="unknown"> Not set yet.</span>}
      </p>
      {!isChanging && settings.bitewingMonths && (
        <ul className="plain-list">
          {LEVELS.map((level) => (
            <li key={level}>
              {capitalise(level)}: {formatMonths(...(settings.bitewingMonths?.[level] ?? [0, 0]))}
            </li>
          ))}
        </ul>
      )}
      {isChanging && (
        <form onSubmit={(event) => void save(event)} className="bitewings">
          {LEVELS.map((level) => (
            <fieldset key={level}>
              <legend>{capitalise(level)}</legend>
              {([0, 1] as const).map((end) => (
                <label key={end}>
                  {end === 0 ? 'from' : 'to'}
                  <input
                    className="number"
                    inputMode="numeric"
                    value={months[level][end]}
                    onChange={(event) =>
                      setMonths({
                        ...months,
                        [level]: end === 0 ? [event.target.value, months[level][1]] : [months[level][0], event.target.value],
                      })
                    }
                  />
                </label>
              ))}
              months
            </fieldset>
          ))}
          <button type="submit" className="action primary">
            Save
          </button>
        </form>
      )}
      {problem && (
        <p className="problem" role="alert">
          {problem}
        </p>
      )}
      {mayChange && (
        <button type="button" className="link" onClick={() => setChanging(!isChanging)}>
          {isChanging ? 'Leave as it was' : 'Change these months'}
        </button>
      )}
    </>
  );
}

function typedMonths(months: PracticeSettings['bitewingMonths']): Months {
  const typed = (level: Level): readonly [string, string] => [String(months?.[level][0] ?? ''), String(months?.[level][1] ?? '')];
  return { low: typed('low'), moderate: typed('moderate'), high: typed('high'), extreme: typed('extreme') };
}

/** Undefined unless every level has two whole numbers of months, the first not above the second. */
export function parseMonths(typed: Months): Readonly<Record<Level, readonly [number, number]>> | undefined {
  const parsed = LEVELS.map((level) => [level, typed[level].map((text) => (/^\s*\d{1,3}\s*$/.test(text) ? Number(text) : 0))] as const);
  const isRight = parsed.every(([, [from = 0, to = 0]]) => from >= 1 && from <= to);
  return isRight ? (Object.fromEntries(parsed) as unknown as Readonly<Record<Level, readonly [number, number]>>) : undefined;
}
