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
  NWS2014: {
    authors: "National Weather Service, Weather Prediction Center",
    title: "The heat index equation",
    year: 2014,
    place: "NOAA, College Park",
  },
  ROTHFUSZ1990: {
    authors: "Rothfusz, L. P.",
    title: "The heat index equation. Technical attachment SR 90-23",
    year: 1990,
    place: "National Weather Service, Fort Worth",
  },
  ERBS1982: {
    authors: "Erbs, D. G.; Klein, S. A.; Duffie, J. A.",
    title:
      "Estimation of the diffuse radiation fraction for hourly, daily and monthly-average global radiation",
    year: 1982,
    place: "Solar Energy 28:293-302",
  },
  LEUNING1988: {
    authors: "Leuning, R.; Cremer, K. W.",
    title: "Leaf temperatures during radiation frost. Part I. Observations",
    year: 1988,
    place: "Agricultural and Forest Meteorology 42:121-133",
  },
  SNYDER2005: {
    authors: "Snyder, R. L.; de Melo-Abreu, J. P.",
    title: "Frost protection: fundamentals, practice and economics",
    year: 2005,
    place: "FAO, Rome",
  },
  BEST1950: {
    authors: "Best, A. C.",
    title: "The size distribution of raindrops",
    year: 1950,
    place: "Quarterly Journal of the Royal Meteorological Society 76:16-36",
  },
  ATLAS1973: {
    authors: "Atlas, D.; Srivastava, R. C.; Sekhon, R. S.",
    title: "Doppler radar characteristics of precipitation at vertical incidence",
    year: 1973,
    place: "Reviews of Geophysics and Space Physics 11:1-35",
  },
  WMO306: {
    authors: "World Meteorological Organization",
    title: "Manual on codes, WMO-No. 306, code table 4677",
    year: 2019,
    place: "WMO, Geneva",
  },
  NWS3030: {
    authors: "National Weather Service",
    title: "Lightning safety: wait 30 minutes after the last thunder",
    year: 2002,
    place: "NOAA, Silver Spring",
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
  UFIFAS_DESERT_ROSE: {
    authors: "University of Florida, Institute of Food and Agricultural Sciences",
    title: "Desert rose. Gardening Solutions",
    year: 2020,
    place: "UF/IFAS, Gainesville (undated page, read in 2026)",
  },
  DIMMITT2009: {
    authors: "Dimmitt, M.",
    title: "Fall is the time to shop for Adeniums",
    year: 2009,
    place: "Tucson Cactus and Succulent Society, September 2009",
  },
  DIMMITT2012A: {
    authors: "Dimmitt, M.",
    title: "Waking up Adeniums",
    year: 2012,
    place: "Tucson Cactus and Succulent Society, April 2012",
  },
  DIMMITT2012B: {
    authors: "Dimmitt, M.",
    title: "Coping with wet winters",
    year: 2012,
    place: "Tucson Cactus and Succulent Society, January 2012",
  },
  DIMMITT_HANSON: {
    authors: "Dimmitt, M.; Hanson, C.",
    title: "The genus Adenium in cultivation, part 4",
    year: 1992,
    place: "Cactus and Succulent Journal (year from memory)",
  },
  ECOCROP: {
    authors: "FAO",
    title: "EcoCrop: ecological requirements of plant species, database",
    year: 2007,
    place: "FAO, Rome",
  },
  UFIFAS_NASSAU2017: {
    authors: "University of Florida, Institute of Food and Agricultural Sciences, Nassau County",
    title: "Crown of thorns",
    year: 2017,
    place: "UF/IFAS Nassau County Extension, 18 July 2017",
  },
  KOESER2013: {
    authors: "Koeser, A. K.; Hasing, G.; McLean, D.",
    title: "Trees: north and central Florida, ENH1228 (Plumeria obtusa)",
    year: 2013,
    place: "UF/IFAS Extension, Gainesville",
  },
  BROWN_MG025: {
    authors: "Brown, S. P.",
    title: "Cold protection of ornamental plants, MG025",
    year: 2003,
    place: "UF/IFAS Extension, Gainesville (year from memory)",
  },
  BLAKER1981: {
    authors: "Blaker, N. S.; MacDonald, J. D.",
    title:
      "Predisposing effects of soil moisture extremes on the susceptibility of rhododendron to Phytophthora",
    year: 1981,
    place: "Phytopathology 71:831-834",
  },
  CONSOLI2013: {
    authors: "Consoli, S.; Inglese, G.; Inglese, P.",
    title: "Determination of evapotranspiration and annual biomass productivity of a cactus pear orchard",
    year: 2013,
    place: "Journal of Irrigation and Drainage Engineering 139:680-690",
  },
  COSTELLO1999: {
    authors: "Costello, L. R.; Jones, K. S.",
    title: "WUCOLS III: water use classifications of landscape species",
    year: 1999,
    place: "University of California Cooperative Extension",
  },
  WIGGINTON1974: {
    authors: "Wigginton, M. J.",
    title:
      "Effects of temperature, oxygen tension and relative humidity on the wound-healing process in the potato tuber",
    year: 1974,
    place: "Potato Research 17:200-214",
  },
  MODAIHSH1985: {
    authors: "Modaihsh, A. S.; Horton, R.; Kirkham, D.",
    title: "Soil water evaporation suppression by sand mulches",
    year: 1985,
    place: "Soil Science 139:357-361",
  },
  BEESON2010: {
    authors: "Beeson, R. C.",
    title: "Modeling actual evapotranspiration of Viburnum odoratissimum during production",
    year: 2010,
    place: "HortScience 45:1260-1264",
  },
  BEESON2012: {
    authors: "Beeson, R. C.",
    title: "Development of a simple reference evapotranspiration model for irrigation of woody ornamentals",
    year: 2012,
    place: "HortScience 47:264-268",
  },
  POE2012: {
    authors: "Poe, S.; Stovin, V.",
    title:
      "Advocating a physically-based hydrological model for green roofs: evapotranspiration during the drying cycle",
    year: 2012,
    place: "World Green Roof Congress",
  },
  MILLION2015: {
    authors: "Million, J. B.; Yeager, T. H.",
    title: "Capture of sprinkler irrigation water by container-grown ornamental plants",
    year: 2015,
    place: "HortScience 50:442-446",
  },
  BARTLEY2023: {
    authors: "Bartley, P. C. et al.",
    title: "Rewetting of horticultural substrates after drying",
    year: 2023,
    place: "HortScience 58:79-83 (title abridged)",
  },
  SIYAL2016: {
    authors: "Siyal, A. A. et al.",
    title: "Hydraulic conductivity of clay pitcher walls",
    year: 2016,
    place: "Science International 28:1299 (title abridged)",
  },
  MITTAL2006: {
    authors: "Mittal, A. et al.",
    title: "Evaporative cooling of water in a porous clay vessel",
    year: 2006,
    place: "International Journal of Green Energy 3 (title abridged)",
  },
  PHILIP1957: {
    authors: "Philip, J. R.",
    title: "Theory of infiltration 4. Sorptivity and algebraic infiltration equations",
    year: 1957,
    place: "Soil Science 84:257-264",
  },
  CELIA1990: {
    authors: "Celia, M. A.; Bouloutas, E. T.; Zarba, R. L.",
    title: "A general mass-conservative numerical solution for the unsaturated flow equation",
    year: 1990,
    place: "Water Resources Research 26:1483-1496",
  },
  VANDERBORGHT2005: {
    authors: "Vanderborght, J. et al.",
    title: "A set of analytical benchmarks to test numerical models of flow and transport in soils",
    year: 2005,
    place: "Vadose Zone Journal 4:206-221",
  },
} as const satisfies Record<string, Source>;

export type SourceKey = keyof typeof SOURCES;
