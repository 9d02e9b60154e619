import type { PatientProfile, Permission, PermissionKind } from '../core/visit/patientProfile.ts';
import { requireDate, requireText } from './checks.ts';

export interface PatientDetails extends PatientProfile {
  /** Local date, ISO. */
  readonly birthDate: string;
}

/** The details with every text trimmed and every date checked. What was left empty is left out: not asked. @throws AppError INPUT_INVALID */
export function checkPatientDetails({ birthDate, ...profile }: PatientDetails): { birthDate: string; profile: PatientProfile } {
  const { name, chartNumber, language, largePrint, interpreter, guardians, homes, permissions } = profile;
  return {
    birthDate: requireDate('The birth date', birthDate),
    profile: withoutUnasked({
      name: requireText('The name', name),
      chartNumber: textOrAbsent('The chart number', chartNumber, 50),
      language,
      largePrint,
      // An empty text says that none is needed.
      interpreter: interpreter?.trim() === '' ? '' : textOrAbsent('The language to interpret from', interpreter, 100),
      guardians: guardians?.map((guardian) =>
        withoutUnasked({
          name: requireText('The name of the guardian', guardian.name),
          relation: textOrAbsent('The relation of the guardian', guardian.relation),
          phone: textOrAbsent('The phone of the guardian', guardian.phone, 50),
          mayConsent: guardian.mayConsent,
        }),
      ),
      homes: homes?.map((home) => ({ name: requireText('The name of the home', home.name, 100), language: home.language })),
      permissions: permissions && checkPermissions(permissions),
    }),
  };
}

function checkPermissions(permissions: NonNullable<PatientProfile['permissions']>): NonNullable<PatientProfile['permissions']> {
  const given = Object.entries(permissions) as [PermissionKind, Permission | undefined][];
  return Object.fromEntries(
    given.flatMap(([kind, permission]) =>
      permission === undefined
        ? []
        : [
            [
              kind,
              {
                given: permission.given,
                by: requireText('Who spoke about the permission', permission.by),
                on: requireDate('The date of the permission', permission.on),
              },
            ],
          ],
    ),
  );
}

function textOrAbsent(name: string, value: string | undefined, longest?: number): string | undefined {
  return value === undefined || value.trim() === '' ? undefined : requireText(name, value, longest);
}

function withoutUnasked<T extends object>(value: T): T {
  return Object.fromEntries(Object.entries(value).filter(([, part]) => part !== undefined)) as T;
}
