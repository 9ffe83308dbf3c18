import { Hono } from "hono";
import { compress } from "hono/compress";
import { frontDoor } from "../../../service/access/front-door.ts";

/** Pages behind what every request passes, as the house serves them, without asking who it is. */
export function asServed(pages: Hono): Hono {
  return new Hono().use(compress(), ...frontDoor).mount("/", pages.fetch);
}
