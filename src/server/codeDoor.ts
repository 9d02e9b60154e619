import { verify } from '@node-rs/argon2';
import { logAccess } from '../actions/logAccess.ts';
import type { WhoBody } from '../api/apiTypes.ts';
import { listAccessTo } from '../store/read/changes.ts';
import { findMember } from '../store/read/members.ts';
import type { Signed } from './context.ts';
import { checkPassword, findSecret, nobodysSecret } from './passwords.ts';

const MOST_WRONG = 5;
const REFUSED = 'code-refused';
const OPENS_AGAIN: readonly string[] = ['code-accepted', 'sign-in'];

/**
 * Checks a short code, or the password in its place, of a member of the practice. After five wrong codes in a row the code of that member
 * is shut until the password is given. The tries stand in the log of accesses, so a restart opens nothing. The answer is yes or no, after
 * the same work: it does not tell whether the name has a code, whether the code is wrong, or whether it is shut.
 */
export class CodeDoor {
  /** Tries for one member wait for each other, so that many at once do not count as one. */
  private readonly queues = new Map<string, Promise<unknown>>();

  check(at: Signed, given: WhoBody): Promise<boolean> {
    const before = this.queues.get(given.memberId) ?? Promise.resolve();
    const mine = before.then(() => ('code' in given ? checkCode(at, given) : checkByPassword(at, given)));
    const settled = mine.catch(() => undefined);
    this.queues.set(given.memberId, settled);
    void settled.then(() => this.queues.get(given.memberId) === settled && this.queues.delete(given.memberId));
    return mine;
  }
}

async function checkCode({ context }: Signed, { memberId, code }: Extract<WhoBody, { code: string }>): Promise<boolean> {
  const { db, scope } = context;
  const isShut = (await countWrong(context, memberId)) >= MOST_WRONG;
  const secret = await findSecret(db, scope, memberId, 'code');
  const fits = await verify(secret ?? (await nobodysSecret()), code);
  const isRight = fits && secret !== undefined && !isShut;
  await tell(context, memberId, isRight ? 'code-accepted' : REFUSED);
  return isRight;
}

async function checkByPassword({ context }: Signed, { memberId, password }: Extract<WhoBody, { password: string }>): Promise<boolean> {
  const isRight = await checkPassword(context.db, context.scope, memberId, password);
  if (isRight) await tell(context, memberId, 'sign-in');
  return isRight;
}

/** Wrong codes since the last right one or the last password. */
async function countWrong({ db, scope }: Signed['context'], memberId: string): Promise<number> {
  const tries = await listAccessTo(db, scope, { table: 'member', id: memberId });
  const opened = tries.findLastIndex(({ action }) => OPENS_AGAIN.includes(action));
  return tries.slice(opened + 1).filter(({ action }) => action === REFUSED).length;
}

/** Told of the member who was here; a name that is nobody's is not kept. */
async function tell(context: Signed['context'], memberId: string, action: string): Promise<void> {
  if (!(await findMember(context.db, context.scope, memberId))) return;
  await logAccess(context, { action, entity: { table: 'member', id: memberId } });
}
