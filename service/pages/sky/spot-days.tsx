import type { Collection } from "../../../core/plan/collection.ts";
import type { Plan, SpotPlan } from "../../../core/plan/plan.ts";
import type { Words } from "../../words/words.ts";

/** Rain that reaches each spot and the coldest of the night, day by day. */
export function SpotDays({ plan, collection, words }: { plan: Plan; collection: Collection; words: Words }) {
  const { say } = words;
  const spots = [...collection.spots].sort((a, b) => a.walkOrder - b.walkOrder);
  return (
    <section>
      <h2>{say("sky.spots")}</h2>
      <p class="hint">{say("sky.spots-hint")}</p>
      <section class="wide" tabindex={0} aria-label={say("sky.spots")}>
        <table>
          <thead>
            <tr>
              <th scope="col">{say("field.spotId")}</th>
              {plan.days.map(({ day }) => (
                <th scope="col">{words.weekday(day)}</th>
              ))}
            </tr>
          </thead>
          <tbody>
            {spots.map((spot) => {
              const at = plan.spots.find(({ spotId }) => spotId === spot.id);
              return at ? (
                <tr>
                  <th scope="row">{spot.name}</th>
                  {plan.days.map((_, day) => (
                    <td>{dayText(at, day, words)}</td>
                  ))}
                </tr>
              ) : null;
            })}
          </tbody>
        </table>
      </section>
    </section>
  );
}

/** The last night may reach beyond what was reckoned. */
function dayText(at: SpotPlan, day: number, { say }: Words): string {
  const [rainMm, coldestC] = [at.rainByDayMm[day]?.mid ?? 0, at.coldestByDayC[day]?.mid];
  return coldestC === undefined
    ? say("sky.spot-rain", { rainMm })
    : say("sky.spot-day", { rainMm, coldestC });
}
