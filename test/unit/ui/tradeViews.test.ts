import { describe, expect, it } from 'vitest';
import { TRADE_VIEWS, towardsViewer } from '../../../src/lib/ui/tradeViews';

describe('towardsViewer', () => {
	it('looks at the lip side, wherever it lies', () => {
		expect(towardsViewer('labial', '+z')).toEqual([0, 0, 1]);
		expect(towardsViewer('labial', '-z')).toEqual([0, 0, -1]);
		expect(towardsViewer('lingual', '-z')).toEqual([0, 0, 1]);
		expect(towardsViewer('labial', null)).toEqual([0, 0, 1]);
	});

	it('leaves the other views as they are', () => {
		for (const view of TRADE_VIEWS.filter((name) => name !== 'labial' && name !== 'lingual'))
			expect(towardsViewer(view, '-z')).toEqual(towardsViewer(view, '+z'));
	});
});
