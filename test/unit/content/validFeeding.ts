import type { Overlay } from './validContent';

const SPREADS =
	'{ slenderness: 0.1, tip: 0.2, roundness: 0.1, edges: 0.1, section: 0.2, curve: 6, wear: 0.02 }';

/** A small folder `feeding/` without a problem, to lay over the valid exhibit. */
export const VALID_FEEDING: Readonly<Record<string, string>> = {
	'feeding/thresholds.yaml': `slenderness: { middle: 1.9, pull: 1.5 }
tip: { middle: 0.18, pull: 0.6 }
roundness: { middle: 0.85, pull: 1.6 }
edges: { middle: 0.35, pull: 1.7, full_share: 0.15, serrated: 0.25 }
section: { pull: 0.3 }
curve: { middle_deg: 12, step_deg: 30, pull: 0.4 }
wear: { pull: 2 }
spread: ${SPREADS}
unknown: ${SPREADS}
edged_share: 0.7
side_pull_deg: 20
prey_over_tooth: { from: 5, to: 40 }
sources: [skerrow-model]
`,
	'feeding/crown.yaml': `strength_mpa: { value: 338, source: leidy-1865 }
enamel_stiffness_gpa: { value: 80, source: leidy-1865 }
enamel_poisson: { value: 0.3, source: leidy-1865 }
enamel_toughness: { value: 0.84, low: 0.7, high: 1.37, source: leidy-1865 }
`,
	'feeding/materials.yaml': `skin:
  resists_mpa: { value: 20, low: 10, high: 30, source: leidy-1865 }
  basis: strength
  gives: parts
  edges: help
  edges_source: leidy-1865
bone:
  resists_mpa: { value: 1000, source: leidy-1865 }
  basis: hardness
  gives: cracks
  stiffness_gpa: { value: 20, source: leidy-1865 }
  poisson: { value: 0.3, source: leidy-1865 }
  edges: not-tested
  edges_source: leidy-1865
  borrowed: true
`,
	'feeding/guilds.yaml': `crush:
  corner: crush
  bands: { slenderness: { from: 0.1, to: 1.2 }, tip: { from: 0.22, to: 1.5 } }
  sources: [leidy-1865]
`,
	'feeding/ridges.yaml': `grip: { verdict: open, sources_for: [leidy-1865], sources_against: [] }
`,
	'feeding/everyday.yaml': `apple: { mass_kg: { value: 0.1, source: skerrow-model } }
`,
	'feeding/prey/turtle.yaml': `outline: turtle
layers:
  - { material: skin, thickness_mm: { value: 1, source: skerrow-model } }
  - { material: bone, thickness_mm: { value: 4, source: skerrow-model } }
shell: { radius_mm: { value: 80, source: skerrow-model }, strength_mpa: { value: 67, source: leidy-1865 } }
sources: [leidy-1865]
`,
	'feeding/jaws/lizard.yaml': `teeth: 12
stops:
  - { id: front, at: 0, crown_height_mm: 30, slenderness: 2, tip: 0.1, roundness: 0.9, edges: 0.4, fullness: 0, curve_deg: 14 }
  - { id: back, at: 1, crown_height_mm: 12, slenderness: 1.2, tip: 0.2, roundness: 0.8, edges: 0.4, lens: 0.5, fullness: 1, curve_deg: 30 }
sources: [skerrow-model]
`,
	'feeding/words/en.yaml': `corners:
  pierce: { name: Pierce, shape: Needle, does: Holds slippery fish }
  cut: { name: Cut, shape: Blade, does: Slices flesh }
  crush: { name: Crush, shape: Dome, does: Cracks shells }
guilds:
  crush: { name: Crush, form: A dome, wear: Heavy, food: Shells, examples: Placodonts }
materials:
  skin: Skin
  bone: Bone
prey:
  turtle: { name: Turtle, short: Bone all round, lesson: Try a dome. }
jaws:
  lizard:
    name: A lizard
    short: Fangs in front
    stops: { front: { name: Fangs, does: They seize. }, back: { name: Hooks, does: They hold. } }
ridges:
  grip: { name: Grip, for: They may hold., against: Nobody has tested it. }
everyday:
  apple: "{count, plural, one {# apple} other {# apples}}"
`,
	'feeding/words/fr.yaml': `corners:
  pierce: { name: Percer, shape: Aiguille, does: Retient le poisson }
  cut: { name: Trancher, shape: Lame, does: Découpe la chair }
  crush: { name: Broyer, shape: Dôme, does: Casse les coquilles }
guilds:
  crush: { name: Broyer, form: Un dôme, wear: Forte, food: Coquilles, examples: Placodontes }
materials:
  skin: Peau
  bone: Os
prey:
  turtle: { name: Tortue, short: De l’os tout autour, lesson: Essayez un dôme. }
jaws:
  lizard:
    name: Un lézard
    short: Des crocs devant
    stops: { front: { name: Crocs, does: Ils saisissent. }, back: { name: Crochets, does: Ils tiennent. } }
ridges:
  grip: { name: Prise, for: Elles tiennent peut-être., against: Personne ne l’a testé. }
everyday:
  apple: "{count, plural, one {# pomme} other {# pommes}}"
`,
};

/** The folder with one piece of one file replaced; the piece must be there exactly once. */
export function feedingWith(path: string, piece: string, by: string): Overlay {
	const text = VALID_FEEDING[path];
	if (text.split(piece).length !== 2) throw new Error(`feedingWith: "${piece}" is not once in ${path}`);
	return { ...VALID_FEEDING, [path]: text.replace(piece, () => by) };
}

/** The folder without one of its files. */
export const feedingWithout = (path: string): Overlay => ({ ...VALID_FEEDING, [path]: null });
