import type { AskedUnit, NewShape, NewSpecimen } from '../../../content/newSpecimen';
import type { ScanLook } from '../../../content/scanUpload';
import { specimenId } from '../../../content/specimenId';

/** Lower-case letters, digits, single hyphens, as the content folder wants it. */
const GOOD_ID = /^[a-z0-9]+(-[a-z0-9]+)*$/;

export type IdTrouble = 'empty' | 'letters' | 'taken';
/** What the form still wants, by the field that it stands in. */
export type Lack = 'accession' | 'id' | Needed | 'scan' | 'units' | 'like' | 'size';
type Needed = (typeof NEEDED)[number];
const NEEDED = [
	'group',
	'part',
	'preservation',
	'by',
	'certainty',
	'title',
	'short',
	'licence',
	'rightsHolder',
] as const;

/** A new specimen as it is typed. */
export class NewForm {
	accession = $state('');
	group = $state('');
	part = $state('');
	preservation = $state('');
	bed = $state('');
	by = $state('');
	certainty = $state('');
	licence = $state('');
	rightsHolder = $state('');
	sources = $state<string[]>([]);
	title = $state('');
	short = $state('');
	alt = $state('');
	text = $state('');

	kind = $state<NewShape['kind']>('scan');
	upload = $state('');
	look = $state.raw<ScanLook | null>(null);
	units = $state<AskedUnit | ''>('');
	/** mm; what the card in the drawer says */
	cardHeight = $state<number | null>(null);
	like = $state('');
	crownHeight = $state<number | null>(null);
	baseLength = $state<number | null>(null);
	baseWidth = $state<number | null>(null);

	/** null while it follows the number */
	#ownId = $state<string | null>(null);
	readonly #taken: () => readonly string[];

	/** `taken`: folders that are there, in lower case */
	constructor(taken: () => readonly string[], museum: string) {
		this.#taken = taken;
		this.by = museum;
		this.rightsHolder = museum;
	}

	get id(): string {
		return this.#ownId ?? specimenId(this.accession);
	}
	set id(typed: string) {
		// emptied, it follows the number again
		this.#ownId = typed.trim() === '' ? null : typed.trim();
	}

	get idTrouble(): IdTrouble | null {
		const { id } = this;
		if (id === '') return 'empty';
		if (!GOOD_ID.test(id) || id.length > 60) return 'letters';
		return this.#taken().includes(id) ? 'taken' : null;
	}

	/** Whether anything was typed that would be lost. */
	get typed(): boolean {
		return [this.accession, this.title, this.short, this.alt, this.text, this.upload].some(
			(value) => value.trim() !== '',
		);
	}

	/** In the order of the page. */
	get lacks(): Lack[] {
		const empty = NEEDED.filter((name) => this[name].trim() === '');
		const before = empty.filter((name) => name !== 'licence' && name !== 'rightsHolder');
		const shape: Lack[] =
			this.kind === 'scan'
				? this.upload === ''
					? ['scan']
					: this.units === ''
						? ['units']
						: []
				: this.like === ''
					? ['like']
					: [this.crownHeight, this.baseLength, this.baseWidth].every(isSize)
						? []
						: ['size'];
		return [
			...(this.accession.trim() === '' ? (['accession'] as const) : []),
			...(this.idTrouble ? (['id'] as const) : []),
			...before,
			...shape,
			...empty.filter((name) => name === 'licence' || name === 'rightsHolder'),
		];
	}

	/** What is sent once nothing is lacking. */
	request(): NewSpecimen {
		const shape: NewShape =
			this.kind === 'scan'
				? {
						kind: 'scan',
						upload: this.upload,
						units: this.units as AskedUnit,
						crownHeight_mm: isSize(this.cardHeight) ? this.cardHeight : null,
					}
				: {
						kind: 'model',
						like: this.like,
						crownHeight_mm: this.crownHeight!,
						baseLength_mm: this.baseLength!,
						baseWidth_mm: this.baseWidth!,
					};
		return {
			id: this.id,
			accession: this.accession.trim(),
			group: this.group,
			part: this.part,
			preservation: this.preservation,
			bed: this.bed,
			by: this.by.trim(),
			certainty: this.certainty,
			licence: this.licence,
			rightsHolder: this.rightsHolder.trim(),
			sources: [...this.sources],
			title: this.title.trim(),
			short: this.short.trim(),
			alt: this.alt.trim(),
			text: this.text,
			shape,
		};
	}
}

const isSize = (value: number | null | undefined): value is number =>
	typeof value === 'number' && Number.isFinite(value) && value >= 0.01 && value <= 10_000;
