import { guardedHouse, SAME_ORIGIN } from "../access/guarded-house.ts";

/** A house with one planted pot, asked as a script on this machine asks. */
export async function apiHouse(
  over: Parameters<typeof guardedHouse>[1] = {},
  replays: Parameters<typeof guardedHouse>[2] = null,
) {
  const house = await guardedHouse({}, over, replays);
  const ask = async (
    method: string,
    path: string,
    { body, headers = {} }: { body?: unknown; headers?: Record<string, string> } = {},
  ) => {
    const answer = await house.app.request(`/api/v1${path}`, {
      method,
      headers: {
        ...SAME_ORIGIN,
        ...(body === undefined ? {} : { "content-type": "application/json" }),
        ...headers,
      },
      ...(body === undefined
        ? {}
        : {
            body:
              typeof body === "string" || body instanceof Uint8Array
                ? (body as string)
                : JSON.stringify(body),
          }),
    });
    const text = await answer.clone().text();
    const json = answer.headers.get("content-type")?.includes("json") ? JSON.parse(text) : null;
    return { status: answer.status, json, etag: answer.headers.get("etag") ?? "", answer };
  };
  return { ...house, ask };
}
