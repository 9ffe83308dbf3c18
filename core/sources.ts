/** One published work. Everything published that the code relies on cites a key of this table. */
export interface Source {
  readonly authors: string;
  readonly title: string;
  readonly year: number;
  readonly place: string;
}

/** The bibliography: key -> work. Keys stand in docstrings, beside constants and in test case tables. */
export const SOURCES = {
  RFC6890: {
    authors: "Cotton, M.; Vegoda, L.; Bonica, R.; Haberman, B.",
    title: "Special-purpose IP address registries",
    year: 2013,
    place: "IETF",
  },
  RFC9110: {
    authors: "Fielding, R.; Nottingham, M.; Reschke, J. (eds)",
    title: "HTTP semantics",
    year: 2022,
    place: "IETF",
  },
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
  TORRO: {
    authors: "Webb, J. D. C.; Elsom, D. M.; Reynolds, D. J.",
    title: "Climatology of severe hailstorms in Great Britain: the hailstorm intensity scale",
    year: 2001,
    place: "Atmospheric Research 56, 291-308 (title from memory)",
  },
  AMSRAIN: {
    authors: "American Meteorological Society",
    title: "Glossary of meteorology: rain",
    year: 2012,
    place: "AMS, Boston",
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
  ALMANAC: {
    authors: "Nautical Almanac Office, United States Naval Observatory; HM Nautical Almanac Office",
    title: "The astronomical almanac, section C: low-precision formulas for the sun",
    year: 2010,
    place: "US Government Printing Office, Washington",
  },
  FISHER2013: {
    authors: "Fisher, D. K.; Pringle, H. C.",
    title: "Evaluation of alternative methods for estimating reference evapotranspiration",
    year: 2013,
    place: "Agricultural Sciences 4(8A):51-60",
  },
  NWSCITIES2022: {
    authors: "National Weather Service forecasts and observations collected by Speegle, D. et al.",
    title: "Weather forecasts of 167 United States cities, 2021 to 2022 (open data set)",
    year: 2022,
    place: "github.com/speegled/weather_forecasts",
  },
  JMA2023: {
    authors: "Japan Meteorological Agency",
    title: "Verification of weekly forecasts, October 2023",
    year: 2023,
    place: "JMA, Tokyo",
  },
  AAGAM2026: {
    authors: "Upadhyay, B.",
    title:
      "Comparison of global models over 40 Indian places in the monsoon of 2026, with ERA5 as truth (open report)",
    year: 2026,
    place: "github.com/bitsubhayu/AAGAM",
  },
  RALEIGH2026: {
    authors: "Student report AIPI 520",
    title:
      "Errors of two global models by lead day at Raleigh-Durham, 2025 and 2026 (open data, one station)",
    year: 2026,
    place: "github.com/sz381/AIPI-520-Project-1",
  },
  MEDINA2020: {
    authors: "Medina, H.; Tian, D.",
    title:
      "Comparison of probabilistic post-processing approaches for improving numerical weather prediction-based daily and weekly reference evapotranspiration forecasts",
    year: 2020,
    place: "Hydrology and Earth System Sciences 24:1011-1030",
  },
  WEATHERREAL2023: {
    authors: "Jin, W. et al.",
    title: "WeatherReal: a benchmark based on in-situ observations for evaluating weather models",
    year: 2024,
    place: "arXiv:2409.09371",
  },
  GEFSINNSBRUCK: {
    authors: "Messner, J. W.; Wilks, D. S.; Mayr, G. J.",
    title: "Reforecasts and observed rain at Innsbruck, data of the packages crch and ensemblepp",
    year: 2016,
    place: "Comprehensive R Archive Network",
  },
  HOURLYRAIN: {
    authors: "Hourly reports of Seattle 2014, New York 2013 and Guangzhou 2010 to 2015",
    title: "Open data sets pnwflights14, nycflights13 and Five cities PM",
    year: 2015,
    place: "github.com and UCI Machine Learning Repository",
  },
  PARTON1981: {
    authors: "Parton, W. J.; Logan, J. A.",
    title: "A model for diurnal variation in soil and air temperature",
    year: 1981,
    place: "Agricultural Meteorology 23:205-216",
  },
  NUMREC: {
    authors: "Press, W. H.; Teukolsky, S. A.; Vetterling, W. T.; Flannery, B. P.",
    title: "Numerical recipes in C, second edition, section 6.2",
    year: 1992,
    place: "Cambridge University Press",
  },
  VG1980: {
    authors: "van Genuchten, M. Th.",
    title: "A closed-form equation for predicting the hydraulic conductivity of unsaturated soils",
    year: 1980,
    place: "Soil Science Society of America Journal 44:892-898",
  },
  VG1987: {
    authors: "van Genuchten, M. Th.",
    title: "A numerical model for water and solute movement in and below the root zone. Research report 121",
    year: 1987,
    place: "U.S. Salinity Laboratory, Riverside",
  },
  MENNE2012: {
    authors: "Menne, M. J.; Durre, I.; Vose, R. S.; Gleason, B. E.; Houston, T. G.",
    title: "An overview of the Global Historical Climatology Network-Daily database",
    year: 2012,
    place: "Journal of Atmospheric and Oceanic Technology 29:897-910",
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
    title: "Modeling actual evapotranspiration of Viburnum odoratissimum during production (title abridged)",
    year: 2010,
    place: "HortScience 45:1260-1264",
  },
  POE2012: {
    authors: "Poe, S.; Stovin, V.",
    title:
      "Advocating a physically-based hydrological model for green roofs: evapotranspiration during the drying cycle",
    year: 2012,
    place: "World Green Roof Congress (title and place from memory)",
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
  DEBOODT1972: {
    authors: "De Boodt, M.; Verdonck, O.",
    title: "The physical properties of the substrates in horticulture",
    year: 1972,
    place: "Acta Horticulturae 26:37-44",
  },
  EN13041: {
    authors: "CEN",
    title:
      "EN 13041. Soil improvers and growing media. Determination of physical properties: dry bulk density, air volume, water volume, shrinkage value and total pore space",
    year: 2011,
    place: "European Committee for Standardization, Brussels",
  },
  ANSORENA1994: {
    authors: "Ansorena Miner, J.",
    title: "Sustratos. Propiedades y caracterización",
    year: 1994,
    place: "Mundi-Prensa, Madrid",
  },
  FONTENO1995: {
    authors: "Fonteno, W. C.; Harden, C. T.; Brewster, J. P.",
    title:
      "Procedures for determining physical properties of horticultural substrates using the NCSU porometer",
    year: 1995,
    place: "Horticultural Substrates Laboratory, North Carolina State University, Raleigh",
  },
  WALLER1991: {
    authors: "Waller, P. L.; Harrison, A. M.",
    title: "Estimation of pore space and the calculation of air volume in horticultural substrates",
    year: 1991,
    place: "Acta Horticulturae 294:29-40",
  },
  GRABLE1968: {
    authors: "Grable, A. R.; Siemer, E. G.",
    title:
      "Effects of bulk density, aggregate size, and soil water suction on oxygen diffusion, redox potentials, and elongation of corn roots",
    year: 1968,
    place: "Soil Science Society of America Proceedings 32:180-186",
  },
  VEIHMEYER1949: {
    authors: "Veihmeyer, F. J.; Hendrickson, A. H.",
    title: "Methods of measuring field capacity and permanent wilting percentage of soils",
    year: 1949,
    place: "Soil Science 68:75-94",
  },
  CARSEL1988: {
    authors: "Carsel, R. F.; Parrish, R. S.",
    title: "Developing joint probability distributions of soil water retention characteristics",
    year: 1988,
    place: "Water Resources Research 24:755-769",
  },
  HEISKANEN1990: {
    authors: "Heiskanen, J.",
    title:
      "Water retention of light sphagnum peat used in nurseries (paper seen in summary; title not confirmed)",
    year: 1990,
    place: "Suo 41",
  },
  BOYER2012: {
    authors: "Boyer, C. R. et al.",
    title: "Nitrogen immobilization in plant growth substrates: clean chip residual, pine bark, and peatmoss",
    year: 2012,
    place: "International Journal of Agronomy 2012:978528",
  },
  SOTO2022: {
    authors: "Soto-Bravo, F.; Betancourt-Flores, A.",
    title:
      "Evaluation of methodologies to determine the physical characteristics of a coconut fiber substrate",
    year: 2022,
    place: "Agronomía Costarricense 46(2):29-45",
  },
  ABAD2005: {
    authors: "Abad, M. et al.",
    title: "Physical properties of various coconut coir dusts compared to peat",
    year: 2005,
    place: "HortScience 40:2138-2144",
  },
  EVANS1996: {
    authors: "Evans, M. R.; Konduru, S.; Stamps, R. H.",
    title: "Source variation in physical and chemical properties of coconut coir dust",
    year: 1996,
    place: "HortScience 31:965-967",
  },
  VARGAS2008B: {
    authors: "Vargas-Tapia, P. et al.",
    title: "Caracterización física, química y biológica de sustratos de polvo de coco",
    year: 2008,
    place: "Revista Fitotecnia Mexicana 31:375-381",
  },
  NOGUERA2003: {
    authors: "Noguera, P. et al.",
    title:
      "Influence of particle size on physical and chemical properties of coconut coir dust as container medium",
    year: 2003,
    place: "Communications in Soil Science and Plant Analysis 34:593-605",
  },
  POKORNY1984: {
    authors: "Pokorny, F. A.; Wetzstein, H. Y.",
    title: "Internal porosity, water availability, and root penetration of pine bark particles",
    year: 1984,
    place: "HortScience 19:447-449",
  },
  AIRHART1978: {
    authors: "Airhart, D. L.; Natarella, N. J.; Pokorny, F. A.",
    title: "Influence of initial moisture content on the wettability of a milled pine bark medium",
    year: 1978,
    place: "HortScience 13:432-434",
  },
  OWEN2008: {
    authors: "Owen, J. S.; Altland, J. E.",
    title: "Container height and Douglas fir bark texture affect substrate physical properties",
    year: 2008,
    place: "HortScience 43:505-508",
  },
  BILDERBACK1987: {
    authors: "Bilderback, T. E.; Fonteno, W. C.",
    title:
      "Effects of container geometry and media physical properties on air and water volumes in containers",
    year: 1987,
    place: "Journal of Environmental Horticulture 5:180-182",
  },
  LUQUE1982: {
    authors: "Luque-Escalona, A.",
    title: "Physical and physicochemical properties of the volcanic materials used in hydropony",
    year: 1982,
    place: "Acta Horticulturae 126:51-56",
  },
  VARGAS2008: {
    authors: "Vargas-Tapia, P. et al.",
    title:
      "Efecto del tamaño de partícula sobre algunas propiedades físicas del tezontle de Guanajuato, México",
    year: 2008,
    place: "Agricultura Técnica en México 34:323-331",
  },
  EVANS2004: {
    authors: "Evans, M. R.; Gachukia, M.",
    title: "Fresh parboiled rice hulls serve as an alternative to perlite in greenhouse crop substrates",
    year: 2004,
    place: "HortScience 39:232-235",
  },
  AGNEW2003: {
    authors: "Agnew, J. M.; Leonard, J. J.",
    title: "The physical properties of compost",
    year: 2003,
    place: "Compost Science and Utilization 11:238-264",
  },
  CUPTESTS: {
    authors: "Growers and sellers, unreviewed",
    title: "Home cup and pot tests of sifted grains, peat and sand, and figures on sellers' sheets",
    year: 2012,
    place: "public mailing lists, forums and data sheets, 2006-2014",
  },
  DELARRARD1999: {
    authors: "de Larrard, F.",
    title: "Concrete mixture proportioning: a scientific approach",
    year: 1999,
    place: "E & FN Spon, London",
  },
  ONODA1990: {
    authors: "Onoda, G. Y.; Liniger, E. G.",
    title: "Random loose packings of uniform spheres and the dilatancy onset",
    year: 1990,
    place: "Physical Review Letters 64:2727-2730",
  },
  BURES1993: {
    authors: "Burés, S. et al.",
    title: "Computer simulation of volume shrinkage after mixing container media components",
    year: 1993,
    place: "Journal of the American Society for Horticultural Science 118:757-761",
  },
  BROWN1975: {
    authors: "Brown, E. F.; Pokorny, F. A.",
    title: "Physical and chemical properties of media composed of milled pine bark and sand",
    year: 1975,
    place: "Journal of the American Society for Horticultural Science 100:119-121",
  },
  GABRIEL2009: {
    authors: "Gabriel, M. Z.; Altland, J. E.; Owen, J. S.",
    title:
      "The effect of physical and hydraulic properties of peatmoss and pumice on Douglas fir bark based soilless substrates",
    year: 2009,
    place: "HortScience 44:874-878",
  },
  SAHIN2006: {
    authors: "Sahin, U.; Anapali, O.",
    title: "Addition of pumice affects physical properties of soil used for container grown plants",
    year: 2006,
    place: "Agriculturae Conspectus Scientificus 71:59-64",
  },
  ILAHI2017: {
    authors: "Ilahi, W. F. F.; Ahmad, D.",
    title:
      "A study on the physical and hydraulic characteristics of cocopeat perlite mixture as a growing media in containerized plant production",
    year: 2017,
    place: "Sains Malaysiana 46:975-980",
  },
  KUKAL2012: {
    authors: "Kukal, S. S. et al.",
    title: "Water retention characteristics of soil bio-amendments used as growing media in pot culture",
    year: 2012,
    place: "Journal of Applied Horticulture 14:92-97",
  },
  MCCOY2013: {
    authors: "McCoy, E. L.",
    title: "Commercial amendments for sand-based root zones: review and interpretation",
    year: 2013,
    place: "HortTechnology 23:803-813",
  },
  WALTZ2003: {
    authors: "Waltz, F. C.; Quisenberry, V. L.; McCarty, L. B.",
    title:
      "Physical and hydraulic properties of rootzone mixes amended with inorganics for golf putting greens",
    year: 2003,
    place: "Agronomy Journal 95:395-404",
  },
  QUADPACK1983: {
    authors: "Piessens, R. et al.",
    title: "QUADPACK: a subroutine package for automatic integration",
    year: 1983,
    place: "Springer, Berlin",
  },
  LEVENSHTEIN1966: {
    authors: "Levenshtein, V. I.",
    title: "Binary codes capable of correcting deletions, insertions, and reversals",
    year: 1966,
    place: "Soviet Physics Doklady 10:707-710",
  },
  PINEBARK2020: {
    authors: "Virginia Tech horticulture group (authors not seen)",
    title:
      "Physical and hydraulic properties of commercial pine-bark substrate products used in production of containerized crops",
    year: 2020,
    place: "vtechworks.lib.vt.edu 10919/97261 (abstract; year from memory)",
  },
  ANICUA2008: {
    authors: "Anicua-Sánchez, R. et al.",
    title: "Physical properties of organic and inorganic growing media by particle size",
    year: 2008,
    place: "Acta Horticulturae 779 (title abridged)",
  },
  REGAN1997: {
    authors: "Regan, R. P.",
    title: "Crop coefficients of container-grown nursery shrubs, Oregon (title and year from memory)",
    year: 1997,
    place: "Oregon State University",
  },
  WICHURA1988: {
    authors: "Wichura, M. J.",
    title: "Algorithm AS 241: The percentage points of the normal distribution",
    year: 1988,
    place: "Applied Statistics 37:477-484",
  },
  WHITAKER2002: {
    authors: "Whitaker, J. S.; Hamill, T. M.",
    title: "Ensemble data assimilation without perturbed observations",
    year: 2002,
    place: "Monthly Weather Review 130:1913-1924",
  },
  BRIER1950: {
    authors: "Brier, G. W.",
    title: "Verification of forecasts expressed in terms of probability",
    year: 1950,
    place: "Monthly Weather Review 78:1-3 (from memory)",
  },
  MURPHY1973: {
    authors: "Murphy, A. H.",
    title: "A new vector partition of the probability score",
    year: 1973,
    place: "Journal of Applied Meteorology 12:595-600 (from memory)",
  },
  MURPHY1977: {
    authors: "Murphy, A. H.",
    title:
      "The value of climatological, categorical and probabilistic forecasts in the cost-loss ratio situation",
    year: 1977,
    place: "Monthly Weather Review 105:803-816",
  },
  RICHARDSON2000: {
    authors: "Richardson, D. S.",
    title: "Skill and relative economic value of the ECMWF ensemble prediction system",
    year: 2000,
    place: "Quarterly Journal of the Royal Meteorological Society 126:649-667",
  },
  HERSBACH2000: {
    authors: "Hersbach, H.",
    title: "Decomposition of the continuous ranked probability score for ensemble prediction systems",
    year: 2000,
    place: "Weather and Forecasting 15:559-570 (from memory)",
  },
} as const satisfies Record<string, Source>;

export type SourceKey = keyof typeof SOURCES;
