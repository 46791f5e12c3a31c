let id: string | undefined;

/** Random name of this load of the page, 16 hexadecimal digits; nobody's, and another after each reload. */
export function pageId(): string {
	// crypto.randomUUID is missing where a gallery's net has no certificates
	id ??= [...crypto.getRandomValues(new Uint8Array(8))]
		.map((byte) => byte.toString(16).padStart(2, '0'))
		.join('');
	return id;
}
