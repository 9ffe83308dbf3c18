/** Lines of credit that the feeds' licences ask for wherever their weather is shown, with what we changed. */
export const CREDIT = {
  primary:
    "Weather data by Open-Meteo.com (https://open-meteo.com/), CC BY 4.0; units converted, instants averaged to hours.",
  fallback:
    "Weather data from MET Norway (https://www.met.no/), CC BY 4.0 and NLOD 2.0; spread to whole hours.",
  demo: "Invented weather for the demonstration.",
} as const;
