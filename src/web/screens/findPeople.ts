import type { PersonLine } from '../../api/apiTypes.ts';

/** Lower case, without accents and apostrophes, so that "jose" finds "José" and "oneil" both O'Neil and O’Neil. */
export function plainText(text: string): string {
  return text
    .normalize('NFKD')
    .replace(/\p{M}|['’ʼ`´]/gu, '')
    .toLowerCase();
}

/** People with every typed word at the beginning of some word of a name or chart number; all of them for nothing typed. */
export function findPeople(people: readonly PersonLine[], typed: string): readonly PersonLine[] {
  const words = plainText(typed).split(/\s+/).filter(Boolean);
  return people.filter(({ name, searchKey = '' }) => {
    const names = plainText(`${name} ${searchKey}`).split(/[\s-]+/);
    return words.every((word) => names.some((part) => part.startsWith(word)));
  });
}

/** "2019 03 07", "20190307" and "2019-03-07" as an ISO date; undefined for what is no day of the calendar. */
export function parseBirthday(typed: string): string | undefined {
  const match = /^\s*(\d{4})[\s./-]?(\d{2})[\s./-]?(\d{2})\s*$/.exec(typed);
  if (!match) return undefined;
  const iso = `${match[1]}-${match[2]}-${match[3]}`;
  const date = new Date(`${iso}T00:00:00Z`);
  return !Number.isNaN(date.getTime()) && date.toISOString().startsWith(iso) ? iso : undefined;
}
