import { type FormEvent, useState } from 'react';
import type { PracticeSettings } from '../../../core/visit/types.ts';
import { content, findQuestion, protocolName } from '../../content.ts';
import type { RulesView } from '../../data/queries.ts';
import { capitalise, formatMonths } from '../../format.ts';
import type { SaidLines } from '../../parts/differences.ts';
import { ChoiceLine, SelectLine } from '../../parts/fields.tsx';
import { SaveBar } from '../../parts/SaveBar.tsx';
import { SourceList, Why } from '../../parts/Sources.tsx';
import { fitsBand, joinBands, sayAges, splitBands } from './ageBands.ts';
import { LegalLines, sayLegal } from './LegalLines.tsx';
import { useReread, useSettingsSave } from './useSettingsSave.ts';

export const PLACES = {
  UK: 'United Kingdom',
  US: 'United States',
  EU: 'European Union',
  'by-hand': 'another place: the strictest ages apply, legal status set below',
  unknown: 'not said: the strictest rules and ages apply',
} as const satisfies Readonly<Record<PracticeSettings['jurisdiction'], string>>;

/** What the lists themselves say of low saliva, alone and with a high level. */
const LOW_SALIVA_SOURCES = content.protocols.flatMap((t) => ('lifts' in t && t.liftAloneSource ? [t.lifts.source, t.liftAloneSource] : []));

const yesNo = (value: boolean) => (value ? 'yes' : 'no');

function sayMonths(months: PracticeSettings['bitewingMonths']): string {
  if (months === null) return 'not set yet';
  return Object.entries(months)
    .map(([level, [from, to]]) => `${level} ${formatMonths(from, to)}`)
    .join(', ');
}

/** The settings of the practice in words. */
function saySettings(settings: PracticeSettings): SaidLines {
  return [
    ['Law and labels of', PLACES[settings.jurisdiction]],
    ...sayLegal(settings),
    ...settings.methodByAge.map((m) => [`Method, ${sayAges(m)}`, protocolName(m.protocol)] as const),
    ['Low saliva alone means extreme', yesNo(settings.lowSalivaMeansExtreme)],
    ['Chewing saliva is low at or below', `${settings.stimulatedFlowLowAtMostMlPerMin} mL/min`],
    ['Fluoride drops or tablets', settings.considersSupplements ? 'considered: the schedule is shown' : 'not considered'],
    ['Months between bitewings', sayMonths(settings.bitewingMonths)],
  ];
}

/** What a lead decides for the practice, with what the sources disagree about beside each choice. */
export function SettingsForm({ rules, close }: { readonly rules: RulesView; readonly close: (said?: string) => void }) {
  const [settings, setSettings] = useState(rules.settings);
  const [bands, setBands] = useState(() => splitBands(rules.settings.methodByAge, content.protocols));
  const reread = useReread();
  const saving = useSettingsSave(rules, close);
  const change = (part: Partial<PracticeSettings>) => setSettings({ ...settings, ...part });
  const submit = (event: FormEvent) => {
    event.preventDefault();
    void saving.save({ ...settings, methodByAge: joinBands(bands) });
  };
  return (
    <form onSubmit={submit} aria-label="Settings of the practice">
      <ChoiceLine
        label="Law and labels of"
        value={settings.jurisdiction}
        options={(['UK', 'US', 'EU', 'by-hand', 'unknown'] as const).map((id) => ({ id, label: capitalise(PLACES[id]) }))}
        hint="Ages, signatures and label amounts differ by place; see Safety rules."
        onChange={(jurisdiction) => change({ jurisdiction })}
      />
      <LegalLines settings={settings} onChange={(legal) => change({ legal })} />
      {bands.map((band, i) => (
        <SelectLine
          key={band.fromAgeYears}
          label={`Method, ${sayAges(band)}`}
          value={band.protocol}
          options={[
            ...(band.protocol === '' ? [{ id: '', label: 'no list: no level for these ages' }] : []),
            ...content.protocols.filter((t) => fitsBand(t, band)).map((t) => ({ id: t.id, label: t.screenName })),
          ]}
          hint={i === 0 ? 'Lists meant for these ages. They differ and none is the truth; the others stay under "compare".' : undefined}
          onChange={(protocol) => setBands(bands.map((b) => (b === band ? { ...b, protocol } : b)))}
        />
      ))}
      <ChoiceLine
        label="Low saliva alone"
        value={settings.lowSalivaMeansExtreme ? 'extreme' : 'not'}
        options={[
          { id: 'not', label: 'Does not mean extreme', hint: 'as the form of 2019 prints it: high, and saliva low' },
          { id: 'extreme', label: 'Means extreme', hint: 'as one teaching clinic reads it: stricter' },
        ]}
        hint={
          <>
            The sources disagree. It counts for Four-level, 2019 only.{' '}
            <Why label="sources" about="low saliva alone">
              <SourceList sources={LOW_SALIVA_SOURCES} />
            </Why>
          </>
        }
        onChange={(choice) => change({ lowSalivaMeansExtreme: choice === 'extreme' })}
      />
      <ChoiceLine
        label="Chewing saliva is low"
        value={String(settings.stimulatedFlowLowAtMostMlPerMin) as '0.5' | '0.7'}
        options={[
          { id: '0.7', label: 'at 0.7 mL/min or less', hint: 'calls more people low' },
          { id: '0.5', label: 'at 0.5 mL/min or less', hint: 'calls fewer people low' },
        ]}
        hint={
          <>
            Both limits are in use; the sources disagree.{' '}
            <Why label="sources" about="low chewing saliva">
              <SourceList sources={findQuestion('stimulated_flow')?.sources ?? []} />
            </Why>
          </>
        }
        onChange={(limit) => change({ stimulatedFlowLowAtMostMlPerMin: limit === '0.5' ? 0.5 : 0.7 })}
      />
      <ChoiceLine
        label="Fluoride drops or tablets"
        value={settings.considersSupplements ? 'considered' : 'not'}
        options={[
          { id: 'not', label: 'Not considered', hint: 'nothing is shown' },
          { id: 'considered', label: 'Considered', hint: 'the plan shows what the published schedule says for age and water' },
        ]}
        hint="None is ever added to a plan: a physician or dentist decides. Sources disagree about them."
        onChange={(choice) => change({ considersSupplements: choice === 'considered' })}
      />
      <SaveBar
        saving={saving}
        say={saySettings}
        onLeave={() => {
          void reread();
          close();
        }}
      />
    </form>
  );
}
