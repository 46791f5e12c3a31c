import type { Direction } from '../content/textDirection';

/**
 * What an arrow key means in a row of things that follow each other as words do (tabs, pictures in a drawer): 1 to the
 * next, -1 to the one before, 0 for any other key. In a language that runs from right to left the next lies left.
 */
export function stepOfKey(key: string, dir: Direction): -1 | 0 | 1 {
	if (key === 'ArrowDown') return 1;
	if (key === 'ArrowUp') return -1;
	if (key !== 'ArrowRight' && key !== 'ArrowLeft') return 0;
	return (key === 'ArrowRight') === (dir === 'ltr') ? 1 : -1;
}
