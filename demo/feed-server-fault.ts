import type { ServerResponse } from "node:http";

/** Ways to misbehave that a test or a rehearsal can switch on while the server runs. */
export type FaultName =
  | "down"
  | "silent"
  | "throttled"
  | "overloaded"
  | "html"
  | "text"
  | "half"
  | "nan"
  | "all-null";

export interface FaultSwitch {
  /** Null: behave. */
  fault: FaultName | null;
  /** Only paths that begin so; all when left out. */
  onPath?: string;
}

/** Answers wrongly if the fault is one of the whole answer; false when the answer is to be made and then spoilt. */
export function answeredWrongly(response: ServerResponse, fault: FaultName | null): boolean {
  switch (fault) {
    case "down":
      response.destroy();
      return true;
    case "silent":
      return true;
    case "throttled":
      send(response, 429, '{"error":true,"reason":"Minutely request limit exceeded."}');
      return true;
    case "overloaded":
      send(response, 503, '{"error":true,"reason":"Overloaded."}');
      return true;
    case "html":
      response.writeHead(502, { "content-type": "text/html" }).end("<html><body>Bad gateway</body></html>");
      return true;
    case "text":
      send(response, 200, "Unexpected error");
      return true;
    default:
      return false;
  }
}

/** The honest body as the fault spoils it. */
export function spoilt(body: string, fault: FaultName | null): string {
  if (fault === "half") return body.slice(0, Math.floor(body.length / 2));
  if (fault === "nan") return body.replace(/"latitude":[^,]+,/, '"latitude":nan,');
  if (fault === "all-null") return body.replace(/("(?!time)\w+":)\[[^\]]*\]/g, nulled);
  return body;
}

function nulled(column: string): string {
  const count = column.split(",").length;
  return `${column.slice(0, column.indexOf("[") + 1)}${Array(count).fill("null").join(",")}]`;
}

function send(response: ServerResponse, status: number, body: string): void {
  response.writeHead(status, { "content-type": "application/json; charset=utf-8" }).end(body);
}
