declare module 'gltf-validator' {
	/** Severity 0 error, 1 warning, 2 information, 3 hint. */
	interface Report {
		issues: { numErrors: number; messages: { code: string; severity: number; pointer?: string }[] };
		info: { extensionsRequired?: string[] };
	}
	export function validateBytes(bytes: Uint8Array): Promise<Report>;
}
