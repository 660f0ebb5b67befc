import Fastify, { type FastifyInstance, type FastifyPluginAsync } from 'fastify';

/** Pages to read the OpenAPI document and try it out, at `/docs`. They load on the first request. */
export function docs(document: () => Record<string, unknown>): FastifyPluginAsync {
  let loading: Promise<FastifyInstance> | undefined;
  return async (app) => {
    app.addHook('onClose', async () => (await loading)?.close());
    for (const url of ['/docs', '/docs/*']) {
      app.get(url, async (request, reply) => {
        loading ??= loaded(document());
        const { statusCode, headers, rawPayload } = await (await loading).inject({
          method: request.method === 'HEAD' ? 'HEAD' : 'GET',
          url: request.url,
        });
        if (statusCode === 404) return reply.callNotFound();
        return reply.code(statusCode).headers(headers).send(rawPayload);
      });
    }
  };
}

async function loaded(document: Record<string, unknown>): Promise<FastifyInstance> {
  const [{ default: swagger }, { default: swaggerUi }] = await Promise.all([
    import('@fastify/swagger'),
    import('@fastify/swagger-ui'),
  ]);
  const app = Fastify();
  await app.register(swagger, { mode: 'static', specification: { document: document as never } });
  await app.register(swaggerUi, {
    routePrefix: '/docs',
    uiConfig: { docExpansion: 'list', defaultModelsExpandDepth: 0 },
    theme: { css: [{ filename: 'quiet.css', content: '.swagger-ui .topbar { display: none }' }] },
  });
  return app;
}
