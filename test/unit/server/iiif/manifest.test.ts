import { describe, expect, it } from 'vitest';
import type { Exhibit, Specimen } from '../../../../src/lib/content/exhibit';
import { isLicence } from '../../../../src/lib/content/licence';
import { manifest } from '../../../../src/lib/server/iiif/manifest';
import { exhibit, hashOf, prepared, specimen } from '../samples';

const ADDRESS = 'https://teeth.skerrow.example/table';
const PICTURE = { width_px: 480, height_px: 480 };

function trilingual(over: Partial<Specimen> = {}): { exhibit: Exhibit; specimen: Specimen } {
	const a = specimen('a');
	const tooth: Specimen = {
		...a,
		prepared: prepared(hashOf('a')),
		text: { ...a.text, fr: { ...a.text.en, title: 'Dent a', short: 'Une couronne' } },
		...over,
	};
	const words = [
		...['iiif_number', 'iiif_animal', 'iiif_part', 'iiif_bed', 'iiif_shape', 'iiif_shape_model'],
		...['iiif_shape_scan', 'iiif_credit', 'iiif_model', 'part_crown', 'measure_height', 'measure_length'],
		...['measure_width', 'measure_slenderness', 'measure_roundness'],
	];
	const ui = (lang: string) => Object.fromEntries(words.map((key) => [key, `${key} ${lang}`]));
	return {
		exhibit: {
			...exhibit(),
			languages: [
				{ code: 'en', name: 'English' },
				{ code: 'fr', name: 'Français' },
			],
			ui: { en: ui('en'), fr: ui('fr') },
			specimens: [tooth],
		},
		specimen: tooth,
	};
}

type Json = Record<string, unknown>;
const made = (over: Partial<Specimen> = {}): Json => {
	const { exhibit: of, specimen: tooth } = trilingual(over);
	return JSON.parse(JSON.stringify(manifest(of, tooth, ADDRESS, PICTURE))) as Json;
};

/**
 * What IIIF Presentation API 3.0 (iiif.io/api/presentation/3.0, sections 3, 4, 5 and appendix A) says a document MUST
 * be, as far as these kinds of resource go. Returns what is broken.
 */
function faults(value: Json): string[] {
	const found: string[] = [];
	const must = (holds: boolean, rule: string) => void (holds || found.push(rule));
	const list = (of: unknown): Json[] => (Array.isArray(of) ? (of as Json[]) : []);
	const isUri = (id: unknown) =>
		typeof id === 'string' && URL.canParse(id) && /^https?:$/.test(new URL(id).protocol);
	const isMap = (of: unknown): boolean =>
		typeof of === 'object' &&
		of !== null &&
		!Array.isArray(of) &&
		Object.keys(of).length > 0 &&
		Object.entries(of).every(
			([code, words]) =>
				(code === 'none' || /^[a-z]{2,3}(-[A-Za-z0-9]+)*$/.test(code)) &&
				Array.isArray(words) &&
				words.length > 0 &&
				words.every((word) => typeof word === 'string' && word !== ''),
		);
	const seen = new Set<string>();
	const own = (resource: Json, type: string, where: string) => {
		must(isUri(resource.id), `${where}: id is an HTTP(S) URI`);
		must(resource.type === type, `${where}: type is ${type}`);
		must(!seen.has(String(resource.id)), `${where}: its id is nobody else's`);
		seen.add(String(resource.id));
	};
	const content = (resource: Json, where: string) => {
		must(isUri(resource.id), `${where}: id is an HTTP(S) URI`);
		must(
			['Dataset', 'Image', 'Model', 'Sound', 'Text', 'Video'].includes(String(resource.type)),
			`${where}: type of content`,
		);
		must(
			resource.format === undefined || /^[a-z]+\/[-+.\w]+$/.test(String(resource.format)),
			`${where}: media type`,
		);
		must(resource.label === undefined || isMap(resource.label), `${where}: label is a language map`);
	};

	must(
		value['@context'] === 'http://iiif.io/api/presentation/3/context.json',
		'the context stands at the top',
	);
	must(Object.keys(value)[0] === '@context', 'the context is the first property');
	own(value, 'Manifest', 'manifest');
	must(isMap(value.label), 'manifest: label');
	must(value.summary === undefined || isMap(value.summary), 'manifest: summary');
	for (const entry of list(value.metadata))
		must(isMap(entry.label) && isMap(entry.value), `metadata: ${JSON.stringify(entry)}`);
	const statement = value.requiredStatement as Json | undefined;
	must(
		!statement || (isMap(statement.label) && isMap(statement.value)),
		'requiredStatement: label and value',
	);
	must(
		value.rights === undefined || isLicence(String(value.rights)),
		'rights: Creative Commons or RightsStatements.org',
	);
	for (const agent of list(value.provider)) {
		must(
			isUri(agent.id) && agent.type === 'Agent' && isMap(agent.label),
			'provider: an Agent with id and label',
		);
		for (const page of list(agent.homepage)) {
			content(page, 'provider homepage');
			must(isMap(page.label), 'homepage: label');
		}
	}
	for (const name of ['homepage', 'rendering'] as const)
		for (const one of list(value[name])) {
			content(one, name);
			must(isMap(one.label), `${name}: label`);
		}
	for (const one of list(value.thumbnail)) content(one, 'thumbnail');
	must(list(value.items).length > 0, 'manifest: items holds at least one Canvas');
	for (const canvas of list(value.items)) {
		own(canvas, 'Canvas', 'canvas');
		must(!String(canvas.id).includes('#'), 'canvas: id without a fragment');
		for (const side of ['width', 'height'])
			must(
				Number.isInteger(canvas[side]) && (canvas[side] as number) > 0,
				`canvas: ${side} is a positive integer`,
			);
		for (const page of list(canvas.items)) {
			own(page, 'AnnotationPage', 'annotation page');
			must(list(page.items).length > 0, 'annotation page: items');
			for (const note of list(page.items)) {
				own(note, 'Annotation', 'annotation');
				must(note.motivation === 'painting', 'annotation: painting');
				must(note.target === canvas.id, 'annotation: its target is the canvas that holds it');
				content(note.body as Json, 'body');
			}
		}
	}
	return found;
}

describe('manifest', () => {
	it('keeps the rules of Presentation 3.0, for a model and for a scan', () => {
		expect(faults(made())).toEqual([]);
		expect(faults(made({ shape: { kind: 'scan', file: 'a.stl', units: 'mm' } }))).toEqual([]);
	});

	it('keeps them where the words of its own are missing in ui/', () => {
		const { exhibit: of, specimen: tooth } = trilingual();
		const bare = manifest({ ...of, ui: { en: {} } }, tooth, ADDRESS, PICTURE);
		expect(faults(JSON.parse(JSON.stringify(bare)) as Json)).toEqual([]);
	});

	it('is checked by rules that can break', () => {
		const good = made();
		const broken: [string, Json][] = [
			['label', { ...good, label: 'Tooth' }],
			['id', { ...good, id: '/iiif/a' }],
			['rights', { ...good, rights: 'https://creativecommons.org/licenses/by/4.0/' }],
			['canvas', { ...good, items: [] }],
			['type', { ...good, type: 'sc:Manifest' }],
			['metadata', { ...good, metadata: [{ label: { en: ['x'] } }] }],
		];
		for (const [what, value] of broken) expect([what, faults(value).length > 0]).toEqual([what, true]);
	});

	it('says everything in all languages of the exhibit', () => {
		const { label, summary, metadata } = made() as {
			label: Json;
			summary: Json;
			metadata: { label: Json; value: Json }[];
		};
		expect(label).toEqual({ en: ['Tooth a'], fr: ['Dent a'] });
		expect(summary).toEqual({ en: ['A crown'], fr: ['Une couronne'] });
		expect(metadata[0]).toEqual({
			label: { en: ['iiif_number en'], fr: ['iiif_number fr'] },
			value: { none: ['SKM a'] },
		});
	});

	it('gives measures with their units as each language writes them, of scans only', () => {
		const measured = (of: Json) =>
			(of.metadata as { label: { en: string[] }; value: Json }[]).filter(({ label }) =>
				label.en[0].startsWith('measure_'),
			);
		expect(measured(made())).toEqual([]);
		const scan = measured(made({ shape: { kind: 'scan', file: 'a.stl', units: 'mm' } }));
		expect(scan[0].value).toEqual({ en: ['20.6 mm'], fr: ['20,6 mm'] });
		expect(scan[3].value).toEqual({ en: ['2.06'], fr: ['2,06'] });
	});

	it('paints the picture that the server has, at its true size', () => {
		const [canvas] = made().items as {
			width: number;
			height: number;
			items: { items: { body: Json }[] }[];
		}[];
		expect([canvas.width, canvas.height]).toEqual([480, 480]);
		expect(canvas.items[0].items[0].body).toEqual({
			id: `${ADDRESS}/pictures/${hashOf('a')}-honey.webp`,
			type: 'Image',
			format: 'image/webp',
			width: 480,
			height: 480,
		});
	});

	it('hands on rights only where machines know the address', () => {
		expect(made().rights).toBe('http://creativecommons.org/licenses/by/4.0/');
		expect(made({ licence: 'ask at the desk' })).not.toHaveProperty('rights');
	});

	it('never tells where a tooth was found', () => {
		const told = JSON.stringify(
			made({
				locality: {
					place: 'Below the mill',
					latitude_deg: 51.50735,
					longitude_deg: -0.12776,
					sensitivity: 1,
				},
			}),
		);
		expect(told).not.toMatch(/mill|51\.5|0\.12/);
	});
});
