/**
 * Sorptivity of drying for a mix that starts drained, mm per square root of a day: how fast water comes up once the
 * surface has dried. Linear in what the drained mix holds, chosen by us so that coarse mineral mixes (0.2) come to
 * 3.5 and capillary ones (0.8) to 9.5; a loam soil that evaporated 68 mm in 35 days comes to 11.5. [MODAIHSH1985]
 */
export function sorptivityMmPerSqrtDay(capacityFrac: number): number {
  return 1.5 + 10 * capacityFrac;
}
