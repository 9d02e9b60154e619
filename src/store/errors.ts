/** What the store can refuse. The codes are those of `api/errors.ts`, which this folder may not import; a test compares the two. */
export type StoreErrorCode =
  | 'WRONG_PASSPHRASE'
  | 'RECOVERY_KEY_MISTYPED'
  | 'STORE_MISSING'
  | 'STORE_EXISTS'
  | 'STORE_DAMAGED'
  | 'STORE_NEWER'
  | 'STORE_IN_USE'
  | 'STORE_UNSUITABLE'
  | 'CONFLICT';

export class StoreError extends Error {
  constructor(
    readonly code: StoreErrorCode,
    detail: string,
    options?: ErrorOptions,
  ) {
    super(detail, options);
    this.name = new.target.name;
  }
}

export class WrongPassphraseError extends StoreError {
  constructor(tried: 'passphrase' | 'recovery key', options?: ErrorOptions) {
    super('WRONG_PASSPHRASE', `This ${tried} does not open this practice's data. Nothing was changed.`, options);
  }
}

export class RecoveryKeyMistypedError extends StoreError {
  constructor() {
    super('RECOVERY_KEY_MISTYPED', 'This recovery key has a typing error: its last group does not fit the others. Nothing was changed.');
  }
}

export class StoreDamagedError extends StoreError {
  constructor(what: string, options?: ErrorOptions) {
    super('STORE_DAMAGED', `${what} Restore a backup into an empty folder. Nothing was changed.`, options);
  }
}

export class StoreNewerError extends StoreError {
  constructor(what: string) {
    super('STORE_NEWER', `${what} was made by a newer version of Ebbline. Install that version or a later one. Nothing was changed.`);
  }
}

export class StoreInUseError extends StoreError {
  constructor(holder: string, lockFile: string) {
    super(
      'STORE_IN_USE',
      `The data is in use by ${holder}. Close that one first; if you are sure that none runs, delete ${lockFile}. Nothing was changed.`,
    );
  }
}

/** Somebody else saved the same row or field first. Both values travel with the error, so that a person can choose. */
export class ConflictError extends StoreError {
  constructor(
    what: string,
    readonly yours: unknown,
    readonly current: unknown,
  ) {
    super('CONFLICT', `${what} was changed by somebody else in the meantime.`);
  }
}
