import type { ProtocolName } from '../../../core/regimen/local/localProtocol.ts';
import type { Plan } from '../../../core/regimen/types.ts';
import { formatDate } from '../../format.ts';
import { useVisit } from './visitContext.ts';

export const sayProtocolName = ({ name, author, date }: ProtocolName): string =>
  `by the practice's own protocol "${name}", ${formatDate(date)}, ${author}`;

/** What a dentist may choose by the practice's own protocol. Nobody else can, and nothing proposes it. */
export function ByProtocol({ byProtocol = [] }: Pick<Plan, 'byProtocol'>) {
  const { session, bundle, sign } = useVisit();
  if (byProtocol.length === 0) return null;
  const maySign = session.member.roles.includes('dentist') && bundle.state === 'open';
  return (
    <div className="small">
      <p>A dentist may choose, and nothing proposes it:</p>
      <ul className="plain-list">
        {byProtocol.map(({ shelfItemId, name, protocol }) => (
          <li key={shelfItemId}>
            {name}, {sayProtocolName(protocol)}.{' '}
            {maySign && (
              <button type="button" className="action" onClick={() => sign(shelfItemId)}>
                Choose and sign<span className="sr-only"> {name}</span>
              </button>
            )}
          </li>
        ))}
      </ul>
    </div>
  );
}
