import type { Component } from "../mix/component.ts";
import type { Mix } from "../mix/mix.ts";
import type { PlantGroup } from "../plant/group.ts";
import type { Pot } from "../pot/pot.ts";
import type { Site } from "../site/site.ts";
import type { Spot } from "../site/spot.ts";

/** Everything that stands at one site. The order of the lists carries no meaning. */
export interface Collection {
  readonly site: Site;
  readonly spots: readonly Spot[];
  readonly mixes: readonly Mix[];
  readonly pots: readonly Pot[];
  /** The grower's own components and groups, beside the library's. */
  readonly ownComponents?: readonly Component[];
  readonly ownGroups?: readonly PlantGroup[];
}
