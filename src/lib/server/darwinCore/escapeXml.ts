/** A text as it may stand in XML, between tags or in quotes; signs that XML 1.0 cannot hold are left out. */
export const escapeXml = (text: string): string =>
	text
		.replace(/[\u0000-\u0008\u000B\u000C\u000E-\u001F\uFFFE\uFFFF]/g, '')
		.replace(/&/g, '&amp;')
		.replace(/</g, '&lt;')
		.replace(/>/g, '&gt;')
		.replace(/"/g, '&quot;');
