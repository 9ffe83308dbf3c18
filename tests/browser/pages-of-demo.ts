/** Every page of the demonstration, one of each kind; a page that is added belongs here too. */
export const PAGES: readonly string[] = [
  "/",
  "/pots",
  "/pots?order=need&need=soon",
  "/pots/lemon",
  "/pots/frangipani-cut?log=watered",
  "/pots/lemon/what-if",
  "/pots/lemon/change",
  "/pots/new",
  "/pots/paste",
  "/mixes",
  "/mixes/new",
  "/mixes/spar?with=ballast",
  "/mixes/spar/batch",
  "/mixes/spar/test",
  "/components",
  "/components/new",
  "/spots",
  "/spots/new",
  "/sky",
  "/journal",
  "/holiday",
  "/house",
  "/house/status",
  "/house/words",
  "/house/access",
  "/house/copies",
  "/people",
  "/sign-in",
  "/away",
  "/no-such-page",
];

/** Answers that are no pages of the demonstration: files, figures for programs, steps of an empty house, signed links. */
export const NO_PAGES: readonly RegExp[] = [
  /^\/(healthz|readyz|metrics|style\.css|app\.js|worker\.js|icon\.svg|app\.webmanifest)$/,
  /^\/(api|photos)\//,
  /^\/house\/copies\/./,
  /^\/(begin|claim)$/,
  /\/:token$/,
  // Nobody is set in the demonstration; tests/browser/notices.test.ts looks at a person's page.
  /^\/(people\/:id|calendar\/:file|brief\.txt)$/,
];
