import type { PersonDetails } from '../../../api/personSchema.ts';
import { LANGUAGE_NAMES, LEAFLET_LANGUAGES } from '../../../core/leaflet/languages.ts';
import { formatDate, isolate } from '../../format.ts';
import type { SaidLines } from '../../parts/differences.ts';

export type PermissionKind = keyof NonNullable<PersonDetails['permissions']>;
type Permission = NonNullable<NonNullable<PersonDetails['permissions']>[PermissionKind]>;

export const PERMISSIONS: readonly { readonly id: PermissionKind; readonly label: string }[] = [
  { id: 'care', label: 'Care' },
  { id: 'messages', label: 'Messages' },
  { id: 'use-of-data', label: 'Use of data' },
];

/** To choose the language of a leaflet from. */
export const LANGUAGE_OPTIONS = LEAFLET_LANGUAGES.map((id) => ({ id, label: LANGUAGE_NAMES[id] }));

export const NOT_ASKED = 'not asked';

export const sayLanguage = (language: PersonDetails['language']): string => (language ? LANGUAGE_NAMES[language] : NOT_ASKED);

export function sayLargePrint(largePrint: boolean | undefined): string {
  if (largePrint === undefined) return NOT_ASKED;
  return largePrint ? 'yes' : 'no';
}

export function sayInterpreter(interpreter: string | undefined): string {
  if (interpreter === undefined) return NOT_ASKED;
  return interpreter === '' ? 'asked, none needed' : interpreter;
}

export function sayConsent(mayConsent: boolean | undefined): string {
  if (mayConsent === undefined) return 'may say yes to care: not asked';
  return mayConsent ? 'may say yes to care' : 'may not say yes to care';
}

export function sayPermission(permission: Permission | undefined): string {
  if (permission === undefined) return NOT_ASKED;
  return `${permission.given ? 'given' : 'not given'}, said by ${isolate(permission.by)} on ${formatDate(permission.on)}`;
}

export const sayGuardian = ({ name, relation, phone, mayConsent }: NonNullable<PersonDetails['guardians']>[number]): string =>
  [isolate(name), relation ?? 'relation not asked', phone ?? 'phone not asked', sayConsent(mayConsent)].join(', ');

/** Everything that is kept of a person, line by line: for a conflict, and for what a change has changed. */
export function sayPerson({
  name,
  birthDate,
  chartNumber,
  language,
  largePrint,
  interpreter,
  guardians,
  homes,
  permissions,
}: PersonDetails): SaidLines {
  return [
    ['Name', name],
    ['Birthday', formatDate(birthDate)],
    ['Chart number', chartNumber ?? NOT_ASKED],
    ['Language of the leaflet', sayLanguage(language)],
    ['Large print of the leaflet', sayLargePrint(largePrint)],
    ['Interpreter', sayInterpreter(interpreter)],
    ...(guardians ?? []).map((guardian, i) => [`Guardian ${i + 1}`, sayGuardian(guardian)] as const),
    ...(homes ?? []).map((home, i) => [`Home ${i + 1}`, `${isolate(home.name)}, ${sayLanguage(home.language)}`] as const),
    ...PERMISSIONS.map(({ id, label }) => [`Permission: ${label.toLowerCase()}`, sayPermission(permissions?.[id])] as const),
  ];
}
