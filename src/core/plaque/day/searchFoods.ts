import type { Food } from './types.ts';

/** Lower case without accents, cut into words at everything that is neither letter nor digit. */
function wordsOf(text: string): readonly string[] {
  return text
    .normalize('NFD')
    .replace(/\p{M}/gu, '')
    .toLowerCase()
    .split(/[^\p{L}\p{N}]+/u)
    .filter((word) => word !== '');
}

/** How well one typed word fits: 0 the first word of the name, 1 a word of the name, 2 another word for it; undefined not at all. */
function fitOf(typed: string, name: readonly string[], others: readonly string[]): number | undefined {
  if (name[0]?.startsWith(typed)) return 0;
  if (name.some((word) => word.startsWith(typed))) return 1;
  return others.some((word) => word.startsWith(typed)) ? 2 : undefined;
}

/**
 * Foods of which every typed word begins a word, in English or Spanish, accents aside: those whose name begins so first, then in the order of
 * the alphabet.
 * @param typed     as typed; empty gives nothing
 * @param language  of the names in the answer and of their order
 */
export function searchFoods(typed: string, foods: readonly Food[], language: 'en' | 'es' = 'en'): readonly Food[] {
  const asked = wordsOf(typed);
  if (asked.length === 0) return [];
  const found = foods.flatMap((food) => {
    const name = wordsOf(food.name[language]);
    const others = wordsOf(`${food.name.en} ${food.name.es} ${food.words ?? ''}`);
    const fits = asked.map((word) => fitOf(word, name, others));
    return fits.every((fit) => fit !== undefined) ? [{ food, rank: fits.reduce((sum, fit) => sum + fit, 0) }] : [];
  });
  return found
    .sort((a, b) => a.rank - b.rank || a.food.name[language].localeCompare(b.food.name[language], language))
    .map(({ food }) => food);
}
