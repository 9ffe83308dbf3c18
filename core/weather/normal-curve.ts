/**
 * Share of a standard normal below a value, 0 to 1, to 1.2e-7. [NUMREC: complementary error function by a Chebyshev
 * fit; coefficients from memory]
 */
export function normalShareBelow(value: number): number {
  const x = Math.abs(value) / Math.SQRT2;
  const t = 1 / (1 + 0.5 * x);
  const series =
    -1.26551223 +
    t *
      (1.00002368 +
        t *
          (0.37409196 +
            t *
              (0.09678418 +
                t *
                  (-0.18628806 +
                    t *
                      (0.27886807 +
                        t * (-1.13520398 + t * (1.48851587 + t * (-0.82215223 + t * 0.17087277))))))));
  const tail = 0.5 * t * Math.exp(-x * x + series);
  return value > 0 ? 1 - tail : tail;
}

/** The value below which a share of a standard normal lies; the share is held to 1e-6 to 1 - 1e-6. */
export function normalValueAt(shareFrac: number): number {
  const share = Math.min(1 - 1e-6, Math.max(1e-6, shareFrac));
  let low = -5;
  let high = 5;
  for (let round = 0; round < 40; round++) {
    const middle = (low + high) / 2;
    if (normalShareBelow(middle) < share) low = middle;
    else high = middle;
  }
  return (low + high) / 2;
}
