import type { BorrowedOnScreen } from '../kiosk/borrowed';

/** What a screen reader says of an element beside its text. */
const SPOKEN = ['aria-label', 'alt', 'title', 'placeholder'];

/**
 * Gives every element under `root` whose words are borrowed from another language the `lang` (and where it differs the
 * `dir`) of that language, so that it is read out rightly (WCAG 3.1.2), and goes on doing so as the page changes. With
 * `show`, they carry `data-borrowed` as well, and so do elements that name that language by themselves. Returns what
 * takes everything back.
 */
export function markBorrowed(root: HTMLElement, borrowed: BorrowedOnScreen, show: boolean): () => void {
	const marked = new Set<Element>();
	const page = document.documentElement;

	/** The element's own words, not those of elements in it. */
	function isBorrowed(element: Element): boolean {
		const own = [...element.childNodes].flatMap((node) =>
			node instanceof Text && node.data.trim() !== '' ? [node.data] : [],
		);
		if (own.length > 0) return own.every((text) => borrowed.is(text));
		if (element.textContent?.trim()) return false;
		return SPOKEN.some((name) => borrowed.is(element.getAttribute(name) ?? ''));
	}

	function mark(element: Element): void {
		const names = !marked.has(element) && element.getAttribute('lang');
		if (names) {
			const shown = show && names === borrowed.lang && !element.hasAttribute('hreflang');
			element.toggleAttribute('data-borrowed', shown);
			return;
		}
		if (!isBorrowed(element)) return unmark(element);
		const around = element.parentElement?.closest('[lang]') ?? page;
		if (around.getAttribute('lang') === borrowed.lang) return;
		if (!marked.has(element)) {
			marked.add(element);
			element.setAttribute('lang', borrowed.lang);
			if (borrowed.dir !== page.dir && !element.hasAttribute('dir'))
				element.setAttribute('dir', borrowed.dir);
		}
		element.toggleAttribute('data-borrowed', show);
	}

	function unmark(element: Element): void {
		if (!marked.delete(element)) return;
		for (const name of ['lang', 'dir', 'data-borrowed']) element.removeAttribute(name);
	}

	function look(node: Node): void {
		if (node instanceof Text) {
			if (node.parentElement) mark(node.parentElement);
		} else if (node instanceof Element) {
			mark(node);
			for (const element of node.querySelectorAll('*')) mark(element);
		}
	}

	const observer = new MutationObserver((changes) => {
		for (const { type, target, addedNodes } of changes) {
			if (type === 'childList') {
				mark(target as Element);
				addedNodes.forEach(look);
			} else if (type === 'characterData') look(target);
			else mark(target as Element);
		}
	});
	look(root);
	observer.observe(root, { childList: true, subtree: true, characterData: true, attributeFilter: SPOKEN });
	return () => {
		observer.disconnect();
		for (const element of [...marked]) unmark(element);
		for (const element of root.querySelectorAll('[data-borrowed]')) element.removeAttribute('data-borrowed');
	};
}
