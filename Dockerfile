# Built in two steps: the first installs what runs, the second carries only that. A test keeps this Node the same as the
# one that npm ci brings elsewhere.
FROM node:24.21.0-slim AS install
WORKDIR /app
COPY package.json package-lock.json .npmrc ./
# The image brings its own Node, so our optional one is taken out again. --omit=optional would be too much: esbuild and
# sharp name the binaries that they need on this platform as optional.
RUN npm ci --omit=dev --ignore-scripts && rm -rf node_modules/node-linux-* node_modules/.bin/node

FROM node:24.21.0-slim
ENV NODE_ENV=production LEEBENCH_DATA_DIR=/data LEEBENCH_HOST=0.0.0.0
WORKDIR /app
COPY --from=install /app/node_modules ./node_modules
COPY package.json package-lock.json tsconfig.json LICENSE ./
COPY core ./core
COPY service ./service
RUN mkdir -m 700 /data && chown node:node /data
USER node
VOLUME /data
EXPOSE 4680
HEALTHCHECK --interval=60s --timeout=5s --start-period=20s CMD ["node", "service/is-alive.ts"]
CMD ["node", "--import", "./service/runtime.mjs", "service/main.ts"]
