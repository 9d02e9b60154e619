/** One step of a member's way to taking swabs. Nobody is marked: a date that has passed asks for one more supervised swab. */
export type TrainingStep =
  | { readonly kind: 'read-card' }
  | { readonly kind: 'watched' }
  | { readonly kind: 'supervised-swab'; readonly with: string }
  | { readonly kind: 'qualified-by-study'; readonly studyId: string }
  | { readonly kind: 'qualified-by-lead'; readonly reason: string };

export type TrainingEvent = TrainingStep & {
  /** Local date. */
  readonly onDate: string;
  readonly notedBy: string;
  /** UTC. */
  readonly at: string;
};

export interface Training {
  readonly memberId: string;
  /** In the order in which they were noted. */
  readonly events: readonly TrainingEvent[];
  /** Local date by which the qualification is looked at again; absent = none set. */
  readonly dueOn?: string | undefined;
}
