import type { FastifyInstance } from 'fastify';

/** A name, not 127.0.0.1: passkeys refuse a bare address. */
const HOST = 'localhost';
const DEFAULT_PORT = 4310;
const PORTS_TO_TRY = 50;

/** Listens on the port asked for, or else on the first free one from 4310 up. Returns the page's address. */
export async function listen(app: FastifyInstance, wantedPort: number | undefined): Promise<string> {
  const lastPort = wantedPort ?? DEFAULT_PORT + PORTS_TO_TRY;
  for (let port = wantedPort ?? DEFAULT_PORT; ; port += 1) {
    try {
      await app.listen({ host: HOST, port });
      const address = app.server.address();
      return `http://${HOST}:${typeof address === 'object' && address ? address.port : port}`;
    } catch (error) {
      const isTaken = error instanceof Error && 'code' in error && error.code === 'EADDRINUSE';
      if (!isTaken || port >= lastPort) throw error;
    }
  }
}
