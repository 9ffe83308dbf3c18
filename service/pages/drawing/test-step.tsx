type Step = "fill" | "soak" | "drain" | "measure";

const POT = "M24 24L32 78H68L76 24";

/** One step of the fill-soak-drain test. */
export function TestStep({ step, label }: { step: Step; label: string }) {
  return (
    <svg class="test-step" role="img" aria-label={label} viewBox="0 0 100 110" width={100} height={110}>
      <path class="wall" d={POT} />
      {step === "fill" && <Dots />}
      {step === "soak" && (
        <>
          <Lines count={13} />
          <path class="wall" d="M40 82H60" />
          <path class="water" d="M50 4V16M46 12L50 17L54 12" />
        </>
      )}
      {step === "drain" && (
        <>
          <Lines count={6} />
          <path class="water" d="M42 82V92M50 82V96M58 82V92" />
          <path class="wall" d="M34 98V106H66V98" />
        </>
      )}
      {step === "measure" && (
        <>
          <Lines count={6} />
          <path class="wall" d="M20 84H80M28 84L32 104H68L72 84M50 104V96" />
        </>
      )}
    </svg>
  );
}

/** Loose dry mix. */
function Dots() {
  const points = Array.from({ length: 24 }, (_, i) => ({
    x: 34 + (i % 6) * 6.4,
    y: 36 + Math.floor(i / 6) * 10,
  }));
  return (
    <g>
      {points.map(({ x, y }) => (
        <circle class="stone" cx={x} cy={y} r={1.6} />
      ))}
    </g>
  );
}

/** The more lines, the more water. */
function Lines({ count }: { count: number }) {
  const gap = 50 / count;
  const d = Array.from({ length: count }, (_, i) => {
    const y = 28 + i * gap;
    const inset = 8 * ((y - 24) / 54);
    return `M${(26 + inset).toFixed(1)} ${y.toFixed(1)}H${(74 - inset).toFixed(1)}`;
  });
  return <path class="water" d={d.join("")} />;
}
