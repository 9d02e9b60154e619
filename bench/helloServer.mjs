// The peer of bench/server.ts: a bare Fastify that answers one word.
import Fastify from 'fastify';

const app = Fastify({ forceCloseConnections: true });
app.get('/', () => 'hello');
await app.listen({ host: 'localhost', port: 0 });
console.log(`ready: http://localhost:${app.server.address().port}/`);
process.on('SIGINT', () => app.close().then(() => process.exit(0)));
