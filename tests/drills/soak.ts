import { printLines, printTable } from "./print.ts";
import { soak } from "./soak-run.ts";

/* node --import ./service/runtime.mjs tests/drills/soak.ts [minutes] [connections] */
const { faults, sizes, kinds, ...counts } = await soak({
  minutes: Number(process.argv[2] ?? 30),
  connections: Number(process.argv[3] ?? 50),
  thinkMs: 500,
  seed: 7,
});
printTable([{ ...counts, faults: faults.length }]);
printTable(kinds);
const looks = [0.1, 0.35, 0.65, 0.99].flatMap((share) => {
  const size = sizes[Math.floor(share * sizes.length)];
  return size ? [{ partOfRun: share, ...size }] : [];
});
printTable(looks.map(({ handles: _, ...size }) => size));
const handleKinds = [...new Set(looks.flatMap(({ handles }) => Object.keys(handles)))].sort();
printTable(
  handleKinds.map((handle) => ({
    handle,
    ...Object.fromEntries(looks.map(({ partOfRun, handles }) => [`at ${partOfRun}`, handles[handle] ?? 0])),
  })),
);
printLines([...new Set(faults)].slice(0, 40));
process.exitCode = faults.length === 0 ? 0 : 1;
