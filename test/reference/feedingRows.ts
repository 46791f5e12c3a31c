import type { GuildId } from '../../src/lib/domain/feeding/guilds';
import type { TableRow } from '../../src/lib/domain/feeding/tableEvidence';

export interface GuildRow {
	name: string;
	row: TableRow;
	/** any of these is right */
	expected: GuildId[];
	/** what the expectation rests on */
	basis: string;
}

const KK24 =
	'Hendrickx, Trapman, Holwerda, Stein, Wills, Rauhut, Melzer, Van Woensel & Reumer 2024, J. Vert. Paleontol., crown-measurement sheet';
/** Blades of land predators with two serrated edges: Cut, by the trait matrix's row on ziphodont theropods. */
const CUT: GuildId[] = ['cut'];

/**
 * Single crowns whose measures were read in that sheet (lengths in mm: CBL, CBW, CH, AL; Leidy 1865 for Mosasaurus). Sheets give
 * neither tips nor guilds: tips are left out, the guild expected is that of the animal's group in the trait matrix.
 */
// prettier-ignore
export const SPECIMEN_ROWS: GuildRow[] = [
	{ name: 'Eoraptor PVSJ 512 pmx2', row: { length_mm: 2.5, width_mm: 1.62, crownHeight_mm: 6.74, apicalLength_mm: 7.0, edges: 'serrated' }, expected: CUT, basis: KK24 },
	{ name: 'Tyrannosaurus PR2081 mx05', row: { length_mm: 45.46, width_mm: 32.63, crownHeight_mm: 94.06, apicalLength_mm: 108.36, edges: 'serrated' }, expected: CUT, basis: KK24 },
	// a front tooth set turned: its printed CHR of 1.765 is by its width, 2.652 by its length
	{ name: 'Tyrannosaurus PR2081 pm03', row: { length_mm: 24.0, width_mm: 36.06, crownHeight_mm: 63.65, apicalLength_mm: 71.97, edges: 'serrated' }, expected: CUT, basis: KK24 },
	{ name: 'Carcharodontosaurus SGM Din-1 mx03', row: { length_mm: 41.46, width_mm: 15.15, crownHeight_mm: 71.01, apicalLength_mm: 82.32, edges: 'serrated' }, expected: CUT, basis: KK24 },
	{ name: 'Torvosaurus ML 1100 mx02', row: { length_mm: 45.52, width_mm: 16.4, crownHeight_mm: 106.4, apicalLength_mm: 118.57, edges: 'serrated' }, expected: CUT, basis: KK24 },
	{ name: 'Megalosaurus NHMUK R234', row: { length_mm: 24.28, width_mm: 13.14, crownHeight_mm: 52.33, apicalLength_mm: 54.19, edges: 'serrated' }, expected: CUT, basis: KK24 },
	{ name: 'Suchomimus UC G67-1', row: { length_mm: 18.6, width_mm: 14.9, crownHeight_mm: 48.5, apicalLength_mm: 53.0, edges: 'weak' }, expected: ['pierce-two', 'general'], basis: KK24 },
	{ name: 'Velociraptor AMNH 6515 mx04', row: { length_mm: 4.75, width_mm: 1.8, crownHeight_mm: 7.89, apicalLength_mm: 9.56, edges: 'serrated' }, expected: CUT, basis: KK24 },
	{ name: 'Troodon DMNH 22837 pmx', row: { length_mm: 4.5, width_mm: 4.5, crownHeight_mm: 9.8, apicalLength_mm: 9.4, edges: 'serrated' }, expected: CUT, basis: KK24 },
	{ name: 'Spinosaurine RBINS R 447', row: { length_mm: 12, width_mm: 8.8, crownHeight_mm: 25.25, apicalLength_mm: 25.35, edges: 'weak', ridges: 21 }, expected: ['pierce-two', 'general'], basis: KK24 },
	{ name: 'Spinosaurine RBINS R 450', row: { length_mm: 16.15, width_mm: 13.85, crownHeight_mm: 49.15, apicalLength_mm: 47.7, edges: 'weak', ridges: 19 }, expected: ['pierce-two', 'general'], basis: KK24 },
	{ name: 'Spinosaurine RBINS R 451', row: { length_mm: 30.4, width_mm: 25.4, crownHeight_mm: 75.25, apicalLength_mm: 80.6, edges: 'weak', ridges: 28 }, expected: ['pierce-two', 'general'], basis: KK24 },
	{ name: 'Mosasaurus, New Jersey', row: { length_mm: 25.4, width_mm: 21.17, crownHeight_mm: 38.1, edges: 'sharp' }, expected: CUT, basis: 'Leidy 1865, Cretaceous Reptiles of the United States, p. 63' },
];

/** Lateral teeth of a group, p10 - p90 of CBR and of CHR (worked out from the same sheet). */
// prettier-ignore
export const CLADE_ROWS: GuildRow[] = [
	{ name: 'Tyrannosauridae, n = 185', row: { roundness: [0.51, 0.78], slenderness: [1.5, 2.21], edges: 'serrated' }, expected: CUT, basis: KK24 },
	{ name: 'Carcharodontosauridae, n = 83', row: { roundness: [0.39, 0.62], slenderness: [1.56, 2.44], edges: 'serrated' }, expected: CUT, basis: KK24 },
	{ name: 'Spinosauridae, n = 53', row: { roundness: [0.68, 0.91], slenderness: [1.96, 2.93], edges: 'weak' }, expected: ['pierce-two', 'general'], basis: KK24 },
	{ name: 'Dromaeosauridae, n = 318', row: { roundness: [0.38, 0.56], slenderness: [1.44, 2.38], edges: 'serrated' }, expected: CUT, basis: KK24 },
	{ name: 'Troodontidae, n = 81', row: { roundness: [0.34, 0.61], slenderness: [1.19, 1.77], edges: 'serrated' }, expected: CUT, basis: KK24 },
	{ name: 'Abelisauridae, n = 73', row: { roundness: [0.42, 0.6], slenderness: [1.45, 2.23], edges: 'serrated' }, expected: CUT, basis: KK24 },
];

/**
 * The trait matrix of the research notes: most of its shapes are recalled (marked so there), so it is no proof; it tells whether
 * words about a group lead to the guild that the same notes give it.
 */
const NOTES = 'trait matrix of the research notes';
// prettier-ignore
export const GROUP_ROWS: GuildRow[] = [
	{ name: 'Globidens-type', row: { slenderness: [0.6, 1.2], roundness: 1, tip: 'dome', edges: 'none', curve: 'none' }, expected: ['crush'], basis: `${NOTES}; Russell 1975, as quoted later` },
	{ name: 'Mosasaurus-type', row: { slenderness: [1.5, 2.3], roundness: 0.83, tip: 'pointed', edges: 'sharp', curve: 'slight' }, expected: ['cut'], basis: NOTES },
	{ name: 'Tylosaurus-type', row: { slenderness: [1.6, 2.4], roundness: 0.9, tip: 'pointed', edges: 'weak', curve: 'moderate' }, expected: ['general', 'cut'], basis: NOTES },
	{ name: 'Plioplatecarpus-type', row: { slenderness: [2, 3], roundness: 0.92, tip: 'sharp', edges: 'weak', curve: 'strong' }, expected: ['pierce-two', 'general'], basis: NOTES },
	{ name: 'Prognathodon-type', row: { slenderness: [1.2, 1.8], roundness: 0.87, tip: 'blunt-pointed', edges: 'sharp', curve: 'slight' }, expected: ['crunch', 'cut'], basis: NOTES },
	{ name: 'Elasmosauridae', row: { slenderness: [3, 5], roundness: 0.84, tip: 'needle', edges: 'none', curve: 'strong' }, expected: ['pierce-one'], basis: NOTES },
	{ name: 'Polycotylidae', row: { slenderness: [2.5, 4], roundness: 1, tip: 'sharp', edges: 'none', curve: 'slight' }, expected: ['pierce-two'], basis: NOTES },
	{ name: 'Goniopholididae', row: { slenderness: [1.3, 2.5], roundness: 0.92, tip: 'pointed', edges: 'weak', curve: 'slight' }, expected: ['general'], basis: `${NOTES}; Bajor et al. 2022, doi:10.54830/bmnhn.v71.n2.2022.214` },
	{ name: 'Brachaucheninae', row: { slenderness: [2, 3], roundness: 1, tip: 'pointed', edges: 'none', curve: 'moderate' }, expected: ['general'], basis: NOTES },
	{ name: 'Crocodylus', row: { slenderness: [1, 2.5], roundness: 0.93, tip: 'pointed', edges: 'weak', curve: 'slight' }, expected: ['general'], basis: `${NOTES}; Owen, as quoted later` },
	{ name: 'Alligator and caiman, rear', row: { slenderness: [0.6, 1.2], roundness: 0.8, tip: 'dome', edges: 'weak', curve: 'none' }, expected: ['crunch', 'crush'], basis: `${NOTES}; Owen, as quoted later` },
	{ name: 'Gavialis', row: { slenderness: [3, 4.5], roundness: 0.9, tip: 'sharp', edges: 'weak', curve: 'slight' }, expected: ['pierce-two'], basis: `${NOTES}; Owen, as quoted later` },
	{ name: 'Ichthyosauria', row: { slenderness: [1.5, 3], roundness: 1, tip: 'blunt-pointed', edges: 'none', curve: 'slight' }, expected: ['smash', 'general'], basis: NOTES },
	{ name: 'Theropods, ziphodont', row: { slenderness: [1.2, 2.8], roundness: [0.35, 0.78], tip: 'pointed', edges: 'serrated', section: 'blade', curve: 'moderate' }, expected: ['cut'], basis: KK24 },
	{ name: 'Spinosauridae', row: { slenderness: [2, 2.9], roundness: [0.68, 0.91], tip: 'pointed', edges: 'weak', curve: 'slight' }, expected: ['pierce-two', 'general'], basis: KK24 },
	{ name: 'Varanus komodoensis', row: { slenderness: [1.5, 2.5], roundness: 0.5, tip: 'sharp', edges: 'serrated', section: 'blade', curve: 'strong' }, expected: ['cut'], basis: NOTES },
	{ name: 'Snakes', row: { slenderness: [3, 8], roundness: 1, tip: 'needle', edges: 'none', curve: 'strong' }, expected: ['pierce-one'], basis: `${NOTES} (hold)` },
	{ name: 'Placodonts', row: { slenderness: [0.2, 0.8], roundness: 1, tip: 'dome', edges: 'none', curve: 'none' }, expected: ['crush'], basis: `${NOTES}; Walker & Brett 2002, Paleont. Soc. Pap. 8` },
];

export const ALL_ROWS: readonly GuildRow[] = [...SPECIMEN_ROWS, ...CLADE_ROWS, ...GROUP_ROWS];
