/**
 * The same function, with what it gave kept for as long as the table itself. Tables of content are never changed once made; another
 * edition is another object, so it can never meet what was computed for this one.
 */
export function keepByTable<T extends object, V>(build: (table: T) => V): (table: T) => V {
  const kept = new WeakMap<T, V>();
  return (table) => {
    const known = kept.get(table);
    if (known !== undefined) return known;
    const value = build(table);
    kept.set(table, value);
    return value;
  };
}
