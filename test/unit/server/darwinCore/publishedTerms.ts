/**
 * Names of terms as their keepers publish them for archives; without a prefix they are Darwin Core's own.
 * Source: TDWG, repository tdwg/dwc, build/xml/occurrence_core_list.csv and measurements_or_facts_list.csv (commit
 * 1d8e9d2) and audiovisual_list.csv (commit 7d4f8fd); of the last, the terms on scans. CC BY 4.0.
 */
const PREFIXES: Readonly<Record<string, string>> = {
	dwc: 'http://rs.tdwg.org/dwc/terms/',
	dc: 'http://purl.org/dc/elements/1.1/',
	dcterms: 'http://purl.org/dc/terms/',
	ac: 'http://rs.tdwg.org/ac/terms/',
	xmpRights: 'http://ns.adobe.com/xap/1.0/rights/',
};

const uris = (names: string): Set<string> =>
	new Set(
		names
			.trim()
			.split(/\s+/)
			.map((name) => {
				const [prefix, local] = name.includes(':') ? name.split(':') : ['dwc', name];
				return `${PREFIXES[prefix]}${local}`;
			}),
	);

export const OCCURRENCE_TERMS = uris(`
	dc:type dcterms:modified dc:language dcterms:license dcterms:rightsHolder dcterms:accessRights
	dcterms:bibliographicCitation dcterms:references feedbackURL institutionID collectionID datasetID
	institutionCode collectionCode datasetName ownerInstitutionCode basisOfRecord informationWithheld
	dataGeneralizations dynamicProperties occurrenceID catalogNumber recordNumber recordedBy recordedByID
	individualCount organismQuantity organismQuantityType sex lifeStage reproductiveCondition caste
	behavior vitality establishmentMeans degreeOfEstablishment pathway georeferenceVerificationStatus
	occurrenceStatus associatedMedia associatedOccurrences associatedReferences associatedTaxa
	otherCatalogNumbers occurrenceRemarks organismID organismName organismScope associatedOrganisms
	previousIdentifications organismRemarks causeOfDeath materialEntityID digitalSpecimenID
	materialEntityType discipline preparations disposition verbatimLabel associatedSequences
	materialEntityRemarks materialSampleID eventID parentEventID eventType projectTitle projectID
	fundingAttributionID fieldNumber eventDate eventTime startDayOfYear endDayOfYear year month day
	verbatimEventDate habitat samplingProtocol sampleSizeValue sampleSizeUnit samplingEffort fieldNotes
	eventRemarks locationID higherGeographyID higherGeography continent waterBody islandGroup island
	country countryCode stateProvince county municipality locality verbatimLocality
	minimumElevationInMeters maximumElevationInMeters verbatimElevation verticalDatum minimumDepthInMeters
	maximumDepthInMeters verbatimDepth minimumDistanceAboveSurfaceInMeters
	maximumDistanceAboveSurfaceInMeters locationAccordingTo locationRemarks decimalLatitude
	decimalLongitude geodeticDatum coordinateUncertaintyInMeters coordinatePrecision pointRadiusSpatialFit
	verbatimCoordinates verbatimLatitude verbatimLongitude verbatimCoordinateSystem verbatimSRS
	footprintWKT footprintSRS footprintSpatialFit georeferencedBy georeferencedDate georeferenceProtocol
	georeferenceSources georeferenceRemarks geologicalContextID earliestEonOrLowestEonothem
	latestEonOrHighestEonothem earliestEraOrLowestErathem latestEraOrHighestErathem
	earliestPeriodOrLowestSystem latestPeriodOrHighestSystem earliestEpochOrLowestSeries
	latestEpochOrHighestSeries earliestAgeOrLowestStage latestAgeOrHighestStage lowestBiostratigraphicZone
	highestBiostratigraphicZone lithostratigraphicTerms group formation member bed identificationID
	verbatimIdentification identificationQualifier typeStatus typifiedName identifiedBy identifiedByID
	dateIdentified identificationReferences identificationVerificationStatus identificationRemarks taxonID
	scientificNameID acceptedNameUsageID parentNameUsageID originalNameUsageID nameAccordingToID
	namePublishedInID taxonConceptID scientificName acceptedNameUsage parentNameUsage originalNameUsage
	nameAccordingTo namePublishedIn namePublishedInYear higherClassification kingdom phylum class order
	superfamily family subfamily tribe subtribe genus genericName subgenus infragenericEpithet
	specificEpithet infraspecificEpithet cultivarEpithet taxonRank verbatimTaxonRank
	scientificNameAuthorship vernacularName nomenclaturalCode taxonomicStatus nomenclaturalStatus
	taxonRemarks
`);

export const MEASUREMENT_TERMS = uris(`
	measurementID parentMeasurementID measurementType verbatimMeasurementType measurementValue
	measurementAccuracy measurementUnit measurementDeterminedBy measurementDeterminedDate measurementMethod
	measurementRemarks
`);

export const MEDIA_TERMS = uris(`
	dcterms:identifier dc:type dcterms:type ac:subtypeLiteral ac:subtype dcterms:title dcterms:modified
	ac:metadataLanguageLiteral ac:metadataLanguage ac:providerManagedID ac:comments
	ac:hasServiceAccessPoint dc:rights dcterms:rights xmpRights:Owner xmpRights:UsageTerms
	xmpRights:WebStatement ac:licenseLogoURL dc:source dcterms:source dc:creator dcterms:creator
	ac:providerLiteral ac:provider dcterms:description ac:caption dc:language dcterms:language
	ac:subjectPart ac:subjectOrientation ac:digitizationDate ac:captureDevice ac:resourceCreationTechnique
	ac:IDofContainingCollection ac:relatedResourceID ac:providerID ac:derivedFrom
	ac:associatedSpecimenReference ac:associatedObservationReference ac:accessURI dc:format dcterms:format
	ac:variantLiteral ac:variant ac:variantDescription ac:furtherInformationURL ac:licensingException
	ac:serviceExpectation ac:hashFunction ac:hashValue
`);
