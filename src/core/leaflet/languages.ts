import type { LeafletLanguage } from './types.ts';

/** Every language that a leaflet can be made in. */
export const LEAFLET_LANGUAGES = ['en', 'es', 'fr', 'ar'] as const satisfies readonly LeafletLanguage[];

/** Named in English, for the professional. */
export const LANGUAGE_NAMES: Readonly<Record<LeafletLanguage, string>> = { en: 'English', es: 'Spanish', fr: 'French', ar: 'Arabic' };

const RIGHT_TO_LEFT: readonly LeafletLanguage[] = ['ar'];

/** Which way a page is written. */
export const directionOf = (language: LeafletLanguage): 'ltr' | 'rtl' => (RIGHT_TO_LEFT.includes(language) ? 'rtl' : 'ltr');
