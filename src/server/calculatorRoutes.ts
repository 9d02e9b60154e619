import type { FastifyPluginAsyncZod } from 'fastify-type-provider-zod';
import { z } from 'zod';
import { runCalculator } from '../calculators/calculator.ts';
import { calculators } from '../calculators/index.ts';

const Refused = z.object({ error: z.object({ code: z.string(), message: z.string(), path: z.string() }) });

/** One address per calculator, so that each stands in the served description with its own schemas. No record is read or written. */
export const calculatorRoutes: FastifyPluginAsyncZod = async (app) => {
  for (const calculator of calculators) {
    app.post(
      `/api/calculators/${calculator.name}`,
      {
        schema: {
          summary: calculator.summary,
          tags: ['calculators'],
          body: calculator.input,
          response: { 200: calculator.output, 400: Refused },
        },
        // The calculator checks its own input, so that all three doors refuse with the same words.
        validatorCompiler: () => (body) => ({ value: body }),
      },
      async (req, reply) => {
        const result = runCalculator(calculator, req.body);
        return result.ok ? reply.send(result.output) : reply.code(400).send({ error: result.error });
      },
    );
  }
};
