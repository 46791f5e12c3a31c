import type { StageStats } from './lib/stage/api';

declare global {
	interface Window {
		toothTable?: { stats: () => StageStats };
	}
	namespace App {
		interface Locals {
			/** Language of this request, always one of the exhibit's. */
			lang: string;
		}
	}
}

export {};
