/** A bare fastify + zod service from the project's own packages: what the same body costs where nothing is worked out. */
import Fastify from 'fastify';
import { z } from 'zod';

const series = z.object({
  medium: z.enum(['soil', 'air']),
  daily: z.array(z.object({ date: z.iso.date(), min: z.number(), max: z.number() })),
});
const question = z.object({
  crop: z.string(),
  where: z.object({ place: z.object({ latitude: z.number(), longitude: z.number(), timeZone: z.string() }) }),
  sowing: z.object({ date: z.iso.date(), seeds: z.number() }),
  temperatures: z.array(series),
});

const app = Fastify();
app.post('/', async (request) => ({ days: question.parse(request.body).temperatures[0]!.daily.length }));
process.stdout.write(`${await app.listen({ host: '127.0.0.1', port: Number(process.env.PORT) })}\n`);
process.on('SIGTERM', () => void app.close().then(() => process.exit(0)));
