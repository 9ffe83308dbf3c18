import type { Collection } from "../../../core/plan/collection.ts";
import type { Words } from "../../words/words.ts";
import { SelectField, TextField } from "../forms/fields.tsx";
import { isNarrowed, NEEDS, ORDERS, type ShelfView } from "./shelf-view.ts";

/** Which pots to show; folded until it is used, so that the shelves come first. */
export function ShelfFilter({
  view,
  collection,
  words,
}: {
  view: ShelfView;
  collection: Collection;
  words: Words;
}) {
  const { say } = words;
  const typed = { name: view.name, need: view.need ?? "", spot: view.spotId, order: view.order };
  const form = { typed, problems: [], words, prefix: "show-" };
  const spots = [...collection.spots].sort((a, b) => a.walkOrder - b.walkOrder);
  const everything = { value: "", text: say("pots.show.all") };
  return (
    <details class="log" open={isNarrowed(view) || view.spotId !== "" || view.order !== "bench"}>
      <summary>{say("pots.show")}</summary>
      <form method="get" action="/pots">
        <div class="row">
          <TextField form={form} name="name" type="search" label={say("field.pot-name")} />
          <SelectField
            form={form}
            name="need"
            label={say("pot.asks")}
            options={[everything, ...NEEDS.map((need) => ({ value: need, text: say(`pots.need.${need}`) }))]}
          />
          <SelectField
            form={form}
            name="spot"
            label={say("field.spotId")}
            options={[everything, ...spots.map(({ id, name }) => ({ value: id, text: name }))]}
          />
          <SelectField
            form={form}
            name="order"
            label={say("pots.order")}
            options={ORDERS.map((order) => ({ value: order, text: say(`pots.order.${order}`) }))}
          />
        </div>
        <button type="submit" class="quiet">
          {say("bench.show")}
        </button>
      </form>
    </details>
  );
}
