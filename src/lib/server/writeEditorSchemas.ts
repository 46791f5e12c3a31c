/**
 * Writes the schemas for text editors into content/.schemas: `npx tsx src/lib/server/writeEditorSchemas.ts`.
 * Run it whenever a schema or an example changes; a test compares what is there.
 */
import { join, resolve } from 'node:path';
import { fileURLToPath } from 'node:url';
import { editorSchemas } from '../content/editorSchemas';
import { writeAtomically } from './writeAtomically';

/** Texts of content/.schemas by file name. */
export const editorSchemaFiles = (): Record<string, string> =>
	Object.fromEntries(
		Object.entries(editorSchemas()).map(([name, schema]) => [name, `${JSON.stringify(schema, null, 1)}\n`]),
	);

if (process.argv[1] && resolve(process.argv[1]) === fileURLToPath(import.meta.url)) {
	const folder = fileURLToPath(new URL('../../../content/.schemas/', import.meta.url));
	for (const [name, text] of Object.entries(editorSchemaFiles()))
		await writeAtomically(join(folder, name), text);
}
