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

/** One request to our own server. The type is trusted: the server checks what it stores, and both are built together. */
export async function callApi<T>(
  method: Method,
  path: string,
  body?: unknown,
  { timeoutMs }: { readonly timeoutMs?: number } = {},
): Promise<T> {
  const response = await reach(method, path, body, timeoutMs);
  const parsed = await readJson(response);
  if (response.ok) return parsed as T;
  const { code, message } = errorOf(parsed);
  throw new ApiError(response.status, code, message, parsed);
}

async function reach(method: Method, path: string, body: unknown, timeoutMs: number | undefined): Promise<Response> {
  const signal = timeoutMs === undefined ? null : AbortSignal.timeout(timeoutMs);
  const init: RequestInit = { signal, method, credentials: 'same-origin', headers: { accept: 'application/json' } };
  if (method !== 'GET') {
    init.headers = { accept: 'application/json', 'content-type': 'application/json' };
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
