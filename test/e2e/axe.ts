import Axe from '@axe-core/playwright';
import type { Page } from '@playwright/test';

/**
 * Axe on a page that has come to rest. What is still fading, or not drawn yet, has colours that no visitor
 * reads, and axe would measure one colour before a change and the other after it.
 */
export class AxeBuilder extends Axe {
	readonly #page: Page;

	constructor(options: { page: Page }) {
		super(options);
		this.#page = options.page;
	}

	override async analyze(): ReturnType<Axe['analyze']> {
		await atRest(this.#page);
		return super.analyze();
	}
}

const WAIT_ms = 50;
const MOST_ms = 3_000;

/** Nothing that will end is still moving, twice in a row. Timed here: the page's own clock may be a made-up one. */
async function atRest(page: Page): Promise<void> {
	let still = 0;
	for (let waited = 0; still < 2 && waited < MOST_ms; waited += WAIT_ms) {
		await new Promise((resolve) => setTimeout(resolve, WAIT_ms));
		const moving = await page.evaluate(
			() =>
				document
					.getAnimations()
					.filter(
						({ playState, effect }) =>
							playState === 'running' && Number.isFinite(effect?.getComputedTiming().endTime),
					).length,
		);
		still = moving === 0 ? still + 1 : 0;
	}
}
