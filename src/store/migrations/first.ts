import type { SqlWords } from '../dialect.ts';
import type { Migration } from './migrate.ts';

/** Every table of a practice begins with site_id in its primary key, and its foreign keys stay within the site. */
export const first: Migration = {
  version: 1,
  name: 'first',
  statements: (words) => [...global(words), ...practice(words), ...log(words), ...indexes],
};

const global = ({ text, integer, end }: SqlWords) => [
  `create table account (id ${text} not null primary key, login ${text} not null unique,
    state ${text} not null check (state in ('active', 'closed')), version ${integer} not null ${end}`,
  `create table credential (id ${text} not null primary key, account_id ${text} not null references account (id),
    kind ${text} not null check (kind in ('password', 'passkey')), secret ${text} not null, created_at ${text} not null,
    version ${integer} not null ${end}`,
  `create table job (id ${text} not null primary key, site_id ${text}, kind ${text} not null,
    state ${text} not null check (state in ('waiting', 'running', 'done', 'failed')), body ${text} not null, leased_until ${text},
    version ${integer} not null ${end}`,
];

const practice = ({ text, integer, real, end }: SqlWords) => {
  const row = `site_id ${text} not null, id ${text} not null, version ${integer} not null`;
  const key = 'primary key (site_id, id)';
  const to = (table: string, column: string) => `foreign key (site_id, ${column}) references ${table} (site_id, id)`;
  const toSite = 'foreign key (site_id) references site (site_id)';
  return [
    `create table site (site_id ${text} not null primary key, name ${text} not null, time_zone ${text} not null,
      locale ${text} not null, settings ${text} not null, version ${integer} not null ${end}`,
    `create table member (${row}, account_id ${text} references account (id), name ${text} not null, roles ${text} not null,
      trained_swab ${integer} not null check (trained_swab in (0, 1)), active ${integer} not null check (active in (0, 1)),
      ${key}, ${toSite} ${end}`,
    `create table session (id ${text} not null primary key, account_id ${text} references account (id),
      site_id ${text} not null, member_id ${text} not null, created_at ${text} not null, expires_at ${text} not null,
      ${to('member', 'member_id')} ${end}`,
    `create table patient (${row}, search_key ${text} not null, birth_date ${text} not null, profile ${text} not null,
      state ${text} not null check (state in ('active', 'merged', 'erased')), merged_into ${text},
      ${key}, ${toSite}, ${to('patient', 'merged_into')} ${end}`,
    `create table visit (${row}, patient_id ${text} not null,
      kind ${text} not null check (kind in ('chair', 'phone', 'home', 'school')), on_date ${text} not null,
      state ${text} not null check (state in ('open', 'closed', 'void')), answers ${text},
      all_examined ${integer} check (all_examined in (0, 1)), closed_by ${text},
      ${key}, ${to('patient', 'patient_id')}, ${to('member', 'closed_by')} ${end}`,
    `create table draft_field (site_id ${text} not null, visit_id ${text} not null, path ${text} not null, value ${text} not null,
      member_id ${text} not null, saved_at ${text} not null, version ${integer} not null,
      primary key (site_id, visit_id, path), ${to('visit', 'visit_id')}, ${to('member', 'member_id')} ${end}`,
    `create table reading (${row}, use ${text} not null check (use in ('patient', 'control', 'study')), patient_id ${text},
      visit_id ${text}, study_id ${text}, meter_id ${text}, lot_id ${text}, operator ${text}, activated_at ${text},
      taken_at ${text}, rlu ${real}, bound ${text} check (bound in ('exact', 'at-most', 'at-least')),
      state ${text} not null check (state in ('valid', 'flagged', 'void', 'failed', 'not-taken')), reasons ${text} not null,
      swab ${text}, ${key}, ${toSite}, ${to('patient', 'patient_id')}, ${to('visit', 'visit_id')},
      check (use <> 'patient' or patient_id is not null) ${end}`,
    `create table finding (${row}, visit_id ${text} not null, tooth ${text} not null, surface ${text}, caries ${text},
      restored ${text}, activity ${text}, signs ${text} not null, is_new ${integer} not null check (is_new in (0, 1)),
      missing_reason ${text}, ${key}, ${to('visit', 'visit_id')} ${end}`,
    `create table result (${row}, visit_id ${text} not null,
      kind ${text} not null check (kind in ('risk', 'reading', 'needs', 'regimen', 'day')), protocol ${text}, edition ${text},
      level ${text}, input_digest ${text} not null, body ${text} not null, code_version ${text} not null,
      content_version ${text} not null, made_at ${text} not null, decision ${text} check (decision in ('confirmed', 'changed')),
      decided_by ${text}, reason ${text}, ${key}, ${to('visit', 'visit_id')}, ${to('member', 'decided_by')} ${end}`,
    `create table course (${row}, patient_id ${text} not null, visit_id ${text}, shelf_item_id ${text} not null,
      from_date ${text}, to_date ${text},
      state ${text} not null check (state in ('offered', 'agreed', 'declined', 'not-affordable', 'waiting', 'signed')),
      reason ${text}, adherence ${text}, stop_reason ${text}, signature ${text},
      ${key}, unique (site_id, visit_id, shelf_item_id), ${to('patient', 'patient_id')}, ${to('visit', 'visit_id')},
      check (state <> 'signed' or signature is not null) ${end}`,
    `create table task (${row}, patient_id ${text} not null, visit_id ${text},
      kind ${text} not null check (kind in ('recall', 'check', 'refill', 'referral', 'goal')), due ${text} not null,
      state ${text} not null check (state in ('open', 'done', 'dropped')), note ${text},
      ${key}, ${to('patient', 'patient_id')}, ${to('visit', 'visit_id')} ${end}`,
    `create table stock_move (${row}, shelf_item_id ${text} not null, lot ${text}, expiry ${text}, quantity ${integer} not null,
      visit_id ${text}, ${key}, ${toSite}, ${to('visit', 'visit_id')} ${end}`,
    `create table catalog (site_id ${text} not null, kind ${text} not null, id ${text} not null, body ${text} not null,
      version ${integer} not null, primary key (site_id, kind, id), ${toSite} ${end}`,
  ];
};

/** No foreign key to site: changes of accounts belong to none, and a lost site must not take its history along. */
const log = ({ text, integer, end }: SqlWords) => {
  const place = `site_id ${text} not null, stream ${text} not null check (stream in ('record', 'access'))`;
  return [
    `create table change (${place}, seq ${integer} not null, at ${text} not null, member_id ${text}, action ${text} not null,
      entity ${text} not null, entity_id ${text} not null, reason ${text}, digest ${text} not null,
      previous_hash ${text} not null, hash ${text} not null, primary key (site_id, stream, seq) ${end}`,
    `create table change_body (${place}, seq ${integer} not null, salt ${text} not null, body ${text} not null,
      primary key (site_id, stream, seq) ${end}`,
    `create table chain_head (${place}, seq ${integer} not null, hash ${text} not null, primary key (site_id, stream) ${end}`,
  ];
};

const indexes = [
  'create index member_by_account on member (account_id)',
  'create index credential_by_account on credential (account_id)',
  'create index session_by_account on session (account_id)',
  'create index patient_by_search_key on patient (site_id, search_key)',
  'create index visit_by_patient on visit (site_id, patient_id, on_date)',
  'create index visit_by_date on visit (site_id, on_date)',
  // A person has one open visit at most; a second page that opens one gets the first.
  "create unique index visit_open_once on visit (site_id, patient_id) where state = 'open'",
  'create index reading_by_patient on reading (site_id, patient_id, taken_at)',
  'create index reading_by_visit on reading (site_id, visit_id)',
  'create index finding_by_visit on finding (site_id, visit_id)',
  'create index result_by_visit on result (site_id, visit_id, kind)',
  'create index course_by_patient on course (site_id, patient_id)',
  'create index task_by_due on task (site_id, state, due)',
  'create index task_by_patient on task (site_id, patient_id)',
  'create index stock_move_by_item on stock_move (site_id, shelf_item_id)',
  'create index change_by_entity on change (site_id, entity, entity_id)',
];
