import type { Catalog } from './sayMessage.ts';

/** Whom a caution is worded for. */
export interface CautionReader {
  readonly spits: boolean;
  /** Whether the visit asks a person of this age about pregnancy. */
  readonly mayBePregnant: boolean;
}

const WORDED_FOR: Readonly<Record<string, (reader: CautionReader) => boolean>> = {
  'cannot-spit': ({ spits }) => !spits,
  'no-pregnancy': ({ mayBePregnant }) => !mayBePregnant,
};

/** The message of a caution: the wording for such a reader where the catalog has one, else the one for everybody. */
export function cautionMessage(id: string, catalog: Catalog, reader: CautionReader): `caution.${string}` {
  const wording = Object.keys(WORDED_FOR).find((name) => WORDED_FOR[name]?.(reader) && Object.hasOwn(catalog, `caution.${id}/${name}`));
  return wording === undefined ? `caution.${id}` : `caution.${id}/${wording}`;
}
