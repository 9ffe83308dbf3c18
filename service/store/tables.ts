import type { Generated } from "kysely";

/** A JSON document of one subject at one site. */
interface DocumentTable {
  site_id: string;
  id: string;
  document: string;
  updated_utc_ms: number;
}

interface HourValues {
  temp_c: number | null;
  dew_point_c: number | null;
  rain_mm: number | null;
  wind_m_per_s: number | null;
  gust_m_per_s: number | null;
  radiation_mj_per_m2: number | null;
  cloud_frac: number | null;
  weather_code: number | null;
  feed_et0_mm: number | null;
  feed_rain_chance_frac: number | null;
}

export interface Tables {
  house: { name: string; value: string };
  site: { id: string; document: string; updated_utc_ms: number };
  spot: DocumentTable;
  mix: DocumentTable;
  pot: DocumentTable;
  own_component: DocumentTable;
  own_group: DocumentTable;
  site_settings: { site_id: string; document: string; updated_utc_ms: number };
  journal: {
    seq: Generated<number>;
    site_id: string;
    id: string;
    at_utc_ms: number;
    recorded_utc_ms: number;
    pot_id: string | null;
    body: string;
  };
  photo: { site_id: string; id: string; added_utc_ms: number; bytes: Uint8Array };
  weather_pull: {
    id: Generated<number>;
    site_id: string;
    fetched_utc_ms: number;
    source: string;
    credit: string;
    start_utc_ms: number;
    hour_count: number;
    member_count: number;
    body: Uint8Array;
    coarse_from_utc_ms: number | null;
  };
  past_hour: HourValues & {
    site_id: string;
    /** Instant at which the hour ends. */
    end_utc_ms: number;
    fetched_utc_ms: number;
    /** The pull since which it is known so; 0 for what came by import. */
    since_pull_id: number;
    /** 1 while only an earlier forecast tells of it. */
    foretold: number;
  };
  /** Hours as they were known until a later pull corrected them. */
  past_hour_before: HourValues & {
    site_id: string;
    end_utc_ms: number;
    since_pull_id: number;
    /** The pull that corrected it. */
    until_pull_id: number;
  };
  plan: {
    id: Generated<number>;
    site_id: string;
    for_day: string;
    kind: PlanKind;
    made_utc_ms: number;
    late: number;
    weather_pull_id: number | null;
    document: string;
  };
  plan_input: {
    plan_id: number;
    program: string;
    journal_seq: number;
    previous_plan_id: number | null;
    body: Uint8Array;
  };
  outbox: {
    id: string;
    site_id: string;
    plan_id: number | null;
    channel: string;
    subject: string;
    body: string;
    created_utc_ms: number;
    keep_trying_until_utc_ms: number;
    state: MessageState;
    tries: number;
    next_try_utc_ms: number;
    settled_utc_ms: number | null;
    last_fault: string | null;
    extra: string | null;
  };
  person: { id: string; document: string; updated_utc_ms: number };
  channel: { id: string; person_id: string; document: string; updated_utc_ms: number };
  run: {
    id: Generated<number>;
    site_id: string | null;
    job: JobName;
    /** What the run was for: the local day of a morning, else empty. */
    slot: string;
    started_utc_ms: number;
    ended_utc_ms: number;
    outcome: "done" | "failed";
    late: number;
    detail: string;
  };
  feed_state: { site_id: string; document: string };
  watch_state: { site_id: string; document: string };
  account: {
    id: string;
    name: string;
    role: string;
    passphrase: string | null;
    code_digest: string | null;
    code_ends_utc_ms: number | null;
    created_utc_ms: number;
  };
  session: {
    digest: string;
    account_id: string;
    stamp: string;
    device: string;
    created_utc_ms: number;
    seen_utc_ms: number;
  };
  api_token: {
    id: string;
    digest: string;
    name: string;
    role: string;
    created_utc_ms: number;
    ends_utc_ms: number;
    used_utc_ms: number | null;
  };
  kept_answer: { asker: string; key: string; request_digest: string; answer: string; made_utc_ms: number };
}

/** `morning` is the day's brief, `amendment` a change told in the day, `asked` was made because somebody wanted it. */
export type PlanKind = "morning" | "amendment" | "asked" | "watch";
export type MessageState = "waiting" | "sent" | "given-up";
export type JobName = "pull" | "morning" | "watch" | "nightly";
