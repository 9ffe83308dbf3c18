import { whomItAdmits } from "../access/whom-it-admits.ts";
import { Frame, pageText } from "../pages/frame.tsx";
import type { PageContext } from "../pages/page-context.ts";
import { API_ROOT, type ApiRoute, routerPath } from "./api-route.ts";

/** Every route on one plain page; the schemas stand in the OpenAPI document beside it. */
export function referencePage(routes: readonly ApiRoute[], { words, demo }: PageContext): string {
  const { say } = words;
  const groups = [...new Set(routes.map(({ group }) => group))];
  return pageText(
    <Frame words={words} title={say("api.title")} here="" demo={demo}>
      <h1>{say("api.title")}</h1>
      <p class="lead">{say("api.lead")}</p>
      <p>
        <a href={`${API_ROOT}/openapi.json`}>{say("api.document")}</a>
      </p>
      <nav class="groups" aria-label={say("api.title")}>
        {groups.map((group) => (
          <a href={`#${idOf(group)}`}>{group}</a>
        ))}
      </nav>
      {groups.map((group) => (
        <section id={idOf(group)}>
          <h2>{group}</h2>
          <dl class="routes">
            {routes
              .filter((route) => route.group === group)
              .map((route) => (
                <Row route={route} />
              ))}
          </dl>
        </section>
      ))}
    </Frame>,
  );
}

function idOf(group: string): string {
  return group.replaceAll(" ", "-");
}

function Row({ route }: { route: ApiRoute }) {
  const { method, path, summary, query, hasEtag, takesKey, takesBytes, answerType } = route;
  const admits = whomItAdmits(method, routerPath(route));
  const notes = [
    `${admits ?? "owner"}`,
    ...Object.keys(query?.shape ?? {}).map((name) => `?${name}`),
    ...(hasEtag ? [method === "PUT" ? "If-Match" : "ETag"] : []),
    ...(takesKey ? ["Idempotency-Key"] : []),
    ...(takesBytes ?? []),
    ...(answerType === undefined ? [] : [`→ ${answerType}`]),
  ];
  return (
    <>
      <dt>
        <code>
          {method} {API_ROOT}
          {path}
        </code>
      </dt>
      <dd>
        {summary}. <small>{notes.join(", ")}</small>
      </dd>
    </>
  );
}
