/** One field as it stood before a closed visit was corrected, and after. `null` = nothing was noted. */
export interface CorrectedField {
  /** As a saved field is named: "answers.can_spit", "reading", ...; "level" for a level confirmed anew. */
  readonly path: string;
  readonly before: unknown;
  readonly after: unknown;
}

/** What was corrected after the visit was closed, by whom and why. The rows it replaced stay in the log. */
export interface VisitCorrection {
  /** UTC. */
  readonly at: string;
  /** Local date, ISO. */
  readonly on: string;
  readonly by: string;
  readonly reason: string;
  readonly changes: readonly CorrectedField[];
}
