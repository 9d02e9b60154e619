/** The server's answer when it is not a plain yes. `status` 0 = the server was not reached. */
export class ApiError extends Error {
  constructor(
    readonly status: number,
    readonly code: string,
    message: string,
    readonly body: unknown,
    options?: ErrorOptions,
  ) {
    super(message, options);
    this.name = 'ApiError';
  }
}

type Method = 'GET' | 'POST' | 'PUT';

let actingAs: string | null = null;

/** Whom this page believes to be here. It goes with every request, so that nothing is done in the name of another tab's member. */
export function actAs(memberId: string | null): void {
  actingAs = memberId;
}

export const whoActs = (): string | null => actingAs;

/** Told when the server says that the screen is hidden, or that another member is here. */
export const HELD = 'ebbline-held';
const HELD_STATUS = 423;

/** One request to our own server. The type is trusted: the server checks what it stores, and both are built together. */
export async function callApi<T>(
  method: Method,
  path: string,
  body?: unknown,
  { timeoutMs, as = actingAs }: { readonly timeoutMs?: number; readonly as?: string | null } = {},
): Promise<T> {
  const response = await reach(method, path, body, timeoutMs, as);
  const parsed = await readJson(response);
  if (response.ok) return parsed as T;
  if (response.status === HELD_STATUS) dispatchEvent(new Event(HELD));
  const { code, message } = errorOf(parsed);
  throw new ApiError(response.status, code, message, parsed);
}

async function reach(method: Method, path: string, body: unknown, timeoutMs: number | undefined, as: string | null): Promise<Response> {
  const signal = timeoutMs === undefined ? null : AbortSignal.timeout(timeoutMs);
  const headers: Record<string, string> = { accept: 'application/json', ...(as === null ? {} : { 'x-ebbline-member': as }) };
  const init: RequestInit = { signal, method, credentials: 'same-origin', headers };
  if (method !== 'GET') {
    headers['content-type'] = 'application/json';
    init.body = JSON.stringify(body ?? {});
  }
  try {
    return await fetch(path, init);
  } catch (cause) {
    throw new ApiError(0, 'NOT_REACHED', 'The server was not reached.', null, { cause });
  }
}

async function readJson(response: Response): Promise<unknown> {
  const text = await response.text().catch((cause: unknown) => {
    throw new ApiError(0, 'NOT_REACHED', 'The answer of the server broke off.', null, { cause });
  });
  try {
    return text === '' ? null : JSON.parse(text);
  } catch (cause) {
    throw new ApiError(response.status, 'NOT_JSON', 'The server gave an answer that is not JSON.', text, { cause });
  }
}

function errorOf(parsed: unknown): { code: string; message: string } {
  const error = (parsed as { error?: { code?: string; message?: string } } | null)?.error;
  return { code: error?.code ?? 'UNKNOWN', message: error?.message ?? 'The server refused this.' };
}
