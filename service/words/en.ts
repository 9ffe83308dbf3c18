/**
 * Every English sentence and label that a grower reads. A message names its figures by quantity and unit
 * (`{coldestC}`, `{waterMl}`, `{untilDay}`); service/words/figures.ts turns them into text in the grower's units.
 * Names that end in Count, Days or Hours stay numbers, so that they can be counted in words.
 */
export const EN = {
  "when.tomorrow": "{clock} tomorrow",
  "when.day": "{clock} on {onDay}",

  "verb.water": "Water",
  "verb.keep-dry": "Keep dry",
  "verb.carry-in": "Carry under cover",
  "verb.carry-out": "Carry back out",
  "verb.none": "Leave be",
  "verb.empty-saucer": "Empty the saucer",
  "verb.tilt": "Tilt to drain",
  "verb.brace": "Brace against wind",
  "verb.shade": "Shade",
  "verb.top-cover": "Cover the mix",
  "verb.soak-slowly": "Soak slowly",
  "verb.clear-hole": "Clear the drain hole",
  "verb.look-at-roots": "Look at the roots",

  "state.water": "to be watered",
  "state.keep-dry": "to be kept dry",
  "state.carry-in": "to go under cover",
  "state.carry-out": "to come back out",
  "state.none": "nothing to do",
  "state.empty-saucer": "saucer to be emptied",
  "state.tilt": "to be tilted",
  "state.brace": "to be braced",
  "state.shade": "to be shaded",
  "state.top-cover": "mix to be covered",
  "state.soak-slowly": "to be soaked",
  "state.clear-hole": "hole to be cleared",
  "state.look-at-roots": "roots to be looked at",

  "deed.pots": "{name}{potCount, plural, =1 {} other { (# pots)}}",
  "deed.sentence": "{verb}: {details}.",
  "deed.amount": "{waterMl}",
  "deed.amount-each": "{waterMl} each",
  "deed.amount-through": "until it runs through, about {waterMl}",
  "deed.through": "until it runs through",
  "deed.to": "to {place}",
  "deed.until": "until {untilDay}",
  "deed.by": "by {time}",
  "deed.from": "from {time}",
  "deed.between": "between {from} and {by}",
  "deed.lift.two-people": "{massKg}: two people.",
  "deed.lift.trolley": "{massKg}: use a trolley or barrow.",
  "deed.lift.one": "{massKg}: one person can lift it.",

  "confidence.unlikely": "unlikely",
  "confidence.about-even": "about even",
  "confidence.likely": "likely",
  "confidence.very-likely": "very likely",
  "confidence.near-certain": "near certain",

  "reason.at-refill-point": "{leftFrac} of its water is left; it waits for more at {refillFrac}.",
  "reason.at-refill-point.bare": "It has come down to its refill point.",
  "reason.rain-will-do": "{rainMm} of rain is on its way and will do the watering.",
  "reason.rain-will-do.bare": "The coming rain will do the watering.",
  "reason.rain-does-not-reach": "{rainMm} of rain is forecast, but {reachesMm} reaches this spot.",
  "reason.rain-does-not-reach.bare": "The forecast rain does not reach this spot.",
  "reason.freshly-planted-dry":
    "Roots were disturbed {sinceDays, plural, =0 {today} one {a day ago} other {# days ago}}; cuts close dry, until {untilDay}.",
  "reason.freshly-planted-dry.bare": "Its roots were disturbed not long ago; cuts close best dry.",
  "reason.first-drink-due":
    "Dry for {sinceDays, plural, one {a day} other {# days}} since planting; the roots are ready for a first drink.",
  "reason.first-drink-due.bare":
    "Its dry time after planting is over; the roots are ready for a first drink.",
  "reason.leafy-watered-in": "A leafy plant is watered in at once after planting.",
  "reason.leafy-watered-in.bare": "A leafy plant is watered in at once after planting.",
  "reason.cold-nights-hold-water": "The next three nights average {nightC}; wet roots rot below {limitC}.",
  "reason.cold-nights-hold-water.bare": "The coming nights are too cold for wet roots.",
  "reason.resting": "It is resting and drinks very little.",
  "reason.resting.bare": "It is resting and drinks very little.",
  "reason.rain-on-fresh-roots": "{rainMm} of rain would wet roots that must stay dry until {untilDay}.",
  "reason.rain-on-fresh-roots.bare": "Rain would wet roots that must stay dry.",
  "reason.rain-would-waterlog":
    "{rainMm} of rain would leave its base without air for {wetBaseHours, plural, one {an hour} other {# hours}}.",
  "reason.rain-would-waterlog.bare": "The coming rain would leave its base without air.",
  "reason.cold-night": "The night goes down to {coldestC}; it is hurt below {limitC}.",
  "reason.cold-night.bare": "The coming night is colder than it can take.",
  "reason.gusts": "Gusts to {gustMPerS} could push it over; it stands up to {limitMPerS}.",
  "reason.gusts.bare": "The coming gusts could push it over.",
  "reason.heat-and-sun": "{hottestC} in full sun scorches it above {limitC}.",
  "reason.heat-and-sun.bare": "The coming heat in full sun would scorch it.",
  "reason.danger-past": "What it was carried in for has passed; the coldest night ahead is {coldestC}.",
  "reason.danger-past.bare": "What it was carried in for has passed.",
  "reason.still-wet": "It still holds {leftFrac} of its water.",
  "reason.still-wet.bare": "It is still wet enough.",
  "reason.has-enough": "It has water for {leftDays, plural, one {another day} other {another # days}}.",
  "reason.has-enough.bare": "It has water enough.",
  "reason.no-room": "There is no place left under cover for it.",
  "reason.no-room.bare": "There is no place left under cover for it.",
  "reason.weather-unknown": "The weather ahead is unknown, so the careful choice was made.",
  "reason.weather-unknown.bare": "The weather ahead is unknown, so the careful choice was made.",
  "reason.too-heavy": "At {massKg} it is too heavy to carry.",
  "reason.too-heavy.bare": "It is too heavy to carry.",

  "brief.title": "{forDay} at {site}",
  "brief.demo": "Demonstration: this place, its plants and its weather are invented.",
  "brief.lead.nothing":
    "{allCount, plural, =0 {No pots are entered yet.} one {The one pot needs nothing today.} other {None of the # pots needs anything today.}}",
  "brief.lead.deeds":
    "{deedCount, plural, one {One thing to do} other {# things to do}}; {restCount, plural, =0 {every pot is spoken for} one {one pot needs nothing} other {# pots need nothing}}.",
  "brief.keep-dry.heading": "Keep dry",
  "brief.nothing": "{restCount, plural, =0 {} one {One pot needs nothing.} other {# pots need nothing.}}",
  "brief.coming.heading": "Coming days",
  "brief.windows.heading": "Hours for potting and repotting",
  "brief.windows.none": "No dry, calm stretch for potting in sight.",
  "brief.window":
    "{dayName}, {fromTime} to {toTime}: {dryShareFrac} sure to be dry, {dryDaysAfter, plural, =0 {rain may follow the same day} one {one dry day after} other {# dry days after}}.",
  "brief.cautions.heading": "Take care",
  "brief.trust.heading": "How sure",
  "brief.changes.heading": "Changed since the last brief",
  "brief.change.weather": "{pot}: {is} (before: {was}). The forecast has changed.",
  "brief.change.journal": "{pot}: {is} (before: {was}). The journal has grown.",
  "brief.change.day-passed": "{pot}: {is} (before: {was}). The day has moved on.",

  "sky.line": "{tempMinC} to {tempMaxC}, {rain}, gusts to {gustMPerS}.",
  "sky.dry": "dry",
  "sky.rain": "{rainShareFrac} chance of rain, {lowMm} to {highMm}",
  "sky.thunder": "Thunder is in reach {hours}: nothing outdoors then.",
  "sky.span": "from {from} to {to}",

  "caution.span": "from {from} to {to}",
  "caution.span.unknown": "in the coming hours",
  "caution.more-pots": "{restCount} more",
  "caution.thunder":
    "Thunder in reach {span}. Be indoors from the first rumble until half an hour after the last; no carrying then. Official warnings come first.",
  "caution.heat": "It feels like {heatIndexC} {span}. Work early or late, in shade, and drink.",
  "caution.lift": "Heavy: {pots}. Lift with two or use a trolley; knees bent, pot close, path clear.",
  "caution.sap":
    "Sap of {pots} burns or poisons. Wear gloves, keep it from eyes, children and animals, and wash tools and hands.",
  "caution.old-weather":
    "This forecast is {ageHours, plural, one {an hour} other {# hours}} old. Look at the sky before acting on it.",
  "caution.no-ensemble":
    "Only one course of weather was to be had; its spread is taken from the usual errors of such forecasts.",
  "caution.official-warnings":
    "Weather offices issue warnings that this page does not know. Heed them first.",
  "caution.no-room": "Not every pot that should be under cover finds room: {pots}.",

  "trust.full": "The forecast is fresh and complete.",
  "trust.reduced": "Part of the weather had to be estimated; amounts and hours are less sure.",
  "trust.poor": "Much of the weather had to be estimated; look at the sky and the pots before acting.",
  "trust.age":
    "Weather fetched {ageHours, plural, =0 {within the hour} one {an hour ago} other {# hours ago}}, at {time}.",
  "trust.members":
    "{memberCount, plural, =0 {The spread is drawn from published forecast errors.} other {# courses of weather were reckoned with.}}",
  "trust.known": "Reckoned {knownDays, plural, =0 {less than a day} one {a day} other {# days}} ahead.",
  "trust.stand-in": "{quantity}: estimated for {shareFrac} of the hours ({method}).",
  "quantity.radiation": "Sunshine",
  "quantity.humidity": "Humidity",
  "quantity.wind": "Wind",
  "quantity.rain": "Rain",
  "quantity.temperature": "Temperature",
  "quantity.et0": "The air's thirst",
  "quantity.members": "Spread",
  "quantity.whole-forecast": "The whole forecast",
} as const;

export type MessageKey = keyof typeof EN;
