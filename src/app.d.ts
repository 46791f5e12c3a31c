declare global {
	namespace App {
		interface Locals {
			/** Language of this request, always one of the exhibit's. */
			lang: string;
		}
	}
}

export {};
