import { LogController } from 'fastify';

/**
 * Writes one line for each request when it has been answered. A second line on arrival would repeat the same, and a
 * line costs more than many an answer.
 */
export const requestLog = (): LogController =>
  Object.assign(new LogController(), {
    incomingRequest(...[request, reply]: Parameters<LogController['incomingRequest']>) {
      reply.raw.once('close', () => {
        if (!reply.raw.writableFinished) request.log.info({ req: request }, 'request given up by its caller');
      });
    },
    requestCompleted(...[err, request, reply]: Parameters<LogController['requestCompleted']>) {
      const said = { req: request, res: reply, responseTime: reply.elapsedTime };
      if (err) reply.log.error({ ...said, err }, 'request errored');
      else reply.log.info(said, 'request completed');
    },
  });
