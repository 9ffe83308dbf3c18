import type { SpotDays } from "./spot-days.ts";

/** Share of the cloud that must be in danger before its hour counts as the onset. Chosen by us: one course in ten. */
const ONSET_SHARE = 0.1;
/** Rain that wets, mm, summed from the start of the plan day. Common practice: the least amount that gauges count. */
const WETS_MM = 0.2;
/** Share of the tipping speed from which gusts are taken for the onset. */
const NEAR_TIPPING = 0.85;

/** What makes an hour dangerous at a spot for one pot; the parts that do not threaten it are left out. */
export interface Dangers {
  readonly rain?: boolean;
  readonly belowC?: number;
  readonly tipMPerS?: number;
  readonly aboveC?: number;
}

/** First hour of a plan day in which a danger begins, or null. Hours that cannot be helped any more are passed over. */
export function onsetHour(at: SpotDays, d: number, dangers: Dangers): number | null {
  const day = at.days[d]!;
  const rained = new Float64Array(at.size);
  const nightFrom = Math.max(day.nightFromHour, coldMorningEnds(at, d, dangers));
  for (let hour = day.fromHour; hour < day.toHour; hour++) {
    if (dangerous({ at, hour, dangers, rained, night: hour >= nightFrom })) return hour;
  }
  return null;
}

/** First hour of a plan day that is not cold any more: what comes before belongs to the night before. */
function coldMorningEnds(at: SpotDays, d: number, { belowC }: Dangers): number {
  const { fromHour, toHour } = at.days[d]!;
  if (belowC === undefined) return fromHour;
  const none = new Float64Array(at.size);
  let hour = fromHour;
  while (hour < toHour && dangerous({ at, hour, dangers: { belowC }, rained: none, night: true })) hour++;
  return hour < toHour ? hour : fromHour;
}

/** Last hour of the night before a plan day in which the danger is there, or null; this very morning for the first day. */
export function lastDangerHour(at: SpotDays, d: number, dangers: Dangers): number | null {
  const today = at.days[d]!;
  const night = d === 0 ? { ...today, toHour: today.nightFromHour } : at.days[d - 1]!;
  for (let hour = night.toHour - 1; hour >= night.fromHour; hour--) {
    const rained = new Float64Array(at.size);
    if (dangerous({ at, hour, dangers, rained, night: true })) return hour;
  }
  return null;
}

function dangerous(input: {
  at: SpotDays;
  hour: number;
  dangers: Dangers;
  rained: Float64Array;
  night: boolean;
}): boolean {
  const { at, hour, dangers, rained } = input;
  const { forcing, size } = at;
  if (dangers.tipMPerS !== undefined && forcing.gustMPerS[hour]! >= NEAR_TIPPING * dangers.tipMPerS)
    return true;
  let inDanger = 0;
  for (let m = 0; m < size; m++) {
    const i = hour * size + m;
    rained[m]! += forcing.rainMm[i]!;
    if (
      (dangers.rain && rained[m]! >= WETS_MM) ||
      (input.night && dangers.belowC !== undefined && forcing.plantTempC[i]! < dangers.belowC) ||
      (dangers.aboveC !== undefined && forcing.tempC[i]! > dangers.aboveC && forcing.lightMjPerM2[i]! > 0.5)
    ) {
      inDanger++;
    }
  }
  return inDanger >= ONSET_SHARE * size;
}
