import { NumberField, ProblemList } from "../pages/forms/fields.tsx";
import type { ApiToken } from "../store/tokens-store.ts";
import type { Words } from "../words/words.ts";
import { accessForm, NameAndRole, type Shown } from "./access-form.tsx";
import { dayText } from "./day-text.ts";
import { ROLES } from "./roles.ts";

/** Tokens for scripts: made with a role and an end, shown once, taken back at any time. */
export function TokensPart(props: {
  words: Words;
  tokens: readonly ApiToken[];
  shown: Partial<Shown>;
  nowUtcMs: number;
}) {
  const { words, tokens, shown, nowUtcMs } = props;
  const { say } = words;
  const form = accessForm("tokens", { shown, words, begins: { mayDo: "viewer", days: "90" } });
  return (
    <section class="access">
      <h2>{say("access.tokens")}</h2>
      <p class="hint">
        {say("access.tokens-hint")} <a href="/api/v1/reference">{say("api.title")}</a>
      </p>
      {shown.token !== undefined && (
        <p role="status">
          {say("access.token")} <code class="secret">{shown.token}</code>
        </p>
      )}
      <ul class="plain">
        {tokens.map(({ id, name, role, endsUtcMs }) => (
          <li>
            <p>
              {say(endsUtcMs < nowUtcMs ? "access.token-over" : "access.token-row", {
                name,
                role: say(`role.${role}`),
                onDay: dayText(endsUtcMs),
              })}
            </p>
            <form method="post" action={`/house/access/tokens/${encodeURIComponent(id)}`}>
              <button type="submit" class="quiet" aria-label={say("access.token-remove-label", { name })}>
                {say("access.token-remove")}
              </button>
            </form>
          </li>
        ))}
      </ul>
      <form method="post" action="/house/access/tokens">
        <ProblemList form={form} labels={{ name: say("field.token-name"), days: say("field.token-days") }} />
        <NameAndRole form={form} label={say("field.token-name")} roles={ROLES} />
        <NumberField form={form} name="days" label={say("field.token-days")} />
        <button type="submit">{say("access.add-token")}</button>
      </form>
    </section>
  );
}
