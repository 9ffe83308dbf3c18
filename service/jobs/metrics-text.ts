import type { Store } from "../store/open-store.ts";
import type { Tally } from "./tally.ts";

interface MetricsInput {
  readonly store: Store;
  readonly tally: Tally;
  readonly startedUtcMs: number;
}

interface Metric {
  readonly name: string;
  readonly help: string;
  readonly type: "counter" | "gauge";
  readonly samples: readonly { readonly labels?: string; readonly value: number }[];
}

/** Prometheus text exposition format 0.0.4. Labels hold fixed words only: nothing that tells where the house is. */
export async function metricsText(input: MetricsInput): Promise<string> {
  const metrics = [...jobMetrics(input.tally), ...(await storeMetrics(input)), ...processMetrics(input)];
  return `${metrics.map(metricLines).join("\n")}\n`;
}

function metricLines({ name, help, type, samples }: Metric): string {
  const lines = samples.map(({ labels, value }) => `${name}${labels ? `{${labels}}` : ""} ${value}`);
  return [`# HELP ${name} ${help}`, `# TYPE ${name} ${type}`, ...lines].join("\n");
}

function jobMetrics({ counts, lastUtcMs }: Tally): Metric[] {
  const of = (name: string) => counts.get(name) ?? 0;
  const byOutcome = (job: string) =>
    ["done", "failed", "broke"].map((outcome) => ({
      labels: `outcome="${outcome}"`,
      value: of(`${job}.${outcome}`),
    }));
  const lastS = (name: string) => (lastUtcMs.get(name) ?? 0) / 1000;
  return [
    counter("leebench_beats_total", "Heartbeats since the start.", [{ value: of("beat") }]),
    counter("leebench_pulls_total", "Calls for weather.", byOutcome("pull")),
    counter("leebench_mornings_total", "Tries at a morning plan.", byOutcome("morning")),
    counter("leebench_nights_total", "Tries at the night's work.", byOutcome("nightly")),
    gauge("leebench_last_beat_timestamp_seconds", "Last heartbeat; 0 for none.", [{ value: lastS("beat") }]),
    gauge("leebench_last_pull_timestamp_seconds", "Last weather had since the start; 0 for none.", [
      { value: lastS("pull.done") },
    ]),
    gauge("leebench_last_morning_timestamp_seconds", "Last morning made since the start; 0 for none.", [
      { value: lastS("morning.done") },
    ]),
  ];
}

async function storeMetrics({ store }: MetricsInput): Promise<Metric[]> {
  const messages = await store.outbox.counts();
  const pages = store.raw.pragma("page_count", { simple: true }) as number;
  const pageBytes = store.raw.pragma("page_size", { simple: true }) as number;
  return [
    gauge(
      "leebench_messages",
      "Messages in the outbox by state.",
      Object.entries(messages).map(([state, value]) => ({ labels: `state="${state}"`, value })),
    ),
    gauge("leebench_store_bytes", "Size of the store.", [{ value: pages * pageBytes }]),
  ];
}

function processMetrics({ startedUtcMs }: MetricsInput): Metric[] {
  return [
    gauge("process_start_time_seconds", "Start of the service.", [{ value: startedUtcMs / 1000 }]),
    gauge("process_resident_memory_bytes", "Memory in use.", [{ value: process.memoryUsage.rss() }]),
  ];
}

function counter(name: string, help: string, samples: Metric["samples"]): Metric {
  return { name, help, type: "counter", samples };
}

function gauge(name: string, help: string, samples: Metric["samples"]): Metric {
  return { name, help, type: "gauge", samples };
}
