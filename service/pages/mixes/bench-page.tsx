import type { Finding } from "../../../core/mix/finding.ts";
import { fitness } from "../../../core/mix/fitness.ts";
import { componentsById } from "../../../core/mix/library.ts";
import type { Mix } from "../../../core/mix/mix.ts";
import { moistureProfile } from "../../../core/pot/profile.ts";
import { mixDepthCm } from "../../../core/pot/vessel-shape.ts";
import { READY_MIX_KEYS } from "../begin/ready-mixes.ts";
import { PotSection } from "../drawing/pot-section.tsx";
import { type FormView, ProblemList, RadioField, SelectField, TextField } from "../forms/fields.tsx";
import { MixFields, ownLabels } from "../forms/mix-fields.tsx";
import { VesselFields } from "../forms/vessel-fields.tsx";
import type { PageContext } from "../page-context.ts";
import type { SiteNow } from "../site-now.ts";
import { benchAddress, typedAfter } from "./bench-address.ts";
import type { BenchState } from "./bench-state.ts";
import { Comparison } from "./comparison.tsx";
import { cureText, findingText, standingText } from "./finding-text.ts";
import { LaboratoryFigures } from "./laboratory-figures.tsx";
import { MixFacts } from "./mix-facts.tsx";

export interface BenchProps {
  readonly context: PageContext;
  readonly now: SiteNow;
  readonly state: BenchState;
  /** The kept mix that is on the bench; null for a new one. */
  readonly mix: Mix | null;
  readonly formId: string;
}

/** Build a mix and see it: parts on one side, what they make in the grower's vessel on the other. */
export function BenchPage(props: BenchProps) {
  const { context, mix, state } = props;
  const { say } = context.words;
  return (
    <>
      <h1>{mix?.name ?? say("bench.title")}</h1>
      <p class="lead">{say("bench.lead")}</p>
      {mix && <MixDoors mix={mix} state={state} context={context} />}
      <div class="two bench">
        <div class="bench-seen">{state.inVessel ? <Seen {...props} /> : <p>{say("bench.empty")}</p>}</div>
        <Parts {...props} />
      </div>
    </>
  );
}

/** To the batch sheet and the porosity test of a kept mix. */
function MixDoors({ mix, state, context: { words } }: { mix: Mix; state: BenchState; context: PageContext }) {
  const path = `/mixes/${encodeURIComponent(mix.id)}`;
  return (
    <p class="doors">
      <a class="button quiet" href={benchAddress(`${path}/batch`, state.typed)}>
        {words.say("bench.batch")}
      </a>{" "}
      <a class="button quiet" href={`${path}/test`}>
        {words.say("bench.test")}
      </a>
    </p>
  );
}

const BENCH_SCALE = { pxPerCm: 11, lineMm: 3 } as const;
/** Widest vessel that is drawn at full scale, px. */
const WIDEST_PX = 225;

function Seen(props: BenchProps) {
  const { state, context } = props;
  const { words } = context;
  const vessel = state.vessel!;
  const { hold, retention } = state.inVessel!;
  const profile = moistureProfile({ retention, vessel, waterMl: hold.capacityMl });
  const depthCm = mixDepthCm(vessel);
  return (
    <>
      <figure class="page-section">
        <PotSection
          vessel={vessel}
          profile={profile}
          lineMm={BENCH_SCALE.lineMm}
          pxPerCm={Math.min(BENCH_SCALE.pxPerCm, WIDEST_PX / Math.max(vessel.topCm, vessel.baseCm))}
          layers={[
            {
              fromCm: 0,
              toCm: hold.wetLayerCm,
              text: words.say("bench.wet-layer", { layerCm: hold.wetLayerCm }),
            },
            {
              fromCm: hold.wetLayerCm,
              toCm: depthCm,
              text: words.say("bench.body", { layerCm: depthCm - hold.wetLayerCm }),
            },
          ]}
          label={words.say("bench.section", { wetLayerCm: hold.wetLayerCm, capacityMl: hold.capacityMl })}
        />
        <figcaption>
          {words.say("bench.legend", { topAirFrac: profile.airFrac[profile.airFrac.length - 1]! })}
        </figcaption>
      </figure>
      <MixFacts inVessel={state.inVessel!} words={words} />
      <LaboratoryFigures figures={state.figures!} words={words} />
      <Findings {...props} />
      <Comparison {...props} />
    </>
  );
}

/** What growers would change, each with the change that cures it, one tap away. */
function Findings({ context, now, state, mix }: BenchProps) {
  const { words } = context;
  const judged = fitness({
    parts: state.parts,
    components: componentsById(now.collection.ownComponents),
    purpose: { leafy: state.isLeafy, compact: state.isCompact },
    vessel: state.vessel!,
  });
  if (!judged.ok) return null;
  const path = mix ? `/mixes/${encodeURIComponent(mix.id)}` : "/mixes/new";
  return (
    <section>
      <h2>{words.say("bench.findings")}</h2>
      {judged.value.length === 0 ? (
        <p>{words.say("bench.no-findings")}</p>
      ) : (
        <ul class="plain">
          {judged.value.map((finding: Finding) => (
            <li>
              <p>{findingText(finding, words)}</p>
              <p class="hint">{standingText(finding, words)}</p>
              {finding.cure === null ? (
                <p class="hint">{words.say("cure.none")}</p>
              ) : (
                <p>
                  <a class="button quiet" href={benchAddress(path, typedAfter(state.typed, finding.cure))}>
                    {cureText(finding.cure, { words, own: now.collection.ownComponents })}
                  </a>
                </p>
              )}
            </li>
          ))}
        </ul>
      )}
    </section>
  );
}

/** The form: sent by GET it shows, sent by POST it keeps. */
function Parts({ context, now, state, mix, formId }: BenchProps) {
  const { words } = context;
  const { say } = words;
  const form: FormView = {
    typed: { name: mix?.name ?? "", ...state.typed },
    problems: state.problems,
    words,
  };
  const path = mix ? `/mixes/${encodeURIComponent(mix.id)}` : "/mixes/new";
  const own = now.collection.ownComponents;
  const labels = { ...ownLabels(own), name: say("field.mix-name") };
  const others = now.collection.mixes.filter(({ id, recipe }) => id !== mix?.id && recipe.kind === "parts");
  return (
    <div>
      {!mix && <Starts context={context} />}
      <form method="get" action={path}>
        <ProblemList form={form} labels={labels} />
        <input type="hidden" name="formId" value={formId} />
        <MixFields form={form} own={own} />
        <p>
          <a href="/components">{say("library.door")}</a> · <a href="/components/new">{say("own.door")}</a>
        </p>
        <RadioField
          form={form}
          name="for"
          label={say("field.for")}
          options={[
            { value: "leafy", text: say("groups.leafy") },
            { value: "dry", text: say("groups.dry") },
          ]}
        />
        <label class="choice">
          <input type="checkbox" name="compact" value="yes" checked={state.isCompact} />
          <span>{say("bench.compact")}</span>
        </label>
        <VesselFields form={form} />
        {others.length > 0 && (
          <SelectField
            form={{ ...form, typed: { with: "", ...state.typed } }}
            name="with"
            label={say("field.with")}
            options={[
              { value: "", text: say("bench.with-none") },
              ...others.map(({ id, name }) => ({ value: id, text: name })),
            ]}
          />
        )}
        <button type="submit">{say("bench.show")}</button>
        <fieldset class="group">
          <legend>{say("bench.keep")}</legend>
          <TextField form={form} name="name" label={say("field.mix-name")} />
          <p class="deed-note">{say("mix.dust")}</p>
          <button type="submit" class="quiet" formmethod="post" formaction={path}>
            {say("mix.keep")}
          </button>
        </fieldset>
      </form>
    </div>
  );
}

function Starts({ context: { words } }: { context: PageContext }) {
  return (
    <>
      <p>{words.say("mix.start-from")}</p>
      <ul class="starts">
        {READY_MIX_KEYS.map((key) => (
          <li>
            <a class="button quiet" href={`/mixes/new?start=${key}`}>
              {words.say(`ready-mix.${key}`)}
            </a>
          </li>
        ))}
      </ul>
    </>
  );
}
