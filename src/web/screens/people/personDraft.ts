import type { PersonDetails } from '../../../api/personSchema.ts';
import type { LeafletLanguage } from '../../../core/leaflet/types.ts';
import { parseBirthday as parseDay } from '../findPeople.ts';
import { PERMISSIONS, type PermissionKind } from './sayPerson.ts';

export interface GuardianDraft {
  readonly name: string;
  readonly relation: string;
  readonly phone: string;
  readonly mayConsent: 'yes' | 'no' | 'not-asked';
}

export interface HomeDraft {
  readonly name: string;
  readonly language: LeafletLanguage;
}

export interface PermissionDraft {
  readonly given: 'yes' | 'no' | 'not-asked';
  readonly by: string;
  readonly on: string;
}

/** The form as it is typed. */
export interface PersonDraft {
  readonly name: string;
  readonly birthday: string;
  readonly chartNumber: string;
  readonly language: LeafletLanguage | 'not-asked';
  readonly largePrint: 'yes' | 'no' | 'not-asked';
  readonly interpreter: 'needed' | 'none' | 'not-asked';
  readonly interpreterLanguage: string;
  readonly guardians: readonly GuardianDraft[];
  readonly homes: readonly HomeDraft[];
  readonly permissions: Readonly<Record<PermissionKind, PermissionDraft>>;
  readonly reason: string;
  readonly isAnotherPerson: boolean;
}

/** By the place in the form: "birthday", "guardians.0.name", "permissions.care.by". */
export type PersonProblems = Readonly<Record<string, string>>;

export const EMPTY_GUARDIAN: GuardianDraft = { name: '', relation: '', phone: '', mayConsent: 'not-asked' };
export const EMPTY_HOME: HomeDraft = { name: '', language: 'en' };

const askedAs = (value: boolean | undefined) => (value === undefined ? 'not-asked' : value ? 'yes' : 'no');

/** @param today  stands in the date of a permission that is not asked yet */
export function personDraftOf(details: PersonDetails, today: string): PersonDraft {
  const { name, birthDate, chartNumber = '', language, largePrint, interpreter, guardians = [], homes = [], permissions = {} } = details;
  const permissionOf = (kind: PermissionKind): PermissionDraft => {
    const permission = permissions[kind];
    return { given: askedAs(permission?.given), by: permission?.by ?? '', on: permission?.on ?? today };
  };
  return {
    name,
    birthday: birthDate,
    chartNumber,
    language: language ?? 'not-asked',
    largePrint: askedAs(largePrint),
    interpreter: interpreter === undefined ? 'not-asked' : interpreter === '' ? 'none' : 'needed',
    interpreterLanguage: interpreter ?? '',
    guardians: guardians.map((g) => ({
      name: g.name,
      relation: g.relation ?? '',
      phone: g.phone ?? '',
      mayConsent: askedAs(g.mayConsent),
    })),
    homes,
    permissions: { care: permissionOf('care'), messages: permissionOf('messages'), 'use-of-data': permissionOf('use-of-data') },
    reason: '',
    isAnotherPerson: false,
  };
}

type Built = { readonly ok: true; readonly details: PersonDetails } | { readonly ok: false; readonly problems: PersonProblems };

const NO_DAY = 'This is no day of the calendar. Year, month and day, like 20190307.';

/** What was typed, as it is saved; or every line that needs a look. What is left empty was not asked. */
export function buildPerson(draft: PersonDraft): Built {
  const problems: Record<string, string> = {};
  const need = (place: string, text: string, words: string) => {
    if (text.trim() === '') problems[place] = words;
    return text.trim();
  };
  const birthDate = parseDay(draft.birthday);
  if (birthDate === undefined) problems['birthday'] = NO_DAY;
  const name = need('name', draft.name, 'The name is needed.');
  const guardians = draft.guardians.map((guardian, i) => ({
    name: need(`guardians.${i}.name`, guardian.name, 'The name of the guardian is needed, or take the guardian off.'),
    ...optional('relation', guardian.relation),
    ...optional('phone', guardian.phone),
    ...(guardian.mayConsent === 'not-asked' ? {} : { mayConsent: guardian.mayConsent === 'yes' }),
  }));
  const homes = draft.homes.map((home, i) => ({ ...home, name: need(`homes.${i}.name`, home.name, 'The name of the home is needed.') }));
  const interpreter =
    draft.interpreter === 'needed' ? need('interpreterLanguage', draft.interpreterLanguage, 'Which language is interpreted?') : '';
  const permissions = buildPermissions(draft, need, problems);
  if (birthDate === undefined || Object.keys(problems).length > 0) return { ok: false, problems };
  const details: PersonDetails = {
    name,
    birthDate,
    ...optional('chartNumber', draft.chartNumber),
    ...(draft.language === 'not-asked' ? {} : { language: draft.language }),
    ...(draft.largePrint === 'not-asked' ? {} : { largePrint: draft.largePrint === 'yes' }),
    ...(draft.interpreter === 'not-asked' ? {} : { interpreter }),
    ...(guardians.length === 0 ? {} : { guardians }),
    ...(homes.length === 0 ? {} : { homes }),
    ...(Object.keys(permissions).length === 0 ? {} : { permissions }),
  };
  return { ok: true, details };
}

function buildPermissions(
  { permissions }: PersonDraft,
  need: (place: string, text: string, words: string) => string,
  problems: Record<string, string>,
): NonNullable<PersonDetails['permissions']> {
  const asked = PERMISSIONS.filter(({ id }) => permissions[id].given !== 'not-asked');
  return Object.fromEntries(
    asked.map(({ id }) => {
      const { given, by, on } = permissions[id];
      const day = parseDay(on);
      if (day === undefined) problems[`permissions.${id}.on`] = NO_DAY;
      return [
        id,
        { given: given === 'yes', by: need(`permissions.${id}.by`, by, 'Who said so? The person, or a guardian by name.'), on: day ?? on },
      ];
    }),
  );
}

const optional = <K extends string>(key: K, text: string): Partial<Record<K, string>> =>
  // One key, its own text.
  text.trim() === '' ? {} : ({ [key]: text.trim() } as Partial<Record<K, string>>);
