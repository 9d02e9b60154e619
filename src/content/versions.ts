/** Stand on every stored result. `code` is the version in package.json; `content` is the day of the newest change to a clinical table. */
export const versions = { code: '0.1.0', content: '2026-11-25' } as const;
