# Built in two steps: the first installs what runs, the second carries only that.
FROM node:24-slim AS install
WORKDIR /app
COPY package.json package-lock.json .npmrc ./
# The image brings its own Node; the one that npm scripts use elsewhere is left out.
RUN npm ci --omit=dev --ignore-scripts && rm -rf node_modules/node-linux-* node_modules/.bin/node

FROM node:24-slim
ENV NODE_ENV=production LEEBENCH_DATA_DIR=/data LEEBENCH_HOST=0.0.0.0
WORKDIR /app
COPY --from=install /app/node_modules ./node_modules
COPY package.json tsconfig.json ./
COPY core ./core
COPY service ./service
RUN mkdir /data && chown node:node /data
USER node
VOLUME /data
EXPOSE 4680
HEALTHCHECK --interval=60s --timeout=5s --start-period=10s \
  CMD ["node", "-e", "fetch('http://127.0.0.1:4680/healthz').then((r) => process.exit(r.ok ? 0 : 1), () => process.exit(1))"]
CMD ["node", "--import", "./service/runtime.mjs", "service/main.ts"]
