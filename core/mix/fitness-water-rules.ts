import { LEAST_AIR_FRAC } from "../pot/hold-layer.ts";
import type { FitnessRule, Judged } from "./finding.ts";
import { moreDraining, moreHolding } from "./fitness-share-rules.ts";
import { repellentBelowFracOf } from "./repellent.ts";
import { waterFracAt } from "./retention.ts";
import { isNamed, mostOf, shareOf } from "./shares.ts";

/** Least water that a mix for leafy plants should hold. Chosen by us after extension advice of some 40 % water. */
const LEAST_WATER_LEAFY_FRAC = 0.4;

/** Share of the depth that may stand without air after watering. Chosen by us: roots keep two thirds or half. */
const MOST_WET_SHARE = { droughtAdapted: 1 / 3, leafy: 1 / 2 };

/** Coir that restores the rewetting of dried peat. [BARTLEY2023] */
const REWETTING_COIR_FRAC = 0.15;

/** What holds most, where more of what the mix has of its own would not do. */
const WETTEST = ["coco-peat", "peat"] as const;

/** In the vessel where one is given, else at 1 kPa as laboratories state it. */
function waterFrac({ hold, worked }: Judged): number {
  return hold?.capacityFrac ?? waterFracAt(worked.retention, 10);
}

function airFrac({ hold, worked }: Judged): number {
  return hold?.airSpaceFrac ?? worked.retention.totalPorosityFrac - waterFracAt(worked.retention, 10);
}

function mostWetShare({ purpose }: Judged): number {
  return purpose.leafy ? MOST_WET_SHARE.leafy : MOST_WET_SHARE.droughtAdapted;
}

function wetShare({ hold, depthCm }: Judged): number {
  return hold === null || depthCm === null ? 0 : hold.wetLayerCm / depthCm;
}

function shedsWater({ worked }: Judged): boolean {
  return repellentBelowFracOf(worked.portions) !== null;
}

function coirFrac({ worked }: Judged): number {
  return shareOf(worked.portions, isNamed("coco-peat"));
}

const tooLittleAir: FitnessRule = {
  code: "too-little-air",
  status: "published",
  source: "GRABLE1968",
  broken: (mix) =>
    airFrac(mix) < LEAST_AIR_FRAC ? { airFrac: airFrac(mix), leastFrac: LEAST_AIR_FRAC } : null,
  cured: (mix) => airFrac(mix) >= LEAST_AIR_FRAC,
  moves: (mix) => [...coarser(mix), { way: "more", component: "perlite" }],
};

const wetBaseDeep: FitnessRule = {
  code: "wet-base-deep",
  status: "chosen",
  source: null,
  broken: (mix) =>
    wetShare(mix) > mostWetShare(mix)
      ? { wetLayerCm: mix.hold!.wetLayerCm, depthCm: mix.depthCm!, mostFrac: mostWetShare(mix) }
      : null,
  cured: (mix) => wetShare(mix) <= mostWetShare(mix),
  moves: coarser,
};

const holdsLittle: FitnessRule = {
  code: "holds-little-for-leafy",
  status: "chosen",
  source: null,
  broken: (mix) =>
    mix.purpose.leafy && waterFrac(mix) < LEAST_WATER_LEAFY_FRAC
      ? { waterFrac: waterFrac(mix), leastFrac: LEAST_WATER_LEAFY_FRAC }
      : null,
  cured: (mix) => waterFrac(mix) >= LEAST_WATER_LEAFY_FRAC,
  moves: (mix) => [moreHolding(mix), ...WETTEST.map((component) => ({ way: "more" as const, component }))],
};

const shedsWhenDry: FitnessRule = {
  code: "sheds-water-when-dry",
  status: "published",
  source: "BARTLEY2023",
  broken: (mix) =>
    shedsWater(mix) && coirFrac(mix) < REWETTING_COIR_FRAC
      ? { coirFrac: coirFrac(mix), leastFrac: REWETTING_COIR_FRAC }
      : null,
  cured: (mix) => coirFrac(mix) >= REWETTING_COIR_FRAC || !shedsWater(mix),
  moves: () => [{ way: "more", component: "coco-peat" }],
};

/** More of the coarse, then less of the fine. */
function coarser(mix: Judged): { way: "more" | "less"; component: string }[] {
  const coarse = mostOf(
    mix.worked.portions,
    (component) => component.role === "draining" && component.grain === "coarse",
  );
  const fine = mostOf(mix.worked.portions, (component) => component.grain === "fine");
  return [
    coarse === null ? moreDraining(mix) : { way: "more", component: coarse },
    ...(fine === null ? [] : [{ way: "less" as const, component: fine }]),
  ];
}

/** Rules on the water and air that the mix is reckoned to hold. */
export const WATER_RULES: readonly FitnessRule[] = [tooLittleAir, wetBaseDeep, holdsLittle, shedsWhenDry];
