import { z } from "zod";
import { heatIndexWork } from "../../core/weather/work/heat-index-work.ts";
import { FIELDS } from "./calc-fields.ts";
import { calculation } from "./calc-lines.ts";

export const heatIndex = calculation({
  about: "how warm the air feels to a person, from tempC and rhFrac",
  schema: z.strictObject({ tempC: FIELDS.tempC, rhFrac: FIELDS.share }),
  work: (line) => ({ ok: true, value: heatIndexWork(line) }),
});
