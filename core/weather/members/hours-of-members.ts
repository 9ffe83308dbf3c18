import type { HoursReady } from "../hours-ready.ts";
import type { MinimumBias } from "../instruments/minimum-bias.ts";
import { dewMembersC, windMembersMPerS } from "./air-members.ts";
import { aheadOf, type MemberFrame } from "./member-frame.ts";
import { rainMembersMm } from "./rain-members.ts";
import { sunMembers } from "./sun-members.ts";
import { tempMembersC } from "./temp-members.ts";

/**
 * The hours ahead as so many equally likely courses. A real ensemble keeps each member's own course; what published
 * scores say is missing from its spread is added (members are too sure: half of the error at a day ahead at Hannover,
 * our reckoning from open data). Without one the single forecast is dressed with the whole of that error.
 */
export function hoursOfMembers(frame: MemberFrame, bias: MinimumBias): HoursReady {
  const tempC = tempMembersC(frame, bias);
  const rainMm = rainMembersMm(frame);
  return {
    startUtcMs: frame.startUtcMs,
    hourCount: frame.hourCount,
    memberCount: frame.size,
    tempC,
    dewPointC: dewMembersC(frame, tempC),
    rainMm,
    windMPerS: windMembersMPerS(frame),
    ...sunMembers(frame, rainMm),
    gustMPerS: aheadOf(frame, "gustMPerS").slice(),
    weatherCode: aheadOf(frame, "weatherCode").slice(),
  };
}
