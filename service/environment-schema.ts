import { isIP } from "node:net";
import { z } from "zod";
import { DEFAULT_FEED_SETTINGS } from "./feed/feed-settings.ts";
import { isLocale } from "./words/is-locale.ts";

// Messages here are problem codes; the lines that the owner reads stand in setting-faults.ts.

/** Every setting that the environment may hold, with its default as it would be typed. */
export const SETTING_DEFAULTS = {
  LEEBENCH_HOST: "127.0.0.1",
  LEEBENCH_PORT: "4680",
  LEEBENCH_FEED_URL: DEFAULT_FEED_SETTINGS.forecastUrl,
  LEEBENCH_ENSEMBLE_URL: DEFAULT_FEED_SETTINGS.ensembleUrl,
  LEEBENCH_GEOCODING_URL: DEFAULT_FEED_SETTINGS.geocodingUrl,
  LEEBENCH_FALLBACK_URL: DEFAULT_FEED_SETTINGS.fallbackUrl,
  LEEBENCH_ARCHIVE_URL: DEFAULT_FEED_SETTINGS.archiveUrl,
  LEEBENCH_PREVIOUS_RUNS_URL: DEFAULT_FEED_SETTINGS.previousRunsUrl,
  LEEBENCH_ENSEMBLE_MODEL: DEFAULT_FEED_SETTINGS.ensembleModel,
  LEEBENCH_FEED_TIMEOUT_S: "10",
  LEEBENCH_FEED_MAX_MIB: "8",
  LEEBENCH_MQTT_TOPIC: "leebench",
  LEEBENCH_MQTT_VERSION: "3.1.1",
  LEEBENCH_BRIEF_AT: "05:30",
  LEEBENCH_LOCALE: "en-GB",
  LEEBENCH_UNITS: "metric",
  LEEBENCH_LOG_LEVEL: "info",
  LEEBENCH_BACKUP_KEEP: "14",
  LEEBENCH_WEATHER_KEEP_DAYS: "400",
  LEEBENCH_PLAN_KEEP_DAYS: "400",
} as const;

export const UNITS = ["metric", "us"] as const;
export const LOG_LEVELS = ["debug", "info", "warn", "error", "silent"] as const;
export const PASSPHRASE_LEAST_CHARS = 12;
/** More would only cost time. */
export const PASSPHRASE_MOST_CHARS = 200;

const baseUrl = (...schemes: string[]) =>
  z
    .string()
    .refine((text) => URL.canParse(text) && schemes.includes(new URL(text).protocol), {
      error: "setting-not-a-url",
      params: { schemes },
    })
    .transform((text) => text.replace(/\/+$/, ""));

const whole = (from: number, to: number) =>
  z
    .string()
    .refine((text) => /^\d+$/.test(text) && Number(text) >= from && Number(text) <= to, {
      error: "setting-not-in-range",
      params: { from, to },
    })
    .transform(Number);

const ADDRESS = /^[^\s@<>,;]+@[^\s@<>,;]+$|^[^<>@\r\n,;]*<[^\s@<>,;]+@[^\s@<>,;]+>$/;
const mailAddress = z.string().regex(ADDRESS, "setting-not-a-mail-address");

export const EnvironmentSchema = z.object({
  LEEBENCH_DATA_DIR: z.string(),
  LEEBENCH_HOST: z.string().regex(/^[A-Za-z0-9.:-]+$/, "setting-not-a-host"),
  LEEBENCH_PORT: whole(0, 65_535),
  LEEBENCH_PUBLIC_HOST: z
    .string()
    .regex(/^[A-Za-z0-9.-]+$/, "setting-not-a-host")
    .optional(),
  LEEBENCH_TRUSTED_PROXIES: z
    .string()
    .transform((text) => text.split(",").map((part) => part.trim()))
    .refine((ranges) => ranges.every(isRange), { error: "setting-not-a-range" })
    .optional(),
  LEEBENCH_BASE_PATH: z
    .string()
    .transform((text) => text.replace(/\/+$/, ""))
    .refine((path) => /^(\/[A-Za-z0-9_~-][\w.~-]*)*$/.test(path), { error: "setting-not-a-path" })
    .optional(),
  LEEBENCH_PUBLIC_URL: baseUrl("http:", "https:").optional(),
  LEEBENCH_PASSPHRASE: z
    .string()
    .min(PASSPHRASE_LEAST_CHARS, "passphrase-too-short")
    .max(PASSPHRASE_MOST_CHARS, "passphrase-too-long")
    .optional(),
  LEEBENCH_FEED_URL: baseUrl("http:", "https:"),
  LEEBENCH_ENSEMBLE_URL: baseUrl("http:", "https:"),
  LEEBENCH_GEOCODING_URL: baseUrl("http:", "https:"),
  LEEBENCH_ELEVATION_URL: baseUrl("http:", "https:").optional(),
  LEEBENCH_FALLBACK_URL: baseUrl("http:", "https:"),
  LEEBENCH_ARCHIVE_URL: baseUrl("http:", "https:"),
  LEEBENCH_PREVIOUS_RUNS_URL: baseUrl("http:", "https:"),
  LEEBENCH_FEED_KEY: z.string().optional(),
  LEEBENCH_CONTACT: z.string().optional(),
  LEEBENCH_FEED_TIMEOUT_S: whole(1, 120),
  LEEBENCH_FEED_MAX_MIB: whole(1, 64),
  LEEBENCH_ENSEMBLE_MODEL: z.string().regex(/^[a-z0-9_]+$/, "setting-not-a-model-name"),
  LEEBENCH_SMTP_URL: baseUrl("smtp:", "smtps:").optional(),
  LEEBENCH_MAIL_FROM: mailAddress.optional(),
  LEEBENCH_MAIL_TO: z
    .string()
    .transform((text) => text.split(",").map((part) => part.trim()))
    .pipe(z.array(mailAddress).min(1))
    .optional(),
  LEEBENCH_MQTT_URL: baseUrl("mqtt:", "mqtts:").optional(),
  LEEBENCH_MQTT_TOPIC: z.string().regex(/^[^#+\s/][^#+\s]*$/, "setting-not-a-topic"),
  LEEBENCH_MQTT_VERSION: z.enum(["3.1.1", "5"], "setting-not-one-of"),
  LEEBENCH_PRIVATE_TARGETS: z
    .string()
    .transform((text) => text.split(",").map((part) => part.trim()))
    .pipe(z.array(z.string().regex(/^[A-Za-z0-9.:[\]-]+$/, "setting-not-a-host")))
    .optional(),
  LEEBENCH_BRIEF_AT: z.string().regex(/^(0?\d|1[01]):[0-5]\d$/, "setting-not-a-clock-time"),
  LEEBENCH_LOCALE: z.string().refine(isLocale, { error: "setting-not-a-locale" }),
  LEEBENCH_UNITS: z.enum(UNITS, "setting-not-one-of"),
  LEEBENCH_LOG_LEVEL: z.enum(LOG_LEVELS, "setting-not-one-of"),
  LEEBENCH_BACKUP_KEEP: whole(1, 365),
  LEEBENCH_WEATHER_KEEP_DAYS: whole(2, 3650),
  LEEBENCH_PLAN_KEEP_DAYS: whole(31, 36_500),
});

export type EnvironmentRead = z.output<typeof EnvironmentSchema>;

export const SETTING_NAMES: readonly string[] = Object.keys(EnvironmentSchema.shape);

/** An address, or one with the number of its leading bits that count (RFC 4632). */
function isRange(text: string): boolean {
  const [address = "", bits = "0", ...more] = text.split("/");
  const most = { 0: -1, 4: 32, 6: 128 }[isIP(address)] ?? -1;
  return more.length === 0 && /^\d{1,3}$/.test(bits) && Number(bits) <= most;
}
