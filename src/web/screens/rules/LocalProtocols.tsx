import { useQueryClient } from '@tanstack/react-query';
import type { SessionView } from '../../../api/apiTypes.ts';
import type { LocalProtocolView } from '../../../api/localProtocols.ts';
import { settleTables } from '../../../core/regimen/disagreement/settleTables.ts';
import type { LocalProtocol } from '../../../core/regimen/local/localProtocol.ts';
import type { PracticeSettings } from '../../../core/visit/types.ts';
import { content } from '../../content.ts';
import { retireLocalProtocol, useLocalProtocols } from '../../data/localProtocolQueries.ts';
import { useSend } from '../../data/useSend.ts';
import { formatDate, joinWords } from '../../format.ts';
import { LoadState } from '../../parts/LoadState.tsx';
import { OpenForm } from '../../parts/OpenForm.tsx';
import { ReasonForm } from '../../parts/ReasonForm.tsx';
import { LocalProtocolForm } from './LocalProtocolForm.tsx';

interface LocalProtocolsProps {
  readonly session: SessionView;
  /** Undefined while they are read. */
  readonly settings: PracticeSettings | undefined;
}

/** Rules that the practice wrote itself: a dentist writes and retires them, the others read. */
export function LocalProtocols({ session, settings }: LocalProtocolsProps) {
  const protocols = useLocalProtocols();
  const tables = settleTables(content.regimen, settings?.disagreements);
  const isDentist = session.member.roles.includes('dentist');
  return (
    <section id="own-protocols" aria-label="Protocols of our own">
      <h2>Protocols of our own</h2>
      <p>
        For what is never proposed by itself, a practice may write down for whom a dentist may choose it. Every safety rule still holds, and
        each use is still signed. Hypochlorite is off without such a protocol: never above {content.regimen.highestHypochloritePercent} %,
        never under 18, never with chlorhexidine. No trial on decay was found for it.
      </p>
      {!protocols.data ? (
        <LoadState query={protocols} what="the protocols" />
      ) : protocols.data.length === 0 ? (
        <p className="hint">There is none.</p>
      ) : (
        <ul className="plain-list">
          {protocols.data.map((view) => (
            <li key={view.protocol.id} data-protocol={view.protocol.id}>
              <ProtocolLines protocol={view.protocol} />
              {isDentist && !view.protocol.retired && <Retire view={view} />}
            </li>
          ))}
        </ul>
      )}
      {isDentist ? (
        <div className="actions">
          <OpenForm
            label="Write a protocol"
            isAction
            form={(close) => <LocalProtocolForm today={session.today} tables={tables} close={close} />}
          />
        </div>
      ) : (
        <p className="hint">A dentist writes and retires protocols.</p>
      )}
    </section>
  );
}

function ProtocolLines({ protocol }: { readonly protocol: LocalProtocol }) {
  const { name, author, date, retired } = protocol;
  return (
    <>
      <h3>{name}</h3>
      <p>
        Written and signed by {author}; holds from {formatDate(date)}
        {retired && (
          <span className="unknown">
            , retired on {formatDate(retired.on)} by {retired.by}, because {retired.reason}
          </span>
        )}
        .
      </p>
      <p>{sayProtocol(protocol)}</p>
    </>
  );
}

/** For whom, of what, how often and how long, and who is left out. */
export function sayProtocol(protocol: LocalProtocol): string {
  const { agentId, percentAtMost, timesPerWeekAtMost, courseDaysAtMost, levels, needs, fromAgeYears, belowAgeYears } = protocol;
  const agent = content.regimen.agents.find((a) => a.id === agentId)?.name ?? agentId;
  const strength = percentAtMost === undefined ? '' : `, at most ${percentAtMost} %`;
  const ages = belowAgeYears === undefined ? `from ${fromAgeYears} years` : `from ${fromAgeYears} to under ${belowAgeYears} years`;
  const excluded = exclusionNames(protocol);
  const without = excluded.length > 0 ? ` Not with ${joinWords(excluded)}.` : '';
  return (
    `${agent}${strength}, at most ${timesPerWeekAtMost} times a week for at most ${courseDaysAtMost} days, for ${joinWords(needs.map((n) => n.replaceAll('-', ' ')))}: ` +
    `level ${levels.join(' or ')}, ${ages}.${without} What the safety rules stop comes on top.`
  );
}

function exclusionNames({ exclusions: { conditions, medicines, allergies, pregnant } }: LocalProtocol): readonly string[] {
  const { regimen } = content;
  return [
    ...conditions.map((id) => regimen.conditions[id]?.label ?? id),
    ...medicines.map((id) => regimen.medicines[id]?.label ?? id),
    ...allergies.map((id) => `allergy to ${regimen.allergies[id]?.label ?? id}`),
    ...(pregnant ? ['pregnancy or breast-feeding'] : []),
  ];
}

function Retire({ view }: { readonly view: LocalProtocolView }) {
  const client = useQueryClient();
  const sending = useSend();
  return (
    <OpenForm
      label="retire"
      about={view.protocol.name}
      form={(close) => (
        <ReasonForm
          about={`Retire ${view.protocol.name}`}
          hint="from today on it does not hold; it stays on the record"
          saveWords="Retire it"
          problem={sending.problem}
          onGive={(reason) =>
            void sending.send(async () => {
              await retireLocalProtocol(view, reason);
              await client.invalidateQueries({ queryKey: ['local-protocols'] });
              close(`${view.protocol.name} is retired.`);
            })
          }
          onLeave={() => close()}
        />
      )}
    />
  );
}
