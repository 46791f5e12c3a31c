/** A small exhibit without a single problem: one specimen from a model, one from a scan, in two languages. */
export const VALID_CONTENT: Readonly<Record<string, string>> = {
	'exhibit.yaml': `museum: Skerrow Museum
languages:
  - { code: en, name: English }
  - { code: fr, name: Français }
rooms: [compare]
screen: { diagonal_in: 32, width_px: 1920, height_px: 1080 }
idle: { warn_after_s: 100, reset_after_warning_s: 25 }
contact: The front desk
`,
	'sources.yaml': `leidy-1865:
  citation: "Leidy, J. 1865. Cretaceous Reptiles of the United States, p. 63."
  tag: seen
skerrow-model:
  citation: Made at the museum
  tag: ours
`,
	'ui/en.yaml': `start_title: What can a tooth tell?
teeth: "{count, plural, one {# tooth} other {# teeth}}"
size: "{value} mm"
`,
	'ui/fr.yaml': `start_title: Que dit une dent ?
teeth: "{count, plural, one {# dent} other {# dents}}"
size: "{value} mm"
`,
	'glossary/en.yaml': `carina: { term: Carina, meaning: A sharp cutting edge along the crown. }
`,
	'glossary/fr.yaml': `carina: { term: Carène, meaning: Une arête coupante le long de la couronne. }
`,
	'beds/upper-marl.yaml': `oldest_ma: 70
youngest_ma: 67
`,
	'beds/upper-marl.en.md': `---
name: Upper Skerrow Marl
short: Chalky mud of a warm sea
---
`,
	'beds/upper-marl.fr.md': `---
name: Marne supérieure de Skerrow
short: Boue crayeuse d’une mer chaude
---
`,
	'groups/mosasaurus.yaml': `latin: Mosasaurus
living: false
habitat: sea
sources: [leidy-1865]
`,
	'groups/mosasaurus.en.md': `---
name: Mosasaurus
short: Giant sea lizard
---
A lizard as long as a bus.
`,
	'groups/mosasaurus.fr.md': `---
name: Mosasaure
short: Lézard marin géant
---
Un lézard long comme un bus.
`,
	'specimens/skm-0001/specimen.yaml': `accession: SKM 0001
group: mosasaurus
part: shed-crown
preservation: honey
bed: upper-marl
identified: { by: Skerrow Museum, certainty: likely }
shape:
  model:
    based_on: [leidy-1865]
    crown_height_mm: 38.1
    base_length_mm: 25.4
    base_width_mm: 21.17
    sections:
      - { at: 0, shape: oval }
      - { at: 0.7, shape: blade, width_factor: 0.9 }
    taper: bullet
    curve: { distal_deg: 14, lingual_deg: 6, starts_at: 0.3 }
    tip_radius_mm: 1.2
    carinae:
      - { where: mesial, prominence_mm: 0.7, from: 0.05 }
    root: { state: resorbed, length_mm: 7, pit_side: lingual, pit_depth_mm: 5 }
    wear:
      facets:
        - { side: labial, angle_deg: 20, depth_mm: 1.2, at: 0.8 }
features:
  - { id: edge, at: 0.6, where: mesial }
licence: http://creativecommons.org/licenses/by/4.0/
rights_holder: Skerrow Museum
sources: [leidy-1865]
`,
	'specimens/skm-0001/label.en.md': `---
title: Crown with a cutting edge
short: A meat cutter's tooth
alt: A stout honey-coloured crown, a little curved
features:
  edge: Cutting edge
---
A sharp edge runs from tip to base.
`,
	'specimens/skm-0001/label.fr.md': `---
title: Couronne à arête coupante
short: Une dent qui tranche
alt: Une couronne trapue couleur miel, un peu courbée
features:
  edge: Arête coupante
---
Une arête coupante va de la pointe à la base.
`,
	'specimens/skm-0002/specimen.yaml': `accession: SKM 0002
group: mosasaurus
part: rooted-tooth
preservation: tan
bed: upper-marl
identified: { by: Skerrow Museum, certainty: sure }
shape:
  scan: { file: scan.stl, units: mm }
licence: http://rightsstatements.org/vocab/InC/1.0/
rights_holder: Skerrow Museum
sources: [skerrow-model]
`,
	'specimens/skm-0002/scan.stl': 'solid tooth',
	'specimens/skm-0002/label.en.md': `---
title: Tooth with its root
short: Still in use when its owner died
alt: A brown spike on a swollen root
---
The root is whole.
`,
	'specimens/skm-0002/label.fr.md': `---
title: Dent avec sa racine
short: Encore en usage à la mort de l’animal
alt: Une pointe brune sur une racine renflée
---
La racine est entière.
`,
};

/** Files to put over the valid exhibit; null takes a file away. */
export type Overlay = Readonly<Record<string, string | null>>;

/** The valid exhibit with an overlay on it. */
export function contentWith(overlay: Overlay): Record<string, string> {
	const files: Record<string, string> = { ...VALID_CONTENT };
	for (const [path, text] of Object.entries(overlay)) {
		if (text === null) delete files[path];
		else files[path] = text;
	}
	return files;
}

/** A file of the valid exhibit with one piece replaced; the piece must be there exactly once. */
export function edited(path: string, piece: string, by: string): Overlay {
	const text = VALID_CONTENT[path];
	if (text.split(piece).length !== 2) throw new Error(`edited: "${piece}" is not once in ${path}`);
	return { [path]: text.replace(piece, () => by) };
}
