import type { Role } from '../api/apiTypes.ts';
import { AppError } from '../api/errors.ts';
import type { MemberIdentity } from '../store/siteScope.ts';

const EVERYONE: readonly Role[] = ['assistant', 'hygienist', 'dentist', 'lead'];

/** Who may do what; one role of the list is enough. What more an action asks stands in the action. */
export const RIGHTS = {
  createPractice: ['lead'],
  addMember: ['lead'],
  addAccount: ['lead'],
  saveSettings: ['lead'],
  saveMeter: ['lead', 'hygienist', 'dentist'],
  saveLot: ['lead', 'hygienist', 'dentist', 'assistant'],
  saveShelfItem: ['lead', 'hygienist', 'dentist'],
  /** Items and packs of a table. */
  importShelf: ['lead', 'hygienist', 'dentist'],
  receiveStock: EVERYONE,
  /** What stands in the plan and waits for nobody; who may give anything else stands in the action. */
  dispenseItem: EVERYONE,
  /** One more pack of what was agreed, on a later day. */
  refillItem: EVERYONE,
  stopRefill: EVERYONE,
  correctStock: ['lead', 'hygienist', 'dentist'],
  /** One's own entry of the day; any other takes a role of `correctStock`, and a reason. */
  takeBackMove: EVERYONE,
  saveStandingOrder: ['dentist'],
  withdrawStandingOrder: ['dentist'],
  saveLocalProtocol: ['dentist'],
  retireLocalProtocol: ['dentist'],
  addPatient: EVERYONE,
  changePatient: EVERYONE,
  mergePatients: ['lead', 'hygienist', 'dentist'],
  unmergePatient: ['lead', 'hygienist', 'dentist'],
  /** A private answer goes on a leaflet by a professional's deliberate key alone. */
  releasePrivate: ['hygienist', 'dentist'],
  addAppointment: EVERYONE,
  changeAppointment: EVERYONE,
  importDay: EVERYONE,
  openVisit: EVERYONE,
  recordAnswer: EVERYONE,
  confirmLevel: ['hygienist', 'dentist'],
  withdrawLevel: ['hygienist', 'dentist'],
  /** A hygienist only on a standing order. */
  signItem: ['dentist', 'hygienist'],
  refuseItem: ['dentist'],
  /** A hygienist only her or his own signature on a standing order. */
  withdrawRelease: ['dentist', 'hygienist'],
  closeVisit: ['hygienist', 'dentist'],
  correctVisit: ['hygienist', 'dentist'],
  recordControl: EVERYONE,
  /** A number out of limits is not made to go away by whoever typed it. */
  voidReading: ['lead', 'hygienist', 'dentist'],
  /** As a control: whatever came out, and by anybody. */
  recordMeterCheck: EVERYONE,
  saveMeterCheckPlan: ['lead', 'hygienist', 'dentist'],
  saveControlPlan: ['lead', 'hygienist', 'dentist'],
  setTarget: ['lead', 'hygienist', 'dentist'],
  /** A lot goes into use without a comparison; each of its readings says so. */
  useUncompared: EVERYONE,
  /** Readings count although a control is out of limits. */
  overrideStop: ['hygienist', 'dentist'],
  /** What was done is noted by whoever did it; that a control is in line again is not theirs to say. */
  resolveStop: EVERYONE,
  /** Readings before a control out of limits: counted as they were, or no more. */
  questionReadings: ['hygienist', 'dentist'],
  planStudy: ['lead', 'hygienist', 'dentist'],
  recordStudyReading: EVERYONE,
  /** Whoever enters the swabs of a study knows whose they are. */
  linkStudyPerson: EVERYONE,
  reportStudy: ['lead', 'hygienist', 'dentist'],
  dropStudy: ['lead', 'hygienist', 'dentist'],
  /** Who may say what stands in the action. */
  recordTraining: EVERYONE,
  changeMember: ['lead'],
  changePassword: EVERYONE,
  /** One's own alone. */
  setCode: EVERYONE,
  logAccess: EVERYONE,
} as const satisfies Record<string, readonly Role[]>;

export type ActionName = keyof typeof RIGHTS;

export function hasRole(actor: Pick<MemberIdentity, 'roles'>, role: Role): boolean {
  return actor.roles.includes(role);
}

/** @throws AppError NOT_ALLOWED */
export function requireRight(actor: MemberIdentity, action: ActionName): void {
  const allowed: readonly Role[] = RIGHTS[action];
  if (allowed.some((role) => hasRole(actor, role))) return;
  throw new AppError('NOT_ALLOWED', `${actor.name} may not do this; it takes the role ${allowed.join(' or ')}.`);
}
