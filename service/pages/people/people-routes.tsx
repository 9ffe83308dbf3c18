import { type Context, Hono } from "hono";
import { sendTest } from "../../notify/send-test.ts";
import { type ChannelKind, MESSAGE_KINDS, type Person, type StoredChannel } from "../../store/person.ts";
import { fieldTexts, typedForm } from "../forms/form-body.ts";
import type { PageContext } from "../page-context.ts";
import { type SiteNow, siteNow } from "../site-now.ts";
import { channelOfForm, newSecret } from "./new-channel.ts";
import { peoplePage } from "./people-page.tsx";
import { newPerson, personOfForm } from "./person-form.tsx";
import { NOTHING_ASKED, type PersonAsked, personPage } from "./person-page.tsx";

const NOT_KEPT = 422;
const KINDS = ["mail", "push", "webhook", "calendar"] as const satisfies readonly ChannelKind[];

/** Who gets which messages by which ways. */
export function peopleRoutes(context: PageContext): Hono {
  const routes = new Hono();
  routes.get("/people", (c) =>
    atSite(c, context, async (now) => c.html(await peoplePage(context, { now, asked: NOTHING_ASKED }))),
  );
  routes.post("/people", (c) => atSite(c, context, (now) => addPerson(c, context, now)));
  routes.post("/people/test", (c) => atSite(c, context, (now) => test(c, context, now)));
  routes.get("/people/:id", (c) =>
    withPerson(c, context, async (person, now) =>
      c.html(await personPage(context, { now, person, asked: NOTHING_ASKED })),
    ),
  );
  routes.post("/people/:id", (c) =>
    withPerson(c, context, (person, now) => keepPerson(c, context, { person, now })),
  );
  routes.post("/people/:id/remove", (c) =>
    withPerson(c, context, async ({ id }) => {
      await context.store.people.remove(id);
      return c.redirect("/people", 303);
    }),
  );
  routes.post("/people/:id/channels", (c) =>
    withPerson(c, context, (person, now) => addChannel(c, context, { person, now })),
  );
  routes.post("/people/:id/channels/:channel", (c) =>
    withChannel(c, context, async (stored) => {
      const kinds = new Set(await fieldTexts(c, "kinds"));
      await context.store.channels.put({ ...stored, kinds: MESSAGE_KINDS.filter((kind) => kinds.has(kind)) });
    }),
  );
  routes.post("/people/:id/channels/:channel/renew", (c) =>
    withChannel(c, context, async (stored) => {
      if (stored.kind === "calendar") await context.store.channels.put({ ...stored, secret: newSecret() });
    }),
  );
  routes.post("/people/:id/channels/:channel/remove", (c) =>
    withChannel(c, context, ({ id }) => context.store.channels.remove(id)),
  );
  return routes;
}

async function addPerson(c: Context, context: PageContext, now: SiteNow): Promise<Response> {
  const typed = await typedForm(c);
  const read = personOfForm(typed, newPerson(context.words.choice));
  if (!read.ok) {
    const asked: PersonAsked = { ...NOTHING_ASKED, form: "person", view: { typed, problems: read.problems } };
    return c.html(await peoplePage(context, { now, asked }), NOT_KEPT);
  }
  await context.store.people.put(read.value);
  return c.redirect(`/people/${read.value.id}`, 303);
}

interface AtPerson {
  readonly person: Person;
  readonly now: SiteNow;
}

async function keepPerson(c: Context, context: PageContext, { person, now }: AtPerson): Promise<Response> {
  const typed = await typedForm(c);
  const read = personOfForm(typed, person);
  if (!read.ok) {
    const asked: PersonAsked = { ...NOTHING_ASKED, form: "person", view: { typed, problems: read.problems } };
    return c.html(await personPage(context, { now, person, asked }), NOT_KEPT);
  }
  await context.store.people.put(read.value);
  return c.redirect(`/people/${person.id}`, 303);
}

async function addChannel(c: Context, context: PageContext, { person, now }: AtPerson): Promise<Response> {
  const typed = await typedForm(c);
  const kind = KINDS.find((one) => one === typed.kind) ?? "mail";
  const read = channelOfForm(kind, typed, person.id);
  if (!read.ok) {
    const form = kind === "webhook" ? kind : "mail";
    const asked: PersonAsked = { ...NOTHING_ASKED, form, view: { typed, problems: read.problems } };
    return c.html(await personPage(context, { now, person, asked }), NOT_KEPT);
  }
  await context.store.channels.put(read.value);
  return c.redirect(`/people/${person.id}`, 303);
}

async function test(c: Context, context: PageContext, now: SiteNow): Promise<Response> {
  const { way: name = "", person: personId = "" } = await typedForm(c);
  const { store, post } = context;
  const person = await store.people.get(personId);
  const way = (await post.ways()).find(({ channel }) => channel.name === name);
  if (!way) return c.redirect(person ? `/people/${person.id}` : "/people", 303);
  const delivery = await sendTest(way, { store, site: now.site, nowUtcMs: context.now() });
  const asked: PersonAsked = { ...NOTHING_ASKED, tested: { way: name, delivery } };
  return c.html(
    person ? await personPage(context, { now, person, asked }) : await peoplePage(context, { now, asked }),
  );
}

async function atSite(
  c: Context,
  context: PageContext,
  go: (now: SiteNow) => Promise<Response>,
): Promise<Response> {
  const now = await siteNow(context);
  return now ? go(now) : c.redirect("/begin", 303);
}

function withPerson(
  c: Context,
  context: PageContext,
  go: (person: Person, now: SiteNow) => Promise<Response>,
): Promise<Response> {
  return atSite(c, context, async (now) => {
    const person = await context.store.people.get(c.req.param("id") ?? "");
    return person ? go(person, now) : c.redirect("/people", 303);
  });
}

/** Does something to a way of the person and shows the person again. */
function withChannel(
  c: Context,
  context: PageContext,
  go: (stored: StoredChannel) => Promise<void>,
): Promise<Response> {
  return withPerson(c, context, async (person) => {
    const stored = await context.store.channels.get(c.req.param("channel") ?? "");
    if (stored?.personId === person.id) await go(stored);
    return c.redirect(`/people/${person.id}`, 303);
  });
}
