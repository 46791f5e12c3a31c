const FACTORS: Readonly<Record<string, number>> = {
	um: 0.001,
	µm: 0.001,
	μm: 0.001,
	mm: 1,
	cm: 10,
	m: 1000,
	in: 25.4,
	'"': 25.4,
};

/** What a length in this unit is multiplied by to be millimetres; undefined for other words. */
export const mmPer = (unit: string): number | undefined => {
	const plain = unit.trim().toLowerCase();
	const word = { millimetres: 'mm', millimeters: 'mm', inches: 'in', inch: 'in', centimetres: 'cm' }[plain];
	const key = word ?? plain;
	return Object.hasOwn(FACTORS, key) ? FACTORS[key] : undefined;
};

/**
 * A length in a cell, mm: `38.1`, `38,1`, `1.234,5`, `38.1 mm`, `3,8 cm`. `factor` is that of the column's unit, which a
 * unit in the cell overrules. `comma`: whether the table writes a comma before decimals; undefined where it does not
 * tell, and then `1,234` is `which-separator`.
 */
export function readNumber(
	cell: string,
	factor: number,
	comma: boolean | undefined,
): number | 'not-a-number' | 'which-separator' {
	const match = /^([\d.,'’\s\u00A0\u202F]*\d)\s*([a-zA-Zµμ"]*)$/.exec(cell.trim());
	if (!match) return 'not-a-number';
	const unit = match[2] === '' ? factor : mmPer(match[2]);
	const digits = match[1].replace(/['’\s\u00A0\u202F]/g, '');
	if (unit === undefined) return 'not-a-number';
	const plain = toPoint(digits, comma);
	if (plain === 'which-separator') return plain;
	if (!/^\d+(\.\d+)?$/.test(plain)) return 'not-a-number';
	// 3.81 cm is 38.1 mm, not 38.099999999999994
	return unit === 1 ? Number(plain) : Number((Number(plain) * unit).toPrecision(12));
}

function toPoint(digits: string, comma: boolean | undefined): string {
	const commas = digits.split(',').length - 1;
	const points = digits.split('.').length - 1;
	if (commas === 0 && points === 0) return digits;
	if (commas > 0 && points > 0) {
		// the last one stands before the decimals, the other parts thousands
		const decimal = digits.lastIndexOf(',') > digits.lastIndexOf('.') ? ',' : '.';
		const other = decimal === ',' ? '.' : ',';
		if (digits.split(decimal).length > 2) return 'not-a-number';
		return digits.replaceAll(other, '').replace(decimal, '.');
	}
	if (commas > 1 || points > 1)
		return /^\d{1,3}([.,]\d{3})+$/.test(digits) ? digits.replace(/[.,]/g, '') : 'no';
	if (points === 1) return comma === true && /^\d{1,3}\.\d{3}$/.test(digits) ? 'which-separator' : digits;
	if (comma === undefined && /^\d{1,3},\d{3}$/.test(digits)) return 'which-separator';
	if (comma === false && /^\d{1,3},\d{3}$/.test(digits)) return digits.replace(',', '');
	return digits.replace(',', '.');
}

/** Whether numbers of a table have a decimal comma; undefined where none of them tells. */
export function hasDecimalComma(cells: readonly string[]): boolean | undefined {
	const tells = (sign: string): boolean =>
		cells.some((cell) => new RegExp(`^\\d+\\${sign}(\\d{1,2}|\\d{4,})\\b|^0\\${sign}\\d+`).test(cell.trim()));
	const comma = tells(',');
	const point = tells('.');
	return comma === point ? undefined : comma;
}
