/** How many numbers each command of an SVG path takes (SVG 2, section 9.3, path data). */
const NUMBERS: Readonly<Record<string, number>> = {
	m: 2,
	l: 2,
	h: 1,
	v: 1,
	c: 6,
	s: 4,
	q: 4,
	t: 2,
	a: 7,
	z: 0,
};
const TOKEN = /\s*,?\s*(?:([a-zA-Z])|([-+]?(?:\d+\.?\d*|\.\d+)(?:[eE][-+]?\d+)?))/y;
/** The two flags of an arc may stand without a space behind them. */
const FLAG = /\s*,?\s*([01])/y;

/**
 * What is wrong with a path's data, or null when it is right: only the commands M L H V C S Q T A Z with as many
 * numbers as each takes, beginning with M. Nothing else can be written into the page.
 */
export function badPathData(d: string): { at: number; found: string } | null {
	let at = 0;
	let command = '';
	let count = 0;
	const fault = (from: number) => ({ at: from, found: d.slice(from).trim().slice(0, 20) || 'nothing more' });
	const complete = () => {
		const takes = NUMBERS[command.toLowerCase()];
		return command === '' || (takes === 0 ? count === 0 : count > 0 && count % takes === 0);
	};
	while (/\S/.test(d.slice(at))) {
		const place = count % 7;
		const pattern = command.toLowerCase() === 'a' && (place === 3 || place === 4) ? FLAG : TOKEN;
		pattern.lastIndex = at;
		const match = pattern.exec(d);
		if (!match) return fault(at);
		const letter = pattern === TOKEN ? match[1] : undefined;
		if (letter === undefined) {
			if (command === '' || command.toLowerCase() === 'z') return fault(at);
			count += 1;
		} else {
			if (NUMBERS[letter.toLowerCase()] === undefined) return fault(at);
			if (!complete()) return fault(at);
			if (command === '' && letter.toLowerCase() !== 'm') return fault(at);
			command = letter;
			count = 0;
		}
		at = pattern.lastIndex;
	}
	return command === '' || !complete() ? fault(d.length) : null;
}
