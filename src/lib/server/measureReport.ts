import type { FileMeasures } from './measureFile';

/** Names of measures for reading; the trade's short forms in brackets. What is not named here shows its key. */
const NAMES: Readonly<Record<string, string>> = {
	triangles: 'Triangles',
	vertices: 'Points',
	components: 'Pieces',
	watertight: 'Closed surface',
	surfaceArea: 'Surface',
	volume: 'Volume',
	apex: 'Apex',
	baseMesial: 'Mesial base point',
	baseDistal: 'Distal base point',
	axialHeight: 'Axial height',
	crownHeight: 'Crown height (CH)',
	apicalLength: 'Apical length (AL)',
	crownBaseLength: 'Crown base length (CBL)',
	crownBaseWidth: 'Crown base width (CBW)',
	crownBaseRatio: 'Crown base ratio (CBR)',
	crownHeightRatio: 'Crown height ratio (CHR)',
	midCrownLength: 'Mid-crown length',
	midCrownWidth: 'Mid-crown width',
	crownAngle: 'Crown angle (CA)',
	apexAngle: 'Apex angle (CAA)',
	tipRadius: 'Tip radius',
	curvature: 'Curvature',
	ridgeCount: 'Ridges',
	carinaCount: 'Carinae',
};
const SIGNS: Readonly<Record<string, string>> = { mm: ' mm', mm2: ' mm²', mm3: ' mm³', deg: '°' };
const POINTS = ['apex', 'baseMesial', 'baseDistal'];

/** Results for reading: one block a file, aligned, units beside the numbers, warnings below. */
export function measureReport(results: readonly FileMeasures[]): string {
	return results.map(block).join('\n\n');
}

function block(result: FileMeasures): string {
	const { file, format, units } = result;
	const head = [file, format?.toUpperCase(), units ? `read in ${units}` : undefined]
		.filter(Boolean)
		.join('  ');
	if ('error' in result) return `${head}\n  Not measured: ${result.error.message}\n  ${result.error.remedy}`;
	const lines = [head];
	const rows: [string, string][] = [];
	const tables: string[] = [];
	for (const [key, value] of Object.entries(result)) {
		if (['file', 'format', 'units', 'warnings'].includes(key)) continue;
		const [stem, unit] = nameAndUnit(key);
		if (Array.isArray(value) && !POINTS.includes(key)) {
			if (value.length > 0) tables.push(`  ${capital(key)}`, ...table(value as Record<string, unknown>[]));
		} else rows.push([NAMES[stem] ?? key, shown(value, POINTS.includes(key) ? 'mm' : unit)]);
	}
	const width = Math.max(...rows.map(([name]) => name.length));
	lines.push(...rows.map(([name, value]) => `  ${name.padEnd(width)}  ${value}`), ...tables);
	if (result.warnings.length > 0) {
		lines.push('  Warnings', ...result.warnings.map(({ code, message }) => `    ${code}: ${message}`));
	}
	return lines.join('\n');
}

function nameAndUnit(key: string): [string, string] {
	const [stem, unit = ''] = key.split('_');
	return [stem, unit];
}

function shown(value: unknown, unit: string): string {
	if (value === null || value === undefined) return '-';
	if (typeof value === 'boolean') return value ? 'yes' : 'no';
	if (Array.isArray(value))
		return `${value.map((part) => number(part as number, unit)).join(', ')}${SIGNS[unit] ?? ''}`;
	return typeof value === 'number' ? number(value, unit) + (SIGNS[unit] ?? '') : String(value);
}

/** Four digits that count; counts as they are. */
function number(value: number, unit: string): string {
	if (unit === '' && Number.isInteger(value)) return String(value);
	const size = Math.abs(value);
	if (size > 0 && (size < 1e-3 || size >= 1e7)) return value.toPrecision(4);
	const places = Math.max(0, Math.min(4, 3 - Math.floor(Math.log10(size))));
	return value.toFixed(places);
}

/** Rows of like objects in aligned columns, the unit in each column's head. */
function table(rows: readonly Record<string, unknown>[]): string[] {
	const keys = [...new Set(rows.flatMap(Object.keys))];
	const head = keys.map((key) => {
		const [stem, unit] = nameAndUnit(key);
		return unit ? `${stem} (${(SIGNS[unit] ?? unit).trim()})` : stem;
	});
	// heights are round fractions: no digits are made up for them
	const cells = rows.map((row) => keys.map((key) => (key === 'at' ? String(row[key]) : shown(row[key], ''))));
	const widths = keys.map((_, i) => Math.max(head[i].length, ...cells.map((cell) => cell[i].length)));
	return [head, ...cells].map((line) => `    ${line.map((cell, i) => cell.padStart(widths[i])).join('  ')}`);
}

const capital = (word: string): string => word[0].toUpperCase() + word.slice(1);
