import { z } from 'zod';
import { checkFields } from './checkFields';
import { checkMessage, literalMessage } from './checkMessage';
import type { Source } from './exhibit';
import { idFrom, placeOf } from './explainIssue';
import { finding, type Finding, type Place } from './finding';
import type { Places, YamlResult } from './readYaml';
import { glossaryEntrySchema, ID_PATTERN, sourceSchema } from './schemas';

export interface CompiledSources {
	sources: Map<string, Source>;
	/** ids that stand in the file but cannot be used */
	leftOut: Set<string>;
}

export interface CompiledUi {
	messages: Map<string, { text: string; names: string[]; place: Place }>;
	/** keys whose text cannot be filled in: what was typed, as a message that shows just that */
	broken: Map<string, string>;
}

export type CompiledGlossary = Map<string, { term: string; meaning: string; place: Place }>;

const entries = (value: unknown) => Object.entries(value as Record<string, unknown>);

/** Checks sources.yaml: one bad source leaves out that source. */
export function compileSources(yaml: YamlResult): { compiled: CompiledSources; findings: Finding[] } {
	const compiled: CompiledSources = { sources: new Map(), leftOut: new Set() };
	const findings: Finding[] = [];
	for (const [id, value] of entries(yaml.value)) {
		const found = checkEntry(sourceSchema, id, value, yaml.places);
		findings.push(...found.findings);
		if (found.value && found.findings.length === 0) compiled.sources.set(id, { id, ...found.value });
		else compiled.leftOut.add(id).add(idFrom(id));
	}
	return { compiled, findings };
}

/** Checks one language's glossary: one bad entry leaves out that entry. */
export function compileGlossary(yaml: YamlResult): { compiled: CompiledGlossary; findings: Finding[] } {
	const compiled: CompiledGlossary = new Map();
	const findings: Finding[] = [];
	for (const [id, value] of entries(yaml.value)) {
		const found = checkEntry(glossaryEntrySchema, id, value, yaml.places);
		findings.push(...found.findings);
		if (found.value && found.findings.length === 0) {
			compiled.set(id, { ...found.value, place: placeOf(yaml.places, [id], 'key') });
		}
	}
	return { compiled, findings };
}

/** Checks one entry of a table under its id. */
export function checkEntry<T>(schema: z.ZodType<T>, id: string, value: unknown, places: Places) {
	if (!ID_PATTERN.test(id)) {
		const place = placeOf(places, [id], 'key');
		return { findings: [finding('bad-id', place, id, { found: id, meant: idFrom(id) })] };
	}
	return checkFields(schema, value, places, [id]);
}

const words = z.string().trim().min(1);

/** Checks one language's screen texts: one bad text leaves out that text. */
export function compileUi(yaml: YamlResult): { compiled: CompiledUi; findings: Finding[] } {
	const compiled: CompiledUi = { messages: new Map(), broken: new Map() };
	const findings: Finding[] = [];
	for (const [key, value] of entries(yaml.value)) {
		const checked = checkFields(words, value, yaml.places, [key]);
		findings.push(...checked.findings);
		if (checked.value === undefined) {
			if (typeof value !== 'object' || value === null) {
				compiled.broken.set(key, literalMessage(String(value ?? '')));
			}
			continue;
		}
		const text = checked.value;
		const message = checkMessage(text);
		const place = placeOf(yaml.places, [key]);
		if (message.ok)
			compiled.messages.set(key, { text, names: message.names, place: placeOf(yaml.places, [key]) });
		else {
			findings.push(finding('bad-message', place, key, { found: text, why: message.why }));
			compiled.broken.set(key, literalMessage(text));
		}
	}
	return { compiled, findings };
}
