/** Every error a user can meet: code -> HTTP status -> FHIR issue code. Codes are public: never rename or reuse one. */
export const ERRORS = {
  INPUT_INVALID: { status: 400, issue: 'invalid' },
  REASON_REQUIRED: { status: 400, issue: 'required' },
  NOT_SIGNED_IN: { status: 401, issue: 'login' },
  WRONG_PASSPHRASE: { status: 401, issue: 'login' },
  RECOVERY_KEY_MISTYPED: { status: 400, issue: 'invalid' },
  WRONG_CODE: { status: 403, issue: 'login' },
  NOT_ALLOWED: { status: 403, issue: 'forbidden' },
  SITE_NOT_FOUND: { status: 404, issue: 'not-found' },
  MEMBER_NOT_FOUND: { status: 404, issue: 'not-found' },
  PATIENT_NOT_FOUND: { status: 404, issue: 'not-found' },
  APPOINTMENT_NOT_FOUND: { status: 404, issue: 'not-found' },
  VISIT_NOT_FOUND: { status: 404, issue: 'not-found' },
  SHELF_ITEM_NOT_FOUND: { status: 404, issue: 'not-found' },
  STOCK_MOVE_NOT_FOUND: { status: 404, issue: 'not-found' },
  STANDING_ORDER_NOT_FOUND: { status: 404, issue: 'not-found' },
  LOCAL_PROTOCOL_NOT_FOUND: { status: 404, issue: 'not-found' },
  METER_NOT_FOUND: { status: 404, issue: 'not-found' },
  LOT_NOT_FOUND: { status: 404, issue: 'not-found' },
  READING_NOT_FOUND: { status: 404, issue: 'not-found' },
  STUDY_NOT_FOUND: { status: 404, issue: 'not-found' },
  LIKELY_SAME_PERSON: { status: 422, issue: 'duplicate' },
  MERGE_REFUSED: { status: 422, issue: 'business-rule' },
  CONFLICT: { status: 409, issue: 'conflict' },
  STUDY_OVER: { status: 409, issue: 'conflict' },
  SWAB_TOO_SOON: { status: 422, issue: 'business-rule' },
  VISIT_CLOSED: { status: 409, issue: 'conflict' },
  STOCK_SHORT: { status: 422, issue: 'business-rule' },
  ITEM_STOPPED: { status: 422, issue: 'business-rule' },
  SIGNATURE_MISSING: { status: 422, issue: 'business-rule' },
  SESSION_HIDDEN: { status: 423, issue: 'lock-error' },
  MEMBER_CHANGED: { status: 423, issue: 'lock-error' },
  STORE_MISSING: { status: 500, issue: 'not-found' },
  STORE_EXISTS: { status: 409, issue: 'duplicate' },
  STORE_DAMAGED: { status: 500, issue: 'exception' },
  STORE_NEWER: { status: 500, issue: 'not-supported' },
  STORE_IN_USE: { status: 503, issue: 'lock-error' },
  STORE_FULL: { status: 507, issue: 'no-store' },
  CLOCK_BACK: { status: 409, issue: 'conflict' },
  STORE_UNSUITABLE: { status: 500, issue: 'not-supported' },
  INTERNAL: { status: 500, issue: 'exception' },
} as const;

export type ErrorCode = keyof typeof ERRORS;

export class AppError extends Error {
  constructor(
    readonly code: ErrorCode,
    detail: string,
    options?: ErrorOptions,
  ) {
    super(detail, options);
    this.name = 'AppError';
  }
}

/**
 * The code of an error that may be shown to the user, or undefined for a fault of ours. The store's errors carry a code of this
 * registry without importing it, so they are known by their code and not by their class.
 */
export function errorCodeOf(error: unknown): ErrorCode | undefined {
  if (!(error instanceof Error) || !('code' in error)) return undefined;
  return typeof error.code === 'string' && Object.hasOwn(ERRORS, error.code) ? (error.code as ErrorCode) : undefined;
}
