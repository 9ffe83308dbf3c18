import type Database from "better-sqlite3";

/**
 * Fills what each version added, in SQL as that version would have it: fill n goes with step n. A fill is never changed
 * once its step is released, so that old stores stay old.
 */
export const FILLS: readonly ((raw: Database.Database) => void)[] = [
  fillVersion1,
  fillVersion2,
  fillVersion3,
  fillVersion4,
  fillVersion5,
];

function fillVersion1(raw: Database.Database): void {
  raw.exec("INSERT INTO house VALUES ('id', '00ff')");
  raw.exec(`INSERT INTO site VALUES ('yard', '{"id":"yard"}', 1)`);
  for (const table of ["spot", "mix", "pot", "own_component", "own_group"])
    raw.exec(
      `INSERT INTO ${table} VALUES ('yard', 'one', '{"id":"one"}', 1), ('yard', 'two', '{"id":"two"}', 2)`,
    );
  raw.exec(`INSERT INTO site_settings VALUES ('yard', '{"seed":1}', 1)`);
  raw.exec(
    `INSERT INTO journal (site_id, id, at_utc_ms, recorded_utc_ms, pot_id, body)
     VALUES ('yard', 'e1', 1, 2, 'one', '{"kind":"fed"}'), ('yard', 'e2', 3, 4, NULL, '{"kind":"note","text":"x"}')`,
  );
  raw.exec(
    `INSERT INTO weather_pull (site_id, fetched_utc_ms, source, credit, start_utc_ms, hour_count, member_count, body)
     VALUES ('yard', 1, 'primary', 'c', 0, 0, 0, x'0300')`,
  );
  raw.exec(
    "INSERT INTO past_hour (site_id, end_utc_ms, fetched_utc_ms, temp_c) VALUES ('yard', 3600000, 1, 12.5)",
  );
  raw.exec(
    `INSERT INTO plan (site_id, for_day, kind, made_utc_ms, late, weather_pull_id, document)
     VALUES ('yard', '2031-05-02', 'morning', 1, 0, 1, '{"version":1}')`,
  );
  raw.exec(
    `INSERT INTO outbox VALUES ('m1', 'yard', 1, 'mail', 's', 'b', 1, 2, 'waiting', 0, 1, NULL, NULL),
     ('m2', 'yard', 1, 'log', 's', 'b', 1, 2, 'sent', 1, 1, 5, NULL)`,
  );
  raw.exec(
    `INSERT INTO run (site_id, job, slot, started_utc_ms, ended_utc_ms, outcome, late, detail)
     VALUES ('yard', 'morning', '2031-05-02', 1, 1, 'done', 0, ''), (NULL, 'nightly', '2031-05-02', 1, 1, 'failed', 1, 'x')`,
  );
  raw.exec(`INSERT INTO feed_state VALUES ('yard', '{}')`);
  raw.exec(`INSERT INTO watch_state VALUES ('yard', '{}')`);
}

function fillVersion2(raw: Database.Database): void {
  raw.exec(`INSERT INTO person VALUES ('ann', '{"id":"ann"}', 1), ('bea', '{"id":"bea"}', 2)`);
  raw.exec(`INSERT INTO channel VALUES ('mail-0123456789ab', 'ann', '{"kind":"mail"}', 1)`);
  raw.exec(
    `INSERT INTO outbox VALUES ('m3', 'yard', 1, 'mail-0123456789ab', 's', 'b', 1, 2, 'waiting', 0, 1, NULL, NULL, '{"html":""}')`,
  );
}

function fillVersion3(raw: Database.Database): void {
  raw.exec("INSERT INTO photo VALUES ('yard', '0123456789abcdef0123456789abcdef-4x3', 5, x'52494646')");
}

function fillVersion4(raw: Database.Database): void {
  raw.exec(
    `INSERT INTO account VALUES ('owner', 'Mirren', 'owner', 'scrypt$15$8$3$c2FsdA$aGFzaA', NULL, NULL, 1),
     ('a2', 'Tov', 'helper', NULL, '0a', 9, 1)`,
  );
  raw.exec("INSERT INTO session VALUES ('0b', 'owner', 's', 'a browser', 1, 2)");
  raw.exec("INSERT INTO api_token VALUES ('t1', '0c', 'scales', 'helper', 1, 9, NULL)");
  raw.exec(`INSERT INTO kept_answer VALUES ('t1', 'k', '0d', '{}', 1)`);
}

function fillVersion5(raw: Database.Database): void {
  raw.exec(`INSERT INTO plan_input VALUES (1, '0.1.0', 2, NULL, x'0300')`);
  raw.exec("UPDATE past_hour SET temp_c = 13.5, since_pull_id = 1");
}
