import type { Collection } from "../../../core/plan/collection.ts";
import {
  type FormView,
  NumberField,
  ProblemList,
  RadioField,
  SelectField,
  TextField,
} from "../forms/fields.tsx";
import { SureBox } from "../forms/sure-box.tsx";
import { VesselFields } from "../forms/vessel-fields.tsx";
import { FEELS, GONE, LEAVES, type LogKind, SIGNS } from "./log-body.ts";
import { rootWorkOptions } from "./root-works.ts";

interface LogFormProps {
  readonly kind: LogKind;
  readonly form: FormView;
  readonly collection: Collection;
  readonly action: string;
  readonly formId: string;
  /** Latest day that may be chosen, YYYY-MM-DD; a form that is still folded is told when it comes out. */
  readonly today: string | undefined;
}

/** One kind of entry with its own few fields and the day and hour when it happened. */
export function LogForm(props: LogFormProps) {
  const { kind, form, action, formId, today } = props;
  const { say } = form.words;
  return (
    <form method="post" action={action}>
      <ProblemList form={form} />
      <input type="hidden" name="formId" value={formId} />
      <input type="hidden" name="kind" value={kind} />
      <Fields {...props} />
      <div class="row">
        <TextField form={form} name="day" type="date" max={today} label={say("field.day")} />
        <TextField form={form} name="time" type="time" label={say("field.time")} />
      </div>
      <p class="hint">{say("hint.happened")}</p>
      <SureBox problems={form.problems} asked={ASKED} name="entrySure" text={say("log.sure")} />
      <button type="submit">{say("log.keep")}</button>
    </form>
  );
}

const ASKED = new Set(["poured-more-than-pot", "ran-out-more-than-poured", "weight-far-off"]);

function Fields({ kind, form, collection }: LogFormProps) {
  const { say } = form.words;
  const named = (list: readonly { id: string; name: string }[]) =>
    list.map(({ id, name }) => ({ value: id, text: name }));
  switch (kind) {
    case "watered":
      return (
        <div class="row">
          <NumberField
            form={form}
            name="waterMl"
            label={say("field.waterMl")}
            unit="ml"
            hint={say("hint.waterMl")}
          />
          <NumberField form={form} name="drainedMl" label={say("field.drainedMl")} unit="ml" />
        </div>
      );
    case "moved":
      return (
        <>
          <SelectField
            form={form}
            name="toSpotId"
            label={say("field.toSpotId")}
            options={named(collection.spots)}
          />
          <p class="deed-note">{say("pot.lift")}</p>
        </>
      );
    case "checked":
      return (
        <>
          <RadioField
            form={form}
            name="feel"
            label={say("field.feel")}
            options={FEELS.map((value) => ({ value, text: say(`feel.${value}`) }))}
          />
          <NumberField
            form={form}
            name="dryToCm"
            label={say("field.dryToCm")}
            unit="cm"
            hint={say("hint.dryToCm")}
          />
        </>
      );
    case "weighed":
      return (
        <NumberField
          form={form}
          name="massKg"
          label={say("field.massKg")}
          unit="kg"
          hint={say("hint.massKg")}
        />
      );
    case "note":
      return <TextField form={form} name="text" label={say("field.text")} />;
    case "trouble":
      return (
        <>
          <SelectField
            form={form}
            name="sign"
            label={say("field.sign")}
            options={SIGNS.map((value) => ({ value, text: say(`trouble.${value}`) }))}
          />
          <TextField form={form} name="text" label={say("field.text")} />
        </>
      );
    case "treated":
      return (
        <>
          <TextField form={form} name="text" label={say("field.text")} />
          <p class="deed-note">{say("log.label-law")}</p>
        </>
      );
    case "leaf":
      return (
        <RadioField
          form={form}
          name="state"
          label={say("field.state")}
          options={LEAVES.map((value) => ({ value, text: say(`leaf.${value}`) }))}
        />
      );
    case "planted":
      return (
        <>
          <VesselFields form={form} />
          <SelectField
            form={form}
            name="mixId"
            label={say("field.mixId")}
            options={named(collection.mixes)}
          />
          <SelectField
            form={form}
            name="roots"
            label={say("field.roots")}
            options={rootWorkOptions(form.words)}
          />
          <p class="deed-note">{say("mix.dust")}</p>
        </>
      );
    case "gone":
      return (
        <RadioField
          form={form}
          name="how"
          label={say("field.how")}
          options={GONE.map((value) => ({ value, text: say(`gone.${value}`) }))}
        />
      );
    default:
      return null;
  }
}
