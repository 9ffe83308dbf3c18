import { et0Daily } from "./calc-et0-daily.ts";
import { et0Hourly } from "./calc-et0-hourly.ts";
import { et0Temperature } from "./calc-et0-temperature.ts";
import { heatIndex } from "./calc-heat-index.ts";
import { type Calculation, calcLines } from "./calc-lines.ts";
import { porosityTest } from "./calc-porosity-test.ts";
import { pot } from "./calc-pot.ts";
import { say } from "./output.ts";
import { BAD_INPUT, DONE, type Verb } from "./verb.ts";

const CALCULATIONS: Readonly<Record<string, Calculation>> = {
  "et0-daily": et0Daily,
  "et0-hourly": et0Hourly,
  "et0-temperature": et0Temperature,
  "heat-index": heatIndex,
  pot,
  "porosity-test": porosityTest,
};

export const calc: Verb = {
  about: [
    "Reads one JSON object a line and writes one JSON object a line in the same order. An id given comes back. " +
      'A line with faults gives { "error": [...] }, the rest are reckoned all the same, and the exit code is 1.',
    "Names carry their unit: tempC in degrees Celsius, shares (Frac) from 0 to 1, radiation in MJ per square metre " +
      "of the day or hour, longitude positive to the east, hours in UTC.",
    "What is possible but odd - dew point above the warmest, radiation beyond a clear sky, a base wider than the rim - is " +
      "reckoned all the same and comes back beside the figures as questions.",
  ],
  positionals: [
    {
      name: "what",
      about: "one of",
      choices: Object.fromEntries(Object.entries(CALCULATIONS).map(([name, { about }]) => [name, about])),
    },
  ],
  options: {
    steps: {
      type: "boolean",
      about:
        "also give the intermediate values, each as name, value, unit and equation: source and number, or the rule",
    },
  },
  async run({ options, words }) {
    const faulty = await calcLines(CALCULATIONS[words[0]!]!, options.steps === true);
    if (faulty > 0) say(`leebench calc: ${faulty === 1 ? "1 line" : `${faulty} lines`} with faults`);
    return faulty > 0 ? BAD_INPUT : DONE;
  },
};
