/** One published version. Newest first; `advice` says what a grower will be told otherwise than before, and why. */
export interface Release {
  readonly version: string;
  /** Day of publication; null while it is being made. */
  readonly day: string | null;
  readonly advice: readonly string[];
  readonly other: readonly string[];
}

export const CHANGES: readonly Release[] = [
  {
    version: "0.1.0",
    day: null,
    advice: [
      "First advice: water or keep dry, carry in or out, windows for potting, each with its reason and how sure it is.",
      "When the weather services were away for a while, the hours missed are taken from the last forecast for them, until they are told afterwards. A pot is no longer thought to have stood in a normal day.",
      "Rain that has fallen by the weather service's word alone is doubted: every third of its wet days stays dry, and showers are missed; how near a day told dry was to rain is drawn as it is for forecasts. After such a day a pot in the open is less surely full, and is looked after sooner. A reading of the rain gauge settles it.",
      "A pot to be carried out on the morning after a frost is told to go when that frost is over, and no longer from the first hour of the day.",
      "A plant that has been dry for weeks is counted as nearer to harm than one that is dry since this morning, and gets its water sooner.",
      "How soon a plant slows down as its mix dries is in doubt for every pot, so the range told for what a pot holds is wider.",
      "Dim light is held against a place only below a third of what growth needs, and not against a plant that rests leafless. Pots are carried out for light less often in winter.",
      "Shade after weeks in the dim is asked for before the sun is strong, the next morning where the pot is carried in the evening; an hour in the evening helped nobody.",
      "A pot is not carried out for one day between two stays under cover unless the light is worth twice the carries.",
      "Where a night kills a plant at every spot, it is no longer carried for a degree less: it is wrapped, and told what would be surer.",
      "A pot entered long after it was planted, with no watering told, is no longer thought to have stood dry all that time: what it holds is taken as unknown until the first watering, weighing or look.",
      "A pot that is carried ahead of a cold night some days off is told which night; it used to read as if it were the coming one.",
      "Where thunder parts a day, a carry is asked for in the longer stretch without it; its hours used to run through the storm.",
      "The sheet for whoever looks after the pots and the look at the week list water as often as a pot will want it, also what is watered today, and where it stands by then. They used to list each pot once and what is watered today not at all.",
      "A pot that the scale or the hand found wetter than it was thought to be is not asked to be watered for two days; it is to be felt again first. It used to be asked for all the same, and a hole thought blocked was named for good.",
      "A thirsty plant that by all that was noted has been dry far longer than it stands is asked to be watered; it used to be given up silently, as nothing was left to lose.",
      "A pot that is carried for light says so, and one that is watered in part for air at its base says that; they used to speak of rain and of cold.",
      "A pot that is watered because rain passes it by is told at what share of its water it waits for more.",
      "A pot that a carry would help and that stays says why: no room is left, or it is too heavy for the stairs.",
      "A wet pot under cover is no longer carried out to dry when nights are cold, and colder nights no longer bring a pot out: where cold kills, each degree under cover goes on counting as much as the last.",
      "A pot whose base is without air is leant to drain, also when no rain is coming. In gusts that take a sheet away a low pot is leant instead of covered, and a wide rim counts as more trouble to cover than a narrow one.",
      "Where only the cold end of the forecast lies below what a wet plant stands, its reason says that nights may go so low; it used to name the middle, which could lie above the limit it gave.",
      "What a mix needs beforehand is begun for the first potting hours that are nine tenths sure to be dry, else for the surest; it used to be the next ones, also where a dry day stood behind them.",
      "The brief's first sentence accounts for every pot: with something to do, to be looked at, kept dry, or in need of nothing. Pots whose water lasts less than a day are named for the evening.",
      "A pot that is carried back out is told the coldest night once it is out; the words used to read as if it were the coldest of all nights ahead.",
    ],
    other: [
      "A spot tells the places that are free as the pots stand now, and each night stands under the day whose evening begins it.",
      "An amount larger than the pot, more run out than poured, and a weight far from what the pot can weigh are asked about before they are reckoned with.",
      "Pots are pasted under the headings that the page shows, in any order; what nothing is known of is named.",
      "Each deed of a plan tells the minutes that it takes, and the brief what the morning comes to in time, water and weight.",
      "Any kept plan can be reckoned again from what was known when it was made.",
      "Plans and what they were made from are kept for 400 days.",
      "A message broker in the own network under a name that could lead elsewhere is called only when LEEBENCH_PRIVATE_TARGETS names it. Addresses and names of home networks go on working as they are.",
    ],
  },
];
