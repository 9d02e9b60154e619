/** Why a mouth needs another answer before any level. */
export type MouthReason =
  | 'no-natural-teeth'
  | 'implants-only'
  | 'overdenture-roots'
  | 'no-teeth-yet'
  | 'braces-or-retainer'
  | 'lost-gland-function'
  | 'acid-wear';
