import type {
	Bed,
	ByLang,
	Exhibit,
	Group,
	Preservation,
	ProvisionalShape,
	Source,
	Specimen,
} from '../content/exhibit';
import { textDirection } from '../content/textDirection';
import { formFacts } from '../domain/compare/formFacts';
import type { ShapeFacts } from '../domain/compare/traits';
import type { BedView, ExhibitView, GroupView, ShapeView, SpecimenView } from '../content/view';
import { citations } from './citations';
import { feedingFor } from './feedingFor';
import { soundUrl } from './sounds';
import { drawingUrl, pictureUrl, shapeUrl } from './shapeFiles';

/**
 * The exhibit in one language, as plain data for a page. An unknown language becomes the exhibit's
 * first; text missing in a language is taken from the first.
 */
export function viewFor(exhibit: Exhibit, lang: string): ExhibitView {
	const first = exhibit.languages[0]?.code ?? 'en';
	const chosen = exhibit.languages.some((language) => language.code === lang) ? lang : first;
	const groups = new Map(exhibit.groups.map((group) => [group.id, group]));
	const beds = new Map(exhibit.beds.map((bed) => [bed.id, bed]));
	const sources = new Map(exhibit.sources.map((source) => [source.id, source]));
	return {
		hash: exhibit.hash,
		museum: exhibit.museum,
		lang: chosen,
		languages: exhibit.languages.map(({ code, name, direction }) => ({
			code,
			name,
			dir: textDirection(code, direction),
		})),
		rooms: exhibit.rooms,
		screen: exhibit.screen,
		idle: exhibit.idle,
		contact: exhibit.contact ?? null,
		publicAddress: exhibit.publicAddress ?? null,
		countsUse: exhibit.counts?.use ?? true,
		ui: { ...exhibit.ui[first], ...exhibit.ui[chosen] },
		specimens: exhibit.specimens.map((specimen) => {
			const group = groups.get(specimen.group);
			const bed = specimen.bed === undefined ? undefined : beds.get(specimen.bed);
			return specimenView(specimen, group, bed, sources, chosen, first);
		}),
		glossary: exhibit.glossary.flatMap((entry) => {
			const text = pick(entry.text, chosen, first)?.value;
			return text ? [{ id: entry.id, term: text.term, meaning: text.meaning }] : [];
		}),
		feeding: exhibit.feeding ? feedingFor(exhibit.feeding, sources, chosen, first) : null,
	};
}

function specimenView(
	specimen: Specimen,
	group: Group | undefined,
	bed: Bed | undefined,
	sources: ReadonlyMap<string, Source>,
	lang: string,
	first: string,
): SpecimenView {
	const text = pick(specimen.text, lang, first);
	const featureNames = { ...specimen.text[first]?.features, ...text?.value.features };
	return {
		id: specimen.id,
		accession: specimen.accession,
		title: text?.value.title ?? specimen.accession,
		short: text?.value.short ?? '',
		alt: text?.value.alt ?? '',
		html: text?.value.html ?? '',
		soundUrl: text?.value.sound === undefined ? null : soundUrl(specimen.id, text.lang, text.value.sound),
		textLang: text?.lang ?? first,
		features: specimen.features.map(({ id, kind, at, where_deg }) => ({
			id,
			name: featureNames[id] ?? id,
			kind,
			at,
			where_deg: specimen.prepared.labial === '-z' ? (360 - where_deg) % 360 : where_deg,
		})),
		group: groupView(specimen.group, group, sources, lang, first),
		part: specimen.part,
		preservation: specimen.preservation,
		bed: bed ? bedView(bed, lang, first) : null,
		kind: specimen.shape.kind,
		// what the specimen's own facts rest on, then what its shape was built from
		sourceCitations: citations(
			[...specimen.sources, ...(specimen.shape.kind === 'model' ? specimen.shape.basedOn : [])],
			sources,
		),
		identified: specimen.identified,
		licence: specimen.licence,
		rightsHolder: specimen.rightsHolder,
		measures: specimen.prepared.measures,
		facts: shapeFacts(specimen),
		shape: shapeView(specimen),
	};
}

/** The words in the language asked for, else in the first, else in any. */
export function pick<T>(text: ByLang<T>, lang: string, first: string): { lang: string; value: T } | null {
	for (const code of [lang, first, ...Object.keys(text)]) {
		const value = text[code];
		if (value !== undefined) return { lang: code, value };
	}
	return null;
}

function groupView(
	id: string,
	group: Group | undefined,
	sources: ReadonlyMap<string, Source>,
	lang: string,
	first: string,
): GroupView {
	const picked = group && pick(group.text, lang, first);
	const text = picked?.value;
	const firstText = group?.text[first];
	const [lengthSource] = group?.length_m ? citations([group.length_m.source], sources) : [];
	return {
		id,
		name: text?.name ?? group?.latin ?? id,
		latin: group?.latin ?? null,
		short: text?.short ?? '',
		living: group?.living ?? false,
		habitat: group?.habitat ?? 'sea',
		length:
			group?.length_m && lengthSource
				? {
						typical_m: group.length_m.typical ?? null,
						largest_m: group.length_m.largest ?? null,
						source: lengthSource,
					}
				: null,
		drawing: group?.drawing ?? null,
		moves: text?.moves ?? firstText?.moves ?? null,
		lives: text?.lives ?? firstText?.lives ?? null,
		eats: text?.eats ?? firstText?.eats ?? null,
		eatenBy: text?.eatenBy ?? firstText?.eatenBy ?? null,
		textLang: picked?.lang ?? first,
		sourceCitations: citations(group?.sources ?? [], sources),
	};
}

function bedView(bed: Bed, lang: string, first: string): BedView {
	const text = pick(bed.text, lang, first)?.value;
	return {
		id: bed.id,
		name: text?.name ?? bed.id,
		short: text?.short ?? '',
		oldest_Ma: bed.oldest_Ma,
		youngest_Ma: bed.youngest_Ma,
	};
}

function shapeFacts({ shape, prepared }: Specimen): ShapeFacts {
	const model = shape.kind === 'model';
	return {
		labial: prepared.labial ?? (model ? '+z' : null),
		regionAreas_mm2: prepared.regionAreas_mm2 ?? null,
		form: model ? formFacts(shape.form) : null,
	};
}

/** A scan that waits for marks on its crown, as a view can show it: all of it counts as crown. */
export function provisionalView(shape: ProvisionalShape, preservation: Preservation): ShapeView {
	return {
		url: shapeUrl(shape.hash),
		pictureUrl: pictureUrl(shape.hash, preservation),
		drawingUrl: drawingUrl(shape.hash),
		picture: shape.picture,
		preservation,
		bounds: shape.bounds,
		crownHeight_mm: shape.bounds.max[1] - shape.bounds.min[1],
		triangles: shape.triangles,
	};
}

function shapeView({ prepared, preservation }: Specimen): ShapeView {
	return {
		url: shapeUrl(prepared.hash),
		pictureUrl: pictureUrl(prepared.hash, preservation),
		drawingUrl: drawingUrl(prepared.hash),
		picture: prepared.picture,
		preservation,
		bounds: prepared.bounds,
		crownHeight_mm: prepared.measures.axialHeight_mm,
		triangles: prepared.triangles,
	};
}
