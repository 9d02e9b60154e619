import type { Kysely } from 'kysely';

/**
 * One type map for both engines: text; integer (PostgreSQL bigint, read as a safe number); real (PostgreSQL double precision).
 * Times are ISO text in UTC ("2026-03-04T09:36:12.345Z"), local dates "2026-03-04", yes/no is 0 or 1, JSON is text and never
 * queried by SQL. `null` is not measured or not known. Names are camel case here and snake case in SQL.
 */
export interface Database {
  site: SiteTable;
  member: MemberTable;
  patient: PatientTable;
  visit: VisitTable;
  draftField: DraftFieldTable;
  draftPast: DraftPastTable;
  appointment: AppointmentTable;
  reading: ReadingTable;
  finding: FindingTable;
  result: ResultTable;
  course: CourseTable;
  task: TaskTable;
  stockMove: StockMoveTable;
  catalog: CatalogTable;
  change: ChangeTable;
  changeBody: ChangeBodyTable;
  chainHead: ChainHeadTable;
  account: AccountTable;
  credential: CredentialTable;
  session: SessionTable;
  job: JobTable;
  schemaVersion: SchemaVersionTable;
}

/** The database or a transaction of it. */
export type Db = Kysely<Database>;

interface SiteRow {
  siteId: string;
  id: string;
  version: number;
}

export interface SiteTable {
  siteId: string;
  name: string;
  timeZone: string;
  locale: string;
  /** JSON: StoredSettings. */
  settings: string;
  version: number;
}

export interface MemberTable extends SiteRow {
  accountId: string | null;
  name: string;
  /** JSON: list of role names. */
  roles: string;
  /** 1 once the practice has trained this member to take swabs. */
  trainedSwab: number;
  active: number;
}

export interface PatientTable extends SiteRow {
  /** Accent-free lower-case words of the names, computed by `searchKey`. */
  searchKey: string;
  birthDate: string;
  /** JSON: PatientProfile. */
  profile: string;
  state: 'active' | 'merged' | 'erased';
  mergedInto: string | null;
}

export type VisitKind = 'chair' | 'phone' | 'home' | 'school';

export interface VisitTable extends SiteRow {
  patientId: string;
  kind: VisitKind;
  onDate: string;
  state: 'open' | 'closed' | 'void';
  /** JSON: Answers, written when the visit closes. */
  answers: string | null;
  /** JSON: VisitSaid, written when the visit closes. */
  said: string | null;
  /** 1 = every surface was looked at, so a surface without a finding is sound. */
  allExamined: number | null;
  closedBy: string | null;
}

/** One field of an open visit. Outside the chain: the words of the hour become record when the visit closes. */
export interface DraftFieldTable {
  siteId: string;
  visitId: string;
  path: string;
  /** JSON. */
  value: string;
  memberId: string;
  savedAt: string;
  version: number;
}

/** A value that a field of a visit had before it was changed. Outside the chain, as the draft itself. */
export interface DraftPastTable {
  siteId: string;
  visitId: string;
  path: string;
  version: number;
  /** JSON. */
  value: string;
  memberId: string;
  savedAt: string;
}

/** Who is expected on a day. A visit is what came of it, found by person and date. */
export interface AppointmentTable extends SiteRow {
  patientId: string;
  onDate: string;
  /** Local time "09:40"; null = some time that day. */
  atTime: string | null;
  state: 'planned' | 'cancelled' | 'missed';
  note: string | null;
}

export interface ReadingTable extends SiteRow {
  use: 'patient' | 'control' | 'study';
  patientId: string | null;
  visitId: string | null;
  studyId: string | null;
  meterId: string | null;
  lotId: string | null;
  operator: string | null;
  activatedAt: string | null;
  takenAt: string | null;
  rlu: number | null;
  bound: 'exact' | 'at-most' | 'at-least' | null;
  state: 'valid' | 'flagged' | 'void' | 'failed' | 'not-taken';
  /** JSON: list of short clauses. */
  reasons: string;
  /** JSON of what was noted, so that it can be assessed again: SwabReading of a patient, ControlNote of a control, MeterCheckNote of a check of a meter, StudyRunNote of a study. */
  swab: string | null;
}

export interface FindingTable extends SiteRow {
  visitId: string;
  tooth: string;
  surface: string | null;
  caries: string | null;
  restored: string | null;
  activity: string | null;
  /** JSON: list of other signs, e.g. an exposed root. */
  signs: string;
  isNew: number;
  missingReason: string | null;
  /** Why it does not count: it was noted by mistake. */
  voidReason: string | null;
}

export type ResultKind = 'risk' | 'reading' | 'needs' | 'regimen' | 'day';

/** Written once and never updated: making it again is a new row. */
export interface ResultTable extends SiteRow {
  visitId: string;
  kind: ResultKind;
  protocol: string | null;
  edition: string | null;
  level: string | null;
  inputDigest: string;
  /** JSON. */
  body: string;
  codeVersion: string;
  contentVersion: string;
  madeAt: string;
  decision: 'confirmed' | 'changed' | 'withdrawn' | null;
  decidedBy: string | null;
  reason: string | null;
}

/** What the person said to an item; `offered` = nothing yet. */
export type CourseState = 'offered' | 'agreed' | 'declined' | 'not-affordable';
/** Where the right to release it stands; `not-needed` also for an item that was turned down before anybody signed. */
export type CourseRelease = 'not-needed' | 'waiting' | 'signed' | 'refused';

export interface CourseTable extends SiteRow {
  patientId: string;
  visitId: string | null;
  shelfItemId: string;
  fromDate: string | null;
  toDate: string | null;
  state: CourseState;
  release: CourseRelease;
  reason: string | null;
  adherence: string | null;
  stopReason: string | null;
  /** JSON: SignedItem; stays when the person later declines. */
  signature: string | null;
  /** JSON: Refusal, of a member who might have signed. */
  refusal: string | null;
}

export interface TaskTable extends SiteRow {
  patientId: string;
  visitId: string | null;
  kind: 'recall' | 'check' | 'refill' | 'referral' | 'goal';
  due: string;
  state: 'open' | 'done' | 'dropped';
  note: string | null;
}

export interface StockMoveTable extends SiteRow {
  shelfItemId: string;
  /** Null = not noted. */
  lot: string | null;
  /** Last day, local date; null = not known. */
  expiry: string | null;
  /** Whole packs, negative for those that went. */
  quantity: number;
  reason: 'received' | 'dispensed' | 'expired' | 'corrected' | 'returned';
  onDate: string;
  /** The visit at which packs were given. */
  visitId: string | null;
  memberId: string;
  note: string | null;
  /** Why it does not count any more. */
  takenBack: string | null;
}

export type CatalogKind =
  | 'meter'
  | 'lot'
  | 'shelf-item'
  | 'study'
  | 'study-person'
  | 'control-plan'
  | 'stop-override'
  | 'stop-resolved'
  | 'stop-readings'
  | 'meter-check-plan'
  | 'training'
  | 'standing-order'
  | 'setting'
  | 'local-protocol'
  | 'measure'
  | 'training-case'
  | 'import-mapping';

export interface CatalogTable {
  siteId: string;
  kind: CatalogKind;
  id: string;
  /** JSON. */
  body: string;
  version: number;
}

export type Stream = 'record' | 'access';

export interface ChangeTable {
  siteId: string;
  stream: Stream;
  seq: number;
  at: string;
  memberId: string | null;
  action: string;
  entity: string;
  entityId: string;
  reason: string | null;
  digest: string;
  previousHash: string;
  hash: string;
}

/** Stands apart from the change so that an erasure can delete it; the salt goes with it, so the digest cannot be guessed back. */
export interface ChangeBodyTable {
  siteId: string;
  stream: Stream;
  seq: number;
  salt: string;
  body: string;
}

export interface ChainHeadTable {
  siteId: string;
  stream: Stream;
  seq: number;
  hash: string;
}

export interface AccountTable {
  id: string;
  login: string;
  state: 'active' | 'closed';
  version: number;
}

export interface CredentialTable {
  id: string;
  accountId: string;
  kind: 'password' | 'passkey' | 'code';
  /** Hash of a password or a short code in PHC form, or a public key as JSON. */
  secret: string;
  createdAt: string;
  version: number;
}

export interface SessionTable {
  /** Digest of the token; the token itself is never stored. */
  id: string;
  /** Null for the address that the server prints for the owner of the machine. */
  accountId: string | null;
  siteId: string;
  memberId: string;
  createdAt: string;
  expiresAt: string;
  /** While the screen is hidden nothing is answered until somebody gives a code. */
  lockedAt: string | null;
}

export interface JobTable {
  id: string;
  siteId: string | null;
  kind: string;
  state: 'waiting' | 'running' | 'done' | 'failed';
  /** JSON. */
  body: string;
  leasedUntil: string | null;
  version: number;
}

export interface SchemaVersionTable {
  version: number;
  name: string;
  appliedAt: string;
}
