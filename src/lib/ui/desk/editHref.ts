/** Address of the text editor on a file of the content folder, at a line. */
export const editHref = (file: string, line?: number): string =>
	`/desk/edit?file=${encodeURIComponent(file).replaceAll('%2F', '/')}${line && line > 1 ? `&line=${line}` : ''}`;
