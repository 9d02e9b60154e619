import type { SessionView } from '../../api/apiTypes.ts';
import { content } from '../content.ts';
import { useRules } from '../data/queries.ts';
import { formatDate } from '../format.ts';
import { LoadState } from '../parts/LoadState.tsx';
import { PracticeLink } from './practice/PracticeLink.tsx';
import { Disagreements } from './rules/Disagreements.tsx';
import { FluorideRules, IntervalRules } from './rules/DoseRules.tsx';
import { FluidsLink } from './rules/FluidsLink.tsx';
import { LocalProtocols } from './rules/LocalProtocols.tsx';
import { Methods } from './rules/Methods.tsx';
import { SafetyRules } from './rules/SafetyRules.tsx';
import { Settings } from './rules/Settings.tsx';
import { SourcesAndStatus } from './rules/SourcesAndStatus.tsx';
import { SwabRules } from './rules/SwabRules.tsx';

const PARTS = [
  ['settings', 'Settings'],
  ['practice', 'Meters, swab lots and team'],
  ['methods', 'Methods'],
  ['swab', 'Swab'],
  ['safety', 'Safety rules'],
  ['disagreements', 'Where sources disagree'],
  ['own-protocols', 'Protocols of our own'],
  ['fluoride', 'Fluoride'],
  ['intervals', 'Intervals'],
  ['fluids', 'Fluids'],
  ['sources', 'Sources'],
] as const;

/** Every number the program uses, with where it comes from and how far that is trusted. */
export function RulesScreen({ session }: { readonly session: SessionView }) {
  const rules = useRules();
  return (
    <>
      <h1>Rules</h1>
      <p className="opening">
        Every number in use, where it comes from, and how far that is trusted. Content of {formatDate(content.versions.content)}, program{' '}
        {content.versions.code}.
      </p>
      <nav aria-label="Parts of this page" className="parts">
        <ul>
          {PARTS.map(([id, name]) => (
            <li key={id}>
              <a href={`#${id}`}>{name}</a>
            </li>
          ))}
        </ul>
      </nav>
      {rules.data ? (
        <Settings rules={rules.data} mayChange={session.member.roles.includes('lead')} />
      ) : (
        <LoadState query={rules} what="the settings" />
      )}
      <PracticeLink session={session} />
      <Methods />
      <SwabRules />
      {rules.data && <SafetyRules settings={rules.data.settings} />}
      {rules.data && <Disagreements rules={rules.data} mayChange={session.member.roles.includes('lead')} />}
      <LocalProtocols session={session} settings={rules.data?.settings} />
      {rules.data && <FluorideRules settings={rules.data.settings} />}
      <IntervalRules />
      <FluidsLink />
      <SourcesAndStatus />
    </>
  );
}
