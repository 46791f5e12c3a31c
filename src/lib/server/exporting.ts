/** Whether this server runs only for `npm run export`: what it answers becomes files. */
export const exporting = (): boolean => process.env.EXHIBIT_EXPORT === '1';
