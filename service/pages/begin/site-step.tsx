import { z } from "zod";
import type { Outcome } from "../../../core/problem.ts";
import type { Site } from "../../../core/site/site.ts";
import { SiteSchema } from "../../case/site-schema.ts";
import type { Place } from "../../feed/search-places.ts";
import { type FormView, NumberField, ProblemList, TextField } from "../forms/fields.tsx";
import { maybeNumber, neededDegrees, neededText } from "../forms/typed-fields.ts";

/** A site as typed or as a found place gives it. */
export const SiteForm = z.object({
  name: neededText(),
  latDeg: neededDegrees({ to: 90, positive: "N", negative: "S" }),
  // West is O in Spanish.
  lonDeg: neededDegrees({ to: 180, positive: "E", negative: "WO" }),
  elevationM: maybeNumber({ from: -450, to: 9000 }),
  zone: neededText(100).refine((zone) => SiteSchema.shape.zone.safeParse(zone).success, "no-such-zone"),
});

export type SiteTyped = z.output<typeof SiteForm>;

export function siteOf(typed: SiteTyped, id: string, elevationM: number): Site {
  return { id, name: typed.name, latDeg: typed.latDeg, lonDeg: typed.lonDeg, elevationM, zone: typed.zone };
}

interface SiteStepProps {
  readonly form: FormView;
  /** The name that was searched for and what came of it; null before a search. */
  readonly search: { readonly name: string; readonly found: Outcome<Place[]> } | null;
}

/** Value of the button that searches; the same form takes the place, so that what was typed stays. */
export const SEARCH = "search";

/** Where the pots stand: found by name, or by coordinates. */
export function SiteStep({ form, search }: SiteStepProps) {
  const { say } = form.words;
  return (
    <>
      <form method="post" action={SITE_ADDRESS}>
        <ProblemList form={form} labels={{ name: say("field.site-name") }} />
        <fieldset class="group">
          <legend>{say("begin.site.by-name")}</legend>
          <TextField form={form} name="place" type="search" label={say("field.place")} />
          <button type="submit" name="do" value={SEARCH}>
            {say("begin.site.search")}
          </button>
          {search && <Found search={search} form={form} />}
        </fieldset>
        <fieldset class="group">
          <legend>{say("begin.site.by-coordinates")}</legend>
          <TextField form={form} name="name" label={say("field.site-name")} hint={say("hint.site-name")} />
          <div class="row">
            <NumberField form={form} name="latDeg" label={say("field.latDeg")} unit="°" />
            <NumberField form={form} name="lonDeg" label={say("field.lonDeg")} unit="°" />
            <NumberField form={form} name="elevationM" label={say("field.elevationM")} unit="m" />
          </div>
          <p class="hint">{say("hint.coordinates")}</p>
          <TextField form={form} name="zone" label={say("field.zone")} hint={say("hint.zone")} list="zones" />
          <datalist id="zones">
            {Intl.supportedValuesOf("timeZone").map((zone) => (
              <option value={zone} />
            ))}
          </datalist>
        </fieldset>
        <button type="submit">{say("begin.site.use")}</button>
      </form>
      {search?.found.ok &&
        search.found.value.map((place, index) => <FoundForm place={place} index={index} />)}
    </>
  );
}

const SITE_ADDRESS = "/begin/site";
const foundId = (index: number) => `found-${index}`;

function Found({
  search,
  form: { words },
}: {
  search: NonNullable<SiteStepProps["search"]>;
  form: FormView;
}) {
  const { name, found } = search;
  if (!found.ok) return <p class="problem">{words.say("begin.site.no-search")}</p>;
  if (found.value.length === 0) return <p class="problem">{words.say("begin.site.none", { name })}</p>;
  return (
    <ul class="plain found">
      {found.value.map((place, index) => (
        <li>
          <p>
            <span class="verb">{place.name}</span> {whereText(place)}
          </p>
          <button
            type="submit"
            form={foundId(index)}
            class="quiet"
            aria-label={words.say("begin.site.take-label", { name: place.name })}
          >
            {words.say("begin.site.take")}
          </button>
        </li>
      ))}
    </ul>
  );
}

/** Sent by the button of a found place, which stands within the form of the search. */
function FoundForm({ place, index }: { place: Place; index: number }) {
  return (
    <form id={foundId(index)} method="post" action={SITE_ADDRESS}>
      {Object.entries(typedOfPlace(place)).map(([field, value]) => (
        <input type="hidden" name={field} value={value} />
      ))}
    </form>
  );
}

function whereText({ district, region, country, name }: Place): string {
  return [district, region, country].filter((part) => part !== null && part !== name).join(", ");
}

/** What the gazetteer does not know is left for the grower to fill in. */
function typedOfPlace(place: Place): Record<string, string> {
  return {
    name: place.name,
    latDeg: String(place.latDeg),
    lonDeg: String(place.lonDeg),
    elevationM: place.elevationM === null ? "" : String(place.elevationM),
    zone: place.zone ?? "",
  };
}
