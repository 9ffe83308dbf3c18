/** Places that a line runs through, px: across, then down. */
export type Line = readonly (readonly [number, number])[];

/** Whole pixels across, where half of one is hidden by the wall; tenths down, where the eye sees lines stand unevenly. */
const STEPS_PER_PX = { across: 1, down: 10 };

/**
 * Lines as one path, each step told from the one before: half as long as with every place written out, and a shelf has
 * thousands of them. Steps lead from rounded place to rounded place, so that no error adds up.
 */
export function linePath(lines: readonly Line[]): string {
  let [atX, atY] = [0, 0];
  let path = "";
  for (const line of lines) {
    line.forEach(([xPx, yPx], index) => {
      const [x, y] = [Math.round(xPx * STEPS_PER_PX.across), Math.round(yPx * STEPS_PER_PX.down)];
      path += stepText(index === 0, { x: x - atX, y: y - atY });
      [atX, atY] = [x, y];
    });
  }
  return path;
}

function stepText(isFirst: boolean, step: { x: number; y: number }): string {
  const [x, y] = [figure(step.x / STEPS_PER_PX.across), figure(step.y / STEPS_PER_PX.down)];
  // A minus parts two figures as well as a space does.
  const both = y.startsWith("-") ? x + y : `${x} ${y}`;
  if (isFirst) return `m${both}`;
  if (step.y === 0) return `h${x}`;
  return step.x === 0 ? `v${y}` : `l${both}`;
}

function figure(px: number): string {
  return String(px).replace(/^(-?)0\./, "$1.");
}
