/** Who a person is to the practice, as the page of the person sends it. An absent field was not asked. */
import { z } from 'zod';
import { LEAFLET_LANGUAGES } from '../core/leaflet/languages.ts';

const isoDate = z.iso.date({ error: 'must be a date like 2026-11-25' });
const text = (max: number) => z.string().trim().min(1).max(max);
const Language = z.enum(LEAFLET_LANGUAGES);

const GuardianSchema = z.strictObject({
  name: text(200),
  relation: text(200).optional(),
  phone: text(50).optional(),
  mayConsent: z.boolean().optional(),
});
export const HomesSchema = z.array(z.strictObject({ name: text(100), language: Language })).max(4);
const PermissionSchema = z.strictObject({ given: z.boolean(), by: text(200), on: isoDate });

export const PersonDetailsSchema = z.strictObject({
  name: text(200),
  birthDate: isoDate,
  chartNumber: text(50).optional(),
  language: Language.optional(),
  /** Of the leaflet. */
  largePrint: z.boolean().optional(),
  /** An empty text: asked, none needed. */
  interpreter: z.string().trim().max(100).optional(),
  guardians: z.array(GuardianSchema).max(8).optional(),
  homes: HomesSchema.optional(),
  permissions: z
    .strictObject({ care: PermissionSchema.optional(), messages: PermissionSchema.optional(), 'use-of-data': PermissionSchema.optional() })
    .optional(),
});
export type PersonDetails = z.infer<typeof PersonDetailsSchema>;

const reason = z.string().trim().max(500).optional();
const version = z.int().nonnegative();

export const ChangePersonBody = z.strictObject({
  details: PersonDetailsSchema,
  version,
  reason,
  /** Somebody was asked whether it is the same person, and said no. */
  isAnotherPerson: z.literal(true).optional(),
});

/** The address names the chart that is kept. */
export const MergeBody = z.strictObject({
  version,
  merged: z.strictObject({ id: z.uuid(), version }),
  reason: z.string().trim().min(1, { error: 'is needed' }).max(500),
});
/** The address names the chart that was merged. */
export const UnmergeBody = z.strictObject({ version, reason: z.string().trim().min(1, { error: 'is needed' }).max(500) });
