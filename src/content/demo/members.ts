/** Public on purpose, like everything of the invented practice. */
export const DEMO_PASSWORD = 'demo';
export const DEMO_CODE = '2580';

/** One of the invented team of Tern Quay Dental. */
export interface DemoMember {
  readonly id: string;
  readonly name: string;
  readonly roles: readonly ('hygienist' | 'assistant' | 'dentist' | 'lead')[];
  readonly trainedSwab: boolean;
}

/** Nobody here exists. Three are trained to take swabs, one is still learning, one may sign. */
export const demoMembers: readonly DemoMember[] = [
  { id: 'ines', name: 'Ines Marrow', roles: ['hygienist', 'lead'], trainedSwab: true },
  { id: 'tomas', name: 'Tomas Quill', roles: ['assistant'], trainedSwab: true },
  { id: 'ahlgren', name: 'Dr. Ahlgren', roles: ['dentist'], trainedSwab: false },
  { id: 'una', name: 'Una Sorrel-Bahk', roles: ['hygienist'], trainedSwab: true },
  { id: 'wim', name: 'Wim Tansy', roles: ['assistant'], trainedSwab: false },
];
