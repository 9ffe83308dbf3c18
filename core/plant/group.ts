export type GroupId = string;

/** How a figure came to us: seen in a published source, grower's report, common practice, or our own choice. */
export type ValueStatus = "published" | "grower-report" | "common-practice" | "chosen";

/** The figures by which kinds of plants differ. Temperatures are at leaf and stem level, °C. */
export interface GroupValues {
  /** Below this, dead or as good as lost. */
  readonly killC: number;
  /** Below this, visible damage; the line for carrying in. */
  readonly damageC: number;
  /** Mean of three night minima below which no water is given at all; null: never left fully dry. */
  readonly stopWaterNightC: number | null;
  /** Mean of three night minima below which water is cut. */
  readonly cutWaterNightC: number;
  /** Share of usable water left at which the next watering is due in growth, 0 to 1. */
  readonly refillFrac: number;
  /** The same while resting. */
  readonly restRefillFrac: number;
  /** Basal crop coefficient on canopy area in growth, well watered. */
  readonly basalCoefficient: number;
  /** The same at rest or leafless. */
  readonly restCoefficient: number;
  /** Share of usable water gone at which transpiration begins to fall (FAO-56 p). */
  readonly depletionFrac: number;
  /** Season of growth at the site's latitude: warm, cool, or whenever it is warm enough. */
  readonly growth: "warm" | "cool" | "any";
  /** A fixed winter rest whatever the warmth. */
  readonly fixedRest: boolean;
  /** Leafless means at rest. */
  readonly leaflessIsRest: boolean;
  /** Leafy: watered in at once after planting, never left fully dry. */
  readonly leafy: boolean;
  /** Hours with a waterlogged base that it stands when warm before harm begins. */
  readonly wetBaseHours: number;
  /** Days without usable water before harm begins, in growth. */
  readonly dryDays: number;
  /** Least light for steady growth, MJ/m2/day. */
  readonly lightMjPerM2PerDay: number;
  /** Above this air temperature leaves suffer in full sun. */
  readonly heatC: number;
  /** Sap that burns or poisons. */
  readonly sap: "none" | "irritant" | "toxic";
}

export interface PlantGroup {
  readonly id: GroupId;
  readonly values: GroupValues;
  /** For each value, its source key (core/sources.ts) or null, and its status. */
  readonly evidence: Readonly<
    Record<keyof GroupValues, { readonly status: ValueStatus; readonly key: string | null }>
  >;
}
