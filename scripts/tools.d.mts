export function findChromium(): string | undefined;
export function findPostgres(): string | undefined;
