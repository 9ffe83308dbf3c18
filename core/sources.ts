/** One published work. Everything published that the code relies on cites a key of this table. */
export interface Source {
  readonly authors: string;
  readonly title: string;
  readonly year: number;
  readonly place: string;
}

/** The bibliography: key -> work. Keys stand in docstrings, beside constants and in test case tables. */
export const SOURCES = {
  FAO56: {
    authors: "Allen, R. G.; Pereira, L. S.; Raes, D.; Smith, M.",
    title: "Crop evapotranspiration. FAO Irrigation and Drainage Paper 56",
    year: 1998,
    place: "FAO, Rome",
  },
  ASCE2005: {
    authors: "Allen, R. G. et al. (eds), ASCE-EWRI task committee",
    title: "The ASCE standardized reference evapotranspiration equation",
    year: 2005,
    place: "ASCE, Reston",
  },
  VG1980: {
    authors: "van Genuchten, M. Th.",
    title: "A closed-form equation for predicting the hydraulic conductivity of unsaturated soils",
    year: 1980,
    place: "Soil Science Society of America Journal 44:892-898",
  },
  MILKS1989: {
    authors: "Milks, R. R.; Fonteno, W. C.; Larson, R. A.",
    title: "Hydrology of horticultural substrates II. Predicting physical properties of media in containers",
    year: 1989,
    place: "Journal of the American Society for Horticultural Science 114:53-56",
  },
  NIOSH94110: {
    authors: "Waters, T. R.; Putz-Anderson, V.; Garg, A.",
    title: "Applications manual for the revised NIOSH lifting equation, publication 94-110",
    year: 1994,
    place: "NIOSH, Cincinnati",
  },
} as const satisfies Record<string, Source>;

export type SourceKey = keyof typeof SOURCES;
