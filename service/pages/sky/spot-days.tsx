import type { Collection } from "../../../core/plan/collection.ts";
import type { Plan } from "../../../core/plan/plan.ts";
import type { Words } from "../../words/words.ts";

/** Rain that reaches each spot and its coldest night, day by day. */
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
                    <td>
                      {say("sky.spot-day", {
                        rainMm: at.rainByDayMm[day]?.mid ?? Number.NaN,
                        coldestC: at.coldestByDayC[day]?.mid ?? Number.NaN,
                      })}
                    </td>
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
