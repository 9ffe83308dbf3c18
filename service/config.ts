import { homedir } from "node:os";
import { join, resolve } from "node:path";
import type { Outcome, Problem } from "../core/problem.ts";
import type { BrokerSettings } from "./broker/broker-line.ts";
import {
  type EnvironmentRead,
  EnvironmentSchema,
  type LOG_LEVELS,
  SETTING_DEFAULTS,
  SETTING_NAMES,
  type UNITS,
} from "./environment-schema.ts";
import type { FeedSettings } from "./feed/feed-settings.ts";

export interface MailSettings {
  /** smtp:// or smtps://, with user and password where the server wants them. */
  readonly smtpUrl: string;
  readonly from: string;
  /** Who gets everything; people set on the pages come on top. */
  readonly to: readonly string[];
}

export interface ServiceSettings {
  readonly dataDir: string;
  readonly host: string;
  readonly port: number;
  /** The name under which a proxy in front of the house is called. */
  readonly publicHost: string | null;
  /** Addresses or ranges of the proxies whose X-Forwarded fields are believed. */
  readonly trustedProxies: readonly string[];
  /** Path under which a proxy shows the house; empty at the root. */
  readonly basePath: string;
  /** Address under which it is reached from outside, for the links in messages; without a slash at its end. */
  readonly publicUrl: string | null;
  /** The owner's passphrase by setting; else one is chosen on the pages before anybody but this machine is let in. */
  readonly passphrase: string | null;
  readonly feed: FeedSettings;
  readonly mail: MailSettings | null;
  /** The owner's message broker; null without one. */
  readonly broker: BrokerSettings | null;
  /** Hosts of the own network that messages may be sent to; without a name here such hosts are refused. */
  readonly privateTargets: readonly string[];
  /** Local clock of each site at which the morning brief is made, hours from midnight. */
  readonly briefAtHour: number;
  readonly locale: string;
  readonly units: (typeof UNITS)[number];
  readonly logLevel: (typeof LOG_LEVELS)[number];
  readonly backupKeepCount: number;
  /** Forecasts that a brief or an amendment was made from; others go after some days. */
  readonly weatherKeepDays: number;
  readonly planKeepDays: number;
}

type Environment = Readonly<Record<string, string | undefined>>;

const MIB_BYTES = 1_048_576;

/**
 * The service's settings from environment variables, or every fault at once. An empty variable counts as not set.
 * Problem paths hold the variable's name; the lines for the owner are made by setting-faults.ts.
 */
export function readSettings(env: Environment): Outcome<ServiceSettings> {
  const given = Object.fromEntries(
    Object.entries(env).filter(([name, text]) => isOurs(name) && text?.trim()),
  );
  const read = EnvironmentSchema.safeParse({
    LEEBENCH_DATA_DIR: defaultDataDir(env),
    ...SETTING_DEFAULTS,
    ...given,
  });
  const problems = [
    ...Object.keys(given)
      .filter((name) => !SETTING_NAMES.includes(name))
      .map(unknownSetting),
    ...(read.success ? [] : read.error.issues.map(problemOfIssue)),
    ...problemsAcross(given),
  ];
  return read.success && problems.length === 0
    ? { ok: true, value: settingsOf(read.data) }
    : { ok: false, problems };
}

function settingsOf(read: EnvironmentRead): ServiceSettings {
  return {
    dataDir: resolve(read.LEEBENCH_DATA_DIR),
    host: read.LEEBENCH_HOST,
    port: read.LEEBENCH_PORT,
    publicHost: read.LEEBENCH_PUBLIC_HOST ?? hostOf(read.LEEBENCH_PUBLIC_URL),
    publicUrl: read.LEEBENCH_PUBLIC_URL ?? null,
    trustedProxies: read.LEEBENCH_TRUSTED_PROXIES ?? [],
    basePath: read.LEEBENCH_BASE_PATH ?? "",
    passphrase: read.LEEBENCH_PASSPHRASE ?? null,
    feed: feedOf(read),
    mail: mailOf(read),
    broker: brokerOf(read),
    privateTargets: read.LEEBENCH_PRIVATE_TARGETS ?? [],
    briefAtHour: clockHour(read.LEEBENCH_BRIEF_AT),
    locale: read.LEEBENCH_LOCALE,
    units: read.LEEBENCH_UNITS,
    logLevel: read.LEEBENCH_LOG_LEVEL,
    backupKeepCount: read.LEEBENCH_BACKUP_KEEP,
    weatherKeepDays: read.LEEBENCH_WEATHER_KEEP_DAYS,
    planKeepDays: read.LEEBENCH_PLAN_KEEP_DAYS,
  };
}

function feedOf(read: EnvironmentRead): FeedSettings {
  return {
    forecastUrl: read.LEEBENCH_FEED_URL,
    ensembleUrl: read.LEEBENCH_ENSEMBLE_URL,
    geocodingUrl: read.LEEBENCH_GEOCODING_URL,
    elevationUrl: read.LEEBENCH_ELEVATION_URL ?? read.LEEBENCH_FEED_URL,
    fallbackUrl: read.LEEBENCH_FALLBACK_URL,
    archiveUrl: read.LEEBENCH_ARCHIVE_URL,
    previousRunsUrl: read.LEEBENCH_PREVIOUS_RUNS_URL,
    ensembleModel: read.LEEBENCH_ENSEMBLE_MODEL,
    timeoutMs: read.LEEBENCH_FEED_TIMEOUT_S * 1000,
    maxBodyBytes: read.LEEBENCH_FEED_MAX_MIB * MIB_BYTES,
    ...(read.LEEBENCH_FEED_KEY === undefined ? {} : { apiKey: read.LEEBENCH_FEED_KEY }),
    ...(read.LEEBENCH_CONTACT === undefined ? {} : { contact: read.LEEBENCH_CONTACT }),
  };
}

function hostOf(url: string | undefined): string | null {
  return url === undefined ? null : new URL(url).hostname;
}

function mailOf(read: EnvironmentRead): MailSettings | null {
  const { LEEBENCH_SMTP_URL: smtpUrl, LEEBENCH_MAIL_FROM: from, LEEBENCH_MAIL_TO: to } = read;
  return smtpUrl && from ? { smtpUrl, from, to: to ?? [] } : null;
}

function brokerOf(read: EnvironmentRead): BrokerSettings | null {
  const { LEEBENCH_MQTT_URL: url, LEEBENCH_MQTT_TOPIC: topic, LEEBENCH_MQTT_VERSION: version } = read;
  return url === undefined ? null : { url, topic, version };
}

function clockHour(text: string): number {
  const [hour = 0, minute = 0] = text.split(":").map(Number);
  return hour + minute / 60;
}

function isOurs(name: string): boolean {
  return name.startsWith("LEEBENCH_");
}

function defaultDataDir(env: Environment): string {
  return join(env.XDG_DATA_HOME || join(homedir(), ".local", "share"), "leebench");
}

function unknownSetting(name: string): Problem {
  return { code: "setting-unknown", path: [name] };
}

function problemOfIssue(issue: {
  message: string;
  path: PropertyKey[];
  params?: Record<string, unknown>;
  values?: unknown[];
}): Problem {
  const data = { ...issue.params, ...(issue.values ? { values: issue.values } : {}) };
  return { code: issue.message, path: [String(issue.path[0])], data };
}

/** Rules that bind several settings, checked even where another one is at fault. */
function problemsAcross(given: Environment): Problem[] {
  const problems: Problem[] = [];
  const mail = ["LEEBENCH_SMTP_URL", "LEEBENCH_MAIL_FROM"];
  const missing = mail.filter((name) => given[name] === undefined);
  if (missing.length === 1 || (missing.length > 0 && given.LEEBENCH_MAIL_TO !== undefined))
    problems.push(...missing.map((name) => ({ code: "mail-setting-missing", path: [name] })));
  return problems;
}
