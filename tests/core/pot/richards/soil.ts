/** Hydraulic functions of a soil: suction head in cm (negative when unsaturated), conductivity in cm/s or cm/day. */
export interface Soil {
  readonly waterFrac: (headCm: number) => number;
  readonly capacityPerCm: (headCm: number) => number;
  readonly conductivity: (headCm: number) => number;
}

/** Van Genuchten with Mualem's conductivity, m = 1 - 1/n. [VG1980] */
export function vanGenuchten(of: {
  residual: number;
  saturated: number;
  alphaPerCm: number;
  n: number;
  saturatedConductivity: number;
}): Soil {
  const { residual, saturated, alphaPerCm, n, saturatedConductivity } = of;
  const m = 1 - 1 / n;
  const effective = (head: number) => (head >= 0 ? 1 : (1 + (-alphaPerCm * head) ** n) ** -m);
  return {
    waterFrac: (head) => residual + (saturated - residual) * effective(head),
    capacityPerCm: (head) => {
      if (head >= 0) return 0;
      const ah = -alphaPerCm * head;
      return ((saturated - residual) * m * n * alphaPerCm * ah ** (n - 1)) / (1 + ah ** n) ** (m + 1);
    },
    conductivity: (head) => {
      const s = effective(head);
      return saturatedConductivity * Math.sqrt(s) * (1 - (1 - s ** (1 / m)) ** m) ** 2;
    },
  };
}

/** Haverkamp's power functions, as CELIA1990 eq. 10 gives them. */
export function haverkamp(of: {
  alpha: number;
  beta: number;
  saturated: number;
  residual: number;
  saturatedConductivity: number;
  a: number;
  gamma: number;
}): Soil {
  const { alpha, beta, saturated, residual, saturatedConductivity, a, gamma } = of;
  return {
    waterFrac: (head) => (alpha * (saturated - residual)) / (alpha + Math.abs(head) ** beta) + residual,
    capacityPerCm: (head) => {
      const x = Math.abs(head);
      return (alpha * (saturated - residual) * beta * x ** (beta - 1)) / (alpha + x ** beta) ** 2;
    },
    conductivity: (head) => (saturatedConductivity * a) / (a + Math.abs(head) ** gamma),
  };
}
