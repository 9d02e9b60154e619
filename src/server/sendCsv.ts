import type { FastifyReply } from 'fastify';

/** A table as a file to keep. */
export function sendCsv(reply: FastifyReply, fileName: string, text: string): FastifyReply {
  return reply.type('text/csv; charset=utf-8').header('content-disposition', `attachment; filename="${fileName}"`).send(text);
}
