import { z } from "zod";
import type { Component } from "../../../core/mix/component.ts";
import { componentsById } from "../../../core/mix/library.ts";
import type { Mix, MixPart } from "../../../core/mix/mix.ts";
import type { Problem } from "../../../core/problem.ts";
import { componentName } from "./component-name.ts";
import { type FormView, NumberField } from "./fields.tsx";
import { readForm, type Typed } from "./form-problems.ts";
import { maybeNumber } from "./typed-fields.ts";

const PARTS_SHAPE = z.record(z.string(), maybeNumber({ from: 0, to: 1000 }));

const fieldOf = (componentId: string) => `part.${componentId}`;

/** Parts as typed, one field a component; what is empty or zero is not in the mix. */
export function partsOfForm(typed: Typed): { parts: MixPart[]; problems: readonly Problem[] } {
  const fields = Object.fromEntries(Object.entries(typed).filter(([name]) => name.startsWith("part.")));
  const read = readForm(PARTS_SHAPE, fields);
  if (!read.ok) return { parts: [], problems: read.problems };
  const parts = Object.entries(read.value).flatMap(([name, value]) =>
    value === undefined || value === 0 ? [] : [{ component: name.slice("part.".length), parts: value }],
  );
  return { parts, problems: parts.length > 0 ? [] : [{ code: "no-parts", path: ["parts"] }] };
}

/** A mix as the text of its fields. */
export function typedOfParts(parts: readonly MixPart[]): Record<string, string> {
  return Object.fromEntries(parts.map((part) => [fieldOf(part.component), String(part.parts)]));
}

export function typedOfMix(mix: Mix): Record<string, string> {
  return mix.recipe.kind === "parts"
    ? { name: mix.name, ...typedOfParts(mix.recipe.parts) }
    : { name: mix.name };
}

/** What the fields of a grower's own components are called. */
export function ownLabels(own: readonly Component[] = []): Record<string, string> {
  return Object.fromEntries(own.flatMap(({ id, name }) => (name ? [[fieldOf(id), name]] : [])));
}

/** Parts by loose volume of each component, what drains first, then what holds. */
export function MixFields({ form, own }: { form: FormView; own?: readonly Component[] | undefined }) {
  const { words } = form;
  const { say } = words;
  const components = [...componentsById(own).values()];
  const roles = ["draining", "holding"] as const;
  const noParts = form.problems.find(({ path }) => path[0] === "parts");
  return (
    <fieldset class="group" id="parts">
      <legend>{say("mix.parts")}</legend>
      <p class="hint">{say("mix.parts-hint")}</p>
      {noParts && <p class="problem">{say("problem.no-parts")}</p>}
      {roles.map((role) => (
        <>
          <p class="sub">{say(`mix.${role}`)}</p>
          <div class="parts">
            {components
              .filter((component) => component.role === role)
              .map((component) => (
                <NumberField
                  form={form}
                  name={fieldOf(component.id)}
                  label={componentName(component.id, { words, own })}
                />
              ))}
          </div>
        </>
      ))}
    </fieldset>
  );
}
