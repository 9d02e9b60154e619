import type { NewMember, Role } from '../../../api/apiTypes.ts';

export interface MemberDraft {
  readonly name: string;
  readonly roles: readonly Role[];
  readonly trainedSwab: boolean;
  readonly password: string;
}

export type MemberProblems = Readonly<Partial<Record<keyof MemberDraft, string>>>;

export const emptyMember: MemberDraft = { name: '', roles: [], trainedSwab: false, password: '' };

const SHORTEST_PASSWORD = 8;

/** What each role may do that others may not. */
export const ROLES: readonly { readonly id: Role; readonly label: string }[] = [
  { id: 'hygienist', label: 'hygienist: confirms levels, closes visits' },
  { id: 'assistant', label: 'assistant: asks, takes swabs' },
  { id: 'dentist', label: 'dentist: also signs and frees items' },
  { id: 'lead', label: 'lead: changes settings and team' },
];

export const passwordProblem = (password: string): string | undefined =>
  password.length >= SHORTEST_PASSWORD ? undefined : `At least ${SHORTEST_PASSWORD} characters are needed.`;

export function findMemberProblems({ name, roles, password }: MemberDraft): MemberProblems {
  const all = {
    name: name.trim() === '' ? 'A name is needed.' : undefined,
    roles: roles.length === 0 ? 'Tick at least one role.' : undefined,
    password: passwordProblem(password),
  };
  return Object.fromEntries(Object.entries(all).filter(([, problem]) => problem !== undefined));
}

export const memberOf = (draft: MemberDraft): NewMember => ({ ...draft, name: draft.name.trim(), roles: [...draft.roles] });
