package limit

import "lastrow/calc/length"

// Flatness by the inch rules; the tables of DIN 18202 and the classes of BS 8204 are in package subfloor.
var (
	FlatTenFeet = both("flat-10-ft", "gap under a straightedge of 10 ft", 3*in/16,
		"ASTM F710; NWFA guidelines", Published)
	FlatSixFeet = both("flat-6-ft", "gap under a straightedge of 6 ft", in/8,
		"NWFA guidelines", Published)
	FlatFirstMetre = both("flat-first-metre", "gap under a straightedge, first metre", 3*mm,
		"European resilient flooring makers' institute, installation page: 3 to 4 mm", Published)
	FlatPerMetre = both("flat-per-metre", "gap under a straightedge, each further metre", 2*mm,
		"European resilient flooring makers' institute, installation page", Published)
)

// Moisture of slabs and of wood.
var (
	MoistureRH = amount("moisture-rh", "relative humidity in a slab", 75, 1, "% RH",
		"ASTM F710, by F2170 probes; BS 8203-1:2017", Published)
	MoistureMVER = amount("moisture-calcium-chloride", "vapor given off by a slab", 3, 1, "lb / 1000 sq ft / 24 h",
		"ASTM F710, by F1869", Published)
	CarbideCement = amount("moisture-carbide-cement", "cement screed by carbide", 2, 1, "CM-%",
		"European resilient flooring makers' institute, installation page", Published)
	CarbideCementWarm = amount("moisture-carbide-cement-heated", "heated cement screed by carbide", 18, 10, "CM-%",
		"European resilient flooring makers' institute, installation page", Published)
	CarbideSulfate = amount("moisture-carbide-sulfate", "calcium-sulfate (anhydrite) screed by carbide", 5, 10, "CM-%",
		"European resilient flooring makers' institute, installation page", Published)
	CarbideSulfateWarm = amount("moisture-carbide-sulfate-heated", "heated calcium-sulfate screed by carbide", 3, 10, "CM-%",
		"European resilient flooring makers' institute, installation page", Published)
	MoistureWood = amount("moisture-wood", "moisture content of a wood subfloor", 12, 1, "%",
		"NWFA guidelines", Published)
	WoodStrip = amount("moisture-wood-strip", "wood subfloor against strip under 3 in wide", 4, 1, "points",
		"NWFA guidelines", Published)
	WoodPlank = amount("moisture-wood-plank", "wood subfloor against plank of 3 in and wider", 2, 1, "points",
		"NWFA guidelines", Published)
	TestsFirst = amount("moisture-tests", "tests for the first 1000 sq ft of slab", 3, 1, "tests",
		"ASTM F2170-19a 10.1", Published)
	TestsMore = amount("moisture-tests-more", "tests for each further 1000 sq ft, or part of it", 1, 1, "tests",
		"ASTM F2170-19a 10.1", Published)
	TestsWood = amount("moisture-tests-wood", "readings for 1000 sq ft of wood subfloor", 20, 1, "readings",
		"NWFA guidelines", Published)
	TestsSheet = amount("moisture-tests-sheet", "area for one plastic sheet", 500, 1, "sq ft",
		"ASTM D4263", Memory)
	SheetHours = amount("moisture-sheet-hours", "least time that a taped plastic sheet lies", 16, 1, "h",
		"ASTM D4263-83(2018)", Published)
)

// Films, rest, climate, heat and leveler.
var (
	FilmLap = each("film-lap", "lap of a vapor film, taped", 8*in, 200*mm,
		"inspectors' and European trade texts; under a slab 2012 IRC R506.2.3 asks 6 in", Practice)
	FilmThick = each("film-thickness", "thickness of a vapor film", 6*in/1000, mm/5,
		"inspectors' and European trade texts: 6 mil, 0.2 mm", Practice)
	Acclimate = amount("acclimate", "rest of the closed boxes in the room", 48, 1, "h",
		"trade texts: 48 to 72 h", Practice)
	AirWarm = amount("air-least", "air while laying and three days after, at least", 18, 1, "°C",
		"trade texts in the European tradition", Practice)
	FloorWarm = amount("floor-least", "subfloor while laying, at least", 15, 1, "°C",
		"trade texts in the European tradition", Practice)
	AirDry = amount("air-humidity-most", "humidity while laying, at most", 75, 1, "% RH",
		"trade texts in the European tradition", Practice)
	HeatedSurface = amount("heated-surface", "surface of a heated floor, wood or laminate", 27, 1, "°C",
		"trade texts: 27 or 28; EN 1264 allows 29 where people stay", Practice)
	HeatedZone = amount("heated-zone", "surface of a heated floor where people stay", 29, 1, "°C",
		"EN 1264", Published)
	HeatedEdge = amount("heated-edge", "surface of a heated floor within 1 m of the walls", 35, 1, "°C",
		"EN 1264", Published)
	HeatedSlab = amount("heated-slab", "surface of a heated slab", 85, 1, "°F",
		"ASTM F710", Published)
	HeatedResistance = amount("heated-resistance", "thermal resistance of plank, underlay and film together", 15, 100, "m²K/W",
		"heating texts on EN 1264", Published)
	HDFConducts = amount("hdf-conductivity", "thermal conductivity of HDF", 14, 100, "W/mK",
		none, Memory)
	LevelerPowder = amount("leveler-powder", "leveler powder for a square metre, a millimetre deep", 17, 10, "kg",
		"trade texts: 1.6 to 1.8", Practice)
	LevelerBag = amount("leveler-bag", "powder in a metric bag of leveler", 25, 1, "kg",
		none, Practice)
	LevelerYield = amount("leveler-yield", "what a 50 lb bag of leveler fills", 45, 100, "cu ft",
		"trade texts: 0.42 to 0.50", Practice)
	LevelerMost = both("leveler-depth-most", "deepest layer of leveler that is taken as said", 4*in,
		none, Practice)
	StraightedgeLeast = both("straightedge-least", "shortest straightedge", 100*mm,
		"DIN 18202:2013 Table 3", Published)
	StraightedgeMost = both("straightedge-most", "longest straightedge or string line", 60*length.Foot,
		none, Practice)
	DipMost = both("dip-most", "deepest dip that is still a flatness reading", 4*in,
		none, Practice)
)
