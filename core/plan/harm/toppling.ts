/** Standard gravity, m/s2; density of air at 20 °C, kg/m3; drag of a leafy body, about that of a plate. */
const GRAVITY_M_PER_S2 = 9.81;
const AIR_KG_PER_M3 = 1.2;
const DRAG = 1;
/** Share of a crown's outline that holds the wind. Chosen by us: half lets it through, and twigs bend out of its way. */
const CROWN_FRAC = 0.35;
/** Harm when a pot goes over: broken wood and roots, often the pot. Chosen by us. */
const FALL_HARM = 0.12;
/** How blurred the tipping speed is, as a share of itself. Chosen by us: crowns sway, gusts differ from spot to spot. */
const BLUR_FRAC = 0.1;

export interface Stance {
  readonly massKg: number;
  readonly baseCm: number;
  readonly topCm: number;
  readonly heightCm: number;
  readonly canopyWidthCm: number;
  readonly plantHeightCm: number;
}

/**
 * Gust that tips a pot over its edge: the moment of its weight about the rim of the base against the moment of the
 * wind on pot and crown. Own derivation; no measured tipping speeds of pots are known to us.
 */
export function tippingGustMPerS(stance: Stance): number {
  const { sailM2, sailHeightM } = sailOf(stance);
  const holding = (stance.massKg * GRAVITY_M_PER_S2 * stance.baseCm) / 100 / 2;
  return Math.sqrt(holding / (0.5 * AIR_KG_PER_M3 * DRAG * sailM2 * sailHeightM));
}

/** Frontal area of pot and crown and the height of its middle. */
export function sailOf(stance: Omit<Stance, "massKg">): { sailM2: number; sailHeightM: number } {
  const potM2 = (((stance.topCm + stance.baseCm) / 2) * stance.heightCm) / 10_000;
  const crownM2 = (CROWN_FRAC * stance.canopyWidthCm * stance.plantHeightCm) / 10_000;
  const potMiddleM = stance.heightCm / 200;
  const crownMiddleM = (stance.heightCm + stance.plantHeightCm * 0.6) / 100;
  const sailM2 = potM2 + crownM2;
  return { sailM2, sailHeightM: (potM2 * potMiddleM + crownM2 * crownMiddleM) / sailM2 };
}

/** Harm of a day's strongest gust. */
export function harmOfGust(gustMPerS: number, tipMPerS: number): number {
  return FALL_HARM * tippedShare(gustMPerS, tipMPerS);
}

/** Chance that the gust tips the pot: even at the tipping speed. */
export function tippedShare(gustMPerS: number, tipMPerS: number): number {
  const share = 1 / (1 + Math.exp(-(gustMPerS / tipMPerS - 1) / (BLUR_FRAC / 1.7)));
  return share < 0.001 ? 0 : share;
}
