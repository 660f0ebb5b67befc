ARG NODE_IMAGE=node:22-bookworm-slim

FROM ${NODE_IMAGE} AS build
WORKDIR /app
COPY package.json package-lock.json ./
RUN npm ci
COPY tsconfig.json ./
COPY src ./src
RUN npm run build && npm prune --omit=dev

FROM ${NODE_IMAGE}
ENV NODE_ENV=production HOST=0.0.0.0 PORT=8080
WORKDIR /app
COPY --from=build /app/package.json ./
COPY --from=build /app/node_modules ./node_modules
COPY --from=build /app/dist ./dist
COPY fixtures/demo ./fixtures/demo
RUN mkdir /data && chown 10001 /data
ENV DATABASE_URL=sqlite:/data/germination-forecaster.db
# By default glibc keeps memory in many arenas, up to eight a core, and what is freed in one stays there: up to a seventh of
# what the service takes. Two arenas serve it as well.
ENV MALLOC_ARENA_MAX=2
VOLUME /data
USER 10001
EXPOSE 8080
HEALTHCHECK --interval=30s --timeout=3s --start-period=5s \
  CMD ["node", "-e", "fetch(`http://127.0.0.1:${process.env.PORT}/readyz`).then((answer) => process.exit(answer.ok ? 0 : 1), () => process.exit(1))"]
CMD ["node", "dist/main.js"]
