import type {
	DeskFile,
	FactFields,
	LabelFields,
	SpecimenEdits,
	TryRequest,
} from '../../content/specimenDesk';

export interface SpecimenFields {
	files: DeskFile[];
	/** null where specimen.yaml cannot be read */
	facts: FactFields | null;
	/** by language */
	labels: Record<string, LabelFields>;
}

/** What is typed about one specimen, beside what its files say. Loading the files anew keeps what was typed. */
export class SpecimenForm {
	#from = $state.raw<SpecimenFields>({ files: [], facts: null, labels: {} });
	facts = $state<FactFields | null>(null);
	labels = $state<Record<string, LabelFields>>({});

	constructor(from: SpecimenFields) {
		this.#from = from;
		this.#fill(from);
	}

	/** What the files said when the page last looked. */
	get from(): SpecimenFields {
		return this.#from;
	}

	/** Only what differs from the files. */
	get edits(): SpecimenEdits {
		const { facts, labels } = this.#from;
		const typedFacts = this.facts && facts ? differing(this.facts, facts) : {};
		const typedLabels = Object.entries(this.labels).flatMap(([lang, label]) => {
			const { features, ...words } = label;
			const { features: named, ...before } = labels[lang] ?? EMPTY;
			const names = differing(features, named) as Record<string, string>;
			const typed: Partial<LabelFields> = {
				...differing(words, before),
				...(any(names) && { features: names }),
			};
			return any(typed) ? [[lang, typed] as const] : [];
		});
		return {
			...(any(typedFacts) && { facts: typedFacts }),
			...(typedLabels.length > 0 && { labels: Object.fromEntries(typedLabels) }),
		};
	}

	get changed(): boolean {
		return any(this.edits);
	}

	request(lang: string): TryRequest {
		return { lang, files: this.#from.files, edits: $state.snapshot(this.edits) as SpecimenEdits };
	}

	/** Whether somebody else has changed a field in which something else is typed: then the save must tell of it. */
	overtaken(now: SpecimenFields): boolean {
		const { facts = {}, labels = {} } = this.edits;
		const before = this.#from;
		return (
			anyOvertaken(facts, before.facts, now.facts) ||
			Object.entries(labels).some(([lang, { features = {}, ...words }]) => {
				const [then, since] = [before.labels[lang], now.labels[lang]];
				return anyOvertaken(words, then, since) || anyOvertaken(features, then?.features, since?.features);
			})
		);
	}

	/** The files say something else now. What was typed stays, unless it is `saved` or to be dropped. */
	load(from: SpecimenFields, keepTyped: boolean): void {
		const edits = keepTyped ? ($state.snapshot(this.edits) as SpecimenEdits) : {};
		this.#from = from;
		this.#fill(from);
		if (this.facts) Object.assign(this.facts, edits.facts);
		for (const [lang, { features, ...words }] of Object.entries(edits.labels ?? {})) {
			Object.assign(this.labels[lang], words);
			Object.assign(this.labels[lang].features, features);
		}
	}

	/** Back to what the files say. */
	discard(): void {
		this.#fill(this.#from);
	}

	#fill({ facts, labels }: SpecimenFields): void {
		this.facts = facts && structuredClone(facts);
		this.labels = structuredClone(labels);
	}
}

const EMPTY: LabelFields = { title: '', short: '', alt: '', text: '', features: {} };
const any = (record: object): boolean => Object.keys(record).length > 0;

function differing<T extends object>(now: T, before: T): Partial<T> {
	return Object.fromEntries(
		Object.entries(now).filter(
			([key, value]) => JSON.stringify(value) !== JSON.stringify(before[key as keyof T] ?? ''),
		),
	) as Partial<T>;
}

/** Whether a value has changed to something other than what is typed. */
function anyOvertaken<T extends object>(typed: Partial<T>, then?: T | null, since?: T | null): boolean {
	return Object.entries(typed).some(([key, value]) => {
		const [old, now] = [then, since].map((held) => JSON.stringify(held?.[key as keyof T]));
		return old !== now && now !== JSON.stringify(value);
	});
}
