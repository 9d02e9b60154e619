import type { SqlWords } from '../dialect.ts';
import type { Migration } from './migrate.ts';

/**
 * What a day at the chair needs: appointments, what else was said at a visit, the person's word on an item apart from the right to
 * release it, short codes, a hidden screen, the earlier values of a field, and findings that were noted by mistake.
 */
export const chairside: Migration = {
  version: 2,
  name: 'chairside',
  statements: (words) => [...added(words), ...appointments(words), ...courses(words), ...decisions(words), ...codes(words)],
  upgradeRow: {
    visit: (row) => ({ said: null, ...row }),
    finding: (row) => ({ voidReason: null, ...row }),
    course: (row) => ('release' in row ? row : { ...row, ...splitState(row), refusal: null }),
  },
};

/** The old column held the person's word, or else where the signature stood. */
function splitState(row: object): { state: unknown; release: string } {
  const state: unknown = Reflect.get(row, 'state');
  const isSigned = Reflect.get(row, 'signature') != null;
  if (state === 'waiting') return { state: 'offered', release: 'waiting' };
  return { state: state === 'signed' ? 'offered' : state, release: isSigned ? 'signed' : 'not-needed' };
}

const added = ({ text }: SqlWords) => [
  `alter table visit add column said ${text}`,
  `alter table finding add column void_reason ${text}`,
  `alter table session add column locked_at ${text}`,
];

const appointments = ({ text, integer, end }: SqlWords) => [
  `create table appointment (site_id ${text} not null, id ${text} not null, version ${integer} not null, patient_id ${text} not null,
    on_date ${text} not null, at_time ${text}, state ${text} not null check (state in ('planned', 'cancelled', 'missed')), note ${text},
    primary key (site_id, id), foreign key (site_id, patient_id) references patient (site_id, id) ${end}`,
  'create index appointment_by_date on appointment (site_id, on_date)',
  'create index appointment_by_patient on appointment (site_id, patient_id)',
  `create table draft_past (site_id ${text} not null, visit_id ${text} not null, path ${text} not null, version ${integer} not null,
    value ${text} not null, member_id ${text} not null, saved_at ${text} not null,
    primary key (site_id, visit_id, path, version), foreign key (site_id, visit_id) references visit (site_id, id) ${end}`,
];

const courses = ({ text, integer, end }: SqlWords) => [
  `create table course_split (site_id ${text} not null, id ${text} not null, version ${integer} not null, patient_id ${text} not null,
    visit_id ${text}, shelf_item_id ${text} not null, from_date ${text}, to_date ${text},
    state ${text} not null check (state in ('offered', 'agreed', 'declined', 'not-affordable')),
    release ${text} not null check (release in ('not-needed', 'waiting', 'signed', 'refused')),
    reason ${text}, adherence ${text}, stop_reason ${text}, signature ${text}, refusal ${text},
    primary key (site_id, id), unique (site_id, visit_id, shelf_item_id),
    foreign key (site_id, patient_id) references patient (site_id, id), foreign key (site_id, visit_id) references visit (site_id, id),
    check (release <> 'signed' or signature is not null), check (release <> 'refused' or refusal is not null) ${end}`,
  `insert into course_split (site_id, id, version, patient_id, visit_id, shelf_item_id, from_date, to_date, state, release, reason,
      adherence, stop_reason, signature, refusal)
    select site_id, id, version, patient_id, visit_id, shelf_item_id, from_date, to_date,
      case when state in ('waiting', 'signed') then 'offered' else state end,
      case when state = 'waiting' then 'waiting' when signature is not null then 'signed' else 'not-needed' end,
      reason, adherence, stop_reason, signature, null from course`,
  'drop table course',
  'alter table course_split rename to course',
  'create index course_by_patient on course (site_id, patient_id)',
  'create index course_by_release on course (site_id, release)',
];

/** A decision on a level may be taken back: as a row of its own, since results are never changed. */
const decisions = ({ text, integer, end }: SqlWords) => [
  `create table result_next (site_id ${text} not null, id ${text} not null, version ${integer} not null, visit_id ${text} not null,
    kind ${text} not null check (kind in ('risk', 'reading', 'needs', 'regimen', 'day')), protocol ${text}, edition ${text},
    level ${text}, input_digest ${text} not null, body ${text} not null, code_version ${text} not null,
    content_version ${text} not null, made_at ${text} not null, decision ${text} check (decision in ('confirmed', 'changed', 'withdrawn')),
    decided_by ${text}, reason ${text}, primary key (site_id, id), foreign key (site_id, visit_id) references visit (site_id, id),
    foreign key (site_id, decided_by) references member (site_id, id) ${end}`,
  `insert into result_next (site_id, id, version, visit_id, kind, protocol, edition, level, input_digest, body, code_version,
      content_version, made_at, decision, decided_by, reason)
    select site_id, id, version, visit_id, kind, protocol, edition, level, input_digest, body, code_version, content_version, made_at,
      decision, decided_by, reason from result`,
  'drop table result',
  'alter table result_next rename to result',
  'create index result_by_visit on result (site_id, visit_id, kind)',
];

const codes = ({ text, integer, end }: SqlWords) => [
  `create table credential_next (id ${text} not null primary key, account_id ${text} not null references account (id),
    kind ${text} not null check (kind in ('password', 'passkey', 'code')), secret ${text} not null, created_at ${text} not null,
    version ${integer} not null ${end}`,
  `insert into credential_next (id, account_id, kind, secret, created_at, version)
    select id, account_id, kind, secret, created_at, version from credential`,
  'drop table credential',
  'alter table credential_next rename to credential',
  'create index credential_by_account on credential (account_id)',
];
