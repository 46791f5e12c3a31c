import type { StageStats } from './lib/stage/api';

declare global {
	interface Window {
		toothTable?: { stats: () => StageStats };
	}
	namespace App {
		interface Error {
			/** of a fault that is written down in the log */
			id?: string;
		}
		interface Locals {
			/** Language of this request, always one of the exhibit's. */
			lang: string;
			/** Name of the screen that asks; null for none. */
			screen: string | null;
			/** Language in which that screen starts; empty while there is no exhibit. */
			firstLang: string;
		}
	}
}

export {};
