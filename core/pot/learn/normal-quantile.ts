/**
 * Standard normal quantile, good to about 1e-7. [WICHURA1988, algorithm AS 241, the shorter form PPND7]
 *
 * @param shareFrac  probability, 0 and 1 excluded
 */
export function normalQuantile(shareFrac: number): number {
  if (!(shareFrac > 0 && shareFrac < 1)) throw new RangeError(`share ${shareFrac} is not between 0 and 1`);
  const off = shareFrac - 0.5;
  if (Math.abs(off) <= 0.425) {
    const r = 0.180625 - off * off;
    const over = ((59.10937472 * r + 159.29113202) * r + 50.434271938) * r + 3.3871327179;
    const under = ((67.1875636 * r + 78.757757664) * r + 17.895169469) * r + 1;
    return (off * over) / under;
  }
  const tail = Math.sqrt(-Math.log(off < 0 ? shareFrac : 1 - shareFrac));
  return off < 0 ? -tailQuantile(tail) : tailQuantile(tail);
}

function tailQuantile(tail: number): number {
  if (tail <= 5) {
    const r = tail - 1.6;
    const over = ((0.17023821103 * r + 1.3067284816) * r + 2.75681539) * r + 1.4234372777;
    return over / ((0.12021132975 * r + 0.7370016425) * r + 1);
  }
  const r = tail - 5;
  const over = ((0.017337203997 * r + 0.42868294337) * r + 3.081226386) * r + 6.657905115;
  return over / ((0.012258202635 * r + 0.24197894225) * r + 1);
}
