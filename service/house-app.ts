import { type Context, Hono, type MiddlewareHandler } from "hono";
import { compress } from "hono/compress";
import { requestId } from "hono/request-id";
import { getPath } from "hono/utils/url";
import { claimRoutes } from "./access/claim-routes.tsx";
import { clientReader } from "./access/client.ts";
import type { Door } from "./access/door.ts";
import { findVisitor } from "./access/find-visitor.ts";
import { frontDoor } from "./access/front-door.ts";
import { gate } from "./access/gate.ts";
import { houseAccessRoutes } from "./access/house-access-routes.tsx";
import { asSeen, pathWithin } from "./access/prefix.ts";
import { requestRate } from "./access/request-rate.ts";
import { signInRoutes } from "./access/sign-in-routes.tsx";
import { newTries } from "./access/tries.ts";
import { apiApp } from "./api/api-app.ts";
import type { ServiceSettings } from "./config.ts";
import { ownNamesOnly } from "./host-check.ts";
import { healthRoutes } from "./jobs/health.ts";
import type { JobParts } from "./jobs/job-parts.ts";
import type { Log } from "./log.ts";
import { createApp, missingPage, pageContext } from "./pages/app.tsx";
import { UnreadableForm } from "./pages/forms/form-body.ts";
import { problemAnswer } from "./problem-answer.ts";
import type { ReplayDesk } from "./replay/replay-desk.ts";
import { StoreFault } from "./store/store-fault.ts";

interface HouseAppInput {
  readonly parts: JobParts;
  readonly settings: ServiceSettings;
  readonly options: { readonly demo?: boolean };
  readonly door: Door;
  readonly replays?: ReplayDesk;
  isStopping(): boolean;
  replan(siteId: string): Promise<unknown>;
}

/** Everything that is served: what every request passes, the gate, then health, access, and the pages. */
export function houseApp(input: HouseAppInput): Hono {
  const { parts, settings, options, door, isStopping, replan, replays } = input;
  const { store, tally, now, log } = parts;
  const context = pageContext({
    ...parts,
    copies: { dir: parts.backupDir, keepCount: parts.keep.backupCount },
    demo: options.demo ?? false,
    replays: replays ?? null,
    replan,
  });
  const clientOf = clientReader(settings);
  const access = { context, door, tries: newTries(now), clientOf };
  const visitorOf = findVisitor({ store, door, now, clientOf });
  const app = new Hono({ getPath: (request) => pathWithin(settings.basePath, getPath(request)) });
  // Made here alone: what the outside sends as an id is not believed.
  app.use(
    requestId({ headerName: "" }),
    namesRequest,
    compress(),
    requestRate(clientOf, now),
    asSeen(clientOf),
  );
  app.use(ownNamesOnly(settings), ...frontDoor, gate({ door, visitorOf }));
  app.route("/", healthRoutes({ store, tally, now, startedUtcMs: now(), isStopping }));
  for (const routes of [signInRoutes, claimRoutes, houseAccessRoutes]) app.route("/", routes(access));
  app.route("/", apiApp(access));
  app.route("/", createApp(context));
  app.notFound(missingPage(context));
  app.onError((error, c) => faultAnswer(error, { c, log }));
  return app;
}

const namesRequest: MiddlewareHandler = async (c, next) => {
  await next();
  c.res.headers.set("X-Request-Id", c.get("requestId"));
};

const DISK_FULL = 507;
const NOT_NOW = 503;

/** What went wrong in the house itself: once in the log, one line for the visitor, nothing of the inside. */
function faultAnswer(error: unknown, { c, log }: { c: Context; log: Log }): Response {
  if (error instanceof UnreadableForm)
    return problemAnswer(c, {
      status: 400,
      code: "form-not-readable",
      detail: "The form came broken and was not kept. Go back and send it again.",
    });
  const requestId = c.get("requestId");
  log.error({ event: "request-broke", requestId, method: c.req.method, path: c.req.path, error });
  if (error instanceof StoreFault) {
    const status = error.code === "store-full" ? DISK_FULL : NOT_NOW;
    return problemAnswer(c, { status, code: error.code, detail: error.message });
  }
  return problemAnswer(c, {
    status: 500,
    code: "fault-inside",
    detail: `Something went wrong here, and the log knows what under ${requestId}. Nothing of this was kept; try again.`,
  });
}
