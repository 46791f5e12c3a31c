import { describe, expect, it } from 'vitest';
import { attractAsks } from '../../../src/lib/server/attractAsks';

describe('attractAsks', () => {
	it('asks the same in every language, in the same order; what is missing in the first language', () => {
		const asks = attractAsks({
			languages: [
				{ code: 'en', name: 'English' },
				{ code: 'fr', name: 'Français' },
			],
			ui: {
				en: { attract_ask_a: 'A?', attract_touch: 'Touch', attract_ask_b: 'B?', start_go: 'Go' },
				fr: { attract_ask_b: 'B, fr ?', attract_touch: 'Touchez' },
			},
		});
		expect(asks).toEqual([
			{ lang: 'en', name: 'English', asks: ['A?', 'B?'], touch: 'Touch' },
			{ lang: 'fr', name: 'Français', asks: ['A?', 'B, fr ?'], touch: 'Touchez' },
		]);
	});

	it('is empty without questions, and never fails', () => {
		expect(attractAsks({ languages: [], ui: {} })).toEqual([]);
		expect(attractAsks({ languages: [{ code: 'en', name: 'English' }], ui: {} })).toEqual([
			{ lang: 'en', name: 'English', asks: [], touch: '' },
		]);
	});
});
