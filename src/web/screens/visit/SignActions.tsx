import { useState } from 'react';
import type { StandingOrderView } from '../../../api/signing.ts';
import type { GivenView } from '../../../api/stock.ts';
import { saySigner } from '../../../core/regimen/saySigner.ts';
import { coverOf, sayCovers, sayLeft } from '../../../core/regimen/signatureCover.ts';
import type { Exclusion, Plan, PlanLine, SignedBy } from '../../../core/regimen/types.ts';
import { useStandingOrders } from '../../data/signingQueries.ts';
import { useGiven } from '../../data/stockQueries.ts';
import { formatDate } from '../../format.ts';
import { Key } from '../../parts/Key.tsx';
import { Link } from '../../parts/Link.tsx';
import { OpenForm } from '../../parts/OpenForm.tsx';
import { ReasonForm } from '../../parts/ReasonForm.tsx';
import { SignForm } from '../signing/SignForm.tsx';
import { useVisit } from './visitContext.ts';

/** Where the signature of a line stands, and on what it was given. */
export function ReleaseState({ line, signers }: { readonly line: PlanLine; readonly signers: readonly string[] }) {
  const { isShownToPatient } = useVisit();
  if (line.state === 'waiting-for-signature') {
    const whose = signers.length === 1 ? `${signers[0]}'s signature` : 'a signature';
    return <span className="unknown waits block">waiting for {whose}</span>;
  }
  if (line.state !== 'signed' || !line.signedBy) return null;
  const { at, override } = line.signedBy;
  return (
    <span className="aside block">
      signed by {saySigner(line.signedBy, formatDate)}, {formatDate(at)}
      {!isShownToPatient && line.use.atVisit !== true && <CoverState line={line} signedBy={line.signedBy} />}
      {override && !isShownToPatient && `; against rule ${override.ruleId}, because ${override.reason}`}
    </span>
  );
}

/** For how many packs it is signed, to which day, and how many are left. */
function CoverState({ line, signedBy }: { readonly line: PlanLine; readonly signedBy: SignedBy }) {
  const { bundle } = useVisit();
  const { data } = useGiven(bundle.visitId);
  const covers = `; for ${sayCovers(signedBy, formatDate)}`;
  if (!data) return covers;
  // Whether a standing order has ended is looked at where a pack goes.
  const { left, over } = coverOf(signedBy, { given: packsGiven(data.moves, line.shelfItemId), today: data.today, orderHolds: true });
  return over === null ? (
    `${covers}, ${sayLeft(left)}`
  ) : (
    <>
      {covers}, <span className="unknown">{over === 'until' ? 'that day is past' : sayLeft(left)}</span>
    </>
  );
}

const packsGiven = (moves: GivenView['moves'], id: string): number =>
  -moves.filter((move) => move.shelfItemId === id && move.takenBack === null).reduce((sum, { quantity }) => sum + quantity, 0);

/** What this member may do with a line: sign it in person or on a standing order, not release it, take it back. */
export function SignActions({ line }: { readonly line: PlanLine }) {
  const { session, isShownToPatient } = useVisit();
  if (isShownToPatient || line.state === 'proposed') return null;
  const isDentist = session.member.roles.includes('dentist');
  if (line.state === 'signed') {
    const isOwnOnOrder = line.signedBy?.standingOrder !== undefined && line.signedBy.name === session.member.name;
    if (!isDentist && !isOwnOnOrder) return null;
    return (
      <div className="sign-actions signed">
        <TakeBack id={line.shelfItemId} name={line.name} did="signature" />
        {isDentist && <SignFor line={line} label="Sign anew, for more packs or to another day" />}
      </div>
    );
  }
  return isDentist ? <SignOrRefuse line={line} /> : <SignOnOrder line={line} />;
}

function SignOrRefuse({ line }: { readonly line: PlanLine }) {
  const { sign, refuse } = useVisit();
  return (
    <div className="actions sign-actions">
      <button type="button" className="action" aria-keyshortcuts="s" onClick={() => void sign(line.shelfItemId)}>
        <Key>s</Key> {signWords(line)}
      </button>
      <SignFor line={line} label={SIGN_FOR} />
      <OpenForm
        label="Do not release"
        about={line.name}
        isAction
        shortcut="r"
        form={(close) => (
          <ReasonForm
            about={`Do not release ${line.name}`}
            saveWords="Do not release"
            onGive={(reason) => refuse(line.shelfItemId, reason)}
            onLeave={() => close()}
          />
        )}
      />
    </div>
  );
}

/** What one key signs for. A pack that is used at the visit is not counted. */
const signWords = ({ use }: PlanLine) => (use.atVisit === true ? 'Sign' : 'Sign for one pack, no last day');
const SIGN_FOR = 'Sign for more packs, or to a day';

interface SignForProps {
  readonly line: PlanLine;
  readonly label: string;
  readonly order?: StandingOrderView | undefined;
}

/** The same signature with a number of packs and a last day, for what is used at home. */
function SignFor({ line, label, order }: SignForProps) {
  const { sign, problem, bundle } = useVisit();
  const { data } = useGiven(bundle.visitId);
  if (line.use.atVisit === true || !data) return null;
  const given = packsGiven(data.moves, line.shelfItemId);
  return (
    <OpenForm
      label={label}
      about={line.name}
      isAction
      shortcut="p"
      form={(close) => (
        <SignForm
          about={`Sign ${line.name}`}
          limits={{ today: data.today, given, order }}
          problem={problem}
          onSign={(covers) => void sign(line.shelfItemId, { ...covers, standingOrderId: order?.id }).then((isDone) => isDone && close())}
          onLeave={() => close()}
        />
      )}
    />
  );
}

/** A hygienist signs on an order that names the item and holds on the day of the visit. */
function SignOnOrder({ line }: { readonly line: PlanLine }) {
  const { session, sign, input } = useVisit();
  const { data: orders } = useStandingOrders();
  const { onDate } = input.visit;
  if (!session.member.roles.includes('hygienist')) return null;
  const order = orders?.find(
    (o) => o.holds && o.shelfItemIds.includes(line.shelfItemId) && o.date <= onDate && (o.until === undefined || onDate <= o.until),
  );
  if (!order) return null;
  return (
    <div className="actions sign-actions">
      <button
        type="button"
        className="action"
        aria-keyshortcuts="s"
        onClick={() => void sign(line.shelfItemId, { standingOrderId: order.id })}
      >
        <Key>s</Key> Sign on the order "{order.name}" of {formatDate(order.date)}
        {line.use.atVisit !== true && ', for one pack'}
      </button>
      <SignFor line={line} label={SIGN_FOR} order={order} />
    </div>
  );
}

interface TakeBackProps {
  readonly id: string;
  readonly name: string;
  readonly did: 'signature' | 'refusal';
}

/** One key while nothing is out of the house; afterwards with a reason, which the server asks for. */
function TakeBack({ id, name, did }: TakeBackProps) {
  const { isClosed, withdraw } = useVisit();
  const [needsReason, setNeedsReason] = useState(false);
  const [isOpen, setOpen] = useState(false);
  const press = async () => {
    if (!isClosed && !needsReason && (await withdraw(id))) return;
    setNeedsReason(true);
    setOpen(true);
  };
  if (isOpen) {
    return (
      <ReasonForm
        about={`Take back the ${did} of ${name}`}
        hint="printed or closed already, so a reason is kept on the record"
        saveWords={`Take back the ${did}`}
        onGive={(reason) => void withdraw(id, reason)}
        onLeave={() => setOpen(false)}
      />
    );
  }
  return (
    <div className="actions sign-actions">
      <button type="button" className="action" aria-keyshortcuts="u" data-take-back onClick={() => void press()}>
        <Key>u</Key> Take back the {did}
      </button>
    </div>
  );
}

/** Items that a dentist did not release: by whom and why. The patient sees that it is not released, not why. */
export function NotReleased({ refused = [] }: Pick<Plan, 'refused'>) {
  const { session, isShownToPatient } = useVisit();
  return refused.map(({ shelfItemId, name, by, at, reason }) => (
    <li key={shelfItemId} data-refused={shelfItemId}>
      {name}: not released by {by}, {formatDate(at)}
      {!isShownToPatient && `, because ${reason}`}.
      {!isShownToPatient && session.member.roles.includes('dentist') && <TakeBack id={shelfItemId} name={name} did="refusal" />}
    </li>
  ));
}

interface OverridesProps {
  readonly stopped: readonly Exclusion[];
  readonly nameOf: (id: string) => string;
}

/** A dentist in person may sign against one rule that stops an item, with a reason. Two rules, or one that cannot be lifted, stay. */
export function Overrides({ stopped, nameOf }: OverridesProps) {
  const { session, sign, bundle } = useVisit();
  const single = stopped.filter((e) => e.overridable === true && stopped.filter((o) => o.shelfItemId === e.shelfItemId).length === 1);
  // The plan of a closed visit is not made again, so the item would be signed and stand nowhere.
  if (bundle.state !== 'open' || !session.member.roles.includes('dentist') || single.length === 0) return null;
  return (
    <details>
      <summary>Sign against a rule</summary>
      <ul className="plain-list">
        {single.map(({ shelfItemId, ruleId, because }) => (
          <li key={shelfItemId}>
            {nameOf(shelfItemId)}: rule {ruleId} stops it ({because}).{' '}
            <OpenForm
              label={`sign against rule ${ruleId}`}
              about={nameOf(shelfItemId)}
              form={(close) => (
                <ReasonForm
                  about={`Sign ${nameOf(shelfItemId)} against rule ${ruleId}`}
                  hint="stays on the record, and stands beside the item"
                  saveWords={`Sign against rule ${ruleId}`}
                  onGive={(reason) => void sign(shelfItemId, { override: { ruleId, reason } })}
                  onLeave={() => close()}
                />
              )}
            />
          </li>
        ))}
      </ul>
    </details>
  );
}

/** The way to the texts of what is signed and needs a prescription. */
export function PrescriptionLink({ lines }: Pick<Plan, 'lines'>) {
  const { bundle, input, isShownToPatient } = useVisit();
  const isPrescription = (line: PlanLine) =>
    line.state === 'signed' && input.practice.shelf.some((item) => item.id === line.shelfItemId && item.release === 'prescription');
  if (isShownToPatient || !lines.some(isPrescription)) return null;
  return (
    <p className="small">
      <Link to={`/visits/${bundle.visitId}/prescriptions`}>Text for the prescription</Link>
    </p>
  );
}
