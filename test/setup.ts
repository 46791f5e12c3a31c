import { afterEach, beforeEach, expect, vi } from 'vitest';

// A unit test that prints a warning or an error is hiding something: it fails.
beforeEach(() => {
	vi.spyOn(console, 'error');
	vi.spyOn(console, 'warn');
});

afterEach(() => {
	expect(console.error).not.toHaveBeenCalled();
	expect(console.warn).not.toHaveBeenCalled();
	vi.restoreAllMocks();
});
