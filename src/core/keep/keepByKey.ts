const MOST_KEPT = 200;

/**
 * The same function, with what it gave kept by its key. For pure functions whose result is costly and never changed afterwards.
 * Past 200 keys it begins anew, so that no input can make it grow without end.
 */
export function keepByKey<K, V>(build: (key: K) => V): (key: K) => V {
  const kept = new Map<K, V>();
  return (key) => {
    const known = kept.get(key);
    if (known !== undefined) return known;
    if (kept.size >= MOST_KEPT) kept.clear();
    const value = build(key);
    kept.set(key, value);
    return value;
  };
}
