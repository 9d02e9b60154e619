export function withLock<T>(path: string, waitingFor: string, work: () => Promise<T>): Promise<T>;
