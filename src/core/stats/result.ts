/** An expected outcome that may have no value: too few readings, no finite estimate. Never an exception, never NaN. */
export type Result<T, Reason extends string> = { readonly ok: true; readonly value: T } | { readonly ok: false; readonly reason: Reason };
